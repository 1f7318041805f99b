"""The form of what lies beneath: from the tables of the document to fields, and from what was typed back to tables."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from gaugerod.adapters.job_file.beneath_fields import BATTEN_STOCK
from gaugerod.basis.errors import Fault
from gaugerod.web.form import Field, lengths_typed, list_of, shown_length, shown_lengths, table_of, typed, with_keys
from gaugerod.web.pages.beneath.context import MoreFields, PartAsked
from gaugerod.web.pages.beneath.questions import PARTS, Kind, More, PartQuestions, Question

MOST_ROWS_COUNT = 20
_NUMBER = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?", re.ASCII)

Tables = dict[str, dict[str, Any]]


def switch_name(key: str) -> str:
    """The field that switches a part on."""
    return f"on_{key}"


def tables_of(document: Mapping[str, Any]) -> Tables:
    """The tables a document has."""
    return {part.key: table_of(document, part.key) for part in PARTS if part.key in document}


def switched_on(form: Mapping[str, str]) -> frozenset[str]:
    """The parts that are switched on."""
    return frozenset(part.key for part in PARTS if form.get(switch_name(part.key)) == "yes")


def tables_typed(form: Mapping[str, str], *, base: Mapping[str, Any]) -> Tables:
    """Every table as typed, those switched off too; what the form does not ask stays as it was."""
    return {part.key: _table_typed(part, form, table_of(base, part.key)) for part in PARTS}


def with_tables(document: Mapping[str, Any], tables: Tables, on: frozenset[str]) -> dict[str, Any]:
    """The document with the tables that are switched on, and without the others."""
    return with_keys(document, {part.key: tables[part.key] if part.key in on else None for part in PARTS})


def unclear_faults(form: Mapping[str, str], on: frozenset[str]) -> tuple[Fault, ...]:
    """What could be one length or two, in the parts switched on."""
    return tuple(
        fault
        for part in PARTS
        if part.key in on
        for question in part.questions
        if question.kind is Kind.LENGTHS
        for fault in lengths_typed(form, f"{part.key}.{question.key}", allowed=BATTEN_STOCK)[1]
    )


def _table_typed(part: PartQuestions, form: Mapping[str, str], base: dict[str, Any]) -> dict[str, Any]:
    table = base
    for question in part.questions:
        value = _read(question, form, f"{part.key}.{question.key}")
        head, _, inner = question.key.partition(".")
        if inner:
            value = with_keys(table_of(table, head), {inner: value}) or None
        table = with_keys(table, {head: value})
    for group in part.more:
        if group.rows_key:
            table = with_keys(table, {group.rows_key: list(_rows_typed(part, group, form)) or None})
    return table


def _rows_typed(part: PartQuestions, group: More, form: Mapping[str, str]) -> Iterator[dict[str, Any]]:
    for index in range(MOST_ROWS_COUNT):
        under = f"{part.key}.{group.rows_key}[{index}]"
        row = with_keys({}, {each.key: _read(each, form, f"{under}.{each.key}") for each in group.rows})
        if row:
            yield row


def _read(question: Question, form: Mapping[str, str], name: str) -> Any:  # noqa: ANN401 - as the job file holds it
    """The answer as the job file holds it. What cannot be read stays as typed: the door refuses it in words."""
    text = typed(form, name)
    if text is None:
        return None
    match question.kind:
        case Kind.NUMBER if _NUMBER.fullmatch(text):
            return float(text) if "." in text else int(text)
        case Kind.YES_NO if text in {"yes", "no"}:
            return text == "yes"
        case Kind.LENGTHS:
            return list(lengths_typed(form, name, allowed=BATTEN_STOCK)[0]) or None
        case _:
            return text


def parts_asked(tables: Tables, on: frozenset[str]) -> tuple[PartAsked, ...]:
    """Every part with its fields."""
    return tuple(_part_asked(part, tables.get(part.key, {}), on=part.key in on) for part in PARTS)


def _part_asked(part: PartQuestions, table: Mapping[str, Any], *, on: bool) -> PartAsked:
    return PartAsked(
        key=part.key,
        title=part.title,
        says=part.says,
        on=on,
        first=tuple(_field(question, table, part.key) for question in part.first),
        more=tuple(_more(part, group, table) for group in part.more),
    )


def _more(part: PartQuestions, group: More, table: Mapping[str, Any]) -> MoreFields:
    fields = tuple(_field(question, table, part.key) for question in group.questions)
    rows = list_of(table, group.rows_key) if group.rows_key else []
    wanted = [row if isinstance(row, dict) else {} for row in [*rows, {}]] if group.rows_key else []
    return MoreFields(
        title=group.title,
        says=group.says,
        fields=fields,
        rows=tuple(
            tuple(_field(each, row, f"{part.key}.{group.rows_key}[{index}]") for each in group.rows)
            for index, row in enumerate(wanted[:MOST_ROWS_COUNT])
        ),
        opened=bool(rows) or any(field.value for field in fields),
    )


def _field(question: Question, table: Mapping[str, Any], under: str) -> Field:
    head, _, inner = question.key.partition(".")
    value = table_of(table, head).get(inner) if inner else table.get(head)
    return Field(
        name=f"{under}.{question.key}",
        label=question.label,
        value=_shown(question, value),
        hint=question.hint,
        choices=question.choices,
        length=question.kind not in {Kind.WORDS, Kind.LENGTHS},
    )


def _shown(question: Question, value: Any) -> str:  # noqa: ANN401 - whatever a job file may hold
    match value:
        case bool():
            said = "yes" if value else "no"
            return said if any(said == choice.value for choice in question.choices) else ""
        case str():
            return value
        case list() if question.kind is Kind.LENGTHS:
            return shown_lengths(value)
        case int() | float() if question.kind is Kind.NUMBER:
            return f"{value:.15g}"
        case _:
            return shown_length(value) if question.kind is Kind.LENGTH else ""
