"""The fixing plan: areas to chalk, courses nailed throughout, and counts that add up."""

import pytest

from gaugerod.fixing.plan import Region
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.fixing_drawing import fixing_drawing
from gaugerod.sheets.fixing_sheet import LEAST_ONLY, fixing_sheet
from gaugerod.sheets.fixing_tables import kind_table
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.sheet import PaperSize, Prose, Table
from tests.scenario.beneath_results import NAMES, beneath_result, slope_named


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width_mm", [182.0, 269.0])
def test_perimeter_and_field_are_drawn_and_words_stay_on_the_paper(name: str, width_mm: float) -> None:
    result = beneath_result(name)
    for plan in result.beneath.fixings:
        slope = slope_named(result, plan.where)
        assert slope.laid is not None
        placed = fixing_drawing(
            slope,
            slope.laid,
            plan,
            unit=result.job.show_lengths_in,
            room_width_mm=width_mm,
            room_height_mm=width_mm,
        )
        pens = {path.pen for path in placed.drawing.paths}
        assert Pen.PERIMETER in pens
        assert (Pen.FIELD in pens) is bool(plan.field_mm)
        assert (Pen.HATCH in pens) is (plan.field_rule.every_count > 1)
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        assert all(-0.5 <= box.left_mm and box.right_mm <= placed.paper.width_mm + 0.5 for box in boxes)


@pytest.mark.parametrize("name", NAMES)
def test_the_table_adds_up_to_every_fixing_and_every_unit(name: str) -> None:
    for plan in beneath_result(name).beneath.fixings:
        *rows, total = kind_table(plan).rows
        assert "All units" == total[0]
        assert plan.units_count(Region.PERIMETER) + plan.units_count(Region.FIELD) == int(total[2])
        for column in range(2, len(total)):
            assert int(total[column]) == sum(int(row[column]) for row in rows if row[column] != "–")
        assert plan.total.in_all_count == sum(int(cell) for cell in total[3:])


def test_courses_nailed_throughout_are_listed_by_their_numbers() -> None:
    result = beneath_result("plain-tiles")
    (plan,) = result.beneath.fixings
    slope = result.slopes[0]
    assert slope.laid is not None
    sheet = fixing_sheet(result, slope, slope.laid, plan, size=PaperSize.A4)
    told = [block.text for block in sheet.blocks if isinstance(block, Prose)]
    listed = ", ".join(map(str, plan.nailed_courses))
    assert f"Counted from the eaves, 1 the lowest full course: {listed}." in told
    (courses,) = [block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].heading == "Course"]
    assert {f"course {number}" for number in plan.nailed_courses} <= {row[0] for row in courses.rows}


@pytest.mark.parametrize("name", NAMES)
def test_every_sheet_says_that_it_is_the_least_and_no_wind_calculation(name: str) -> None:
    result = beneath_result(name)
    for plan in result.beneath.fixings:
        slope = slope_named(result, plan.where)
        assert slope.laid is not None
        sheet = fixing_sheet(result, slope, slope.laid, plan, size=PaperSize.A4)
        assert any(LEAST_ONLY in block.text for block in sheet.blocks if isinstance(block, Prose))
