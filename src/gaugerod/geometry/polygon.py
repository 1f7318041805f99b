"""A polygon on plan or in a slope's own plane: corners in order, mm, the last joined to the first.

Counter-clockwise means: walked with the inside on the left, x to the right and y up (or north).
"""

from collections.abc import Sequence
from math import hypot

Point = tuple[float, float]
"""x, y in mm."""


def signed_area_mm2(corners: Sequence[Point]) -> float:
    """The area: positive when the corners run counter-clockwise, negative when clockwise.

    >>> signed_area_mm2([(0, 0), (4, 0), (4, 3), (0, 3)]), signed_area_mm2([(0, 3), (4, 3), (4, 0), (0, 0)])
    (12.0, -12.0)
    """
    x0, y0 = corners[0]
    ax, ay = corners[-1][0] - x0, corners[-1][1] - y0
    twice = 0.0
    for x, y in corners:
        bx, by = x - x0, y - y0
        twice += ax * by - bx * ay
        ax, ay = bx, by
    return twice / 2


def runs_counter_clockwise(corners: Sequence[Point]) -> bool:
    """Do the corners run counter-clockwise?

    >>> runs_counter_clockwise([(0, 0), (4, 0), (4, 3)])
    True
    """
    return signed_area_mm2(corners) > 0


def holds_point(corners: Sequence[Point], point: Point) -> bool:
    """Is the point inside? A point on a side may be told either way: ask ``distance_to_outline_mm`` first.

    >>> holds_point([(0, 0), (4, 0), (4, 3), (0, 3)], (1, 1)), holds_point([(0, 0), (4, 0), (4, 3)], (1, 2))
    (True, False)
    """
    x, y = point
    inside = False
    ax, ay = corners[-1]
    for bx, by in corners:
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
        ax, ay = bx, by
    return inside


def distance_to_side_mm(point: Point, start: Point, end: Point) -> float:
    """How far a point stands from the nearest point of a side.

    >>> distance_to_side_mm((1, 2), (0, 0), (4, 0)), distance_to_side_mm((7, 4), (0, 0), (4, 0))
    (2.0, 5.0)
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    px, py = point[0] - start[0], point[1] - start[1]
    long2 = dx * dx + dy * dy
    along = (px * dx + py * dy) / long2 if long2 else 0.0
    share = 0.0 if along < 0 else min(along, 1.0)  # the foot of the square, kept on the side
    return hypot(px - share * dx, py - share * dy)


def distance_to_outline_mm(corners: Sequence[Point], point: Point) -> float:
    """How far a point stands from the nearest side of the polygon, inside or out."""
    return min(distance_to_side_mm(point, corners[at - 1], corners[at]) for at in range(len(corners)))


def sides_cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Do the sides a–b and c–d cross at a point inside both? Sides that only touch do not cross.

    >>> sides_cross((0, 0), (2, 2), (0, 2), (2, 0)), sides_cross((0, 0), (2, 0), (1, 0), (1, 2))
    (True, False)
    """
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def part_left_of_line(corners: Sequence[Point], start: Point, end: Point) -> list[Point]:
    """The part of the polygon on the left of the line from start through end; empty when there is none.

    Scope: right in area for any polygon; where the kept part falls into pieces, they come back as one
    ring joined by a there-and-back walk along the line.

    >>> part_left_of_line([(0, 0), (4, 0), (4, 3), (0, 3)], (1, 0), (1, 3))
    [(0, 0), (1.0, 0.0), (1.0, 3.0), (0, 3)]
    """
    kept: list[Point] = []
    before = corners[-1]
    before_turn = _turn(start, end, before)
    for corner in corners:
        turn = _turn(start, end, corner)
        if (turn > 0 > before_turn) or (turn < 0 < before_turn):
            share = before_turn / (before_turn - turn)
            kept.append((before[0] + share * (corner[0] - before[0]), before[1] + share * (corner[1] - before[1])))
        if turn >= 0:
            kept.append(corner)
        before, before_turn = corner, turn
    return kept if len(kept) > 2 else []


def bounding_box_mm(corners: Sequence[Point]) -> tuple[Point, Point]:
    """The least and the greatest corner of the upright rectangle round the polygon.

    >>> bounding_box_mm([(1, 5), (4, 2), (3, 7)])
    ((1, 2), (4, 7))
    """
    xs = [x for x, _ in corners]
    ys = [y for _, y in corners]
    return (min(xs), min(ys)), (max(xs), max(ys))
