"""What the take-off is measured from: every slope as it was laid, and what lies beneath, holds and edges it."""

from dataclasses import dataclass

from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.edges.answer import RoofEdges
from gaugerod.fixing.plan import FixingPlan
from gaugerod.laying.ask import Unit
from gaugerod.laying.cut_unit import CutUnit
from gaugerod.laying.offcuts import OffcutPlan
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.answer import Battens
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.underlay.cut_rolls import RollCuts
from gaugerod.take_off.wished import OrderWished

Covering = SingleLapTile | PlainTile | SizedSlate | RandomSlates


@dataclass(frozen=True, slots=True, kw_only=True)
class ExtraCourse:
    """A course besides the full ones: under the eaves, or short at the top. ``made_of`` a tile made so, or cut from a unit.

    ``item``         ``eaves-tile`` or ``top-tile`` where the unit is made so; ``slate`` or ``tile`` where it is cut from one
    ``units_count``  units in the course, end to end
    ``length_mm``    of each
    """

    name: str
    item: str
    units_count: int
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidSlope:
    """One slope as it was laid.

    ``area_mm2``           the covering takes this much of the slope, openings taken off
    ``whole_count``        units laid whole
    ``half_count``         half units as made
    ``pieces``             every piece to saw
    ``course_runs_mm``     metres run of each course, for random slates, which are counted so
    ``gauge_mm``, ``cover_mm``  mean gauge and cover width, for the count by area; cover None: not known
    """

    name: str
    area_mm2: float
    whole_count: int
    half_count: int
    pieces: tuple[CutUnit, ...]
    unit: Unit | None
    gauge_mm: float
    cover_mm: float | None
    extra: tuple[ExtraCourse, ...] = ()
    course_runs_mm: tuple[float, ...] = ()
    diminishing: DiminishingPlan | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeOffAsk:
    """The whole job. Parts that were not worked out are None or empty, and the answer says that they are left out.

    ``not_laid``  slopes that were set out and could not be laid unit by unit; ``not_set_out`` those not set out at all
    """

    slopes: tuple[LaidSlope, ...]
    not_laid: tuple[str, ...]
    covering: Covering
    offcuts: OffcutPlan | None
    edition: Edition
    wished: OrderWished
    not_set_out: tuple[str, ...] = ()
    battens: Battens | None = None
    underlay: tuple[UnderlayPlan, ...] = ()
    rolls: RollCuts | None = None
    fixings: tuple[FixingPlan, ...] = ()
    loads: tuple[Load, ...] = ()
    edges: RoofEdges | None = None
