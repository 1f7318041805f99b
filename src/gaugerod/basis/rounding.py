"""Rounding, once, at the end, with its direction named."""

from enum import Enum
from fractions import Fraction
from math import ceil, floor


class Division(Enum):
    """The smallest division a mark is read to: one millimetre, or one sixteenth of an inch."""

    MILLIMETRE = Fraction(1)
    SIXTEENTH = Fraction("25.4") / 16

    @property
    def step_mm(self) -> Fraction:
        """The division's length, exactly."""
        return self.value


def nearest_count(length_mm: float | Fraction, division: Division) -> int:
    """How many divisions make the length, to the nearest; a half goes up.

    >>> nearest_count(344.5, Division.MILLIMETRE), nearest_count(344.49, Division.MILLIMETRE)
    (345, 344)
    """
    return floor(Fraction(length_mm) / division.step_mm + Fraction(1, 2))


def count_below(length_mm: float | Fraction, division: Division) -> int:
    """The most whole divisions that do not exceed the length (a millionth of a mm is float noise).

    >>> count_below(344.9, Division.MILLIMETRE), count_below(344.99999999, Division.MILLIMETRE)
    (344, 345)
    """
    return floor((Fraction(length_mm) + _NOISE_MM) / division.step_mm)


def count_above(length_mm: float | Fraction, division: Division) -> int:
    """The fewest whole divisions that reach the length (a millionth of a mm is float noise).

    >>> count_above(344.1, Division.MILLIMETRE), count_above(344.00000001, Division.MILLIMETRE)
    (345, 344)
    """
    return ceil((Fraction(length_mm) - _NOISE_MM) / division.step_mm)


_NOISE_MM = Fraction(1, 1_000_000)
