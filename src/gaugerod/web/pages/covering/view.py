"""Choosing the covering: a generic record with any figure put right, one's own tile, or random slates in heaps."""

from typing import Any

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.basis.errors import Fault
from gaugerod.web.asked import Asked
from gaugerod.web.form import placed, table_of, under_path
from gaugerod.web.job_answer import faults_at_the_door
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.covering.context import CoveringContext
from gaugerod.web.pages.covering.figures import covering_typed, figure_fields, heap_fields
from gaugerod.web.pages.covering.records import OWN, RANDOM_SLATES, figures_said, groups, record_named
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services


def covering_view(services: Services, asked: Asked) -> Reply:
    """Show the choice, redraw its figures, or save it."""
    newest, head = opened(services, asked)
    table = table_of(newest.document, "covering")
    if not asked.posted:
        return _shown(table, _chosen(table), table, head)
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    kept_table = table_of(base.document, "covering")
    chosen, table = covering_typed(asked.form, base=kept_table)
    if asked.part or asked.form.get("do") == "show":
        return _shown(table, chosen, kept_table, head)
    document = {**base.document, "covering": table}
    faults = under_path(faults_at_the_door(document), "covering")
    if faults:
        return _shown(table, chosen, kept_table, head, faults=faults)
    measured = document.get("slope") or document.get("building")
    return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/{'set-out' if measured else 'slopes'}")


def _chosen(table: dict[str, Any]) -> str:
    name = table.get("from")
    return name if isinstance(name, str) else OWN if table else ""


def _shown(
    table: dict[str, Any], chosen: str, kept_table: dict[str, Any], head: JobHead, *, faults: tuple[Fault, ...] = ()
) -> Shown:
    own = kept_table if kept_table and "from" not in kept_table else None
    own_title = None if own is None else str(own.get("title", "Own tile"))
    heaps = heap_fields(table, chosen)
    figures = figure_fields(table, chosen)
    fields, listed = placed([*figures, *(field for row in heaps for field in row)], faults, under="covering")
    known = {field.name: field for field in fields}
    record = record_named(chosen)
    context = CoveringContext(
        groups=groups(chosen=chosen, own_title=own_title),
        chosen=chosen,
        chosen_title=record.title if record else {OWN: own_title or "Own tile", RANDOM: RANDOM_SLATES}.get(chosen, ""),
        chosen_says="" if record is None else f"{figures_said(record)}. Source: {record.citation}.",
        figures=tuple(known[field.name] for field in figures),
        heaps=tuple(tuple(known[field.name] for field in row) for row in heaps),
        faults=listed,
        rev=head.rev,
    )
    return Shown(page="covering", title="Covering", context=context, job=head, status=422 if faults else 200)
