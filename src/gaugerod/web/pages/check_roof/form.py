"""The form of a roof check: its fields by groups, and which field a fault belongs to."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace

from gaugerod.as_built.ask import RoofTop
from gaugerod.basis.errors import Fault
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.double_lap import Nailing
from gaugerod.coverings.single_lap import Form, Material
from gaugerod.standards.edition import Exposure
from gaugerod.web.form import Choice, Field
from gaugerod.web.pages.check_roof.context import RodFields
from gaugerod.web.pages.check_roof.values import BATTENS, MARGINS, rods_typed
from gaugerod.web.pages.covering.records import OWN, RANDOM_SLATES, groups
from gaugerod.web.pitch_ways import pitch_fields, pitch_way

_UNITS = {LengthUnit.MM: "mm", LengthUnit.CM: "cm", LengthUnit.M: "m", LengthUnit.FT_IN: "feet and inches"}
_CHOOSE = Choice(value="", label="choose")
_AS_RECORDED = Choice(value="", label="as recorded")
_IN_A_LIST = re.compile(r"rod\[(\d+)\]\.(marks|margins)\[(\d+)\]")


def slope_fields(values: Mapping[str, str]) -> tuple[Field, ...]:
    """What is checked, and where it stands."""
    exposures = (_CHOOSE, *(Choice(value=each.value, label=each.value.replace("-", " ")) for each in Exposure))
    units = tuple(Choice(value=each.value, label=label) for each, label in _UNITS.items())
    finished = (Choice(value="yes", label="covered to the top"), Choice(value="no", label="the courses go on"))
    tops = tuple(Choice(value=each.value, label=each.value) for each in RoofTop)
    return (
        Field(name="title", label="Title of the record", value=values.get("title", ""), length=False),
        Field(name="name", label="Name of the slope", value=values.get("name", ""), hint="rear, front, porch", length=False),
        Field(name="exposure", label="Driving rain", value=values.get("exposure", ""), choices=exposures,
              hint="look the site up on the map of your code"),
        Field(name="finished", label="How far is it covered?", value=values.get("finished", "yes"), choices=finished),
        Field(name="top", label="At the top", value=values.get("top", RoofTop.RIDGE.value), choices=tops),
        Field(name="show_lengths_in", label="Show lengths in", value=values.get("show_lengths_in", "mm"), choices=units),
    )  # fmt: skip


def pitch_group(values: Mapping[str, str]) -> tuple[Field, ...]:
    """The pitch by each of the ways."""
    ways = pitch_fields(None, by=pitch_way(values))
    return tuple(field if field.choices else replace(field, value=values.get(field.name, "")) for field in ways)


def covering_fields(values: Mapping[str, str]) -> tuple[Field, ...]:
    """What is laid. Random slates are not among the choices: no margin shows their lap."""
    records = [
        Choice(value=choice.name, label=choice.title)
        for group in groups(chosen="", own_title=None)
        if group.title != RANDOM_SLATES
        for choice in group.choices
    ]
    own = Choice(value=OWN, label="own tile: its figures below")
    chosen = values.get("covering.from", "")
    return (
        Field(
            name="covering.from",
            label="Covering",
            value=chosen,
            choices=(_CHOOSE, own, *records, *_unknown(chosen, [OWN, *(record.value for record in records)])),
            hint="generic records, no maker's: take the nearest and put its figures right",
        ),
    )


def _unknown(chosen: str, known: Iterable[str]) -> tuple[Choice, ...]:
    """A name from a file that is none of ours stays chosen, to be refused in words."""
    return () if chosen in {"", *known} else (Choice(value=chosen, label=chosen[:60]),)


def figure_fields(values: Mapping[str, str]) -> tuple[Field, ...]:
    """Figures of the unit, where the record's will not do."""
    asked: tuple[tuple[str, str, str], ...] = (
        ("length", "Length", "overall, head to tail"),
        ("width", "Width", "overall, side to side"),
        ("hanging_length", "Hanging length", "bearing face of the nibs to the tail"),
        ("headlap_min", "Least headlap", "as the maker states it"),
        ("headlap_max", "Greatest headlap", "where heads foul; may be left out"),
    )
    lengths = (
        Field(name=f"covering.{key}", label=label, value=values.get(f"covering.{key}", ""), hint=hint)
        for key, label, hint in asked
    )
    chosen = (("form", "Face", Form), ("material", "Made of", Material), ("nailing", "Slates nailed", Nailing))
    choices = (
        Field(
            name=f"covering.{key}",
            label=label,
            value=values.get(f"covering.{key}", ""),
            choices=(_AS_RECORDED, *(Choice(value=each.value, label=each.value.replace("-", " ")) for each in kind)),
        )
        for key, label, kind in chosen
    )
    return (*lengths, *choices)


def end_fields(values: Mapping[str, str]) -> tuple[Field, ...]:
    """What is known of eaves and ridge, and the lap where it is stated."""
    asked = (
        ("ridge_cover", "Ridge reaches down", "ridge unit or flashing, from the apex down the slope"),
        ("headlap", "Lap stated", "least lap of plain tiles or slates, where the maker or the job states it"),
        ("eaves_overhang[0]", "Eaves overhang, least", "left out: the usual band of the trade"),
        ("eaves_overhang[1]", "Eaves overhang, greatest", ""),
        ("top_batten_from_apex[0]", "Top batten to apex, least", "left out: the usual band of the trade"),
        ("top_batten_from_apex[1]", "Top batten to apex, greatest", ""),
    )
    return tuple(Field(name=name, label=label, value=values.get(name, ""), hint=hint) for name, label, hint in asked)


def rod_groups(values: Mapping[str, str], *, more: bool) -> tuple[RodFields, ...]:
    """Every place with anything typed in it; an empty one when there is none, or another was asked for."""
    rows = list(rods_typed(values))
    if more or not rows:
        rows.append({"how": rows[-1]["how"] if rows else values.get("rod[0].how", BATTENS)})
    return tuple(_rod(index, row) for index, row in enumerate(rows))


def _rod(index: int, row: Mapping[str, str]) -> RodFields:
    hows = (Choice(value=BATTENS, label="the battens"), Choice(value=MARGINS, label="visible margins"))
    how = row.get("how", "")
    number = index + 1
    return RodFields(
        number=number,
        fields=(
            Field(name=f"rod[{index}].at", label=f"Rod {number} is at", value=row.get("at", ""),
                  hint="from the left end of the roof, along the eaves"),
            Field(name=f"rod[{index}].rafter", label=f"Rafter, rod {number}", value=row.get("rafter", ""),
                  hint="outer face of the fascia to the apex"),
            Field(name=f"rod[{index}].how", label=f"Measured, rod {number}",
                  value=how if how in {BATTENS, MARGINS} else BATTENS, choices=hows),
            Field(name=f"rod[{index}].overhang", label=f"Overhang, rod {number}", value=row.get("overhang", ""),
                  hint="first tail past the face of the fascia, tape on the slope"),
        ),
        measured=Field(name=f"rod[{index}].measured", label=f"Marks or margins, rod {number}",
                       value=row.get("measured", "")),
    )  # fmt: skip


def on_the_form(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    """The faults by the fields of the form; one of a long list says which of the list it means."""
    return tuple(_on_the_form(fault) for fault in faults)


def _on_the_form(fault: Fault) -> Fault:
    field = fault.field.removeprefix("roof.")
    if found := _IN_A_LIST.fullmatch(field):
        what = "Mark" if found[2] == "marks" else "Margin"
        said = f"{what} {int(found[3]) + 1}, {fault.given}: {fault.do[:1].lower()}{fault.do[1:]}"
        return replace(fault, field=f"rod[{found[1]}].measured", do=said)
    if found := re.fullmatch(r"rod\[(\d+)\](?:\.(?:marks|margins))?", field):
        said = fault.do if fault.given in {"nothing", "neither", "none"} else f"{fault.given}: {fault.do}"
        return replace(fault, field=f"rod[{found[1]}].measured", do=said)
    if field == "covering":
        return replace(fault, field="covering.from")
    return replace(fault, field="rod[0].measured" if field == "rod" else field)
