"""Perp marks along one line: cumulative from the left end of the roof structure, rounded once each.

A perp after n units stands at the left end of the covering plus the cover of those n units. Marks go to the nearest
division; where that would open or close a run of units past the shunt, or take the end of the run out of its band,
a mark goes to the division on the other side of its exact place, if that helps. No mark is ever a whole division out,
so no error accumulates.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.rounding import count_above, count_below, nearest_count
from gaugerod.setting_out.across import AcrossAsk, PerpLine, SideKind
from gaugerod.setting_out.cover_search import Layout


def perp_line(ask: AcrossAsk, layout: Layout, *, line: str, left_mm: float, right_mm: float) -> PerpLine:
    """The perps of one line: after every so many units, and the end of the run.

    ``left_mm`` and ``right_mm`` are the ends of the roof structure on this line.
    """
    start_mm, stop_mm = layout.ends_mm[:2]
    last_mm = stop_mm - max(ask.unit_width_mm - layout.cover_mm, 0.0)
    every_mm = ask.perps_every_count * layout.cover_mm
    after_none_mm = layout.first_perp_mm - layout.cover_mm
    runs = range(ceil((start_mm - after_none_mm) / every_mm), floor((last_mm - after_none_mm) / every_mm) + 1)
    perps_mm = [after_none_mm + run * every_mm for run in runs]
    exact_mm = (*(perp_mm for perp_mm in perps_mm if start_mm + TOUCH < perp_mm < last_mm - TOUCH), stop_mm)
    return PerpLine(
        line=line,
        first_mm=layout.first_perp_mm,
        cover_mm=layout.cover_mm,
        left_reach_mm=left_mm - start_mm,
        right_reach_mm=stop_mm - right_mm,
        marks_mm=_marks_mm(ask, exact_mm, right_mm=right_mm),
        exact_mm=exact_mm,
    )


def units_count(layout: Layout) -> int:
    """Units in a course of bond row 0, the pieces at both ends counted."""
    return layout.placed[1].perp_count + 2


def run_limits_mm(ask: AcrossAsk) -> tuple[float, float]:
    """The least and greatest run of units from one perp to the next."""
    return ask.perps_every_count * ask.cover_closed_mm, ask.perps_every_count * ask.cover_open_mm


def runs_mm(line: PerpLine) -> tuple[float, ...]:
    """The marked runs from perp to perp; the end of the run, which is no full run, left out."""
    return tuple(later - sooner for sooner, later in pairwise(line.marks_mm[:-1]))


@dataclass(frozen=True, slots=True, order=True)
class _Chain:
    """Marks so far: by how many divisions they break limits, how far they are off their exact places, and where."""

    broken: int
    off: Fraction
    counts: tuple[int, ...]


def _marks_mm(ask: AcrossAsk, exact_mm: Sequence[float], *, right_mm: float) -> tuple[float, ...]:
    """The best chain of divisions: least broken, then nearest; each mark is the division below or above its place."""
    step = ask.division.step_mm
    least_mm, greatest_mm = run_limits_mm(ask)
    run = (count_above(least_mm, ask.division), count_below(greatest_mm, ask.division))
    chains = [_Chain(0, Fraction(0), ())]
    for index, place_mm in enumerate(exact_mm):
        is_end = index == len(exact_mm) - 1
        place = Fraction(place_mm) / step
        kept: list[_Chain] = []
        for count in dict.fromkeys((count_below(place_mm, ask.division), count_above(place_mm, ask.division))):
            out_of_band = _outside(count, _end_band(ask, right_mm)) if is_end else 0
            kept.append(
                min(
                    _Chain(
                        chain.broken
                        + out_of_band
                        + (_outside(count - chain.counts[-1], run) if chain.counts and not is_end else 0),
                        chain.off + max(count - place, place - count),
                        (*chain.counts, count),
                    )
                    for chain in chains
                )
            )
        chains = kept
    return tuple(float(count * step) for count in min(chains).counts)


def _end_band(ask: AcrossAsk, right_mm: float) -> tuple[int, int]:
    """Where the end of the run may be marked; at a hip or valley, the eaves corner itself."""
    if ask.right.kind in {SideKind.HIP, SideKind.VALLEY}:
        corner = nearest_count(right_mm, ask.division)
        return corner, corner
    reach = ask.right.reach
    return count_above(right_mm + reach.least_mm, ask.division), count_below(right_mm + reach.greatest_mm, ask.division)


def _outside(count: int, limits: tuple[int, int]) -> int:
    """By how many divisions a count is outside its limits."""
    return max(limits[0] - count, count - limits[1], 0)
