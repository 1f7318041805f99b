"""The records of double-lap coverings: plain tiles, sized slates, and random slates counted in heaps."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.coverings.single_lap import Material


class Nailing(StrEnum):
    """Where a slate is held: by two nails near its middle, or by nails or a peg near its head."""

    CENTRE = "centre"
    HEAD = "head"


class MadeTo(StrEnum):
    """A standard whose sizes the maker of a clay tile declares it made to."""

    BS_EN_1304 = "BS EN 1304"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainTile:
    """A plain tile. All sizes are those of one unit, in mm.

    ``length_mm``          overall, head to tail
    ``width_mm``           overall, side to side
    ``hanging_length_mm``  bearing face of the nibs to the tail; None when not known or there are no nibs
    ``headlap_min_mm``     least lap over the tile two courses below
    ``headlap_max_mm``     greatest lap; None when there is none
    ``pitch_min_deg``      least pitch
    ``sidelap_min_mm``     least distance sideways between a joint and the nearest joint of the next course
    ``nibs``               does it hang on nibs?
    ``eaves_length_mm``    overall length of its short eaves and top tile; None when there is none
    ``half_unit``          is there a half-width companion?
    ``unit_and_a_half``    is there a one-and-a-half-width companion?
    ``mass_kg``            of one unit; None when not known
    ``made_to``            clay: the standard its sizes are declared to; None when that is not known
    ``measured``           which fields were measured on the user's own tiles
    """

    name: str
    title: str
    material: Material
    length_mm: float
    width_mm: float
    hanging_length_mm: float | None
    headlap_min_mm: float
    headlap_max_mm: float | None
    pitch_min_deg: float | None
    sidelap_min_mm: float
    nibs: bool
    eaves_length_mm: float | None
    half_unit: bool
    unit_and_a_half: bool
    mass_kg: float | None
    made_to: MadeTo | None = None
    measured: frozenset[str] = frozenset()
    citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class SizedSlate:
    """A slate of one size. All sizes are those of one slate, in mm.

    ``length_mm``         overall, head to tail
    ``width_mm``          overall, side to side
    ``nailing``           near its middle or near its head
    ``hole_below_mm``     head-nailed: from the head to the nail hole, lost to the lap
    ``thickness_mm``      None when not known
    ``slate_and_a_half``  is there a one-and-a-half-width companion?
    ``mass_kg``           of one slate; None when not known
    """

    name: str
    title: str
    material: Material
    length_mm: float
    width_mm: float
    nailing: Nailing
    hole_below_mm: float
    thickness_mm: float | None
    slate_and_a_half: bool
    mass_kg: float | None
    measured: frozenset[str] = frozenset()
    citation: Citation

    @property
    def lost_at_head_mm(self) -> float:
        """Length that does not count for the lap: none centre-nailed, head to hole when head-nailed."""
        return self.hole_below_mm if self.nailing is Nailing.HEAD else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Heap:
    """Random slates of one length, laid in one heap and counted, or measured by the run.

    ``length_mm``      of the shortest slate of the heap, head to tail
    ``slates_count``   how many; with ``average_width_mm``
    ``run_mm``         or: the length of a row of them laid edge to edge
    """

    length_mm: float
    slates_count: int | None = None
    average_width_mm: float | None = None
    run_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RandomSlates:
    """Random slates as they lie on the ground, sorted by length.

    ``hole_below_mm``  from the head to the peg or nail hole of head-fixed slates, lost to the lap
    ``heaps``          one for each length
    ``broken_ratio``   the part of every heap that will not come to be laid: broken, soft, misshapen
    ``joint_mm``       gap between neighbours of a course
    """

    name: str
    title: str
    material: Material
    nailing: Nailing
    hole_below_mm: float
    heaps: tuple[Heap, ...]
    broken_ratio: float
    joint_mm: float
    citation: Citation

    @property
    def lost_at_head_mm(self) -> float:
        """Length that does not count for the lap: none centre-nailed, head to hole when head-fixed."""
        return self.hole_below_mm if self.nailing is Nailing.HEAD else 0.0
