"""A slope laid course over course in section: the laps as they fall, read off the slates and not off a formula.

y runs up the slope from the outer face of the fascia. The lowest course comes first: the under-eaves course where
there is one. What covers the head of the top courses, the ridge or a flashing, is laid last as one more course.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum
from itertools import pairwise

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH


class LapOver(IntEnum):
    """Which course the lap is counted over: the next below (single lap) or the second below (double lap)."""

    NEXT_BELOW = 1
    SECOND_BELOW = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidCourse:
    """One course where it lies. ``head_mm`` is the head as far as it keeps water out: the nail hole if head-nailed."""

    name: str
    tail_mm: float
    head_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidLap:
    """The lap of one course over one below it."""

    course: str
    over: str
    lap_mm: float


def laps_as_laid(courses: Sequence[LaidCourse], *, lap_over: LapOver) -> tuple[LaidLap, ...]:
    """The lap of every course over the one it must cover, eaves to ridge. A negative lap is a gap.

    Raises NothingToSetOut when a course does not lie above the one before it, or has its head below its tail.

    >>> tiles = [LaidCourse(name=str(k), tail_mm=100.0 * k, head_mm=100.0 * k + 265.0) for k in range(4)]
    >>> [lap.lap_mm for lap in laps_as_laid(tiles, lap_over=LapOver.SECOND_BELOW)]
    [65.0, 65.0]
    """
    for course in courses:
        if not course.head_mm > course.tail_mm:
            raise NothingToSetOut(f"course {course.name} has its head at or below its tail")
    for lower, upper in pairwise(courses):
        if upper.tail_mm < lower.tail_mm - TOUCH:
            raise NothingToSetOut(f"the tail of course {upper.name} lies below the tail of course {lower.name}")
    return tuple(
        LaidLap(course=upper.name, over=lower.name, lap_mm=lower.head_mm - upper.tail_mm)
        for lower, upper in zip(courses, courses[lap_over:], strict=False)
    )


def deep_at(courses: Sequence[LaidCourse], *, y_mm: float) -> int:
    """How many courses lie over one another at a place on the slope.

    >>> tiles = [LaidCourse(name=str(k), tail_mm=100.0 * k, head_mm=100.0 * k + 265.0) for k in range(4)]
    >>> deep_at(tiles, y_mm=250.0), deep_at(tiles, y_mm=270.0)
    (3, 2)
    """
    return sum(course.tail_mm <= y_mm < course.head_mm for course in courses)


def refuse_short_laps(courses: Sequence[LaidCourse], *, lap_over: LapOver, least_mm: float) -> tuple[LaidLap, ...]:
    """The laps as laid, none below ``least_mm``: raises NothingToSetOut naming the course whose lap is short."""
    laps = laps_as_laid(courses, lap_over=lap_over)
    for lap in laps:
        if lap.lap_mm < least_mm - TOUCH:
            raise NothingToSetOut(
                f"laid out, course {lap.course} laps course {lap.over} by {lap.lap_mm:.1f} mm; "
                f"{least_mm:.1f} mm is the least. The plan is withdrawn"
            )
    return laps
