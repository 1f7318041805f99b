"""What the edges are made from: where laps and gauges differ, the ones that make the longest piece."""

import pytest

from gaugerod.edges.ask import EdgeSlope, LineKind
from gaugerod.job.edges_asks import edges_ask
from gaugerod.job.result import Result
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import COVERINGS, result_of, slope


def edge_slope(result: Result) -> EdgeSlope:
    ask, _ = edges_ask(result.job, result.slopes, result.roofs, result.beneath)
    (only,) = ask.slopes
    return only


def test_a_slope_between_two_verges() -> None:
    result = result_of("flat-interlocking-420x330", slope("rear", across_mm=3000, rafter_mm=2000))
    ask, found = edges_ask(result.job, result.slopes, result.roofs, result.beneath)
    assert sorted(
        [(LineKind.EAVES, 3000), (LineKind.VERGE, 2000), (LineKind.VERGE, 2000), (LineKind.RIDGE, 3000)]
    ) == sorted((line.kind, round(line.length_mm, 6)) for line in ask.lines)
    assert (6, 40.0) == (ask.slopes[0].courses_count, ask.slopes[0].pitch_deg)
    assert () == ask.openings
    assert () == found


@pytest.mark.parametrize("covering", COVERINGS)
def test_the_gauge_is_the_greatest_there_is(covering: str) -> None:
    result = result_of(covering, slope("rear", across_mm=3000, rafter_mm=2000))
    gaps_mm = [gap for rod in result.slopes[0].courses.rods for gap in rod.gaps_mm]
    assert max(gaps_mm) <= edge_slope(result).gauge_mm <= max(gaps_mm) + 1e-9


def test_gauge_and_lap_together_are_never_less_than_the_tile_where_its_courses_differ() -> None:
    """A soaker as long as gauge and lap together passes under every tile of the slope."""
    result = result_of("flat-interlocking-420x330", slope("rear", across_mm=3000, rafter_mm=2000))
    made = edge_slope(result)
    assert made.gauge_mm + made.headlap_mm >= 420.0


def test_an_opening_interrupts_the_courses_it_stands_in() -> None:
    result = example("demo")
    ask, _ = edges_ask(result.job, result.slopes, result.roofs, result.beneath)
    (opening,) = ask.openings
    (given,) = [each for one in result.slopes for each in one.slope.openings]
    assert (given.width_mm, given.height_mm) == (opening.width_mm, opening.height_mm)
    gauge_mm = ask.slope(opening.slope).gauge_mm
    # As many courses as its height holds, and one more at either end where it stands across one.
    assert given.height_mm / gauge_mm <= opening.courses_count <= given.height_mm / gauge_mm + 2
