"""A building on plan: its outline, its holes, and what stands on each wall."""

from dataclasses import dataclass
from itertools import pairwise
from math import isfinite

from gaugerod.basis.errors import Fault
from gaugerod.geometry.polygon import Point

LEAST_PITCH_DEG = 1.0
"""Below this a roof is flat (house choice)."""
GREATEST_PITCH_DEG = 89.0
"""Above this a slope is a wall (house choice)."""
IN_LINE = 1e-9
"""Two walls whose directions differ by no more than this (sine of the angle) are in line or parallel."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeOfPitch:
    """A slope that changes pitch part-way up: a sprocket (steeper above) or a mansard (flatter above).

    ``rise_mm`` is the height of the change above that wall's own eaves line; ``pitch_deg`` the pitch above it.
    """

    rise_mm: float
    pitch_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PitchedWall:
    """A wall with a slope on it.

    ``eaves_height_mm`` is the height of the eaves line over any one level shared by the building; where it is above
    the lowest eaves, the wall (or the gable, under a half-hip) stands upright up to it.
    ``overhang_mm`` is measured on the level from the wall line out to the eaves line.
    """

    pitch_deg: float
    eaves_height_mm: float = 0.0
    overhang_mm: float = 0.0
    changes: tuple[ChangeOfPitch, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class GableWall:
    """A wall that stands upright as far up as the slopes beside it. ``overhang_mm`` is that of the verge, on the level."""

    overhang_mm: float = 0.0


Wall = PitchedWall | GableWall


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOutline:
    """A building on plan, seen from above.

    ``outer_mm`` are the corners of the wall line, counter-clockwise; ``holes_mm`` the corners of each courtyard, clockwise.
    ``walls`` has one entry for each side, corner i to corner i+1, the outer ring first and then each hole in turn.
    """

    outer_mm: tuple[Point, ...]
    walls: tuple[Wall, ...]
    holes_mm: tuple[tuple[Point, ...], ...] = ()

    @property
    def rings_mm(self) -> tuple[tuple[Point, ...], ...]:
        """The outer ring, then the holes."""
        return (self.outer_mm, *self.holes_mm)


def wall_faults(plan: PlanOutline) -> list[Fault]:
    """Every fault of what stands on the walls; empty when all is sound."""
    faults: list[Fault] = []
    sides = sum(map(len, plan.rings_mm))
    if len(plan.walls) != sides:
        faults.append(
            Fault("walls", f"{len(plan.walls)}", f"one for each side: {sides}", "Say what stands on every wall.")
        )
    for at, wall in enumerate(plan.walls):
        field = f"walls[{at}]"
        if not (isfinite(wall.overhang_mm) and wall.overhang_mm >= 0):
            faults.append(
                Fault(f"{field}.overhang", f"{wall.overhang_mm:g} mm", "nothing or more", "Measure out from the wall.")
            )
        if isinstance(wall, PitchedWall):
            faults += _pitched_wall_faults(wall, field=field)
    if plan.walls and not any(isinstance(wall, PitchedWall) for wall in plan.walls):
        faults.append(
            Fault("walls", "gables only", "a pitch on one wall at least", "Give the walls that carry a slope.")
        )
    return faults


def _pitched_wall_faults(wall: PitchedWall, *, field: str) -> list[Fault]:
    faults: list[Fault] = []
    if not isfinite(wall.eaves_height_mm):
        faults.append(Fault(f"{field}.eaves_height", f"{wall.eaves_height_mm}", "a finite length", "Measure it again."))
    pitches = [
        ("pitch", wall.pitch_deg),
        *((f"changes[{at}].pitch", step.pitch_deg) for at, step in enumerate(wall.changes)),
    ]
    for name, pitch_deg in pitches:
        if not LEAST_PITCH_DEG <= pitch_deg <= GREATEST_PITCH_DEG:
            allowed = f"{LEAST_PITCH_DEG:g}° to {GREATEST_PITCH_DEG:g}°"
            faults.append(Fault(f"{field}.{name}", f"{pitch_deg:g}°", allowed, "Give the pitch from the level."))
    rises_mm = [0.0, *(step.rise_mm for step in wall.changes)]
    for at, (below_mm, above_mm) in enumerate(pairwise(rises_mm)):
        if not (isfinite(above_mm) and above_mm > below_mm):
            allowed = f"more than {below_mm:g} mm"
            faults.append(
                Fault(f"{field}.changes[{at}].rise", f"{above_mm:g} mm", allowed, "Give the changes from the eaves up.")
            )
    return faults
