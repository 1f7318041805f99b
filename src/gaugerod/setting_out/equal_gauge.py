"""Equal gauges between a first and a top batten, and the least move of the ends that makes them fit.

Several stations share one number of gauges. Only the shortest and the longest span matter: if their gauges
are in range, every station between is.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from gaugerod.setting_out.marked_limits import GaugeLimits


@dataclass(frozen=True, slots=True, kw_only=True)
class Spans:
    """First to top batten, at the shortest and at the longest station. mm."""

    least_mm: Fraction
    greatest_mm: Fraction

    @property
    def taper_mm(self) -> Fraction:
        """How much longer the longest is."""
        return self.greatest_mm - self.least_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """``count`` gauges fit once the span is made longer by ``shift_mm`` (shorter, where negative)."""

    count: int
    shift_mm: Fraction


def fewest_gauges(*, span_mm: Fraction, gauge_max_mm: Fraction) -> int:
    """The fewest equal gauges, none over the greatest: span ÷ greatest gauge, rounded up.

    Source: general practice of the trade, read on how-to pages; published worked cases are in the tests.
    Scope: a span above zero.

    >>> fewest_gauges(span_mm=Fraction(3000), gauge_max_mm=Fraction(300))
    10
    >>> fewest_gauges(span_mm=Fraction(3001), gauge_max_mm=Fraction(300))
    11
    """
    return ceil(span_mm / gauge_max_mm)


def shift_to_fit(*, count: int, spans: Spans, limits: GaugeLimits) -> Fraction | None:
    """The least change of every span, in mm, that brings ``count`` gauges into range at every station.

    None when the stations differ by more than ``count`` gauges can take up, however the ends are moved.

    >>> limits = GaugeLimits(least_mm=Fraction(320), greatest_mm=Fraction(345))
    >>> spans = Spans(least_mm=Fraction(691), greatest_mm=Fraction(691))
    >>> [str(shift_to_fit(count=count, spans=spans, limits=limits)) for count in (2, 3)]
    ['-1', '269']
    """
    highest_mm = count * limits.greatest_mm - spans.greatest_mm
    if limits.least_mm is None:
        return min(highest_mm, Fraction(0))
    lowest_mm = count * limits.least_mm - spans.least_mm
    if lowest_mm > highest_mm:
        return None
    return max(lowest_mm, min(highest_mm, Fraction(0)))


def least_shift(*, spans: Spans, limits: GaugeLimits, shorten_mm: Fraction, lengthen_mm: Fraction) -> Shift | None:
    """The least move of the ends, inside what they allow, that brings every station into range; None if none does.

    For each number of gauges the moves that serve are one interval, so the nearest end of an interval is the
    exact optimum; ties go to the fewer gauges.
    """
    fewest = max(1, fewest_gauges(span_mm=spans.greatest_mm - shorten_mm, gauge_max_mm=limits.greatest_mm))
    most = fewest_gauges(span_mm=spans.greatest_mm, gauge_max_mm=limits.greatest_mm)
    if limits.least_mm is not None:
        most = floor((spans.least_mm + lengthen_mm) / limits.least_mm)
    found = [
        Shift(count=count, shift_mm=shift_mm)
        for count in range(fewest, most + 1)
        if (shift_mm := shift_to_fit(count=count, spans=spans, limits=limits)) is not None
        and -shorten_mm <= shift_mm <= lengthen_mm
    ]
    return min(found, key=lambda shift: (abs(shift.shift_mm), shift.count), default=None)
