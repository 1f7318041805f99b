"""The working of a plan of diminishing courses: each gauge, what each heap makes, and the sum up the slope."""

from gaugerod.basis.working import Step
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.best import course_run_mm, need_for, overhangs_divisions, supplies_for
from gaugerod.setting_out.diminishing.findings import DROP_COURSE
from gaugerod.setting_out.diminishing.stack import Supply


def working_of(ask: DiminishingAsk, plan: DiminishingPlan | None) -> Step:
    """The tree: the height to cover, the run of a course, a branch for each heap, and the plan's sum if there is one."""
    step_mm = float(ask.division.step_mm)
    need = need_for(ask, overhang_divisions=overhangs_divisions(ask)[0])
    overhang_mm = ask.overhang.aim_mm if plan is None else plan.overhang_mm
    rafter_mm = max(station.length_mm for station in ask.stations)
    parts = [
        Step(
            name="height to cover",
            formula="rafter − ridge cover + overhang",
            inputs={
                "rafter (mm)": rafter_mm,
                "ridge cover (mm)": ask.ridge_cover_mm,
                "overhang (mm)": overhang_mm,
            },
            value=rafter_mm - ask.ridge_cover_mm + overhang_mm,
            unit="mm",
        ),
        Step(
            name="run of one course",
            formula="course width + joint + waste at the sides",
            inputs={
                "course width (mm)": ask.course_width_mm,
                "joint (mm)": ask.slates.joint_mm,
                "waste at the sides (mm)": ask.side_waste_mm,
            },
            value=course_run_mm(ask),
            unit="mm",
        ),
        *(_heap_step(ask, supply, step_mm=step_mm) for supply in supplies_for(ask)),
    ]
    if plan is not None:
        parts.append(_sum_step(plan))
    return Step(
        name="diminishing courses",
        formula="courses of each length × gauge, longest at the eaves, until the ridge is reached",
        inputs={"headlap (mm)": ask.headlap.value, "head to hole (mm)": need.lost_divisions * step_mm},
        value="no plan" if plan is None else plan.courses_count,
        unit="courses",
        citation=DROP_COURSE,
        parts=tuple(parts),
    )


def _heap_step(ask: DiminishingAsk, supply: Supply, *, step_mm: float) -> Step:
    gauge = Step(
        name="gauge",
        formula="(usable length − headlap) / 2, down to a whole division",
        inputs={"usable length (mm)": supply.usable_divisions * step_mm, "headlap (mm)": ask.headlap.value},
        value=supply.gauge_divisions * step_mm,
        unit="mm",
        citation=DROP_COURSE,
    )
    return Step(
        name=f"heap of {supply.heap.length_mm:g} mm",
        formula="run after the broken allowance / run of one course, down to whole courses",
        inputs={"run after the broken allowance (mm)": supply.run_mm, "run of one course (mm)": course_run_mm(ask)},
        value=supply.courses_count,
        unit="courses",
        parts=(gauge,),
    )


def _sum_step(plan: DiminishingPlan) -> Step:
    reach_mm = sum(group.courses_count * group.gauge_mm for group in plan.groups)
    return Step(
        name="reach of the plan",
        formula="sum of courses × gauge; what it reaches past the ridge edge is given back as lap",
        inputs={
            f"{group.courses_count} courses of {group.length_mm:g} mm at (mm)": group.gauge_mm for group in plan.groups
        },
        value=reach_mm,
        unit="mm",
    )
