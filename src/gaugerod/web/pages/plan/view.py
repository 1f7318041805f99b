"""A building by its outline: typed wall by wall or tapped corner by corner, the roof over it drawn along."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from gaugerod.adapters.store.records import Revision
from gaugerod.basis.errors import Fault, NotKept
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.closing_finding import closing_finding
from gaugerod.geometry.polygon import Point
from gaugerod.web.asked import Asked
from gaugerod.web.form import FaultShown, Field, list_of, placed, under_path
from gaugerod.web.job_answer import faults_at_the_door, unit_of
from gaugerod.web.keeping import base_of, head_of, kept, opened
from gaugerod.web.pages.plan.building_table import corner_order, outline_of_table, table_of_outline
from gaugerod.web.pages.plan.context import PlanContext, Said
from gaugerod.web.pages.plan.fields import (
    around_fields,
    faults_in_form,
    fields_of,
    named_field,
    named_in_full,
    pitch_group,
    wall_rows,
    with_fields,
)
from gaugerod.web.pages.plan.outline_typed import OutlineTyped, number_written, outline_of_form, points_written
from gaugerod.web.pages.plan.plan_shown import plan_shown
from gaugerod.web.pages.plan.roof_so_far import RoofSoFar, ask_shown, roof_shown, roof_so_far
from gaugerod.web.pages.plan.walked import Walk, walked, with_corners
from gaugerod.web.pages.plan.window import Window, window_typed
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services

NEW = "new"
_STRAIGHT = Field(name="straight", label="Closing")
_AT_A_WALL = re.compile(r"(after|drop)-([0-9]{1,3})")


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """What was typed, and what comes of it."""

    typed: OutlineTyped
    walk: Walk
    table: dict[str, Any]
    roof: RoofSoFar

    @property
    def corners(self) -> tuple[Point, ...]:
        """The outline as far as there is one: walked, or only tapped."""
        return self.typed.taps if self.walk.outline is None else self.walk.outline.corners_mm

    @property
    def closes(self) -> Finding | None:
        """Does the walk close? None as long as there is no walk."""
        outline = self.walk.outline
        return None if outline is None else closing_finding(outline, where=self.typed.name or "building")

    @property
    def walls(self) -> Sequence[int]:
        """Which typed wall stands where in the table."""
        count = len(self.typed.walls)
        return range(count)[::-1] if self.walk.turned_round else range(count)

    def faults(self, faults: Sequence[Fault]) -> tuple[Fault, ...]:
        """Faults of the walk, then those of the table, under the names of the form."""
        order = corner_order(len(self.typed.walls), turned=self.walk.turned_round)
        return (*self.walk.faults, *faults_in_form(faults, self.typed, walls=self.walls, corners=order))


def plan_view(services: Services, asked: Asked) -> Reply:
    """Show the building, redraw it, or save it."""
    newest, head = opened(services, asked)
    base = base_of(asked, newest, services) if asked.posted else newest
    index = _index(base, asked)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    table = {} if index is None else _table(base, index)
    if not asked.posted:
        return _shown(
            _answered(outline_of_table(table, unit=unit_of(base.document)), table, base), base, head, index=index
        )
    do = asked.form.get("do", "")
    if do == "take-out" and index is not None and not asked.part:
        return _taken_out(services, asked, base, index)
    before = window_typed(asked.form.get("window", "")) if do == "tapped" else None
    typed = _done(do, outline_of_form(asked.form), unit=unit_of(base.document))
    answered = _answered(typed, table, base)
    if asked.part or do != "save":
        return _shown(answered, base, head, index=index, before=before)
    return _saved(services, asked, answered, base, index=index)


def _saved(services: Services, asked: Asked, answered: Answered, base: Revision, *, index: int | None) -> Reply:
    buildings = list_of(base.document, "building")
    at = len(buildings) if index is None else index
    buildings[at : at + 1] = [answered.table]
    document = {**base.document, "building": buildings}
    under = f"building[{at}]"
    at_the_door = [
        replace(fault, field=fault.field.removeprefix(f"{under}."))
        for fault in under_path(faults_at_the_door(document), under)
    ]
    if answered.walk.outline is None:
        # The table still has the outline from before, or none: what is wrong with the walk is said instead.
        at_the_door = [fault for fault in at_the_door if not fault.field.startswith(("outline", "pitch"))]
    faults = (*answered.faults(at_the_door), *_misses(answered))
    if faults:
        return _shown(answered, base, head_of(base), index=index, faults=faults)
    following = "set-out" if document.get("covering") else "covering"
    return kept(services, asked, base, document, go_to=f"/jobs/{base.job}/{following}")


def _misses(answered: Answered) -> tuple[Fault, ...]:
    """An outline that misses its first corner is saved only when that was seen."""
    closes = answered.closes
    if closes is None or closes.verdict is not Verdict.OUTSIDE or answered.typed.straight:
        return ()
    do = (
        f"The walk misses its first corner by {closes.proposed:.1f} mm. Measure again; or tick that the last wall is "
        "drawn straight to the first corner."
    )
    return (Fault("straight", f"{closes.proposed:.1f} mm", f"a walk that closes to {closes.limit:g} mm", do),)


def _done(do: str, typed: OutlineTyped, *, unit: LengthUnit) -> OutlineTyped:
    """The building after what was asked to be done with its walls or corners."""
    if found := _AT_A_WALL.fullmatch(do):
        at = int(found[2])
        return typed.with_wall_after(at) if found[1] == "after" else typed.without_wall(at)
    match do:
        case "tapped":
            return with_corners(typed, typed.taps, unit=unit)
        case "untap":
            left = typed.taps[:-1]
            return with_corners(typed if len(left) >= 3 else typed.without_lengths(), left, unit=unit)
        case "clear":
            return OutlineTyped(
                name=typed.name, pitch=typed.pitch, pitch_by=typed.pitch_by, overhang=typed.overhang,
                verge_overhang=typed.verge_overhang, rafter_spacing=typed.rafter_spacing,
            )  # fmt: skip
        case _:
            return typed


def _answered(typed: OutlineTyped, table: dict[str, Any], base: Revision) -> Answered:
    walk = walked(typed)
    written = table_of_outline(typed, walk, base=table, unit=unit_of(base.document))
    # A building that has no name yet is drawn all the same.
    roof = RoofSoFar() if walk.outline is None else roof_so_far({"name": "building", **written})
    return Answered(typed=typed, walk=walk, table=written, roof=roof)


def _index(revision: Revision, asked: Asked) -> int | None:
    """Which building of the document; None for a new one. Raises NotKept when there is none of that number."""
    number = asked.at["building"]
    if number == NEW:
        return None
    buildings = list_of(revision.document, "building")
    if number.isascii() and number.isdigit() and len(number) < 5 and 1 <= int(number) <= len(buildings):
        return int(number) - 1
    raise NotKept(f"building {number[:20]}")


def _table(revision: Revision, index: int) -> dict[str, Any]:
    table = list_of(revision.document, "building")[index]
    return dict(table) if isinstance(table, dict) else {}


def _taken_out(services: Services, asked: Asked, base: Revision, index: int) -> Reply:
    buildings = list_of(base.document, "building")
    del buildings[index]
    document = {**base.document, "building": buildings}
    if not buildings:
        del document["building"]
    return kept(services, asked, base, document, go_to=f"/jobs/{base.job}/slopes")


def _shown(
    answered: Answered,
    revision: Revision,
    head: JobHead,
    *,
    index: int | None,
    faults: tuple[Fault, ...] = (),
    before: Window | None = None,
) -> Shown:
    typed, roof, unit = answered.typed, answered.roof, unit_of(revision.document)
    rows, named, pitch, around = wall_rows(typed), named_field(typed), pitch_group(typed), around_fields(typed)
    with_faults, _ = placed([named, *pitch, *around, *(field for row in rows for field in fields_of(row))], faults)
    in_full = [named, *pitch, *around, *(field for row in rows for field in named_in_full(row)), _STRAIGHT]
    _, listed = placed(in_full, faults)
    known = {field.name: field for field in with_faults}
    context = PlanContext(
        number=None if index is None else index + 1,
        rev=head.rev,
        named=known[named.name],
        pitch=tuple(known[field.name] for field in pitch),
        walls=tuple(with_fields(row, known) for row in rows),
        around=tuple(known[field.name] for field in around),
        faults=listed,
        start=points_written((typed.start_mm,)),
        way=number_written(typed.way_deg),
        corners=points_written(answered.corners),
        courtyards=_courtyards(answered.table),
        plan=plan_shown(typed, answered.corners, roof.form, before=before, unit=unit),
        closes=_closes(answered),
        straight=typed.straight,
        notes=_notes(answered),
        open_faults=_open_faults(answered, in_full),
        asks=None if roof.asks is None else ask_shown(roof.asks, answered.corners),
        cheeks=typed.cheeks,
        roof=None
        if roof.form is None
        else roof_shown(typed.name or "the building", roof.form, walls=answered.walls, unit=unit),
    )
    title = "Outline a building" if index is None else f"Building {typed.name or index + 1}"
    return Shown(page="plan", title=title, context=context, job=head, status=422 if faults else 200)


def _closes(answered: Answered) -> Said | None:
    closes = answered.closes
    if closes is None:
        return None
    match closes.verdict:
        case Verdict.WITHIN:
            short = f"● closes to {closes.proposed:.1f} mm"
        case Verdict.OUTSIDE:
            short = f"▲ misses its first corner by {closes.proposed:.1f} mm"
        case Verdict.NOT_COVERED:
            short = "◇ closed by itself, not checked"
    return Said(verdict=closes.verdict.value, says=closes.says, short=short)


def _notes(answered: Answered) -> tuple[str, ...]:
    notes = []
    if answered.walk.turned_round:
        notes.append(
            "You went round with the building on your right. It is saved the other way round, so its walls will be "
            "numbered anew."
        )
    if answered.roof.why:
        notes.append(answered.roof.why)
    return tuple(notes)


def _open_faults(answered: Answered, fields: Sequence[Field]) -> tuple[FaultShown, ...]:
    """What is in the way of the roof; silent about what nobody has typed yet."""
    begun = any(wall.length for wall in answered.typed.walls)
    if not begun:
        return ()
    _, listed = placed(fields, answered.faults(answered.roof.faults))
    return listed


def _courtyards(table: dict[str, Any]) -> str:
    count = len(list_of(table, "holes"))
    if not count:
        return ""
    return (
        f"{'A courtyard is' if count == 1 else f'{count} courtyards are'} kept as written: corners of a courtyard are "
        "changed in the job file."
    )
