"""The files of the order and the record: there when there is something to tell, tagged, and with every drawing told in words."""

import io
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime

import pypdf
import pytest

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.sheet_files.order_files import order_files, quotation_file
from gaugerod.sheets.sheet import PaperSize, Sheet
from tests.scenario.taken_off import example, quoted, recorded, taken_off

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)


def pdf(sheet: Callable[[], Sheet]) -> Callable[[], bytes]:
    return lambda: write_pdf(sheet(), made_at=MADE_AT)


def text_of(content: bytes) -> str:
    return " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(content)).pages)


def test_the_order_where_something_was_taken_off_and_the_record_where_a_slope_was_set_out() -> None:
    def names(result: object) -> list[str]:
        return [file.name for file in order_files(result, size=PaperSize.A4, pdf=pdf)]  # type: ignore[arg-type]

    assert ["order.pdf", "record.pdf"] == names(taken_off())
    assert ["record.pdf"] == names(replace(taken_off(), take_off=None))
    assert ["order.pdf"] == names(replace(taken_off(), slopes=()))


@pytest.mark.parametrize("size", list(PaperSize))
@pytest.mark.parametrize("name", ["demo", "plain-tiles", "feet-and-inches"])
def test_each_is_a_tagged_document_with_its_own_heading(name: str, size: PaperSize) -> None:
    for file in order_files(recorded(name), size=size, pdf=pdf):
        content = file.make()
        reader = pypdf.PdfReader(io.BytesIO(content))
        assert reader.root_object["/MarkInfo"]["/Marked"].value is True  # type: ignore[index]
        assert ("Order" if file.name == "order.pdf" else "Hand-over record") in reader.pages[0].extract_text()


def test_the_record_of_a_house_of_five_slopes_is_one_document_that_names_them_all() -> None:
    record = list(order_files(recorded("hipped-house"), size=PaperSize.A4, pdf=pdf))[1].make()
    text = text_of(record)
    for slope in example("hipped-house").slopes:
        assert f"Slope {slope.slope.name}" in text
    assert len(record) < 2_000_000


def test_money_is_printed_with_its_thin_spaces() -> None:
    result, quotation = quoted()
    file = quotation_file(result, quotation, size=PaperSize.A4, pdf=pdf)
    assert "quotation.pdf" == file.name
    text = text_of(file.make())
    assert "□" not in text
    assert "£1\u202f390.80" in text or "£1 390.80" in text


@pytest.mark.parametrize("size", list(PaperSize))
@pytest.mark.parametrize("name", ["demo", "plain-tiles", "feet-and-inches"])
def test_the_numbers_of_a_slope_and_its_drawing_share_a_page(name: str, size: PaperSize) -> None:
    record = list(order_files(recorded(name), size=size, pdf=pdf))[1].make()
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(record)).pages]
    assert [True] == ["Square on, 1:" in page for page in pages if "Headlap kept" in page]
