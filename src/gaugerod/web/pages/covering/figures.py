"""The figures of a covering that a person may put right: which there are, what the record says, what was typed."""

from collections.abc import Mapping
from typing import Any

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.web.form import Choice, Field, list_of, shown_length, typed
from gaugerod.web.pages.covering.records import OWN, Record, record_named

_LABELS = {
    "title": "Title on the sheets",
    "length": "Length",
    "width": "Width",
    "hanging_length": "Hanging length",
    "cover_closed": "Cover, pushed up",
    "cover_open": "Cover, pulled open",
    "headlap_min": "Least headlap",
    "headlap_max": "Greatest headlap",
    "pitch_min": "Least pitch",
    "mass": "Mass of one, kg",
    "eaves_length": "Short eaves tile",
    "nailing": "Nailed",
    "half_unit": "Half units to be had",
    "unit_and_a_half": "One-and-a-halves to be had",
    "broken": "Part that will not be laid",
    "joint": "Gap between neighbours",
}
_SINGLE = ("title", "length", "width", "hanging_length", "cover_closed", "cover_open", "headlap_min", "headlap_max",
           "pitch_min", "mass", "half_unit", "unit_and_a_half")  # fmt: skip
_PLAIN = ("title", "length", "width", "hanging_length", "headlap_min", "pitch_min", "mass", "eaves_length")
_SLATE = ("title", "length", "width", "nailing", "mass")
_RANDOM = ("title", "nailing", "broken", "joint")
_YES_NO = {"yes": True, "no": False}
HEAP_KEYS = {"length": "Length", "slates": "How many", "average_width": "Average width", "run": "Or: laid in a row"}
MOST_HEAPS_COUNT = 40


def keys_of(chosen: str) -> tuple[str, ...]:
    """Which figures this choice has."""
    match record_named(chosen):
        case SingleLapTile():
            return _SINGLE
        case PlainTile():
            return _PLAIN
        case SizedSlate():
            return _SLATE
        case None:
            return _RANDOM if chosen == RANDOM else _SINGLE if chosen == OWN else ()


def figure_fields(table: Mapping[str, Any], chosen: str) -> tuple[Field, ...]:
    """Each figure with what was typed; what the record says stands as its hint."""
    record = record_named(chosen)
    return tuple(_figure(key, table.get(key), record) for key in keys_of(chosen))


def _figure(key: str, value: Any, record: Record | None) -> Field:  # noqa: ANN401
    choices: tuple[Choice, ...] = ()
    shown = shown_length(value)
    if key in {"half_unit", "unit_and_a_half"}:
        choices = (
            Choice(value="", label="as recorded"),
            Choice(value="yes", label="yes"),
            Choice(value="no", label="no"),
        )
        shown = {True: "yes", False: "no"}.get(value, "") if isinstance(value, bool) else ""
    elif key == "nailing":
        choices = (
            Choice(value="", label="as recorded"),
            Choice(value="centre", label="near the middle"),
            Choice(value="head", label="near the head"),
        )
        shown = value if isinstance(value, str) else ""
    elif key == "pitch_min" and isinstance(value, (int, float)) and not isinstance(value, bool):
        shown = f"{value:g}°"
    elif key in {"mass", "broken"} and isinstance(value, (int, float)) and not isinstance(value, bool):
        shown = f"{value:g}"
    return Field(
        name=key,
        label=_LABELS[key],
        value=shown,
        hint=_record_says(key, record),
        choices=choices,
        length=key != "title",
    )


def _record_says(key: str, record: Record | None) -> str:
    if record is None:
        return {"broken": "like 5 %", "joint": "usually 5 mm"}.get(key, "")
    for field, unit in ((f"{key}_mm", " mm"), (f"{key}_deg", "°"), (f"{key}_kg", " kg"), (key, "")):
        value = getattr(record, field, None)
        match value:
            case bool():
                return f"record: {'yes' if value else 'no'}"
            case float() | int():
                return f"record: {value:g}{unit}"
            case str():
                return f"record: {value}"
            case _:
                continue
    return "record: not known" if key not in {"title", "nailing"} else ""


def heap_fields(table: Mapping[str, Any], chosen: str) -> tuple[tuple[Field, ...], ...]:
    """Every heap of random slates, and room for two more."""
    if chosen != RANDOM:
        return ()
    rows = [row if isinstance(row, dict) else {} for row in list_of(table, "heap")]
    rows += [{}] * 2
    return tuple(
        tuple(
            Field(
                name=f"heap[{index}].{key}",
                label=f"{label}, heap {index + 1}",
                value=str(row.get(key, "")) if key == "slates" else shown_length(row.get(key)),
            )
            for key, label in HEAP_KEYS.items()
        )
        for index, row in enumerate(rows[:MOST_HEAPS_COUNT])
    )


def covering_typed(form: Mapping[str, str], *, base: Mapping[str, Any]) -> tuple[str, dict[str, Any]]:
    """What was chosen, and its table: the figures only where they were shown for this very choice."""
    chosen = form.get("from", "")
    own = {key: value for key, value in base.items() if key not in {"from", "heap"}} if chosen == OWN else {}
    same_as_before = base.get("from", OWN) == chosen
    if form.get("shown_for") != chosen:
        return chosen, dict(base) if same_as_before else {**own, **({} if chosen == OWN else {"from": chosen})}
    kept = {
        key: value for key, value in base.items() if same_as_before and key not in {*keys_of(chosen), "heap", "from"}
    }
    table: dict[str, Any] = {**({} if chosen == OWN else {"from": chosen}), **kept}
    for key in keys_of(chosen):
        text = typed(form, key)
        if text is not None:
            table[key] = _YES_NO.get(text, text) if key in {"half_unit", "unit_and_a_half"} else text
    heaps = _heaps_typed(form) if chosen == RANDOM else []
    return chosen, {**table, "heap": heaps} if heaps else table


def _heaps_typed(form: Mapping[str, str]) -> list[dict[str, Any]]:
    heaps: list[dict[str, Any]] = []
    for index in range(MOST_HEAPS_COUNT):
        row: dict[str, Any] = {
            key: text for key in HEAP_KEYS if (text := typed(form, f"heap[{index}].{key}")) is not None
        }
        slates = row.get("slates", "")
        if slates.isascii() and slates.isdigit() and len(slates) < 9:
            row["slates"] = int(slates)
        if row:
            heaps.append(row)
    return heaps
