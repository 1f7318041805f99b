"""Outlines on plan as a file gives them, made tidy: no corner twice, none in the middle of a wall, the right way round."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from gaugerod.basis.errors import Fault
from gaugerod.geometry.outline_faults import SHORTEST_SIDE_MM
from gaugerod.geometry.polygon import Point, bounding_box_mm, distance_to_side_mm, signed_area_mm2

WIDEST_MM = 100_000.0
"""No one building is wider (house limit, the job file's own)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPlan:
    """One building on plan, from its own lower left corner: outline counter-clockwise, holes clockwise; mm."""

    name: str
    outer_mm: tuple[Point, ...]
    holes_mm: tuple[tuple[Point, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRead:
    """Every building a file holds, and what the reader of the job should know about the reading."""

    plans: tuple[NamedPlan, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tidied:
    """A plan made tidy, or the faults that stand against it; and what was done to it."""

    plan: NamedPlan | None
    faults: tuple[Fault, ...]
    remarks: tuple[str, ...]


def tidied(name: str, rings_mm: Sequence[Sequence[Point]], *, field: str) -> Tidied:
    """The first ring as the outline, the others as its holes. What is wrong with a shape itself the job file says."""
    remarks: list[str] = []
    tidy = [_tidy_ring(ring) for ring in rings_mm]
    left_out = sum(map(len, rings_mm)) - sum(map(len, tidy))
    if left_out:
        remarks.append(f"{name}: {left_out} corners that repeat another or lie in the middle of a wall are left out.")
    small = [at for at, ring in enumerate(tidy) if len(ring) < 3]
    if small:
        do = "Give every corner of the building once."
        faults = [Fault(f"{field}[{at}]", f"{len(tidy[at])} corners", "three corners or more", do) for at in small]
        return Tidied(plan=None, faults=tuple(faults), remarks=())
    low, high = bounding_box_mm(tidy[0])
    wide_mm = max(high[0] - low[0], high[1] - low[1])
    if wide_mm > WIDEST_MM:
        given = f"{wide_mm / 1e6:.3g} km across" if wide_mm >= 1e6 else f"{wide_mm / 1000:.1f} m across"
        do = "Check the unit of the coordinates: --unit says it. Leave out what is no building."
        return Tidied(plan=None, faults=(Fault(field, given, f"up to {WIDEST_MM / 1000:g} m", do),), remarks=())
    turned = [_turned(ring, clockwise=at > 0) for at, ring in enumerate(tidy)]
    if turned != tidy:
        remarks.append(f"{name}: corners were in the other order; they are turned round, walls on the left.")
    outer, *holes = (tuple((x - low[0], y - low[1]) for x, y in ring) for ring in turned)
    return Tidied(plan=NamedPlan(name=name, outer_mm=outer, holes_mm=tuple(holes)), faults=(), remarks=tuple(remarks))


def _tidy_ring(ring: Sequence[Point]) -> list[Point]:
    apart: list[Point] = []
    for corner in ring:
        if not apart or _apart_mm(apart[-1], corner) >= SHORTEST_SIDE_MM:
            apart.append(corner)
    while len(apart) > 1 and _apart_mm(apart[0], apart[-1]) < SHORTEST_SIDE_MM:
        apart.pop()
    at = 0
    while len(apart) > 3 and at < len(apart):
        before, after = apart[at - 1], apart[(at + 1) % len(apart)]
        if distance_to_side_mm(apart[at], before, after) < SHORTEST_SIDE_MM:
            apart.pop(at)
        else:
            at += 1
    return apart


def _apart_mm(one: Point, other: Point) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])


def _turned(ring: list[Point], *, clockwise: bool) -> list[Point]:
    return ring if (signed_area_mm2(ring) < 0) == clockwise else ring[::-1]
