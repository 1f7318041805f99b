"""Sheets of plain tiles, slates and random slates: every mark stands on paper, and the section is drawn to scale."""

from collections.abc import Iterable
from dataclasses import replace
from importlib.resources import files
from itertools import combinations, pairwise
from math import cos, floor, radians, sin

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.set_out import set_out
from gaugerod.sheets.across_tables import across_tables
from gaugerod.sheets.cut_list import cut_table, edges_cut
from gaugerod.sheets.drawing import Words
from gaugerod.sheets.key_figures import key_figures
from gaugerod.sheets.laying_sheet import laying_sheet
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.lettering import Box, words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.rod_strip import rod_strip
from gaugerod.sheets.rod_tables import rod_tables
from gaugerod.sheets.roof_sheet import roof_sheet
from gaugerod.sheets.section_details import eaves_and_top, eaves_section, top_section
from gaugerod.sheets.section_units import section_units
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.sheet import Block, Figure, Heading, PaperSize, Pictures, Prose, Steps, Table
from gaugerod.sheets.three_courses import three_courses

FAMILIES = ("demo", "feet-and-inches", "plain-tiles", "slates", "random-slates", "hipped-house")


def result(name: str) -> Result:
    return set_out(read_job_text(files("gaugerod.adapters.job_file").joinpath("examples", f"{name}.toml").read_bytes()))


def first(name: str) -> tuple[Result, SlopeResult]:
    found = result(name)
    return found, found.slopes[0]


def sections(name: str, unit: LengthUnit) -> list[Placed]:
    found, slope = first(name)
    covering = found.job.covering
    middle = three_courses(slope, covering, unit=unit)
    assert middle is not None
    rows = eaves_and_top(slope, covering, ridge_cover_mm=found.job.wishes.ridge_cover_mm, unit=unit)
    return [middle, *(placed for row in rows for placed in row)]


@pytest.mark.parametrize("name", FAMILIES)
@pytest.mark.parametrize("unit", list(LengthUnit))
def test_the_words_of_a_section_keep_clear_of_each_other_and_on_the_paper(name: str, unit: LengthUnit) -> None:
    for placed in sections(name, unit):
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        for box in boxes:
            assert box.left_mm >= 0
            assert box.bottom_mm >= 0
            assert box.right_mm <= placed.paper.width_mm
            assert box.top_mm <= placed.paper.height_mm
        along = [turned_box(words, placed) for words in placed.drawing.words if words.turned_deg]
        assert not [pair for pair in combinations(along, 2) if pair[0].overlaps(pair[1])], placed.drawing.title
        letters = [box for words in placed.drawing.words if words.turned_deg for box in letter_boxes(words, placed)]
        level = [words_box(words, placed.paper) for words in placed.drawing.words if not words.turned_deg]
        assert not [box for box in level for letter in letters if box.overlaps(letter)], placed.drawing.title


def letter_boxes(words: Words, placed: Placed) -> list[Box]:
    """The room of each letter of turned words, as a square a little smaller than it."""
    full = words_box(words, placed.paper)
    turn, count = radians(words.turned_deg), len(words.text)
    middle_x, middle_y = (full.left_mm + full.right_mm) / 2, (full.bottom_mm + full.top_mm) / 2
    step_mm, half_mm = 0.6021 * words.size_paper_mm, 0.3 * words.size_paper_mm
    centres = [(place - (count - 1) / 2) * step_mm for place in range(count)]
    return [
        Box(
            left_mm=middle_x + along * cos(turn) - half_mm,
            bottom_mm=middle_y + along * sin(turn) - half_mm,
            right_mm=middle_x + along * cos(turn) + half_mm,
            top_mm=middle_y + along * sin(turn) + half_mm,
        )
        for along in centres
    ]


def turned_box(words: Words, placed: Placed) -> Box:
    """The room of words along the slope, in axes turned with them: there their boxes are tight."""
    turn = -radians(words.turned_deg)
    x, y = words.at_mm
    at_mm = (x * cos(turn) - y * sin(turn), x * sin(turn) + y * cos(turn))
    return words_box(replace(words, at_mm=at_mm, turned_deg=0.0), placed.paper)


@pytest.mark.parametrize("name", FAMILIES)
def test_every_line_of_a_section_stays_on_its_paper(name: str) -> None:
    for placed in sections(name, LengthUnit.MM):
        paper = placed.paper
        for leader in placed.drawing.leaders:
            for (x, y), (right, up) in zip(leader.points_mm, leader.shifts_paper_mm, strict=True):
                assert 0.0 <= paper.origin_paper_mm[0] + x / paper.scale_ratio + right <= paper.width_mm
                assert 0.0 <= paper.origin_paper_mm[1] + y / paper.scale_ratio + up <= paper.height_mm


@pytest.mark.parametrize("name", ["plain-tiles", "slates", "random-slates"])
def test_the_eaves_show_the_under_eaves_course_with_its_own_lap_and_mark(name: str) -> None:
    found, slope = first(name)
    texts = {w.text for w in eaves_section(slope, found.job.covering, unit=LengthUnit.MM).drawing.words}
    extras = slope.diminishing or slope.double_lap
    assert extras is not None
    rod = extras.rods[0]
    assert f"under-eaves {rod.under_eaves_mark_mm:.0f}" in texts
    assert any(text.endswith(f"lap {floor(rod.laps_mm[0]):.0f}") for text in texts)
    assert any(
        text in texts
        for text in (
            f"under-eaves length {extras.under_eaves_length_mm:.0f}",
            f"under-eaves {extras.under_eaves_length_mm:.0f}",
        )
    )


@pytest.mark.parametrize("name", ["plain-tiles", "slates", "random-slates"])
def test_the_top_shows_the_lap_of_the_ridge(name: str) -> None:
    found, slope = first(name)
    cover_mm = found.job.wishes.ridge_cover_mm
    placed = top_section(slope, found.job.covering, ridge_cover_mm=cover_mm, unit=LengthUnit.MM)
    extras = slope.diminishing or slope.double_lap
    assert extras is not None
    assert f"ridge laps {floor(extras.rods[0].laps_mm[-1]):.0f}" in {w.text for w in placed.drawing.words}


@pytest.mark.parametrize("name", FAMILIES)
def test_in_a_section_every_unit_is_drawn_above_the_one_it_lies_on(name: str) -> None:
    found, slope = first(name)
    held = section_units(slope, found.job.covering)
    for lower, upper in pairwise(held.units):
        assert pytest.approx(lower.underside_mm(upper.tail_mm) + held.thick_mm) == upper.lift_mm
        assert upper.underside_mm(lower.head_mm) > lower.underside_mm(lower.head_mm)


@pytest.mark.parametrize("name", FAMILIES)
def test_the_section_says_the_lap_that_is_laid(name: str) -> None:
    found, slope = first(name)
    assert slope.laid is not None
    placed = three_courses(slope, found.job.covering, unit=LengthUnit.MM)
    assert placed is not None
    assert "headlap " in placed.drawing.says
    said_mm = float(placed.drawing.says.split("headlap ")[1].split(";")[0].split(".")[0])
    assert said_mm >= int(slope.courses.headlap_mm)


def rows_of(blocks: Iterable[Block]) -> list[tuple[str, ...]]:
    return [row for block in blocks if isinstance(block, Table) for row in block.rows]


@pytest.mark.parametrize("name", ["plain-tiles", "slates", "random-slates"])
@pytest.mark.parametrize("unit", list(LengthUnit))
def test_every_extra_mark_is_a_row_of_the_rod_table(name: str, unit: LengthUnit) -> None:
    _, slope = first(name)
    extras = slope.diminishing or slope.double_lap
    assert extras is not None
    rows = rows_of(rod_tables(slope, unit=unit))
    eaves = [row for row in rows if row[0] == "eaves"]
    assert {bare_length(rod.under_eaves_mark_mm, unit) for rod in extras.rods} == {
        next(cell for cell in row if cell in {bare_length(rod.under_eaves_mark_mm, unit) for rod in extras.rods})
        for row in eaves
    }
    if slope.double_lap is not None:
        shorts = {bare_length(rod.short.mark_mm, unit) for rod in slope.double_lap.rods if rod.short is not None}
        assert shorts == {row[1] for row in rows if row[0] == "top"}


def test_each_course_of_random_slates_stands_with_its_slate_and_its_own_lap() -> None:
    _, slope = first("random-slates")
    assert slope.diminishing is not None
    rod = slope.diminishing.rods[0]
    rows = rows_of(rod_tables(slope, unit=LengthUnit.MM))[: len(rod.marks_mm) + 1]
    assert ("eaves", "277", "", "cut 352") == rows[0][:4]
    assert ("1", "525", "248", "600", "247", "") == rows[1][:6]
    # Course 6 starts the next length: a drop course.
    assert ("6", "1660", "147", "500") == rows[6][:4]
    for row, lap_mm in zip(rows[2:], rod.laps_mm, strict=False):
        assert lap_mm - 0.1 <= float(row[5]) <= lap_mm
    assert "cut 296" == rows[-1][3]


def test_single_lap_has_no_extra_rows() -> None:
    assert {"eaves", "top"}.isdisjoint({row[0] for row in rows_of(rod_tables(first("demo")[1], unit=LengthUnit.MM))})


@pytest.mark.parametrize("name", ["plain-tiles", "slates", "random-slates"])
def test_the_full_size_rod_carries_the_extra_marks_and_says_what_a_mark_is(name: str) -> None:
    found, slope = first(name)
    sheet = rod_strip(found, slope, numbers=(1,), size=PaperSize.A4)
    said = [
        words.text for b in sheet.blocks if isinstance(b, Pictures) for p, _ in b.pictures for words in p.drawing.words
    ]
    extras = slope.diminishing or slope.double_lap
    assert extras is not None
    read = "top edge" if name == "plain-tiles" else "nail line"
    assert f"{read}, under-eaves course, {extras.rods[0].under_eaves_mark_mm:.0f}" in said
    assert f"{read}, course 1" in said
    (steps,) = [block for block in sheet.blocks if isinstance(block, Steps)]
    assert ("nails" in steps.lines[-1]) is (read == "nail line")


@pytest.mark.parametrize("name", ["demo", "plain-tiles", "slates", "random-slates"])
@pytest.mark.parametrize("unit", list(LengthUnit))
def test_the_words_of_the_full_size_rod_keep_clear_of_each_other(name: str, unit: LengthUnit) -> None:
    found, slope = first(name)
    told = replace(found, job=replace(found.job, show_lengths_in=unit))
    for size in PaperSize:
        for block in rod_strip(told, slope, numbers=(1,), size=size).blocks:
            if isinstance(block, Pictures):
                ((placed, _),) = block.pictures
                boxes = [(words.text, words_box(words, placed.paper)) for words in placed.drawing.words]
                touching = [(a, b) for (a, one), (b, other) in combinations(boxes, 2) if one.overlaps(other)]
                assert not touching


def figures(name: str) -> dict[str, Figure]:
    found, slope = first(name)
    return {f.label: f for f in key_figures(slope, covering=found.job.covering, unit=LengthUnit.MM)}


def test_the_numbers_read_first_are_those_of_the_family() -> None:
    tiles, slates, random = figures("plain-tiles"), figures("slates"), figures("random-slates")
    assert (("190 mm",), "long; its mark at 129 mm") == (
        tiles["Under-eaves unit"].values,
        tiles["Under-eaves unit"].note,
    )
    assert ("190 mm",) == tiles["Short course at the top"].values
    assert "with a joint of 1.5 mm" == tiles["Cover of one unit"].note
    assert ("321 mm",) == slates["Nail holes"].values
    assert "First nail line" in slates
    assert "First batten" in tiles
    assert ("600 mm", "to 400 mm") == random["Lengths"].values
    assert ("247 mm", "to 147 mm") == random["Gauge"].values
    assert ("352 mm",) == random["Under-eaves slate"].values


def test_what_lies_at_the_verges_is_told_once() -> None:
    _, slope = first("plain-tiles")
    ends = rows_of(across_tables(slope, unit=LengthUnit.MM))[-4:]
    assert [
        ("left", "1, 3, 5 …", "one unit", "165", "165"),
        ("left", "2, 4, 6 …", "a unit-and-a-half", "248", "248"),
        ("right", "1, 3, 5 …", "one unit", "165", "165"),
        ("right", "2, 4, 6 …", "a unit-and-a-half", "248", "248"),
    ] == ends


@pytest.mark.parametrize("name", FAMILIES)
@pytest.mark.parametrize("size", list(PaperSize))
def test_every_sheet_of_every_family_is_made(name: str, size: PaperSize) -> None:
    found = result(name)
    for slope in found.slopes:
        headings = [
            block.text for block in setting_out_sheet(found, slope, size=size).blocks if isinstance(block, Heading)
        ]
        assert "Three courses in section" in headings
        assert slope.laid is not None
        assert laying_sheet(found, slope, slope.laid, size=size).blocks
    for roof in found.roofs:
        assert roof_sheet(found, roof, size=size).blocks


@pytest.mark.parametrize("name", ["hipped-house", "random-slates", "demo", "slates"])
def test_piece_numbers_on_the_sheets_are_those_of_the_result(name: str) -> None:
    found = result(name)
    numbers = {piece.number for slope in found.slopes if slope.laid for piece in slope.laid.pieces}
    seen: set[int] = set()
    for slope in found.slopes:
        assert slope.laid is not None
        for block in laying_sheet(found, slope, slope.laid, size=PaperSize.A4).blocks:
            if isinstance(block, Table) and block.columns[0].heading == "piece":
                for row in block.rows:
                    low, *high = (int(number) for number in row[0].split(" to "))
                    seen |= set(range(low, (high or [low])[0] + 1))
    assert numbers == seen


def test_no_two_spans_of_a_lane_overlap() -> None:
    found, slope = first("slates")
    assert slope.laid is not None
    placed = three_courses(slope, found.job.covering, unit=LengthUnit.MM)
    assert placed is not None
    middles = [words.at_mm for words in placed.drawing.words]
    assert all(one != other for one, other in combinations(middles, 2))


def test_a_slope_that_leans_out_past_its_eaves_says_how_the_perps_carry_on() -> None:
    found = result("hipped-house")
    said = {
        slope.slope.name: [block.text for block in across_tables(slope, unit=LengthUnit.MM) if isinstance(block, Prose)]
        for slope in found.slopes
    }
    leaning = {name for name, texts in said.items() if any("Carry on there" in text for text in texts)}
    past = {
        slope.slope.name
        for slope in found.slopes
        if max(point[0] for point in slope.shape.outline_mm) > slope.slope.taped.eaves_mm + 297.0
        or min(point[0] for point in slope.shape.outline_mm) < -297.0
    }
    assert leaning == past
    assert "house 3" in leaning
    assert any("891" in text for text in said["house 3"])


def test_slates_sawn_alike_side_by_side_share_a_row() -> None:
    found, slope = first("random-slates")
    rows = cut_table(found, slope, "ridge").rows
    assert len(rows) < 5
    assert any(" to " in row[0] for row in rows)


def test_a_piece_says_what_is_left_to_hold_it_by_only_where_that_is_known() -> None:
    found, slope = first("random-slates")
    assert {"holes not known"} == {row[6] for row in cut_table(found, slope, "ridge").rows}
    house = result("hipped-house")
    (edge, *_) = edges_cut(house.slopes[0])
    held = {row[6] for row in cut_table(house, house.slopes[0], edge).rows}
    assert {"no nib, no hole", "2 nibs, 2 holes"} <= held


def test_no_angle_on_the_roof_sheet_is_a_minus_nothing() -> None:
    found = result("hipped-house")
    cells = {
        cell
        for roof in found.roofs
        for row in rows_of(roof_sheet(found, roof, size=PaperSize.A4).blocks)
        for cell in row
    }
    assert not [cell for cell in cells if "-0.0°" in cell]
    assert any("0.0°" in cell for cell in cells)
