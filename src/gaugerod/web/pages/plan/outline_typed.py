"""What was typed of a building: its walls as they are walked, what stands on each, and what holds for all."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from math import isfinite
from typing import Any

from gaugerod.geometry.polygon import Point
from gaugerod.web.form import typed
from gaugerod.web.pitch_ways import PitchBy, pitch_typed, pitch_way

MOST_WALLS_COUNT = 200
_FURTHEST_MM = 100_000.0
"""As far as the job file allows: what is outside was not tapped by a person."""
_WALL_FIELD = re.compile(r"wall\[([0-9]{1,3})\]\.")


class Turn(StrEnum):
    """How the next wall runs on from this one, the building on the left."""

    LEFT = "left"
    RIGHT = "right"
    STRAIGHT = "straight"
    ANGLE = "angle"
    CLOSES = "closes"


class Stands(StrEnum):
    """What stands on a wall: the slope of all, a gable, or a slope at its own pitch."""

    SLOPE = "slope"
    GABLE = "gable"
    OWN = "own"


@dataclass(frozen=True, slots=True, kw_only=True)
class WallTyped:
    """One wall as typed: ``angle`` is the angle inside the corner after it, where it turns by an angle."""

    length: str = ""
    turn: Turn = Turn.LEFT
    angle: str = ""
    stands: Stands = Stands.SLOPE
    pitch: str = ""
    overhang: str = ""
    height: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OutlineTyped:
    """A building as typed. ``taps`` are the corners tapped as long as they make no outline.

    ``start_mm`` and ``way_deg`` are where the first wall starts on plan and which way it runs: they turn the drawing,
    not the roof.
    """

    name: str | None = None
    pitch: Any = None
    pitch_by: PitchBy | None = None
    overhang: str | None = None
    verge_overhang: str | None = None
    rafter_spacing: str | None = None
    cheeks: bool = False
    straight: bool = False
    """Is the last wall to be drawn straight to the first corner, though the walk misses it?"""
    walls: tuple[WallTyped, ...] = field(default_factory=lambda: (WallTyped(),) * 4)
    start_mm: Point = (0.0, 0.0)
    way_deg: float = 0.0
    taps: tuple[Point, ...] = ()

    def with_wall_after(self, at: int) -> "OutlineTyped":
        """One more wall."""
        if len(self.walls) >= MOST_WALLS_COUNT:
            return self
        return replace(self, walls=(*self.walls[: at + 1], WallTyped(), *self.walls[at + 1 :]))

    def without_wall(self, at: int) -> "OutlineTyped":
        """One wall less; three must stay."""
        if len(self.walls) <= 3:
            return self
        return replace(self, walls=self.walls[:at] + self.walls[at + 1 :])

    def without_lengths(self) -> "OutlineTyped":
        """Walls of which nothing is measured any more."""
        return replace(self, walls=tuple(replace(wall, length="") for wall in self.walls))


def outline_of_form(form: Mapping[str, str]) -> OutlineTyped:
    """What stands in the form."""
    numbers = [int(found[1]) for name in form if (found := _WALL_FIELD.match(name))]
    count = min(max((*(number + 1 for number in numbers), 3)), MOST_WALLS_COUNT) if numbers else 4
    start = points_typed(form.get("start", ""))
    return OutlineTyped(
        name=typed(form, "name"),
        pitch=pitch_typed(form),
        pitch_by=pitch_way(form),
        overhang=typed(form, "overhang"),
        verge_overhang=typed(form, "verge_overhang"),
        rafter_spacing=typed(form, "rafter_spacing"),
        cheeks=form.get("cheeks") == "allow",
        straight=form.get("straight") == "yes",
        walls=tuple(_wall(form, at) for at in range(count)),
        start_mm=start[0] if start else (0.0, 0.0),
        way_deg=number_typed(form.get("way", "")) or 0.0,
        taps=points_typed(form.get("corners", "")),
    )


def _wall(form: Mapping[str, str], at: int) -> WallTyped:
    def of(key: str) -> str:
        return form.get(f"wall[{at}].{key}", "").strip()

    return WallTyped(
        length=of("length"),
        turn=Turn(of("turn")) if of("turn") in set(Turn) else Turn.LEFT,
        angle=of("angle"),
        stands=Stands(of("stands")) if of("stands") in set(Stands) else Stands.SLOPE,
        pitch=of("pitch"),
        overhang=of("overhang"),
        height=of("height"),
    )


def points_typed(text: str) -> tuple[Point, ...]:
    """Points as the drawing writes them, in mm; none when they cannot be read.

    >>> points_typed("0,0 9000,-500.5"), points_typed("0,0 nonsense")
    (((0.0, 0.0), (9000.0, -500.5)), ())
    """
    points: list[Point] = []
    for word in text.split()[: MOST_WALLS_COUNT + 1]:
        x, comma, y = word.partition(",")
        x_mm, y_mm = number_typed(x), number_typed(y)
        if not comma or x_mm is None or y_mm is None:
            return ()
        points.append((x_mm, y_mm))
    return tuple(points[:MOST_WALLS_COUNT])


def points_written(points: tuple[Point, ...]) -> str:
    """Points as the drawing reads them.

    >>> points_written(((0.0, 0.0), (9000.0, -500.5)))
    '0,0 9000,-500.5'
    """
    return " ".join(f"{number_written(x)},{number_written(y)}" for x, y in points)


def number_written(value: float) -> str:
    """A number to a tenth of a thousandth, without idle noughts.

    >>> number_written(-0.00001), number_written(12.5), number_written(9000.0)
    ('0', '12.5', '9000')
    """
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def number_typed(text: str) -> float | None:
    """A number within what a plan can hold."""
    try:
        number = float(text)
    except ValueError:
        return None
    return number if isfinite(number) and -_FURTHEST_MM <= number <= _FURTHEST_MM else None
