"""Up one slope, whatever covers it: the courses, the tails of every course, and what the rules say of them."""

from dataclasses import dataclass, replace
from typing import assert_never

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.double_lap_wished import double_lap_ask, double_lap_findings
from gaugerod.job.model import Job, Slope
from gaugerod.job.random_slates import random_slates_up
from gaugerod.job.result import NotSetOut
from gaugerod.job.rules_met import single_lap_findings
from gaugerod.job.wished import TopWished, division_of, overhang_on_slope, stations_of, top_batten
from gaugerod.job.without_a_lap import lap_is_missing, without_a_lap
from gaugerod.rules.gauge import gauge_citation
from gaugerod.setting_out.courses import Alternative, Courses, CoursesAsk, Strategy
from gaugerod.setting_out.courses_together import courses_together
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.double_lap import set_out_double_lap
from gaugerod.setting_out.double_lap_ask import courses_ask
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.setting_out.round_corners import Shared
from gaugerod.setting_out.set_courses import set_out_courses


@dataclass(frozen=True, slots=True, kw_only=True)
class UpSlope:
    """The courses of one slope.

    ``tails_mm``        for each course, the height of its tails at every rod
    ``unit_lengths_mm`` for each course, the length of its units
    """

    courses: Courses
    tails_mm: tuple[tuple[float, ...], ...]
    unit_lengths_mm: tuple[float, ...]
    findings: tuple[Finding, ...]
    double_lap: DoubleLapExtras | None = None
    diminishing: DiminishingPlan | None = None


def corner_ask(job: Job, slope: Slope) -> CoursesAsk | None:
    """What the slope's courses are asked with, so that they can be shared round corners.

    None for random slates, and where no lap is known to set out with.
    """
    covering = job.covering
    match covering:
        case SingleLapTile():
            return _single_lap_ask(job, slope, covering)[0]
        case PlainTile() | SizedSlate():
            return None if lap_is_missing(job, slope, covering) else courses_ask(double_lap_ask(job, slope, covering))
        case RandomSlates():
            return None
        case _ as unreachable:
            assert_never(unreachable)


def up_slope(job: Job, slope: Slope, *, shared: tuple[Shared, str] | None) -> UpSlope | NotSetOut:
    """The courses, set out alone or as shared out with the slopes it meets.

    Raises InputRefused and NothingToSetOut as the stages below do.
    """
    covering = job.covering
    match covering:
        case SingleLapTile():
            return _single_lap(job, slope, covering, shared)
        case PlainTile() | SizedSlate():
            return _double_lap(job, slope, covering, shared)
        case RandomSlates():
            return _random(job, slope, covering)
        case _ as unreachable:
            assert_never(unreachable)


def _single_lap_ask(job: Job, slope: Slope, tile: SingleLapTile) -> tuple[CoursesAsk, TopWished]:
    if tile.hanging_length_mm is None:
        raise NothingToSetOut(
            f"{tile.title}: the hanging length is not known, so the first batten cannot be placed. Measure from the "
            f"bearing face of the nibs to the tail and give it as hanging_length."
        )
    top = top_batten(job, slope, head_to_nib_mm=tile.length_mm - tile.hanging_length_mm)
    ask = CoursesAsk(
        where=slope.name,
        stations=stations_of(slope),
        unit_length_mm=tile.length_mm,
        hanging_length_mm=tile.hanging_length_mm,
        gauge_min_mm=tile.gauge_min_mm,
        gauge_max_mm=tile.gauge_max_mm,
        gauge_citation=gauge_citation(tile),
        overhang=overhang_on_slope(job, slope),
        top=top.band,
        division=division_of(job.show_lengths_in),
        openings=slope.openings,
        nailed=slope.nailed,
        ridge_lap_first=top.kept and job.wishes.ridge_cover_mm is not None,
    )
    return ask, top


def _single_lap(job: Job, slope: Slope, tile: SingleLapTile, shared: tuple[Shared, str] | None) -> UpSlope:
    ask, top = _single_lap_ask(job, slope, tile)
    courses = set_out_courses(ask) if shared is None else courses_together(ask, shared[0], says=shared[1])
    if not top.kept:
        courses = replace(courses, alternatives=tuple(_top_still_short(each) for each in courses.alternatives))
    tails = []
    for index in range(courses.count):
        if courses.strategy is Strategy.PARALLEL and index == courses.count - 1:
            # A cut top course keeps its tail on the line of the courses; only its head is lost.
            marks = [rod.exact_mm[index - 1] + rod.gauge_mm for rod in courses.rods]
        else:
            marks = [rod.exact_mm[index] for rod in courses.rods]
        tails.append(tuple(mark - ask.hanging_length_mm for mark in marks))
    return UpSlope(
        courses=courses,
        tails_mm=tuple(tails),
        unit_lengths_mm=(tile.length_mm,) * courses.count,
        findings=(*top.findings, *courses.findings, *single_lap_findings(job, slope, tile, courses=courses)),
    )


def _top_still_short(alternative: Alternative) -> Alternative:
    """No change of the courses makes a ridge or flashing reach further: the limit it breaks stays broken."""
    return replace(
        alternative,
        costs=f"{alternative.costs} The ridge or flashing must still reach further down.",
        keeps_limits=False,
    )


def _double_lap(
    job: Job, slope: Slope, unit: PlainTile | SizedSlate, shared: tuple[Shared, str] | None
) -> UpSlope | NotSetOut:
    if isinstance(unit, SizedSlate) and lap_is_missing(job, slope, unit):
        return without_a_lap(job, slope, unit)
    ask = double_lap_ask(job, slope, unit)
    together = None if shared is None else courses_together(courses_ask(ask), shared[0], says=shared[1])
    found = set_out_double_lap(ask, courses=together)
    courses = found.courses
    return UpSlope(
        courses=courses,
        tails_mm=tuple(zip(*(rod.tails_mm for rod in found.extras.rods), strict=True)),
        unit_lengths_mm=(unit.length_mm,) * courses.count,
        findings=(*courses.findings, *double_lap_findings(job, slope, unit, courses=courses, extras=found.extras)),
        double_lap=found.extras,
    )


def _random(job: Job, slope: Slope, slates: RandomSlates) -> UpSlope | NotSetOut:
    found = random_slates_up(job, slope, slates, stations=stations_of(slope), division=division_of(job.show_lengths_in))
    if isinstance(found, NotSetOut):
        return found
    plan = found.plan
    lengths = tuple(group.length_mm for group in plan.groups for _ in range(group.courses_count))
    return UpSlope(
        courses=found.courses,
        tails_mm=tuple(zip(*(rod.tails_mm for rod in plan.rods), strict=True)),
        unit_lengths_mm=lengths,
        findings=(*found.courses.findings, *found.findings),
        diminishing=plan,
    )
