"""The courses of one slope of a building, as they were shared out with the slopes it meets at hips and valleys."""

from dataclasses import replace
from fractions import Fraction

from gaugerod.setting_out.ask_faults import refuse_faults
from gaugerod.setting_out.courses import Courses, CoursesAsk, Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import Ends, exact_length_mm
from gaugerod.setting_out.remedies import Choice, Plan
from gaugerod.setting_out.rods import make_rods
from gaugerod.setting_out.round_corners import Shared
from gaugerod.setting_out.set_courses import answered, ground_of


def courses_together(ask: CoursesAsk, shared: Shared, *, says: str) -> Courses:
    """The courses with the first batten, gauge and number of gauges that were shared out.

    Raises InputRefused with every fault of the ask. ``says`` is the reason, told in place of the slope's own.
    """
    refuse_faults(ask)
    ground = ground_of(ask)
    place = ground.places[0]
    ends = Ends(
        overhang_mm=exact_length_mm(ask.hanging_length_mm - shared.first_mm),
        top_mm=place.length_mm - exact_length_mm(shared.top_mm),
    )
    plan = Plan(
        strategy=Strategy.PARALLEL if shared.cut_top else Strategy.EQUAL,
        count=shared.gauges_count,
        shift_mm=Fraction(0),
        departure_mm=Fraction(0),
    )
    whole_mm = exact_length_mm(shared.gauge_mm) * shared.gauges_count
    rods = make_rods(
        ask=ask,
        places=ground.places,
        plan=plan,
        spans=Spans(least_mm=whole_mm, greatest_mm=whole_mm),
        wished=ends,
        moved=ends,
        limits=ground.limits,
    )
    return replace(answered(ask, ground, rods=rods, choice=Choice(taken=plan, others=())), why=says)
