"""Where each batten ends: verge, hip, valley, wall and opening, checked by arithmetic on the drawing."""

from dataclasses import replace
from math import hypot

import pytest

from gaugerod.laying.ask import EdgeKind
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.ask import BattenMark, EvenRafters, MeasuredRafters, usual_stops
from gaugerod.substrate.battens.lines import End, Span, spans_of
from gaugerod.substrate.battens.supports import rafters_mm
from gaugerod.substrate.battens.ways import PieceRules, ways_of
from tests.scenario.battened_slopes import gable, rooflight, slope

STOPS = usual_stops(Edition.GB)
E, V, R, H, Y, A = (
    EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.HIP, EdgeKind.VALLEY, EdgeKind.ABUTMENT,
)  # fmt: skip


def at(height_mm: float) -> BattenMark:
    return BattenMark(name="1", at_mm=((0.0, height_mm),))


def ends(spans: tuple[Span, ...]) -> list[tuple[float, float]]:
    return [(round(span.left.at_mm, 6), round(span.right.at_mm, 6)) for span in spans]


def test_a_batten_stops_short_of_both_verges() -> None:
    spans = spans_of(gable(width_mm=8000.0, courses=10, gauge_mm=300.0), at(900.0), batten_width_mm=50.0, stops=STOPS)
    assert [(37.5, 7962.5)] == ends(spans)


def test_a_batten_at_a_hip_is_as_long_as_its_lower_edge() -> None:
    """A hip that comes in 1 mm for each mm up: at 900 mm the top edge starts at 900, the bottom edge 50 mm lower at 850."""
    hips = slope(((0.0, 0.0), (8000.0, 0.0), (4000.0, 4000.0)), E, H, H)
    assert [(850.0, 7150.0)] == ends(spans_of(hips, at(900.0), batten_width_mm=50.0, stops=STOPS))


def test_a_batten_at_a_valley_is_as_long_as_its_upper_edge_and_stops_square_to_the_welt() -> None:
    """A valley leaning out 1 in 1: 210 mm square to it is 210·√2 along the batten."""
    valley = slope(((0.0, 0.0), (8000.0, 0.0), (12_000.0, 4000.0), (0.0, 4000.0)), E, Y, R, V)
    (span,) = spans_of(valley, at(900.0), batten_width_mm=50.0, stops=STOPS)
    assert pytest.approx(8900.0 - 210.0 * hypot(1.0, 1.0)) == span.right.at_mm
    assert span.right.held
    assert not span.left.held


def test_a_batten_runs_to_the_wall_unless_it_is_told_to_stop() -> None:
    wall = slope(((0.0, 0.0), (8000.0, 0.0), (8000.0, 4000.0), (0.0, 4000.0)), E, A, R, V)
    gutter = replace(STOPS, abutment=replace(STOPS.abutment, value=44.0))
    assert [(37.5, 8000.0)] == ends(spans_of(wall, at(900.0), batten_width_mm=50.0, stops=STOPS))
    assert [(37.5, 7956.0)] == ends(spans_of(wall, at(900.0), batten_width_mm=50.0, stops=gutter))


@pytest.mark.parametrize(
    ("height_mm", "broken"), [(1000.0, False), (1000.1, True), (1500.0, True), (2049.9, True), (2050.0, False)]
)
def test_an_opening_interrupts_every_batten_it_meets(height_mm: float, broken: bool) -> None:  # noqa: FBT001
    """Sill at 1000, head at 2000, batten 50 mm wide: with its top edge at the sill, or its bottom edge at the head, it passes."""
    points = ((0.0, 0.0), (8000.0, 0.0), (8000.0, 4000.0), (0.0, 4000.0))
    opening = rooflight(left_mm=3000.0, sill_mm=1000.0, width_mm=800.0, height_mm=1000.0)
    lit = slope(points, E, V, R, V, openings=(opening,))
    spans = ends(spans_of(lit, at(height_mm), batten_width_mm=50.0, stops=STOPS))
    assert ([(37.5, 3000.0), (3800.0, 7962.5)] if broken else [(37.5, 7962.5)]) == spans


def test_a_batten_that_rises_across_the_slope_is_longer_than_the_slope_is_wide() -> None:
    rising = BattenMark(name="1", at_mm=((0.0, 900.0), (8000.0, 1060.0)))
    (span,) = spans_of(gable(width_mm=8000.0, courses=10, gauge_mm=300.0), rising, batten_width_mm=50.0, stops=STOPS)
    assert pytest.approx(hypot(1.0, 0.02)) == span.along_ratio


def test_above_the_slope_there_is_no_batten() -> None:
    hips = slope(((0.0, 0.0), (8000.0, 0.0), (4000.0, 4000.0)), E, H, H)
    assert () == spans_of(hips, at(4001.0), batten_width_mm=50.0, stops=STOPS)


def test_even_and_measured_rafters() -> None:
    assert (100.0, 700.0, 1300.0) == rafters_mm(
        EvenRafters(first_mm=100.0, spacing_mm=600.0), left_mm=0.0, right_mm=1800.0
    )
    out_of_step = EvenRafters(first_mm=100.0, spacing_mm=600.0, last_mm=1700.0)
    assert (100.0, 700.0, 1300.0, 1700.0) == rafters_mm(out_of_step, left_mm=0.0, right_mm=1800.0)
    on_it = EvenRafters(first_mm=100.0, spacing_mm=600.0, last_mm=1300.0)
    assert (100.0, 700.0, 1300.0) == rafters_mm(on_it, left_mm=0.0, right_mm=1800.0)
    measured = MeasuredRafters(at_mm=(-50.0, 90.0, 680.0))
    assert (90.0, 680.0) == rafters_mm(measured, left_mm=0.0, right_mm=1800.0)


@pytest.mark.parametrize(("second_mm", "may"), [(1199.5, False), (1200.0, True), (1200.5, True)])
def test_no_piece_is_rounded_up_to_the_least_length(second_mm: float, may: bool) -> None:  # noqa: FBT001
    """1199.5 mm is cut as 1200 mm, and is still under 1.2 m."""
    span = Span(End(0.0, EdgeKind.VERGE, "verge"), End(4000.0, EdgeKind.VERGE, "verge"), 1.0)
    rules = PieceRules(least_mm=1200, greatest_mm=3600, supports_count=3, same_support_mm=50.0)
    ways = ways_of(span, (100.0, 600.0, second_mm, 1800.0, 2400.0, 3000.0, 3600.0), rules)
    assert may == any(ways.rafters[end] == 2 for end, _ in ways.steps[0])
