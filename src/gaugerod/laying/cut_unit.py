"""One unit as it is sawn: its true outline, laps and all, each cut with length and angle, and what still holds it."""

from dataclasses import dataclass
from enum import StrEnum
from math import hypot

from gaugerod.basis.citation import Citation, house
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Edge
from gaugerod.laying.laid import Rings

HOLE_CLEAR_MM = 10.0
"""A nail hole nearer to a cut than this does not count: the unit would break there. See ``HOLE_CLEAR_CITATION``."""
HOLE_CLEAR_CITATION = house("a nail hole wants 10 mm of sound unit to every cut")


class Remedy(StrEnum):
    """What to do with a cut unit.

    ``as-cut``          lay it as it is cut
    ``unit-and-a-half`` cut it and its neighbour from one unit-and-a-half
    ``double``          cut it and its neighbour from one double unit
    ``bond-and-clip``   bond it to its neighbour and clip it
    ``choose-width``    random slates: lay one of this width from the stack, or shift the joints beside it
    """

    AS_CUT = "as-cut"
    UNIT_AND_A_HALF = "unit-and-a-half"
    DOUBLE = "double"
    BOND_AND_CLIP = "bond-and-clip"
    CHOOSE_WIDTH = "choose-width"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One straight cut. ``start_mm`` and ``end_mm`` are from the tail's left corner of the unit, seen as laid.

    ``angle_deg`` is measured from the course line counter-clockwise up to the cut, 0 up to below 180: 90 is square
    across the course, a cut that leans to the right going up is below 90.
    """

    edge: Edge
    edge_number: int
    start_mm: Point
    end_mm: Point
    angle_deg: float

    @property
    def length_mm(self) -> float:
        """Length of the cut."""
        return hypot(self.end_mm[0] - self.start_mm[0], self.end_mm[1] - self.start_mm[1])


@dataclass(frozen=True, slots=True, kw_only=True)
class CutUnit:
    """One piece to saw. A unit that an opening parts in two is two pieces, each from a unit of its own.

    ``rings_mm``      outline in the slope's plane: the piece, then holes through it (clockwise)
    ``own_rings_mm``  the same from the tail's left corner of the unit, x along the tail, y up
    ``shows_mm2``     what it shows once laid; ``whole_shows_mm2`` what a whole unit shows here
    ``nibs_kept_count``, ``holes_kept_count``  of those the unit has
    ``neighbour``     index of the unit the remedy speaks of; the unit itself where there is none
    """

    number: int
    course: int
    index: int
    rings_mm: Rings
    own_rings_mm: Rings
    length_mm: float
    area_mm2: float
    shows_mm2: float
    whole_shows_mm2: float
    cuts: tuple[Cut, ...]
    nibs_kept_count: int
    holes_kept_count: int
    remedy: Remedy
    neighbour: int
    remark: str
    citation: Citation

    @property
    def shows_ratio(self) -> float:
        """What it shows as a part of what a whole unit shows; 1 where only its head, under the lap, is cut."""
        return self.shows_mm2 / self.whole_shows_mm2
