"""The reference page of the job file, written from its own tables so that it cannot fall behind."""

from collections.abc import Iterator, Sequence
from typing import Any

from gaugerod.adapters.job_file.schema import job_schema

_HEAD = """\
# The job file

<!-- Written by `make docs` from the tables the program reads. Do not edit. -->

One TOML or JSON document; the same fields either way. Lengths are strings with a unit (`"4.905 m"`, `"75 mm"`, `"16' 1 1/8\\""`)
or bare numbers in mm. Pitch is `"35°"`, `"35 deg"`, `"8 in 12"`, `{ rise = …, run = … }` or `{ rafter = …, run = … }`.
A band is `[least, greatest]`, or one length. A corner of an outline is `[x, y]`, two lengths.
Unknown keys are refused by name, with the nearest known key. All faults of a file are reported together.
"""


TABLES = (
    ("[job]", "JobTable"),
    ("[covering]", "CoveringTable"),
    ("[[covering.heap]]", "HeapTable"),
    ("[[slope]], by tape", "SlopeTable"),
    ("slope.rafters, each with its place", "RafterTable"),
    ("slope.diagonals", "DiagonalsTable"),
    ("[[slope.nailed]]", "NailedTable"),
    ("[[slope]], by its outline", "OutlinedSlopeTable"),
    ("[[slope.opening]], either way", "OpeningTable"),
    ("[[building]]", "BuildingTable"),
    ("[set_out]", "SetOutTable"),
    ("[battens]", "BattensTable"),
    ("battens.counter_battens", "CounterBattenTable"),
    ("[underlay]", "UnderlayTable"),
    ("[[underlay.rating]]", "RatingTable"),
    ("[ventilation]", "VentilationTable"),
    ("[fixings]", "FixingsTable"),
    ("[load]", "LoadTable"),
    ("load.old", "OldRoofTable"),
    ("[edges]", "EdgesTable"),
    ("[edges.ridge]", "RidgeTable"),
    ("edges.ridge.unit, mono_unit, hip_unit", "LineUnitTable"),
    ("[edges.verge]", "VergeTable"),
    ("[edges.valley]", "ValleyTable"),
    ("[edges.wall]", "WallTable"),
    ("[edges.eaves]", "EavesTable"),
    ("[edges.air]", "AirTable"),
    ("edges.air.low, high", "AirUnitTable"),
    ("[[edges.shared]]", "SharedTable"),
    ("[order]", "OrderTable"),
    ("[[order.pack]]", "PackTable"),
    ("[order.money]", "MoneyTable"),
    ("[record]", "RecordTable"),
    ("[[record.deviation]]", "DeviationTable"),
)


def reference_page() -> str:
    """The page, in Markdown."""
    return "\n".join([_HEAD, *table_lines(job_schema(), TABLES)]).rstrip() + "\n"


def table_lines(schema: dict[str, Any], tables: Sequence[tuple[str, str]]) -> Iterator[str]:
    """The lines of a reference page: under each heading the keys of one table of the schema."""
    definitions = schema["$defs"]
    for heading, name in tables:
        table = definitions[name]
        yield f"## `{heading}`\n\n{table.get('description', '')}\n"
        yield "| key | what it is | given as |\n|---|---|---|"
        needed = set(table.get("required", ()))
        for key, field in table["properties"].items():
            mark = "" if key in needed else " (may be left out)"
            yield f"| `{key}` | {_what_it_is(field, definitions)}{mark} | {_given_as(field, definitions)} |"
        yield ""


def _what_it_is(field: dict[str, Any], definitions: dict[str, Any]) -> str:
    """The field's own description, or else that of the kind of value it is."""
    kind = definitions.get(field.get("$ref", "").rsplit("/", 1)[-1], {})
    said: str = field.get("description") or kind.get("description", "")
    return said


def _given_as(field: dict[str, Any], definitions: dict[str, Any]) -> str:
    """How the value is written, in words."""
    if "$ref" in field:
        return _given_as(definitions[field["$ref"].rsplit("/", 1)[1]], definitions)
    if "enum" in field or "const" in field:
        return ", ".join(f"`{choice}`" for choice in field.get("enum", [field.get("const")]))
    choices = [choice for choice in field.get("anyOf", ()) if choice.get("type") != "null"]
    if choices and (len(choices) < len(field["anyOf"]) or "title" not in field):
        return " or ".join(dict.fromkeys(_given_as(choice, definitions) for choice in choices))
    if field.get("type") == "array" and "title" not in field.get("items", {}) and "minItems" not in field:
        return f"a list: {_given_as(field['items'], definitions)}"
    return _plainly(field)


def _plainly(field: dict[str, Any]) -> str:
    if field.get("type") == "object":
        return "a table"
    kinds_of = {"boolean": "`true` or `false`", "integer": "a whole number", "string": "words", "array": "a list"}
    kind = field.get("type")
    if isinstance(kind, str) and kind in kinds_of:
        return kinds_of[kind]
    return _title(field)


def _title(field: dict[str, Any]) -> str:
    title: str = field.get("title", "a number or words")
    return f"{title[0].lower()}{title[1:]}"
