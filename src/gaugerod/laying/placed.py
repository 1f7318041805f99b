"""Where one unit lies on the slope: a rectangle on the tail line of its course, square to it."""

from typing import NamedTuple

from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Course, LapSide, Unit
from gaugerod.laying.laid import Rings
from gaugerod.laying.rows import Corners, Row


class Placed(NamedTuple):
    """One unit in its place. ``tail_left`` is the left corner of its tail; (along_x, along_y) points along the tail.

    ``left_joint_mm`` and ``right_joint_mm`` are the joints at its tail, from its left side: between them it shows.
    """

    tail_left: Point
    along_x_ratio: float
    along_y_ratio: float
    width_mm: float
    length_mm: float
    left_joint_mm: float
    right_joint_mm: float

    def on_slope(self, across_mm: float, up_mm: float) -> Point:
        """A place on the unit, from its tail's left corner, as a point of the slope."""
        (x, y), ax, ay = self.tail_left, self.along_x_ratio, self.along_y_ratio
        return x + across_mm * ax - up_mm * ay, y + across_mm * ay + up_mm * ax

    def on_unit(self, point: Point) -> Point:
        """A point of the slope from the unit's tail left corner: across it and up it."""
        dx, dy = point[0] - self.tail_left[0], point[1] - self.tail_left[1]
        ax, ay = self.along_x_ratio, self.along_y_ratio
        return dx * ax + dy * ay, dy * ax - dx * ay

    @property
    def corners(self) -> Corners:
        """Tail left, tail right, head right, head left."""
        width_mm, length_mm = self.width_mm, self.length_mm
        return (
            self.tail_left,
            self.on_slope(width_mm, 0.0),
            self.on_slope(width_mm, length_mm),
            self.on_slope(0.0, length_mm),
        )

    def rings_on_unit(self, rings: Rings) -> Rings:
        """Outlines of the slope's plane as seen on the unit."""
        return tuple(tuple(map(self.on_unit, ring)) for ring in rings)


def placed(course: Course, row: Row, index: int, unit: Unit) -> Placed:
    """Where unit ``index`` of a course lies. It reaches past its cover at the side that laps under its neighbour."""
    tail_rise_ratio = course.tail.rise_ratio
    (x0, y0), (x1, y1), _, _ = row.corners(index, index + 1)
    stretch = (1.0 + tail_rise_ratio * tail_rise_ratio) ** 0.5
    ax, ay = 1.0 / stretch, tail_rise_ratio / stretch
    cover_mm = (x1 - x0) * ax + (y1 - y0) * ay
    left_joint_mm = unit.width_mm - cover_mm if unit.lap_side is LapSide.LEFT else 0.0
    tail_left = (x0 - left_joint_mm * ax, y0 - left_joint_mm * ay)
    return Placed(tail_left, ax, ay, unit.width_mm, course.unit_length_mm, left_joint_mm, left_joint_mm + cover_mm)
