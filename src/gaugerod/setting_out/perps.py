"""Perp marks along one line: cumulative from the left end of the roof structure, rounded once each.

A perp after n units stands at the left end of the covering plus the cover of those n units. Marks go to the nearest
division; where that would open or close a run of units past the shunt, the mark moves by the one division that
keeps it in.
"""

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.rounding import count_above, count_below, nearest_count
from gaugerod.setting_out.across import AcrossAsk, PerpLine
from gaugerod.setting_out.cover_search import Layout


def perp_line(ask: AcrossAsk, layout: Layout, *, line: str, left_mm: float, right_mm: float) -> PerpLine:
    """The perps of one line: after every so many units, and the end of the run.

    ``left_mm`` and ``right_mm`` are the ends of the roof structure on this line.
    """
    start_mm, stop_mm = layout.ends_mm[0], layout.ends_mm[1]
    after_mm = [layout.first_perp_mm + (units - 1) * layout.cover_mm for units in perps_after(ask, units_count(layout))]
    exact_mm = (*(mark_mm for mark_mm in after_mm if mark_mm < stop_mm - TOUCH), stop_mm)
    return PerpLine(
        line=line,
        cover_mm=layout.cover_mm,
        left_reach_mm=left_mm - start_mm,
        right_reach_mm=stop_mm - right_mm,
        marks_mm=_rounded(ask, exact_mm),
        exact_mm=exact_mm,
    )


def units_count(layout: Layout) -> int:
    """Units in a course of bond row 0, the pieces at both ends counted."""
    return layout.placed[1].perp_count + 2


def perps_after(ask: AcrossAsk, units: int) -> range:
    """After how many units a perp is marked, the last piece left out."""
    return range(ask.perps_every_count, units, ask.perps_every_count)


def _rounded(ask: AcrossAsk, exact_mm: tuple[float, ...]) -> tuple[float, ...]:
    """Nearest divisions, with every run of whole units kept inside the shunt; the end of the run is only rounded."""
    step_mm = float(ask.division.step_mm)
    closest = count_above(ask.perps_every_count * ask.cover_closed_mm, ask.division)
    widest = count_below(ask.perps_every_count * ask.cover_open_mm, ask.division)
    counts: list[int] = []
    for index, mark_mm in enumerate(exact_mm):
        count = nearest_count(mark_mm, ask.division)
        if 0 < index < len(exact_mm) - 1 and closest <= widest:
            count = min(max(count, counts[-1] + closest), counts[-1] + widest)
        counts.append(count)
    return tuple(count * step_mm for count in counts)
