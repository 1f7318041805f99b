"""Battens: what comes back."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.battens import BattenSection


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """One unbroken batten line from end to end, and its pieces left to right.

    ``ends_mm``     its two ends on the slope, on the line of the top edge (at a hip or valley, the longer edge's end)
    ``stops_at``    what it stops at, left and right
    ``joints``      the number of each rafter it is joined on, from 1 at the left; ``joints_mm`` where that is on the slope
    ``pieces_mm``   the length of each piece, whole millimetres up: trim to meet central over the rafter
    ``supports``    how many supports each piece rests on
    """

    ends_mm: tuple[Point, Point]
    stops_at: tuple[EdgeKind, EdgeKind]
    joints: tuple[int, ...]
    joints_mm: tuple[Point, ...]
    pieces_mm: tuple[int, ...]
    supports: tuple[int, ...]
    crossed: tuple[int, ...]
    """The number of every rafter it crosses."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenLine:
    """One batten of the slope, from the eaves up. ``letter`` names its joints: lines with the same letter are joined on the
    same rafters; empty where it has none.
    """

    name: str
    letter: str
    stretches: tuple[Stretch, ...]


class Arrangement(StrEnum):
    """How the joints are arranged.

    ``repeating``  a pattern of courses that repeats
    ``by-course``  chosen course by course
    ``none``       nothing keeps every rule, or nothing was found that does
    """

    REPEATING = "repeating"
    BY_COURSE = "by-course"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxed:
    """A plan on offer where no strict one exists: what changes, what it breaks and by how much, what it would buy."""

    change: str
    breaks: str
    keeps_rules: bool
    bought_mm: int
    lengths_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeBattens:
    """The battens of one slope.

    ``rafters_mm``     the middle of every rafter along the eaves; number 1 is the first
    ``section``        the least section; None where the rafters are off the table: the lines are then measured at the top
                       edge only
    ``repeats_every``  after how many courses the pattern repeats; None where it does not
    """

    where: str
    rafters_mm: tuple[float, ...]
    section: BattenSection | None
    arrangement: Arrangement
    repeats_every: int | None
    why: str
    lines: tuple[BattenLine, ...]
    relaxed: tuple[Relaxed, ...]
    net_mm: int
    """The batten that goes on this slope, before ends are trimmed in place."""
    crossings_count: int
    joints_count: int
    counter_battens: "CounterBattens | None"


@dataclass(frozen=True, slots=True, kw_only=True)
class CounterBattens:
    """Counter-battens of one slope: one up each rafter."""

    length_mm: float
    fixings_count: int
    centres_mm: float
    citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class CutGroup:
    """So many stock lengths, all cut alike: the pieces longest first, and what is left of each."""

    count: int
    stock_mm: int
    pieces_mm: tuple[int, ...]
    left_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedPiece:
    """One piece and where it goes: the slope, the batten, and which piece of it from the left."""

    length_mm: int
    where: str
    batten: str
    piece: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnLength:
    """One stock length and the pieces sawn from it, longest first, each with its place; and what is left."""

    stock_mm: int
    pieces: tuple[PlacedPiece, ...]
    left_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Bought:
    """How many of one stock length to buy."""

    stock_mm: int
    count: int


class Proof(StrEnum):
    """What is known of the plan.

    ``least``            no plan of any kind buys fewer metres
    ``least-repeating``  no pattern of courses that repeats, with so many pieces to a course, buys less
    ``found``            the least that was found
    """

    LEAST = "least"
    LEAST_REPEATING = "least-repeating"
    FOUND = "found"


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingList:
    """What to buy and how to cut it, for all the slopes together.

    ``groups`` lengths cut alike; ``net_mm`` what is laid; ``bought_mm`` what is bought; ``offcuts_used_count`` pieces cut
    from what another piece left.
    """

    buy: tuple[Bought, ...]
    groups: tuple[CutGroup, ...]
    sawn: tuple[SawnLength, ...]
    """Every length by itself, in the order of the groups: for slopes where the battens differ."""
    net_mm: int
    bought_mm: int
    lengths_count: int
    offcuts_used_count: int
    proof: Proof
    proof_says: str

    @property
    def waste_ratio(self) -> float:
        """What is bought and not laid, over what is laid."""
        return (self.bought_mm - self.net_mm) / self.net_mm if self.net_mm else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Nails:
    """The nails of one kind. ``mass_kg`` is that of their shanks, heads not counted."""

    what: str
    length_mm: float
    shank_mm: float
    count: int
    mass_kg: float
    length_citation: Citation
    mass_citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class Battens:
    """The answer."""

    slopes: tuple[SlopeBattens, ...]
    cutting: CuttingList
    nails: tuple[Nails, ...]
    findings: tuple[Finding, ...]
    method: tuple[str, ...]
    working: Step
