"""Plain tiles counted by hand: a slope of 10 courses of 12 tiles between verges, and ones with a hole or hips."""

from dataclasses import replace
from itertools import pairwise

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.fixing.ask import FixingAsk
from gaugerod.fixing.held import Held
from gaugerod.fixing.least_fixing import least_fixing
from gaugerod.fixing.plan import FixingPlan, Region
from gaugerod.fixing.why import Why
from gaugerod.laying.ask import EdgeKind, LayingAsk
from tests.scenario.fixed_slopes import CLAY, fixing_ask
from tests.scenario.laid_slopes import HIPPED, mirrored, ring, slope

EAVES, VERGE, RIDGE, HIP, OPENING = (
    EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.HIP, EdgeKind.OPENING,
)  # fmt: skip
WIDE_MM, HIGH_MM = 12 * 165.0, 1000.0


def between_verges(*, high_mm: float = HIGH_MM, bond_mm: float = 0.0, wide_mm: float = WIDE_MM) -> LayingAsk:
    """Straight joints unless told, and tiles no longer than their gauge, so that none is cut: not at the ridge either."""
    points = [(0.0, 0.0), (wide_mm, 0.0), (wide_mm, high_mm), (0.0, high_mm)]
    outline = ring(points, ["eaves", "right verge", "ridge", "left verge"], [EAVES, VERGE, RIDGE, VERGE])
    return slope(outline, bond_mm=bond_mm, unit_length_mm=100.0)


def unsawn(asked: LayingAsk) -> FixingAsk:
    """As where the ridge stands clear of the heads of the top courses, so that none of them is sawn."""
    ask = fixing_ask(asked)
    return replace(ask, full=replace(ask.full, pieces=()))


def counts(plan: FixingPlan) -> dict[tuple[Why, str], int]:
    return {(kind.why, str(kind.held)): kind.units_count for kind in plan.kinds}


def test_a_small_slope_is_counted_as_by_hand() -> None:
    plan = least_fixing(unsawn(between_verges()))
    # Courses 1, 2, 9 and 10 lie along eaves and ridge; of the other six, course 5 is nailed, and two tiles end each.
    assert counts(plan) == {
        ((), "hung on its nibs, not fixed"): 5 * 10,
        ((), "two nails"): 1 * 10,
        ((EAVES,), "two nails"): 2 * 10,
        ((EAVES, VERGE), "two nails"): 2 * 2,
        ((RIDGE,), "two nails"): 2 * 10,
        ((VERGE, RIDGE), "two nails"): 2 * 2,
        ((VERGE,), "two nails"): 6 * 2,
    }
    assert Held(nails_count=2 * (120 - 50)) == plan.total
    assert (60, 60) == (plan.units_count(Region.FIELD), plan.units_count(Region.PERIMETER))
    assert (5, 10) == plan.nailed_courses


def test_the_field_is_one_area_inside_the_perimeter() -> None:
    plan = least_fixing(unsawn(between_verges()))
    (area,) = plan.field_mm
    xs, ys = [x for x, _ in area], [y for _, y in area]
    assert (165.0, WIDE_MM - 165.0, 200.0, 800.0) == (min(xs), max(xs), min(ys), max(ys))


def test_never_more_than_four_courses_hang_between_nailed_ones() -> None:
    for courses in range(4, 30):
        plan = least_fixing(unsawn(between_verges(high_mm=100.0 * courses)))
        fixed = [0, *(course.number for course in plan.courses
                      if all(run.held.nails_count for run in course.runs)), courses + 1]  # fmt: skip
        assert max(above - below for below, above in pairwise(fixed)) <= 5


@pytest.mark.parametrize(("courses", "field"), [(3, 0), (4, 0), (5, 1), (6, 2)])
def test_a_low_slope_is_all_perimeter(courses: int, field: int) -> None:
    plan = least_fixing(unsawn(between_verges(high_mm=100.0 * courses)))
    assert field * 10 == plan.units_count(Region.FIELD)


@pytest.mark.parametrize(("pitch_deg", "hung"), [(59.9, 50), (60.0, 0), (90.0, 0)])
def test_from_60_degrees_no_tile_hangs_on_its_nibs_alone(pitch_deg: float, hung: int) -> None:
    plan = least_fixing(replace(unsawn(between_verges()), pitch_deg=pitch_deg))
    assert hung == counts(plan).get(((), "hung on its nibs, not fixed"), 0)


def test_tiles_with_no_nibs_are_nailed_all_over() -> None:
    plan = least_fixing(replace(unsawn(between_verges()), covering=replace(CLAY, nibs=False)))
    assert Held(nails_count=240) == plan.total


def test_round_an_opening_two_courses_above_and_below_and_one_tile_each_side() -> None:
    # Six tiles wide and four courses high, its edges on joints and course lines, in a slope of 20 courses of 24.
    wide_mm = 24 * 165.0
    outline = ring(
        [(0.0, 0.0), (wide_mm, 0.0), (wide_mm, 2000.0), (0.0, 2000.0)],
        ["eaves", "right verge", "ridge", "left verge"],
        [EAVES, VERGE, RIDGE, VERGE],
    )
    low, high, left, right = 800.0, 1200.0, 9 * 165.0, 15 * 165.0
    hole = [(left, low), (left, high), (right, high), (right, low)]
    plan = least_fixing(unsawn(slope(outline, openings=[hole], bond_mm=0.0)))
    at_opening = sum(kind.units_count for kind in plan.kinds if OPENING in kind.why)
    assert 2 * 6 + 2 * 6 + 2 * 4 == at_opening
    assert 24 * 20 - 6 * 4 == sum(kind.units_count for kind in plan.kinds)
    found = {finding.rule: finding for finding in plan.findings}
    assert "memory" == found["courses fixed at openings"].citation.basis.value
    assert any(step.startswith("Round each opening: 2 courses above and below") for step in plan.method)


def test_every_tile_a_hip_cuts_is_fixed_and_small_ones_go_with_their_neighbours() -> None:
    asked = fixing_ask(slope(HIPPED, unit_length_mm=100.0))
    plan = least_fixing(asked)
    pieces = [piece for course in plan.courses for piece in course.pieces]
    assert pieces
    assert all({HIP, RIDGE} & {*piece.why} for piece in pieces)
    wider = [piece for piece in pieces if piece.remedy.value == "unit-and-a-half"]
    laid = asked.full.laying.whole_count + asked.full.laying.cut_count
    assert laid - len(wider) == sum(kind.units_count for kind in plan.kinds)
    assert {2} == {piece.held.in_all_count for piece in pieces}


def test_in_a_mirror_everything_is_counted_alike() -> None:
    for asked in (slope(HIPPED), between_verges(bond_mm=82.5)):
        assert counts(least_fixing(fixing_ask(asked))) == counts(least_fixing(fixing_ask(mirrored(asked))))


def test_a_slope_ten_times_as_wide_takes_as_many_runs() -> None:
    narrow = least_fixing(unsawn(between_verges()))
    wide = least_fixing(unsawn(between_verges(wide_mm=10 * WIDE_MM)))
    assert sum(len(course.runs) for course in narrow.courses) == sum(len(course.runs) for course in wide.courses)


def test_it_is_said_to_be_the_least_and_no_wind_calculation() -> None:
    plan = least_fixing(unsawn(between_verges()))
    first = plan.findings[0]
    assert ("fixing against wind", Verdict.NOT_COVERED) == (first.rule, first.verdict)
    assert "maker's fixing specification" in first.says
    assert "it goes before this" in first.says


def test_nail_lengths_are_not_guessed_for_a_tile_of_unknown_thickness() -> None:
    plan = least_fixing(unsawn(between_verges()))
    assert plan.nail is not None
    assert (None, None, 2.65, 140) == (plan.nail.length_mm, plan.nail.total_kg, plan.nail.shank_mm, plan.nail.count)
    assert "not-covered" in {f.verdict.value for f in plan.findings if f.rule == "nail penetration"}


def test_of_a_measured_tile_length_and_mass_are_told() -> None:
    plan = least_fixing(replace(unsawn(between_verges()), thickness_mm=12.0))
    assert plan.nail is not None
    assert (35.0, 23.0) == (plan.nail.length_mm, plan.nail.penetration_mm)
    assert plan.nail.each_kg is not None
    assert plan.nail.total_kg == pytest.approx(140 * plan.nail.each_kg)
    assert ["within"] * 2 == [f.verdict.value for f in plan.findings if f.rule == "nail penetration"]
    assert "aluminium clout nail, 35 × 2.65 mm" == str(plan.nail)


def test_the_working_adds_up() -> None:
    plan = least_fixing(replace(unsawn(between_verges()), thickness_mm=12.0))
    kinds = [part for part in plan.working.parts if part.unit == "fixings"]
    assert plan.working.value == sum(part.value for part in kinds if isinstance(part.value, float))
    assert {"nail length", "mass of the nails"} <= {part.name for part in plan.working.parts}
