"""What the rules say of a plan of diminishing courses."""

from gaugerod.basis.citation import Basis, Citation, house
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.best import least_ridge_cover_mm
from gaugerod.setting_out.said import said

DROP_COURSE = Citation(source="Stone Roofing Association, random slating: gauge and drop course", basis=Basis.PUBLISHED)
THIRD_OF_LENGTH = Citation(
    source="NHBC Standards 2020 7.2.19 Table 12: headlap at most length/3", basis=Basis.PUBLISHED
)


def findings_of(ask: DiminishingAsk, plan: DiminishingPlan | None, *, why: str) -> tuple[Finding, ...]:
    """Lap, ridge, battens, greatest lap; or that there is no plan."""
    if plan is None:
        return (_ridge(ask), _no_plan(ask, why))
    return (_lap(ask, plan), _ridge(ask), _battens(ask, plan), _greatest_lap(ask, plan))


def _lap(ask: DiminishingAsk, plan: DiminishingPlan) -> Finding:
    return Finding(
        rule="headlap",
        where=ask.where,
        proposed=plan.least_lap_mm,
        limit=ask.headlap.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.headlap.citation,
        says="The least lap of any course over the slate two below, read off the section as laid.",
    )


def _ridge(ask: DiminishingAsk) -> Finding:
    least_mm = least_ridge_cover_mm(ask)
    return Finding(
        rule="ridge cover",
        where=ask.where,
        proposed=ask.ridge_cover_mm,
        limit=least_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.headlap.citation,
        says=f"The ridge must reach {said(least_mm, ask.division)} down the slope, so that it laps the course below "
        "the top one as far as any course laps the second below it.",
    )


def _battens(ask: DiminishingAsk, plan: DiminishingPlan) -> Finding:
    """The two battens that lie nearest one another. Courses cut below the apex may share theirs: a note says so."""
    gauge_mm, course = min(
        (
            (rod.marks_mm[course - 1] - rod.marks_mm[course - 2], course)
            for rod in plan.rods
            for course in range(2, plan.courses_count + 1)
            if course not in dict(rod.cut_lengths_mm)
        ),
        default=(None, 1),
    )
    return Finding(
        rule="batten gauge",
        where=f"{ask.where}, course {course}",
        proposed=gauge_mm,
        limit=ask.least_batten_gauge.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.least_batten_gauge.citation,
        says="The battens of this course and the one below lie nearest one another: at a drop course the batten comes "
        "down by the difference of the lengths.",
    )


def _greatest_lap(ask: DiminishingAsk, plan: DiminishingPlan) -> Finding:
    shortest_mm = plan.groups[-1].length_mm
    return Finding(
        rule="greatest headlap",
        where=ask.where,
        proposed=ask.headlap.value,
        limit=shortest_mm / 3,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=THIRD_OF_LENGTH,
        says=f"The lap asked for, against a third of the shortest slate laid ({said(shortest_mm, ask.division)}). "
        "Above it the slates rock on the ones below: leave the shortest out.",
    )


def _no_plan(ask: DiminishingAsk, why: str) -> Finding:
    return not_covered(
        rule="diminishing courses",
        where=ask.where,
        proposed=None,
        unit="mm",
        citation=house("exact search over every plan that one gauge to a length allows"),
        says=why,
    )
