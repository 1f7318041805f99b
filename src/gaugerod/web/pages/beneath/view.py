"""What lies beneath the covering and holds it: asked part by part, answered while it is typed."""

from typing import Any
from urllib.parse import quote

from gaugerod.basis.errors import Fault
from gaugerod.job.result import Result, SlopeResult
from gaugerod.web.asked import Asked
from gaugerod.web.form import Choice, under_path
from gaugerod.web.job_answer import BENEATH, Answer, answer_of, faults_at_the_door, lacks
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.beneath.context import BeneathContext
from gaugerod.web.pages.beneath.plans_shown import answered
from gaugerod.web.pages.beneath.questions import PARTS
from gaugerod.web.parts_asked import (
    Tables,
    asked_with_faults,
    parts_asked,
    switched_on,
    tables_of,
    tables_typed,
    unclear_faults,
    with_tables,
)
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services


def beneath_view(services: Services, asked: Asked) -> Reply:
    """Show what is asked and its answer, answer what is typed, or save it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        tables = tables_of(newest.document, PARTS)
        faults = _faults(newest.document, ())
        return _shown(newest.document, tables, frozenset(tables), faults, head, name=asked.query.get("slope", ""))
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    tables, on = tables_typed(asked.form, PARTS, base=base.document), switched_on(asked.form, PARTS)
    document = with_tables(base.document, tables, on, PARTS)
    faults = _faults(document, unclear_faults(asked.form, on, PARTS))
    name = asked.form.get("slope", "")
    saves = asked.form.get("do") == "save" and not asked.part
    if saves and not faults:
        to = f"/jobs/{head.id}/beneath"
        return kept(services, asked, base, document, go_to=f"{to}?slope={quote(name)}" if name else to)
    return _shown(document, tables, on, faults, head, name=name, saves=saves)


def _faults(document: dict[str, Any], unclear: tuple[Fault, ...]) -> tuple[Fault, ...]:
    """Every fault of the five tables."""
    faults = under_path(faults_at_the_door(document), *BENEATH)
    return (*unclear, *(_on_this_page(fault) for fault in faults if not _told(fault, unclear)))


def _told(fault: Fault, unclear: tuple[Fault, ...]) -> bool:
    return any(fault.field.startswith(f"{each.field}[") for each in unclear)


def _on_this_page(fault: Fault) -> Fault:
    """Air without underlay: on this page a part is switched on, and no table is written."""
    if fault.field != "underlay":
        return fault
    return Fault("ventilation", "no underlay", "the underlay switched on as well", "Openings depend on the underlay.")


def _shown(
    document: dict[str, Any],
    tables: Tables,
    on: frozenset[str],
    faults: tuple[Fault, ...],
    head: JobHead,
    *,
    name: str,
    saves: bool = False,
) -> Shown:
    parts, listed = asked_with_faults(parts_asked(tables, on, PARTS), faults)
    answer = _answer(document, faults)
    result = answer.result
    slope = None if result is None else _chosen(result, name)
    any_on = any(key in document for key in BENEATH)
    context = BeneathContext(
        asked=parts,
        slopes=()
        if result is None
        else tuple(Choice(value=each.slope.name, label=each.slope.name) for each in result.slopes),
        slope="" if slope is None else slope.slope.name,
        rev=head.rev,
        faults=listed if saves else (),
        to_say=listed,
        answered=answered(result, slope) if result is not None and any_on else None,
        lacks=() if result is not None else lacks(document, answer, job=head.id),
    )
    title = "Battens, underlay, fixings"
    return Shown(page="beneath", title=title, context=context, job=head, status=422 if saves else 200)


def _answer(document: dict[str, Any], faults: tuple[Fault, ...]) -> Answer:
    """The job set out with the parts that can be read; those with a fault wait until it is mended."""
    wrong = {key for key in BENEATH if under_path(faults, key)}
    if "underlay" in wrong:
        wrong.add("ventilation")
    return answer_of({key: value for key, value in document.items() if key not in wrong})


def _chosen(result: Result, name: str) -> SlopeResult | None:
    return next((slope for slope in result.slopes if slope.slope.name == name), next(iter(result.slopes), None))
