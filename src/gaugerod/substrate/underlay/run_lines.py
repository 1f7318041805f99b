"""The runs from the eaves up: each as high as its lap allows, the lap brought onto a batten where one is near enough.

Why from the eaves, each run as high as it can go, takes the fewest runs: a run that starts higher never makes the next one
start lower, since the lap it must keep and the battens it may lap on only rise with it. (So long as every lap reaches a
batten; one that does not, and takes an extra batten or tape, starts as high as any may.)
"""

from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH
from gaugerod.basis.rounding import count_below
from gaugerod.geometry.polygon import Point
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import LapBetween, LapOnBatten, Run, RunLap, Span
from gaugerod.substrate.underlay.ask import LapRemedy, UnderlayAsk
from gaugerod.substrate.underlay.batten_lines import BattenLines
from gaugerod.substrate.underlay.spans import spans_between_mm

RUNS_GREATEST_COUNT = 1000
"""More runs than this is a slip in the figures: no roof has so many (house)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunLines:
    """The runs, and the lap below each but the first."""

    runs: tuple[Run, ...]
    laps: tuple[RunLap, ...]


def run_lines(ask: UnderlayAsk, reach_mm: Sequence[Point], *, least_lap_mm: float) -> RunLines:
    """Every run from the foot of the reach to its top. Raises NothingToSetOut for a roll no wider than its lap."""
    width_mm = ask.record.roll_width_mm
    top_mm = max(y for _, y in reach_mm)
    if not width_mm > 2 * least_lap_mm - TOUCH:
        raise NothingToSetOut(
            f"{ask.where}: a roll {width_mm:g} mm wide is mostly lap at {least_lap_mm:g} mm; take a wider one"
        )
    low_mm = _down_mm(ask, min(y for _, y in reach_mm))
    if (top_mm - low_mm) / (width_mm - least_lap_mm) > RUNS_GREATEST_COUNT:
        raise NothingToSetOut(
            f"{ask.where}: rolls {width_mm:g} mm wide make over {RUNS_GREATEST_COUNT} runs; check the figures"
        )
    battens = BattenLines(rods=ask.rods, width_mm=ask.batten_width_mm)
    runs, laps = [_run(reach_mm, 1, low_mm, width_mm)], []
    while runs[-1].high_mm < top_mm - TOUCH:
        lap = _lap_above(ask, runs[-1], battens, least_lap_mm=least_lap_mm)
        laps.append(lap)
        runs.append(_run(reach_mm, lap.upper, lap.low_mm, width_mm))
    return RunLines(runs=tuple(runs), laps=tuple(laps))


def _run(reach_mm: Sequence[Point], number: int, low_mm: float, width_mm: float) -> Run:
    spans = spans_between_mm(reach_mm, low_mm=low_mm, high_mm=low_mm + width_mm)
    return Run(number=number, low_mm=low_mm, high_mm=low_mm + width_mm, spans_mm=spans)


def _lap_above(ask: UnderlayAsk, below: Run, battens: BattenLines, *, least_lap_mm: float) -> RunLap:
    """Where the run above ``below`` starts: the least lap when a batten lies on it, else by the remedy asked for."""
    high_mm = below.high_mm
    least_low_mm = _down_mm(ask, high_mm - least_lap_mm)
    along = (below.spans_mm[0][0], below.spans_mm[-1][1])
    low_mm, place = least_low_mm, _place(ask, least_low_mm, high_mm, along, battens)
    if isinstance(place, LapBetween) and place.remedy is LapRemedy.WIDEN and place.widened_mm is not None:
        low_mm = high_mm - place.widened_mm
    return RunLap(upper=below.number + 1, low_mm=low_mm, high_mm=high_mm, least_mm=least_lap_mm, place=place)


def _place(
    ask: UnderlayAsk, low_mm: float, high_mm: float, along: Span, battens: BattenLines
) -> LapOnBatten | LapBetween | None:
    if not battens.count:
        return None
    left, right = along
    on = battens.on_lap(low_mm=low_mm, high_mm=high_mm, from_mm=left, to_mm=right)
    if on is not None:
        return LapOnBatten(batten=on + 1)
    widened_mm = _widened_mm(ask, high_mm, along, battens)
    extra_mm = _extra_batten_mm(ask, low_mm, high_mm, along, battens)
    remedy = ask.between_battens
    if remedy is LapRemedy.WIDEN and widened_mm is None:
        remedy = LapRemedy.EXTRA_BATTEN
    if remedy is LapRemedy.EXTRA_BATTEN and extra_mm is None:
        remedy = LapRemedy.TAPE
    return LapBetween(remedy=remedy, widened_mm=widened_mm, extra_batten_mm=extra_mm, length_mm=right - left)


def _widened_mm(ask: UnderlayAsk, high_mm: float, along: Span, battens: BattenLines) -> float | None:
    """The lap that takes in the next batten below the upper edge; None when it is most of the roll, or none is there."""
    below = battens.highest_under(high_mm, from_mm=along[0], to_mm=along[1])
    if below is None:
        return None
    widened_mm = high_mm - _down_mm(ask, battens.bounds_mm(below, from_mm=along[0], to_mm=along[1])[0])
    greatest = underlay_figure(ask.edition, UnderlayFigure.LAP_GREATEST_SHARE)
    return widened_mm if widened_mm <= greatest.value * ask.record.roll_width_mm + TOUCH else None


def _extra_batten_mm(
    ask: UnderlayAsk, low_mm: float, high_mm: float, along: Span, battens: BattenLines
) -> float | None:
    """The top edge of a batten added in the middle of the lap, clear of the courses' own; None when it has no room."""
    low_mm, high_mm = battens.clear_mm(low_mm=low_mm, high_mm=high_mm, from_mm=along[0], to_mm=along[1])
    top_mm = _down_mm(ask, (low_mm + high_mm + ask.batten_width_mm) / 2)
    return top_mm if top_mm - ask.batten_width_mm >= low_mm - TOUCH else None


def _down_mm(ask: UnderlayAsk, height_mm: float) -> float:
    """Down to a division that can be read off a tape: a run that starts lower laps by more, never by less."""
    return count_below(height_mm, ask.division) * float(ask.division.step_mm)
