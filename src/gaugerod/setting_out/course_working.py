"""How the courses were come by: one plain sentence, and the working behind it."""

from collections.abc import Sequence

from gaugerod.basis.working import Step
from gaugerod.setting_out.courses import CoursesAsk, Rod, Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import EndBands, GaugeLimits
from gaugerod.setting_out.remedies import Choice, Plan
from gaugerod.setting_out.said import counted, said


def why(
    *,
    ask: CoursesAsk,
    rods: Sequence[Rod],
    choice: Choice | None,
    spans: Spans,
    limits: GaugeLimits,
    ends: EndBands,
) -> str:
    """Which way the courses are set out, and why, in one plain sentence."""
    if choice is None:
        return _nothing_added(ask, rods)
    start = f"From the {counted(rods[0].kept_count, 'batten')} kept: " if ask.nailed else ""
    return start + _sentence(ask, rods, choice, spans=spans, limits=limits, ends=ends)


def _nothing_added(ask: CoursesAsk, rods: Sequence[Rod]) -> str:
    battens = counted(len(rods[0].marks_mm), "batten")
    if all(rod.below_apex_mm <= ask.top.greatest_mm for rod in rods):
        return f"All {battens} are nailed already; nothing is added."
    least, greatest = (said(pick(rod.below_apex_mm for rod in rods), ask.division) for pick in (min, max))
    reach = least if least == greatest else f"{least} to {greatest}"
    return (
        f"All {battens} nailed are kept and nothing is added: the last stands {reach} below the apex, which leaves no "
        f"room for one more along the whole slope."
    )


def _sentence(
    ask: CoursesAsk, rods: Sequence[Rod], choice: Choice, *, spans: Spans, limits: GaugeLimits, ends: EndBands
) -> str:
    plan, gauges = choice.taken, counted(choice.taken.count, "gauge")
    match plan.strategy:
        case Strategy.EQUAL:
            keep = "keeps" if plan.count == 1 else "keep"
            return f"{gauges} of {_gauge(ask, rods)} {keep} every lap; {_one_fewer(ask, plan, spans, limits)}."
        case Strategy.FANNED:
            return (
                f"{gauges} at every station, each its own gauge ({_gauge(ask, rods)}), so the last batten is parallel to a "
                f"ridge that is {said(spans.taper_mm, ask.division)} out of parallel with the eaves."
            )
        case Strategy.FLEXED:
            return (
                f"No equal gauge between {_range(ask)} fits with {_ends(ask)} as wished, so {_moved(ask, plan, ends)}: "
                f"{gauges} of {_gauge(ask, rods)}{_instead(ask, choice, 'cutting the top course')}."
            )
        case Strategy.PARALLEL:
            moved = f"{_moved(ask, plan, ends)}, " if plan.shift_mm else ""
            return (
                f"Fanned, a station would leave the gauge range {_range(ask)}, so {moved}the battens stay parallel to the "
                f"{'last one kept' if ask.nailed else 'eaves'} at {_gauge(ask, rods)} and the "
                f"{said(spans.taper_mm, ask.division)} of taper is cut off the top course"
                f"{_instead(ask, choice, f'moving {_ends(ask)}')}."
            )
        case Strategy.CARRIED_ON | Strategy.DIMINISHING | Strategy.NONE:
            return (
                f"{_why_none(ask, spans, limits)}: {gauges} {'makes' if plan.count == 1 else 'make'} {_gauge(ask, rods)}. "
                f"The lap is kept; the least gauge is not. See what could change."
            )


def _why_none(ask: CoursesAsk, spans: Spans, limits: GaugeLimits) -> str:
    if limits.least_mm is not None and limits.least_mm > limits.greatest_mm:
        return f"No whole division of the rod lies between {_range(ask)}, so no gauge in the range can be marked"
    between = "last nailed and top batten" if ask.nailed else "first and top batten"
    return (
        f"No number of equal gauges between {_range(ask)} fits {_span(ask, spans)} between {between}, "
        f"even with {_ends(ask)} moved inside {'its band' if ask.nailed else 'their bands'}"
    )


def _ends(ask: CoursesAsk) -> str:
    """What can be moved: with battens nailed the overhang is what it is."""
    return "the ridge allowance" if ask.nailed else "overhang and ridge allowance"


def _moved(ask: CoursesAsk, plan: Plan, ends: EndBands) -> str:
    moved = ends.moved(plan.shift_mm)
    overhang = "" if ask.nailed else f"the overhang is {said(moved.overhang_mm, ask.division)} and "
    by_mm = max(plan.shift_mm, -plan.shift_mm)
    return (
        f"{overhang}the top batten {'is ' if ask.nailed else ''}{said(moved.top_mm, ask.division)} below the apex "
        f"({said(by_mm, ask.division)} moved in all)"
    )


def _instead(ask: CoursesAsk, choice: Choice, other: str) -> str:
    """The remedy not taken, and why: what is wished would suffer more by it."""
    if not choice.others:
        return ""
    theirs, ours = choice.others[0].departure_mm, choice.taken.departure_mm
    return f"; {other} instead departs from what is wished by {said(theirs, ask.division)}, this by {said(ours, ask.division)}"


def _gauge(ask: CoursesAsk, rods: Sequence[Rod]) -> str:
    least_mm, greatest_mm = min(rod.gauge_mm for rod in rods), max(rod.gauge_mm for rod in rods)
    least, greatest = said(least_mm, ask.division), said(greatest_mm, ask.division)
    return least if least == greatest else f"{least} to {greatest}"


def _one_fewer(ask: CoursesAsk, plan: Plan, spans: Spans, limits: GaugeLimits) -> str:
    if plan.count == 1:
        return "it is the only one"
    gauge_mm = spans.greatest_mm / (plan.count - 1)
    over = f"the greatest, {_greatest(ask)}"
    if gauge_mm <= ask.gauge_max_mm:
        over = f"{said(limits.greatest_mm, ask.division)}, the greatest a rod can be marked with that keeps {_greatest(ask)}"
    return f"one fewer would need {said(gauge_mm, ask.division)}, over {over}"


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
