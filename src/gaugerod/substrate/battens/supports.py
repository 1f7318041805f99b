"""Where the rafters of a slope stand."""

from itertools import pairwise
from math import floor
from typing import assert_never

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.substrate.battens.ask import EvenRafters, MeasuredRafters, Rafters


def rafters_mm(rafters: Rafters, *, left_mm: float, right_mm: float) -> tuple[float, ...]:
    """The middle of every rafter between the two ends of the slope, left to right. mm.

    The last rafter stands where it was measured, however near the one before it; none stands in step beyond it.

    >>> rafters_mm(EvenRafters(first_mm=25.0, spacing_mm=600.0), left_mm=0.0, right_mm=1900.0)
    (25.0, 625.0, 1225.0, 1825.0)
    >>> rafters_mm(EvenRafters(first_mm=25.0, spacing_mm=600.0, last_mm=1675.0), left_mm=0.0, right_mm=1700.0)
    (25.0, 625.0, 1225.0, 1675.0)
    """
    match rafters:
        case MeasuredRafters(at_mm=at_mm):
            found = at_mm
        case EvenRafters(first_mm=first_mm, spacing_mm=spacing_mm, last_mm=last_mm):
            end_mm = right_mm if last_mm is None else last_mm - 2 * TOUCH
            count = floor((end_mm - first_mm) / spacing_mm + TOUCH / spacing_mm) + 1
            found = tuple(first_mm + number * spacing_mm for number in range(count))
            if last_mm is not None:
                found = (*found, last_mm)
        case _ as unreachable:
            assert_never(unreachable)
    return tuple(at_mm for at_mm in found if left_mm - TOUCH <= at_mm <= right_mm + TOUCH)


def widest_spacing_mm(at_mm: tuple[float, ...]) -> float | None:
    """The widest gap between neighbouring rafters; None where there are not two. mm."""
    return max((right - left for left, right in pairwise(at_mm)), default=None)


def ends_mm(points_mm: tuple[Point, ...]) -> tuple[float, float]:
    """The left and the right end of an outline. mm."""
    return min(x for x, _ in points_mm), max(x for x, _ in points_mm)
