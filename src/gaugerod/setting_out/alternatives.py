"""What else could be done with the courses: each change with its size, its numbers and what it costs the roof."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil

from gaugerod.setting_out.courses import Alternative, CoursesAsk, Strategy
from gaugerod.setting_out.equal_gauge import Spans, shift_to_fit
from gaugerod.setting_out.marked_limits import EndBands, Ends, GaugeLimits
from gaugerod.setting_out.remedies import BATTEN_WIDTH_MM, Choice, Plan
from gaugerod.setting_out.rods import Place
from gaugerod.setting_out.said import counted, said
from gaugerod.setting_out.take_down import TakenDown, fewest_taken_down

FURTHEST_PAST_BAND_MM = 50
"""An overhang further than this past its band is not offered: water passes the gutter (house)."""

GAUGES_MADE_MM = (85, 400)
"""No covering with a smaller or greater gauge is offered: plain tiles to the largest single-lap tiles (house)."""

WIDEST_RANGE_MM = 60
"""Nor one that would need a wider gauge range than this: the widest of the catalogue (house)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Case:
    """The roof the alternatives are for."""

    ask: CoursesAsk
    spans: Spans
    limits: GaugeLimits
    ends: EndBands

    def said(self, length_mm: Fraction) -> str:
        return said(length_mm, self.ask.division)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Offer:
    """An alternative before it has its rank."""

    change: str
    by_mm: Fraction
    costs: str
    keeps_limits: bool
    gauges: int
    gauge_mm: Fraction


def alternatives(
    *,
    ask: CoursesAsk,
    choice: Choice | None,
    places: Sequence[Place],
    spans: Spans,
    limits: GaugeLimits,
    ends: EndBands,
) -> tuple[Alternative, ...]:
    """Every alternative, those that keep all limits first, and among those the least change first.

    ``choice`` is None where the nailed battens leave no room for another and the top one is out of its band.
    """
    case = _Case(ask=ask, spans=spans, limits=limits, ends=ends)
    offers = [] if choice is None else [_remedy(case, plan, taken=choice.taken) for plan in choice.others]
    if choice is not None and choice.taken.strategy is Strategy.NONE:
        offers.extend(_when_nothing_fits(case, choice.taken.count))
    if ask.nailed and (choice is None or choice.taken.strategy is Strategy.NONE):
        offers.extend(_battens_taken_down(case, places))
    ranked = sorted(offers, key=lambda offer: (not offer.keeps_limits, offer.by_mm))
    return tuple(
        Alternative(
            rank=rank,
            change=offer.change,
            by_mm=float(offer.by_mm),
            costs=offer.costs,
            keeps_limits=offer.keeps_limits,
            gauges=offer.gauges,
            gauge_mm=float(offer.gauge_mm),
        )
        for rank, offer in enumerate(ranked, 1)
    )


def _remedy(case: _Case, plan: Plan, *, taken: Plan) -> _Offer:
    """A remedy that would serve as well, or a course saved by moving the ends."""
    gauge_mm = (case.spans.greatest_mm + plan.shift_mm) / plan.count
    if plan.strategy is Strategy.PARALLEL:
        change = (
            f"Keep the battens parallel to the eaves at {case.said(gauge_mm)} and cut "
            f"{case.said(case.spans.taper_mm)} of taper off the top course."
        )
        costs = "The top course loses its nibs where it is cut: nail or clip every unit of it."
    else:
        moved = case.ends.moved(plan.shift_mm)
        change = (
            f"Overhang {case.said(moved.overhang_mm)}, top batten {case.said(moved.top_mm)} below the apex: "
            f"{counted(plan.count, 'gauge')} of {case.said(gauge_mm)}."
        )
        costs = "Both stay inside their bands."
        if plan.count < taken.count:
            costs = "One course fewer. Both ends stay inside their bands; every lap comes nearer its least."
    return _Offer(
        change=change, by_mm=plan.departure_mm, costs=costs, keeps_limits=True, gauges=plan.count, gauge_mm=gauge_mm
    )


def _when_nothing_fits(case: _Case, fewest: int) -> Iterator[_Offer]:
    """Every way out; where there is none, what a covering would have to be, though none is known to be made so."""
    offers = [*_ways_out(case, fewest)]
    yield from offers or [_no_covering_known(case, fewest)]


def _ways_out(case: _Case, fewest: int) -> Iterator[_Offer]:
    for count in (fewest - 1, fewest):
        shift_mm = shift_to_fit(count=count, spans=case.spans, limits=case.limits) if count > 0 else None
        if shift_mm is not None:
            yield from _moved_ends(case, count, shift_mm)
    yield from _run_out_courses(case, fewest)
    if case.limits.least_mm is not None:
        yield from _cut_top_course(case, fewest, case.limits.least_mm)
        yield from _two_gauges(case, fewest, case.limits.least_mm)
    yield from _another_covering(case, fewest)


def _moved_ends(case: _Case, count: int, shift_mm: Fraction) -> Iterator[_Offer]:
    """The overhang alone, the ridge allowance alone, and both, moved as far as ``count`` gauges need."""
    wished, gauge_mm = case.ends.wished, (case.spans.greatest_mm + shift_mm) / count
    overhang_alone = Ends(overhang_mm=wished.overhang_mm + shift_mm, top_mm=wished.top_mm)
    top_alone = Ends(overhang_mm=wished.overhang_mm, top_mm=wished.top_mm - shift_mm)
    both = case.ends.moved(shift_mm)
    tried: list[tuple[Ends, str]] = []
    if not case.ask.nailed:
        tried.append((overhang_alone, f"Change the overhang to {case.said(overhang_alone.overhang_mm)}"))
        if both not in (overhang_alone, top_alone):
            words = f"Change the overhang to {case.said(both.overhang_mm)} and the ridge allowance to {case.said(both.top_mm)}"
            tried.append((both, words))
    tried.append((top_alone, f"Change the ridge allowance to {case.said(top_alone.top_mm)}"))
    for ends, words in tried:
        if ends.top_mm < 0 or not 0 <= ends.overhang_mm <= case.ends.greatest.overhang_mm + FURTHEST_PAST_BAND_MM:
            continue  # a batten past the apex, tails short of the fascia or past the gutter, are no setting out
        costs, keeps = _what_moving_costs(case, ends)
        yield _Offer(
            change=f"{words}: {counted(count, 'gauge')} of {case.said(gauge_mm)}.",
            by_mm=abs(ends.overhang_mm - wished.overhang_mm) + abs(ends.top_mm - wished.top_mm),
            costs=costs,
            keeps_limits=keeps,
            gauges=count,
            gauge_mm=gauge_mm,
        )


def _what_moving_costs(case: _Case, ends: Ends) -> tuple[str, bool]:
    """What it does to the roof, and whether the ridge still covers the top course."""
    costs, keeps = [], True
    least, greatest = case.ends.least, case.ends.greatest
    if ends.overhang_mm > greatest.overhang_mm:
        past = case.said(ends.overhang_mm - greatest.overhang_mm)
        costs.append(
            f"The tails reach {past} past the band: water may shoot over the gutter. Check the gutter's width."
        )
    if ends.overhang_mm < least.overhang_mm:
        short = case.said(least.overhang_mm - ends.overhang_mm)
        costs.append(f"The tails stop {short} short of the band: water may run back behind the gutter.")
    if ends.top_mm > greatest.top_mm:
        keeps = False
        low = case.said(ends.top_mm - greatest.top_mm)
        costs.append(
            f"The top batten is {low} too low for its band: the ridge must reach further down to cover its heads."
        )
    if ends.top_mm < least.top_mm:
        near = case.said(least.top_mm - ends.top_mm)
        costs.append(f"The top batten is {near} nearer the apex than its band: check that the ridge fixing clears it.")
    return " ".join(costs) or "Both stay inside their bands.", keeps


def _run_out_courses(case: _Case, fewest: int) -> Iterator[_Offer]:
    """A taper of more than a course: battens parallel to the eaves, the ridge cutting across several courses."""
    gauge_mm = case.spans.greatest_mm / fewest
    if not case.limits.hold(gauge_mm) or case.spans.taper_mm < gauge_mm - BATTEN_WIDTH_MM:
        return
    across = ceil(case.spans.taper_mm / gauge_mm)
    yield _Offer(
        change=(
            f"Keep the battens parallel to the eaves at {case.said(gauge_mm)} and let the top "
            f"{counted(across, 'course')} run out against the ridge, {case.said(case.spans.taper_mm)} in all."
        ),
        by_mm=case.spans.taper_mm,
        costs="Those courses are cut at a rake along the ridge and lose their nibs: nail or clip every cut unit.",
        keeps_limits=True,
        gauges=fewest,
        gauge_mm=gauge_mm,
    )


def _cut_top_course(case: _Case, count: int, least_mm: Fraction) -> Iterator[_Offer]:
    """All courses at the least gauge, and the head of the top course cut off where it passes the top batten."""
    cut_mm = count * least_mm - case.spans.greatest_mm
    last_gap_mm = least_mm - cut_mm - case.spans.taper_mm
    if cut_mm <= 0 or last_gap_mm < BATTEN_WIDTH_MM:
        return
    most_mm = cut_mm + case.spans.taper_mm
    amount = case.said(cut_mm) if not case.spans.taper_mm else f"{case.said(cut_mm)} to {case.said(most_mm)}"
    yield _Offer(
        change=f"Cut the top course at its head by {amount}: {counted(count, 'gauge')} of {case.said(least_mm)}.",
        by_mm=most_mm,
        costs="The cut units lose their nibs: nail or clip every one. Every lap and gauge below keeps its limits.",
        keeps_limits=True,
        gauges=count,
        gauge_mm=least_mm,
    )


def _two_gauges(case: _Case, count: int, least_mm: Fraction) -> Iterator[_Offer]:
    """Two gauges in blocks. Any mix inside the range adds up to the same as equal gauges, so some must leave it."""
    if least_mm > case.limits.greatest_mm:
        return  # no gauge in the range can be marked, so there are no blocks of one
    deficit_mm = count * least_mm - case.spans.least_mm
    block = ceil(count / 2)
    close_mm = least_mm - deficit_mm / block
    if count == block or deficit_mm <= 0 or close_mm < BATTEN_WIDTH_MM:
        return
    reach = f"{case.said(count * least_mm)} to {case.said(count * case.limits.greatest_mm)}"
    yield _Offer(
        change=(
            f"Two gauges in blocks: {counted(count - block, 'gauge')} of {case.said(least_mm)}, "
            f"then {counted(block, 'gauge')} of {case.said(close_mm)}."
        ),
        by_mm=deficit_mm,
        costs=(
            f"Mixing gauges does not help by itself: {counted(count, 'gauge')} inside the range always come to {reach}. "
            f"So the upper block lies {case.said(least_mm - close_mm)} under the least gauge. "
            f"Only if a trial lay shows that the units bed."
        ),
        keeps_limits=False,
        gauges=count,
        gauge_mm=close_mm,
    )


def _battens_taken_down(case: _Case, places: Sequence[Place]) -> Iterator[_Offer]:
    """The last nailed battens taken down, as few as will do."""
    found = fewest_taken_down(places=places, limits=case.limits, ends=case.ends)
    if found is None:
        return
    gauge_mm = found.plan.gauge_mm(span_mm=found.spans.greatest_mm, spans=found.spans)
    last = found.from_batten
    yield _Offer(
        change=(
            f"Take down the last {_last_nailed(found.count)} and set out from batten {last}: "
            f"{counted(found.plan.count, 'gauge')} of {case.said(gauge_mm)}."
        ),
        by_mm=max(place.kept_mm[-1] - place.kept_mm[last - 1] for place in places),
        costs=_what_taking_down_costs(case, found),
        keeps_limits=all(
            case.limits.hold(upper_mm - lower_mm)
            for place in places
            for lower_mm, upper_mm in pairwise(place.kept_mm[:last])
        ),
        gauges=found.plan.count,
        gauge_mm=gauge_mm,
    )


def _last_nailed(count: int) -> str:
    return "nailed batten" if count == 1 else counted(count, "nailed batten")


def _what_taking_down_costs(case: _Case, found: TakenDown) -> str:
    costs = ["Draw the nails, patch the underlay where they were, and nail those battens again to new marks."]
    if found.plan.shift_mm:
        costs.append(
            f"The top batten then stands {case.said(case.ends.moved(found.plan.shift_mm).top_mm)} below the apex."
        )
    if found.plan.strategy is Strategy.PARALLEL:
        costs.append(f"The top course is cut along the ridge by up to {case.said(found.spans.taper_mm)}.")
    return " ".join(costs)


def _another_covering(case: _Case, fewest: int) -> Iterator[_Offer]:
    """Only where there could be a covering with such a range."""
    spans = case.spans
    counts = [
        count
        for count in (fewest, fewest - 1)
        if count > 0 and _is_made(spans.least_mm / count, spans.greatest_mm / count)
    ]
    if not counts:
        return
    wanted = []
    for count in counts:
        least, greatest = case.said(spans.least_mm / count), case.said(spans.greatest_mm / count)
        gauge = least if least == greatest else f"{least} to {greatest}"
        wanted.append(f"{gauge} ({counted(count, 'gauge')})")
    yield _Offer(
        change=f"Another covering, one whose gauge range takes in {' or '.join(wanted)}.",
        by_mm=Fraction(case.ask.unit_length_mm),
        costs="A different unit: pitch, lap, cover width and the order all change. Set it out again.",
        keeps_limits=True,
        gauges=counts[0],
        gauge_mm=spans.greatest_mm / counts[0],
    )


def _no_covering_known(case: _Case, fewest: int) -> _Offer:
    return _Offer(
        change=f"Another length up the slope, or a covering that lies at {case.said(case.spans.greatest_mm / fewest)}.",
        by_mm=Fraction(case.ask.unit_length_mm),
        costs="No covering known here lies so: ask its maker, or change the eaves or the ridge. Set it out again.",
        keeps_limits=True,
        gauges=fewest,
        gauge_mm=case.spans.greatest_mm / fewest,
    )


def _is_made(least_mm: Fraction, greatest_mm: Fraction) -> bool:
    """Could there be a covering whose gauge range takes in both?"""
    return (
        GAUGES_MADE_MM[0] <= least_mm and greatest_mm <= GAUGES_MADE_MM[1] and greatest_mm - least_mm <= WIDEST_RANGE_MM
    )
