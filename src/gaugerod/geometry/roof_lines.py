"""Hips, valleys and ridges: which is which, how long, how steep, and how they are cut."""

from math import hypot, sqrt

from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.roof_faces import RoofEdge, RoofLine
from gaugerod.geometry.slope_plane import SlopePlane, SpacePoint

RIDGE_UNTIL_DEG = 0.5
"""A line between slopes that fall away on both sides is a ridge up to this rise, a hip beyond (house choice: a ridge
that a survey to the millimetre leaves out of level is still a ridge)."""


def line_between(
    left: SlopePlane,
    right: SlopePlane,
    *,
    foot_mm: SpacePoint,
    head_mm: SpacePoint,
    left_number: int,
    right_number: int,
) -> RoofLine:
    r"""The line from foot to head, with a slope on its left and one on its right.

    Hip rise: atan(tan pitch · sin plan angle); backing: asin(sin pitch · cos plan angle), the plan angle being that
    between hip and eaves; in the slope the cut leans tan = tan(plan angle) / cos(pitch) from the courses. All are worked
    from coordinates here. Source: plane geometry (checked against printed framing tables).
    """
    dx, dy, rise_mm = (head_mm[at] - foot_mm[at] for at in range(3))
    plan_mm = hypot(dx, dy)
    to_left = (-dy / plan_mm, dx / plan_mm)
    to_right = (-to_left[0], -to_left[1])
    slope_deg = atan2_deg(rise_mm, plan_mm)
    falls_left, falls_right = _falls_ratio(left, to_left), _falls_ratio(right, to_right)
    convex = falls_left / left.run_ratio + falls_right / right.run_ratio > 0
    sign = 1.0 if convex else -1.0
    return RoofLine(
        kind=_kind(left, right, convex=convex, slope_deg=slope_deg),
        foot_mm=foot_mm,
        head_mm=head_mm,
        left=left_number,
        right=right_number,
        plan_length_mm=plan_mm,
        length_mm=hypot(plan_mm, rise_mm),
        slope_deg=slope_deg,
        dihedral_deg=180.0 - _angle_between_deg(left, right),
        backing_left_deg=_asin_deg(sign * falls_left),
        backing_right_deg=_asin_deg(sign * falls_right),
        cut_left_deg=_cut_deg(left, dx, dy),
        cut_right_deg=_cut_deg(right, dx, dy),
    )


def _kind(left: SlopePlane, right: SlopePlane, *, convex: bool, slope_deg: float) -> RoofEdge:
    (ax, ay), (bx, by) = left.along, right.along
    one_above_other = ax * bx + ay * by > 0
    if slope_deg <= RIDGE_UNTIL_DEG and one_above_other:
        return RoofEdge.CHANGE_OF_PITCH
    if not convex:
        return RoofEdge.VALLEY
    return RoofEdge.RIDGE if slope_deg <= RIDGE_UNTIL_DEG else RoofEdge.HIP


def _normal(slope: SlopePlane) -> SpacePoint:
    """The unit normal, out of the roof and upwards."""
    tx, ty = slope.along
    rise = slope.rise_ratio
    return ty * rise, -tx * rise, slope.run_ratio


def _falls_ratio(slope: SlopePlane, away: tuple[float, float]) -> float:
    """The lean of the slope's normal towards a level direction: above 0 where the slope falls that way.

    For a line lying in the slope and the level direction square to it, this is the sine of the backing angle.
    """
    nx, ny, _ = _normal(slope)
    return nx * away[0] + ny * away[1]


def _angle_between_deg(left: SlopePlane, right: SlopePlane) -> float:
    (ax, ay, az), (bx, by, bz) = _normal(left), _normal(right)
    across = hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx)
    return atan2_deg(across, ax * bx + ay * by + az * bz)


def _asin_deg(sine_ratio: float) -> float:
    return atan2_deg(sine_ratio, sqrt((1.0 - sine_ratio) * (1.0 + sine_ratio)))


def _cut_deg(slope: SlopePlane, dx: float, dy: float) -> float:
    """The angle between a line on plan and the courses, laid out in the slope."""
    tx, ty = slope.along
    along, inward = dx * tx + dy * ty, (dy * tx - dx * ty) / slope.run_ratio
    return atan2_deg(inward if inward > 0 else -inward, along if along > 0 else -along)
