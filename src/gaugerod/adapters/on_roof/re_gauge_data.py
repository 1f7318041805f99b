"""What the page needs to set the rest out again from where a batten really is: the limits, as the engine narrows them."""

from collections.abc import Iterator
from typing import Any

from gaugerod.adapters.on_roof.grain import as_fraction, grain
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.job.double_lap_wished import double_lap_ask
from gaugerod.job.model import Job, Slope
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.up_slope import corner_ask
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras
from gaugerod.setting_out.set_courses import ground_of
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure

_RANDOM = "Random slates go by the stack, not by one gauge: set this slope out again with the program."
_CENTRE_NAILED = (
    "Slates nailed in the middle are set out by their heads, which a batten does not show: set this slope out again "
    "with the program."
)


def re_gauge_data(result: Result, slope: SlopeResult) -> dict[str, Any]:
    """The limits, or ``why_not`` where this slope cannot be set out again on the roof."""
    job, covering = result.job, result.job.covering
    ask = corner_ask(job, slope.slope)
    if ask is None or isinstance(covering, RandomSlates):
        return {"why_not": _RANDOM}
    double_lap = None
    if isinstance(covering, PlainTile | SizedSlate) and slope.double_lap is not None:
        if double_lap_ask(job, slope.slope, covering).centre_nailed:
            return {"why_not": _CENTRE_NAILED}
        double_lap = double_lap_data(job, slope.slope, covering, slope.double_lap)
    return {**limits_data(ask), "double_lap": double_lap, "notes": list(_notes(result, slope))}


def limits_data(ask: CoursesAsk) -> dict[str, Any]:
    """The gauge range in whole divisions, the room of the top batten, and the length at every rod.

    Lengths in mm; those that no decimal may hold are written as fractions.
    """
    ground = ground_of(ask)
    least_mm, step_mm = ground.limits.least_mm, ask.division.step_mm
    return {
        "gauge_least_count": None if least_mm is None else int(least_mm / step_mm),
        "gauge_greatest_count": int(ground.limits.greatest_mm / step_mm),
        "unit_length_mm": grain(ask.unit_length_mm),
        "hanging_length_mm": grain(ask.hanging_length_mm),
        "overhang_mm": [grain(ask.overhang.least_mm), grain(ask.overhang.greatest_mm)],
        "top_mm": [grain(ask.top.least_mm), grain(ask.top.greatest_mm)],
        "ridge_lap_first": ask.ridge_lap_first,
        "top_marked": {
            "least": as_fraction(ground.ends.least.top_mm),
            "wished": as_fraction(ground.ends.wished.top_mm),
            "greatest": as_fraction(ground.ends.greatest.top_mm),
        },
        "lengths": [as_fraction(place.length_mm) for place in ground.places],
    }


def double_lap_data(job: Job, slope: Slope, unit: PlainTile | SizedSlate, extras: DoubleLapExtras) -> dict[str, Any]:
    """What the course under the eaves, the short course at the top and the laps go by. Lengths in mm."""
    ask = double_lap_ask(job, slope, unit)
    under_eaves_mm, cover_mm = extras.under_eaves_length_mm, ask.ridge_cover_mm
    apex_clear = double_lap_figure(job.edition, DoubleLapFigure.SLATE_HEADS_BELOW_APEX)
    batten_room = double_lap_figure(job.edition, DoubleLapFigure.SLATE_BATTEN_GAUGE_LEAST)
    if isinstance(unit, PlainTile):  # eaves tiles hang by their nibs
        eaves_below_first_mm, tops_mm = unit.length_mm - under_eaves_mm, unit.eaves_length_mm
    else:  # under-eaves slates are nailed below their heads, a batten below the first
        hole_to_first_mm = ask.tail_to_mark_mm - under_eaves_mm + unit.hole_below_mm
        eaves_below_first_mm, tops_mm = max(hole_to_first_mm, batten_room.value), None
    return {
        "headlap_mm": grain(ask.headlap.value),
        "lost_at_head_mm": grain(ask.lost_at_head_mm),
        "under_eaves_length_mm": grain(under_eaves_mm),
        "eaves_below_first_mm": grain(eaves_below_first_mm),
        "eaves_whole": isinstance(unit, SizedSlate),
        "tops_length_mm": None if tops_mm is None else grain(tops_mm),
        "ridge_cover_mm": None if cover_mm is None else grain(cover_mm),
        "clear_of_apex_mm": grain(apex_clear.value),
    }


def _notes(result: Result, slope: SlopeResult) -> Iterator[str]:
    """What new marks on this slope do elsewhere."""
    name = slope.slope.name
    if any(name in roof.slope_names and len(roof.slope_names) > 1 for roof in result.roofs):
        yield (
            "This slope meets others at hips or valleys. Its courses no longer meet theirs at the same height: set "
            "those out again as well, or take the step at the corner."
        )
    if slope.slope.openings:
        names = " and ".join(opening.name for opening in slope.slope.openings)
        yield f"The courses now fall differently at the {names}: see how they end there before you lay."
