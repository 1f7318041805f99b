"""Where the edges of the slope run through one course.

An edge is followed from the tail line to the next tail line and counted off in units: at ``first`` joints from joint
0 it comes in, at ``last`` it goes out. Everything between two edges is then known by arithmetic alone.
"""

from collections.abc import Iterator, Sequence
from math import ceil, floor
from typing import NamedTuple

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import CourseLine, LayingAsk
from gaugerod.laying.rows import Row

TAIL, RIGHT, HEAD, LEFT, INSIDE = range(5)
"""The sides of a cell, counter-clockwise, and its inside (where an edge ends there)."""


class Side(NamedTuple):
    """One edge of the outline or an opening; the covering is on its left."""

    number: int
    start: Point
    end: Point
    low_mm: float
    high_mm: float


class Crossing(NamedTuple):
    """One edge in one row, from left to right. Units ``low`` to ``high`` are touched; none when high = low − 1: then
    the edge lies on joint ``low``.

    ``start``, ``end``        left and right end of it inside the row
    ``start_on``, ``end_on``  the side of the row it comes in and goes out by; INSIDE when the edge ends in the row
    ``covering_above``        is the covering on the left of start → end?
    ``turns``                 does it part inside from outside along the middle of the row?
    """

    low: int
    high: int
    start: Point
    end: Point
    start_joints_count: float
    end_joints_count: float
    start_on: int
    end_on: int
    covering_above: bool
    turns: bool
    side: int


def sides_of(ask: LayingAsk) -> list[Side]:
    """Every edge of the slope, lowest first."""
    sides: list[Side] = []
    for ring in (ask.outline, *ask.openings):
        points = ring.points_mm
        for start, end in zip(points, points[1:] + points[:1], strict=True):
            sides.append(Side(len(sides), start, end, min(start[1], end[1]), max(start[1], end[1])))
    return sorted(sides, key=lambda side: side.low_mm)


def sides_by_row(sides: Sequence[Side], lines: Sequence[tuple[CourseLine, CourseLine]], *, ends_mm: Point
                 ) -> Iterator[list[Side]]:  # fmt: skip
    """For each row, given by its tail and head line, the sides whose heights reach into it. Rows go up the slope."""
    left, right = ends_mm
    waiting = 0
    active: list[Side] = []
    for tail, head in lines:
        low = min(tail.height_mm(left), tail.height_mm(right))
        high = max(head.height_mm(left), head.height_mm(right))
        while waiting < len(sides) and sides[waiting].low_mm < high:
            active.append(sides[waiting])
            waiting += 1
        active = [side for side in active if side.high_mm > low]
        yield active


def crossings(row: Row, sides: Sequence[Side]) -> list[Crossing]:
    """Every crossing of the row, from left to right. An edge that lies along a course line does not enter the row."""
    found = []
    tail, tail_rise, head, head_rise = row.tail_mm, row.tail_rise_ratio, row.head_mm, row.head_rise_ratio
    for number, (x0, y0), (x1, y1), _, _ in sides:
        above0, above1 = y0 - tail - tail_rise * x0, y1 - tail - tail_rise * x1
        below0, below1 = head + head_rise * x0 - y0, head + head_rise * x1 - y1
        if (above0 <= TOUCH and above1 <= TOUCH) or (below0 <= TOUCH and below1 <= TOUCH):
            continue
        start_on, from_start = _comes_in(above0, above1, below0, below1)
        end_on, from_end = _comes_in(above1, above0, below1, below0)
        if from_start + from_end >= 1.0:
            continue
        start = (x0 + from_start * (x1 - x0), y0 + from_start * (y1 - y0))
        end = (x1 + from_end * (x0 - x1), y1 + from_end * (y0 - y1))
        joints0, joints1 = row.joints_left_of_count(start), row.joints_left_of_count(end)
        rightward = joints0 <= joints1
        if not rightward:
            start, end, start_on, end_on, joints0, joints1 = end, start, end_on, start_on, joints1, joints0
        low, high = floor(joints0 + row.touch_count), ceil(joints1 - row.touch_count) - 1
        turns = (above0 > below0) != (above1 > below1)
        found.append(Crossing(low, high, start, end, joints0, joints1, start_on, end_on, rightward, turns, number))
    found.sort()
    return found


def _comes_in(above_mm: float, other_above_mm: float, below_mm: float, other_below_mm: float) -> tuple[int, float]:
    """By which side of the row an edge comes in at this end, and how far along it (0 at this end, 1 at the other)."""
    if above_mm <= TOUCH:
        return TAIL, above_mm / (above_mm - other_above_mm) if above_mm < 0.0 else 0.0
    if below_mm <= TOUCH:
        return HEAD, below_mm / (below_mm - other_below_mm) if below_mm < 0.0 else 0.0
    return INSIDE, 0.0
