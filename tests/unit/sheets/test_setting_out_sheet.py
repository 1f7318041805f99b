"""The sheet as data: what stands where, and that every figure is the result's."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result
from gaugerod.sheets.setting_out_sheet import DISCLAIMER, setting_out_sheet
from gaugerod.sheets.sheet import (
    Alarm,
    Block,
    Bullets,
    Figure,
    Figures,
    Heading,
    PaperSize,
    Pictures,
    Prose,
    Sheet,
    Steps,
    Table,
)  # fmt: skip
from tests.scenario.by_hand import result_by_hand


def sheet_of(result: Result, size: PaperSize = PaperSize.A4) -> Sheet:
    return setting_out_sheet(result, result.slopes[0], size=size)


def headings(sheet: Sheet) -> list[str]:
    return [block.text for block in sheet.blocks if isinstance(block, Heading)]


def figures(sheet: Sheet) -> dict[str, Figure]:
    return {each.label: each for block in sheet.blocks if isinstance(block, Figures) for each in block.figures}


def tables(sheet: Sheet) -> list[Table]:
    return [block for block in sheet.blocks if isinstance(block, Table)]


def said(block: Block) -> Iterator[str]:
    match block:
        case Heading() | Prose():
            yield block.text
        case Alarm():
            yield from (block.title, *block.lines)
        case Steps() | Bullets():
            yield from block.lines
        case Table():
            yield from (cell for row in block.rows for cell in row)
        case Figures():
            yield from (value for figure in block.figures for value in figure.values)
        case Pictures():
            yield from (words.text for placed, _ in block.pictures for words in placed.drawing.words)
        case _:
            return


def all_said(sheet: Sheet) -> list[str]:
    return [text for block in sheet.blocks for text in said(block)]


def test_the_parts_stand_in_the_order_they_are_read() -> None:
    assert [
        "Slope rear", "Rod 1: 0 mm from the left end, 4905 mm to the apex",
        "Rod 2: 7460 mm from the left end, 4918 mm to the apex", "Check in sets of ten", "Perps across",
        "How the courses end", "Opening A: rooflight", "Three courses in section", "Eaves and top in section",
        "Method", "Findings", "What could change", "Cautions", "Working",
    ] == headings(sheet_of(result_by_hand()))  # fmt: skip


def test_the_numbers_read_first_are_the_results() -> None:
    first = figures(sheet_of(result_by_hand()))
    assert {
        "Courses": ("15",), "Gauge": ("left 322.7 mm", "right 323.6 mm"), "Headlap kept": ("96.3 mm",),
        "Eaves overhang": ("50 mm",), "First batten": ("347 mm",), "Top batten": ("left 4865 mm", "right 4878 mm"),
        "Units in a course": ("25",), "Cover of one unit": ("300 mm",), "Both verges": ("45 mm",),
        "Least cut piece": ("212 mm",),
    } == {label: figure.values for label, figure in first.items()}  # fmt: skip
    assert "on the slope; 41 mm on the level" == first["Eaves overhang"].note
    assert "at least 75 mm" == first["Headlap kept"].note
    assert "at most 345 mm" == first["Gauge"].note


def test_what_is_outside_stands_before_the_numbers_and_beside_its_own() -> None:
    sheet = sheet_of(result_by_hand(outside=True))
    kinds = [type(block) for block in sheet.blocks]
    assert kinds.index(Alarm) < kinds.index(Figures)
    assert "OUTSIDE: headlap" == figures(sheet)["Headlap kept"].wrong
    assert "" == figures(sheet)["Gauge"].wrong


def test_nothing_outside_raises_no_alarm() -> None:
    assert not [block for block in sheet_of(result_by_hand()).blocks if isinstance(block, Alarm)]


def test_a_finding_of_the_job_as_a_whole_is_told_on_the_slopes_sheet() -> None:
    result = result_by_hand()
    whole = replace(result.findings[0], where="job", rule="exposure", proposed=1.0)
    sheet = sheet_of(replace(result, findings=(whole, *result.findings)))
    assert any("Exposure (job)." in line for block in sheet.blocks if isinstance(block, Alarm) for line in block.lines)


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_every_mark_of_every_rod_is_on_the_sheet_with_a_box_to_tick(unit: LengthUnit) -> None:
    result = result_by_hand(unit=unit)
    rods = [table for table in tables(sheet_of(result)) if table.columns[0].heading == "Batten"]
    for rod, table in zip(result.slopes[0].courses.rods, rods, strict=True):
        assert len(rod.marks_mm) == len(table.rows)
        assert {"☐"} == {row[3] for row in table.rows}


def test_another_mark_is_another_figure_on_the_sheet() -> None:
    result = result_by_hand()
    slope = result.slopes[0]
    rod = slope.courses.rods[0]
    moved = replace(rod, marks_mm=(*rod.marks_mm[:7], 2612.0, *rod.marks_mm[8:]))
    courses = replace(slope.courses, rods=(moved, *slope.courses.rods[1:]))
    changed = replace(result, slopes=(replace(slope, courses=courses),))
    assert "2612" not in all_said(sheet_of(result))
    assert "2612" in all_said(sheet_of(changed))


def test_battens_already_nailed_are_marked_kept() -> None:
    result = result_by_hand()
    slope = result.slopes[0]
    kept = replace(slope.courses.rods[0], kept_count=3)
    courses = replace(slope.courses, rods=(kept, *slope.courses.rods[1:]))
    sheet = sheet_of(replace(result, slopes=(replace(slope, courses=courses),)))
    rod = next(table for table in tables(sheet) if table.columns[0].heading == "Batten")
    assert ["kept", "kept", "kept", "☐"] == [row[3] for row in rod.rows[:4]]


def test_stations_with_the_same_rod_share_its_table() -> None:
    sheet = sheet_of(result_by_hand(stations=((0.0, 4905.0), (7460.0, 4905.0))))
    assert "Rods 1 and 2: 0 mm and 7460 mm from the left end, 4905 mm to the apex" in headings(sheet)


def test_the_sets_of_ten_sum_to_the_rod() -> None:
    result = result_by_hand()
    table = next(table for table in tables(sheet_of(result)) if table.columns[0].heading == "Battens")
    marks_mm = result.slopes[0].courses.rods[0].marks_mm
    assert ["1 to 11", "11 to 15"] == [row[0] for row in table.rows]
    assert marks_mm[-1] - marks_mm[0] == sum(float(row[1]) for row in table.rows)


def test_findings_stand_outside_first_with_a_shape_and_a_word_and_their_source() -> None:
    result = result_by_hand(outside=True)
    table = next(table for table in tables(sheet_of(result)) if table.columns[0].heading == "Verdict")
    assert ["▲ OUTSIDE", "◇ not covered", "● within"] == [row[0] for row in table.rows]
    assert "74.6 mm" == table.rows[0][2]
    assert "≥ 75 mm" == table.rows[0][3]
    assert "An invented code of practice, table 4 (published)" in table.rows[0][1]
    assert "(memory)" in table.rows[2][1]


def test_an_outside_finding_never_reads_as_its_limit() -> None:
    result = result_by_hand(outside=True)
    short = replace(result.slopes[0].findings[0], proposed=74.97)
    slope = replace(result.slopes[0], findings=(short,))
    sheet = sheet_of(replace(result, slopes=(slope,), findings=(short,)))
    table = next(table for table in tables(sheet) if table.columns[0].heading == "Verdict")
    assert Verdict.OUTSIDE is short.verdict
    assert ("74.9 mm", "≥ 75 mm") == table.rows[0][2:]


def test_method_cautions_and_working_are_given_whole() -> None:
    result = result_by_hand()
    text = all_said(sheet_of(result))
    assert set(result.slopes[0].method) <= set(text)
    assert set(result.cautions) <= set(text)
    assert {"rear slope", "· greatest gauge", "345 mm"} <= set(text)


def test_the_foot_names_job_slope_edition_and_version_and_what_a_sheet_is_not() -> None:
    first, second = sheet_of(result_by_hand(title="T" * 400)).foot.splitlines()
    assert f"{'T' * 47}… · slope rear · edition GB · gaugerod 0.1.0" == first
    assert DISCLAIMER == second


def test_no_cover_width_says_so_instead_of_perps() -> None:
    result = result_by_hand()
    slope = replace(result.slopes[0], across=None)
    sheet = sheet_of(replace(result, slopes=(slope,)))
    assert "No perps are set out for this covering: the findings say why." in all_said(sheet)


@pytest.mark.parametrize("size", list(PaperSize))
def test_every_picture_fits_between_the_margins(size: PaperSize) -> None:
    for block in sheet_of(result_by_hand(), size).blocks:
        if isinstance(block, Pictures):
            assert sum(placed.paper.width_mm for placed, _ in block.pictures) <= size.text_width_mm
