"""The wishes that can be moved: overhang, ridge allowance, lap and bond, held at a length or left free in their bands."""

from collections.abc import Mapping
from typing import Any

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.basis.band import Band
from gaugerod.basis.lengths import LengthUnit, write_greatest, write_length
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Job
from gaugerod.job.result import SlopeResult
from gaugerod.standards.defaults import eaves_overhang_band, top_batten_band
from gaugerod.web.form import Field, shown_length, table_of, typed, with_keys
from gaugerod.web.pages.covering.records import record_named
from gaugerod.web.pages.setting_out.context import Slider

OVERHANG, RIDGE, LAP = "overhang", "ridge", "lap"
TYPED = {"headlap": "Lap to keep", "ridge_cover": "Ridge or flashing reaches down"}
"""Wishes that are measured or stated, not moved."""
_LAP_SAYS = "no table gives a lap for random slates: state yours"
_RIDGE_SAYS = "from the apex down the slope; left blank, its cover over the top course is not checked"
_RIDGE_SAYS_RANDOM = "from the apex down the slope; the top courses are set out beneath it"
_KEY_OF = {OVERHANG: "eaves_overhang", RIDGE: "top_batten_from_apex"}
_GREATEST_MM = {OVERHANG: 120, RIDGE: 200}
_LAP_ROOM_MM = 60
_LEAST_DOUBLE_LAP_MM = 40.0
"""Where the slider of a double lap begins; the rules say which lap is too small (house)."""
BONDS = ("straight", "broken")


def with_wishes(document: dict[str, Any], form: Mapping[str, str]) -> dict[str, Any]:
    """The document with the wishes of the form: a slider that is not held leaves its band to the rules."""
    wishes = table_of(document, "set_out")
    changes: dict[str, Any] = {}
    for name, key in _KEY_OF.items():
        if name not in form:  # that slider was not shown: nothing was said of it
            continue
        if form.get(f"hold_{name}") == "yes":
            changes[key] = _millimetres(form.get(name, ""))
        elif _is_held(wishes.get(key)):
            changes[key] = None
    changes |= {key: typed(form, key) for key in TYPED if key in form}
    if "bond" in form:
        changes["bond"] = form["bond"] if form["bond"] in BONDS else None
    covering = table_of(document, "covering")
    if LAP in form:
        lap = _millimetres(form[LAP]) if form.get(f"hold_{LAP}") == "yes" else None
        if _record_of(covering) is not None:
            covering = with_keys(covering, {"headlap_min": lap})
        elif "from" in covering:
            changes["headlap"] = lap
    wishes = with_keys(wishes, changes)
    changed = {**document, "covering": covering, "set_out": wishes}
    return {key: value for key, value in changed.items() if key != "set_out" or value}


def _millimetres(text: str) -> Any:  # noqa: ANN401 - what cannot be read goes to the door as it is, to be refused in words
    return f"{text} mm" if text.replace(".", "", 1).isdigit() else text or None


def _is_held(value: Any) -> bool:  # noqa: ANN401
    """A wish is held when it is one length; a band of two is the person's own and stays."""
    return value is not None and not isinstance(value, list)


def _record_of(covering: Mapping[str, Any]) -> SingleLapTile | None:
    """The generic record whose least lap the job may raise; None for one's own tile, and for double lap."""
    from_ = covering.get("from")
    record = record_named(from_) if isinstance(from_, str) else None
    return record if isinstance(record, SingleLapTile) else None


def sliders_of(job: Job, slope: SlopeResult, document: Mapping[str, Any]) -> tuple[Slider, ...]:
    """The sliders as this answer has them."""
    unit = job.show_lengths_in
    wishes = table_of(document, "set_out")
    courses = slope.courses
    overhang = job.wishes.eaves_overhang or eaves_overhang_band(job.edition)
    top = job.wishes.top_batten_from_apex or top_batten_band(job.edition)
    return (
        _slider(OVERHANG, "Eaves overhang", at_mm=courses.overhang_mm, band=overhang, wishes=wishes, unit=unit),
        _slider(
            RIDGE, "Top batten below the apex", at_mm=courses.rods[0].below_apex_mm, band=top, wishes=wishes, unit=unit
        ),
        *_lap_slider(job, slope, document, unit),
    )


def typed_fields(document: Mapping[str, Any], *, with_lap: bool) -> tuple[Field, ...]:
    """What is stated in figures; the lap only where no slider moves it and random slates need it."""
    wishes, random = table_of(document, "set_out"), table_of(document, "covering").get("from") == RANDOM
    says = {"headlap": _LAP_SAYS, "ridge_cover": _RIDGE_SAYS_RANDOM if random else _RIDGE_SAYS}
    return tuple(
        Field(name=key, label=label, value=shown_length(wishes.get(key)), hint=says[key])
        for key, label in TYPED.items()
        if key != "headlap" or (random and with_lap)
    )


def _slider(name: str, label: str, *, at_mm: float, band: Band, wishes: Mapping[str, Any], unit: LengthUnit) -> Slider:
    held = _is_held(wishes.get(_KEY_OF[name]))
    between = f"found between {write_length(band.least_mm, unit)} and {write_length(band.greatest_mm, unit)}"
    return Slider(
        name=name,
        label=label,
        at_mm=round(at_mm),
        least_mm=0,
        greatest_mm=max(_GREATEST_MM[name], round(at_mm)),
        shown=write_length(at_mm, unit),
        held=held,
        free_says="" if held else between,
    )


def _lap_slider(job: Job, slope: SlopeResult, document: Mapping[str, Any], unit: LengthUnit) -> tuple[Slider, ...]:
    """The least lap to keep. The record's own is the least a slider offers; one's own tile keeps the lap it was measured at."""
    covering = table_of(document, "covering")
    if isinstance(job.covering, SingleLapTile):
        record = _record_of(covering)
        if record is None:
            return ()
        held = covering.get("headlap_min") is not None
        at_mm, least_mm = job.covering.headlap_min_mm, record.headlap_min_mm
        most_mm = job.covering.headlap_max_mm or least_mm + _LAP_ROOM_MM
    else:
        held = table_of(document, "set_out").get("headlap") is not None
        at_mm = slope.courses.headlap_mm
        least_mm, most_mm = _LEAST_DOUBLE_LAP_MM, at_mm + _LAP_ROOM_MM
    return (
        Slider(
            name=LAP,
            label="Least headlap to keep",
            at_mm=int(at_mm),
            least_mm=min(int(least_mm), int(at_mm)),
            greatest_mm=max(int(most_mm), int(at_mm)),
            shown=write_greatest(at_mm, unit),
            held=held,
            free_says="" if held else "as the rules and the record have it",
        ),
    )
