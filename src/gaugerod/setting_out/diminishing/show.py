"""Lengths in the sentences of a plan, in the divisions its rod is marked in."""

from typing import assert_never

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.rounding import Division


def shown(length_mm: float, division: Division) -> str:
    r"""A length for a person to read, in millimetres or in feet and inches.

    >>> shown(508.0, Division.MILLIMETRE), shown(508.0, Division.SIXTEENTH)
    ('508 mm', '1\' 8"')
    """
    match division:
        case Division.MILLIMETRE:
            return write_length(length_mm, LengthUnit.MM)
        case Division.SIXTEENTH:
            return write_length(length_mm, LengthUnit.FT_IN)
        case _ as unreachable:
            assert_never(unreachable)
