"""What the page of battens, underlay, air, fixings and masses shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import PartShown
from gaugerod.web.form import Choice, FaultShown
from gaugerod.web.job_answer import Lack
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.parts_asked import PartAsked


@dataclass(frozen=True, slots=True, kw_only=True)
class AlarmShown:
    """What is read before anything else of a plan."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingShown:
    """A drawing for a desk and for a phone, with its caption."""

    wide: Markup
    pocket: Markup
    caption: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanShown:
    """One sheet as the page shows it: figures and drawings first, its tables to open."""

    heading: str
    alarms: tuple[AlarmShown, ...]
    figures: tuple[Figure, ...]
    says: tuple[str, ...]
    drawings: tuple[DrawingShown, ...]
    parts: tuple[PartShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RowShown:
    """A row of a wide table as a phone can read it: what it is of, its numbers under their headings, and the source."""

    title: str
    numbers: tuple[tuple[str, str], ...]
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RowsShown:
    """A heading with what is said under it, and the rows of the slope chosen."""

    heading: str
    says: tuple[str, ...]
    rows: tuple[RowShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The answer: what to order; plans, air and masses of the slope chosen; the cutting lists of the whole job.

    ``setting_out_outside_count``  findings outside a rule above the battens: this page judges only what lies beneath
    ``not_set_out``                slopes that could not be set out, and so have nothing beneath
    """

    order: tuple[PartShown, ...]
    of_slope: tuple[PlanShown, ...]
    rows: tuple[RowsShown, ...]
    to_cut: tuple[PlanShown, ...]
    cautions: tuple[str, ...]
    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    finding_parts: tuple[str, ...]
    setting_out_outside_count: int
    not_set_out: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BeneathContext:
    """The form, and what it answers."""

    asked: tuple[PartAsked, ...]
    slopes: tuple[Choice, ...]
    slope: str
    rev: int
    faults: tuple[FaultShown, ...]
    """What kept the form from being saved."""
    to_say: tuple[FaultShown, ...]
    """What the parts switched on still lack; the others are answered all the same."""
    answered: Answered | None
    """None: nothing is switched on, or the job cannot be set out."""
    lacks: tuple[Lack, ...]
