"""How the courses were come by: one plain sentence, and the working behind it."""

from collections.abc import Sequence

from gaugerod.basis.working import Step
from gaugerod.setting_out.courses import CoursesAsk, Rod, Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import EndBands
from gaugerod.setting_out.remedies import Choice, Plan
from gaugerod.setting_out.said import counted, said


def why(
    *,
    ask: CoursesAsk,
    rods: Sequence[Rod],
    choice: Choice | None,
    spans: Spans,
    ends: EndBands,
) -> str:
    """Which way the courses are set out, and why, in one plain sentence."""
    if choice is None:
        return f"All {len(rods[0].marks_mm)} battens are nailed already; nothing is added."
    plan = choice.taken
    start = f"From the {rods[0].kept_count} battens kept: " if ask.nailed else ""
    return start + _sentence(ask, rods, plan, spans=spans, ends=ends)


def _sentence(ask: CoursesAsk, rods: Sequence[Rod], plan: Plan, *, spans: Spans, ends: EndBands) -> str:
    gauges = counted(plan.count, "gauge")
    match plan.strategy:
        case Strategy.EQUAL:
            return (
                f"{gauges} of {_gauge(ask, rods)} keep every lap; one fewer would need {_one_fewer(ask, plan, spans)}."
            )
        case Strategy.FANNED:
            return (
                f"{gauges} at every station, each its own gauge ({_gauge(ask, rods)}), so the last batten is parallel to a "
                f"ridge that is {said(spans.taper_mm, ask.division)} out of parallel with the eaves."
            )
        case Strategy.FLEXED:
            moved = ends.moved(plan.shift_mm)
            return (
                f"No equal gauge between {_range(ask)} fits with the overhang and ridge allowance in the middle of their "
                f"bands, so the overhang is {said(moved.overhang_mm, ask.division)} and the top batten "
                f"{said(moved.top_mm, ask.division)} below the apex: {gauges} of {_gauge(ask, rods)}."
            )
        case Strategy.PARALLEL:
            return (
                f"Fanned, a station would leave the gauge range {_range(ask)}, so the battens stay parallel to the eaves at "
                f"{_gauge(ask, rods)} and the {said(spans.taper_mm, ask.division)} of taper is cut off the top course."
            )
        case Strategy.CARRIED_ON | Strategy.NONE:
            return (
                f"No number of equal gauges between {_range(ask)} fits {_span(ask, spans)} between first and top batten, "
                f"even with both ends moved inside their bands: {gauges} make {_gauge(ask, rods)}. "
                f"The lap is kept; the least gauge is not. See what could change."
            )


def _gauge(ask: CoursesAsk, rods: Sequence[Rod]) -> str:
    least_mm, greatest_mm = min(rod.gauge_mm for rod in rods), max(rod.gauge_mm for rod in rods)
    least, greatest = said(least_mm, ask.division), said(greatest_mm, ask.division)
    return least if least == greatest else f"{least} to {greatest}"


def _one_fewer(ask: CoursesAsk, plan: Plan, spans: Spans) -> str:
    if plan.count == 1:
        return "none at all"
    return f"{said(spans.greatest_mm / (plan.count - 1), ask.division)}, over the greatest, {_greatest(ask)}"


def _greatest(ask: CoursesAsk) -> str:
    return said(ask.gauge_max_mm, ask.division)


def _range(ask: CoursesAsk) -> str:
    least = "nothing" if ask.gauge_min_mm is None else said(ask.gauge_min_mm, ask.division)
    return f"{least} and {_greatest(ask)}"


def _span(ask: CoursesAsk, spans: Spans) -> str:
    least, greatest = said(spans.least_mm, ask.division), said(spans.greatest_mm, ask.division)
    return least if least == greatest else f"{least} to {greatest}"


def course_working(*, ask: CoursesAsk, rods: Sequence[Rod], greatest_gap_mm: float) -> Step:
    """The working behind the courses, one branch for each rod."""
    return Step(
        name="headlap, the least on the slope",
        formula="unit length − widest gap between marks",
        inputs={"unit length (mm)": ask.unit_length_mm, "widest gap (mm)": greatest_gap_mm},
        value=ask.unit_length_mm - greatest_gap_mm,
        unit="mm",
        citation=ask.gauge_citation,
        parts=tuple(_rod_working(ask, rod) for rod in rods),
    )


def _rod_working(ask: CoursesAsk, rod: Rod) -> Step:
    start_mm, top_mm = rod.exact_mm[max(rod.kept_count - 1, 0)], rod.exact_mm[-1]
    gauges = len(rod.exact_mm) - max(rod.kept_count, 1)
    span = Step(
        name="first to top batten" if not rod.kept_count else "last kept to top batten",
        formula="top batten − starting batten",
        inputs={"top batten (mm)": top_mm, "starting batten (mm)": start_mm},
        value=top_mm - start_mm,
        unit="mm",
        parts=(_starting(ask, rod), _top(ask, rod)),
    )
    count = Step(
        name="number of gauges",
        formula="fewest that keep every gauge in its range: at least first to top ÷ greatest gauge",
        inputs={"first to top (mm)": top_mm - start_mm, "greatest gauge (mm)": ask.gauge_max_mm},
        value=float(gauges),
        unit="gauges",
        citation=ask.gauge_citation,
    )
    return Step(
        name=f"gauge of the rod {rod.at_mm:.0f} mm from the left",
        formula="first to top ÷ number of gauges",
        inputs={"first to top (mm)": top_mm - start_mm, "gauges": float(gauges)},
        value=rod.gauge_mm,
        unit="mm",
        parts=(span, count),
    )


def _starting(ask: CoursesAsk, rod: Rod) -> Step:
    if rod.kept_count:
        return Step(
            name="last kept batten",
            formula="as measured",
            inputs={},
            value=rod.exact_mm[rod.kept_count - 1],
            unit="mm",
        )
    return Step(
        name="first batten",
        formula="hanging length − overhang",
        inputs={"hanging length (mm)": ask.hanging_length_mm, "overhang (mm)": ask.hanging_length_mm - rod.exact_mm[0]},
        value=rod.exact_mm[0],
        unit="mm",
        citation=ask.overhang.citation,
    )


def _top(ask: CoursesAsk, rod: Rod) -> Step:
    return Step(
        name="top batten",
        formula="rafter − allowance below the apex",
        inputs={"rafter (mm)": rod.length_mm, "allowance (mm)": rod.length_mm - rod.exact_mm[-1]},
        value=rod.exact_mm[-1],
        unit="mm",
        citation=ask.top.citation,
    )
