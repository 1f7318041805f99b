"""Marks on the rod: cumulative from the fascia face, rounded once each, so that no error builds up.

Why rounding to the nearest keeps the limits: mark k stands at ``start + k × gauge`` divisions, and two numbers
that differ by the gauge round to whole numbers that differ by the gauge rounded down or rounded up. A greatest
gauge that is a whole number of divisions is never passed by a gauge rounded up; a least gauge that is whole is
never missed by one rounded down (``marked_limits`` makes both whole). Every mark is then within half a
division of exact. Only above a batten already nailed, which may stand anywhere, must some marks
move further, by less than one division.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, lcm

from gaugerod.basis.rounding import Division
from gaugerod.setting_out.courses import Rod
from gaugerod.setting_out.marked_limits import GaugeLimits

SET_COUNT = 10
"""Gauges are read off the rod in sets of ten: one measurement for ten gauges keeps slips from adding up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """The marks of one rod in mm, rounded and exact."""

    rounded_mm: tuple[float, ...]
    exact_mm: tuple[float, ...]


def equal_marks(*, start_mm: Fraction, gauge_mm: Fraction, count: int, division: Division) -> Marks:
    """Marks of ``count`` equal gauges from ``start_mm`` (itself the first mark), each to the nearest division.

    >>> equal_marks(start_mm=Fraction(345), gauge_mm=Fraction(689, 2), count=2, division=Division.MILLIMETRE)
    Marks(rounded_mm=(345.0, 690.0, 1034.0), exact_mm=(345.0, 689.5, 1034.0))
    """
    counts = _nearest_counts(start_mm=start_mm, gauge_mm=gauge_mm, count=count, division=division)
    return Marks(rounded_mm=_lengths_mm(counts, division), exact_mm=_exact_mm(start_mm, gauge_mm, count))


def marks_above_kept(
    *, kept_mm: Fraction, gauge_mm: Fraction, count: int, limits: GaugeLimits, division: Division
) -> Marks:
    """Marks of ``count`` equal gauges above a batten already nailed at ``kept_mm``, which is not among them.

    The kept batten need not stand on a whole division, so the nearest marks are held between the highest that
    no short lap allows and the lowest that the least gauge allows. All three rise by
    gauges in range, so what is left between them does. Where they disagree the lap wins.
    """
    step_mm = division.step_mm
    nearest = _nearest_counts(start_mm=kept_mm, gauge_mm=gauge_mm, count=count, division=division)
    greatest, highest = floor(limits.greatest_mm / step_mm), floor(kept_mm / step_mm)
    least, lowest = floor(gauge_mm / step_mm), highest
    if limits.least_mm is not None and gauge_mm >= limits.least_mm:
        least, lowest = ceil(limits.least_mm / step_mm), ceil(kept_mm / step_mm)
    counts = [min(highest + k * greatest, max(lowest + k * least, mark)) for k, mark in enumerate(nearest) if k > 0]
    exact_mm = _exact_mm(kept_mm, gauge_mm, count)[1:]
    return Marks(rounded_mm=_lengths_mm(counts, division), exact_mm=exact_mm)


def _nearest_counts(*, start_mm: Fraction, gauge_mm: Fraction, count: int, division: Division) -> list[int]:
    """In whole numbers over one denominator, so that a half is a half: a half goes up."""
    start, gauge = start_mm / division.step_mm, gauge_mm / division.step_mm
    parts = lcm(start.denominator, gauge.denominator)
    at, by = start.numerator * (parts // start.denominator), gauge.numerator * (parts // gauge.denominator)
    return [(2 * (at + k * by) + parts) // (2 * parts) for k in range(count + 1)]


def _exact_mm(start_mm: Fraction, gauge_mm: Fraction, count: int) -> tuple[float, ...]:
    parts = lcm(start_mm.denominator, gauge_mm.denominator)
    at = start_mm.numerator * (parts // start_mm.denominator)
    by = gauge_mm.numerator * (parts // gauge_mm.denominator)
    return tuple((at + k * by) / parts for k in range(count + 1))


def _lengths_mm(counts: Sequence[int], division: Division) -> tuple[float, ...]:
    step_mm = float(division.step_mm)
    return tuple(count * step_mm for count in counts)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetOfTen:
    """A stretch of the rod read in one measurement: from batten ``first`` to batten ``last``, numbered from 1."""

    first: int
    last: int
    from_mm: float
    to_mm: float

    @property
    def length_mm(self) -> float:
        """The whole stretch, to be measured in one go."""
        return self.to_mm - self.from_mm


def sets_of_ten(rod: Rod) -> tuple[SetOfTen, ...]:
    """The rod in sets of ten gauges from the first batten, the last set with what is left.

    Source: general practice, mark gauges in sets and not one by one (common practice).

    >>> rod = Rod(at_mm=0.0, length_mm=4000.0, gauge_mm=300.0, overhang_mm=50.0, below_apex_mm=40.0,
    ...           marks_mm=tuple(360.0 + 300.0 * k for k in range(13)),
    ...           exact_mm=tuple(360.0 + 300.0 * k for k in range(13)))
    >>> [(part.first, part.last, part.length_mm) for part in sets_of_ten(rod)]
    [(1, 11, 3000.0), (11, 13, 600.0)]
    """
    last = len(rod.marks_mm) - 1
    return tuple(
        SetOfTen(
            first=first + 1,
            last=min(first + SET_COUNT, last) + 1,
            from_mm=rod.marks_mm[first],
            to_mm=rod.marks_mm[min(first + SET_COUNT, last)],
        )
        for first in range(0, last, SET_COUNT)
    )
