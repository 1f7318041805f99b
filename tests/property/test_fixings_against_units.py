"""The fixing of random slopes against every unit asked on its own, with shapely; mirrored slopes against themselves."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from importlib.resources import files

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon, unary_union

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.fixing.ask import FixingAsk
from gaugerod.fixing.least_fixing import least_fixing
from gaugerod.fixing.plan import FixingPlan, Region
from gaugerod.fixing.walk import WIDER
from gaugerod.job.set_out import set_out
from gaugerod.laying.ask import Edge, EdgeKind, LayingAsk, Ring
from gaugerod.laying.cut_unit import Remedy
from tests.property.random_laying import random_slopes
from tests.scenario.fixed_slopes import fixing_ask
from tests.scenario.laid_slopes import mirrored

FAST = settings(
    max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much]
)
SLOW = settings(FAST, max_examples=600)
HAIR_MM = 1e-2
KINDS = st.lists(st.sampled_from(EdgeKind), min_size=14, max_size=14)


def with_kinds(ask: LayingAsk, kinds: list[EdgeKind]) -> LayingAsk:
    """The slope with edges of these kinds, openings as openings."""

    def named(ring: Ring, of: list[EdgeKind]) -> Ring:
        edges = tuple(Edge(name=kind.value, kind=kind) for kind, _ in zip(of, ring.points_mm, strict=False))
        return replace(ring, edges=edges)

    return replace(
        ask,
        outline=named(ask.outline, kinds),
        openings=tuple(named(opening, [EdgeKind.OPENING] * len(opening.points_mm)) for opening in ask.openings),
    )


def column(ask: LayingAsk, low: int, high: int, row: int, index: int) -> Polygon:
    """What lies between the joints of one unit, from course line ``low`` to ``high``; one course past the ends at most."""
    lines = list(ask.lines)

    def height(at: int) -> tuple[float, float]:
        if at < 0:
            return 2 * lines[0].at_mm - lines[1].at_mm, 2 * lines[0].rise_ratio - lines[1].rise_ratio
        if at >= len(lines):
            return 2 * lines[-1].at_mm - lines[-2].at_mm, 2 * lines[-1].rise_ratio - lines[-2].rise_ratio
        return lines[at].at_mm, lines[at].rise_ratio

    perps = ask.courses[row].perps
    corners = []
    for at, joint in ((low, index), (low, index + 1), (high, index + 1), (high, index)):
        level, rise = height(at)
        foot = perps.first_mm + joint * perps.cover_mm
        lean = perps.first_lean_ratio + joint * perps.cover_lean_ratio
        # x = foot + lean·y, y = level + rise·x
        x = (foot + lean * level) / (1 - lean * rise)
        corners.append((x, level + rise * x))
    return Polygon(corners)


def edges_of(ask: LayingAsk) -> Iterator[tuple[EdgeKind, LineString]]:
    for ring in (ask.outline, *ask.openings):
        points = ring.points_mm
        for edge, start, end in zip(ring.edges, points, points[1:] + points[:1], strict=True):
            yield edge.kind, LineString([start, end])


def stands_along(ask: LayingAsk, row: int, index: int, *, courses: int, grown_mm: float) -> bool:
    """Is an edge along the courses so near below or above the unit, between its own joints, those moved out or in?"""
    for kind, edge in edges_of(ask):
        (x0, y0), (x1, y1) = edge.coords
        level = kind in {EdgeKind.EAVES, EdgeKind.RIDGE, EdgeKind.ABUTMENT, EdgeKind.OPENING}
        if not level or abs(x1 - x0) <= abs(y1 - y0):
            continue
        if x1 > x0:
            first = row - courses + 1
            near = column(ask, first if first > 0 else -1, row + 1, row, index)
        else:
            last = row + courses
            near = column(ask, row, last if last < len(ask.courses) else len(ask.courses) + 1, row, index)
        # An edge on a course line belongs to the course on its own side of it.
        aside_mm = 0.0
        if any(abs(line.height_mm(x0) - y0) + abs(line.height_mm(x1) - y1) < 1e-6 for line in ask.lines):
            aside_mm = 1.0 if x1 > x0 else -1.0
        moved = LineString([(x0, y0 + aside_mm), (x1, y1 + aside_mm)])
        if moved.intersection(near.buffer(grown_mm, join_style="mitre")).length > 0.0:
            return True
    return False


def perimeter_units(
    ask: LayingAsk, asked: FixingAsk, *, courses: int, grown_mm: float
) -> tuple[set[tuple[int, int]], set[tuple[int, int]]]:
    """Every unit laid, and those of them at the perimeter, each asked on its own."""
    full = asked.full
    laid = {(run.course, index) for run in full.laying.runs for index in range(run.first, run.first + run.count)}
    cut = {(cell.course, cell.index) for cell in full.laying.cuts}
    laid |= cut
    sawn = {(piece.course, piece.index) for piece in full.pieces}
    return laid, {
        (row, index)
        for row, index in laid
        if (row, index) in cut | sawn
        or not {(row, index - 1), (row, index + 1)} <= laid
        or stands_along(ask, row, index, courses=courses, grown_mm=grown_mm)
    }


def check_against_every_unit(ask: LayingAsk) -> None:
    asked = fixing_ask(ask)
    plan = least_fixing(asked)
    laid, surely = perimeter_units(ask, asked, courses=2, grown_mm=-HAIR_MM)
    # An edge that only touches the corner of a unit's column may be taken either way: never as field where it crosses it.
    _, at_most = perimeter_units(ask, asked, courses=2, grown_mm=HAIR_MM)
    taken: set[tuple[int, int]] = set()
    for piece in asked.full.pieces:
        if piece.remedy in WIDER and piece.neighbour != piece.index and (piece.course, piece.index) not in taken:
            taken.add((piece.course, piece.neighbour))
    sawn = Counter((piece.course, piece.index) for piece in asked.full.pieces)
    alone = laid - set(sawn) - taken
    pieces = sum(count for unit, count in sawn.items() if unit not in taken)

    runs = {(course.number - 1, index): run
            for course in plan.courses for run in course.runs
            for index in range(run.first, run.first + run.count)}  # fmt: skip
    assert alone == set(runs)
    assert sum(run.count for course in plan.courses for run in course.runs) == len(runs)
    perimeter = {unit for unit, run in runs.items() if run.region is Region.PERIMETER}
    assert surely & alone <= perimeter <= at_most & alone
    assert pieces == sum(len(course.pieces) for course in plan.courses)
    assert len(alone) + pieces == sum(kind.units_count for kind in plan.kinds)

    nails = sum(2 for row, index in alone if (row, index) in perimeter or (row + 1) % 5 == 0)
    nails += sum(piece.held.nails_count for course in plan.courses for piece in course.pieces)
    assert nails == plan.total.nails_count
    bonded = sum(piece.remedy is Remedy.BOND_AND_CLIP for course in plan.courses for piece in course.pieces)
    assert bonded == plan.total.bonds_count
    check_the_field_is_what_it_encloses(ask, plan, alone - perimeter)


def check_the_field_is_what_it_encloses(ask: LayingAsk, plan: FixingPlan, field: set[tuple[int, int]]) -> None:
    cells = unary_union([column(ask, row, row + 1, row, index).buffer(1e-7) for row, index in field])
    outlined = [Polygon(ring) for ring in plan.field_mm]
    assert all(ring.exterior.is_ccw for ring in outlined)
    assert cells.area == pytest.approx(sum(ring.area for ring in outlined), rel=1e-6, abs=1.0)
    assert cells.symmetric_difference(unary_union([ring.buffer(0) for ring in outlined])).area < max(
        1.0, 1e-6 * cells.area
    )


@FAST
@given(random_slopes(), KINDS)
def test_every_unit_is_held_for_its_place(ask: LayingAsk, kinds: list[EdgeKind]) -> None:
    check_against_every_unit(with_kinds(ask, kinds))


@pytest.mark.slow
@SLOW
@given(random_slopes(), KINDS)
def test_every_unit_of_many_slopes_is_held_for_its_place(ask: LayingAsk, kinds: list[EdgeKind]) -> None:
    check_against_every_unit(with_kinds(ask, kinds))


def check_mirrored(ask: LayingAsk) -> None:
    here, there = least_fixing(fixing_ask(ask)), least_fixing(fixing_ask(mirrored(ask)))
    assert [here.units_count(region) for region in Region] == [there.units_count(region) for region in Region]
    assert here.total == there.total


@FAST
@given(random_slopes())
def test_a_slope_in_a_mirror_takes_the_same_fixings(ask: LayingAsk) -> None:
    check_mirrored(ask)


@pytest.mark.parametrize("name", ["hipped-house", "plain-tiles", "slates", "random-slates", "demo"])
def test_every_unit_of_whole_houses_is_held_for_its_place(name: str) -> None:
    text = (files("gaugerod.adapters.job_file") / "examples" / f"{name}.toml").read_bytes()
    result = set_out(read_job_text(text))
    laid = [slope.laid for slope in result.slopes if slope.laid is not None]
    assert laid
    for each in laid:
        check_against_every_unit(each.ask)
        check_mirrored(each.ask)
