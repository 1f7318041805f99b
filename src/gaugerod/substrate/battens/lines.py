"""The line of every batten: where it runs on the slope, where it ends and against what, and what interrupts it.

A batten has a width, and its end at a hip or valley is cut on the slope of that line: its length is that of its longer
edge. An opening interrupts it where either edge of the batten would meet the opening.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import hypot
from typing import NamedTuple, assert_never

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import EdgeKind, Ring
from gaugerod.substrate.battens.ask import BattenedSlope, BattenMark, EndStops


class End(NamedTuple):
    """One end of a batten line: where along the eaves, and the kind and name of the edge it stops at."""

    at_mm: float
    kind: EdgeKind
    edge: str

    @property
    def held(self) -> bool:
        """Does something other than a common rafter hold the end up: hip rafter, valley board, trimmer?"""
        return self.kind in {EdgeKind.HIP, EdgeKind.VALLEY, EdgeKind.OPENING}


class Span(NamedTuple):
    """One unbroken stretch of a batten line. ``along_ratio`` is its length over its width along the eaves."""

    left: End
    right: End
    along_ratio: float


def spans_of(slope: BattenedSlope, mark: BattenMark, *, batten_width_mm: float, stops: EndStops) -> tuple[Span, ...]:
    """The stretches of one batten, left to right."""
    line = mark.at_mm
    upper = sorted(_crossings(slope.outline, line, below_mm=0.0, edge_is_above_mm=-TOUCH))
    lower = list(_crossings(slope.outline, line, below_mm=batten_width_mm, edge_is_above_mm=TOUCH))
    gaps = sorted(_gaps(slope.openings, line, batten_width_mm=batten_width_mm))
    found: list[tuple[End, End]] = []
    for left, right in zip(upper[::2], upper[1::2], strict=False):
        ends = (
            _end(slope.outline, left, lower, stops=stops, side=1),
            _end(slope.outline, right, lower, stops=stops, side=-1),
        )
        found.extend(_between_gaps(ends, gaps))
    return tuple(Span(left, right, _along_ratio(line, left.at_mm, right.at_mm)) for left, right in found)


Crossing = tuple[float, int]
"""Where along the eaves, and the number of the edge."""


def _crossings(ring: Ring, line: Sequence[Point], *, below_mm: float, edge_is_above_mm: float) -> Iterator[Crossing]:
    """Where the outline crosses a line so far below the batten's top edge."""
    points = ring.points_mm
    for edge, (start, end) in enumerate(zip(points, points[1:] + points[:1], strict=True)):
        for (x0, y0), (x1, y1) in pairwise(_broken_at_stations(start, end, line)):
            over0, over1 = y0 - height_mm(line, x0) + below_mm, y1 - height_mm(line, x1) + below_mm
            if (over0 > edge_is_above_mm) != (over1 > edge_is_above_mm):
                share = over0 / (over0 - over1)
                yield x0 + share * (x1 - x0), edge


def _broken_at_stations(start: Point, end: Point, line: Sequence[Point]) -> list[Point]:
    """The edge in pieces, so that along each the batten's line is straight."""
    (x0, y0), (x1, y1) = start, end
    low, high = min(x0, x1), max(x0, x1)
    between = sorted((x for x, _ in line[1:-1] if low < x < high), reverse=x1 < x0)
    return [start, *((x, y0 + (y1 - y0) * (x - x0) / (x1 - x0)) for x in between), end]


def height_mm(line: Sequence[Point], at_mm: float) -> float:
    """The top edge of the batten at a place along the eaves: between its stations, and straight on past them. mm.

    >>> [height_mm(((0.0, 300.0), (6000.0, 312.0)), at) for at in (-500.0, 3000.0)]
    [299.0, 306.0]
    """
    if len(line) == 1:
        return line[0][1]
    right = next((at for at in range(1, len(line) - 1) if at_mm <= line[at][0]), len(line) - 1)
    (x0, y0), (x1, y1) = line[right - 1], line[right]
    return y0 + (y1 - y0) * (at_mm - x0) / (x1 - x0)


def _end(ring: Ring, here: Crossing, lower: Sequence[Crossing], *, stops: EndStops, side: int) -> End:
    """The end at one edge, the longer edge of the batten taken, stopped short as the kind of edge asks."""
    at_mm, number = here
    both = [x for x, edge in lower if edge == number] + [at_mm]
    longer_mm = min(both) if side > 0 else max(both)
    edge = ring.edges[number]
    (x0, y0), (x1, y1) = ring.points_mm[number], ring.points_mm[(number + 1) % len(ring.points_mm)]
    rise_mm = max(y1 - y0, y0 - y1)
    short_mm = _stop_mm(edge.kind, stops)
    along_mm = short_mm * hypot(x1 - x0, y1 - y0) / rise_mm if short_mm and rise_mm > TOUCH else 0.0
    return End(longer_mm + side * along_mm, edge.kind, edge.name)


def _stop_mm(kind: EdgeKind, stops: EndStops) -> float:
    """How far short of an edge a batten ends, square to the edge. mm."""
    match kind:
        case EdgeKind.VERGE:
            return stops.verge.value
        case EdgeKind.VALLEY:
            return stops.valley_welt.value + stops.valley.value
        case EdgeKind.ABUTMENT:
            return stops.abutment.value
        case EdgeKind.HIP | EdgeKind.EAVES | EdgeKind.RIDGE | EdgeKind.OPENING:
            return 0.0
        case _ as unreachable:
            assert_never(unreachable)


Gap = tuple[float, float, str]
"""What an opening takes out of a line: from, to, and the opening's name."""


def _gaps(openings: Sequence[Ring], line: Sequence[Point], *, batten_width_mm: float) -> Iterator[Gap]:
    for opening in openings:
        touched = [x for x, _ in _crossings(opening, line, below_mm=0.0, edge_is_above_mm=-TOUCH)]
        touched += [x for x, _ in _crossings(opening, line, below_mm=batten_width_mm, edge_is_above_mm=TOUCH)]
        touched += [
            x
            for x, y in opening.points_mm
            if height_mm(line, x) - batten_width_mm + TOUCH < y < height_mm(line, x) - TOUCH
        ]
        if touched:
            yield min(touched), max(touched), opening.edges[0].name


def _between_gaps(ends: tuple[End, End], gaps: Sequence[Gap]) -> Iterator[tuple[End, End]]:
    """What is left of a stretch between its openings."""
    left, right = ends
    for from_mm, to_mm, name in gaps:
        if to_mm <= left.at_mm or from_mm >= right.at_mm:
            continue
        if from_mm > left.at_mm + TOUCH:
            yield left, End(from_mm, EdgeKind.OPENING, name)
        left = End(to_mm, EdgeKind.OPENING, name)
    if right.at_mm > left.at_mm + TOUCH:
        yield left, right


def _along_ratio(line: Sequence[Point], left_mm: float, right_mm: float) -> float:
    across_mm = right_mm - left_mm
    return hypot(across_mm, height_mm(line, right_mm) - height_mm(line, left_mm)) / across_mm
