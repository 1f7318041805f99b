"""Openings as fixed points: how the courses fall at sill and head, and the courses set out afresh between them.

A unit hung on a batten at y has its tail at ``y − hanging length`` and its head at ``y + head to nib``.
Courses are numbered from the eaves, the first is 1.
"""

from collections.abc import Sequence
from fractions import Fraction

from gaugerod.setting_out.between_stations import height_at_mm
from gaugerod.setting_out.courses import CoursesAsk, OpeningCourses, Rod, Segment
from gaugerod.setting_out.equal_gauge import fewest_gauges
from gaugerod.setting_out.marked_limits import GaugeLimits, exact_length_mm
from gaugerod.setting_out.said import counted, said
from gaugerod.setting_out.stations import Opening

TOUCH_MM = Fraction(1, 1_000_000)


def courses_at_openings(*, ask: CoursesAsk, rods: Sequence[Rod], limits: GaugeLimits) -> tuple[OpeningCourses, ...]:
    """Every opening with its sill and head against the nearest courses, on the rod line through its middle."""
    return tuple(_at(opening, ask=ask, rods=rods, limits=limits) for opening in ask.openings)


def _at(opening: Opening, *, ask: CoursesAsk, rods: Sequence[Rod], limits: GaugeLimits) -> OpeningCourses:
    marks_mm = _marks_at(rods, at_mm=exact_length_mm(opening.from_left_mm + opening.width_mm / 2))
    heads_mm = [mark + exact_length_mm(ask.head_to_nib_mm) for mark in marks_mm]
    tails_mm = [mark - exact_length_mm(ask.hanging_length_mm) for mark in marks_mm]
    sill_mm, head_mm = exact_length_mm(opening.up_slope_mm), exact_length_mm(opening.head_mm)
    below = sum(1 for head in heads_mm if head <= sill_mm + TOUCH_MM)
    above = sum(1 for tail in tails_mm if tail < head_mm - TOUCH_MM) + 1
    to_sill_mm = sill_mm - heads_mm[below - 1] if below else sill_mm - tails_mm[0]
    to_tail_mm = tails_mm[above - 1] - head_mm if above <= len(tails_mm) else heads_mm[-1] - head_mm
    segments = _segments(ask, marks_mm, sill_mm=sill_mm, head_mm=head_mm, limits=limits)
    return OpeningCourses(
        name=opening.name,
        sill_course=below,
        sill_head_mm=float(to_sill_mm),
        head_course=above,
        head_tail_mm=float(to_tail_mm),
        says=_says(ask, below, above, to_sill_mm=to_sill_mm, to_tail_mm=to_tail_mm, courses=len(marks_mm)),
        segments=segments,
        segments_say=_segments_say(ask, segments),
    )


def _marks_at(rods: Sequence[Rod], *, at_mm: Fraction) -> list[Fraction]:
    """Every batten's height where a line through the same number on the rods crosses ``at_mm``."""
    lines = [
        [(exact_length_mm(rod.at_mm), exact_length_mm(rod.marks_mm[batten])) for rod in rods]
        for batten in range(len(rods[0].marks_mm))
    ]
    return [height_at_mm(points=line, at_mm=at_mm) for line in lines]


def _says(ask: CoursesAsk, below: int, above: int, *, to_sill_mm: Fraction, to_tail_mm: Fraction, courses: int) -> str:
    sill = (
        f"the head of course {below} is {said(to_sill_mm, ask.division)} below the sill"
        if below
        else f"no whole course fits below the sill, {said(to_sill_mm, ask.division)} above the tails at the eaves"
    )
    if above > courses:
        return f"{sill}; above the head line no course starts whole before the ridge, so the courses beside it are cut."
    if to_tail_mm <= TOUCH_MM:
        return f"{sill}; the tail of course {above} falls on the head line."
    return (
        f"{sill}; the tail of course {above} is {said(to_tail_mm, ask.division)} above the head line, so course "
        f"{above - 1} is cut round the head."
    )


def _segments(
    ask: CoursesAsk, marks_mm: Sequence[Fraction], *, sill_mm: Fraction, head_mm: Fraction, limits: GaugeLimits
) -> tuple[Segment, ...]:
    """Eaves to sill, sill to head, head to ridge: a head comes to the sill, a tail to the head line."""
    at_sill_mm = sill_mm - exact_length_mm(ask.head_to_nib_mm)
    at_head_mm = head_mm + exact_length_mm(ask.hanging_length_mm)
    points = [("eaves to sill", marks_mm[0], at_sill_mm), ("sill to head", at_sill_mm, at_head_mm)]
    points.append(("head to ridge", at_head_mm, marks_mm[-1]))
    return tuple(_segment(name, from_mm, to_mm, limits) for name, from_mm, to_mm in points if to_mm > from_mm)


def _segment(name: str, from_mm: Fraction, to_mm: Fraction, limits: GaugeLimits) -> Segment:
    count = fewest_gauges(span_mm=to_mm - from_mm, gauge_max_mm=limits.greatest_mm)
    gauge_mm = (to_mm - from_mm) / count
    return Segment(
        name=name,
        from_mm=float(from_mm),
        to_mm=float(to_mm),
        count=count,
        gauge_mm=float(gauge_mm),
        inside=limits.hold(gauge_mm),
    )


def _segments_say(ask: CoursesAsk, segments: Sequence[Segment]) -> str:
    if len(segments) < 3:
        return "The opening is too near the eaves or the ridge for courses of their own between it and them."
    parts = "; ".join(
        f"{segment.name} {counted(segment.count, 'gauge')} of {said(segment.gauge_mm, ask.division)}"
        for segment in segments
    )
    outside = [segment.name for segment in segments if not segment.inside]
    if not outside:
        return f"Set out in three parts, whole courses meet sill and head: {parts}. Every gauge is inside the range."
    return (
        f"Set out in three parts: {parts}. Under the least gauge: {', '.join(outside)}, so there the courses must be cut "
        f"at the opening instead."
    )
