"""Lengths inside the sentences the setting out says: in mm to a tenth, or in feet and inches to a sixteenth."""

from fractions import Fraction
from typing import assert_never

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.rounding import Division, count_above


def said(length_mm: float | Fraction, division: Division) -> str:
    r"""The length for a sentence.

    >>> said(345.27, Division.MILLIMETRE), said(345.0, Division.MILLIMETRE), said(345.0, Division.SIXTEENTH)
    ('345.3 mm', '345 mm', '1\' 1 9/16"')
    """
    match division:
        case Division.MILLIMETRE:
            return f"{float(length_mm):.1f}".removesuffix(".0") + " mm"
        case Division.SIXTEENTH:
            return write_length(length_mm, LengthUnit.FT_IN)
        case _ as unreachable:
            assert_never(unreachable)


def out_by(length_mm: float | Fraction, division: Division) -> str:
    r"""How far something is out, or must be moved to mend it: up to the next tenth or sixteenth, so never by nothing.

    >>> out_by(0.71, Division.MILLIMETRE), out_by(10.0, Division.MILLIMETRE), out_by(0.71, Division.SIXTEENTH)
    ('0.8 mm', '10 mm', '1/16"')
    """
    match division:
        case Division.MILLIMETRE:
            return said(Fraction(count_above(Fraction(length_mm) * 10, division), 10), division)
        case Division.SIXTEENTH:
            return said(count_above(length_mm, division) * division.step_mm, division)
        case _ as unreachable:
            assert_never(unreachable)


def counted(count: int, thing: str) -> str:
    """A number of things.

    >>> counted(1, "gauge"), counted(14, "gauge")
    ('1 gauge', '14 gauges')
    """
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
