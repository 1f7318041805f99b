"""Verges and walls of a slope by outline that no end of the eaves stands under, and those that rake."""

from collections.abc import Iterator, Sequence
from math import inf
from typing import NamedTuple

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.geometry.polygon import Point
from gaugerod.job.model import Job, Slope, SlopeOutline
from gaugerod.job.wished import side
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.across import Across, CourseEnd, SideKind, UpperEdge

SQUARE_WITHIN_MM = 1.0
"""An edge this little out of square to the eaves is square: the division of a mark (house)."""
RAKING = house("perps stand square to the eaves; the pieces along a raking edge are read off the laying, one by one")
MOST_UPPER_COUNT = 12
"""The search for the perps weighs every edge with every other: more than this takes longer than anyone waits."""
MOST_UPPER = house("perps are set out to the twelve tallest verges and walls above the eaves")
_ENDS = {EdgeKind.VERGE: SideKind.VERGE, EdgeKind.ABUTMENT: SideKind.ABUTMENT}


def edge_names(points_mm: Sequence[Point], kinds: Sequence[EdgeKind]) -> list[str]:
    """Each edge by its kind; where there is more than one of it by its side of the slope too, seen facing it from the eaves,
    and numbered where that is not enough. ``kinds`` are of the edges from each point to the next, counter-clockwise.

    >>> square = ((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0))
    >>> edge_names(square, (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE))
    ['eaves', 'right verge', 'ridge', 'left verge']
    >>> edge_names(square, (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.ABUTMENT, EdgeKind.ABUTMENT))
    ['eaves', 'verge', 'top abutment', 'left abutment']
    """
    ends = (*points_mm[1:], points_mm[0])
    called = [
        kind.value if kinds.count(kind) == 1 else f"{_place(kind, start, stop)}{kind.value}"
        for kind, start, stop in zip(kinds, points_mm, ends, strict=True)
    ]
    return [
        name if called.count(name) == 1 else f"{name} {called[: index + 1].count(name)}"
        for index, name in enumerate(called)
    ]


def _place(kind: EdgeKind, start: Point, stop: Point) -> str:
    if kind in {EdgeKind.EAVES, EdgeKind.RIDGE}:
        return ""
    if _along_a_top(kind, start, stop):
        return "top "
    return "right " if stop[1] > start[1] else "left "


def _side_indexes(outline: SlopeOutline) -> tuple[int, int]:
    """The edges at the left and at the right end of the eaves the perps are set out along."""
    eaves = next(
        index
        for index, (point, kind) in enumerate(zip(outline.points_mm, outline.kinds, strict=True))
        if kind is EdgeKind.EAVES and point == (0.0, 0.0)
    )
    count = len(outline.kinds)
    return (eaves - 1) % count, (eaves + 1) % count


class Stands(NamedTuple):
    """How far up the sides at the eaves of a slope stand, and from where to where the slope reaches along x."""

    left_high_mm: float
    right_high_mm: float
    reaches_mm: tuple[float, float] | None


def how_it_stands(slope: Slope) -> Stands:
    """A slope by tape has its sides all the way up. One by outline has them as far as its first edge at each end goes."""
    if slope.outline is None:
        return Stands(inf, inf, None)
    points, kinds = slope.outline.points_mm, slope.outline.kinds
    highs_mm = []
    for index in _side_indexes(slope.outline):
        (_, start_mm), (_, stop_mm) = points[index], points[(index + 1) % len(points)]
        highs_mm.append(max(start_mm, stop_mm) if kinds[index] in _ENDS else inf)
    along_mm = [x for x, _ in points]
    return Stands(highs_mm[0], highs_mm[1], (min(along_mm), max(along_mm)))


def upper_edges(job: Job, slope: Slope, *, high_point: bool) -> tuple[UpperEdge, ...]:
    """Every verge and wall square to the eaves in whose line neither end of the eaves stands, each line once.

    An edge that carries on in the line of a side at the eaves, of the same kind, is part of that side. Of very many, the
    tallest.
    """
    if slope.outline is None:
        return ()
    names = edge_names(slope.outline.points_mm, slope.outline.kinds)
    return tuple(
        UpperEdge(
            name=names[index],
            side=side(job, line.kind, high_point=high_point),
            end=line.end,
            at_mm=line.at_mm,
            run_mm=_shortest_run_mm(slope.outline.points_mm, start, stop, end=line.end),
            low_mm=min(start[1], stop[1]),
            high_mm=max(start[1], stop[1]),
        )
        for index, line, start, stop in _upper_lines(slope, slope.outline)[:MOST_UPPER_COUNT]
    )


def _upper_lines(slope: Slope, outline: SlopeOutline) -> "list[tuple[int, _Line, Point, Point]]":
    """The tallest first."""
    told = [_Line(slope.left, CourseEnd.LEFT, 0.0), _Line(slope.right, CourseEnd.RIGHT, slope.taped.eaves_mm)]
    found: list[tuple[int, _Line, Point, Point]] = []
    for index, start, stop in _sides(outline):
        line = _line(outline, index, start, stop)
        if index in _side_indexes(outline) or not _square(start, stop) or any(line.carries_on(each) for each in told):
            continue
        told.append(line)
        found.append((index, line, start, stop))
    return sorted(found, key=lambda each: -max(each[3][1] - each[2][1], each[2][1] - each[3][1]))


def overhang_at_mm(slope: Slope, across: Across, index: int) -> float | None:
    """How far the covering was set out past this edge of the outline; None for one the perps were not set out to."""
    outline = slope.outline
    if outline is None:
        return None
    sides = (
        (_Line(slope.left, CourseEnd.LEFT, 0.0), across.left_overhang_mm),
        (_Line(slope.right, CourseEnd.RIGHT, slope.taped.eaves_mm), across.right_overhang_mm),
        *((_Line(each.edge.side.kind, each.edge.end, each.edge.at_mm), each.overhang_mm) for each in across.upper),
    )
    if index in _side_indexes(outline):
        return sides[_side_indexes(outline).index(index)][1]
    for at, start, stop in _sides(outline):
        if at == index and _square(start, stop):
            line = _line(outline, index, start, stop)
            return next((overhang_mm for each, overhang_mm in sides if line.carries_on(each)), None)
    return None


class _Line(NamedTuple):
    """A side that courses end at, square to the eaves."""

    kind: SideKind
    end: CourseEnd
    at_mm: float

    def carries_on(self, other: "_Line") -> bool:
        """Is it a part of that side, further up?"""
        apart_mm = self.at_mm - other.at_mm
        return self[:2] == other[:2] and -SQUARE_WITHIN_MM <= apart_mm <= SQUARE_WITHIN_MM


def _line(outline: SlopeOutline, index: int, start: Point, stop: Point) -> _Line:
    end = CourseEnd.RIGHT if stop[1] > start[1] else CourseEnd.LEFT
    return _Line(_ENDS[outline.kinds[index]], end, (start[0] + stop[0]) / 2)


def edges_left_to_the_laying(slope: Slope) -> Iterator[Finding]:
    """One for each verge or wall up the slope that the perps were not set out to: those that rake, and those of very many."""
    if slope.outline is None:
        return
    names = edge_names(slope.outline.points_mm, slope.outline.kinds)
    for index, *_ in _upper_lines(slope, slope.outline)[MOST_UPPER_COUNT:]:
        yield not_covered(
            rule="least piece",
            where=f"{slope.name}, {names[index]}",
            proposed=None,
            unit="mm",
            citation=MOST_UPPER,
            says="This slope has so many steps that the perps were set out to the tallest only. The laying sheet has the "
            "pieces along this one.",
        )
    for index, start, stop in _sides(slope.outline):
        if _square(start, stop):
            continue
        out_mm = max(stop[0] - start[0], start[0] - stop[0])
        yield not_covered(
            rule="least piece",
            where=f"{slope.name}, {names[index]}",
            proposed=None,
            unit="mm",
            citation=RAKING,
            says=f"This {slope.outline.kinds[index].value} rakes by {out_mm:.0f} mm from foot to head, so the pieces along it "
            "change width by as much: the laying sheet has each. Where one is under half a unit, cut it and its neighbour from a "
            "wider unit, or bond and fix it.",
        )


def _sides(outline: SlopeOutline) -> Iterator[tuple[int, Point, Point]]:
    """The verges and walls that go up the slope; not those along a top."""
    points = outline.points_mm
    for index, kind in enumerate(outline.kinds):
        start, stop = points[index], points[(index + 1) % len(points)]
        if kind in _ENDS and not _along_a_top(kind, start, stop):
            yield index, start, stop


def _along_a_top(kind: EdgeKind, start: Point, stop: Point) -> bool:
    rise_mm = max(stop[1] - start[1], start[1] - stop[1])
    return kind is EdgeKind.ABUTMENT and start[0] - stop[0] > rise_mm


def _square(start: Point, stop: Point) -> bool:
    return -SQUARE_WITHIN_MM <= stop[0] - start[0] <= SQUARE_WITHIN_MM


def _shortest_run_mm(points: Sequence[Point], start: Point, stop: Point, *, end: CourseEnd) -> float:
    """From the edge to the next line that stops a course: at its foot, half-way up and at its head."""
    runs_mm = []
    for share in (0.01, 0.5, 0.99):
        x_mm, y_mm = start[0] + share * (stop[0] - start[0]), start[1] + share * (stop[1] - start[1])
        inwards = 1 if end is CourseEnd.LEFT else -1
        beside = (inwards * (other_mm - x_mm) for other_mm in _crossings_mm(points, y_mm))
        runs_mm.append(min((run for run in beside if run > SQUARE_WITHIN_MM), default=inf))
    return min(runs_mm)


def _crossings_mm(points: Sequence[Point], y_mm: float) -> Iterator[float]:
    """Where a course line at this height meets the outline."""
    for (x0, y0), (x1, y1) in zip(points, (*points[1:], points[0]), strict=True):
        if (y0 <= y_mm) != (y1 <= y_mm):
            yield x0 + (y_mm - y0) / (y1 - y0) * (x1 - x0)
