"""A slope's own plane: where its axes lie in the building, and the way from one to the other."""

from dataclasses import dataclass

from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.geometry.polygon import Point

SpacePoint = tuple[float, float, float]
"""x, y on plan and height, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopePlane:
    """The own axes of a slope or an upright face, seen from outside and square to it.

    x runs along the eaves from their left end, y straight up the slope from the eaves line.
    ``left_end_mm`` is the origin in the building, ``along`` the unit step of x on plan.
    ``run_ratio`` and ``rise_ratio`` are the level run and the rise for each unit up the slope.
    """

    left_end_mm: SpacePoint
    along: tuple[float, float]
    run_ratio: float
    rise_ratio: float

    def in_building(self, point: Point) -> SpacePoint:
        """A point of the slope (x along, y up the slope) in the building: plan x, plan y, height; mm.

        >>> slope_plane((0.0, 0.0, 2400.0), along=(1.0, 0.0), pitch_deg=45.0).in_building((1000.0, 0.0))
        (1000.0, 0.0, 2400.0)
        """
        x_mm, y_mm = point
        (x0_mm, y0_mm, z0_mm), (tx, ty) = self.left_end_mm, self.along
        run_mm = y_mm * self.run_ratio
        return x0_mm + x_mm * tx - run_mm * ty, y0_mm + x_mm * ty + run_mm * tx, z0_mm + y_mm * self.rise_ratio

    def on_plan(self, point: Point) -> Point:
        """A point of the slope on plan, mm."""
        x_mm, y_mm, _ = self.in_building(point)
        return x_mm, y_mm

    def from_building(self, point: SpacePoint) -> Point:
        """A point of the building on the slope's own axes (the nearest point of its plane), mm.

        >>> [round(part, 6) for part in slope_plane((0.0, 0.0, 0.0), along=(1.0, 0.0), pitch_deg=60.0).from_building(
        ...     (250.0, 1000.0, 1732.0508075688772))]
        [250.0, 2000.0]
        """
        (x0_mm, y0_mm, z0_mm), (tx, ty) = self.left_end_mm, self.along
        dx_mm, dy_mm = point[0] - x0_mm, point[1] - y0_mm
        in_mm = dy_mm * tx - dx_mm * ty
        return dx_mm * tx + dy_mm * ty, in_mm * self.run_ratio + (point[2] - z0_mm) * self.rise_ratio

    def from_plan(self, point: Point) -> Point:
        """The point of the slope above a point on plan, mm. Scope: a slope; an upright face is a line on plan."""
        (x0_mm, y0_mm, _), (tx, ty) = self.left_end_mm, self.along
        dx_mm, dy_mm = point[0] - x0_mm, point[1] - y0_mm
        return dx_mm * tx + dy_mm * ty, (dy_mm * tx - dx_mm * ty) / self.run_ratio

    def height_over_plan_mm(self, point: Point) -> float:
        """The height of the slope's plane above a point on plan. Scope: a slope."""
        return self.left_end_mm[2] + self.from_plan(point)[1] * self.rise_ratio


def slope_plane(left_end_mm: SpacePoint, *, along: tuple[float, float], pitch_deg: float) -> SlopePlane:
    """The own axes of a slope of a pitch from the left end of its eaves; 90° gives those of an upright face."""
    run_ratio = 0.0 if pitch_deg == 90 else cos_deg(pitch_deg)
    return SlopePlane(left_end_mm=left_end_mm, along=along, run_ratio=run_ratio, rise_ratio=sin_deg(pitch_deg))
