"""The file of the edges: written when an edge is made, tagged, at the size asked for."""

import io
from dataclasses import replace
from datetime import UTC, datetime

import pypdf
import pytest

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.sheet_files.edges_files import edges_files
from gaugerod.adapters.sheet_files.files import sheet_files
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.edges.wished import EdgesWished
from gaugerod.job.result import Result
from gaugerod.sheets.sheet import PaperSize
from tests.scenario.edges_made import edges_made, wished
from tests.unit.adapters.test_beneath_files import alternatives

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)


def files_of(result: Result, size: PaperSize = PaperSize.A4) -> list[SheetFile]:
    return list(edges_files(result, size=size, pdf=lambda sheet: lambda: write_pdf(sheet(), made_at=MADE_AT)))


def test_one_file_where_an_edge_is_made_and_none_where_none_is() -> None:
    result = edges_made("demo", wished())
    assert ["edges.pdf"] == [file.name for file in files_of(result)]
    assert [] == files_of(replace(result, edges=None))
    unsaid = edges_made("narrow-gauge", EdgesWished())
    assert unsaid.edges is not None
    assert [] == files_of(unsaid)


def test_it_stands_among_the_files_of_the_job() -> None:
    names = [file.name for file in sheet_files(edges_made("demo", wished()), paper="a4", made_at=MADE_AT)]
    assert 1 == names.count("edges.pdf")


@pytest.mark.parametrize("size", list(PaperSize))
def test_it_is_tagged_with_every_picture_told_in_words(size: PaperSize) -> None:
    (file,) = files_of(edges_made("hipped-house", wished()), size)
    reader = pypdf.PdfReader(io.BytesIO(file.make()))
    assert reader.root_object["/MarkInfo"]["/Marked"].value is True  # type: ignore[index]
    told = alternatives(reader.root_object["/StructTreeRoot"])
    assert all(told)
    assert any("hip in section" in said and "Only drawn" in said for said in told)
    assert any("From the foot" in said for said in told)
    for page in reader.pages:
        assert size.width_mm == pytest.approx(float(page.mediabox.width) * 25.4 / 72, abs=0.2)
        assert page.extract_text().strip()
