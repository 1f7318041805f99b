"""Lengths on their way into the page: to the grain the setting out takes them in, so that the script reads them exactly."""

from fractions import Fraction

from gaugerod.setting_out.marked_limits import exact_length_mm


def grain(length_mm: float) -> float:
    """The length to a millionth of a mm.

    >>> grain(0.1 + 0.2)
    0.3
    """
    return float(exact_length_mm(length_mm))


def as_fraction(length_mm: Fraction) -> str:
    """The length as a fraction, for figures that no decimal holds.

    >>> as_fraction(Fraction(14747, 3)), as_fraction(Fraction(345))
    ('14747/3', '345/1')
    """
    return f"{length_mm.numerator}/{length_mm.denominator}"
