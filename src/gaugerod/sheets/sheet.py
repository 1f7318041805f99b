"""A sheet is data: blocks in reading order. A writer turns it into pages."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.sheets.placed import Placed


class PaperSize(StrEnum):
    """The papers a sheet can be printed on, upright."""

    A4 = "a4"
    A3 = "a3"
    LETTER = "letter"

    @property
    def width_mm(self) -> float:
        """Across."""
        match self:
            case PaperSize.A4:
                return 210.0
            case PaperSize.A3:
                return 297.0
            case PaperSize.LETTER:
                return 215.9
            case _ as unreachable:
                assert_never(unreachable)

    @property
    def height_mm(self) -> float:
        """Down."""
        match self:
            case PaperSize.A4:
                return 297.0
            case PaperSize.A3:
                return 420.0
            case PaperSize.LETTER:
                return 279.4
            case _ as unreachable:
                assert_never(unreachable)

    @property
    def text_width_mm(self) -> float:
        """Between the side margins."""
        return self.width_mm - 2 * SIDE_MARGIN_MM

    @property
    def text_height_mm(self) -> float:
        """Between the top margin and the foot."""
        return self.height_mm - TOP_MARGIN_MM - BOTTOM_MARGIN_MM


SIDE_MARGIN_MM = 14.0
TOP_MARGIN_MM = 12.0
BOTTOM_MARGIN_MM = 18.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """A heading. Level 1 starts a slope, level 2 a part of it. ``kept_mm`` is the room it wants below it."""

    text: str
    level: int = 2
    kept_mm: float = 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One of the numbers read first: what it is, the number (one line for each rod that differs), and its bounds.

    ``wrong`` says in a word or two what is outside; empty when nothing is.
    """

    label: str
    values: tuple[str, ...]
    note: str = ""
    wrong: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """The numbers read first, side by side."""

    figures: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Alarm:
    """What is outside a rule, said before anything else."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """A paragraph."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictures:
    """Drawings at true size, side by side, each with its caption."""

    pictures: tuple[tuple[Placed, str], ...]


class ColumnKind(StrEnum):
    """How a column is set: words, small figures, a mark read at arm's length, or a box to tick."""

    WORDS = "words"
    FIGURES = "figures"
    MARK = "mark"
    TICK = "tick"


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column: its heading, kind, and its share of the width (0: as wide as its words)."""

    heading: str
    kind: ColumnKind = ColumnKind.WORDS
    share_ratio: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows under real headings. ``beside_count`` sets the rows out in that many tables side by side, read down
    then across; a heavier line follows every ``set_count`` rows (0: none), the first ``before_sets_count`` left out.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    beside_count: int = 1
    set_count: int = 0
    before_sets_count: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Steps:
    """What to do, in order."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bullets:
    """Things to know, in no order."""

    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NewPage:
    """What follows starts a page."""


Block = Heading | Figures | Alarm | Prose | Pictures | Table | Steps | Bullets | NewPage


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A document to print. ``foot`` runs along the bottom of every page; ``region`` is the
    country whose English it speaks.
    """

    title: str
    subtitle: str
    size: PaperSize
    foot: str
    region: str
    blocks: tuple[Block, ...]
