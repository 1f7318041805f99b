"""The kinds of value a job file holds: each read from what a person writes, refused in words, described for the schema."""

import re
from collections.abc import Callable
from difflib import get_close_matches
from math import isfinite
from typing import Annotated, Any

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import (
    ALONG_THE_ROOF,
    EDGE_ALLOWANCE,
    OPENING_SIZE,
    PLACE_ON_THE_ROOF,
    PLACE_ON_THE_UNIT,
    RAFTER_SPACING,
    RIDGE_COVER,
    RISE_OR_RUN,
    RUN_OF_SLATES,
    UNIT_SIZE,
    Allowed,
)
from gaugerod.adapters.job_file.double_lap_record import double_lap_names
from gaugerod.adapters.job_file.refusing import refuse, refuse_value, shown
from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation, house
from gaugerod.basis.errors import Fault, InputRefused, LengthUnclear, NothingToSetOut, PitchUnclear
from gaugerod.basis.lengths import read_length_mm
from gaugerod.coverings.catalogue import covering
from gaugerod.geometry.pitch import pitch_from_rafter_and_run_deg, pitch_from_rise_and_run_deg
from gaugerod.geometry.read_pitch import read_pitch_deg

STATED: Citation = house("stated in the job file")
"""The source of every limit that the job itself gives."""

_LENGTH_EXAMPLES = 'a length like "4.905 m", "75 mm" or 75 (in mm)'


def length_mm(value: object, allowed: Allowed) -> float:
    """The length in mm, from words with a unit or a bare number of mm; inside what makes sense here."""
    found_mm = _plain_length_mm(value, allowed)
    if allowed.least_mm <= found_mm <= allowed.greatest_mm:
        return found_mm
    raise refuse_value(value, allowed=str(allowed), do=_slip_of_unit(found_mm, allowed))


def _plain_length_mm(value: object, allowed: Allowed) -> float:
    if isinstance(value, str):
        try:
            return float(read_length_mm(value))
        except LengthUnclear as unclear:
            raise refuse_value(value, allowed=str(allowed), do=_sentence(unclear.reason)) from None
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        if isfinite(number := _float(value)):
            return number
        raise refuse_value(value, allowed=str(allowed), do="This is no length at all. Measure it again.")
    raise refuse_value(value, allowed=str(allowed), do=f"Write {_LENGTH_EXAMPLES}.")


def _float(value: float) -> float:
    """A whole number too great for a float is as good as endless."""
    try:
        return float(value)
    except OverflowError:
        return float("inf")


def _slip_of_unit(found_mm: float, allowed: Allowed) -> str:
    if found_mm < 0:
        return "Nothing on a roof is shorter than nothing. Write it without the minus."
    if found_mm == 0:
        return "Nothing was measured here. Measure it, and write what the tape says."
    if allowed.least_mm <= found_mm / 1000 <= allowed.greatest_mm:
        return f"Too long. Was {found_mm / 1000:g} mm meant, written as metres?"
    if allowed.least_mm <= found_mm * 1000 <= allowed.greatest_mm:
        return f"Too short. Was {found_mm:g} m meant, written as millimetres?"
    return f"{'Too long' if found_mm > allowed.greatest_mm else 'Too short'}. Check the figure and its unit."


def _sentence(reason: str) -> str:
    return f"It {reason}."


def band(value: object, allowed: Allowed) -> Band:
    """The band in mm: a pair, least then greatest, or one length that is both."""
    if not isinstance(value, list):
        only_mm = length_mm(value, allowed)
        return Band(least_mm=only_mm, greatest_mm=only_mm, citation=STATED)
    pair = f'[least, greatest], like ["45 mm", "55 mm"]; {allowed}'
    if len(value) != 2:
        raise refuse_value(value, allowed=pair, do="Give two lengths, or one.")
    ends_mm: list[float] = []
    faults: list[Fault] = []
    for index, end in enumerate(value):
        try:
            ends_mm.append(length_mm(end, allowed))
        except PydanticCustomError as refused:
            faults.extend(within(f"[{index}]", refused))
    if faults:
        raise refuse(*faults)
    least_mm, greatest_mm = ends_mm
    if least_mm > greatest_mm:
        raise refuse_value(value, allowed=pair, do="The least comes first: swap them.")
    return Band(least_mm=least_mm, greatest_mm=greatest_mm, citation=STATED)


def pitch_deg(value: object) -> float:
    """The pitch in degrees: a number, words, rise and run, or rafter and run."""
    allowed = '"35°", "35 deg", "8 in 12", { rise = …, run = … } or { rafter = …, run = … }; over 0° and under 90°'
    if isinstance(value, dict):
        return _pitch_of_triangle_deg(value, allowed)
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        if 0 < value < 90:
            return float(value)
        raise refuse_value(value, allowed=allowed, do="No roof slope has this pitch. Measure it again.")
    if not isinstance(value, str):
        raise refuse_value(value, allowed=allowed, do="Write the pitch in one of these ways.")
    try:
        return read_pitch_deg(value)
    except PitchUnclear as unclear:
        raise refuse_value(value, allowed=allowed, do=_sentence(unclear.reason)) from None


def _pitch_of_triangle_deg(value: dict[str, object], allowed: str) -> float:
    if value.keys() not in ({"rise", "run"}, {"rafter", "run"}):
        raise refuse_value(value, allowed=allowed, do="Give the run, and either the rise or the rafter.")
    sides_mm: dict[str, float] = {}
    faults: list[Fault] = []
    for name, side in value.items():
        try:
            sides_mm[name] = length_mm(side, RISE_OR_RUN)
        except PydanticCustomError as refused:
            faults.extend(within(f".{name}", refused))
    if faults:
        raise refuse(*faults)
    try:
        if "rise" in sides_mm:
            return pitch_from_rise_and_run_deg(rise_mm=sides_mm["rise"], run_mm=sides_mm["run"])
        return pitch_from_rafter_and_run_deg(rafter_mm=sides_mm["rafter"], run_mm=sides_mm["run"])
    except NothingToSetOut as nothing:
        raise refuse_value(value, allowed=allowed, do=f"{nothing.reason[0].upper()}{nothing.reason[1:]}.") from None


def within(step: str, refused: PydanticCustomError) -> list[Fault]:
    """The faults of a part, their fields counted from the whole."""
    faults: tuple[Fault, ...] = (refused.context or {})["faults"]
    return [Fault(field=step + fault.field, given=fault.given, allowed=fault.allowed, do=fault.do) for fault in faults]


def mass_kg(value: object) -> float:
    """The mass of one unit in kg, from ``4.7`` or ``"4.7 kg"``."""
    allowed = 'kilograms, over 0 up to 100, like 4.7 or "4.7 kg"'
    number = value
    if isinstance(value, str) and (words := re.fullmatch(r"\s*([0-9]{1,4}(?:[.,][0-9]{1,6})?)\s*kg\s*", value)):
        number = float(words[1].replace(",", "."))
    if isinstance(number, (int, float)) and not isinstance(number, bool) and 0 < number <= 100:
        return float(number)
    raise refuse_value(value, allowed=allowed, do="Weigh one, and write it so.")


def words(value: object) -> str:
    """A name or title: one line that can be read and printed."""
    allowed = "one line of words, up to 120 letters"
    if isinstance(value, str) and 0 < len(value.strip()) <= 120 and value.strip().isprintable():
        return value.strip()
    raise refuse_value(value, allowed=allowed, do="Write it in words.")


def count(value: object) -> int:
    """A whole number from 1 to 100."""
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= 100:
        return value
    raise refuse_value(value, allowed="a whole number from 1 to 100", do="Write it without a unit.")


def yes_or_no(value: object) -> bool:
    """True or false, written so."""
    if isinstance(value, bool):
        return value
    raise refuse_value(value, allowed="true or false", do="Write true or false, without quotes.")


def catalogue_name(value: object) -> str:
    """The name of a generic record that there is."""
    if value in double_lap_names():
        return str(value)
    try:
        return covering(shown(value)).name
    except InputRefused as refused:
        fault = refused.faults[0]
        allowed = f"{fault.allowed}, {', '.join(double_lap_names())}"
        near = get_close_matches(shown(value), allowed.split(", "), n=1, cutoff=0.0)
        raise refuse(Fault(field="", given=shown(value), allowed=allowed, do=f"Did you mean {near[0]}?")) from None


def share(value: object) -> float:
    """A part of the whole, from ``0.05`` or ``"5 %"``."""
    allowed = 'from nothing up to a half, like 0.05 or "5 %"'
    number = value
    if isinstance(value, str) and (per_cent := re.fullmatch(r"\s*([0-9]{1,3}(?:[.,][0-9]{1,4})?)\s*%\s*", value)):
        number = float(per_cent[1].replace(",", ".")) / 100
    if isinstance(number, (int, float)) and not isinstance(number, bool) and 0 <= number <= 0.5:
        return float(number)
    raise refuse_value(value, allowed=allowed, do="Look through the heap, and say what part of it is sound.")


def slate_count(value: object) -> int:
    """A whole number of slates."""
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= 1_000_000:
        return value
    raise refuse_value(value, allowed="a whole number above nothing", do="Count them.")


MEASURED_FIGURES = (
    "length",
    "width",
    "hanging_length",
    "cover_closed",
    "cover_open",
    "headlap_min",
    "headlap_max",
    "mass",
    "high_points",
)
"""The figures of a unit that can be measured on it."""


def measured_figure(value: object) -> str:
    """The name of a figure that was measured, with or without the unit the record puts behind it."""
    if isinstance(value, str) and (name := value.removesuffix("_mm").removesuffix("_kg")) in MEASURED_FIGURES:
        return name
    raise refuse_value(value, allowed=", ".join(MEASURED_FIGURES), do="Name the figures that you measured.")


LENGTH_SCHEMA: dict[str, Any] = {"type": ["number", "string"], "minLength": 1, "maxLength": 60}


def length_of(allowed: Allowed) -> tuple[PlainValidator, WithJsonSchema]:
    """A length inside what makes sense here: how it is read, and how the schema describes it."""

    def read(value: object) -> float:
        return length_mm(value, allowed)

    return PlainValidator(read), WithJsonSchema({**LENGTH_SCHEMA, "title": _titled(allowed)})


def _titled(allowed: Allowed) -> str:
    """What the schema calls it; in lengths with a unit or bare mm."""
    return f"{str(allowed)[0].upper()}{str(allowed)[1:]}"


def kind(read: Callable[[object], object], schema: dict[str, Any]) -> tuple[PlainValidator, WithJsonSchema]:
    """A kind of value: how it is read, and how the schema describes it."""
    return PlainValidator(read), WithJsonSchema(schema)


def _band_of(allowed: Allowed) -> tuple[PlainValidator, WithJsonSchema]:
    def read(value: object) -> Band:
        return band(value, allowed)

    ends = {"type": "array", "items": LENGTH_SCHEMA, "minItems": 2, "maxItems": 2}
    return PlainValidator(read), WithJsonSchema({"anyOf": [LENGTH_SCHEMA, ends], "title": _titled(allowed)})


PITCH_SCHEMA: dict[str, Any] = {
    "title": "A pitch",
    "anyOf": [
        {"type": ["number", "string"]},
        {"type": "object", "required": ["run"], "maxProperties": 2, "minProperties": 2,
         "additionalProperties": False, "properties": dict.fromkeys(("rise", "rafter", "run"), LENGTH_SCHEMA)},
    ]
}  # fmt: skip

RoofLength = Annotated[float, *length_of(ALONG_THE_ROOF)]
SlateRun = Annotated[float, *length_of(RUN_OF_SLATES)]
RoofPlace = Annotated[float, *length_of(PLACE_ON_THE_ROOF)]
OpeningSize = Annotated[float, *length_of(OPENING_SIZE)]
RafterSpacing = Annotated[float, *length_of(RAFTER_SPACING)]
RidgeCover = Annotated[float, *length_of(RIDGE_COVER)]
UnitSize = Annotated[float, *length_of(UNIT_SIZE)]
UnitPlace = Annotated[float, *length_of(PLACE_ON_THE_UNIT)]
EdgeBand = Annotated[Band, *_band_of(EDGE_ALLOWANCE)]
Pitch = Annotated[float, *kind(pitch_deg, PITCH_SCHEMA)]
Mass = Annotated[float, *kind(mass_kg, {"type": ["number", "string"], "title": "kilograms, like 4.7"})]
Words = Annotated[str, *kind(words, {"type": "string", "minLength": 1, "maxLength": 120})]
Count = Annotated[int, *kind(count, {"type": "integer", "minimum": 1, "maximum": 100})]
YesOrNo = Annotated[bool, *kind(yes_or_no, {"type": "boolean"})]
MeasuredFigure = Annotated[str, *kind(measured_figure, {"type": "string", "minLength": 1})]
CatalogueName = Annotated[str, *kind(catalogue_name, {"type": "string", "minLength": 1})]
Share = Annotated[
    float, *kind(share, {"type": ["number", "string"], "title": 'a part of the whole, like 0.05 or "5 %"'})
]
SlateCount = Annotated[int, *kind(slate_count, {"type": "integer", "minimum": 1})]
