"""The record of an underlay: what its label says, whatever its maker."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit


class Resistance(StrEnum):
    """How hard water vapour finds it to pass: low (it breathes) or high (felt, plain film)."""

    LOW = "low"
    HIGH = "high"


class Support(StrEnum):
    """What the underlay lies on."""

    RAFTERS = "rafters"
    BOARDS = "boards"
    RIGID_INSULATION = "rigid-insulation"

    @property
    def full(self) -> bool:
        """Is it held everywhere, and not only at the rafters?"""
        return self is not Support.RAFTERS


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelRating:
    """One line of the label: the wind uplift it resists at this batten gauge, its laps held or loose.

    ``lap_restrained`` True: the figure holds only where every lap is under a batten or taped.
    """

    resistance_pa: float
    gauge_mm: float
    lap_restrained: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlayRecord:
    """An underlay, by its label.

    ``roll_width_mm``, ``roll_length_mm``  of one roll
    ``resistance``        low or high, as the label says
    ``vapour_resistance`` in MN·s/g; None when the label gives none
    ``air_permeability``  in m³/(m²·h) at 50 Pa; None when the label gives none
    ``mass_kg_m2``        of one layer; None when not known
    ``ratings``           wind uplift, one for each gauge and lap on the label
    """

    title: str
    roll_width_mm: float
    roll_length_mm: float
    resistance: Resistance
    vapour_resistance: Limit | None = None
    air_permeability: Limit | None = None
    mass_kg_m2: float | None = None
    ratings: tuple[LabelRating, ...] = ()
    citation: Citation
