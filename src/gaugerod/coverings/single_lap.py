"""The record of a single-lap tile: one that laps only the tile in the course below it."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation


class Form(StrEnum):
    """The shape of the tile's face."""

    FLAT = "flat"
    PROFILED = "profiled"
    PANTILE = "pantile"


class Material(StrEnum):
    """What the unit is made of."""

    CLAY = "clay"
    CONCRETE = "concrete"
    NATURAL_SLATE = "natural-slate"
    FIBRE_CEMENT = "fibre-cement"


class Bond(StrEnum):
    """How the joints of one course stand to those of the next: in line, or half a unit over."""

    STRAIGHT = "straight"
    BROKEN = "broken"


@dataclass(frozen=True, slots=True, kw_only=True)
class SingleLapTile:
    """A single-lap tile. All sizes are those of one unit, in mm.

    ``length_mm``          overall, head to tail
    ``width_mm``           overall, side to side, so more than it covers
    ``hanging_length_mm``  bearing face of the nibs to the tail; None when not known
    ``cover_closed_mm``    width one unit gains when pushed up tight
    ``cover_open_mm``      width one unit gains when pulled fully open
    ``headlap_min_mm``     least lap over the course below
    ``headlap_max_mm``     greatest lap (head locks, nail holes); None when there is none
    ``pitch_min_deg``      least pitch
    ``mass_kg``            of one unit; None when not known
    ``high_points_mm``     where the crowns of the profile are, from the left edge of the unit; empty for a flat tile
    ``half_unit``          is there a half-width companion?
    ``unit_and_a_half``    is there a one-and-a-half-width companion?
    ``bonds``              the bonds it may be laid in, the usual one first
    ``measured``           which fields were measured on the user's own tiles
    """

    name: str
    title: str
    form: Form
    material: Material
    length_mm: float
    width_mm: float
    hanging_length_mm: float | None
    cover_closed_mm: float | None
    cover_open_mm: float | None
    headlap_min_mm: float
    headlap_max_mm: float | None
    pitch_min_deg: float | None
    mass_kg: float | None
    high_points_mm: tuple[float, ...] = ()
    half_unit: bool = False
    unit_and_a_half: bool = False
    bonds: tuple[Bond, ...] = (Bond.STRAIGHT,)
    measured: frozenset[str] = frozenset()
    citation: Citation

    @property
    def gauge_max_mm(self) -> float:
        """Greatest gauge: length − least headlap. Batten and tile move together, so the nib cancels out."""
        return self.length_mm - self.headlap_min_mm

    @property
    def gauge_min_mm(self) -> float | None:
        """Least gauge: length − greatest headlap; None when there is no greatest headlap."""
        return None if self.headlap_max_mm is None else self.length_mm - self.headlap_max_mm
