"""An outline walked wall by wall: each length and the turn to the next wall, closed back to the first corner."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.geometry.pitch import atan2_deg, cos_deg, length_mm, sin_deg
from gaugerod.geometry.plan_outline import IN_LINE
from gaugerod.geometry.polygon import Point

_SQUARE_STEPS: dict[float, Point] = {0.0: (1.0, 0.0), 90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
"""Square walls run exactly along the axes, so that square buildings come out without float noise."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkedWall:
    """One wall as it is walked, the building on the left.

    ``length_mm``  None: not measured, to be found by closing the outline
    ``turn_deg``   from this wall to the next: left is more than nothing, right is less. None: as the outline closes,
                   allowed at the last two walls only
    """

    length_mm: float | None
    turn_deg: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class WalkedOutline:
    """The outline as it closes.

    ``corners_mm[i]`` is where wall i starts; ``walls_mm`` and ``turns_deg`` are those of the closed outline, the last wall
    drawn straight to the first corner whatever was measured.
    ``missed_mm`` is how far the walk as measured ends from its first corner: x and y on plan.
    ``found`` are the walls whose length was found by closing.
    ``checked`` tells whether anything measured was left over to check the rest by.
    """

    corners_mm: tuple[Point, ...]
    walls_mm: tuple[float, ...]
    turns_deg: tuple[float, ...]
    missed_mm: Point
    found: tuple[int, ...]
    checked: bool

    @property
    def closing_error_mm(self) -> float:
        """How far the walk ends from its first corner."""
        return length_mm(*self.missed_mm)


def walk_outline(
    walls: Sequence[WalkedWall], *, start_mm: Point = (0.0, 0.0), first_wall_deg: float = 0.0
) -> WalkedOutline:
    """Walk the walls and close the outline. mm, degrees.

    ``first_wall_deg`` is the way the first wall runs on plan, counter-clockwise from x.
    One length that was not measured, or two of walls that are not in line, are found by closing. Raises InputRefused
    with every fault: a length or turn that cannot be, or too many that are not known.
    Scope: it closes any walk; whether the outline crosses itself is for ``outline_faults``.

    >>> walk = walk_outline([WalkedWall(length_mm=9000.0, turn_deg=90.0), WalkedWall(length_mm=6000.0, turn_deg=90.0),
    ...                      WalkedWall(length_mm=9004.0, turn_deg=90.0), WalkedWall(length_mm=None, turn_deg=None)])
    >>> walk.corners_mm, round(walk.walls_mm[3], 3), walk.missed_mm
    (((0.0, 0.0), (9000.0, 0.0), (9000.0, 6000.0), (-4.0, 6000.0)), 6000.001, (-4.0, 0.0))
    """
    faults = [*_length_faults(walls), *_turn_faults(walls)]
    if faults:
        raise InputRefused(faults)
    steps = _steps(walls, first_wall_deg)
    lengths_mm, found = _closed_lengths_mm(walls, steps)
    corners = _corners(start_mm, lengths_mm, steps)
    end_mm, corners = corners[-1], corners[:-1]
    most_found = 2 if steps[-1] is not None else 1
    rest = walls_of_corners(corners)
    return WalkedOutline(
        corners_mm=corners,
        walls_mm=tuple(wall.length_mm or 0.0 for wall in rest),
        turns_deg=tuple(wall.turn_deg or 0.0 for wall in rest),
        missed_mm=(end_mm[0] - start_mm[0], end_mm[1] - start_mm[1]),
        found=found,
        checked=len(found) < most_found,
    )


def walls_of_corners(corners: Sequence[Point]) -> tuple[WalkedWall, ...]:
    """The walls of an outline that is known by its corners: every length, and the turn to the next wall.

    >>> walls_of_corners([(0, 0), (9000, 0), (9000, 6000), (0, 6000)])[0]
    WalkedWall(length_mm=9000.0, turn_deg=90.0)
    """
    ways = [(to_x - x, to_y - y) for (x, y), (to_x, to_y) in zip(corners, (*corners[1:], corners[0]), strict=True)]
    return tuple(
        WalkedWall(length_mm=length_mm(*way), turn_deg=_turn_deg(way, following))
        for way, following in zip(ways, (*ways[1:], ways[0]), strict=True)
    )


def way_of_first_wall_deg(corners: Sequence[Point]) -> float:
    """The way the first wall runs on plan, counter-clockwise from x.

    >>> way_of_first_wall_deg([(0, 0), (0, 9000), (-6000, 9000)])
    90.0
    """
    (x, y), (to_x, to_y) = corners[0], corners[1]
    return atan2_deg(to_y - y, to_x - x)


def _turn_deg(way: Point, following: Point) -> float:
    cross = way[0] * following[1] - way[1] * following[0]
    dot = way[0] * following[0] + way[1] * following[1]
    return atan2_deg(cross, dot)


def _length_faults(walls: Sequence[WalkedWall]) -> list[Fault]:
    if len(walls) < 3:
        return [Fault("wall", f"{len(walls)} walls", "three walls or more", "Give every wall of the building.")]
    faults = [
        Fault(f"wall[{at}].length", f"{wall.length_mm:g} mm", "a length over nothing", "Measure this wall again.")
        for at, wall in enumerate(walls)
        if wall.length_mm is not None and not (isfinite(wall.length_mm) and wall.length_mm > 0)
    ]
    unknown = [at for at, wall in enumerate(walls) if wall.length_mm is None]
    if walls[-2].turn_deg is None:
        allowed, needed = "lengths of all walls but the last", [at for at in unknown if at != len(walls) - 1]
    else:
        allowed, needed = "lengths of all walls but two", unknown if len(unknown) > 2 else []
    return faults + [
        Fault(f"wall[{at}].length", "nothing", allowed, "Measure this wall: closing cannot find it.") for at in needed
    ]


def _turn_faults(walls: Sequence[WalkedWall]) -> list[Fault]:
    faults: list[Fault] = []
    for at, wall in enumerate(walls):
        if wall.turn_deg is None:
            if at < len(walls) - 2:
                do = "Say how the walls turn here: only the last wall can be left to close the outline."
                faults.append(Fault(f"wall[{at}].turn", "as it closes", "a turn to the left or right", do))
        elif not -180 < wall.turn_deg < 180:
            do = "Measure the angle between the two walls."
            allowed = "a turn of less than half a circle"
            faults.append(Fault(f"wall[{at}].turn", f"{wall.turn_deg:g}°", allowed, do))
    return faults


def _steps(walls: Sequence[WalkedWall], first_wall_deg: float) -> list[Point | None]:
    """The unit step along every wall; None for a last wall that runs as the outline closes."""
    turns_deg = [wall.turn_deg or 0.0 for wall in walls[:-1]]
    steps: list[Point | None] = [_step(way_deg) for way_deg in accumulate(turns_deg, initial=first_wall_deg)]
    if walls[-2].turn_deg is None:
        steps[-1] = None
    return steps


def _step(way_deg: float) -> Point:
    square = _SQUARE_STEPS.get(way_deg % 360)
    return (cos_deg(way_deg), sin_deg(way_deg)) if square is None else square


def _closed_lengths_mm(
    walls: Sequence[WalkedWall], steps: Sequence[Point | None]
) -> tuple[list[float], tuple[int, ...]]:
    """Every length, those not measured found by closing. A last wall without a direction counts as nothing here."""
    unknown = [at for at, wall in enumerate(walls) if wall.length_mm is None]
    lengths_mm = [wall.length_mm or 0.0 for wall in walls]
    known = [(step, long_mm) for step, long_mm in zip(steps, lengths_mm, strict=True) if step is not None]
    short = (-sum(step[0] * long_mm for step, long_mm in known), -sum(step[1] * long_mm for step, long_mm in known))
    free = [(at, step) for at in unknown if (step := steps[at]) is not None]
    if len(free) == 1:
        at, step = free[0]
        lengths_mm[at] = short[0] * step[0] + short[1] * step[1]
    elif len(free) == 2:
        (at, u), (other, v) = free
        cross = u[0] * v[1] - u[1] * v[0]
        if -IN_LINE < cross < IN_LINE:
            do = f"Measure it: it runs in line with wall {at + 1}, which is not measured either."
            raise InputRefused([Fault(f"wall[{other}].length", "nothing", "a length", do)])
        lengths_mm[at] = (short[0] * v[1] - short[1] * v[0]) / cross
        lengths_mm[other] = (u[0] * short[1] - u[1] * short[0]) / cross
    faults = [
        Fault(f"wall[{at}].length", f"{lengths_mm[at]:.1f} mm by closing", "a length over nothing",
              "The walls before it run past the first corner: look at their lengths and turns.")
        for at, _ in free if lengths_mm[at] <= 0
    ]  # fmt: skip
    if faults:
        raise InputRefused(faults)
    return lengths_mm, tuple(unknown)


def _corners(start_mm: Point, lengths_mm: Sequence[float], steps: Sequence[Point | None]) -> tuple[Point, ...]:
    """The start of every wall, and where the last one ends."""
    corners = [start_mm]
    for long_mm, step in zip(lengths_mm, steps, strict=True):
        x, y = corners[-1]
        if step is None:
            corners.append(_straight_home(corners[-1], start_mm, long_mm))
        else:
            corners.append((x + step[0] * long_mm, y + step[1] * long_mm))
    return tuple(corners)


def _straight_home(corner: Point, start_mm: Point, long_mm: float) -> Point:
    """Where a last wall of this length ends when it runs straight at the first corner; nothing measured: there."""
    dx, dy = start_mm[0] - corner[0], start_mm[1] - corner[1]
    needed_mm = length_mm(dx, dy)
    if not long_mm or not needed_mm:
        return start_mm
    return (corner[0] + dx * long_mm / needed_mm, corner[1] + dy * long_mm / needed_mm)
