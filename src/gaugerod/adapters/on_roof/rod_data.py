"""The rods for the page: every mark from the eaves up, with its lap and the length of its units where that is not the same."""

from typing import Any

from gaugerod.adapters.on_roof.grain import grain
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.job.rod_marks import SHORT, UNDER_EAVES, rod_marks
from gaugerod.setting_out.courses import Strategy


def rods_data(slope: SlopeResult, *, covering: Covering) -> list[dict[str, Any]]:
    """One for each station, left to right. Lengths in mm."""
    return [
        {"at_mm": grain(rod.at_mm), "length_mm": grain(rod.length_mm), "rows": _rows(slope, index, covering=covering)}
        for index, rod in enumerate(slope.courses.rods)
    ]


def _rows(slope: SlopeResult, index: int, *, covering: Covering) -> list[dict[str, Any]]:
    laps_mm, units_mm = _laps_mm(slope, index, covering=covering), _units_mm(slope, index)
    return [
        {
            "name": mark.name,
            "mark_mm": grain(mark.mark_mm),
            "lap_mm": None if mark.name not in laps_mm else grain(laps_mm[mark.name]),
            "unit_mm": None if mark.name not in units_mm else grain(units_mm[mark.name]),
            "kept": mark.kept,
        }
        for mark in rod_marks(slope, index)
    ]


def _laps_mm(slope: SlopeResult, index: int, *, covering: Covering) -> dict[str, float]:
    """By its mark's name, how far each course laps the one it must cover; the first full course covers none."""
    rod = slope.courses.rods[index]
    numbers = [f"{number}" for number in range(2, len(rod.marks_mm) + 1)]
    if slope.double_lap is not None:
        return dict(zip([*numbers, SHORT], slope.double_lap.rods[index].laps_mm, strict=False))
    if slope.diminishing is not None:
        return dict(zip(numbers, slope.diminishing.rods[index].laps_mm, strict=False))
    if not isinstance(covering, SingleLapTile):
        return {}
    gaps_mm = list(rod.gaps_mm)
    if slope.courses.strategy is Strategy.PARALLEL:
        gaps_mm[-1] = rod.gauge_mm  # cut at its head, the top course keeps its tail on the line of the courses
    return {number: covering.length_mm - gap_mm for number, gap_mm in zip(numbers, gaps_mm, strict=True)}


def _units_mm(slope: SlopeResult, index: int) -> dict[str, float]:
    """By its mark's name, the length of the units where it is not that of the covering."""
    if slope.double_lap is not None:
        short = slope.double_lap.rods[index].short
        under_eaves_mm = {UNDER_EAVES: slope.double_lap.under_eaves_length_mm}
        return under_eaves_mm if short is None else {**under_eaves_mm, SHORT: short.length_mm}
    if slope.diminishing is None:
        return {}
    plan = slope.diminishing
    lengths_mm = [group.length_mm for group in plan.groups for _ in range(group.courses_count)]
    cut_mm = {f"{course}": length_mm for course, length_mm in plan.rods[index].cut_lengths_mm}
    as_made_mm = {f"{course}": length_mm for course, length_mm in enumerate(lengths_mm, 1)}
    return {UNDER_EAVES: plan.under_eaves_length_mm, **as_made_mm, **cut_mm}
