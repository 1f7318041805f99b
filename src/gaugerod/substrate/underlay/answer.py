"""The underlay of one slope: every run, lap and strip in its place, and the pieces to cut from the rolls."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Edge
from gaugerod.substrate.underlay.ask import LapRemedy

Span = tuple[float, float]
"""From the left to the right, x in mm along the eaves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeReach:
    """How far the underlay goes past an edge of the roof structure, square to it; below nothing where it stops short.

    ``does`` says what it does there, in the imperative.
    """

    edge: Edge
    past_mm: float
    does: str
    citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One run of underlay: ``number`` from the eaves up, its lower and upper edge, and the stretches it is laid over.

    ``high_mm`` is the roll's own edge; the top run is cut off at the reach of the slope.
    """

    number: int
    low_mm: float
    high_mm: float
    spans_mm: tuple[Span, ...]

    @property
    def length_mm(self) -> float:
        """All its stretches together, without side laps."""
        return sum(right - left for left, right in self.spans_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class LapOnBatten:
    """The lap lies under a batten. ``batten`` is counted from the eaves, 1 the first."""

    batten: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LapBetween:
    """The lap falls between battens: what each remedy would take, and the one taken.

    ``widened_mm``       the lap that reaches the next batten below; None: no batten is near enough
    ``extra_batten_mm``  top edge of an added batten, in the middle of the lap; None: the courses' own leave no room
    ``length_mm``        of that batten, or of the tape
    """

    remedy: LapRemedy
    widened_mm: float | None
    extra_batten_mm: float | None
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RunLap:
    """Where run ``upper`` laps run ``upper`` − 1. ``place`` None: the battens are not set out.

    ``low_mm``    lower edge of the upper run: the line to strike
    ``high_mm``   upper edge of the lower run
    ``least_mm``  the least lap
    """

    upper: int
    low_mm: float
    high_mm: float
    least_mm: float
    place: LapOnBatten | LapBetween | None

    @property
    def lap_mm(self) -> float:
        """The lap as laid."""
        return self.high_mm - self.low_mm

    @property
    def held(self) -> bool:
        """Is it held down, by a batten or by tape?"""
        return self.place is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class RemedyCost:
    """What the whole slope takes when every lap between battens gets this remedy, as far as it can.

    ``extra_batten_length_mm``, ``tape_length_mm``  end to end
    """

    remedy: LapRemedy
    runs_count: int
    laid_area_mm2: float
    extra_batten_length_mm: float
    tape_length_mm: float


class StripKind(StrEnum):
    """Strips laid before the runs."""

    EAVES_CARRIER = "eaves-carrier"
    VALLEY = "valley"


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A strip laid before the runs, along one edge. ``width_mm`` None: not known.

    ``elsewhere``  it is counted with the slope on the other side of the valley
    """

    kind: StripKind
    edge: Edge
    start_mm: Point
    end_mm: Point
    length_mm: float
    width_mm: float | None
    elsewhere: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """One stretch to be covered in one line from the rolls.

    ``breaks_mm``  the places, left to right, where a piece may end: the far edges of rafters. Each joint there costs a side
                   lap. Empty: one piece.
    """

    name: str
    from_mm: float
    to_mm: float
    breaks_mm: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlayPlan:
    """The answer for one slope. ``runs`` is empty where no lap could be told: a finding says why.

    ``reach_mm``     outline of the underlay, past the edges of the slope
    ``slope_area_mm2``  of the roof structure; ``reach_area_mm2`` of the underlay seen from above the slope, laps not counted
    ``demands``      what is to be cut from the rolls, for ``cut_rolls``
    ``remedies``     what each remedy for laps between battens would take; the first is the one taken
    ``wind_held``    is every lap held, so that the label's figures for held laps may be read?
    ``greatest_gap_mm``  between battens; None: not set out
    """

    where: str
    least_lap_mm: float | None
    edges: tuple[EdgeReach, ...]
    reach_mm: tuple[Point, ...]
    runs: tuple[Run, ...]
    laps: tuple[RunLap, ...]
    strips: tuple[Strip, ...]
    demands: tuple[Demand, ...]
    slope_area_mm2: float
    reach_area_mm2: float
    laid_area_mm2: float
    remedies: tuple[RemedyCost, ...]
    wind_held: bool
    greatest_gap_mm: float | None
    findings: tuple[Finding, ...]
    says: tuple[str, ...]
    working: Step
