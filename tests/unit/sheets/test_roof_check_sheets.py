"""The drawing and the record of a roof check: flags by shape and word, labels clear of each other, marks that hold."""

import pytest

from gaugerod.as_built.check_roof import check_roof
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.drawing import Letter, Pen
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.roof_check_sheet import roof_check_sheet
from gaugerod.sheets.roof_check_words import NOT_LOOKED_AT
from gaugerod.sheets.sheet import Alarm, Bullets, ColumnKind, Heading, PaperSize, Prose, Table
from tests.scenario.roofs_as_built import at_gaps, battens, roof

SHORT = check_roof(
    roof(battens(*at_gaps(320, 320, 330, 310, 320, 320)), battens(*at_gaps(320, 320, 335, 305, 320, 320), at_mm=6000.0))
)
SOUND = check_roof(roof(battens(*at_gaps(320, 320, 320))))


def drawn(check: RoofCheck, unit: LengthUnit = LengthUnit.MM) -> Placed:
    return roof_check_drawing(check, unit=unit, room_width_mm=182.0, room_height_mm=120.0)


def test_a_short_lap_has_a_bar_and_a_triangle_on_every_rod_it_is_short_at_and_its_words() -> None:
    drawing = drawn(SHORT).drawing
    (bars,) = (path.runs_mm for path in drawing.paths if path.pen is Pen.CUT)
    (triangles,) = (path.runs_mm for path in drawing.paths if path.pen is Pen.OPENING)
    assert [((0.0, 970.0), (0.0, 1300.0)), ((6000.0, 970.0), (6000.0, 1305.0))] == list(bars)
    assert [3, 3] == [len(triangle) for triangle in triangles]
    said = {words.text for words in drawing.words}
    assert {"leak 1: lap 4 over 3", "short 10 mm", "keep to batten 3", "970"} <= said
    assert "Short lap, course 4 over 3: 10 mm" in drawing.says


def test_a_sound_roof_flags_nothing() -> None:
    drawing = drawn(SOUND).drawing
    assert {Pen.CUT, Pen.OPENING}.isdisjoint({path.pen for path in drawing.paths})
    assert "No lap is short." in drawing.says


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("gaps", [(320, 330, 310, 320, 326), (330,) * 6, (90, 340, 340, 90, 340)])
def test_no_label_stands_on_another_or_off_the_paper(unit: LengthUnit, gaps: tuple[float, ...]) -> None:
    placed = drawn(check_roof(roof(battens(*at_gaps(*gaps)))), unit)
    boxes = [words_box(words, placed.paper) for words in placed.drawing.words if words.letter is not Letter.EDGE]
    assert not [(one, other) for index, one in enumerate(boxes) for other in boxes[:index] if one.overlaps(other)]
    assert all(box.left_mm >= 0 and box.right_mm <= placed.paper.width_mm for box in boxes)
    assert all(box.bottom_mm >= 0 and box.top_mm <= placed.paper.height_mm for box in boxes)


def test_more_short_laps_than_there_is_room_for_are_labelled_worst_first_and_all_flagged() -> None:
    placed = drawn(check_roof(roof(battens(*at_gaps(*[326 + number for number in range(30)])))))
    labelled = [words.text for words in placed.drawing.words if words.text.startswith("leak ")]
    assert 10 < len(labelled) < 30
    assert {f"leak {rank}" for rank in range(1, len(labelled) + 1)} == {text.partition(":")[0] for text in labelled}
    (triangles,) = (path.runs_mm for path in placed.drawing.paths if path.pen is Pen.OPENING)
    assert 30 == len(triangles)


def test_the_record_begins_with_what_lets_water_in_and_tells_the_new_marks() -> None:
    sheet = roof_check_sheet(SHORT, title="Check", unit=LengthUnit.MM, size=PaperSize.A4)
    (alarm,) = (block for block in sheet.blocks if isinstance(block, Alarm))
    assert alarm.lines[0].startswith("Lap as built (course 4 over course 3, 6000 mm from the left). ")
    assert "Course 4 laps course 3 by 65.0 mm, 10.0 mm short of 75 mm." in alarm.lines[0]
    more = [block.text for block in sheet.blocks if isinstance(block, Prose) and " more outside " in block.text]
    assert len(alarm.lines) + sum(int(text.split()[0]) for text in more) == len(SHORT.outside)
    marks, *_ = (
        block
        for block in sheet.blocks
        if isinstance(block, Table) and any(c.kind is ColumnKind.MARK for c in block.columns)
    )
    assert [("1", "kept", "330", "330"), ("3", "kept", "970", "970")] == [marks.rows[0], marks.rows[2]]
    assert "new" == marks.rows[3][1]


def test_the_record_of_a_sound_roof_says_so() -> None:
    sheet = roof_check_sheet(SOUND, title="Check", unit=LengthUnit.MM, size=PaperSize.LETTER)
    assert not [block for block in sheet.blocks if isinstance(block, Alarm)]
    assert Prose(text="No lap is short and nothing is outside a rule.") in sheet.blocks
    assert not [block for block in sheet.blocks if isinstance(block, Heading) and block.text.startswith("Advice")]


def test_the_record_shows_every_gap_with_its_run_out_and_what_the_check_does_not_cover() -> None:
    sheet = roof_check_sheet(SHORT, title="Check", unit=LengthUnit.MM, size=PaperSize.A4)
    gaps = next(block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].heading == "Courses")
    # 1920 over six gaps is 320: after the third, of 330, the fourth batten lies 10 above its place.
    assert ("1 to 2", "320", "0", "320", "0") == gaps.rows[0]
    assert ("3 to 4", "330, stretched", "+10", "335, stretched", "+15") == gaps.rows[2]
    assert Bullets(lines=NOT_LOOKED_AT) in sheet.blocks
    assert any("Bow" in line for line in NOT_LOOKED_AT)


def test_what_is_uneven_by_a_house_tolerance_stands_as_advice_and_never_as_outside() -> None:
    sheet = roof_check_sheet(SHORT, title="Check", unit=LengthUnit.MM, size=PaperSize.A4)
    rules = {finding.rule for finding in SHORT.advice}
    assert rules
    findings = next(
        block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].heading == "Verdict"
    )
    outside = [row[1] for row in findings.rows if "OUTSIDE" in row[0]]
    assert [] == [line for line in outside for rule in rules if line.lower().startswith(rule)]
    headings = [block.text for block in sheet.blocks if isinstance(block, Heading)]
    assert f"Advice: {len(SHORT.advice)} things uneven by house tolerances" in headings
