"""Courses of plain tiles and sized slates: full courses, the course under the eaves, the short course below the ridge.

Every lap is read off the section as laid, over the course two below; nothing is taken from the gauge formula.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from gaugerod.basis.rounding import count_above, count_below
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.rules.double_lap_gauge import holing_gauge_mm
from gaugerod.setting_out.courses import Courses, Rod
from gaugerod.setting_out.double_lap_ask import DoubleLapAsk, courses_ask
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras, DoubleLapRod, ShortCourse
from gaugerod.setting_out.double_lap_findings import double_lap_findings, double_lap_working
from gaugerod.setting_out.section_laid import LaidCourse, LapOver, laps_as_laid
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubleLapCourses:
    """The full courses, their headlap the least of the section as laid, and what double lap adds to them."""

    courses: Courses
    extras: DoubleLapExtras


def set_out_double_lap(ask: DoubleLapAsk, *, courses: Courses | None = None) -> DoubleLapCourses:
    """Plain tiles or sized slates up the slope: marks for every full course, the eaves and the top.

    ``courses``: those shared out with other slopes round the corners, where that was done; else they are set out here.

    Raises InputRefused with every fault of the ask, NothingToSetOut when no gauge keeps the lap or the slope is too
    short. Source: gauges in ``rules.double_lap_gauge``; the rest is geometry. Scope: units of one length, straight eaves.
    """
    courses = set_out_courses(courses_ask(ask)) if courses is None else courses
    gaps_mm = [gap for rod in courses.rods for gap in rod.gaps_mm]
    under_eaves_mm = _under_eaves_length_mm(ask, courses)
    # The first course passes the head of the under-eaves slates, every other that of the course below.
    passed_mm = (*gaps_mm, ask.unit.length_mm - under_eaves_mm)
    shift_mm, holing_mm = _nail_shift_mm(ask, least_gap_mm=min(passed_mm), greatest_gap_mm=max(gaps_mm, default=0.0))
    rods = tuple(
        _rod(ask, rod, under_eaves_mm=under_eaves_mm, shift_mm=shift_mm, greatest_gap_mm=courses.gauge_max_mm)
        for rod in courses.rods
    )
    extras = DoubleLapExtras(
        marks_are="top edge of batten" if isinstance(ask.unit, PlainTile) else "nail line",
        under_eaves_length_mm=under_eaves_mm,
        holing_mm=holing_mm,
        greatest_headlap_mm=ask.unit.length_mm - ask.lost_at_head_mm - _least_pair_mm(courses.rods),
        rods=rods,
    )
    least_lap_mm = min(lap for rod in rods for lap in rod.laps_mm)
    # The shared engine speaks of a top batten; here the ridge's lap and the heads' clearance say the same, as laid.
    kept = [finding for finding in courses.findings if finding.rule != "top batten"]
    nailed = replace(courses, rods=tuple(_shifted(rod, shift_mm) for rod in courses.rods), headlap_mm=least_lap_mm)
    found = double_lap_findings(ask=ask, courses=nailed, extras=extras)
    working = double_lap_working(ask=ask, courses=courses, extras=extras)
    return DoubleLapCourses(
        courses=replace(nailed, findings=(*kept, *found), working=working),
        extras=extras,
    )


def _under_eaves_length_mm(ask: DoubleLapAsk, courses: Courses) -> float:
    """Eaves tiles as made; slates cut to greatest gauge + lap, and what their hole loses, to a whole division."""
    if isinstance(ask.unit, PlainTile) and ask.unit.eaves_length_mm is not None:
        return ask.unit.eaves_length_mm
    length_mm = courses.gauge_max_mm + ask.headlap.value + ask.lost_at_head_mm
    return min(count_above(length_mm, ask.division) * float(ask.division.step_mm), ask.unit.length_mm)


def _nail_shift_mm(ask: DoubleLapAsk, *, least_gap_mm: float, greatest_gap_mm: float) -> tuple[float, float | None]:
    """From the line set out by down to the nail line, and tail to nail hole.

    One hole for every slate: clear of the head below at the closest gauge, so clear at every other. Where gauges differ so
    much that it would be too far above the head at the widest, it comes nearer, down to the least that is published.
    """
    if isinstance(ask.unit, PlainTile):
        return 0.0, None
    if not ask.centre_nailed:
        return 0.0, ask.tail_to_mark_mm
    usual, least, greatest = (
        double_lap_figure(ask.edition, figure).value
        for figure in (
            DoubleLapFigure.NAIL_ABOVE_HEAD,
            DoubleLapFigure.NAIL_ABOVE_HEAD_LEAST,
            DoubleLapFigure.NAIL_ABOVE_HEAD_GREATEST,
        )
    )
    near = count_below(least_gap_mm - usual, ask.division)
    nearer = min(count_above(greatest_gap_mm - greatest, ask.division), count_below(least_gap_mm - least, ask.division))
    shift_mm = max(near, nearer) * float(ask.division.step_mm)
    holing_mm = holing_gauge_mm(length_mm=ask.unit.length_mm, gauge_mm=shift_mm, nail_clear_mm=0.0)
    return shift_mm, holing_mm


def _rod(
    ask: DoubleLapAsk, rod: Rod, *, under_eaves_mm: float, shift_mm: float, greatest_gap_mm: float
) -> DoubleLapRod:
    tails_mm = tuple(mark - ask.tail_to_mark_mm for mark in rod.marks_mm)
    short = _short_course(ask, rod, tails_mm, shift_mm=shift_mm, greatest_gap_mm=greatest_gap_mm)
    section = _section(ask, rod, tails_mm, short, under_eaves_mm=under_eaves_mm)
    return DoubleLapRod(
        at_mm=rod.at_mm,
        tails_mm=tails_mm,
        under_eaves_mark_mm=_under_eaves_mark_mm(ask, rod, tails_mm, under_eaves_mm=under_eaves_mm, shift_mm=shift_mm),
        short=short,
        laps_mm=tuple(lap.lap_mm for lap in laps_as_laid(section, lap_over=LapOver.SECOND_BELOW)),
    )


def _section(
    ask: DoubleLapAsk, rod: Rod, tails_mm: Sequence[float], short: ShortCourse | None, *, under_eaves_mm: float
) -> list[LaidCourse]:
    lost_mm = ask.lost_at_head_mm
    units = [(tails_mm[0], under_eaves_mm), *((tail, ask.unit.length_mm) for tail in tails_mm)]
    if short is not None:
        units.append((short.tail_mm, short.length_mm))
    section = [
        LaidCourse(name="under-eaves" if at == 0 else str(at), tail_mm=tail, head_mm=tail + length - lost_mm)
        for at, (tail, length) in enumerate(units)
    ]
    if ask.ridge_cover_mm is None:
        return section
    ridge = LaidCourse(name="ridge", tail_mm=rod.length_mm - ask.ridge_cover_mm, head_mm=rod.length_mm)
    return [*section, ridge]


def _short_course(
    ask: DoubleLapAsk, rod: Rod, tails_mm: Sequence[float], *, shift_mm: float, greatest_gap_mm: float
) -> ShortCourse | None:
    """Needed unless the ridge laps the course below the top full one by itself."""
    gap_mm = rod.gaps_mm[-1] if rod.gaps_mm else greatest_gap_mm
    usable_mm = ask.unit.length_mm - ask.lost_at_head_mm
    if ask.ridge_cover_mm is not None:
        edge_mm = rod.length_mm - ask.ridge_cover_mm
        if edge_mm - (tails_mm[-1] - gap_mm) <= usable_mm - ask.headlap.value:
            return None
    tail_mm = tails_mm[-1] + gap_mm
    if isinstance(ask.unit, PlainTile) and ask.unit.eaves_length_mm is not None:
        length_mm = ask.unit.eaves_length_mm
        mark_mm = tail_mm + length_mm - (ask.unit.length_mm - ask.tail_to_mark_mm)
    else:
        clear = double_lap_figure(ask.edition, DoubleLapFigure.SLATE_HEADS_BELOW_APEX).value
        step_mm = float(ask.division.step_mm)
        head_mm = min(count_below(rod.length_mm - clear, ask.division) * step_mm, tail_mm + ask.unit.length_mm)
        length_mm = head_mm - tail_mm
        mark_mm = rod.marks_mm[-1] + gap_mm - shift_mm if ask.centre_nailed else head_mm - ask.lost_at_head_mm
    return ShortCourse(
        mark_mm=mark_mm,
        tail_mm=tail_mm,
        length_mm=length_mm,
        above_mm=mark_mm - (rod.marks_mm[-1] - shift_mm),
    )


def _under_eaves_mark_mm(
    ask: DoubleLapAsk, rod: Rod, tails_mm: Sequence[float], *, under_eaves_mm: float, shift_mm: float
) -> float:
    """Eaves tiles hang by their nibs; under-eaves slates are nailed near their heads, a batten below the first."""
    head_mm = tails_mm[0] + under_eaves_mm
    if isinstance(ask.unit, PlainTile):
        return head_mm - (ask.unit.length_mm - ask.tail_to_mark_mm)
    room_mm = double_lap_figure(ask.edition, DoubleLapFigure.SLATE_BATTEN_GAUGE_LEAST).value
    lowest = min(head_mm - ask.unit.hole_below_mm, rod.marks_mm[0] - shift_mm - room_mm)
    return count_below(lowest, ask.division) * float(ask.division.step_mm)


def _shifted(rod: Rod, shift_mm: float) -> Rod:
    return replace(
        rod,
        marks_mm=tuple(mark - shift_mm for mark in rod.marks_mm),
        exact_mm=tuple(mark - shift_mm for mark in rod.exact_mm),
        below_apex_mm=rod.below_apex_mm + shift_mm,
    )


def _least_pair_mm(rods: Sequence[Rod]) -> float:
    """The least two neighbouring gauges together; of a single one, twice that. mm."""
    pairs = [lower + upper for rod in rods for lower, upper in pairwise(rod.gaps_mm)]
    return min(pairs or [2 * gap for rod in rods for gap in rod.gaps_mm])
