"""Counter-battens: one up every rafter, from edge to edge of the slope, stopped at openings."""

from collections.abc import Sequence
from itertools import pairwise
from math import ceil

from gaugerod.basis.finding import TOUCH
from gaugerod.laying.ask import Ring
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.answer import CounterBattens


def counter_battens(
    *, outline: Ring, openings: Sequence[Ring], rafters_mm: Sequence[float], edition: Edition
) -> CounterBattens:
    """How many metres, and the fixings at the greatest centres or closer: one at each end of every run."""
    centres = batten_figure(edition, BattenFigure.COUNTER_BATTEN_CENTRES_GREATEST)
    runs_mm = [run_mm for at_mm in rafters_mm for run_mm in _runs_mm((outline, *openings), at_mm)]
    return CounterBattens(
        length_mm=sum(runs_mm),
        fixings_count=sum(ceil((run_mm - TOUCH) / centres.value) + 1 for run_mm in runs_mm),
        centres_mm=centres.value,
        citation=centres.citation,
    )


def _runs_mm(rings: Sequence[Ring], at_mm: float) -> list[float]:
    """The lengths up a rafter that lie on the slope. One right at the edge of the slope is taken just inside it."""
    low_mm, high_mm = min(x for x, _ in rings[0].points_mm), max(x for x, _ in rings[0].points_mm)
    inside_mm = min(max(at_mm, low_mm + 2 * TOUCH), high_mm - 2 * TOUCH)
    crossed = sorted(
        y0 + (y1 - y0) * (inside_mm - x0) / (x1 - x0)
        for ring in rings
        for (x0, y0), (x1, y1) in pairwise((*ring.points_mm, ring.points_mm[0]))
        if (x0 > inside_mm) != (x1 > inside_mm)
    )
    return [upper - lower for lower, upper in zip(crossed[::2], crossed[1::2], strict=True) if upper - lower > TOUCH]
