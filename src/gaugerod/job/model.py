"""The job: what was measured, what is to be laid, and what is wished. Plain data; the door builds it."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Literal

from gaugerod.basis.band import Band
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Bond, SingleLapTile
from gaugerod.edges.wished import EdgesWished, OpeningMade
from gaugerod.geometry.plan_outline import PlanOutline
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.taped_slope import TapedSlope
from gaugerod.job.beneath_wished import BeneathWished
from gaugerod.job.record_wished import RecordWished
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.setting_out.stations import NailedRod, Opening
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.slate_headlap import BetweenPitches, Reading
from gaugerod.take_off.wished import OrderWished

Covering = SingleLapTile | PlainTile | SizedSlate | RandomSlates
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
class SlopeOutline:
    """A slope's outline in its own plane: corners counter-clockwise, x along the eaves from their left end, y up the slope.

    ``kinds[i]`` names the edge from corner i to corner i+1.
    """

    points_mm: tuple[Point, ...]
    kinds: tuple[EdgeKind, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """One slope. Measured by tape; or by its outline, and then ``taped`` holds what the outline gives: the eaves and one
    rafter, from the eaves to the highest ridge. ``rafters_at_mm`` is the middle of every rafter along the eaves; empty: not
    measured, and ``rafter_spacing_mm`` holds from end to end. ``openings_made`` says by name what stands in an opening.
    """

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
    rafters_at_mm: tuple[float, ...] = ()
    outline: SlopeOutline | None = None
    openings_made: tuple[tuple[str, OpeningMade], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Building:
    """A whole building on plan: every slope, hip, valley and ridge follows by geometry.

    ``cheeks``  where eaves in one line part (unequal pitch or height): ask, or put in an upright cheek
    """

    name: str
    plan: PlanOutline
    rafter_spacing_mm: float | None
    cheeks: Literal["ask", "allow"] = "ask"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wishes:
    """Bands and wishes of the setting out. None: the edition's default answers, with its source.

    ``ridge_cover_mm``  how far the ridge unit (or top flashing) reaches down the slope from the apex; None: not known,
                        then the cover over the top course is reported as not covered
    ``headlap_mm``      a lap larger than the least, for plain tiles and slates
    ``joint``           gap between plain tiles or slates of a course
    ``slate_reading``   which reproduction of the slate laps answers; ``slate_between`` how it is read between its pitches
    ``random_aim``      which plan of random slates is wished
    """

    eaves_overhang: Band | None = None
    overhang_measured: OverhangMeasured = OverhangMeasured.ON_SLOPE
    top_batten_from_apex: Band | None = None
    ridge_cover_mm: float | None = None
    verge_overhang: Band | None = None
    abutment_set_back: Band | None = None
    bond: Bond | None = None
    perps_every_count: int = 3
    headlap_mm: float | None = None
    joint: Band | None = None
    slate_reading: Reading = Reading.SAFER
    slate_between: BetweenPitches = BetweenPitches.NEXT_LOWER
    random_aim: Aim = Aim.LEAST_LEFT


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Everything one setting out depends on."""

    title: str
    edition: Edition
    exposure: Exposure
    show_lengths_in: LengthUnit
    covering: Covering
    slopes: tuple[Slope, ...]
    buildings: tuple[Building, ...] = ()
    wishes: Wishes = field(default_factory=Wishes)
    beneath: BeneathWished = field(default_factory=BeneathWished)
    edges: EdgesWished = field(default_factory=EdgesWished)
    order: OrderWished = field(default_factory=OrderWished)
    record: RecordWished = field(default_factory=RecordWished)
