"""Which units are the perimeter, and by what edge: told course by course from the edges, never unit by unit.

Along eaves and tops, and above and below openings, it is whole courses; at verges, hips, valleys, walls and the sides
of openings it is the last unit of each course, and every unit an edge runs through.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil, floor
from typing import NamedTuple

from gaugerod.basis.finding import TOUCH
from gaugerod.fixing.why import BIT
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import CourseLine, EdgeKind, LayingAsk
from gaugerod.laying.crossings import Side, sides_of
from gaugerod.laying.laid import CutCell
from gaugerod.laying.rows import Row
from gaugerod.rules.fixings import PerimeterRule

LEVEL_KINDS = frozenset({EdgeKind.EAVES, EdgeKind.RIDGE, EdgeKind.ABUTMENT, EdgeKind.OPENING})
"""Edges that whole courses run along, where they run more across the slope than up it."""


class Along(NamedTuple):
    """Units ``first`` up to before ``past`` of a course are perimeter by an edge of this kind (as its bit)."""

    first: int
    past: int
    bit: int


class LevelEdge(NamedTuple):
    """An edge along the courses, and how many courses beside it are perimeter."""

    kind: EdgeKind
    start: Point
    end: Point
    covering_above: bool
    courses_count: int


class RisingEdge(NamedTuple):
    """An edge up the slope, lower end first."""

    kind: EdgeKind
    low: Point
    high: Point


class Perimeter:
    """The edges of one slope, asked course by course."""

    def __init__(self, ask: LayingAsk, rule: PerimeterRule) -> None:
        kinds = [edge.kind for edge in ask.edges]
        lines = ask.lines
        # An edge may lie a little out of the courses, where they do not quite reach it: by one course, no more.
        self.lines = (_further(lines[0], lines[1]), *lines, _further(lines[-1], lines[-2]))
        self.level: list[LevelEdge] = []
        self.rising: list[RisingEdge] = []
        self.rows = [Row(tail=tail, head=head, perps=course.perps)
                     for (tail, head), course in zip(pairwise(ask.lines), ask.courses, strict=True)]  # fmt: skip
        for side in sides_of(ask):
            kind = kinds[side.number]
            if kind in LEVEL_KINDS and _runs_along(side):
                limit = rule.opening_courses if kind is EdgeKind.OPENING else rule.courses
                above = side.end[0] > side.start[0]
                self.level.append(LevelEdge(kind, side.start, side.end, above, int(limit.value)))
            if side.low_mm < side.high_mm:
                low, high = sorted((side.start, side.end), key=lambda point: point[1])
                self.rising.append(RisingEdge(kind, low, high))

    def along(self, course: int) -> Iterator[Along]:
        """The units of a course that stand near enough to an edge along the courses, straight above or below it."""
        row, lines = self.rows[course], self.lines
        for kind, start, end, above, count in self.level:
            # lines[0] lies one course below the first, so line n of the courses is lines[n + 1].
            if above:
                first_row = course + 1 - count
                lower = lines[first_row + 1] if first_row > 0 else lines[0]
                part = _between(start, end, lower, lines[course + 2], above=True)
            else:
                last_row = course + count
                upper = lines[last_row + 1] if last_row < len(self.rows) else lines[-1]
                part = _between(start, end, lines[course + 1], upper, above=False)
            if part is None:
                continue
            joints = sorted(map(row.joints_left_of_count, part))
            first, past = floor(joints[0] + row.touch_count), ceil(joints[1] - row.touch_count)
            if first < past:
                yield Along(first, past, BIT[kind])

    def ends(
        self, course: int, blocks: Sequence[tuple[int, int]], cuts: dict[int, CutCell]
    ) -> Iterator[tuple[int, int]]:
        """The first and last unit of each stretch laid without a gap, and the bit of the edge it ends at."""
        row = self.rows[course]
        for first, past in blocks:
            for index, joint in ((first, first), (past - 1, past)):
                kind = self._edge_beside(_end_of(row, index, joint, cuts.get(index)))
                if kind is not None:
                    yield index, BIT[kind]

    def _edge_beside(self, point: Point) -> EdgeKind | None:
        """The kind of the nearest edge straight left or right; None where no edge is as high as this."""
        x, y = point
        nearest, found = float("inf"), None
        for kind, (x0, y0), (x1, y1) in self.rising:
            if y0 <= y <= y1:
                away_mm = x - x0 - (x1 - x0) * (y - y0) / (y1 - y0)
                away_mm = max(away_mm, -away_mm)
                if away_mm < nearest:
                    nearest, found = away_mm, kind
        return found


def _further(line: CourseLine, before: CourseLine) -> CourseLine:
    """The line as far past ``line`` as that is past the one before it."""
    return CourseLine(at_mm=2 * line.at_mm - before.at_mm, rise_ratio=2 * line.rise_ratio - before.rise_ratio)


def _runs_along(side: Side) -> bool:
    across_mm = side.end[0] - side.start[0]
    return max(across_mm, -across_mm) > side.high_mm - side.low_mm


def _end_of(row: Row, index: int, joint: int, cut: CutCell | None) -> Point:
    """The middle of a unit's side; of a cut unit, beside the middle of what shows of it."""
    (x0, y0), _, _, (x1, y1) = row.corners(joint, joint + 1)
    if cut is None:
        return (x0 + x1) / 2, (y0 + y1) / 2
    xs = [x for ring in cut.rings for x, _ in ring]
    ys = [y for ring in cut.rings for _, y in ring]
    return (min(xs) if joint == index else max(xs)), (min(ys) + max(ys)) / 2


def _between(
    start: Point, end: Point, lower: CourseLine, upper: CourseLine, *, above: bool
) -> tuple[Point, Point] | None:
    """The part of an edge between two course lines; None when there is none.

    An edge on the very line belongs to the course on its own side: the upper one where the covering is ``above`` it.
    """
    enters, leaves = 0.0, 1.0
    for line, sign in ((lower, 1.0), (upper, -1.0)):
        at_start = sign * (start[1] - line.height_mm(start[0]))
        at_end = sign * (end[1] - line.height_mm(end[0]))
        if -TOUCH <= at_start <= TOUCH and -TOUCH <= at_end <= TOUCH:
            if above != (line is lower):
                return None
        elif at_start < 0.0 and at_end < 0.0:
            return None
        elif at_start < 0.0:
            enters = max(enters, at_start / (at_start - at_end))
        elif at_end < 0.0:
            leaves = min(leaves, at_start / (at_start - at_end))
    if enters >= leaves:
        return None
    (x0, y0), dx, dy = start, end[0] - start[0], end[1] - start[1]
    return (x0 + enters * dx, y0 + enters * dy), (x0 + leaves * dx, y0 + leaves * dy)
