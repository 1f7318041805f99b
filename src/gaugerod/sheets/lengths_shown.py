"""Lengths on paper: in the job's unit, and never rounded to the flattering side of a limit."""

from gaugerod.basis.finding import Sense
from gaugerod.basis.fine_lengths import fine_length
from gaugerod.basis.lengths import LengthUnit, write_length

__all__ = ["bare_fine_length", "bare_length", "fine_length", "unit_heading"]


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


def bare_fine_length(length_mm: float, unit: LengthUnit, *, towards: Sense | None = None) -> str:
    """A fine length without its unit.

    >>> bare_fine_length(345.27, LengthUnit.MM)
    '345.3'
    """
    return fine_length(length_mm, unit, towards=towards).removesuffix(f" {unit.value}")
