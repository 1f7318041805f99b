"""The test lay as it is typed: the figures in the order they are taken, read, and what they make."""

from collections.abc import Mapping
from typing import Any

from gaugerod.basis.errors import Fault, InputRefused, LengthUnclear, PitchUnclear
from gaugerod.basis.lengths import read_length_mm
from gaugerod.coverings.measured import Measured, TenMeasured, TestLay, measure
from gaugerod.coverings.single_lap import Bond, Form, Material, SingleLapTile
from gaugerod.coverings.single_lap_fields import written_name
from gaugerod.geometry.read_pitch import read_pitch_deg
from gaugerod.web.form import typed

LENGTHS = ("lap_mm", "gauge_at_lap_mm", "closest_gauge_mm", "ten_closed_mm", "ten_open_mm", "length_mm", "width_mm",
           "hanging_length_mm")  # fmt: skip
OWN_TITLE = "Own tile, measured"
_WRITTEN = ("length_mm", "width_mm", "hanging_length_mm", "cover_closed_mm", "cover_open_mm", "headlap_min_mm",
            "headlap_max_mm", "mass_kg")  # fmt: skip


def measured_of(form: Mapping[str, str]) -> Measured:
    """What the figures make. Raises InputRefused with every fault."""
    numbers, faults = _read(form)
    if faults:
        raise InputRefused(faults)
    lay = TestLay(
        form=_one_of(form, "face", Form, Form.FLAT),
        material=_one_of(form, "material", Material, Material.CONCRETE),
        ten_measured=_one_of(form, "ten_measured", TenMeasured, TenMeasured.OVER_ALL),
        half_unit=form.get("half_unit") == "yes",
        unit_and_a_half=form.get("unit_and_a_half") == "yes",
        bonds=(Bond.BROKEN, Bond.STRAIGHT) if form.get("bond") == Bond.BROKEN.value else (Bond.STRAIGHT,),
        high_points_mm=_high_points_mm(form),
        **numbers,
    )
    return measure(lay, name="own-tile", title=typed(form, "title") or OWN_TITLE)


def _one_of(form: Mapping[str, str], name: str, kind: Any, otherwise: Any) -> Any:  # noqa: ANN401 - any of our enums
    given = form.get(name, "")
    return kind(given) if given in set(kind) else otherwise


def _read(form: Mapping[str, str]) -> tuple[dict[str, Any], list[Fault]]:
    numbers: dict[str, Any] = {}
    faults: list[Fault] = []
    for field in (*LENGTHS, "mass_kg", "pitch_min_deg"):
        name = written_name(field)
        text = typed(form, name)
        if text is None:
            continue
        try:
            numbers[field] = _number(field, text)
        except (LengthUnclear, PitchUnclear) as unclear:
            faults.append(
                Fault(name, text, _wanted(field), f"{unclear.reason[:1].upper()}{unclear.reason[1:].rstrip('.')}.")
            )
        except ValueError:
            faults.append(Fault(name, text, _wanted(field), "Write a plain number."))
    try:
        _high_points_mm(form)
    except LengthUnclear as unclear:
        faults.append(Fault("high_points", unclear.text, "lengths, one to a line", f"It {unclear.reason}."))
    return numbers, faults


def _wanted(field: str) -> str:
    return {"mass_kg": "kilograms, like 4.7", "pitch_min_deg": "a pitch, like 25°"}.get(field, "a length, like 345 mm")


def _number(field: str, text: str) -> float:
    match field:
        case "mass_kg":
            return float(text.lower().removesuffix("kg").strip().replace(",", "."))
        case "pitch_min_deg":
            return read_pitch_deg(text)
        case _:
            return float(read_length_mm(text))


def _high_points_mm(form: Mapping[str, str]) -> tuple[float, ...]:
    texts = [text for text in form.get("high_points", "").replace(";", "\n").splitlines() if text.strip()]
    return tuple(float(read_length_mm(text)) for text in texts[:20])


def covering_table(tile: SingleLapTile) -> dict[str, Any]:
    """The record as the covering of a job."""
    table: dict[str, Any] = {"title": tile.title, "form": tile.form.value, "material": tile.material.value}
    table |= {written_name(field): round(value, 2) for field in _WRITTEN if (value := getattr(tile, field)) is not None}
    if tile.pitch_min_deg is not None:
        table["pitch_min"] = f"{tile.pitch_min_deg:g}°"
    if tile.high_points_mm:
        table["high_points"] = list(tile.high_points_mm)
    return table | {
        "half_unit": tile.half_unit,
        "unit_and_a_half": tile.unit_and_a_half,
        "bonds": [bond.value for bond in tile.bonds],
        "measured": sorted(written_name(field) for field in tile.measured),
    }
