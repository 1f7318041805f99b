"""Perps across the slope: what is asked, and what comes back.

x runs along the eaves from the left end of the roof structure; a left verge overhang is a negative x.
"""

from dataclasses import dataclass
from enum import StrEnum
from math import inf

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Citation
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.basis.working import Step
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.stations import Opening


class CourseEnd(StrEnum):
    """Which end of a course stops there. The left side of an opening stops a course's right end."""

    LEFT = "left"
    RIGHT = "right"


class SideKind(StrEnum):
    """What stands at the left or right side of the slope."""

    VERGE = "verge"
    ABUTMENT = "abutment"
    HIP = "hip"
    VALLEY = "valley"


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of the slope. ``reach`` is the band for where the covering ends.

    At a verge: overhang past the end of the roof structure (positive outwards).
    At an abutment: set-back from the wall, given as a band of *negative* reach (−15 to −5: 5 to 15 mm clear).
    ``high_point`` asks a profiled tile to finish on a crown here.
    """

    kind: SideKind
    reach: Band
    high_point: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class UpperEdge:
    """A verge or wall that does not start at an end of the eaves: above a hip or valley, or beside a step.

    ``at_mm``   where it stands along x; ``run_mm`` the shortest course beside it, to whatever stops that one
    ``end``     which end of its courses it is
    ``low_mm``, ``high_mm``  from where to where it stands, up the slope
    """

    name: str
    side: Side
    end: CourseEnd
    at_mm: float
    run_mm: float
    low_mm: float
    high_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class AcrossAsk:
    """All that the perps depend on. mm along the eaves.

    ``eaves_width_mm``   left end to right end of the roof structure along the eaves
    ``top_left_mm``      x of the left end at the top line, ``top_right_mm`` of the right end (verges may not be square)
    ``cover_closed_mm``, ``cover_open_mm``  the shunt: cover width may lie anywhere between
    ``unit_width_mm``    full width of one unit, so a course of n whole units is (n − 1) × cover + unit width
    ``minimum_cut``      the least piece, as a share of a unit's cover
    ``upper``            verges and walls higher up, in whose line no end of the eaves is
    ``left_high_mm``, ``right_high_mm``  how far up the slope the sides at the eaves stand
    ``reaches_mm``       from where to where the slope reaches along x, if it is wider than its eaves
    """

    where: str
    eaves_width_mm: float
    top_left_mm: float
    top_right_mm: float
    left: Side
    right: Side
    unit_width_mm: float
    cover_closed_mm: float
    cover_open_mm: float
    cover_citation: Citation
    bond: Bond
    half_unit: bool
    unit_and_a_half: bool
    high_points_mm: tuple[float, ...]
    openings: tuple[Opening, ...]
    division: Division
    minimum_cut: Limit
    perps_every_count: int = 3
    upper: tuple[UpperEdge, ...] = ()
    left_high_mm: float = inf
    right_high_mm: float = inf
    reaches_mm: tuple[float, float] | None = None


class Fit(StrEnum):
    """How a course ends at a side."""

    WHOLE = "whole"
    HALF = "half"
    HIGH_POINT = "high-point"
    CUT = "cut"


@dataclass(frozen=True, slots=True, kw_only=True)
class EndPiece:
    """The unit at one side of one kind of course (bond row 0 or 1).

    ``at`` is ``left``, ``right``, an upper edge by its name, or the opening's name and side (``rooflight left``);
    ``cover_mm`` the cover width the piece gives (a whole unit gives the full cover); ``width_mm`` its full width as cut.
    """

    at: str
    bond_row: int
    fit: Fit
    cover_mm: float
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PerpLine:
    """Perp marks along one line, to the division, from the left end of the roof structure at the eaves.

    ``first_mm``  exact place of the perp nearest the left side; all others are whole covers from it
    """

    line: str
    first_mm: float
    cover_mm: float
    left_reach_mm: float
    right_reach_mm: float
    marks_mm: tuple[float, ...]
    exact_mm: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UpperReach:
    """How far the covering reaches past an upper edge; below nothing where it stays clear of a wall."""

    edge: UpperEdge
    overhang_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Across:
    """The answer.

    ``units_count``  units in a course of bond row 0, cut ones counted (half units count one)
    ``perp_lines``   at the eaves, and at the top where it differs
    ``pieces``       the end pieces; ``least_piece_mm`` the least cover width among the cut ones (None: nothing is cut)
    """

    units_count: int
    bond: Bond
    cover_mm: float
    left_overhang_mm: float
    right_overhang_mm: float
    perps_every_count: int
    perp_lines: tuple[PerpLine, ...]
    pieces: tuple[EndPiece, ...]
    least_piece_mm: float | None
    fanned: bool
    why: str
    findings: tuple[Finding, ...]
    alternatives: tuple[Alternative, ...]
    working: Step
    upper: tuple[UpperReach, ...] = ()
