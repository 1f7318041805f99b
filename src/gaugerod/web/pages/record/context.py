"""What the page of the record shows."""

from dataclasses import dataclass

from gaugerod.web.form import FaultShown, Field
from gaugerod.web.job_answer import Lack
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.parts_asked import PartAsked


@dataclass(frozen=True, slots=True, kw_only=True)
class ToAccept:
    """Something outside a rule, with every place it is true of; who accepted it, or the form to say so.

    ``number``  its place in the list, by which the form names it
    ``fields``  what is asked to accept it; empty: it is accepted
    """

    number: int
    row: FindingRow
    accepted: str
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordContext:
    """The form, what is outside a rule, and the record itself."""

    asked: PartAsked
    rev: int
    faults: tuple[FaultShown, ...]
    outside: tuple[ToAccept, ...]
    not_accepted_count: int
    not_covered_count: int
    within_count: int
    sheet: str
    """Where the record is; empty: nothing is set out, so there is none."""
    lacks: tuple[Lack, ...]
