"""The ways a pitch can be known: an angle, so many in twelve, rise and run, rafter and run."""

from collections.abc import Mapping
from enum import StrEnum
from typing import Any

from gaugerod.web.form import Choice, Field, shown_length, typed


class PitchBy(StrEnum):
    """How the pitch was come by."""

    ANGLE = "angle"
    RISE = "rise"
    RAFTER = "rafter"


_WAYS = (
    Choice(value=PitchBy.ANGLE.value, label="angle, or rise in 12"),
    Choice(value=PitchBy.RISE.value, label="rise and run"),
    Choice(value=PitchBy.RAFTER.value, label="rafter and run"),
)


def pitch_fields(pitch: Any, *, by: PitchBy | None = None) -> tuple[Field, ...]:  # noqa: ANN401 - as it may stand in a draft
    """The way, and the figures of every way."""
    sides = pitch if isinstance(pitch, dict) else {}
    way = by or (PitchBy.RAFTER if "rafter" in sides else PitchBy.RISE if sides else PitchBy.ANGLE)
    return (
        Field(name="pitch_by", label="Pitch known by", value=way.value, choices=_WAYS),
        Field(name="pitch", label="Pitch", value="" if sides else pitch_said(pitch), hint="35°, or 8 in 12"),
        Field(name="pitch.rise", label="Rise", value=shown_length(sides.get("rise")), hint="plumb height over the run"),
        Field(name="pitch.rafter", label="Rafter", value=shown_length(sides.get("rafter")), hint="along the slope"),
        Field(name="pitch.run", label="Run", value=shown_length(sides.get("run")), hint="on the level"),
    )


def pitch_typed(form: Mapping[str, str]) -> Any:  # noqa: ANN401 - a text, or a table of two lengths
    """The pitch as the job file writes it; None when nothing was typed."""
    match form.get("pitch_by"):
        case PitchBy.RISE.value | PitchBy.RAFTER.value as way:
            sides = {name: typed(form, f"pitch.{name}") for name in (way, "run")}
            return {name: text for name, text in sides.items() if text is not None} or None
        case _:
            return typed(form, "pitch")


def pitch_way(form: Mapping[str, str]) -> PitchBy:
    """The way chosen."""
    given = form.get("pitch_by", "")
    return PitchBy(given) if given in set(PitchBy) else PitchBy.ANGLE


def pitch_said(pitch: Any) -> str:  # noqa: ANN401
    """A pitch of a document in words.

    >>> pitch_said(35), pitch_said("38"), pitch_said("8 in 12"), pitch_said({"rise": "2 m", "run": 3000})
    ('35°', '38°', '8 in 12', 'rise 2 m, run 3000 mm')
    """
    match pitch:
        case None:
            return ""
        case str():
            return f"{pitch}°" if pitch.replace(".", "", 1).isdigit() else pitch
        case dict():
            return ", ".join(f"{name} {shown_length(side)}" for name, side in pitch.items())
        case bool() | list():
            return ""
        case _:
            return f"{pitch:g}°"
