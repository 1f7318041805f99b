"""A kept job set out, or what it still lacks."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gaugerod.adapters.job_file.double_lap_record import RANDOM
from gaugerod.basis.errors import Fault, GaugerodError, InputRefused
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.model import Job
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.web.form import fault_said, table_of
from gaugerod.web.place_said import place_said
from gaugerod.wiring import job_from_document

BENEATH = ("battens", "underlay", "ventilation", "fixings", "load")
"""The tables of what lies beneath the covering."""
AFTER_THE_MARKS = (*BENEATH, "edges", "order", "record")
"""The tables of everything that follows the marks, and moves none of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lack:
    """Something to be done before the job can be set out, and the page to do it on."""

    says: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The result; or every fault of the document; or the reason why there is no answer."""

    job: Job | None = None
    result: Result | None = None
    faults: tuple[Fault, ...] = ()
    why: str = ""


def answer_of(document: dict[str, Any]) -> Answer:
    """Set the document out."""
    job = None
    try:
        job = job_from_document(document)
        return Answer(job=job, result=set_out(job))
    except InputRefused as refused:
        return Answer(job=job, faults=refused.faults)
    except GaugerodError as error:
        return Answer(job=job, why=str(error))


def marks_alone(document: Mapping[str, Any]) -> dict[str, Any]:
    """The document without what follows the marks: the setting out alone is answered sooner, whatever is amiss there."""
    return {key: value for key, value in document.items() if key not in AFTER_THE_MARKS}


def faults_at_the_door(document: dict[str, Any]) -> tuple[Fault, ...]:
    """Every fault of the document, without setting it out."""
    try:
        job_from_document(document)
    except InputRefused as refused:
        return refused.faults
    return ()


def unit_of(document: Mapping[str, Any]) -> LengthUnit:
    """The unit lengths are shown in; millimetres while it cannot be read."""
    given = table_of(document, "job").get("show_lengths_in")
    return LengthUnit(given) if isinstance(given, str) and given in set(LengthUnit) else LengthUnit.MM


def lacks(document: Mapping[str, Any], answer: Answer, *, job: str) -> tuple[Lack, ...]:
    """What is still to be done, in the order of the work."""
    found: list[Lack] = []
    if not document.get("slope") and not document.get("building"):
        found.append(Lack(says="Measure a slope, or draw the building.", href=f"/jobs/{job}/slopes"))
    if not document.get("covering"):
        found.append(Lack(says="Choose the covering, or measure your own.", href=f"/jobs/{job}/covering"))
    missing = {"slope", "building", "covering"} - {
        key for key in ("slope", "building", "covering") if document.get(key)
    }
    found += [
        Lack(says=_lack_said(fault), href=_page_of(fault.field, job))
        for fault in answer.faults
        if fault.field not in missing
    ]
    if answer.why:
        # What has no answer is a roof that stays open or asks: with one building it is that one's.
        buildings = document.get("building")
        page = "buildings/1" if isinstance(buildings, list) and len(buildings) == 1 else "slopes"
        if table_of(document, "covering").get("from") == RANDOM and not buildings:
            page = "set-out"
        found.append(Lack(says=f"{answer.why[:1].upper()}{answer.why[1:]}", href=f"/jobs/{job}/{page}"))
    return tuple(found)


def _lack_said(fault: Fault) -> str:
    place = place_said(fault.field)
    return f"{place[:1].upper()}{place[1:]}: {fault_said(fault)}"


def _page_of(field: str, job: str) -> str:
    """The page on which this field is mended."""
    part, _, rest = field.partition("[")
    number = rest.partition("]")[0]
    table = part.partition(".")[0]
    if number.isdigit() and table in _LISTED:
        return f"/jobs/{job}/{_LISTED[table]}/{int(number) + 1}"
    return f"/jobs/{job}/{_PAGE_OF.get(table, 'slopes')}"


_LISTED = {"slope": "slopes", "building": "buildings"}
_PAGE_OF = {
    "job": "site",
    "file": "site",
    "covering": "covering",
    "set_out": "set-out",
    "edges": "edges",
    "order": "order",
    "record": "record",
    **dict.fromkeys(BENEATH, "beneath"),
}
