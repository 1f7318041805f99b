"""From a plan file of either kind to a job file."""

from pathlib import Path
from typing import Literal

from gaugerod.adapters.job_draft.draft import plan_job_text, printable_name
from gaugerod.adapters.job_draft.json_text import bytes_of_file
from gaugerod.adapters.job_draft.plan_read import PlanRead
from gaugerod.basis.errors import Fault, InputRefused, PitchUnclear
from gaugerod.geometry.plan_outline import GREATEST_PITCH_DEG, LEAST_PITCH_DEG
from gaugerod.geometry.read_pitch import read_pitch_deg

PlanUnit = Literal["degrees", "mm", "cm", "m", "in", "ft"]
"""What the coordinates of a plan can be in."""


def job_text_from_plan_file(path: Path, *, pitch: str | None, unit: PlanUnit | None, layer: str | None) -> str:
    """The job file drafted from the file's buildings. Raises InputRefused with every fault."""
    pitch_deg = None if pitch is None else _pitch_deg(pitch)
    read = _from_dxf(path, unit, layer) if path.suffix.lower() == ".dxf" else _from_geojson(path, unit, layer)
    return plan_job_text(read, title=printable_name(path.stem, otherwise="plan"), pitch_deg=pitch_deg)


def _pitch_deg(pitch: str) -> float:
    allowed = f"{LEAST_PITCH_DEG:g}° to {GREATEST_PITCH_DEG:g}°, like 40, 40° or 8 in 12"
    try:
        pitch_deg = float(pitch) if pitch.strip().replace(".", "", 1).isdecimal() else read_pitch_deg(pitch)
    except PitchUnclear as unclear:
        raise InputRefused([Fault("--pitch", pitch, allowed, f"It {unclear.reason}.")]) from None
    if not LEAST_PITCH_DEG <= pitch_deg <= GREATEST_PITCH_DEG:
        raise InputRefused([Fault("--pitch", pitch, allowed, "Give the pitch from the level.")])
    return pitch_deg


def _from_geojson(path: Path, unit: PlanUnit | None, layer: str | None) -> PlanRead:
    from gaugerod.adapters.geojson.read import read_geojson  # noqa: PLC0415 - only what the file needs is loaded

    if layer is not None:
        raise InputRefused([Fault("--layer", layer, "nothing: GeoJSON has no layers", "Leave it out.")])
    match unit:
        case None | "degrees" | "m":
            return read_geojson(bytes_of_file(path), unit=unit)
        case "mm" | "cm" | "in" | "ft":
            raise InputRefused([Fault("--unit", unit, "degrees or m for GeoJSON", "Say which of the two it is.")])


def _from_dxf(path: Path, unit: PlanUnit | None, layer: str | None) -> PlanRead:
    from gaugerod.adapters.dxf.read import read_dxf  # noqa: PLC0415 - only what the file needs is loaded

    if unit == "degrees":
        raise InputRefused([Fault("--unit", unit, "mm, cm, m, in or ft for DXF", "Say the unit of the drawing.")])
    return read_dxf(path, unit=unit, layer=layer)
