"""How a misfit is said: up to the next tenth, so that a figure outside its limit is never said to be out by nothing."""

from math import ceil

from gaugerod.basis.finding import TOUCH


def misfit(value: float, *, unit: str = " mm") -> str:
    """The size of a misfit in words, in the unit given.

    >>> misfit(1.0), misfit(0.03), misfit(2.5, unit="°")
    ('1.0 mm', '0.1 mm', '2.5°')
    """
    return f"{ceil((value - TOUCH) * 10) / 10:.1f}{unit}"
