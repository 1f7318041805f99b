"""Courses up the slope: what is asked, and what comes back."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.rounding import Division
from gaugerod.basis.working import Step
from gaugerod.setting_out.stations import NailedRod, Opening, Station


class Strategy(StrEnum):
    """How the courses meet a roof that is not true.

    ``equal``     every station in range with equal gauges, nothing moved
    ``fanned``    each station its own equal gauge; the last batten arrives parallel to the ridge
    ``flexed``    equal or fanned after moving overhang and ridge allowance inside their bands
    ``parallel``  battens parallel to the eaves, the taper taken in the top course
    ``carried-on`` kept battens first, the rest set out from the last of them
    ``diminishing`` random slates, longest at the eaves
    ``none``      nothing keeps every limit; see the alternatives
    """

    EQUAL = "equal"
    FANNED = "fanned"
    FLEXED = "flexed"
    PARALLEL = "parallel"
    CARRIED_ON = "carried-on"
    DIMINISHING = "diminishing"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class CoursesAsk:
    """All that the courses depend on. Lengths in mm along the slope.

    ``stations``            two or more, left to right
    ``hanging_length_mm``   nib face to tail
    ``head_to_nib_mm``      head of the unit to the nib face (length − hanging length)
    ``unit_length_mm``      head to tail, so headlap = unit length − gauge (single lap)
    ``gauge_min_mm``        least gauge; None when there is none
    ``gauge_max_mm``        greatest gauge
    ``overhang``            band for the tail past the fascia face, measured on the slope
    ``top``                 band for the top edge of the top batten below the apex, already narrowed
                            so that the ridge covers the top course by its lap
    ``ridge_lap_first``     where no mark falls inside ``top``: is the ridge's lap kept, and the clearance of the apex
                            given up, rather than the nearest mark taken?
    """

    where: str
    stations: tuple[Station, ...]
    unit_length_mm: float
    hanging_length_mm: float
    gauge_min_mm: float | None
    gauge_max_mm: float
    gauge_citation: Citation
    overhang: Band
    top: Band
    division: Division
    openings: tuple[Opening, ...] = ()
    nailed: tuple[NailedRod, ...] = ()
    ridge_lap_first: bool = False

    @property
    def head_to_nib_mm(self) -> float:
        """How far the head of a unit stands above the top edge of its batten."""
        return self.unit_length_mm - self.hanging_length_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """The gauge rod for one station: where every batten's top edge goes, up from the fascia face.

    ``marks_mm``   to the division, the ones to nail to
    ``exact_mm``   before rounding
    ``gauge_mm``   the exact equal gauge of this rod; where gaps differ (top course cut, battens kept), the
                   gauge of the equal part
    ``kept_count`` how many of the marks are battens already nailed
    """

    at_mm: float
    length_mm: float
    gauge_mm: float
    marks_mm: tuple[float, ...]
    exact_mm: tuple[float, ...]
    overhang_mm: float
    below_apex_mm: float
    kept_count: int = 0

    @property
    def gaps_mm(self) -> tuple[float, ...]:
        """The rounded gaps, first to last."""
        return tuple(upper - lower for lower, upper in zip(self.marks_mm, self.marks_mm[1:], strict=False))


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningCourses:
    """How the courses fall at one opening.

    ``sill_head_mm``  from the head of the last whole course below the sill up to the sill (what is left to fill)
    ``head_tail_mm``  from the head line up to the tail of the first course wholly above it
    ``segments``      the alternative: courses set out afresh between eaves, sill, head and ridge
    """

    name: str
    sill_course: int
    sill_head_mm: float
    head_course: int
    head_tail_mm: float
    says: str
    segments: "tuple[Segment, ...]"
    segments_say: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """Courses between two fixed points: count gauges of gauge_mm from one batten to the other."""

    name: str
    from_mm: float
    to_mm: float
    count: int
    gauge_mm: float
    inside: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """Something that could change, by how much, and what it costs.

    ``change`` in words with its numbers; ``by_mm`` the size of the change from what is wished (for ranking,
    smaller first); ``costs`` what it does to the roof; ``keeps_limits`` whether every lap and gauge limit holds.
    """

    rank: int
    change: str
    by_mm: float
    costs: str
    keeps_limits: bool
    gauges: int
    gauge_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Courses:
    """The answer. ``count`` is the number of courses: one more than the gauges between first and top batten."""

    strategy: Strategy
    why: str
    count: int
    gauge_min_mm: float | None
    gauge_max_mm: float
    headlap_mm: float
    overhang_mm: float
    rods: tuple[Rod, ...]
    taper_per_course_mm: float
    top_course_cut_mm: tuple[float, float] | None
    openings: tuple[OpeningCourses, ...]
    findings: tuple[Finding, ...]
    alternatives: tuple[Alternative, ...]
    working: Step
