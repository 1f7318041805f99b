"""How the edges are made: asked of those this roof has, answered while it is typed."""

from typing import Any

from gaugerod.basis.errors import Fault
from gaugerod.edges.ask import LineKind
from gaugerod.job.result import Result
from gaugerod.web.asked import Asked
from gaugerod.web.form import placed, table_of, under_path, with_keys
from gaugerod.web.job_answer import Answer, answer_of, faults_at_the_door, lacks
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.edges.context import EdgesContext
from gaugerod.web.pages.edges.edges_shown import answered
from gaugerod.web.pages.edges.openings import openings_asked, with_openings
from gaugerod.web.pages.edges.questions import parts_for
from gaugerod.web.parts_asked import (
    Tables,
    as_asked,
    asked_with_faults,
    parts_asked,
    switched_on,
    tables_of,
    tables_typed,
    with_tables,
)
from gaugerod.web.questions import PartQuestions
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services


def edges_view(services: Services, asked: Asked) -> Reply:
    """Show what is asked and its answer, answer what is typed, or save it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        return _shown(newest.document, None, head)
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    # Which edges a roof has does not depend on how they are made; what the form left out stays as it was.
    every = parts_for(base.document, frozenset(LineKind))
    parts = tuple(as_asked(part, asked.form) for part in every if asked.form.get(f"asked_{part.key}") == "yes")
    tables, on = tables_typed(asked.form, parts, base=base.document), switched_on(asked.form, parts)
    document = with_openings(with_tables(base.document, tables, on, parts), asked.form)
    saves = asked.form.get("do") == "save" and not asked.part
    if saves and not _faults(document):
        return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/edges")
    return _shown(document, (tables, on), head, saves=saves)


def _faults(document: dict[str, Any]) -> tuple[Fault, ...]:
    names = (field.name for field in openings_asked(document))
    return under_path(faults_at_the_door(document), "edges", *names)


def _shown(
    document: dict[str, Any], typed: tuple[Tables, frozenset[str]] | None, head: JobHead, *, saves: bool = False
) -> Shown:
    """The page of this document; ``typed`` holds the parts switched off as well, so that nothing typed is lost."""
    faults = _faults(document)
    answer = _answer(document, faults)
    result = answer.result
    parts = _parts(document, result, () if typed is None else tuple(typed[0]))
    kept_tables = tables_of(document, parts)
    tables, on = (kept_tables, frozenset(kept_tables)) if typed is None else (kept_tables | typed[0], typed[1])
    openings, of_openings = placed(openings_asked(document), [each for each in faults if _of_opening(each)])
    asked, of_parts = asked_with_faults(
        parts_asked(tables, on, parts), [each for each in faults if not _of_opening(each)]
    )
    listed = (*of_parts, *of_openings)
    context = EdgesContext(
        asked=asked,
        openings=openings,
        rev=head.rev,
        faults=listed if saves else (),
        to_say=listed,
        answered=None if result is None or result.edges is None else answered(result, result.edges, job=head.id),
        lacks=() if result is not None else lacks(document, answer, job=head.id),
    )
    return Shown(page="edges", title="Edges", context=context, job=head, status=422 if saves else 200)


def _of_opening(fault: Fault) -> bool:
    return fault.field.startswith("slope")


def _parts(document: dict[str, Any], result: Result | None, typed_keys: tuple[str, ...]) -> tuple[PartQuestions, ...]:
    """The parts of this roof; every part while it is not known, or was asked already."""
    lines = () if result is None or result.edges is None else result.edges.edges
    kinds = frozenset(edge.line.kind for edge in lines if edge.line is not None) or frozenset(LineKind)
    asked = parts_for(document, kinds)
    keys = {part.key for part in asked}
    every = parts_for(document, frozenset(LineKind))
    known = {part.key: part for part in (*every, *asked)}
    return tuple(known[part.key] for part in every if part.key in keys or part.key in typed_keys)


def _answer(document: dict[str, Any], faults: tuple[Fault, ...]) -> Answer:
    """The job set out with the edges that can be read; those with a fault wait until it is mended."""
    edges = table_of(document, "edges")
    sound = {key: table for key, table in edges.items() if not under_path(faults, f"edges.{key}")}
    document = with_keys(document, {"edges": sound or None})
    wrong = {fault.field: "" for fault in faults if _of_opening(fault)}
    return answer_of(with_openings(document, wrong))
