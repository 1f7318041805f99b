"""Lengths on paper: in the job's unit, and never rounded to the flattering side of a limit."""

from fractions import Fraction
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.rounding import Division, count_above, count_below, nearest_count


def unit_heading(unit: LengthUnit) -> str:
    """The unit as a table's heading says it.

    >>> unit_heading(LengthUnit.MM), unit_heading(LengthUnit.FT_IN)
    ('mm', 'ft and in')
    """
    return "ft and in" if unit is LengthUnit.FT_IN else unit.value


def bare_length(length_mm: float, unit: LengthUnit) -> str:
    r"""A length without its unit, for a column or drawing that names the unit once.

    >>> bare_length(4905, LengthUnit.MM), bare_length(4905, LengthUnit.FT_IN)
    ('4905', '16\' 1 1/8"')
    """
    return write_length(length_mm, unit).removesuffix(f" {unit.value}")


def fine_length(length_mm: float, unit: LengthUnit, *, towards: Sense | None = None) -> str:
    """A length to a tenth of a millimetre (a sixteenth in feet and inches), for gauges, covers and laps.

    ``towards`` names the limit the length is held against: a length that must reach a least is rounded down,
    one that must stay under a greatest is rounded up, so that paper never reads better than the roof is.

    >>> fine_length(345.27, LengthUnit.MM), fine_length(345.0, LengthUnit.MM)
    ('345.3 mm', '345 mm')
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


def bare_fine_length(length_mm: float, unit: LengthUnit, *, towards: Sense | None = None) -> str:
    """A fine length without its unit.

    >>> bare_fine_length(345.27, LengthUnit.MM)
    '345.3'
    """
    return fine_length(length_mm, unit, towards=towards).removesuffix(f" {unit.value}")


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
