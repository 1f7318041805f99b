"""What the page of the edges shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.web.form import FaultShown, Field
from gaugerod.web.job_answer import Lack
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.parts_asked import PartAsked


@dataclass(frozen=True, slots=True, kw_only=True)
class TakesShown:
    """Something an edge takes: what and how much, and under it how it was come by and from which source."""

    what: str
    amount: str
    how: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeShown:
    """One edge or opening: its length, how it is made, its units, parts, and pieces of lead.

    ``made``  empty: it was not said, and only its length is told
    """

    name: str
    made: str
    numbers: tuple[tuple[str, str], ...]
    says: tuple[str, ...]
    parts: tuple[TakesShown, ...]
    lead: tuple[TakesShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionShown:
    """A section for a desk with its words, and for a phone with numbers: ``keys`` are the words they stand for, from 1."""

    wide: Markup
    pocket: Markup
    keys: tuple[tuple[str, str], ...]
    caption: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The answer. ``sheet`` is where the sheet of the edges is; empty: nothing is made yet, so there is none."""

    edges: tuple[EdgeShown, ...]
    drawings: tuple[SectionShown, ...]
    lead: str
    cautions: tuple[str, ...]
    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    not_set_out: tuple[str, ...]
    sheet: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgesContext:
    """The form, and what it answers."""

    asked: tuple[PartAsked, ...]
    openings: tuple[Field, ...]
    rev: int
    faults: tuple[FaultShown, ...]
    """What kept the form from being saved."""
    to_say: tuple[FaultShown, ...]
    """What the parts switched on still lack; the others are answered all the same."""
    answered: Answered | None
    """None: the job cannot be set out."""
    lacks: tuple[Lack, ...]
