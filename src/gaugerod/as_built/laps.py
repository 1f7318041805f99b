"""Every lap of the roof as it is, and by how much it is short."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from gaugerod.as_built.needed import Needed
from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.section_laid import LaidCourse, LapOver
from gaugerod.setting_out.stations import NailedRod


@dataclass(frozen=True, slots=True, kw_only=True)
class LapAsBuilt:
    """The lap of one course over one below it, at one place. Courses count from 1 at the eaves.

    ``tail_mm``              where the tail of the upper course lies: water gets in there when the lap is short
    ``short_by_mm``          under the least lap of the record (double lap: of the edition where that is more); else 0
    ``short_of_edition_mm``  under the edition's own figure; 0 when not, None when the edition has none
    """

    at_mm: float
    course: int
    over: int
    lap_mm: float
    tail_mm: float
    short_by_mm: float
    short_of_edition_mm: float | None

    @property
    def is_short(self) -> bool:
        """Is it under the least lap that governs?"""
        return self.short_by_mm > 0


def lap_as_built_mm(*, usable_mm: float, gaps_mm: Sequence[float]) -> float:
    """The lap that the gaps from one mark up to another leave: usable length − the gaps between. Negative: it lies open.

    Source: geometry of the section. Scope: courses of one length; one gap in single lap, two in double lap.

    >>> lap_as_built_mm(usable_mm=420.0, gaps_mm=(340.0,)), lap_as_built_mm(usable_mm=265.0, gaps_mm=(98.0, 104.0))
    (80.0, 63.0)
    """
    return usable_mm - sum(gaps_mm)


def short_by_mm(*, lap_mm: float, least_mm: float) -> float:
    """How far a lap is under its least; 0 when it is not (a millionth of a mm is float noise).

    >>> [short_by_mm(lap_mm=lap, least_mm=75.0) for lap in (74.0, 75.0, 76.0)]
    [1.0, 0.0, 0.0]
    """
    return least_mm - lap_mm if lap_mm < least_mm - TOUCH else 0.0


def laps_as_built(rod: NailedRod, *, needed: Needed) -> tuple[LapAsBuilt, ...]:
    """The laps at one place, eaves to ridge."""
    marks_mm, apart = rod.marks_mm, int(needed.lapping)
    gaps_mm = gaps_between_mm(marks_mm)
    edition_lap = needed.edition_lap

    def lap(lower: int) -> LapAsBuilt:
        lap_mm = lap_as_built_mm(usable_mm=needed.usable_mm, gaps_mm=gaps_mm[lower : lower + apart])
        return LapAsBuilt(
            at_mm=rod.at_mm,
            course=lower + apart + 1,
            over=lower + 1,
            lap_mm=lap_mm,
            tail_mm=marks_mm[lower + apart] - needed.afresh.hanging_length_mm,
            short_by_mm=short_by_mm(lap_mm=lap_mm, least_mm=needed.least_lap.value),
            short_of_edition_mm=None if edition_lap is None else short_by_mm(lap_mm=lap_mm, least_mm=edition_lap.value),
        )

    return tuple(lap(lower) for lower in range(len(marks_mm) - apart))


def gaps_between_mm(marks_mm: Sequence[float]) -> tuple[float, ...]:
    """From each mark to the next.

    >>> gaps_between_mm((347.0, 687.0, 1032.0))
    (340.0, 345.0)
    """
    return tuple(upper - lower for lower, upper in pairwise(marks_mm))


def battens_kept(laps: Sequence[LapAsBuilt], *, lapping: LapOver, battens: int) -> int:
    """How many battens from the eaves up stand before the first that makes a lap short, at one place or at many.

    >>> battens_kept((), lapping=LapOver.NEXT_BELOW, battens=14)
    14
    """
    return min((lap.over + lapping - 1 for lap in laps if lap.is_short), default=battens)


def section(marks_mm: Sequence[float], *, needed: Needed) -> tuple[LaidCourse, ...]:
    """The courses where they lie in section, as the laps are read off them a second way."""
    tail_mm = needed.afresh.hanging_length_mm
    return tuple(
        LaidCourse(name=str(number), tail_mm=mark_mm - tail_mm, head_mm=mark_mm - tail_mm + needed.usable_mm)
        for number, mark_mm in enumerate(marks_mm, 1)
    )
