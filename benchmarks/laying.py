"""Laying one large slope: against numpy with shapely in the same run, and against itself at four times the area.

A slope of 357 m² with two openings in plain tiles at half bond: 165 mm cover, 100 mm gauge, 21,324 whole units and
676 cut ones among some 30,700 places.
"""

from collections.abc import Callable
from math import ceil
from timeit import timeit

import numpy as np
import shapely
from numpy.typing import NDArray

from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import (
    Course,
    CourseLine,
    Edge,
    EdgeKind,
    LapSide,
    LayingAsk,
    OffcutRule,
    Perps,
    Ring,
    Unit,
)
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.laying.offcuts import plan_offcuts

COVER_MM, GAUGE_MM = 165.0, 100.0
OUTLINE: tuple[Point, ...] = (
    (0.0, 0.0),
    (24_300.0, 0.0),
    (23_100.0, 9_800.0),
    (15_000.0, 20_600.0),
    (9_000.0, 20_450.0),
    (1_500.0, 8_000.0),
)
OPENINGS: tuple[tuple[Point, ...], ...] = (
    ((4_000.0, 5_800.0), (5_200.0, 5_800.0), (5_200.0, 4_000.0), (4_000.0, 4_000.0)),
    ((12_500.0, 11_200.0), (14_600.0, 10_300.0), (14_000.0, 8_000.0), (12_000.0, 9_000.0)),
)


def large_slope(*, times: float = 1.0) -> LayingAsk:
    """The slope, drawn so many times larger with the same tile."""
    outline, *openings = [_ring(points, times) for points in (OUTLINE, *OPENINGS)]
    count = ceil(max(y for _, y in outline.points_mm) / GAUGE_MM)
    courses = tuple(
        Course(
            tail=CourseLine(at_mm=number * GAUGE_MM),
            perps=Perps(first_mm=-(number % 2) * COVER_MM / 2, cover_mm=COVER_MM),
            unit_length_mm=265.0,
        )
        for number in range(count)
    )
    unit = Unit(width_mm=COVER_MM, lap_side=LapSide.LEFT, offcut_rule=OffcutRule.IN_PLACE)
    head = CourseLine(at_mm=count * GAUGE_MM)
    return LayingAsk(where="large", outline=outline, openings=tuple(openings), courses=courses, head=head, unit=unit)


def _ring(points: tuple[Point, ...], times: float) -> Ring:
    edge = Edge(name="hip", kind=EdgeKind.HIP)
    return Ring(points_mm=tuple((x * times, y * times) for x, y in points), edges=(edge,) * len(points))


def numpy_and_shapely(rings: list[NDArray[np.float64]], slope: shapely.Polygon) -> tuple[int, int, float]:
    """The same whole and cut units with arrays: touched places marked edge by edge, the rest told by scan line, and
    only touched places intersected, all in one call. The fastest of the ways tried with these two libraries.
    """
    rows, columns = ceil(rings[0][:, 1].max() / GAUGE_MM), ceil(rings[0][:, 0].max() / COVER_MM) + 1
    shift = (np.arange(rows) % 2) * COVER_MM / 2
    touched = np.zeros((rows, columns + 1), dtype=np.int32)
    turns = np.zeros((rows, columns + 1), dtype=np.int32)
    for ring in rings:
        for start, end in zip(ring, np.roll(ring, -1, axis=0), strict=True):
            _mark_edge(touched, turns, shift, start, end)
    edge_here = np.cumsum(touched, axis=1)[:, :-1] > 0
    inside = np.cumsum(turns, axis=1)[:, :-1] % 2 == 1
    whole = int(np.count_nonzero(inside & ~edge_here))
    row, column = np.nonzero(edge_here)
    left = column * COVER_MM - shift[row]
    cells = shapely.box(left, row * GAUGE_MM, left + COVER_MM, (row + 1) * GAUGE_MM)
    areas = shapely.area(shapely.intersection(cells, slope))
    full = areas > COVER_MM * GAUGE_MM - 1.0
    cut = (areas >= 1.0) & ~full
    return whole + int(np.count_nonzero(full)), int(np.count_nonzero(cut)), float(areas[cut].sum())


def _mark_edge(
    touched: NDArray[np.int32],
    turns: NDArray[np.int32],
    shift: NDArray[np.float64],
    start: NDArray[np.float64],
    end: NDArray[np.float64],
) -> None:
    (ax, ay), (bx, by) = start, end
    low, high = min(ay, by), max(ay, by)
    row = np.arange(int(low // GAUGE_MM), min(ceil(high / GAUGE_MM), len(shift)))
    if not len(row):
        return
    lean = (bx - ax) / (by - ay) if by != ay else 0.0
    x0 = ax + (np.clip(row * GAUGE_MM, low, high) - ay) * lean
    x1 = ax + (np.clip((row + 1) * GAUGE_MM, low, high) - ay) * lean
    first = ((np.minimum(x0, x1) + shift[row]) // COVER_MM).astype(int)
    last = ((np.maximum(x0, x1) + shift[row]) // COVER_MM).astype(int)
    np.add.at(touched, (row, first), 1)
    np.add.at(touched, (row, last + 1), -1)
    middle = (row + 0.5) * GAUGE_MM
    across = (low <= middle) & (middle < high)
    x = ax + (middle[across] - ay) * lean
    column = np.ceil((x + shift[row[across]]) / COVER_MM - 0.5).astype(int)
    np.add.at(turns, (row[across], np.maximum(column, 0)), 1)


def _best_ms(*works: Callable[[], object], rounds: int = 30) -> list[float]:
    """The best time of each, in turns, so that a busy moment of the machine falls on all of them alike."""
    taken = [[timeit(work, number=1) * 1000.0 for work in works] for _ in range(rounds)]
    return [min(times) for times in zip(*taken, strict=True)]


def rows() -> list[tuple[str, str, str]]:
    """Name, ratio and note of each comparison."""
    ask, larger = large_slope(), large_slope(times=2.0)
    rings = [np.array(ring.points_mm) for ring in (ask.outline, *ask.openings)]
    slope = shapely.Polygon(ask.outline.points_mm, [ring.points_mm for ring in ask.openings])
    laying = lay(ask)
    whole, cut, cut_area_mm2 = numpy_and_shapely(rings, slope)
    if (whole, cut) != (laying.whole_count, laying.cut_count) or abs(cut_area_mm2 - laying.cut_area_mm2) > 1.0:
        raise AssertionError("the two ways disagree: the comparison means nothing")
    pieces = cut_units(ask, laying)
    ours_ms, arrays_ms, larger_ms, cutting_ms, offcuts_ms = _best_ms(
        lambda: lay(ask),
        lambda: numpy_and_shapely(rings, slope),
        lambda: lay(larger),
        lambda: cut_units(ask, laying),
        lambda: plan_offcuts([pieces], unit=ask.unit),
    )
    return [
        (
            "30,700 places against numpy + shapely",
            f"{ours_ms / arrays_ms:.2f}",
            f"{ours_ms:.1f} ms against {arrays_ms:.1f} ms; target 0.50",
        ),
        (
            "four times the area against itself",
            f"{larger_ms / ours_ms:.2f}",
            f"{larger_ms:.1f} ms against {ours_ms:.1f} ms; target 2.20",
        ),
        ("cuts through whole units", f"{cutting_ms:.1f} ms", f"{len(pieces)} pieces"),
        ("offcuts, the most pairs", f"{offcuts_ms:.1f} ms", f"{len(pieces)} pieces"),
    ]


if __name__ == "__main__":
    for name, figure, note in rows():
        print(f"{name:40} {figure:>10}  {note}")
