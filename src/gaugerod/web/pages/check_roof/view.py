"""Checking a roof as built: what is typed is checked as it comes; kept in the roof file, which a person takes along."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from gaugerod.basis.errors import Fault, InputRefused, NotKept
from gaugerod.job.cautions import CAUTIONS
from gaugerod.sheets.roof_check_words import NOT_LOOKED_AT
from gaugerod.sheets.sheet import PaperSize
from gaugerod.web.asked import Asked
from gaugerod.web.form import FaultShown, Field, fault_said, list_of, placed
from gaugerod.web.keeping import opened
from gaugerod.web.pages.check_roof.checking import Checked, checked
from gaugerod.web.pages.check_roof.context import CheckRoofContext, RodFields, SlopeToBegin
from gaugerod.web.pages.check_roof.form import (
    covering_fields,
    end_fields,
    figure_fields,
    on_the_form,
    pitch_group,
    rod_groups,
    slope_fields,
)
from gaugerod.web.pages.check_roof.found import FILE, found_of
from gaugerod.web.pages.check_roof.from_job import FRESH, roof_of_job, slopes_to_begin
from gaugerod.web.pages.check_roof.values import Values, document_of, values_of
from gaugerod.web.place_said import place_said
from gaugerod.web.reply import JobHead, Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import document_of_file, one_roof_check_file, roof_from_document

TITLE = "Check a roof"
_KINDS = {"pdf": "application/pdf", "svg": "image/svg+xml", "json": "application/json"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the check stands: in a job, or by itself."""

    head: JobHead | None = None
    begin_from: tuple[SlopeToBegin, ...] = ()


def check_roof_view(services: Services, asked: Asked) -> Reply:
    """Show the form, check what is typed, give a file of it, or bring one in."""
    place = Place()
    document = FRESH
    if "job" in asked.at:
        newest, head = opened(services, asked)
        place = Place(head=head, begin_from=slopes_to_begin(newest.document, job=head.id))
        document = FRESH if asked.posted else roof_of_job(newest.document, slope=_slope(asked, newest.document))
    if asked.posted:
        return _posted(services, asked, place)
    values = values_of(document)
    measured = any("marks" in rod for rod in list_of(document, "rod"))
    return _shown(values, place, checked(values) if measured else Checked())


def _posted(services: Services, asked: Asked, place: Place) -> Reply:
    values = dict(asked.form)
    if asked.part:
        return _shown(values, place, checked(values), typing=True)
    match asked.form.get("do", ""):
        case "bring-in":
            return _brought_in(asked, place)
        case "another-rod":
            return _shown(values, place, Checked(), more=True)
        case "keep":
            return _roof_file(values)
        case do if do.startswith(FILE):
            return _file(services, values, place, name=do.removeprefix(FILE))
        case _:
            return _shown(values, place, checked(values))


def _slope(asked: Asked, document: Mapping[str, Any]) -> int:
    """Which slope of the job, counted from 0. Raises NotKept when there is none of that number."""
    number = asked.query.get("slope", "1")
    if number == "1" or (
        number.isascii() and number.isdigit() and 1 <= int(number[:5]) <= len(list_of(document, "slope"))
    ):
        return int(number[:5]) - 1
    raise NotKept(f"slope {number[:20]}")


def _brought_in(asked: Asked, place: Place) -> Reply:
    """A roof file put into the form; what the form cannot show is refused before anything typed is given up for it."""
    as_it_was = dict(asked.form)
    try:
        document = document_of_file(asked.files.get("file", b""))
    except InputRefused as refused:
        return _shown(as_it_was, place, Checked(), besides=_listed(refused.faults))
    values = values_of(document)
    try:
        roof_from_document(document)
    except InputRefused as refused:
        _, out_of_reach = _placed(values, refused.faults, more=False)
        lost = tuple(fault for fault in out_of_reach if not fault.field_id)
        if lost:
            return _shown(as_it_was, place, Checked(), besides=lost)
    return _shown(values, place, checked(values))


def _listed(faults: tuple[Fault, ...]) -> tuple[FaultShown, ...]:
    return tuple(FaultShown(says=f"{place_said(fault.field)}: {fault_said(fault)}") for fault in faults[:20])


def _roof_file(values: Mapping[str, str]) -> Sent:
    """What is typed, whether it can be checked or not."""
    document, _ = document_of(values)
    content = (json.dumps(document, indent=2, ensure_ascii=False) + "\n").encode("utf-8", errors="replace")
    return Sent(content=content, kind="application/json", name="roof.json")


def _file(services: Services, values: Values, place: Place, *, name: str) -> Reply:
    done = checked(values)
    if done.roof is None or done.check is None:
        return _shown(values, place, done)
    roof, check = done.roof, done.check
    paper = values.get("paper", "")
    content = one_roof_check_file(
        check,
        title=roof.title,
        unit=roof.show_lengths_in,
        name=name,
        paper=paper if paper in set(PaperSize) else PaperSize.A4.value,
        made_at=services.now(),
    )
    if content is None:
        raise NotKept(f"file {name[:60]}")
    return Sent(content=content, kind=_KINDS[name.rpartition(".")[2]], name=name)


def _placed(
    values: Mapping[str, str], faults: tuple[Fault, ...], *, more: bool
) -> tuple[dict[str, Field], tuple[FaultShown, ...]]:
    """Every field by its name, with its faults beside it, and the list of all faults."""
    groups = [
        slope_fields(values),
        pitch_group(values),
        covering_fields(values),
        figure_fields(values),
        end_fields(values),
    ]
    every = [field for group in groups for field in group]
    for rod in rod_groups(values, more=more):
        every += [*rod.fields, rod.measured]
    fields, listed = placed(every, on_the_form(faults))
    return {field.name: field for field in fields}, listed


def _shown(
    values: Mapping[str, str],
    place: Place,
    done: Checked,
    *,
    typing: bool = False,
    more: bool = False,
    besides: tuple[FaultShown, ...] = (),
) -> Shown:
    known, listed = _placed(values, () if typing else done.faults, more=more)
    lacking = _placed(values, done.faults, more=more)[1] if typing else ()

    def group(fields: tuple[Field, ...]) -> tuple[Field, ...]:
        return tuple(known[field.name] for field in fields)

    figures, ends = group(figure_fields(values)), group(end_fields(values))
    stopped = (FaultShown(says=done.why),) if done.why and not typing else ()
    faults = (*besides, *listed, *stopped)
    context = CheckRoofContext(
        slope=group(slope_fields(values)),
        pitch=group(pitch_group(values)),
        covering=group(covering_fields(values)),
        figures=figures,
        figures_open=_any_given(figures),
        ends=ends,
        ends_open=_any_given(ends),
        rods=tuple(
            RodFields(number=rod.number, fields=group(rod.fields), measured=known[rod.measured.name])
            for rod in rod_groups(values, more=more)
        ),
        also=values.get("also", ""),
        begin_from=tuple(replace(each, here=each.name == values.get("name")) for each in place.begin_from),
        faults=faults,
        lacking=(*(fault.says for fault in lacking), *((done.why,) if typing and done.why else ())),
        found=None if done.roof is None or done.check is None else found_of(done.roof, done.check),
        not_looked_at=NOT_LOOKED_AT,
        cautions=CAUTIONS,
    )
    return Shown(page="check_roof", title=TITLE, context=context, job=place.head, status=422 if faults else 200)


def _any_given(fields: tuple[Field, ...]) -> bool:
    return any(field.value.strip() or field.faults for field in fields)
