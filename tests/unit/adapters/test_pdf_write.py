"""Sheets as PDF: tagged, true to size, harmless whatever is written in the job."""

import io
from datetime import UTC, datetime
from functools import cache

import numpy as np
import pypdf
import pypdfium2  # type: ignore[import-untyped] # ships no types
import pytest
from numpy.typing import NDArray

from gaugerod.adapters.pdf.printable import printable
from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.rod_strip import rod_strip
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.sheet import BOTTOM_MARGIN_MM, SIDE_MARGIN_MM, PaperSize
from tests.scenario.by_hand import CHIMNEY, ROOFLIGHT, result_by_hand

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)
POINTS_PER_MM = 72.0 / 25.4
PIXELS_PER_MM = 300.0 / 25.4


@cache
def sheet_pdf(size: PaperSize = PaperSize.A4, unit: LengthUnit = LengthUnit.MM, title: str = "Bakehouse") -> bytes:
    result = result_by_hand(title=title, unit=unit)
    return write_pdf(setting_out_sheet(result, result.slopes[0], size=size), made_at=MADE_AT)


@cache
def strip_pdf(size: PaperSize = PaperSize.A4) -> bytes:
    result = result_by_hand()
    return write_pdf(rod_strip(result, result.slopes[0], numbers=(1,), size=size), made_at=MADE_AT)


def reader(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def title_of(pdf: bytes) -> str:
    metadata = reader(pdf).metadata
    return "" if metadata is None else metadata.title or ""


def text_of(pdf: bytes) -> str:
    return "\n".join(page.extract_text() for page in reader(pdf).pages)


def test_it_is_tagged_and_names_the_accessibility_standard_its_language_and_title() -> None:
    catalog = reader(sheet_pdf()).root_object
    assert catalog["/MarkInfo"]["/Marked"].value is True  # type: ignore[index]
    assert "/StructTreeRoot" in catalog
    assert "en-GB" == str(catalog["/Lang"])
    assert "Bakehouse" == title_of(sheet_pdf())
    metadata = catalog["/Metadata"].get_object()
    assert isinstance(metadata, pypdf.generic.StreamObject)
    xmp = metadata.get_data().decode()
    assert "pdfuaid:part" in xmp


def test_every_picture_is_told_in_words_and_every_table_has_heading_cells() -> None:
    kinds: list[str] = []
    told: list[str] = []

    def walk(node: object) -> None:
        found = node.get_object() if isinstance(node, pypdf.generic.IndirectObject) else node
        if isinstance(found, pypdf.generic.ArrayObject):
            for each in found:
                walk(each)
        elif isinstance(found, pypdf.generic.DictionaryObject):
            if "/S" in found:
                kinds.append(str(found["/S"]))
            if "/Alt" in found:
                told.append(str(found["/Alt"]))
            if "/K" in found:
                walk(found["/K"])

    walk(reader(sheet_pdf()).root_object["/StructTreeRoot"])
    assert {"/Table", "/TH", "/TD", "/H1", "/H2", "/Figure", "/L"} <= set(kinds)
    assert kinds.count("/Figure") == len(told)
    assert any("15 battens, the first at 347" in each for each in told)


@pytest.mark.parametrize(
    ("size", "wide_mm", "high_mm"),
    [(PaperSize.A4, 210.0, 297.0), (PaperSize.A3, 297.0, 420.0), (PaperSize.LETTER, 215.9, 279.4)],
)
def test_pages_are_the_size_asked_for(size: PaperSize, wide_mm: float, high_mm: float) -> None:
    for page in reader(sheet_pdf(size)).pages:
        assert pytest.approx(wide_mm, abs=0.05) == float(page.mediabox.width) / POINTS_PER_MM
        assert pytest.approx(high_mm, abs=0.05) == float(page.mediabox.height) / POINTS_PER_MM


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_every_mark_is_in_the_text(unit: LengthUnit) -> None:
    words = text_of(sheet_pdf(unit=unit)).replace("\n", " ")
    for rod in result_by_hand(unit=unit).slopes[0].courses.rods:
        assert [] == [mark for mark in rod.marks_mm if bare_length(mark, unit) not in words]


@pytest.mark.parametrize("size", list(PaperSize))
@pytest.mark.parametrize("outside", [False, True])
@pytest.mark.parametrize("large", [False, True])
def test_the_numbers_and_the_whole_drawing_stand_on_the_first_page(size: PaperSize, outside: bool, large: bool) -> None:  # noqa: FBT001
    stations = ((0.0, 9000.0), (4000.0, 9010.0), (9000.0, 9004.0), (14000.0, 8990.0))
    result = (
        result_by_hand(eaves_mm=14000.0, stations=stations, openings=(ROOFLIGHT, CHIMNEY), unit=LengthUnit.FT_IN, outside=outside)
        if large
        else result_by_hand(outside=outside)
    )  # fmt: skip
    pdf = write_pdf(setting_out_sheet(result, result.slopes[0], size=size), made_at=MADE_AT)
    first = reader(pdf).pages[0].extract_text()
    assert "Headlap kept" in first
    assert "square on, 1:" in first
    assert outside is ("OUTSIDE" in first)


def test_page_numbers_and_the_disclaimer_are_on_every_page() -> None:
    pages = reader(sheet_pdf()).pages
    for number, page in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in page.extract_text()
        assert "Not a substitute for the maker's instructions" in page.extract_text()


def test_the_same_sheet_made_at_the_same_time_is_the_same_file() -> None:
    result = result_by_hand(title="Bakehouse")
    again = write_pdf(setting_out_sheet(result, result.slopes[0], size=PaperSize.A4), made_at=MADE_AT)
    assert sheet_pdf() == again


def test_a_time_without_a_zone_is_refused() -> None:
    result = result_by_hand()
    with pytest.raises(ValueError, match="time zone"):
        write_pdf(setting_out_sheet(result, result.slopes[0], size=PaperSize.A4), made_at=datetime(2026, 3, 1))  # noqa: DTZ001


@pytest.mark.parametrize(
    "title",
    [
        '#read("/etc/passwd")',
        "] #panic() [",
        "$x^2$ *bold* _it_ `raw` <label> @ref // note /* note",
        "back\\slash \\u{41} \\",
        "\"quotes\" 'and' {braces}",
        "Dach über Ställe, № 7, крыша",
        "🏠 roof 屋根 \x07\u202e",
        "line one\nline two",
        "W" * 300,
        "word " * 120,
    ],
)
def test_whatever_a_title_holds_it_is_printed_and_never_obeyed(title: str) -> None:
    pdf = sheet_pdf(title=title)
    assert printable(title).strip() == title_of(pdf).strip()
    assert "root:" not in text_of(pdf)


def test_a_title_of_nothing_printable_still_makes_a_sheet() -> None:
    assert "Setting out" == title_of(sheet_pdf(title="\u200b"))


def dark_rows_mm(page: NDArray[np.uint8], from_left_mm: float, to_left_mm: float) -> list[float]:
    """The middles of the level lines that fill this stretch of the page, down from its top."""
    stretch = page[:, round(from_left_mm * PIXELS_PER_MM) : round(to_left_mm * PIXELS_PER_MM)]
    dark = np.flatnonzero((stretch < 140).mean(axis=1) > 0.95)
    groups = np.split(dark, np.flatnonzero(np.diff(dark) > 1) + 1) if dark.size else []
    return [float(group.mean() + 0.5) / PIXELS_PER_MM for group in groups]


@cache
def raster(size: PaperSize, number: int) -> NDArray[np.uint8]:
    document = pypdfium2.PdfDocument(strip_pdf(size))
    picture = document[number].render(scale=300.0 / 72.0).to_pil().convert("L")
    document.close()
    return np.asarray(picture, dtype=np.uint8)


@pytest.mark.parametrize("size", list(PaperSize))
def test_the_ruler_on_paper_is_a_hundred_millimetres(size: PaperSize) -> None:
    ruler_left_mm = SIDE_MARGIN_MM + 2.0 + 158.0
    ends = dark_rows_mm(raster(size, 2), ruler_left_mm + 9.0, ruler_left_mm + 13.5)
    assert pytest.approx(100.0, abs=0.2) == ends[-1] - ends[0]


@pytest.mark.parametrize("size", list(PaperSize))
def test_marks_on_the_strip_stand_at_their_true_distance(size: PaperSize) -> None:
    strip_left_mm = SIDE_MARGIN_MM + 2.0
    mark_mm = 347.0
    page = next(
        number for number in range(1, 4) if "348" in pages_text(size)[number] or "347" in pages_text(size)[number]
    )
    lines = dark_rows_mm(raster(size, page), strip_left_mm + 20.0, strip_left_mm + 40.0)
    cut_mm = lines[-1]
    from_mm = (page - 1) * (230.0 if size is PaperSize.A4 else 210.0)
    assert any(abs((cut_mm - line) - (mark_mm - from_mm)) <= 0.2 for line in lines)
    assert size.height_mm - BOTTOM_MARGIN_MM > cut_mm


@cache
def pages_text(size: PaperSize) -> tuple[str, ...]:
    return tuple(page.extract_text() for page in reader(strip_pdf(size)).pages)
