"""The courses up one slope, from the first batten at the eaves to the top batten under the ridge."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.rounding import Division
from gaugerod.setting_out.alternatives import alternatives
from gaugerod.setting_out.ask_faults import refuse_faults
from gaugerod.setting_out.carry_on import kept_gap_findings, kept_overhang_findings, places_of
from gaugerod.setting_out.course_findings import course_findings
from gaugerod.setting_out.course_working import course_working, why
from gaugerod.setting_out.courses import Courses, CoursesAsk, Rod, Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import EndBands, Ends, GaugeLimits, end_bands, exact_length_mm, gauge_limits
from gaugerod.setting_out.openings import courses_at_openings
from gaugerod.setting_out.remedies import BATTEN_WIDTH_MM, Choice, Plan, choose
from gaugerod.setting_out.rods import Place, kept_rods, make_rods, spans_of
from gaugerod.setting_out.said import said


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What the courses are set out between, before anything is chosen."""

    places: tuple[Place, ...]
    limits: GaugeLimits
    ends: EndBands
    spans: Spans


def set_out_courses(ask: CoursesAsk) -> Courses:
    """The courses: fewest gauges that keep every lap, equal at each station, on rods rounded without breaking a limit.

    Raises InputRefused with every fault of the ask, and NothingToSetOut where the slope is too short for two battens.

    Source: general practice for fixed points and equal gauges (published: see ``equal_gauge``); the choice between
    remedies is a house rule (``remedies``).
    Scope: units hung on battens, straight eaves.
    """
    refuse_faults(ask)
    ground = ground_of(ask)
    if len(ground.places[0].kept_mm) > 1 and (_nailed_to_the_top(ground) or _no_room_for_a_batten(ground)):
        return answered(ask, ground, rods=kept_rods(ask=ask, places=ground.places), choice=None)
    _refuse_too_short(ask, ground)
    choice = choose(spans=ground.spans, limits=ground.limits, ends=ground.ends)
    return answered(ask, ground, rods=_rods(ask, ground, choice.taken), choice=choice)


def ground_of(ask: CoursesAsk) -> Ground:
    """What the courses of this ask are set out between. Faults of the ask must have been refused."""
    places = places_of(ask)
    ends = end_bands(ask=ask, lengths_mm=[place.length_mm for place in places])
    if ask.nailed:
        ends = _overhang_held(ends)
    spans_mm = spans_of(places=places, hanging_length_mm=exact_length_mm(ask.hanging_length_mm), ends=ends.wished)
    limits = gauge_limits(gauge_min_mm=ask.gauge_min_mm, gauge_max_mm=ask.gauge_max_mm, division=ask.division)
    spans = Spans(least_mm=min(spans_mm), greatest_mm=max(spans_mm))
    return Ground(places=places, limits=limits, ends=ends, spans=spans)


def _overhang_held(ends: EndBands) -> EndBands:
    """With battens nailed the overhang is what it is: only the ridge allowance can move."""

    def held(end: Ends) -> Ends:
        return Ends(overhang_mm=ends.wished.overhang_mm, top_mm=end.top_mm)

    return EndBands(least=held(ends.least), greatest=held(ends.greatest), wished=ends.wished)


def _nailed_to_the_top(ground: Ground) -> bool:
    """Does the last nailed batten stand in the top batten's band, or above it, at every place?"""
    return ground.spans.greatest_mm <= ground.ends.greatest.top_mm - ground.ends.wished.top_mm


def no_room_for_courses(ask: CoursesAsk) -> bool:
    """Is the slope too short somewhere for two battens, and so for any courses? Raises InputRefused as the setting out does."""
    refuse_faults(ask)
    return _no_room_for_a_batten(ground_of(ask))


def _no_room_for_a_batten(ground: Ground) -> bool:
    """Is there a place with less than a batten's width from the starting batten to the top one?"""
    return ground.spans.least_mm < BATTEN_WIDTH_MM


def _refuse_too_short(ask: CoursesAsk, ground: Ground) -> None:
    if not _no_room_for_a_batten(ground):
        return
    shortest = min(ground.places, key=lambda place: place.length_mm)
    left_mm = ground.spans.least_mm
    left = "nothing is left" if left_mm <= 0 else f"only {said(left_mm, ask.division)} is left, less than a batten"
    raise NothingToSetOut(
        f"{ask.where}: the slope is {said(shortest.length_mm, ask.division)} up the rafter, "
        f"{said(shortest.at_mm, ask.division)} from the left. Between the first batten and the top one {left}, "
        f"so there are no courses to set out: one unit or a flashing covers it."
    )


def _rods(ask: CoursesAsk, ground: Ground, plan: Plan) -> tuple[Rod, ...]:
    return make_rods(
        ask=ask,
        places=ground.places,
        plan=plan,
        spans=ground.spans,
        wished=ground.ends.wished,
        moved=ground.ends.moved(plan.shift_mm),
        limits=ground.limits,
    )


def answered(ask: CoursesAsk, ground: Ground, *, rods: tuple[Rod, ...], choice: Choice | None) -> Courses:
    """The courses on these rods, with everything that is said about them."""
    strategy = _strategy(ask, choice)
    greatest_gap_mm = greatest_lap_gap_mm(rods, strategy)
    gauges_mm = [rod.gauge_mm for rod in rods]
    return Courses(
        strategy=strategy,
        why=why(ask=ask, rods=rods, choice=choice, spans=ground.spans, limits=ground.limits, ends=ground.ends),
        count=len(rods[0].marks_mm),
        gauge_min_mm=ask.gauge_min_mm,
        gauge_max_mm=ask.gauge_max_mm,
        headlap_mm=ask.unit_length_mm - greatest_gap_mm,
        overhang_mm=rods[0].overhang_mm,
        rods=rods,
        taper_per_course_mm=max(gauges_mm) - min(gauges_mm),
        top_course_cut_mm=_top_course_cut_mm(rods, ask.division) if strategy is Strategy.PARALLEL else None,
        openings=courses_at_openings(ask=ask, rods=rods, limits=ground.limits),
        findings=(
            *course_findings(ask=ask, rods=rods, strategy=strategy),
            *kept_gap_findings(ask=ask, rods=rods),
            *kept_overhang_findings(ask=ask, rods=rods),
        ),
        alternatives=()
        if choice is None and _nailed_to_the_top(ground)
        else alternatives(
            ask=ask,
            choice=choice,
            places=ground.places,
            spans=ground.spans,
            limits=ground.limits,
            ends=ground.ends,
        ),
        working=course_working(ask=ask, rods=rods, greatest_gap_mm=greatest_gap_mm),
    )


def _strategy(ask: CoursesAsk, choice: Choice | None) -> Strategy:
    if choice is None:
        return Strategy.CARRIED_ON
    if ask.nailed and choice.taken.strategy in {Strategy.EQUAL, Strategy.FANNED, Strategy.FLEXED}:
        return Strategy.CARRIED_ON
    return choice.taken.strategy


def greatest_lap_gap_mm(rods: Sequence[Rod], strategy: Strategy) -> float:
    """The greatest rounded gap on any rod: the one with the least lap.

    With the top course cut, its tail stays on the courses below, so the lap there is that of their gauge.
    """
    gaps_mm = [gap_mm for rod in rods for gap_mm in rod.gaps_mm]
    if strategy is Strategy.PARALLEL:
        gaps_mm.extend(rod.gauge_mm for rod in rods)
    return max(gaps_mm)


def _top_course_cut_mm(rods: Sequence[Rod], division: Division) -> tuple[float, float] | None:
    """How much the head of the top course loses, least and most: its gauge less the last gap.

    None when no rod loses as much as a division: there is nothing to mark and nothing to cut.
    """
    cuts_mm = [max(0.0, float(Fraction(rod.gauge_mm) - Fraction(rod.gaps_mm[-1]))) for rod in rods]
    if max(cuts_mm) < float(division.step_mm):
        return None
    return min(cuts_mm), max(cuts_mm)
