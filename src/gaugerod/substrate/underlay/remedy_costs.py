"""What each remedy for laps between battens takes over the whole slope, so that a person can choose."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod.geometry.polygon import Point
from gaugerod.substrate.underlay.answer import LapBetween, RemedyCost, Run, RunLap
from gaugerod.substrate.underlay.ask import LapRemedy, UnderlayAsk
from gaugerod.substrate.underlay.run_lines import RunLines, run_lines


def remedy_costs(
    ask: UnderlayAsk, taken: RunLines, reach_mm: Sequence[Point], *, least_lap_mm: float
) -> Iterator[RemedyCost]:
    """The remedy taken first, then the others; nothing where every lap lies on a batten of itself."""
    if not any(isinstance(lap.place, LapBetween) for lap in taken.laps):
        return
    top_mm = max(y for _, y in reach_mm)
    for remedy in sorted(LapRemedy, key=lambda remedy: remedy is not ask.between_battens):
        lines = run_lines(replace(ask, between_battens=remedy), reach_mm, least_lap_mm=least_lap_mm)
        yield RemedyCost(
            remedy=remedy,
            runs_count=len(lines.runs),
            laid_area_mm2=runs_area_mm2(lines.runs, top_mm=top_mm),
            extra_batten_length_mm=_length_mm(lines.laps, LapRemedy.EXTRA_BATTEN),
            tape_length_mm=_length_mm(lines.laps, LapRemedy.TAPE),
        )


def runs_area_mm2(runs: Sequence[Run], *, top_mm: float) -> float:
    """The runs as laid, laps counted on both: each a rectangle, the top run cut off at the reach."""
    return sum(run.length_mm * (min(run.high_mm, top_mm) - run.low_mm) for run in runs)


def _length_mm(laps: Sequence[RunLap], remedy: LapRemedy) -> float:
    return sum(lap.place.length_mm for lap in laps if isinstance(lap.place, LapBetween) and lap.place.remedy is remedy)
