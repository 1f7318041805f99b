"""The kinds of value that outlines and plans hold: corners, named edges, what stands on a wall."""

from enum import StrEnum
from typing import Annotated, Any, Final, Literal

from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import (
    EAVES_HEIGHT,
    MOST_CORNERS_COUNT,
    OVERHANG_ON_PLAN,
    PLACE_ON_PLAN,
    Allowed,
)
from gaugerod.adapters.job_file.fields import LENGTH_SCHEMA, PITCH_SCHEMA, kind, length_mm, pitch_deg, within
from gaugerod.adapters.job_file.refusing import refuse, refuse_value
from gaugerod.basis.errors import Fault
from gaugerod.geometry.polygon import Point

GABLE: Final = "gable"
"""What is written in place of a pitch, or of a height, at a wall that stands upright up to the roof."""


class NamedEdge(StrEnum):
    """What stands at one side of a slope."""

    EAVES = "eaves"
    VERGE = "verge"
    RIDGE = "ridge"
    MONO_RIDGE = "mono-ridge"
    HIP = "hip"
    VALLEY = "valley"
    ABUTMENT = "abutment"


def corner(value: object) -> Point:
    """A corner: two lengths, x and y."""
    if not isinstance(value, list) or len(value) != 2:
        allowed = f'[x, y], like ["4.905 m", "0 m"]; {PLACE_ON_PLAN}'
        raise refuse_value(value, allowed=allowed, do="Give each corner as two lengths in square brackets.")
    x_mm, y_mm = _each(value, PLACE_ON_PLAN)
    return x_mm, y_mm


def wall_pitch(value: object) -> float | Literal["gable"]:
    """The pitch of the slope on a wall, or ``gable``."""
    if value == GABLE:
        return GABLE
    try:
        return pitch_deg(value)
    except PydanticCustomError as refused:
        raise refuse(*(_or_gable(fault) for fault in within("", refused))) from None


def _or_gable(fault: Fault) -> Fault:
    return fault if fault.field else Fault("", fault.given, f'{fault.allowed}; or "gable"', fault.do)


def overhangs_mm(value: object) -> float | list[float]:
    """One overhang for all eaves, or one for each wall."""
    return _each(value, OVERHANG_ON_PLAN) if isinstance(value, list) else length_mm(value, OVERHANG_ON_PLAN)


def eaves_heights_mm(value: object) -> float | list[float | None]:
    """One height for all eaves, or one for each wall; None at a gable."""
    if not isinstance(value, list):
        return length_mm(value, EAVES_HEIGHT)
    known = iter(_each([each for each in value if each != GABLE], EAVES_HEIGHT))
    return [None if each == GABLE else next(known) for each in value]


def _each(values: list[object], allowed: Allowed) -> list[float]:
    """Every length of a list; the faults of all told together."""
    found_mm: list[float] = []
    faults: list[Fault] = []
    for index, value in enumerate(values):
        try:
            found_mm.append(length_mm(value, allowed))
        except PydanticCustomError as refused:
            faults.extend(within(f"[{index}]", refused))
    if faults:
        raise refuse(*faults)
    return found_mm


def _one_or_each(title: str, *, item: dict[str, Any]) -> dict[str, Any]:
    several = {"type": "array", "items": item, "maxItems": MOST_CORNERS_COUNT}
    return {"title": title, "anyOf": [LENGTH_SCHEMA, several]}


_CORNER_SCHEMA = {"title": "[x, y]", "type": "array", "items": LENGTH_SCHEMA, "minItems": 2, "maxItems": 2}
_WALL_SCHEMA = {"title": f'a pitch, or "{GABLE}"', "anyOf": PITCH_SCHEMA["anyOf"]}

Corner = Annotated[Point, *kind(corner, _CORNER_SCHEMA)]
WallPitch = Annotated[float | Literal["gable"], *kind(wall_pitch, _WALL_SCHEMA)]
Overhangs = Annotated[
    float | list[float], *kind(overhangs_mm, _one_or_each("One length, or one for each wall", item=LENGTH_SCHEMA))
]
OneOverhang = Annotated[
    float, *kind(lambda value: length_mm(value, OVERHANG_ON_PLAN), {**LENGTH_SCHEMA, "title": "An overhang"})
]
EavesHeights = Annotated[
    float | list[float | None],
    *kind(
        eaves_heights_mm,
        _one_or_each(f'One height, or one for each wall with "{GABLE}" at a gable', item=LENGTH_SCHEMA),
    ),
]
