"""The job: what was measured, what is to be laid, and what is wished. Plain data; the door builds it."""

from dataclasses import dataclass, field
from enum import StrEnum

from gaugerod.basis.band import Band
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import Bond, SingleLapTile
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.stations import NailedRod, Opening
from gaugerod.standards.edition import Edition, Exposure

Covering = SingleLapTile
"""Every kind of covering record."""


class BottomKind(StrEnum):
    """What stands at the foot of the slope."""

    EAVES = "eaves"


class TopKind(StrEnum):
    """What stands at the head of the slope."""

    RIDGE = "ridge"
    MONO_RIDGE = "mono-ridge"
    ABUTMENT = "abutment"


class OverhangMeasured(StrEnum):
    """How the eaves overhang is measured: with the tape laid on the slope, or on the level."""

    ON_SLOPE = "on-slope"
    LEVEL = "level"


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """One slope, measured by tape."""

    name: str
    pitch_deg: float
    taped: TapedSlope
    left: SideKind
    right: SideKind
    bottom: BottomKind
    top: TopKind
    rafter_spacing_mm: float | None
    openings: tuple[Opening, ...] = ()
    nailed: tuple[NailedRod, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """Bands and wishes of the setting out. None: the edition's default answers, with its source.

    ``ridge_cover_mm``  how far the ridge unit (or top flashing) reaches down the slope from the apex; None: not known,
                        then the cover over the top course is reported as not covered
    """

    eaves_overhang: Band | None = None
    overhang_measured: OverhangMeasured = OverhangMeasured.ON_SLOPE
    top_batten_from_apex: Band | None = None
    ridge_cover_mm: float | None = None
    verge_overhang: Band | None = None
    abutment_set_back: Band | None = None
    bond: Bond | None = None
    perps_every_count: int = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Everything one setting out depends on."""

    title: str
    edition: Edition
    exposure: Exposure
    show_lengths_in: LengthUnit
    covering: Covering
    slopes: tuple[Slope, ...]
    wishes: Wishes = field(default_factory=Wishes)
