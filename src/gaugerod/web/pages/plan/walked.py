"""From walls as typed to the outline they walk, and back."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from gaugerod.basis.errors import Fault, InputRefused, LengthUnclear
from gaugerod.basis.lengths import LengthUnit, read_length_mm
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.geometry.walked_outline import (
    WalkedOutline,
    WalkedWall,
    walk_outline,
    walls_of_corners,
    way_of_first_wall_deg,
)
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.web.pages.plan.outline_typed import OutlineTyped, Turn, WallTyped, number_written

_ANGLE = re.compile(r"([0-9]{1,3}(?:[.,][0-9]{1,6})?) *(?:°|º|deg|degrees)?", re.IGNORECASE | re.ASCII)
_TURNS_DEG = {Turn.LEFT: 90.0, Turn.RIGHT: -90.0, Turn.STRAIGHT: 0.0}
_SAME_ANGLE_DEG = 0.0005
"""Angles are written to a thousandth of a degree."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk:
    """The walls walked: the outline; or every fault that keeps it from being one."""

    outline: WalkedOutline | None = None
    faults: tuple[Fault, ...] = ()

    @property
    def turned_round(self) -> bool:
        """Was it walked with the building on the right?"""
        return self.outline is not None and signed_area_mm2(self.outline.corners_mm) < 0


def walked(typed: OutlineTyped) -> Walk:
    """Walk the walls as typed."""
    faults: list[Fault] = []
    walls = [_walked_wall(wall, at, len(typed.walls), faults) for at, wall in enumerate(typed.walls)]
    if faults:
        return Walk(faults=tuple(faults))
    try:
        return Walk(outline=walk_outline(walls, start_mm=typed.start_mm, first_wall_deg=typed.way_deg))
    except InputRefused as refused:
        return Walk(faults=refused.faults)


def _walked_wall(wall: WallTyped, at: int, count: int, faults: list[Fault]) -> WalkedWall:
    length_mm = turn_deg = None
    if wall.length:
        try:
            length_mm = float(read_length_mm(wall.length))
        except (LengthUnclear, OverflowError) as unclear:
            do = unclear.reason if isinstance(unclear, LengthUnclear) else "is too long"
            faults.append(Fault(f"wall[{at}].length", wall.length, "the length of this wall", f"It {do}."))
    if at == count - 1 or wall.turn is Turn.CLOSES:
        return WalkedWall(length_mm=length_mm, turn_deg=None)
    turn_deg = _TURNS_DEG.get(wall.turn)
    if turn_deg is None and (found := _ANGLE.fullmatch(wall.angle)):
        inside_deg = float(found[1].replace(",", "."))
        if 0 < inside_deg < 360:
            turn_deg = 180.0 - inside_deg
    if turn_deg is None:
        allowed = "the angle inside the corner, over 0° and under 360°, like 135°"
        faults.append(Fault(f"wall[{at}].angle", wall.angle, allowed, "Measure the angle inside the building."))
    return WalkedWall(length_mm=length_mm, turn_deg=turn_deg)


def with_corners(typed: OutlineTyped, corners: Sequence[Point], *, unit: LengthUnit) -> OutlineTyped:
    """The walls written anew from corners; what stands on each stays with its number. Under three corners: only tapped."""
    if len(corners) < 3:
        return replace(typed, taps=tuple(corners))
    old = [*typed.walls, *[WallTyped()] * len(corners)]
    walls = tuple(_wall_of(wall, was, unit) for wall, was in zip(walls_of_corners(corners), old, strict=False))
    return replace(typed, walls=walls, start_mm=corners[0], way_deg=way_of_first_wall_deg(corners), taps=tuple(corners))


def _wall_of(wall: WalkedWall, was: WallTyped, unit: LengthUnit) -> WallTyped:
    turn_deg = wall.turn_deg or 0.0
    turn = next((turn for turn, deg in _TURNS_DEG.items() if -_SAME_ANGLE_DEG < turn_deg - deg < _SAME_ANGLE_DEG), None)
    return replace(
        was,
        length=fine_length(wall.length_mm or 0.0, unit),
        turn=turn or Turn.ANGLE,
        angle="" if turn else f"{number_written(round(180.0 - turn_deg, 3))}°",
    )
