"""The limits of the gauge and of both ends, as a rod can be marked: in whole divisions.

A rod carries no fraction of its smallest division. A greatest gauge of 345.7 mm can be marked as 345 and not
as 346, so 345 is the greatest gauge the courses may use. With both limits whole divisions, marks rounded to
the nearest keep them: see ``marks``.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from gaugerod.basis.band import Band
from gaugerod.basis.rounding import Division, count_above, count_below
from gaugerod.setting_out.courses import CoursesAsk

MILLIONTHS = 1_000_000
"""Lengths nearer than a millionth of a millimetre are the same length, so this is the grain of every input."""


def exact_length_mm(length_mm: float) -> Fraction:
    """The length to a millionth of a mm, exactly: ten gauges of 300 are 3000 and never an eleventh.

    >>> exact_length_mm(0.1 + 0.2) == Fraction(3, 10)
    True
    """
    return Fraction(round(length_mm * MILLIONTHS), MILLIONTHS)


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeLimits:
    """The gauge range in whole divisions of the rod. ``least_mm`` is None where there is no least gauge."""

    least_mm: Fraction | None
    greatest_mm: Fraction

    def hold(self, gauge_mm: Fraction) -> bool:
        """Is this gauge inside the range, its ends included?"""
        return gauge_mm <= self.greatest_mm and (self.least_mm is None or gauge_mm >= self.least_mm)


def gauge_limits(*, gauge_min_mm: float | None, gauge_max_mm: float, division: Division) -> GaugeLimits:
    """The gauges that can be marked: the least brought up, the greatest brought down, to whole divisions.

    >>> limits = gauge_limits(gauge_min_mm=319.4, gauge_max_mm=345.7, division=Division.MILLIMETRE)
    >>> int(limits.least_mm), int(limits.greatest_mm)
    (320, 345)
    """
    step_mm = division.step_mm
    least_mm = None if gauge_min_mm is None else count_above(gauge_min_mm, division) * step_mm
    return GaugeLimits(least_mm=least_mm, greatest_mm=count_below(gauge_max_mm, division) * step_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """Where the courses start and stop: overhang past the fascia face, and top batten below the apex. mm."""

    overhang_mm: Fraction
    top_mm: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class EndBands:
    """How far each end may be moved, and what is wished."""

    least: Ends
    greatest: Ends
    wished: Ends

    @property
    def shorten_mm(self) -> Fraction:
        """How much the ends can take off the length between first and top batten."""
        return (self.wished.overhang_mm - self.least.overhang_mm) + (self.greatest.top_mm - self.wished.top_mm)

    @property
    def lengthen_mm(self) -> Fraction:
        """How much the ends can add to it."""
        return (self.greatest.overhang_mm - self.wished.overhang_mm) + (self.wished.top_mm - self.least.top_mm)

    def moved(self, shift_mm: Fraction) -> Ends:
        """The ends that lengthen the courses by ``shift_mm``: the ridge allowance first, as the ridge hides it.

        What is over goes into the overhang, inside its band or past it.
        """
        lowest, highest = self.wished.top_mm - self.greatest.top_mm, self.wished.top_mm - self.least.top_mm
        by_top = min(max(shift_mm, lowest), highest)
        return Ends(
            overhang_mm=self.wished.overhang_mm + shift_mm - by_top,
            top_mm=self.wished.top_mm - by_top,
        )


def end_bands(*, ask: CoursesAsk, lengths_mm: Sequence[Fraction]) -> EndBands:
    """The overhang and top bands narrowed to what can be marked at every station.

    The first mark is ``hanging length − overhang`` and must be a whole division; the top mark is
    ``length − allowance`` at each station. A band too narrow to hold a division is left as it is, and the mark
    nearest to it is used; but where the top band ends at the ridge's lap, the first mark that keeps the lap is.
    """
    overhang = _marked_band(band=ask.overhang, from_mm=(exact_length_mm(ask.hanging_length_mm),), division=ask.division)
    top = _marked_band(band=ask.top, from_mm=lengths_mm, division=ask.division, greatest_first=ask.ridge_lap_first)
    return EndBands(
        least=Ends(overhang_mm=overhang[0], top_mm=top[0]),
        greatest=Ends(overhang_mm=overhang[1], top_mm=top[1]),
        wished=Ends(
            overhang_mm=_brought_into(exact_length_mm(ask.overhang.aim_mm), overhang),
            top_mm=_brought_into(exact_length_mm(ask.top.aim_mm), top),
        ),
    )


def _marked_band(
    *, band: Band, from_mm: Sequence[Fraction], division: Division, greatest_first: bool = False
) -> tuple[Fraction, Fraction]:
    least_mm, greatest_mm = exact_length_mm(band.least_mm), exact_length_mm(band.greatest_mm)
    step_mm = division.step_mm
    marked_least = max(length - count_below(length - least_mm, division) * step_mm for length in from_mm)
    marked_greatest = min(length - count_above(length - greatest_mm, division) * step_mm for length in from_mm)
    if marked_least > marked_greatest:
        return (marked_greatest, marked_greatest) if greatest_first else (least_mm, greatest_mm)
    return marked_least, marked_greatest


def _brought_into(wished_mm: Fraction, band_mm: tuple[Fraction, Fraction]) -> Fraction:
    return min(max(wished_mm, band_mm[0]), band_mm[1])
