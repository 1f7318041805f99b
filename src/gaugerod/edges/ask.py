"""What the edges of a roof are made from: its lines with their true lengths, its slopes as set out, its openings."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.edges.wished import EdgesWished, OpeningMade
from gaugerod.standards.edition import Edition
from gaugerod.substrate.ventilation.openings import Ventilation

Covering = SingleLapTile | PlainTile | SizedSlate | RandomSlates


class LineKind(StrEnum):
    """What a line of the roof is. An abutment along the top of a slope is a top abutment, one up its side a side abutment."""

    RIDGE = "ridge"
    MONO_RIDGE = "mono-ridge"
    HIP = "hip"
    VALLEY = "valley"
    VERGE = "verge"
    EAVES = "eaves"
    SIDE_ABUTMENT = "side-abutment"
    TOP_ABUTMENT = "top-abutment"


class Hand(StrEnum):
    """The side of a slope, seen facing it from its eaves."""

    LEFT = "left"
    RIGHT = "right"


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeLine:
    """One line of the roof: an edge of one slope, or the line where two meet.

    ``name``           as it is called on every sheet: ``rear, left verge``; ``house 1 and 2, hip``
    ``slopes``         the slope it edges, or the two that meet in it, left then right seen from its foot
    ``length_mm``      true length on the roof structure
    ``past_ends_mm``   how far the covering runs past both its ends together: verge or eaves overhang along this line
    ``slope_deg``      its own rise from the level: nothing at eaves and ridge, the pitch at a square verge, less at a hip
    ``short_mm``       at a wall: how far the covering stops short of it, at a side; along the top, how far the heads of the top
                       course stay below it
    ``reach_mm``       at a wall along the top: how far its flashing is to reach down the slope, as the job says; None: not said
    ``hand``           of a verge: the side of the slope it is on; None elsewhere, or not known
    ``from_eaves``     of a hip: does its foot stand at the eaves
    ``courses_count``  courses that end at it, a short course at the top among them, on each of ``slopes``; for eaves, ridges
                       and top abutments 0
    """

    name: str
    kind: LineKind
    slopes: tuple[str, ...]
    length_mm: float
    past_ends_mm: float
    slope_deg: float
    courses_count: tuple[int, ...]
    short_mm: float = 0.0
    reach_mm: float | None = None
    hand: Hand | None = None
    from_eaves: bool = True

    @property
    def laid_mm(self) -> float:
        """The length the covering, and what lies over it, runs to."""
        return self.length_mm + self.past_ends_mm

    @property
    def of_two(self) -> bool:
        """Do two slopes meet in it?"""
        return len(self.slopes) == 2


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeSlope:
    """A slope as it was set out.

    ``gauge_mm``     its greatest gauge
    ``headlap_mm``   its greatest headlap
    """

    name: str
    pitch_deg: float
    gauge_mm: float
    headlap_mm: float
    courses_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeOpening:
    """An opening in a slope. ``made`` None: not said what stands in it. ``courses_count``: courses that end at each side."""

    name: str
    slope: str
    width_mm: float
    height_mm: float
    made: OpeningMade | None
    courses_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgesAsk:
    """The whole roof. ``air`` is the ventilation of each slope, where it was asked for."""

    lines: tuple[EdgeLine, ...]
    slopes: tuple[EdgeSlope, ...]
    openings: tuple[EdgeOpening, ...]
    covering: Covering
    wished: EdgesWished
    edition: Edition
    air: tuple[Ventilation, ...] = ()

    def slope(self, name: str) -> EdgeSlope:
        """The slope of this name. LookupError when there is none."""
        for each in self.slopes:
            if each.name == name:
                return each
        raise LookupError(name)
