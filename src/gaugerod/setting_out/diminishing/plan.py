"""Diminishing courses, from the stack on the ground to the marks on the rod."""

from gaugerod.setting_out.diminishing.answer import Diminishing, DiminishingPlan
from gaugerod.setting_out.diminishing.ask import Aim, DiminishingAsk
from gaugerod.setting_out.diminishing.best import best_plan, least_ridge_cover_mm, ridge_reaches
from gaugerod.setting_out.diminishing.findings import findings_of
from gaugerod.setting_out.diminishing.input_faults import refuse_faults
from gaugerod.setting_out.diminishing.nearest import other_plans, short_by_mm, ways_to_mend
from gaugerod.setting_out.diminishing.working import working_of
from gaugerod.setting_out.said import said


def plan_diminishing(ask: DiminishingAsk) -> Diminishing:
    """The course plan of random slates: how many courses of each length, and every mark.

    Of all plans that keep every limit it is the one the aim asks for, found by exact search. When there is none,
    ``why`` says what is short and the alternatives say what would mend it.

    Raises InputRefused with every fault of the ask; NothingToSetOut when the stations differ too much in length for one
    plan. Source: Stone Roofing Association, random slating, for the gauge
    and the drop course (published). Scope: one slope, one gauge to a length, battens square or nearly square to the
    rafters.
    """
    refuse_faults(ask)
    plan = best_plan(ask)
    if plan is None:
        why = _what_is_short(ask)
        return Diminishing(
            plan=None,
            why=why,
            findings=findings_of(ask, None, why=why),
            alternatives=ways_to_mend(ask),
            working=working_of(ask, None),
        )
    return Diminishing(
        plan=plan,
        why=_why(ask, plan),
        findings=findings_of(ask, plan, why=""),
        alternatives=other_plans(ask, plan),
        working=working_of(ask, plan),
    )


def _why(ask: DiminishingAsk, plan: DiminishingPlan) -> str:
    most = "the most courses this stack gives" if ask.aim is Aim.LEAST_LEFT else "the fewest courses this stack gives"
    return (
        f"{plan.courses_count} courses of {len(plan.groups)} lengths, {most} with none laid for nothing; "
        f"least lap {said(plan.least_lap_mm, ask.division)}; {plan.left_run_mm / 1000:.1f} m of slate stay over."
    )


def _what_is_short(ask: DiminishingAsk) -> str:
    if not ridge_reaches(ask):
        return (
            f"The ridge reaches {said(ask.ridge_cover_mm, ask.division)} down the slope; to lap the course below the "
            f"top one it must reach {said(least_ridge_cover_mm(ask), ask.division)}."
        )
    short_mm = short_by_mm(ask)
    if short_mm > 0:
        return (
            f"The stack is short: every slate laid at its full gauge leaves {said(short_mm, ask.division)} of the "
            "slope bare below the ridge."
        )
    return (
        "The stack would reach the ridge, but not with an under-eaves course cut from what is left over, or not "
        "without a drop in length so large that two battens meet."
    )
