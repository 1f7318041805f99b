"""Straight lines between the places that were measured, and on past the outermost two."""

from bisect import bisect_right
from collections.abc import Sequence
from fractions import Fraction

from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.marked_limits import exact_length_mm

Point = tuple[Fraction, Fraction]


def height_at_mm(*, points: Sequence[Point], at_mm: Fraction) -> Fraction:
    """Up the slope at ``at_mm``, on the line through (along, up) points sorted from the left; one point: level.

    >>> points = ((Fraction(0), Fraction(4900)), (Fraction(6000), Fraction(4912)))
    >>> [int(height_at_mm(points=points, at_mm=Fraction(at))) for at in (-500, 3000, 6000)]
    [4899, 4906, 4912]
    """
    if len(points) == 1:
        return points[0][1]
    right = min(max(bisect_right(points, at_mm, key=lambda point: point[0]), 1), len(points) - 1)
    (left_at_mm, left_mm), (right_at_mm, right_mm) = points[right - 1], points[right]
    if at_mm == right_at_mm:
        return right_mm
    return left_mm + (right_mm - left_mm) * (at_mm - left_at_mm) / (right_at_mm - left_at_mm)


def measured_lengths(ask: CoursesAsk) -> tuple[Point, ...]:
    """Each station's place along the eaves and its length up the slope, exactly."""
    return tuple((exact_length_mm(station.at_mm), exact_length_mm(station.length_mm)) for station in ask.stations)
