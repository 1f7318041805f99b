"""The form of one slope: from its table in the document to fields, and from what was typed back to the table."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from gaugerod.adapters.job_file.allowed import PLACE_ON_THE_ROOF
from gaugerod.basis.errors import Fault
from gaugerod.job.model import TopKind
from gaugerod.setting_out.across import SideKind
from gaugerod.sheets.slope_labels import opening_letter
from gaugerod.web.form import (
    Choice,
    Field,
    lengths_typed,
    list_of,
    shown_length,
    shown_lengths,
    table_of,
    typed,
    with_keys,
)
from gaugerod.web.pages.edges.openings import OPENING_MADE
from gaugerod.web.pages.slope.context import OpeningFields
from gaugerod.web.pitch_ways import PitchBy, pitch_fields, pitch_typed

MOST_ROWS_COUNT = 60
_OPENING = ("name", "from_left", "up_slope", "width", "height", "made")
_DIAGONALS = ("from_left", "from_right")


def named_fields(table: Mapping[str, Any]) -> tuple[Field, ...]:
    """What it is called."""
    return (
        Field(
            name="name",
            label="Name of the slope",
            value=str(table.get("name", "")),
            hint="rear, front, porch",
            length=False,
        ),
    )


def edge_fields(table: Mapping[str, Any]) -> tuple[Field, ...]:
    """What stands around it."""
    sides = (Choice(value="", label="choose"), *(Choice(value=each.value, label=each.value) for each in SideKind))
    tops = (
        Choice(value="", label="choose"),
        *(Choice(value=each.value, label=each.value.replace("-", " ")) for each in TopKind),
    )
    return (
        Field(name="left", label="At the left", value=str(table.get("left", "")), choices=sides),
        Field(name="right", label="At the right", value=str(table.get("right", "")), choices=sides),
        Field(name="top", label="At the top", value=str(table.get("top", "")), choices=tops),
    )


def tape_fields(table: Mapping[str, Any]) -> tuple[Field, ...]:
    """Lengths by tape, but for the rafters."""
    return (
        Field(name="across", label="Along the eaves", value=shown_length(table.get("across")),
              hint="left end to right end of the roof structure, as you look at the slope"),
        Field(name="rafter_spacing", label="Rafter to rafter", value=shown_length(table.get("rafter_spacing")),
              hint="centre to centre; settles the batten"),
        Field(name="rafters_at", label="Middle of every rafter", value=shown_lengths(table.get("rafters_at")),
              hint="where they are not even: from the left end, with a comma and a blank between", length=False),
    )  # fmt: skip


def square_fields(table: Mapping[str, Any]) -> tuple[Field, ...]:
    """Ridge and diagonals: they show whether the slope is square."""
    diagonals = table_of(table, "diagonals")
    return (
        Field(name="ridge", label="Along the ridge", value=shown_length(table.get("ridge")), hint="end to end"),
        Field(name="diagonals.from_left", label="Diagonal from the left", value=shown_length(diagonals.get("from_left")),
              hint="left end of the eaves to right end of the ridge"),
        Field(name="diagonals.from_right", label="Diagonal from the right", value=shown_length(diagonals.get("from_right")),
              hint="right end of the eaves to left end of the ridge"),
    )  # fmt: skip


def rafter_fields(table: Mapping[str, Any]) -> tuple[tuple[Field, Field], ...]:
    """Every rafter with its place, and room for one more."""
    rows = list_of(table, "rafters")
    wanted = max(2, len(rows) + 1) if rows else 2
    return tuple(_rafter(index, rows[index] if index < len(rows) else {}) for index in range(wanted))


def _rafter(index: int, row: Any) -> tuple[Field, Field]:  # noqa: ANN401 - a length alone, or with its place
    length, place = (row.get("length"), row.get("at")) if isinstance(row, dict) else (row, None)
    number = index + 1
    return (
        Field(name=f"rafters[{index}].length", label=f"Rafter {number}", value=shown_length(length)),
        Field(name=f"rafters[{index}].at", label=f"{number} is at", value=shown_length(place),
              hint="from the left end" if index == 0 else ""),
    )  # fmt: skip


def opening_fields(table: Mapping[str, Any], *, more: bool) -> tuple[OpeningFields, ...]:
    """Every opening, and an empty one when it was asked for."""
    rows = [row if isinstance(row, dict) else {} for row in list_of(table, "opening")] + ([{}] if more else [])
    return tuple(
        OpeningFields(letter=opening_letter(index), fields=_opening(index, row)) for index, row in enumerate(rows)
    )


def _opening(index: int, row: Mapping[str, Any]) -> tuple[Field, ...]:
    asked = (
        ("name", "What it is", "rooflight, chimney"),
        ("from_left", "From the left", "left end to its left side, along the eaves"),
        ("up_slope", "Up the slope", "outer face of the fascia to its lower edge"),
        ("width", "Width", "along the eaves"),
        ("height", "Height", "up the slope"),
    )
    made = Field(
        name=f"opening[{index}].made", label="What stands in it", value=str(row.get("made", "")), choices=OPENING_MADE
    )
    return (
        *(
            Field(
                name=f"opening[{index}].{key}",
                label=label,
                value=str(row.get(key, "")) if key == "name" else shown_length(row.get(key)),
                hint=hint,
                length=key != "name",
            )
            for key, label, hint in asked
        ),
        made,
    )


def slope_typed(form: Mapping[str, str], *, base: Mapping[str, Any]) -> dict[str, Any]:
    """The table of the slope with what was typed; what the form does not ask stays as it was."""
    if isinstance(base.get("outline"), list):
        return with_keys(base, {"name": typed(form, "name"), "pitch": pitch_typed(form)})
    diagonals = {key: text for key in _DIAGONALS if (text := typed(form, f"diagonals.{key}")) is not None}
    plain = ("name", "across", "ridge", "left", "right", "top", "rafter_spacing")
    return with_keys(
        base,
        {
            **{key: typed(form, key) for key in plain},
            "pitch": pitch_typed(form),
            "diagonals": diagonals or None,
            "rafters_at": list(lengths_typed(form, "rafters_at", allowed=PLACE_ON_THE_ROOF)[0]) or None,
            "rafters": _rafters_typed(form) or None,
            "opening": _openings_typed(form) or None,
        },
    )


def unclear_rafters(form: Mapping[str, str], *, under: str) -> tuple[Fault, ...]:
    """Middles of rafters that could be one length or two, as faults of the slope ``under`` this path."""
    unclear = lengths_typed(form, "rafters_at", allowed=PLACE_ON_THE_ROOF)[1]
    return tuple(replace(fault, field=f"{under}.{fault.field}") for fault in unclear)


def _rafters_typed(form: Mapping[str, str]) -> list[Any]:
    rows: list[Any] = []
    for index in range(MOST_ROWS_COUNT):
        length, place = typed(form, f"rafters[{index}].length"), typed(form, f"rafters[{index}].at")
        if place is not None:
            rows.append({"at": place} if length is None else {"at": place, "length": length})
        elif length is not None:
            rows.append(length)
    return rows


def _openings_typed(form: Mapping[str, str]) -> list[dict[str, str]]:
    rows: list[dict[str, str]] = []
    for index in range(MOST_ROWS_COUNT):
        row = {key: text for key in _OPENING if (text := typed(form, f"opening[{index}].{key}")) is not None}
        if row.keys() - {"made"}:  # an opening whose every other field is emptied is taken out
            rows.append(row)
    return rows


def pitch_group(table: Mapping[str, Any], by: PitchBy | None) -> tuple[Field, ...]:
    """The pitch by each of the ways."""
    return pitch_fields(table.get("pitch"), by=by)
