"""Nailed battens that leave no good way on: how few of the last ones to take down so that the rest sets out."""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.setting_out.courses import Strategy
from gaugerod.setting_out.equal_gauge import Spans
from gaugerod.setting_out.marked_limits import EndBands, GaugeLimits
from gaugerod.setting_out.remedies import BATTEN_WIDTH_MM, Plan, choose
from gaugerod.setting_out.rods import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenDown:
    """Take down the last ``count`` nailed battens, then set out by ``plan`` over ``spans`` from batten ``from_batten``."""

    count: int
    from_batten: int
    plan: Plan
    spans: Spans


def fewest_taken_down(*, places: Sequence[Place], limits: GaugeLimits, ends: EndBands) -> TakenDown | None:
    """The fewest nailed battens to take down; None when even the first alone would not mend it."""
    kept_count = len(places[0].kept_mm)
    for last in range(kept_count - 1, 0, -1):
        spans_mm = [place.length_mm - ends.wished.top_mm - place.kept_mm[last - 1] for place in places]
        spans = Spans(least_mm=min(spans_mm), greatest_mm=max(spans_mm))
        if spans.least_mm < BATTEN_WIDTH_MM:
            continue
        plan = choose(spans=spans, limits=limits, ends=ends).taken
        if plan.strategy is not Strategy.NONE:
            return TakenDown(count=kept_count - last, from_batten=last, plan=plan, spans=spans)
    return None
