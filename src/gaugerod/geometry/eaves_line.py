"""The eaves line: the wall line of a building moved out by the overhang of each wall."""

from collections.abc import Sequence
from math import hypot

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.plan_outline import IN_LINE, PlanOutline, wall_faults
from gaugerod.geometry.polygon import Point


def eaves_line_mm(plan: PlanOutline) -> tuple[tuple[Point, ...], ...]:
    """The rings of the eaves (and verge) line: every wall line moved out by its own overhang, corners mitred.

    Raises InputRefused with every fault of the plan.

    >>> from gaugerod.geometry.plan_outline import GableWall, PitchedWall
    >>> walls = (PitchedWall(pitch_deg=40.0, overhang_mm=300.0), GableWall(overhang_mm=50.0)) * 2
    >>> eaves_line_mm(PlanOutline(outer_mm=((0, 0), (8000, 0), (8000, 6000), (0, 6000)), walls=walls))[0][0]
    (-50.0, -300.0)
    """
    faults = [*outline_faults(plan.outer_mm, holes=plan.holes_mm), *wall_faults(plan)]
    if faults:
        raise InputRefused(faults)
    if not any(wall.overhang_mm for wall in plan.walls):
        return plan.rings_mm
    first = 0
    rings: list[tuple[Point, ...]] = []
    for ring in plan.rings_mm:
        overhangs_mm = [wall.overhang_mm for wall in plan.walls[first : first + len(ring)]]
        rings.append(_moved_out(ring, overhangs_mm, first_wall_count=first))
        first += len(ring)
    faults = list(outline_faults(rings[0], holes=rings[1:], field="eaves line"))
    if faults:
        raise InputRefused(faults)
    return tuple(rings)


def _moved_out(ring: Sequence[Point], overhangs_mm: Sequence[float], *, first_wall_count: int) -> tuple[Point, ...]:
    directions = _directions(ring)
    faults: list[Fault] = []
    moved: list[Point] = []
    for at, (x, y) in enumerate(ring):
        (ax, ay), (bx, by) = directions[at - 1], directions[at]
        out_a_mm, out_b_mm = overhangs_mm[at - 1], overhangs_mm[at]
        turn = ax * by - ay * bx
        if -IN_LINE <= turn <= IN_LINE:
            if out_a_mm != out_b_mm:
                faults.append(_unlike_in_line(first_wall_count + at, given_mm=out_b_mm, before_mm=out_a_mm))
            moved.append((x + by * out_b_mm, y - bx * out_b_mm))
        else:
            moved.append((x + (ax * out_b_mm - bx * out_a_mm) / turn, y + (ay * out_b_mm - by * out_a_mm) / turn))
    if not faults:
        faults = [
            _swallowed(first_wall_count + at, given_mm=overhangs_mm[at])
            for at, (was, now) in enumerate(zip(directions, _directions(moved), strict=True))
            if was[0] * now[0] + was[1] * now[1] <= 0
        ]
    if faults:
        raise InputRefused(faults)
    return tuple(moved)


def _directions(ring: Sequence[Point]) -> list[Point]:
    """The unit step along each side; nothing for a side of no length."""
    directions: list[Point] = []
    for (x, y), (to_x, to_y) in zip(ring, (*ring[1:], ring[0]), strict=True):
        long_mm = hypot(to_x - x, to_y - y)
        directions.append(((to_x - x) / long_mm, (to_y - y) / long_mm) if long_mm else (0.0, 0.0))
    return directions


def _unlike_in_line(wall: int, *, given_mm: float, before_mm: float) -> Fault:
    return Fault(
        f"walls[{wall}].overhang",
        f"{given_mm:g} mm",
        f"{before_mm:g} mm, as the wall in line before it",
        "Walls in line share one eaves line: give both the same overhang.",
    )


def _swallowed(wall: int, *, given_mm: float) -> Fault:
    return Fault(
        f"walls[{wall}].overhang",
        f"{given_mm:g} mm",
        "overhangs that leave every wall some eaves",
        "The overhangs beside this wall close over it: lessen them, or leave the recess out of the outline.",
    )
