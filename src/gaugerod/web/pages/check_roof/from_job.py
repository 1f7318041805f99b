"""What a job says already of a roof to check: the slope, its pitch and covering, and the battens nailed so far."""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.basis.errors import InputRefused
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Slope
from gaugerod.setting_out.between_stations import height_at_mm
from gaugerod.web.form import list_of, table_of
from gaugerod.web.pages.check_roof.context import SlopeToBegin
from gaugerod.web.pages.covering.records import record_named
from gaugerod.wiring import job_from_document

FRESH: dict[str, Any] = {"roof": {"title": "Roof as built", "name": "main"}}


def roof_of_job(document: dict[str, Any], *, slope: int) -> dict[str, Any]:
    """A roof file begun from a job, as far as the job goes; ``slope`` counts from 0."""
    job, wishes, covering = (table_of(document, key) for key in ("job", "set_out", "covering"))
    slopes = list_of(document, "slope")
    table = slopes[slope] if slope < len(slopes) and isinstance(slopes[slope], dict) else {}
    roof: dict[str, Any] = {
        **FRESH["roof"],
        **({"title": f"{job['title']}, as built"[:120]} if isinstance(job.get("title"), str) else {}),
        **_taken(job, "edition", "exposure", "show_lengths_in"),
        **_taken(table, "name", "pitch"),
        **_taken(wishes, "ridge_cover", "top_batten_from_apex"),
    }
    if table.get("top") == "abutment":
        roof["top"] = "abutment"
    if wishes.get("overhang_measured", "on-slope") == "on-slope":
        roof |= _taken(wishes, "eaves_overhang")
    if _is_double_lap(covering):
        roof |= _taken(wishes, "headlap")
    if covering.get("from") == RANDOM:  # no margin shows the lap of slates whose length changes
        covering = {}
    return {"roof": roof, **({"covering": covering} if covering else {}), "rod": _rods(document, slope=slope)}


def slopes_to_begin(document: Mapping[str, Any], *, job: str) -> tuple[SlopeToBegin, ...]:
    """The slopes of a job, each with the check begun from it."""
    return tuple(
        SlopeToBegin(
            name=str(table.get("name") or f"slope {number}") if isinstance(table, dict) else f"slope {number}",
            href=f"/jobs/{job}/check-roof?slope={number}",
        )
        for number, table in enumerate(list_of(document, "slope"), 1)
    )


def _taken(table: Mapping[str, Any], *keys: str) -> dict[str, Any]:
    return {key: table[key] for key in keys if table.get(key) is not None}


def _is_double_lap(covering: Mapping[str, Any]) -> bool:
    from_ = covering.get("from")
    return isinstance(from_, str) and not isinstance(record_named(from_), SingleLapTile | None)


def _rods(document: dict[str, Any], *, slope: int) -> list[dict[str, Any]]:
    """The places where battens were nailed, else both ends of the slope; none while the job cannot be read."""
    try:
        slopes = job_from_document(document).slopes
    except InputRefused:
        return []
    if slope >= len(slopes):
        return []
    found = slopes[slope]
    if found.nailed:
        return [
            {"at": rod.at_mm, "rafter": _rafter_mm(found, rod.at_mm), "marks": list(rod.marks_mm)}
            for rod in found.nailed
        ]
    ends = found.taped.rafters[:1] + found.taped.rafters[1:][-1:]
    return [{"at": at_mm, "rafter": length_mm} for at_mm, length_mm in ends]


def _rafter_mm(slope: Slope, at_mm: float) -> float:
    """The rafter at a place, straight between those measured."""
    points = [(Fraction(at), Fraction(length)) for at, length in slope.taped.rafters]
    return float(height_at_mm(points=points, at_mm=Fraction(at_mm)))
