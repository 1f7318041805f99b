"""The files of what lies beneath: written when the part is there, tagged, and at the size asked for."""

import io
from datetime import UTC, datetime
from importlib.resources import files as package_files
from pathlib import Path

import pypdf
import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.adapters.sheet_files.files import sheet_files
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.adapters.sheet_files.write import write_sheet_files
from gaugerod.job.set_out import set_out
from tests.scenario.beneath_results import beneath_result

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)
OF_SLOPE = ("-battens.pdf", "-underlay.pdf", "-fixings.pdf")
OF_JOB = ("battens-cutting-list.pdf", "underlay-cutting-list.pdf", "beneath-the-covering.pdf")


def beneath_files(name: str, paper: str) -> list[SheetFile]:
    written = sheet_files(beneath_result(name), paper=paper, made_at=MADE_AT)
    return [file for file in written if file.name.endswith((*OF_SLOPE, *OF_JOB))]


def test_every_part_that_is_asked_for_has_its_files() -> None:
    assert [f"rear{end}" for end in OF_SLOPE] + list(OF_JOB) == [file.name for file in beneath_files("demo", "a4")]
    of_slopes = [file.name for file in beneath_files("hipped-house", "a4") if file.name not in OF_JOB]
    assert 3 * len(beneath_result("hipped-house").slopes) == len(of_slopes)


def test_a_job_that_asks_for_nothing_beneath_has_none_of_them() -> None:
    text = package_files("gaugerod.adapters.job_file").joinpath("examples", "narrow-gauge.toml").read_bytes()
    names = [file.name for file in sheet_files(set_out(read_job_text(text)), paper="a4", made_at=MADE_AT)]
    assert not [name for name in names if name.endswith((*OF_SLOPE, *OF_JOB))]


@pytest.mark.parametrize("paper", ["a4", "a3", "letter"])
@pytest.mark.parametrize("name", ["demo", "plain-tiles", "feet-and-inches"])
def test_each_is_tagged_with_its_picture_told_in_words(name: str, paper: str) -> None:
    for file in beneath_files(name, paper):
        reader = pypdf.PdfReader(io.BytesIO(file.make()))
        assert reader.root_object["/MarkInfo"]["/Marked"].value is True  # type: ignore[index]
        told = alternatives(reader.root_object["/StructTreeRoot"])
        drawn = file.name.endswith(OF_SLOPE)
        assert drawn is bool(told)
        assert all(told)
        first = reader.pages[0].extract_text()
        assert not drawn or "quare on, 1:" in first


def alternatives(node: object) -> list[str]:
    """What is said in place of every figure."""
    found = node.get_object() if isinstance(node, pypdf.generic.IndirectObject) else node
    if isinstance(found, pypdf.generic.ArrayObject):
        return [said for each in found for said in alternatives(each)]
    if not isinstance(found, pypdf.generic.DictionaryObject):
        return []
    own = [str(found["/Alt"])] if "/Alt" in found else []
    return own + (alternatives(found["/K"]) if "/K" in found else [])


def test_they_are_written_into_the_folder_with_the_others(tmp_path: Path) -> None:
    written = write_sheet_files(beneath_result("demo"), folder=tmp_path, paper="a4", made_at=MADE_AT)
    names = {path.name for path, _ in written}
    assert {"rear-sheet.pdf", *(f"rear{end}" for end in OF_SLOPE), *OF_JOB} <= names
    assert all(path.read_bytes() for path, _ in written)
