"""What the page of the order shows."""

from dataclasses import dataclass

from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import PartShown
from gaugerod.web.form import FaultShown
from gaugerod.web.job_answer import Lack
from gaugerod.web.pages.beneath.context import AlarmShown
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.sheets.context import Download
from gaugerod.web.parts_asked import PartAsked


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShown:
    """A line of a table of the order as a phone can read it: what, its figures under their headings, and how it was come by.

    ``item``  the name that packs and price lists speak of it by; empty: it has none
    """

    what: str
    item: str
    numbers: tuple[tuple[str, str], ...]
    says: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesShown:
    """A heading with its lines, and what is said of them."""

    heading: str
    lines: tuple[LineShown, ...]
    says: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """The order: what it leaves out first, then line by line, the two ways of counting, masses, cautions, and sources."""

    alarms: tuple[AlarmShown, ...]
    figures: tuple[Figure, ...]
    lines: tuple[LinesShown, ...]
    compared: LinesShown | None
    masses: PartShown | None
    behind: tuple[PartShown, ...]
    cautions: tuple[str, ...]
    outside: tuple[FindingRow, ...]
    not_covered: tuple[FindingRow, ...]
    within: tuple[FindingRow, ...]
    outside_elsewhere_count: int
    """Findings outside a rule in what the order is counted from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderContext:
    """The form, the order, and its files."""

    asked: PartAsked
    rev: int
    faults: tuple[FaultShown, ...]
    """What kept the form from being saved."""
    to_say: tuple[FaultShown, ...]
    answered: Answered | None
    """None: the job cannot be set out, or nothing was laid."""
    downloads: tuple[Download, ...]
    lacks: tuple[Lack, ...]
