"""The batten joint plan: every joint on its rafter, every piece told, nothing on top of anything else."""

from itertools import combinations

import pytest

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Letter, Pen
from gaugerod.sheets.joint_drawing import joint_drawing
from gaugerod.sheets.joint_pattern import joint_pattern
from gaugerod.sheets.joint_sheet import joint_sheet
from gaugerod.sheets.joint_tables import batten_table, names_said
from gaugerod.sheets.lengths_shown import bare_fine_length
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.sheet import Alarm, PaperSize, Pictures, Table
from gaugerod.substrate.battens.answer import Battens, SlopeBattens
from tests.scenario.beneath_results import NAMES, beneath_result, edited_demo, slope_named

STUCK = edited_demo(
    ('stock = ["3.6 m", "4.2 m", "4.8 m", "5.1 m"]', 'stock = ["2.4 m"]'),
    ('rafter_spacing = "400 mm"', 'rafter_spacing = "600 mm"'),
    ('across = "7.460 m"', 'across = "8.400 m"'),
    ('ridge = "7.462 m"\ndiagonals = { from_left = "8.935 m", from_right = "8.928 m" }\n', ""),
)


def battens_of(result: Result) -> Battens:
    assert result.beneath.battens is not None
    return result.beneath.battens


def plan_of(result: Result, battens: SlopeBattens, width_mm: float) -> Placed:
    slope = slope_named(result, battens.where)
    unit = result.job.show_lengths_in
    return joint_drawing(slope, battens, unit=unit, room_width_mm=width_mm, room_height_mm=1.1 * width_mm)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width_mm", [182.0, 269.0])
def test_every_joint_is_marked_on_its_rafter(name: str, width_mm: float) -> None:
    result = beneath_result(name)
    for battens in battens_of(result).slopes:
        marks = [path for path in plan_of(result, battens, width_mm).drawing.paths if path.pen is Pen.JOINT]
        middles = [(ring[0][0] + ring[2][0]) / 2 for path in marks for ring in path.runs_mm]
        assert battens.joints_count == len(middles)
        assert all(min(abs(at - rafter) for rafter in battens.rafters_mm) < 1e-6 for at in middles)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width_mm", [182.0, 269.0])
def test_words_stay_on_the_paper_and_lengths_clear_of_each_other(name: str, width_mm: float) -> None:
    result = beneath_result(name)
    for battens in battens_of(result).slopes:
        placed = plan_of(result, battens, width_mm)
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        assert all(-0.5 <= box.left_mm and box.right_mm <= placed.paper.width_mm + 0.5 for box in boxes)
        assert all(-0.5 <= box.bottom_mm and box.top_mm <= placed.paper.height_mm + 0.5 for box in boxes)
        keys = [words_box(words, placed.paper) for words in placed.drawing.words if words.letter is Letter.KEY]
        assert not [pair for pair in combinations(keys, 2) if pair[0].overlaps(pair[1])]
        lengths = [
            words_box(words, placed.paper)
            for words in placed.drawing.words
            if words.letter is Letter.EDGE and words.text[0].isdigit()
        ]
        assert not [pair for pair in combinations(lengths, 2) if pair[0].overlaps(pair[1])]


@pytest.mark.parametrize("name", NAMES)
def test_the_table_tells_every_piece_of_every_batten(name: str) -> None:
    result = beneath_result(name)
    unit = result.job.show_lengths_in
    for battens in battens_of(result).slopes:
        rows = batten_table(battens, unit).rows
        told = [piece for row in rows for line in row[2].split("\n") for piece in line.split(" + ")]
        for line in battens.lines:
            for stretch in line.stretches:
                for piece_mm in stretch.pieces_mm:
                    assert bare_fine_length(piece_mm, unit, towards=Sense.AT_MOST) in told


def test_a_pattern_is_told_by_its_letters_with_all_their_battens() -> None:
    (battens,) = battens_of(beneath_result("plain-tiles")).slopes
    every = battens.repeats_every
    assert every is not None
    rows = batten_table(battens, LengthUnit.MM).rows
    assert every == len(rows)
    assert ["A", "B", "C", "D"][:every] == [row[0] for row in rows]
    assert "eaves" == rows[0][1].split(", ")[0]


def test_the_pattern_is_drawn_once_with_its_lengths_and_only_where_it_repeats() -> None:
    plain, demo = beneath_result("plain-tiles"), beneath_result("demo")
    (battens,) = battens_of(plain).slopes
    placed = joint_pattern(plain.slopes[0], battens, unit=LengthUnit.MM, room_width_mm=182.0)
    assert placed is not None
    pieces = {str(piece) for line in battens.lines for stretch in line.stretches for piece in stretch.pieces_mm}
    assert pieces <= {words.text for words in placed.drawing.words}
    assert "Course A" in placed.drawing.says
    (fanned,) = battens_of(demo).slopes
    assert fanned.repeats_every is None
    assert joint_pattern(demo.slopes[0], fanned, unit=LengthUnit.MM, room_width_mm=182.0) is None


def test_where_no_plan_is_strict_the_sheet_says_so_first_and_offers_others() -> None:
    battens = battens_of(STUCK)
    sheet = joint_sheet(STUCK, STUCK.slopes[0], battens, battens.slopes[0], size=PaperSize.A4)
    assert isinstance(sheet.blocks[1], Alarm)
    assert "◇ No joint plan: read before starting" == sheet.blocks[1].title
    assert not [block for block in sheet.blocks if isinstance(block, Pictures)]
    offered = [row for block in sheet.blocks if isinstance(block, Table) for row in block.rows if len(row) == 5]
    assert len(battens.slopes[0].relaxed) == len([row for row in offered if row[2] in {"● kept", "▲ BROKEN"}])


def test_numbers_that_follow_each_other_are_told_by_first_and_last() -> None:
    assert "" == names_said([])
    assert "1, 2, 5" == names_said(["1", "2", "5"])
    assert "eaves, 1 to 3, top" == names_said(["eaves", "1", "2", "3", "top"])
