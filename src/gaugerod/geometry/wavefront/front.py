"""Fronts: the level line in which one plane of the roof stands at a height, and where two of them meet."""

from dataclasses import dataclass
from math import hypot, inf

from gaugerod.geometry.plan_outline import IN_LINE

NEARLY_IN_LINE = 0.0087
"""Sine of half a degree: fronts of different run that turn less than this from each other count as in line (house
choice). Their meeting would run along the eaves at a place that a millimetre of survey decides."""

Vector = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """One plane of the roof as a line on plan that moves in as the height grows.

    ``inward`` is the unit normal on plan, into the building: the slope rises that way.
    ``start_mm`` is where the line would stand at height 0, measured along ``inward`` from the origin.
    ``run_ratio`` is the run on plan for each unit of rise: 0 for an upright face.
    ``until_mm`` is the height at which the wall goes on as the front numbered ``then``.
    """

    inward: Vector
    start_mm: float
    run_ratio: float
    until_mm: float = inf
    then: int | None = None

    def place_mm(self, height_mm: float) -> float:
        """Where the line stands at a height, along ``inward`` from the origin."""
        return self.start_mm + self.run_ratio * height_mm


def run_of_meeting(before: Front, after: Front) -> Vector | None:
    """How far on plan the point where two fronts meet moves for each unit of rise.

    None when they lie in one line, or nearly, and move differently (no point to speak of stays on both), or face each
    other.
    """
    (ax, ay), (bx, by) = before.inward, after.inward
    turn = ax * by - ay * bx
    run_a, run_b = before.run_ratio, after.run_ratio
    if -NEARLY_IN_LINE < turn < NEARLY_IN_LINE:
        alike = -IN_LINE < run_a - run_b < IN_LINE
        one_way = ax * bx + ay * by > 0
        in_line = -IN_LINE < turn < IN_LINE
        if one_way and alike and in_line:
            return ax * run_a, ay * run_a
        if in_line or (one_way and not alike):
            return None
    return (run_a * by - run_b * ay) / turn, (ax * run_b - bx * run_a) / turn


def face_each_other(before: Front, after: Front) -> bool:
    """Do two fronts move head-on against each other?"""
    (ax, ay), (bx, by) = before.inward, after.inward
    return -IN_LINE < ax * by - ay * bx < IN_LINE and ax * bx + ay * by < 0


def cheek_between(before: Front, after: Front, foot: Vector) -> Front:
    """The upright cheek that closes the step between two in-line fronts, from the point where they part."""
    (ax, ay), (bx, by) = before.inward, after.inward
    long = hypot(ax + bx, ay + by)  # nearly in line: the cheek stands square to both alike
    mx, my = (ax + bx) / long, (ay + by) / long
    inward = (my, -mx) if before.run_ratio > after.run_ratio else (-my, mx)
    return Front(inward=inward, start_mm=inward[0] * foot[0] + inward[1] * foot[1], run_ratio=0.0)
