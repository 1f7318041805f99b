"""A slope that no plan covers still gets its paper, and no file of one slope is written over by another."""

import re
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.adapters.sheet_files.write import write_sheet_files
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.sheets.not_set_out_sheet import not_set_out_sheet
from gaugerod.sheets.sheet import Alarm, PaperSize, Table

MADE_AT = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)


def example(name: str) -> str:
    return files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_text(encoding="utf-8")


def set_out_text(text: str) -> Result:
    return set_out(read_job_text(text.encode()))


def test_a_stack_too_short_for_the_slope_is_said_on_paper_with_what_to_buy() -> None:
    text = re.sub(r"slates = \d+", "slates = 12", example("random-slates")).replace('run = "60 m"', 'run = "2 m"')
    found = set_out_text(text)
    (short,) = found.not_set_out
    sheet = not_set_out_sheet(found, short, size=PaperSize.A4)
    (alarm,) = [block for block in sheet.blocks if isinstance(block, Alarm)]
    assert "NOT SET OUT" in alarm.title
    assert alarm.lines == (short.why,)
    changes, findings = [block for block in sheet.blocks if isinstance(block, Table)]
    assert [row[1] for row in changes.rows] == [each.change for each in short.alternatives]
    assert len(findings.rows) == len(short.findings)


def test_a_building_with_slopes_not_set_out_keeps_its_roof_sheet(tmp_path: Path) -> None:
    covering = example("random-slates").split("[covering]")[1].split("[[slope]]")[0]
    covering = re.sub(r"slates = \d+", "slates = 12", covering).replace('run = "60 m"', 'run = "2 m"')
    house = example("hipped-house").replace('[covering]\nfrom = "flat-interlocking-420x330"', f"[covering]{covering}")
    house = house.replace("[set_out]", '[set_out]\nheadlap = "80 mm"')
    found = set_out_text(house)
    assert found.not_set_out
    written = {path.name for path, _ in write_sheet_files(found, folder=tmp_path, paper="a4", made_at=MADE_AT)}
    assert "house-roof.pdf" in written
    assert {f"{short.slope.name.replace(' ', '-')}-not-set-out.pdf" for short in found.not_set_out} <= written


def test_slopes_whose_names_make_the_same_file_name_keep_their_own_files(tmp_path: Path) -> None:
    text = example("narrow-gauge")
    slope = text.split("[[slope]]")[1].split("[set_out]")[0]
    both = text.replace("[set_out]", f"[[slope]]{slope.replace('porch', 'Porch!')}\n[set_out]")
    found = set_out_text(both)
    written = [path.name for path, _ in write_sheet_files(found, folder=tmp_path, paper="a4", made_at=MADE_AT)]
    assert len(written) == len(set(written))
    assert {"porch-sheet.pdf", "porch-2-sheet.pdf"} <= set(written)
