"""The best plan of a stack for a slope: courses chosen, laid out, and what each heap gives."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby
from math import floor

from gaugerod.basis.rounding import count_above, nearest_count
from gaugerod.setting_out.diminishing.answer import DiminishingPlan, HeapUse, LengthGroup
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.choose import Need, choose_courses
from gaugerod.setting_out.diminishing.lay import rod_for, slope_at
from gaugerod.setting_out.diminishing.sorting import sorting_of, top_notes_of
from gaugerod.setting_out.diminishing.stack import Supply, supplies_of


def course_run_mm(ask: DiminishingAsk) -> float:
    """Run of slate one course takes: its width, one joint over, and what is cut to waste at its ends."""
    return ask.course_width_mm + ask.slates.joint_mm + ask.side_waste_mm


def supplies_for(ask: DiminishingAsk) -> tuple[Supply, ...]:
    """The heaps that can be laid at this lap, longest first."""
    return supplies_of(
        slates=ask.slates,
        course_run_mm=course_run_mm(ask),
        headlap_mm=ask.headlap.value,
        division=ask.division,
    )


def need_for(ask: DiminishingAsk, *, overhang_divisions: int) -> Need:
    """What the plan must do at the longest rafter, with this overhang."""
    longest = max(ask.stations, key=lambda station: station.length_mm)
    return Need(
        cover_divisions=slope_at(ask, longest, overhang_divisions=overhang_divisions).cover_divisions,
        headlap_divisions=count_above(ask.headlap.value, ask.division),
        lost_divisions=count_above(ask.slates.lost_at_head_mm, ask.division),
        least_batten_divisions=count_above(ask.least_batten_gauge.value, ask.division),
        course_run_mm=course_run_mm(ask),
    )


def overhangs_divisions(ask: DiminishingAsk) -> tuple[int, ...]:
    """The overhangs to try: the middle of the band, then the least, which leaves less to cover."""
    aim = nearest_count(ask.overhang.aim_mm, ask.division)
    least = count_above(ask.overhang.least_mm, ask.division)
    return (aim, least) if least < aim else (aim,)


def best_plan(ask: DiminishingAsk) -> DiminishingPlan | None:
    """The best plan that keeps every limit, or None. The overhang is flexed only when the stack needs it."""
    if not ridge_reaches(ask):
        return None
    supplies = supplies_for(ask)
    for overhang in overhangs_divisions(ask):
        need = need_for(ask, overhang_divisions=overhang)
        counts = choose_courses(supplies=supplies, need=need, aim=ask.aim)
        if counts is not None:
            return _plan(ask, need, supplies, counts, overhang=overhang)
    return None


def least_ridge_cover_mm(ask: DiminishingAsk) -> float:
    """How far down the slope the ridge must reach: past the head of the course below the top one by the full lap.

    The heads stop short of the apex, and the hole of a head-fixed slate lies below its head; from there down the ridge
    must give the headlap, and no less than its own least cover. Where the ridge's edge and the apex do not fall on whole
    divisions, their rounding costs one or two more.
    """
    exact_mm = _exact_ridge_cover_mm(ask)
    step_mm = float(ask.division.step_mm)
    rounded_mm = (exact_mm + more * step_mm for more in range(_MOST_ROUNDED_COUNT))
    return next(
        (cover_mm for cover_mm in rounded_mm if ridge_reaches(replace(ask, ridge_cover_mm=cover_mm))),
        exact_mm + _MOST_ROUNDED_COUNT * step_mm,
    )


_MOST_ROUNDED_COUNT = 2
"""Two lines are rounded: the ridge's edge up, the apex down."""


def _exact_ridge_cover_mm(ask: DiminishingAsk) -> float:
    return ask.apex_clear.value + ask.slates.lost_at_head_mm + max(ask.headlap.value, ask.ridge_lap.value)


def ridge_reaches(ask: DiminishingAsk) -> bool:
    """Does the ridge reach far enough down at every station, marks rounded?"""
    need = need_for(ask, overhang_divisions=0)
    lap = max(need.headlap_divisions, count_above(ask.ridge_lap.value, ask.division))
    slopes = [slope_at(ask, station, overhang_divisions=0) for station in ask.stations]
    return all(slope.apex_divisions - need.lost_divisions - slope.edge_divisions >= lap for slope in slopes)


def _plan(
    ask: DiminishingAsk, need: Need, supplies: Sequence[Supply], counts: Sequence[int], *, overhang: int
) -> DiminishingPlan:
    courses = [supply for supply, count in zip(supplies, counts, strict=True) for _ in range(count)]
    under_eaves = need.under_eaves_divisions(courses[0])
    rods = tuple(
        rod_for(ask, need, slope_at(ask, station, overhang_divisions=overhang), courses, under_eaves=under_eaves)
        for station in ask.stations
    )
    step_mm = float(ask.division.step_mm)
    groups = _groups(courses, step_mm=step_mm)
    heaps = _heaps(ask, need, supplies, counts, under_eaves=under_eaves)
    return DiminishingPlan(
        aim=ask.aim,
        groups=groups,
        under_eaves_length_mm=under_eaves * step_mm,
        overhang_mm=overhang * step_mm,
        least_lap_mm=min(lap for rod in rods for lap in rod.laps_mm),
        rods=rods,
        heaps=heaps,
        sorting=sorting_of(ask, heaps=heaps, under_eaves_mm=under_eaves * step_mm),
        top_notes=top_notes_of(ask, rods=rods),
    )


def _groups(courses: Sequence[Supply], *, step_mm: float) -> tuple[LengthGroup, ...]:
    groups: list[LengthGroup] = []
    below: Supply | None = None
    for _, same in groupby(courses, key=lambda course: course.length_divisions):
        run = list(same)
        first = groups[-1].last_course + 1 if groups else 1
        drop = None if below is None else below.gauge_divisions - (below.length_divisions - run[0].length_divisions)
        groups.append(
            LengthGroup(
                length_mm=run[0].heap.length_mm,
                first_course=first,
                last_course=first + len(run) - 1,
                gauge_mm=run[0].gauge_divisions * step_mm,
                drop_gauge_mm=None if drop is None else drop * step_mm,
            )
        )
        below = run[0]
    return tuple(groups)


def _heaps(
    ask: DiminishingAsk, need: Need, supplies: Sequence[Supply], counts: Sequence[int], *, under_eaves: int
) -> tuple[HeapUse, ...]:
    """What each heap gives. The under-eaves course is cut from the shortest leftovers that are long enough."""
    wanted_mm = need.course_run_mm
    uses: list[HeapUse] = []
    for supply, count in reversed(list(zip(supplies, counts, strict=True))):
        left_mm = supply.run_mm - count * need.course_run_mm
        cut_mm = min(wanted_mm, left_mm) if supply.length_divisions >= under_eaves else 0.0
        wanted_mm -= cut_mm
        width_mm = supply.heap.average_width_mm
        uses.append(
            HeapUse(
                length_mm=supply.heap.length_mm,
                courses_there_count=supply.courses_count,
                courses_laid_count=count,
                under_eaves_run_mm=cut_mm,
                left_run_mm=left_mm - cut_mm,
                left_slates_count=(
                    None if width_mm is None else floor((left_mm - cut_mm) / (width_mm + ask.slates.joint_mm) + 1e-9)
                ),
            )
        )
    return tuple(reversed(uses))
