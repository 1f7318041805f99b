"""The underlay plan: edges dimensioned, laps never shown larger than they are, strips first."""

import pytest

from gaugerod.basis.lengths import read_length_mm
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.hatching import hatched
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.lettering import words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.sheet import Alarm, PaperSize, Table
from gaugerod.sheets.underlay_drawing import underlay_drawing
from gaugerod.sheets.underlay_sheet import side_laps, underlay_sheet
from gaugerod.sheets.underlay_words import edge_past, lap_place_said
from gaugerod.substrate.underlay.answer import LapBetween, UnderlayPlan
from tests.scenario.beneath_results import NAMES, beneath_result, edited_demo, slope_named

SHORT_ROLLS = edited_demo(('roll_length = "50 m"', 'roll_length = "12 m"'))
FLAT = edited_demo(('pitch = "35°"', 'pitch = "10°"'))


def plan_drawn(result: Result, plan: UnderlayPlan, width_mm: float) -> Placed:
    return underlay_drawing(
        slope_named(result, plan.where),
        plan,
        side_laps=side_laps(result.beneath.rolls, plan),
        unit=result.job.show_lengths_in,
        room_width_mm=width_mm,
        room_height_mm=1.1 * width_mm,
    )


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width_mm", [182.0, 269.0])
def test_every_lower_edge_is_dimensioned_and_all_words_stay_on_the_paper(name: str, width_mm: float) -> None:
    result = beneath_result(name)
    for plan in result.beneath.underlay:
        placed = plan_drawn(result, plan, width_mm)
        said = {words.text for words in placed.drawing.words}
        assert {bare_length(run.low_mm, result.job.show_lengths_in) for run in plan.runs} <= said
        assert {f"run {run.number}" for run in plan.runs} <= said
        boxes = [words_box(words, placed.paper) for words in placed.drawing.words]
        assert all(-0.5 <= box.left_mm and box.right_mm <= placed.paper.width_mm + 0.5 for box in boxes)


@pytest.mark.parametrize("name", NAMES)
def test_no_lap_reads_larger_than_it_is(name: str) -> None:
    result = beneath_result(name)
    for plan in result.beneath.underlay:
        sheet = underlay_sheet(result, slope_named(result, plan.where), plan, size=PaperSize.A4)
        (order,) = [block for block in sheet.blocks if isinstance(block, Table) and block.columns[0].heading == "order"]
        rows = {row[0]: row for row in order.rows}
        for lap in plan.laps:
            shown_mm = float(read_length_mm(rows[str(lap.upper)][3]))
            assert 0.0 <= lap.lap_mm - shown_mm < 1.6
        assert [f"S{number}" for number in range(1, len(plan.strips) + 1)] == [
            row[0] for row in order.rows if row[0].startswith("S")
        ]
        assert len(plan.runs) + len(plan.strips) == len(order.rows)


def test_hatching_lies_in_the_laps_and_on_the_underlay_only() -> None:
    result = beneath_result("hipped-house")
    plan = result.beneath.underlay[0]
    (hatch,) = [path for path in plan_drawn(result, plan, 182.0).drawing.paths if path.pen is Pen.HATCH]
    assert hatch.runs_mm
    for run in hatch.runs_mm:
        assert any(all(lap.low_mm - 1e-6 <= y <= lap.high_mm + 1e-6 for _, y in run) for lap in plan.laps)


def test_hatching_of_a_thin_band_is_still_seen() -> None:
    band = ((0.0, 0.0), (9000.0, 0.0), (9000.0, 40.0), (0.0, 40.0))
    assert len(list(hatched(band, scale_ratio=50.0))) > 100


def test_side_laps_are_drawn_on_the_run_they_belong_to() -> None:
    plan = SHORT_ROLLS.beneath.underlay[0]
    laps = side_laps(SHORT_ROLLS.beneath.rolls, plan)
    assert SHORT_ROLLS.beneath.rolls is not None
    assert SHORT_ROLLS.beneath.rolls.side_laps_count == len(laps) > 0
    words = [words.text for words in plan_drawn(SHORT_ROLLS, plan, 182.0).drawing.words]
    assert len(laps) == words.count("side lap")


def test_a_slope_that_no_lap_covers_says_so_first() -> None:
    plan = FLAT.beneath.underlay[0]
    assert () == plan.runs
    sheet = underlay_sheet(FLAT, FLAT.slopes[0], plan, size=PaperSize.A4)
    alarms = [block for block in sheet.blocks if isinstance(block, Alarm)]
    assert "◇ No run is placed: read before starting" in [alarm.title for alarm in alarms]
    assert all(alarm.lines for alarm in alarms)


def test_edges_and_laps_are_told_in_a_few_words() -> None:
    result = beneath_result("hipped-house")
    unit = result.job.show_lengths_in
    said = {edge_past(edge, unit) for plan in result.beneath.underlay for edge in plan.edges}
    assert {"eaves", "left hip: 150 past", "valley: 150 short"} <= said
    between = [lap for plan in result.beneath.underlay for lap in plan.laps if isinstance(lap.place, LapBetween)]
    assert all(lap_place_said(lap, unit).startswith("Between battens") for lap in between)
