"""Random slates in diminishing courses: asked with the job's wishes, answered as courses like any others."""

from dataclasses import dataclass

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.job.double_lap_wished import WISHED_LAP
from gaugerod.job.model import Job, Slope
from gaugerod.job.result import NotSetOut
from gaugerod.job.rules_met import batten_findings, overhang_findings
from gaugerod.job.wished import overhang_on_slope, side
from gaugerod.rules.battens import BattenedCovering
from gaugerod.rules.slates import slate_pitch
from gaugerod.setting_out.courses import Courses, Rod, Strategy
from gaugerod.setting_out.diminishing.answer import Diminishing, DiminishingPlan, DiminishingRod
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.plan import plan_diminishing
from gaugerod.setting_out.stations import Station
from gaugerod.standards.defaults import ridge_cover_least
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure


@dataclass(frozen=True, slots=True, kw_only=True)
class RandomUp:
    """The plan, and the same as courses."""

    courses: Courses
    plan: DiminishingPlan
    findings: tuple[Finding, ...]


def random_slates_up(
    job: Job, slope: Slope, slates: RandomSlates, *, stations: tuple[Station, ...], division: Division
) -> RandomUp | NotSetOut:
    """The course plan of the stack on this slope; NotSetOut with what is short when no plan keeps every limit.

    Raises NothingToSetOut when the lap or the reach of the ridge is not stated: no table gives either for random slates.
    """
    found = plan_diminishing(_ask(job, slope, slates, stations=stations, division=division))
    if found.plan is None:
        return NotSetOut(slope=slope, why=found.why, findings=found.findings, alternatives=found.alternatives)
    courses = _courses(found, found.plan)
    findings = (
        slate_pitch(where=slope.name, pitch_deg=slope.pitch_deg, edition=job.edition),
        *overhang_findings(job, slope, courses),
        *batten_findings(job, slope, BattenedCovering.NATURAL_SLATE),
    )
    return RandomUp(courses=courses, plan=found.plan, findings=findings)


def _ask(
    job: Job, slope: Slope, slates: RandomSlates, *, stations: tuple[Station, ...], division: Division
) -> DiminishingAsk:
    missing = [
        words
        for words, value in (
            ("the lap to keep (headlap)", job.wishes.headlap_mm),
            ("how far the ridge reaches down the slope (ridge_cover)", job.wishes.ridge_cover_mm),
        )
        if value is None
    ]
    if job.wishes.headlap_mm is None or job.wishes.ridge_cover_mm is None:
        raise NothingToSetOut(
            f"{slope.name}: random slates need {' and '.join(missing)} stated in set_out; no table gives it."
        )

    def figure(which: DoubleLapFigure) -> Limit:
        return double_lap_figure(job.edition, which)

    reach_mm = sum(side(job, kind, high_point=False).reach.greatest_mm for kind in (slope.left, slope.right))
    return DiminishingAsk(
        where=slope.name,
        slates=slates,
        stations=stations,
        course_width_mm=slope.taped.eaves_mm + max(reach_mm, 0.0),
        side_waste_mm=figure(DoubleLapFigure.RANDOM_SLATE_SIDE_WASTE).value,
        headlap=Limit(value=job.wishes.headlap_mm, unit="mm", citation=WISHED_LAP),
        overhang=overhang_on_slope(job, slope),
        ridge_cover_mm=job.wishes.ridge_cover_mm,
        ridge_lap=ridge_cover_least(job.edition),
        apex_clear=figure(DoubleLapFigure.SLATE_HEADS_BELOW_APEX),
        least_batten_gauge=figure(DoubleLapFigure.SLATE_BATTEN_GAUGE_LEAST),
        nail_clear=figure(DoubleLapFigure.NAIL_ABOVE_HEAD),
        division=division,
        aim=job.wishes.random_aim,
    )


def _courses(found: Diminishing, plan: DiminishingPlan) -> Courses:
    return Courses(
        strategy=Strategy.DIMINISHING,
        why=found.why,
        count=plan.courses_count,
        gauge_min_mm=None,
        gauge_max_mm=plan.groups[0].gauge_mm,
        headlap_mm=plan.least_lap_mm,
        overhang_mm=plan.overhang_mm,
        rods=tuple(_rod(rod, plan) for rod in plan.rods),
        taper_per_course_mm=0.0,
        top_course_cut_mm=None,
        openings=(),
        findings=found.findings,
        alternatives=found.alternatives,
        working=found.working,
    )


def _rod(rod: DiminishingRod, plan: DiminishingPlan) -> Rod:
    return Rod(
        at_mm=rod.at_mm,
        length_mm=rod.rafter_mm,
        gauge_mm=plan.groups[0].gauge_mm,
        marks_mm=rod.marks_mm,
        exact_mm=rod.marks_mm,
        overhang_mm=rod.overhang_mm,
        below_apex_mm=rod.rafter_mm - rod.marks_mm[-1],
    )
