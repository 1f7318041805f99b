"""One course as geometry: the strip between its tail line and the next, parted by its joints.

A *cell* is what one unit shows: between two joints, from the tail line of its course to the tail line of the next.
The same strip, as high as a unit is long, is used to cut the units themselves.
"""

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import CourseLine, Perps
from gaugerod.laying.laid import Rings

Corners = tuple[Point, Point, Point, Point]
"""Tail left, tail right, head right, head left: counter-clockwise."""


class Row:
    """The strip of one course. Level lines and square perps, the usual case, take a short way to the same answer."""

    __slots__ = (
        "cover_lean_ratio",
        "cover_mm",
        "first_lean_ratio",
        "first_mm",
        "head_mm",
        "head_rise_ratio",
        "square",
        "square_cell_mm2",
        "tail_mm",
        "tail_rise_ratio",
        "touch_count",
    )

    def __init__(self, *, tail: CourseLine, head: CourseLine, perps: Perps) -> None:
        self.tail_mm, self.tail_rise_ratio = tail.at_mm, tail.rise_ratio
        self.head_mm, self.head_rise_ratio = head.at_mm, head.rise_ratio
        self.first_mm, self.first_lean_ratio = perps.first_mm, perps.first_lean_ratio
        self.cover_mm, self.cover_lean_ratio = perps.cover_mm, perps.cover_lean_ratio
        self.square = not (
            self.tail_rise_ratio or self.head_rise_ratio or self.first_lean_ratio or self.cover_lean_ratio
        )

        self.touch_count = TOUCH / perps.cover_mm
        self.square_cell_mm2 = self.cover_mm * (self.head_mm - self.tail_mm)

    def joints_left_of_count(self, point: Point) -> float:
        """How many joints, in parts of a cover, the point stands to the right of joint 0."""
        x, y = point
        return (x - self.first_mm - self.first_lean_ratio * y) / (self.cover_mm + self.cover_lean_ratio * y)

    def corners(self, left: int, right: int) -> Corners:
        """The corners of what lies between joint ``left`` and joint ``right``."""
        if self.square:
            x0, x1 = self.first_mm + left * self.cover_mm, self.first_mm + right * self.cover_mm
            return (x0, self.tail_mm), (x1, self.tail_mm), (x1, self.head_mm), (x0, self.head_mm)
        return (
            self._meet(left, self.tail_mm, self.tail_rise_ratio),
            self._meet(right, self.tail_mm, self.tail_rise_ratio),
            self._meet(right, self.head_mm, self.head_rise_ratio),
            self._meet(left, self.head_mm, self.head_rise_ratio),
        )

    def _meet(self, joint: int, at_mm: float, rise_ratio: float) -> Point:
        """Where a joint x = p + q·y meets a course line y = at_mm + rise_ratio·x."""
        p = self.first_mm + joint * self.cover_mm
        q = self.first_lean_ratio + joint * self.cover_lean_ratio
        y = (at_mm + rise_ratio * p) / (1.0 - rise_ratio * q)
        return p + q * y, y

    def area_mm2(self, left: int, right: int) -> float:
        """Area between joint ``left`` and joint ``right``: half the cross product of its diagonals."""
        if self.square:
            return (right - left) * self.square_cell_mm2
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = self.corners(left, right)
        return ((cx - ax) * (dy - by) - (dx - bx) * (cy - ay)) / 2

    def cell_area_mm2(self, index: int) -> float:
        """Area of what one whole unit shows."""
        return self.square_cell_mm2 if self.square else self.area_mm2(index, index + 1)

    def at_joint(self, joint: int, start: Point, end: Point, start_count: float, end_count: float) -> Point:
        """Where the step from start to end, standing at so many joints, meets one joint between them."""
        before, after = joint - start_count, end_count - joint
        if self.cover_lean_ratio:
            before *= self.cover_mm + self.cover_lean_ratio * start[1]
            after *= self.cover_mm + self.cover_lean_ratio * end[1]
        share = before / (before + after)
        return start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])

    def lines(self, left_mm: float, right_mm: float) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
        """Tail line and head line, each by its points at two places along the eaves."""
        return (
            (
                (left_mm, self.tail_mm + self.tail_rise_ratio * left_mm),
                (right_mm, self.tail_mm + self.tail_rise_ratio * right_mm),
            ),
            (
                (left_mm, self.head_mm + self.head_rise_ratio * left_mm),
                (right_mm, self.head_mm + self.head_rise_ratio * right_mm),
            ),
        )

    def reach_mm(self, rings: Rings, index: int, beside: int) -> float:
        """How far a piece of unit ``index`` reaches from its right joint (beside = 1) or its left one (−1)."""
        joint = index + 1 if beside > 0 else index
        return max(
            beside
            * (self.first_mm + joint * self.cover_mm + (self.first_lean_ratio + joint * self.cover_lean_ratio) * y - x)
            for ring in rings
            for x, y in ring
        )
