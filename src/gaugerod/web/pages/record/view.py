"""The hand-over record: who and where, what was accepted and by whom, and the record itself."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from gaugerod.basis.errors import Fault
from gaugerod.basis.finding import Verdict
from gaugerod.web.asked import Asked
from gaugerod.web.form import FaultShown, under_path, with_keys
from gaugerod.web.job_answer import answer_of, faults_at_the_door, lacks
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.record.accepting import faults_of_accepting, outside_of, to_accept, with_accepted
from gaugerod.web.pages.record.context import RecordContext, ToAccept
from gaugerod.web.pages.record.questions import PARTS, RECORD
from gaugerod.web.parts_asked import (
    Tables,
    as_asked,
    asked_with_faults,
    parts_asked,
    tables_of,
    tables_typed,
    with_tables,
)
from gaugerod.web.reply import Go, JobHead, Reply, Shown
from gaugerod.web.services import Services


def record_view(services: Services, asked: Asked) -> Reply:
    """Show the record, or save what is typed into it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        return _shown(newest.document, tables_of(newest.document, PARTS), head)
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    parts = (as_asked(RECORD, asked.form),)
    tables = tables_typed(asked.form, parts, base=base.document)
    on = frozenset(key for key, table in tables.items() if table or key in base.document)
    document = with_tables(base.document, tables, on, parts)
    if not under_path(faults_at_the_door(document), RECORD.key):
        return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/record")
    return _shown(document, tables, head, saves=True)


def accept_view(services: Services, asked: Asked) -> Reply:
    """Write down that something outside a rule was accepted, and by whom."""
    newest, head = opened(services, asked)
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    result, to = answer_of(base.document).result, f"/jobs/{head.id}/record"
    given = asked.form.get("number", "")
    outside = () if result is None else outside_of(result)
    number = int(given) if given.isascii() and given.isdigit() and len(given) < 5 else len(outside)
    if number >= len(outside):
        return Go(to=to)
    document = with_accepted(base.document, outside[number], asked.form, number)
    faults = under_path(faults_at_the_door(document), RECORD.key)
    if not faults:
        return kept(services, asked, base, document, go_to=to)
    tried = Tried(form=asked.form, number=number, faults=faults)
    return _shown(base.document, tables_of(base.document, PARTS), head, tried=tried)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """Something that could not be accepted as it was typed."""

    form: Mapping[str, str]
    number: int
    faults: tuple[Fault, ...]


def _shown(
    document: dict[str, Any], tables: Tables, head: JobHead, *, saves: bool = False, tried: Tried | None = None
) -> Shown:
    faults = under_path(faults_at_the_door(document), RECORD.key)
    (part,), listed = asked_with_faults(parts_asked(tables, frozenset(tables), PARTS), faults)
    # With a fault in it the job is answered as if nothing were said in it, and the fault stands beside.
    answer = answer_of(with_keys(document, {RECORD.key: None}) if faults else document)
    result = answer.result
    outside = () if result is None else to_accept(result, form={} if tried is None else tried.form)
    if tried is not None:
        outside, listed = _with_tried(outside, tried, document)
    found = () if result is None else result.findings
    context = RecordContext(
        asked=part,
        rev=head.rev,
        faults=listed if saves or tried is not None else (),
        outside=outside,
        not_accepted_count=sum(not each.accepted for each in outside),
        not_covered_count=sum(finding.verdict is Verdict.NOT_COVERED for finding in found),
        within_count=sum(finding.verdict is Verdict.WITHIN for finding in found),
        sheet="" if result is None or not result.slopes else f"/jobs/{head.id}/sheets/record.pdf",
        lacks=() if result is not None else lacks(document, answer, job=head.id),
    )
    refused = saves or tried is not None
    return Shown(page="record", title="Record", context=context, job=head, status=422 if refused else 200)


def _with_tried(
    outside: tuple[ToAccept, ...], tried: Tried, document: dict[str, Any]
) -> tuple[tuple[ToAccept, ...], tuple[FaultShown, ...]]:
    """What was tried with its faults beside the fields, and all of them for the list."""
    one = next(each for each in outside if each.number == tried.number)
    fields, listed = faults_of_accepting(tried.faults, document, one.fields, tried.number)
    return tuple(replace(each, fields=fields) if each is one else each for each in outside), listed
