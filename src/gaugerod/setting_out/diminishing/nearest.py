"""The nearest other plans: what would mend a stack that falls short, and what else a stack that does not would give."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import islice
from math import ceil

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import Heap
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.diminishing.answer import DiminishingPlan
from gaugerod.setting_out.diminishing.ask import Aim, DiminishingAsk
from gaugerod.setting_out.diminishing.best import (
    best_plan,
    course_run_mm,
    least_ridge_cover_mm,
    need_for,
    overhangs_divisions,
    ridge_reaches,
    supplies_for,
)
from gaugerod.setting_out.diminishing.stack import Supply
from gaugerod.setting_out.said import said

MORE_COURSES_COUNT = 8
"""How many courses beyond the bare reckoning are tried before a length is given up."""
OFFERS_TO_BUY_COUNT = 3
"""A choice of three is enough to ring round with."""


def short_by_mm(ask: DiminishingAsk) -> float:
    """Height of slope the whole stack leaves bare, every slate laid at its full gauge; nothing when it would reach."""
    supplies = supplies_for(ask)
    need = need_for(ask, overhang_divisions=overhangs_divisions(ask)[-1])
    reach = sum(supply.gauge_divisions * supply.courses_count for supply in supplies)
    return max(need.cover_divisions - reach, 0) * float(ask.division.step_mm)


def ways_to_mend(ask: DiminishingAsk) -> tuple[Alternative, ...]:
    """What would make a plan possible, the least change first. Each is tried before it is offered."""
    if not ridge_reaches(ask):
        return (_wider_ridge(ask),)
    offers = [*_dressed_down(ask), *islice(_bought(ask), OFFERS_TO_BUY_COUNT)]
    return tuple(replace(offer, rank=rank) for rank, offer in enumerate(offers, start=1))


def other_plans(ask: DiminishingAsk, plan: DiminishingPlan) -> tuple[Alternative, ...]:
    """The plan of the other aim, and the largest lap this stack could give instead."""
    offers = [*_other_aim(ask, plan), *_larger_lap(ask)]
    return tuple(replace(offer, rank=rank) for rank, offer in enumerate(offers, start=1))


def _offer(change: str, *, by_mm: float, costs: str, plan: DiminishingPlan | None) -> Alternative:
    return Alternative(
        rank=1,
        change=change,
        by_mm=by_mm,
        costs=costs,
        keeps_limits=True,
        gauges=plan.courses_count if plan else 0,
        gauge_mm=plan.groups[0].gauge_mm if plan else 0.0,
    )


def _tried(ask: DiminishingAsk) -> DiminishingPlan | None:
    """The plan of a changed ask; None, too, when its rods would differ too much: then it is no way out."""
    try:
        return best_plan(ask)
    except NothingToSetOut:
        return None


def _wider_ridge(ask: DiminishingAsk) -> Alternative:
    reach_mm = least_ridge_cover_mm(ask)
    wider = replace(ask, ridge_cover_mm=reach_mm)
    return _offer(
        f"A ridge that reaches {said(reach_mm, ask.division)} down the slope from the apex",
        by_mm=reach_mm - ask.ridge_cover_mm,
        costs="Wider ridge units, or a flashing below them.",
        plan=_tried(wider),
    )


def _dressed_down(ask: DiminishingAsk) -> Iterator[Alternative]:
    """Part courses left of each length, cut down to the next shorter one."""
    sound_ratio = 1.0 - ask.slates.broken_ratio
    run_mm = course_run_mm(ask)
    carried_mm, moved_mm = 0.0, 0.0
    heaps: list[Heap] = []
    for supply in supplies_for(ask):
        moved_mm += carried_mm
        heaps.append(Heap(length_mm=supply.heap.length_mm, run_mm=(supply.run_mm + carried_mm) / sound_ratio))
        carried_mm = (supply.run_mm + carried_mm) % run_mm
        heaps[-1] = replace(heaps[-1], run_mm=(heaps[-1].run_mm or 0.0) - carried_mm / sound_ratio)
    if heaps:
        heaps[-1] = replace(heaps[-1], run_mm=(heaps[-1].run_mm or 0.0) + carried_mm / sound_ratio)
    plan = _tried(_with_heaps(ask, heaps))
    if plan is not None:
        yield _offer(
            "Dress the odd slates of each length, too few for a course, down to the next shorter length",
            by_mm=0.0,
            costs=f"{moved_mm / 1000:.1f} m of slate cut and holed again.",
            plan=plan,
        )


def _bought(ask: DiminishingAsk) -> Iterator[Alternative]:
    """More of one length: for each, the least that fills the slope; the least slate to buy first."""
    short_mm = short_by_mm(ask)
    step_mm = float(ask.division.step_mm)

    def courses_to_buy(supply: Supply) -> int:
        return max(ceil(short_mm / (supply.gauge_divisions * step_mm) - 1e-9), 1)

    for supply in sorted(supplies_for(ask), key=lambda one: courses_to_buy(one) * one.heap.length_mm):
        least = courses_to_buy(supply)
        # A few courses more where the stack is short of under-eaves slates, or drops between lengths cost height.
        for courses in range(least, least + 1 + MORE_COURSES_COUNT):
            heap, what, run_mm = _added(ask, supply, courses)
            plan = _tried(_with_heaps(ask, [heap, *(one for one in ask.slates.heaps if one != supply.heap)]))
            if plan is not None:
                yield _offer(
                    f"Buy {what} {said(supply.heap.length_mm, ask.division)} long",
                    by_mm=run_mm,
                    costs=f"{courses} more {'course' if courses == 1 else 'courses'} of that length, "
                    "the broken allowance counted in.",
                    plan=plan,
                )
                break


def _added(ask: DiminishingAsk, supply: Supply, courses: int) -> tuple[Heap, str, float]:
    """The heap with enough added for so many courses more, in words, and by what run."""
    lacking_mm = (supply.courses_count + courses) * course_run_mm(ask) - supply.run_mm
    buy_mm = lacking_mm / (1.0 - ask.slates.broken_ratio)
    heap = supply.heap
    if heap.slates_count is None or heap.average_width_mm is None:
        run_mm = ceil(buy_mm / 100 - 1e-9) * 100.0
        return replace(heap, run_mm=(heap.run_mm or 0.0) + run_mm), f"{run_mm / 1000:.1f} m run of slates", run_mm
    # One more than the run asks for: the broken allowance is rounded down to whole slates.
    slates = ceil(buy_mm / (heap.average_width_mm + ask.slates.joint_mm) - 1e-9) + 1
    what = f"{slates} slates, {said(heap.average_width_mm, ask.division)} wide on average,"
    return replace(heap, slates_count=heap.slates_count + slates), what, buy_mm


def _other_aim(ask: DiminishingAsk, plan: DiminishingPlan) -> Iterator[Alternative]:
    aim = Aim.FEWEST_COURSES if ask.aim is Aim.LEAST_LEFT else Aim.LEAST_LEFT
    other = _tried(replace(ask, aim=aim))
    if other is None or other.courses_count == plan.courses_count:
        return
    more = other.courses_count > plan.courses_count
    yield _offer(
        f"{'More' if more else 'Fewer'} short courses: {other.courses_count} courses instead of {plan.courses_count}",
        by_mm=other.left_run_mm,
        costs=f"{other.left_run_mm / 1000:.1f} m of slate stay over instead of {plan.left_run_mm / 1000:.1f} m.",
        plan=other,
    )


def _larger_lap(ask: DiminishingAsk) -> Iterator[Alternative]:
    """The largest lap at which the stack still fills the slope, in whole divisions."""
    supplies = supplies_for(ask)
    need = need_for(ask, overhang_divisions=overhangs_divisions(ask)[0])
    lap = need.headlap_divisions
    # By reckoning, then tried: the first lap down from the reckoned one at which a plan is found.
    while _reach(supplies, lap + 1) >= need.cover_divisions and ridge_reaches(_with_lap(ask, lap + 1)):
        lap += 1
    for larger in range(lap, max(need.headlap_divisions, lap - 3), -1):
        lapped = _with_lap(ask, larger)
        plan = _tried(replace(lapped, aim=Aim.FEWEST_COURSES))
        if plan is not None:
            yield _offer(
                f"A larger lap: {said(lapped.headlap.value, ask.division)} instead of {said(ask.headlap.value, ask.division)}",
                by_mm=lapped.headlap.value - ask.headlap.value,
                costs=f"{plan.courses_count} courses; {plan.left_run_mm / 1000:.1f} m of slate stay over.",
                plan=plan,
            )
            return


def _reach(supplies: Sequence[Supply], lap_divisions: int) -> int:
    return sum(max((supply.usable_divisions - lap_divisions) // 2, 0) * supply.courses_count for supply in supplies)


def _with_lap(ask: DiminishingAsk, lap_divisions: int) -> DiminishingAsk:
    lap_mm = lap_divisions * float(ask.division.step_mm)
    return replace(ask, headlap=Limit(value=lap_mm, unit="mm", citation=ask.headlap.citation))


def _with_heaps(ask: DiminishingAsk, heaps: Sequence[Heap]) -> DiminishingAsk:
    return replace(ask, slates=replace(ask.slates, heaps=tuple(heaps)))
