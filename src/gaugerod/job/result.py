"""The result: everything a command, page, sheet or export shows. They show; none of them calculates."""

from dataclasses import dataclass, field

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.working import Step
from gaugerod.edges.answer import RoofEdges
from gaugerod.fixing.plan import FixingPlan
from gaugerod.geometry.roof_faces import RoofForm
from gaugerod.geometry.taped_slope import SlopeShape
from gaugerod.job.model import Job, Slope
from gaugerod.laying.ask import LayingAsk
from gaugerod.laying.cut_unit import CutUnit
from gaugerod.laying.laid import Laying
from gaugerod.laying.offcuts import OffcutPlan
from gaugerod.setting_out.across import Across
from gaugerod.setting_out.courses import Alternative, Courses
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.double_lap_across import VergePiece
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.substrate.battens.answer import Battens
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.underlay.answer import UnderlayPlan
from gaugerod.substrate.underlay.cut_rolls import RollCuts
from gaugerod.substrate.ventilation.openings import Ventilation
from gaugerod.take_off.answer import TakeOff


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """Every unit laid on one slope: what was asked, whole units as runs, every piece to saw, and half units as made.

    ``whole_units_count``  units laid as they are made: neither sawn, nor part of a unit and a half laid in their stead
    """

    ask: LayingAsk
    laying: Laying
    pieces: tuple[CutUnit, ...]
    whole_units_count: int
    half_units_count: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofResult:
    """A building's roof form, and how its slopes were coursed together."""

    name: str
    form: RoofForm
    slope_names: tuple[str, ...]
    """The name of each slope of the form, in its order; set out or not."""
    corners: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeResult:
    """One slope set out. ``across`` is None when the cover width is not known: a finding then says so."""

    slope: Slope
    shape: SlopeShape
    courses: Courses
    across: Across | None
    findings: tuple[Finding, ...]
    """The findings of this slope only, those of courses, across and shape included."""
    method: tuple[str, ...]
    """The job in steps, with this slope's own figures."""
    laid: Laid | None
    """Every unit of the slope: None when the cover width is not known."""
    double_lap: DoubleLapExtras | None = None
    """What double lap adds to the courses; None for single lap."""
    verge_pieces: tuple[VergePiece, ...] = ()
    """What is laid at the verges in double lap."""
    diminishing: DiminishingPlan | None = None
    """How the stack of random slates goes on the roof; None for every other covering."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotSetOut:
    """A slope that no plan covers: what is short, and what would mend it."""

    slope: Slope
    why: str
    findings: tuple[Finding, ...]
    alternatives: tuple[Alternative, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Beneath:
    """What lies beneath the covering and what holds it. None or empty: not asked for, or ``findings`` say why not.

    ``underlay``, ``air``, ``fixings``, ``loads``  one for each slope; each names it in ``where``
    """

    battens: Battens | None = None
    underlay: tuple[UnderlayPlan, ...] = ()
    rolls: RollCuts | None = None
    air: tuple[Ventilation, ...] = ()
    fixings: tuple[FixingPlan, ...] = ()
    loads: tuple[Load, ...] = ()
    findings: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """The whole answer to a job."""

    job: Job
    slopes: tuple[SlopeResult, ...]
    findings: tuple[Finding, ...]
    """Every finding: the job's own, those of every slope, and those of what lies beneath."""
    alternatives: tuple[tuple[str, Alternative], ...]
    """What could change, each with the slope (and direction) it belongs to."""
    not_set_out: tuple[NotSetOut, ...]
    """Slopes that could not be set out, each with the reason."""
    roofs: tuple[RoofResult, ...]
    offcuts: OffcutPlan | None
    """Which offcut serves which other cut, over all slopes; None when nothing is cut."""
    version: str
    cautions: tuple[str, ...]
    working: Step
    beneath: Beneath = field(default_factory=Beneath)
    edges: RoofEdges | None = None
    """Every edge and opening of the slopes that were set out."""
    take_off: TakeOff | None = None
    """What the job takes; None only for a result that was not made by ``set_out``."""

    @property
    def anything_outside(self) -> bool:
        """Is any finding outside its rule, or a slope not set out at all?"""
        return bool(self.not_set_out) or any(finding.verdict is Verdict.OUTSIDE for finding in self.findings)
