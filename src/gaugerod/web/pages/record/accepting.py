"""What is outside a rule and who accepted it: listed for the page, and written into the job as a deviation."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from gaugerod.basis.errors import Fault
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result
from gaugerod.sheets.acceptance import Answered, answered
from gaugerod.web.form import Choice, FaultShown, Field, list_of, placed, table_of, typed
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.findings.rows import finding_row
from gaugerod.web.pages.record.context import ToAccept

_KEYS = ("what", "accepted_by", "on")


def outside_of(result: Result) -> tuple[Answered, ...]:
    """Everything outside a rule, each told once with all its places, with what answers it."""
    outside = [finding for finding in result.findings if finding.verdict is Verdict.OUTSIDE]
    return answered(outside, result.job.record.deviations, unit=result.job.show_lengths_in)


def with_accepted(document: Mapping[str, Any], each: Answered, form: Mapping[str, str], number: int) -> dict[str, Any]:
    """The document with what was accepted: a deviation for each place it is accepted at."""
    record = table_of(document, "record")
    chosen = typed(form, _name(number, "where"))
    said = {key: text for key in _KEYS if (text := typed(form, _name(number, key))) is not None}
    places = [place for place in each.told.places if chosen in {None, place}]
    rows = [{**said, "rule": each.told.finding.rule, **({"where": place} if place else {})} for place in places]
    return {**document, "record": {**record, "deviation": [*list_of(record, "deviation"), *rows]}}


def faults_of_accepting(
    faults: Sequence[Fault], document: Mapping[str, Any], fields: tuple[Field, ...], number: int
) -> tuple[tuple[Field, ...], tuple[FaultShown, ...]]:
    """The faults of what was to be accepted, beside the fields of its form: told once, though written for each place."""
    before_count = len(list_of(table_of(document, "record"), "deviation"))
    under = f"record.deviation[{before_count}]."
    of_first = [
        replace(fault, field=_name(number, fault.field.removeprefix(under)))
        for fault in faults
        if fault.field.startswith(under)
    ]
    others = [fault for fault in faults if not fault.field.startswith("record.deviation[")]
    return placed(fields, [*of_first, *others])


def to_accept(result: Result, *, form: Mapping[str, str]) -> tuple[ToAccept, ...]:
    """Everything outside a rule, as the page lists it; what is accepted has no form any more."""
    return tuple(_to_accept(each, number, result, form) for number, each in enumerate(outside_of(result)))


def _to_accept(each: Answered, number: int, result: Result, form: Mapping[str, str]) -> ToAccept:
    done = each.accepted
    row = finding_row(each.told.finding, result.job.show_lengths_in, places=each.told.places)
    return ToAccept(
        number=number,
        row=row,
        accepted=each.said if done else "",
        fields=() if done else _fields(each.told.places, row, number, form),
    )


def _fields(places: tuple[str, ...], row: FindingRow, number: int, form: Mapping[str, str]) -> tuple[Field, ...]:
    what = f"{row.rule}: {row.here}, limit {row.limit}. Left as it is."
    asked: tuple[Field, ...] = (
        Field(name=_name(number, "what"), label="What is accepted", value=what[:400], length=False),
        Field(name=_name(number, "accepted_by"), label="Accepted by", length=False),
        Field(name=_name(number, "on"), label="Day", hint="as you write it", length=False),
    )
    if len(places) > 1:
        everywhere = Choice(value="", label=f"all {len(places)} places")
        choices = (everywhere, *(Choice(value=place, label=place) for place in places))
        asked = (*asked, Field(name=_name(number, "where"), label="Where", choices=choices))
    return tuple(replace(field, value=form.get(field.name, field.value)) for field in asked)


def _name(number: int, key: str) -> str:
    return f"accept[{number}].{key}"
