"""A form over tables of the job file: from the document to fields, and from what was typed back to the document."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from gaugerod.basis.errors import Fault
from gaugerod.web.form import (
    FaultShown,
    Field,
    lengths_typed,
    list_of,
    placed,
    shown_length,
    shown_lengths,
    table_of,
    typed,
    with_keys,
)
from gaugerod.web.questions import Kind, More, PartQuestions, Question

_NUMBER = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?", re.ASCII)

Tables = dict[str, dict[str, Any]]
"""Tables of the document by their place in it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MoreFields:
    """Fields that can be left alone most of the time; ``opened`` when something stands in them."""

    title: str
    says: str
    fields: tuple[Field, ...]
    rows: tuple[tuple[Field, ...], ...]
    opened: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PartAsked:
    """One table of the job file: its switch, the fields that matter, and the others under more."""

    key: str
    title: str
    says: str
    on: bool
    first: tuple[Field, ...]
    more: tuple[MoreFields, ...]


def switch_name(key: str) -> str:
    """The field that switches a part on."""
    return f"on_{key}"


def tables_of(document: Mapping[str, Any], parts: Sequence[PartQuestions]) -> Tables:
    """The tables a document has."""
    found = {part.key: _table_at(document, part.key) for part in parts}
    return {key: table for key, table in found.items() if table is not None}


def switched_on(form: Mapping[str, str], parts: Sequence[PartQuestions]) -> frozenset[str]:
    """The parts that are switched on."""
    return frozenset(part.key for part in parts if form.get(switch_name(part.key)) == "yes")


def tables_typed(form: Mapping[str, str], parts: Sequence[PartQuestions], *, base: Mapping[str, Any]) -> Tables:
    """Every table as typed, those switched off too; what the form does not ask stays as it was."""
    return {part.key: _table_typed(part, form, _table_at(base, part.key) or {}) for part in parts}


def with_tables(
    document: Mapping[str, Any], tables: Tables, on: frozenset[str], parts: Sequence[PartQuestions]
) -> dict[str, Any]:
    """The document with the tables that are switched on, and without the others."""
    changed = dict(document)
    for part in parts:
        changed = _with_table_at(changed, part.key, tables[part.key] if part.key in on else None)
    return changed


def unclear_faults(form: Mapping[str, str], on: frozenset[str], parts: Sequence[PartQuestions]) -> tuple[Fault, ...]:
    """What could be one length or two, in the parts switched on."""
    return tuple(
        fault
        for part in parts
        if part.key in on
        for question in part.questions
        if question.allowed is not None
        for fault in lengths_typed(form, f"{part.key}.{question.key}", allowed=question.allowed)[1]
    )


def as_asked(part: PartQuestions, form: Mapping[str, str]) -> PartQuestions:
    """The part without what this form did not ask: it stays in the job as it was."""

    def there(questions: tuple[Question, ...]) -> tuple[Question, ...]:
        return tuple(each for each in questions if f"{part.key}.{each.key}" in form)

    def rows_there(group: More) -> bool:
        return any(name.startswith(f"{part.key}.{group.rows_key}[") for name in form)

    more = tuple(
        replace(group, questions=there(group.questions), rows_key=group.rows_key if rows_there(group) else "")
        for group in part.more
    )
    return replace(part, first=there(part.first), more=more)


def _table_at(document: Mapping[str, Any], key: str) -> dict[str, Any] | None:
    """The table at a place of the document; None where there is none."""
    *outer, last = key.split(".")
    within: Mapping[str, Any] = document
    for name in outer:
        within = table_of(within, name)
    return table_of(within, last) if last in within else None


def _with_table_at(document: Mapping[str, Any], key: str, table: dict[str, Any] | None) -> dict[str, Any]:
    """The document with another table at that place; None takes it out, and a table that holds nothing else with it."""
    first, _, rest = key.partition(".")
    if not rest:
        return with_keys(document, {first: table})
    if table is None and first not in document:
        return dict(document)
    return with_keys(document, {first: _with_table_at(table_of(document, first), rest, table) or None})


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
    for index in range(group.most_rows_count):
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
        case Kind.LENGTHS if question.allowed is not None:
            return list(lengths_typed(form, name, allowed=question.allowed)[0]) or None
        case _:
            return text


def parts_asked(tables: Tables, on: frozenset[str], parts: Sequence[PartQuestions]) -> tuple[PartAsked, ...]:
    """Every part with its fields."""
    return tuple(_part_asked(part, tables.get(part.key, {}), on=part.key in on) for part in parts)


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
            for index, row in enumerate(wanted[: group.most_rows_count])
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


def asked_with_faults(
    parts: tuple[PartAsked, ...], faults: Sequence[Fault]
) -> tuple[tuple[PartAsked, ...], tuple[FaultShown, ...]]:
    """Every fault beside its field; a group that holds one is opened."""
    every = [
        field for part in parts for group in (part.first, *(_fields(more) for more in part.more)) for field in group
    ]
    with_faults, listed = placed(every, faults)
    known = {field.name: field for field in with_faults}

    def mended(fields: tuple[Field, ...]) -> tuple[Field, ...]:
        return tuple(known[field.name] for field in fields)

    def opened_where_wrong(more: MoreFields) -> MoreFields:
        wrong = any(known[field.name].faults for field in _fields(more))
        rows = tuple(mended(row) for row in more.rows)
        return replace(more, fields=mended(more.fields), rows=rows, opened=more.opened or wrong)

    return tuple(
        replace(part, first=mended(part.first), more=tuple(opened_where_wrong(more) for more in part.more))
        for part in parts
    ), listed


def _fields(more: MoreFields) -> tuple[Field, ...]:
    return (*(field for row in more.rows for field in row), *more.fields)
