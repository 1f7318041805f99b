"""Every unit of random slopes against shapely, cell by cell; mirrored and larger slopes against themselves."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from shapely import MultiPolygon, Point, Polygon, get_parts, symmetric_difference, unary_union
from shapely.geometry.base import BaseGeometry

from gaugerod.laying.ask import Course, CourseLine, LayingAsk, Perps, Ring
from gaugerod.laying.cells import SLIVER_MM2
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.laid import CutCell, Laying, Rings
from gaugerod.laying.lay import lay
from gaugerod.laying.rows import Row
from tests.property.random_laying import random_slopes
from tests.scenario.laid_slopes import mirrored

FAST = settings(
    max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)
SLOW = settings(FAST, max_examples=3000)
AREA_MM2 = 1e-2


def roof_of(ask: LayingAsk) -> Polygon:
    return Polygon(ask.outline.points_mm, [opening.points_mm for opening in ask.openings])


def filled(rings: Rings) -> BaseGeometry:
    """The area of outer rings less the holes in them."""
    outer = unary_union([Polygon(ring).buffer(0) for ring in rings if Polygon(ring).exterior.is_ccw])
    return outer.difference(unary_union([Polygon(ring) for ring in rings if not Polygon(ring).exterior.is_ccw]))


def apart_mm2(one: BaseGeometry, other: BaseGeometry) -> float:
    """Area in one and not in the other. On a grid of a millionth: without, shapely stumbles over corners that differ
    by the last bit.
    """
    one, other = (MultiPolygon([part for part in get_parts(it) if isinstance(part, Polygon)]) for it in (one, other))
    return float(symmetric_difference(one, other, grid_size=1e-6).area)


def cells(ask: LayingAsk, laying: Laying) -> Iterator[tuple[Polygon, CutCell | str | None]]:
    """Every place of every course that could show anything, with what the laying says of it."""
    said: dict[tuple[int, int], CutCell | None] = {(cut.course, cut.index): cut for cut in laying.cuts}
    for run in laying.runs:
        for index in range(run.first, run.first + run.count):
            assert (run.course, index) not in said
            said[run.course, index] = None
    xs = [x for x, _ in ask.outline.points_mm]
    for number, course in enumerate(ask.courses):
        row = Row(tail=course.tail, head=ask.lines[number + 1], perps=course.perps)
        joints = [row.joints_left_of_count(corner) for line in row.lines(min(xs), max(xs)) for corner in line]
        for index in range(int(min(joints)) - 2, int(max(joints)) + 3):
            yield Polygon(row.corners(index, index + 1)), said.pop((number, index), "absent")
    assert said == {}


def check_against_shapely(ask: LayingAsk) -> None:
    roof, laying = roof_of(ask), lay(ask)
    assert laying.slope_area_mm2 == pytest.approx(roof.area)
    assert abs(laying.bare_mm2) < AREA_MM2
    slivers_mm2 = 0.0
    for cell, said in cells(ask, laying):
        shows = cell.intersection(roof)
        if said is None:
            assert cell.area - shows.area < SLIVER_MM2 + AREA_MM2
        elif isinstance(said, CutCell):
            assert apart_mm2(filled(said.rings), shows) < SLIVER_MM2 + AREA_MM2
            assert said.area_mm2 == pytest.approx(filled(said.rings).area, abs=AREA_MM2)
            assert all(Polygon(ring).buffer(0).area == pytest.approx(Polygon(ring).area) for ring in said.rings)
            slivers_mm2 += max(shows.area - said.area_mm2, 0.0)
        else:
            assert shows.area < SLIVER_MM2 + AREA_MM2
            slivers_mm2 += shows.area
    assert slivers_mm2 == pytest.approx(laying.slivers.area_mm2, abs=1.0)


@FAST
@given(random_slopes())
def test_every_cell_is_what_shapely_says(ask: LayingAsk) -> None:
    check_against_shapely(ask)


@pytest.mark.slow
@SLOW
@given(random_slopes())
def test_every_cell_is_what_shapely_says_three_thousand_times(ask: LayingAsk) -> None:
    check_against_shapely(ask)


@FAST
@given(random_slopes())
def test_pieces_laid_together_are_the_slope(ask: LayingAsk) -> None:
    laying = lay(ask)
    whole = [
        Polygon(Row(tail=ask.courses[run.course].tail, head=ask.lines[run.course + 1],
                    perps=ask.courses[run.course].perps).corners(run.first, run.first + run.count))
        for run in laying.runs
    ]  # fmt: skip
    # On the grid too: without, the union of pieces that touch loses some whole (their areas sum to the roof's, none overlap).
    laid = unary_union([*whole, *(filled(cut.rings) for cut in laying.cuts)], grid_size=1e-6)
    left_over_mm2 = apart_mm2(laid, roof_of(ask)) - laying.slivers.area_mm2 - laying.nicks.area_mm2
    assert abs(left_over_mm2) < 1.0


@FAST
@given(random_slopes())
def test_points_fall_in_one_unit_when_on_the_slope_and_in_none_beside_it(ask: LayingAsk) -> None:
    laying, roof = lay(ask), roof_of(ask)
    shown = [filled(cut.rings) for cut in laying.cuts]
    for run in laying.runs:
        row = Row(
            tail=ask.courses[run.course].tail, head=ask.lines[run.course + 1], perps=ask.courses[run.course].perps
        )
        shown.append(Polygon(row.corners(run.first, run.first + run.count)))
    left, low, right, high = roof.bounds
    for at in range(60):
        point = Point(left + (right - left) * (at * 0.618033 % 1), low + (high - low) * (at * 0.414213 % 1))
        if roof.boundary.distance(point) > 3.0 and all(it.boundary.distance(point) > 0.01 for it in shown):
            assert sum(it.contains(point) for it in shown) == int(roof.contains(point))


@FAST
@given(random_slopes())
def test_a_mirrored_slope_has_the_same_quantities(ask: LayingAsk) -> None:
    one, other = lay(ask), lay(mirrored(ask))
    assert other.whole_count == one.whole_count
    one_cuts, other_cuts = (sorted((cut.course, cut.area_mm2) for cut in way.cuts) for way in (one, other))
    assert [course for course, _ in other_cuts] == [course for course, _ in one_cuts]
    assert [area for _, area in other_cuts] == pytest.approx([area for _, area in one_cuts], abs=1e-3)


def larger(ask: LayingAsk, times: float) -> LayingAsk:
    def ring(it: Ring) -> Ring:
        return Ring(points_mm=tuple((times * x, times * y) for x, y in it.points_mm), edges=it.edges)

    def line(it: CourseLine) -> CourseLine:
        return CourseLine(at_mm=times * it.at_mm, rise_ratio=it.rise_ratio)

    def course(it: Course) -> Course:
        perps = Perps(first_mm=times * it.perps.first_mm, cover_mm=times * it.perps.cover_mm,
                      first_lean_ratio=it.perps.first_lean_ratio, cover_lean_ratio=it.perps.cover_lean_ratio)  # fmt: skip
        return Course(tail=line(it.tail), perps=perps, unit_length_mm=times * it.unit_length_mm)

    return LayingAsk(
        where=ask.where,
        outline=ring(ask.outline),
        openings=tuple(map(ring, ask.openings)),
        courses=tuple(map(course, ask.courses)),
        head=line(ask.head),
        unit=replace(ask.unit, width_mm=times * ask.unit.width_mm),
    )


@FAST
@given(random_slopes())
def test_everything_twice_as_large_has_four_times_the_areas(ask: LayingAsk) -> None:
    small, large = lay(ask), lay(larger(ask, 2.0))
    assert large.slope_area_mm2 == pytest.approx(4 * small.slope_area_mm2)
    sizes = {(cut.course, cut.index): cut.area_mm2 for cut in large.cuts}
    for cut in small.cuts:
        if (cut.course, cut.index) in sizes and len(cut.rings) == 1:
            assert sizes[cut.course, cut.index] == pytest.approx(
                4 * cut.area_mm2, abs=4 * small.slivers.area_mm2 + AREA_MM2
            )
    few = small.slivers.count + small.nicks.count
    assert abs(large.whole_count + large.cut_count - small.whole_count - small.cut_count) <= few


@FAST
@given(random_slopes())
def test_the_outline_of_every_piece_is_its_unit_inside_the_slope(ask: LayingAsk) -> None:
    laying, roof = lay(ask), roof_of(ask).buffer(1e-4)  # clear of the oracle's own noise on shared edges
    for piece in cut_units(ask, laying):
        outline = Polygon(piece.rings_mm[0], piece.rings_mm[1:]).buffer(0)
        assert outline.area == pytest.approx(piece.area_mm2, abs=AREA_MM2)
        assert outline.difference(roof).area < AREA_MM2
        assert SLIVER_MM2 <= piece.shows_mm2 <= piece.whole_shows_mm2 + AREA_MM2
        assert piece.area_mm2 <= ask.unit.width_mm * piece.length_mm + AREA_MM2
        assert piece.cuts
        assert all(0.0 <= cut.angle_deg < 180.0 for cut in piece.cuts)
