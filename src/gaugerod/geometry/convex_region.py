"""A convex region of the plane cut out by straight conditions, and the point of it with the least total of misses.

Used where two numbers are to be chosen together and every condition on them is a straight line.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

Point = tuple[float, float]
NOISE = 1e-9
"""Two products nearer than this are alike: float noise."""


class HalfPlane(NamedTuple):
    """All points with a·x + b·y ≥ c."""

    a: float
    b: float
    c: float

    def over(self, point: Point) -> float:
        """By how much the condition is more than met; below nothing where it is not."""
        return self.a * point[0] + self.b * point[1] - self.c


def region(conditions: Sequence[HalfPlane], *, within: tuple[Point, Point]) -> tuple[Point, ...]:
    """The corners of what all conditions leave of the box ``within`` (two opposite corners); empty when nothing is left.

    >>> region([HalfPlane(1.0, 1.0, 1.5)], within=((0.0, 0.0), (1.0, 1.0)))
    ((1.0, 0.5), (1.0, 1.0), (0.5, 1.0))
    """
    (x0, y0), (x1, y1) = within
    corners: tuple[Point, ...] = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    for condition in conditions:
        corners = tuple(_clipped(corners, condition))
        if not corners:
            return ()
    return corners


def _clipped(corners: Sequence[Point], condition: HalfPlane) -> Iterator[Point]:
    """One cut. Corners within noise of the line count as on it, so that a region thin as a line survives."""
    for index, here in enumerate(corners):
        there = corners[(index + 1) % len(corners)]
        here_over, there_over = condition.over(here), condition.over(there)
        if here_over >= -NOISE:
            yield here
        if (here_over > NOISE and there_over < -NOISE) or (here_over < -NOISE and there_over > NOISE):
            share = here_over / (here_over - there_over)
            yield (here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1]))


class Wish(NamedTuple):
    """A line one would like to be on: the miss of a point is the size of a·x + b·y − c."""

    a: float
    b: float
    c: float

    def miss(self, point: Point) -> float:
        """How far off the wish a point is, never below nothing."""
        off = self.a * point[0] + self.b * point[1] - self.c
        return max(off, -off)


def nearest(corners: Sequence[Point], wishes: Sequence[Wish]) -> tuple[float, Point]:
    """The point of the region with the least total of misses, and that total: exact.

    The total is a piecewise plane that bends only on the wishes' own lines, so its least lies on a corner of the
    region, where such a line crosses the region's edge, or where two of them cross inside it.
    """
    candidates = [*corners, *_on_edges(corners, wishes)]
    if _has_inside(corners):
        candidates.extend(_crossings(corners, wishes))
    return min((sum(wish.miss(point) for wish in wishes), point) for point in candidates)


def _on_edges(corners: Sequence[Point], wishes: Sequence[Wish]) -> Iterator[Point]:
    for index, here in enumerate(corners):
        there = corners[(index + 1) % len(corners)]
        for wish in wishes:
            step = wish.a * (there[0] - here[0]) + wish.b * (there[1] - here[1])
            if -NOISE < step < NOISE:
                continue
            share = (wish.c - wish.a * here[0] - wish.b * here[1]) / step
            if 0 <= share <= 1:
                yield (here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1]))


def _crossings(corners: Sequence[Point], wishes: Sequence[Wish]) -> Iterator[Point]:
    for one, other in combinations(wishes, 2):
        cross = one.a * other.b - one.b * other.a
        if -NOISE < cross < NOISE:
            continue
        point = ((one.c * other.b - one.b * other.c) / cross, (one.a * other.c - one.c * other.a) / cross)
        if _inside(corners, point):
            yield point


def _has_inside(corners: Sequence[Point]) -> bool:
    """A region may be no more than a stretch of line, or a point: then its edges are all of it."""
    double_area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(corners, (*corners[1:], corners[0]), strict=True))
    return double_area > NOISE


def _inside(corners: Sequence[Point], point: Point) -> bool:
    """Corners counter-clockwise; a point on an edge is inside."""
    for index, here in enumerate(corners):
        there = corners[(index + 1) % len(corners)]
        turn = (there[0] - here[0]) * (point[1] - here[1]) - (there[1] - here[1]) * (point[0] - here[0])
        if turn < -NOISE:
            return False
    return True
