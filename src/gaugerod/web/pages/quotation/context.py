"""What the page of the quotation shows."""

from dataclasses import dataclass

from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import PartShown
from gaugerod.web.form import FaultShown
from gaugerod.web.job_answer import Lack
from gaugerod.web.pages.beneath.context import AlarmShown
from gaugerod.web.pages.order.context import LinesShown


@dataclass(frozen=True, slots=True, kw_only=True)
class FileAsked:
    """A file that can be asked for, with the prices in it: its name, its kind, and what it is."""

    name: str
    kind: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Priced:
    """The job in money: what is in no total first, then the figures, every line, and the total.

    ``prices``    the list as it was sent: it travels with the page, and is kept nowhere
    ``not_used``  prices and rates of the list that nothing asks for
    """

    alarms: tuple[AlarmShown, ...]
    figures: tuple[Figure, ...]
    lines: tuple[LinesShown, ...]
    total: PartShown | None
    not_used: tuple[str, ...]
    files: tuple[FileAsked, ...]
    prices: str


@dataclass(frozen=True, slots=True, kw_only=True)
class QuotationContext:
    """The list asked for, and what it comes to. ``blank`` is where the list to fill in is; empty: nothing to price."""

    blank: str
    faults: tuple[FaultShown, ...]
    """Why the list cannot be read."""
    more_faults_count: int
    """How many more there are than are listed."""
    priced: Priced | None
    lacks: tuple[Lack, ...]
