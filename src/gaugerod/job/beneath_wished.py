"""What is asked for beneath the covering: battens, underlay, air, fixings, load. Plain data; the door builds it.

A part that is None was not asked for, and is not worked out.
"""

from dataclasses import dataclass, field

from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import Support, UnderlayRecord
from gaugerod.fixing.ask import NailWished
from gaugerod.rules.batten_joints import CloseJoints
from gaugerod.rules.fixings import SlateHeld
from gaugerod.rules.underlay_wind import UpliftSite
from gaugerod.rules.ventilation import BuildingSize, Ceiling, Insulated
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.battens.ask import Nailing
from gaugerod.substrate.load.ask import OldRoof
from gaugerod.substrate.underlay.ask import LapRemedy


@dataclass(frozen=True, slots=True, kw_only=True)
class BattensWished:
    """Stock lengths and saw. None or empty: the edition's usual."""

    stock: tuple[Limit, ...] = ()
    kerf: Limit | None = None
    nailing: Nailing = field(default_factory=Nailing)
    close_joints: CloseJoints = CloseJoints.APART


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderlayWished:
    """The roll, what it lies on, and how the ridge is made. Other figures None: the edition's, or not known."""

    record: UnderlayRecord
    support: Support
    ridge_vented: bool
    lap_mm: float | None = None
    between_battens: LapRemedy = LapRemedy.WIDEN
    carrier_reach_mm: float | None = None
    valley_strip_width_mm: float | None = None
    rafter_width_mm: float | None = None
    site: UpliftSite = field(default_factory=UpliftSite)


@dataclass(frozen=True, slots=True, kw_only=True)
class AirWished:
    """What the openings for air depend on besides the roof and its underlay. ``span_mm`` None: not known."""

    insulated: Insulated
    ceiling: Ceiling
    building: BuildingSize
    span_mm: float | None
    through_flow: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingsWished:
    """The nail, and what is known of the covering's holes. Figures None: the least by rule, or not known."""

    nail: NailWished
    nail_holes_count: int | None = None
    thickness_mm: float | None = None
    slates_held_by: SlateHeld = SlateHeld.NAILS
    hook_wire_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadWished:
    """Masses that are known. ``stated`` of the new covering as laid; ``old`` what is taken off; thresholds per cent."""

    stated: MassBand | None = None
    old: OldRoof | None = None
    warn: Limit | None = None
    significant: Limit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BeneathWished:
    """Every part that is asked for."""

    battens: BattensWished | None = None
    underlay: UnderlayWished | None = None
    air: AirWished | None = None
    fixings: FixingsWished | None = None
    load: LoadWished | None = None
