"""Measuring one slope: the drawing dimensions itself while the tape is read out."""

from typing import Any

from gaugerod.adapters.store.records import Revision
from gaugerod.basis.errors import Fault, NotKept
from gaugerod.web.asked import Asked
from gaugerod.web.form import list_of, placed, under_path
from gaugerod.web.job_answer import faults_at_the_door, unit_of
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.slope.context import SlopeContext
from gaugerod.web.pages.slope.form import (
    edge_fields,
    named_fields,
    opening_fields,
    pitch_group,
    rafter_fields,
    slope_typed,
    square_fields,
    tape_fields,
    unclear_rafters,
)
from gaugerod.web.pages.slope.taped_so_far import taped_so_far, unread_lengths
from gaugerod.web.pitch_ways import PitchBy, pitch_way
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services

NEW = "new"


def slope_view(services: Services, asked: Asked) -> Reply:
    """Show the slope, redraw it, or save it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        index = _index(newest, asked)
        table = {} if index is None else _table(newest, index)
        return _shown(table, newest, head, index=index, by=None)
    base = base_of(asked, newest, services)
    index = _index(base, asked)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    table = slope_typed(asked.form, base={} if index is None else _table(base, index))
    by = pitch_way(asked.form)
    match asked.form.get("do"):
        case "another-opening" | "another-rafter" as more if not asked.part:
            return _shown(table, base, head, index=index, by=by, more=more == "another-opening")
        case "take-out" if index is not None and not asked.part:
            return _taken_out(services, asked, base, index)
    if asked.part:
        return _shown(table, base, head, index=index, by=by)
    slopes = list_of(base.document, "slope")
    at = len(slopes) if index is None else index
    slopes[at : at + 1] = [table]
    document = {**base.document, "slope": slopes}
    unclear = () if isinstance(table.get("outline"), list) else unclear_rafters(asked.form, under=f"slope[{at}]")
    faults = (*unclear, *under_path(faults_at_the_door(document), f"slope[{at}]"))
    if faults:
        return _shown(table, base, head, index=index, by=by, faults=faults)
    if asked.form.get("do") == "save-and-next":
        following = f"slopes/{NEW}"
    else:
        following = "set-out" if document.get("covering") else "covering"
    return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/{following}")


def _index(revision: Revision, asked: Asked) -> int | None:
    """Which slope of the document; None for a new one. Raises NotKept when there is none of that number."""
    number = asked.at["slope"]
    if number == NEW:
        return None
    slopes = list_of(revision.document, "slope")
    if number.isascii() and number.isdigit() and len(number) < 5 and 1 <= int(number) <= len(slopes):
        return int(number) - 1
    raise NotKept(f"slope {number[:20]}")


def _table(revision: Revision, index: int) -> dict[str, Any]:
    table = list_of(revision.document, "slope")[index]
    return dict(table) if isinstance(table, dict) else {}


def _taken_out(services: Services, asked: Asked, base: Revision, index: int) -> Reply:
    slopes = list_of(base.document, "slope")
    del slopes[index]
    document = {**base.document, "slope": slopes}
    if not slopes:
        del document["slope"]
    return kept(services, asked, base, document, go_to=f"/jobs/{base.job}/slopes")


def _shown(
    table: dict[str, Any],
    revision: Revision,
    head: JobHead,
    *,
    index: int | None,
    by: PitchBy | None,
    faults: tuple[Fault, ...] = (),
    more: bool = False,
) -> Shown:
    at = len(list_of(revision.document, "slope")) if index is None else index
    by_outline = isinstance(table.get("outline"), list)
    groups = [named_fields(table), pitch_group(table, by), edge_fields(table), tape_fields(table), square_fields(table)]
    rafters, openings = rafter_fields(table), opening_fields(table, more=more)
    every = [field for group in groups for field in group]
    every += [field for row in rafters for field in row] + [field for each in openings for field in each.fields]
    with_faults, listed = placed(every, faults, under=f"slope[{at}]")
    known = {field.name: field for field in with_faults}
    named, pitch, edges, tape, square = (tuple(known[field.name] for field in group) for group in groups)
    context = SlopeContext(
        number=None if index is None else index + 1,
        rev=head.rev,
        named=named,
        pitch=pitch,
        edges=edges,
        tape=tape,
        rafters=tuple((known[length.name], known[place.name]) for length, place in rafters),
        square=square,
        openings=tuple(
            type(each)(letter=each.letter, fields=tuple(known[field.name] for field in each.fields))
            for each in openings
        ),
        by_outline=by_outline,
        faults=listed,
        taped=None if by_outline else taped_so_far(table, unit=unit_of(revision.document)),
        unread=() if by_outline else unread_lengths(table),
    )
    title = "Measure a slope" if index is None else f"Slope {table.get('name', index + 1)}"
    return Shown(page="slope", title=title, context=context, job=head, status=422 if faults else 200)
