"""The fronts that start from the walls of a plan."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, inf
from typing import assert_never

from gaugerod.geometry.pitch import tan_deg
from gaugerod.geometry.plan_outline import IN_LINE, GableWall, PitchedWall, Wall
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.wavefront.front import Front, Vector

Stage = tuple[float, float]
"""From a height, mm, the run on plan for each unit of rise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallFronts:
    """The fronts of a plan, the one each wall starts as, and the height of the lowest eaves."""

    fronts: list[Front]
    front_of_wall: list[int]
    lowest_mm: float


def fronts_of_walls(rings: Sequence[Sequence[Point]], walls: Sequence[Wall], *, tolerance_mm: float) -> WallFronts:
    """The fronts of every wall. Walls that share a line and rise alike share a front: they carry one plane."""
    lowest_mm = min(wall.eaves_height_mm for wall in walls if isinstance(wall, PitchedWall))
    fronts: list[Front] = []
    front_of_wall: list[int] = []
    known: list[tuple[Vector, float, tuple[Stage, ...], int]] = []
    sides = [(ring[at], ring[(at + 1) % len(ring)]) for ring in rings for at in range(len(ring))]
    for (start, end), wall in zip(sides, walls, strict=True):
        dx, dy = end[0] - start[0], end[1] - start[1]
        long_mm = hypot(dx, dy)
        inward = (-dy / long_mm, dx / long_mm)
        place_mm = inward[0] * start[0] + inward[1] * start[1]
        stages = _stages(wall, lowest_mm=lowest_mm)
        for other, other_place_mm, other_stages, front in known:
            apart_mm = place_mm - other_place_mm
            if (
                stages == other_stages
                and -tolerance_mm <= apart_mm <= tolerance_mm
                and -IN_LINE <= inward[0] * other[1] - inward[1] * other[0] <= IN_LINE
                and inward[0] * other[0] + inward[1] * other[1] > 0
            ):
                front_of_wall.append(front)
                break
        else:
            known.append((inward, place_mm, stages, len(fronts)))
            front_of_wall.append(len(fronts))
            _add_chain(fronts, stages, inward=inward, place_mm=place_mm)
    return WallFronts(fronts=fronts, front_of_wall=front_of_wall, lowest_mm=lowest_mm)


def _stages(wall: Wall, *, lowest_mm: float) -> tuple[Stage, ...]:
    """How a wall rises: upright from the lowest eaves to its own, then at each pitch in turn."""
    match wall:
        case GableWall():
            return ((lowest_mm, 0.0),)
        case PitchedWall():
            eaves_mm = wall.eaves_height_mm
            upright = ((lowest_mm, 0.0),) if eaves_mm > lowest_mm else ()
            changes = [(eaves_mm + step.rise_mm, 1 / tan_deg(step.pitch_deg)) for step in wall.changes]
            return (*upright, (eaves_mm, 1 / tan_deg(wall.pitch_deg)), *changes)
        case _ as unreachable:
            assert_never(unreachable)


def _add_chain(fronts: list[Front], stages: Sequence[Stage], *, inward: Vector, place_mm: float) -> None:
    """One front for each stage, every one starting where the one below it ends."""
    for at, (from_mm, run_ratio) in enumerate(stages):
        last = at + 1 == len(stages)
        until_mm = inf if last else stages[at + 1][0]
        fronts.append(
            Front(
                inward=inward,
                start_mm=place_mm - run_ratio * from_mm,
                run_ratio=run_ratio,
                until_mm=until_mm,
                then=None if last else len(fronts) + 1,
            )
        )
        if not last:
            place_mm += run_ratio * (until_mm - from_mm)
