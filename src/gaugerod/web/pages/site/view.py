"""The job itself: what it is called, how much driving rain the site gets, and the units it is marked in."""

from typing import Any

from gaugerod.basis.errors import Fault
from gaugerod.basis.lengths import LengthUnit
from gaugerod.standards.edition import Exposure
from gaugerod.web.asked import Asked
from gaugerod.web.form import Choice, Field, placed, table_of, typed, under_path, with_keys
from gaugerod.web.job_answer import faults_at_the_door
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.site.context import SiteContext
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services

_UNITS = {
    LengthUnit.MM: "millimetres",
    LengthUnit.CM: "centimetres",
    LengthUnit.M: "metres",
    LengthUnit.FT_IN: "feet and inches",
}
_TYPED = ("title", "exposure", "show_lengths_in")


def site_view(services: Services, asked: Asked) -> Reply:
    """Show the site, or save it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        return _shown(table_of(newest.document, "job"), (), head)
    base = base_of(asked, newest, services)
    table = with_keys(table_of(base.document, "job"), {name: typed(asked.form, name) for name in _TYPED})
    document = {**base.document, "job": table}
    faults = under_path(faults_at_the_door(document), *(f"job.{name}" for name in _TYPED))
    if faults:
        return _shown(table, faults, JobHead(id=head.id, title=head.title, rev=base.rev))
    following = "covering" if document.get("slope") or document.get("building") else "slopes"
    return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/{following}")


def _shown(table: dict[str, Any], faults: tuple[Fault, ...], head: JobHead) -> Shown:
    fields, listed = placed(_fields(table), faults, under="job")
    context = SiteContext(fields=fields, faults=listed, rev=head.rev)
    return Shown(page="site", title="Site", context=context, job=head, status=422 if faults else 200)


def _fields(table: dict[str, Any]) -> tuple[Field, ...]:
    exposures = (
        Choice(value="", label="choose"),
        *(Choice(value=each.value, label=each.value.replace("-", " ")) for each in Exposure),
    )
    units = tuple(Choice(value=unit.value, label=words) for unit, words in _UNITS.items())
    return (
        Field(name="title", label="Title of the job", value=str(table.get("title", "")),
              hint="It heads every sheet: the address, and which part of the roof.", length=False),
        Field(name="exposure", label="Driving rain at the site", value=str(table.get("exposure", "")), choices=exposures,
              hint="Look the site up on the map of driving rain in your code. Hilltops and coasts get more."),
        Field(name="show_lengths_in", label="Show and mark lengths in", value=str(table.get("show_lengths_in", "mm")),
              choices=units, hint="You may type lengths in any unit, whatever is chosen here."),
    )  # fmt: skip
