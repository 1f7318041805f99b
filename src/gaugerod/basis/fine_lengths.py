"""Gauges, covers and laps for a person to read: to a tenth of a millimetre, whatever the unit."""

from fractions import Fraction
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.rounding import Division, count_above, count_below, nearest_count


def fine_length(length_mm: float, unit: LengthUnit, *, towards: Sense | None = None) -> str:
    """A length to a tenth of a millimetre (a sixteenth in feet and inches), for gauges, covers and laps.

    ``towards`` names the limit the length is held against: a length that must reach a least is rounded down,
    one that must stay under a greatest is rounded up, so that what is read never looks better than the roof is.

    >>> fine_length(345.27, LengthUnit.MM), fine_length(345.0, LengthUnit.MM), fine_length(345.27, LengthUnit.M)
    ('345.3 mm', '345 mm', '0.3453 m')
    >>> fine_length(74.98, LengthUnit.MM, towards=Sense.AT_LEAST)
    '74.9 mm'
    """
    if unit is LengthUnit.FT_IN:
        sixteenths = _count(Fraction(length_mm), Division.SIXTEENTH, towards)
        return write_length(sixteenths * Division.SIXTEENTH.step_mm, unit)
    tenths = _count(Fraction(length_mm) * 10, Division.MILLIMETRE, towards)
    if tenths % 10 == 0:
        return write_length(tenths // 10, unit)
    match unit:
        case LengthUnit.MM:
            return f"{tenths / 10:.1f} mm"
        case LengthUnit.CM:
            return f"{tenths / 100:.2f} cm"
        case LengthUnit.M:
            return f"{tenths / 10000:.4f} m"
        case _ as unreachable:
            assert_never(unreachable)


def _count(length_mm: Fraction, division: Division, towards: Sense | None) -> int:
    match towards:
        case None:
            return nearest_count(length_mm, division)
        case Sense.AT_LEAST:
            return count_below(length_mm, division)
        case Sense.AT_MOST:
            return count_above(length_mm, division)
        case _ as unreachable:
            assert_never(unreachable)
