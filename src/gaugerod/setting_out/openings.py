"""Openings as fixed points: how the courses fall at sill and head, and the courses set out afresh between them.

A unit hung on a batten at y has its tail at ``y − hanging length`` and its head at ``y + head to nib``.
Courses are numbered from the eaves, the first is 1.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gaugerod.setting_out.between_stations import height_at_mm
from gaugerod.setting_out.courses import CoursesAsk, OpeningCourses, Rod, Segment
from gaugerod.setting_out.equal_gauge import fewest_gauges
from gaugerod.setting_out.marked_limits import GaugeLimits, exact_length_mm
from gaugerod.setting_out.remedies import BATTEN_WIDTH_MM
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
    stretches = _stretches(ask, rods, marks_mm, sill_mm=sill_mm, head_mm=head_mm)
    segments = _segments(stretches, limits=limits)
    return OpeningCourses(
        name=opening.name,
        sill_course=below,
        sill_head_mm=float(to_sill_mm),
        head_course=above,
        head_tail_mm=float(to_tail_mm),
        says=_says(ask, below, above, to_sill_mm=to_sill_mm, to_tail_mm=to_tail_mm, courses=len(marks_mm)),
        segments=segments,
        segments_say=_segments_say(ask, stretches, segments),
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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stretch:
    """Between two fixed battens: on the line up the opening's middle, and where the rods make it least and greatest."""

    name: str
    from_mm: Fraction
    to_mm: Fraction
    least_mm: Fraction
    greatest_mm: Fraction


def _stretches(
    ask: CoursesAsk, rods: Sequence[Rod], marks_mm: Sequence[Fraction], *, sill_mm: Fraction, head_mm: Fraction
) -> tuple[_Stretch, ...]:
    """Eaves to sill, sill to head, head to ridge: a head comes to the sill, a tail to the head line.

    Nailed battens stay, so with some nailed the first stretch starts from the last of them.
    """
    start = max(rods[0].kept_count - 1, 0)
    starts_mm = [exact_length_mm(rod.marks_mm[start]) for rod in rods]
    tops_mm = [exact_length_mm(rod.marks_mm[-1]) for rod in rods]
    at_sill_mm = sill_mm - exact_length_mm(ask.head_to_nib_mm)
    at_head_mm = head_mm + exact_length_mm(ask.hanging_length_mm)
    return (
        _Stretch(
            name="last nailed batten to sill" if ask.nailed else "eaves to sill",
            from_mm=marks_mm[start],
            to_mm=at_sill_mm,
            least_mm=at_sill_mm - max(starts_mm),
            greatest_mm=at_sill_mm - min(starts_mm),
        ),
        _Stretch(
            name="sill to head",
            from_mm=at_sill_mm,
            to_mm=at_head_mm,
            least_mm=at_head_mm - at_sill_mm,
            greatest_mm=at_head_mm - at_sill_mm,
        ),
        _Stretch(
            name="head to ridge",
            from_mm=at_head_mm,
            to_mm=marks_mm[-1],
            least_mm=min(tops_mm) - at_head_mm,
            greatest_mm=max(tops_mm) - at_head_mm,
        ),
    )


def _segments(stretches: Sequence[_Stretch], *, limits: GaugeLimits) -> tuple[Segment, ...]:
    """The courses of every stretch; none at all where one of them has no room for a batten."""
    if any(stretch.least_mm < BATTEN_WIDTH_MM for stretch in stretches):
        return ()
    return tuple(_segment(stretch, limits=limits) for stretch in stretches)


def _segment(stretch: _Stretch, *, limits: GaugeLimits) -> Segment:
    count = fewest_gauges(span_mm=stretch.greatest_mm, gauge_max_mm=limits.greatest_mm)
    return Segment(
        name=stretch.name,
        from_mm=float(stretch.from_mm),
        to_mm=float(stretch.to_mm),
        count=count,
        gauge_mm=float((stretch.to_mm - stretch.from_mm) / count),
        inside=limits.hold(stretch.least_mm / count) and limits.hold(stretch.greatest_mm / count),
    )


def _segments_say(ask: CoursesAsk, stretches: Sequence[_Stretch], segments: Sequence[Segment]) -> str:
    if not segments:
        tight = " and ".join(stretch.name for stretch in stretches if stretch.least_mm < BATTEN_WIDTH_MM)
        return (
            f"The courses cannot be made to meet sill and head: there is no room for a batten of its own from {tight}."
        )
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
