"""Quantities of an order as a person reads them, in their own unit; metres in feet and inches as well where the job is."""

from decimal import Decimal
from fractions import Fraction

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.basis.rounding import Division, count_above

_UNITS = {"m2": "m²", "pieces": ""}


def unit_said(unit: str) -> str:
    """The unit as it is written after a quantity of many; pieces have none.

    >>> unit_said("m2"), unit_said("pieces"), unit_said("litres")
    ('m²', '', 'litres')
    """
    return _UNITS.get(unit, unit)


def quantity_said(quantity: float, unit: str, shown_in: LengthUnit, *, up: bool = False) -> str:
    r"""To the nearest tenth, or finer under one; ``up`` to the next: what is ordered is never less than what is needed.

    >>> quantity_said(512.0, "pieces", LengthUnit.MM), quantity_said(12.31, "m", LengthUnit.MM, up=True)
    ('512', '12.4 m')
    >>> quantity_said(12.4, "m", LengthUnit.MM, up=True), quantity_said(12.3, "m", LengthUnit.FT_IN)
    ('12.4 m', '40\' 4 1/4" (12.3 m)')
    >>> quantity_said(0.04, "pieces", LengthUnit.MM), quantity_said(-24.0, "pieces", LengthUnit.MM)
    ('0.04', '−24')
    >>> quantity_said(1.0, "rolls", LengthUnit.MM), quantity_said(2.0, "rolls", LengthUnit.MM)
    ('1 roll', '2 rolls')
    """
    tenths = Fraction(count_above(quantity * 10, Division.MILLIMETRE)) / 10 if up else Fraction(quantity)
    small = 0 < tenths < Fraction(1, 10)
    figures = (f"{float(tenths):.2g}" if small else f"{float(tenths):z.1f}").replace("-", "−")
    counted_in = "roll" if unit == "rolls" and tenths == 1 else unit_said(unit)
    said = f"{figures.removesuffix('.0') if unit in {'pieces', 'rolls'} else figures} {counted_in}".rstrip()
    if unit == "m" and shown_in is LengthUnit.FT_IN:
        return f"{write_length(tenths * 1000, shown_in)} ({said})"
    return said


def charged_said(quantity: Decimal, unit: str, shown_in: LengthUnit) -> str:
    r"""A quantity as it is charged, to the last figure: with the price it makes the amount, by hand too.

    >>> charged_said(Decimal("7.859"), "m", LengthUnit.MM), charged_said(Decimal("378"), "pieces", LengthUnit.MM)
    ('7.859 m', '378')
    >>> charged_said(Decimal("12.300"), "m", LengthUnit.FT_IN), charged_said(Decimal(1), "rolls", LengthUnit.MM)
    ('40\' 4 1/4" (12.3 m)', '1 roll')
    """
    said = f"{quantity.normalize():f} {'roll' if unit == 'rolls' and quantity == 1 else unit_said(unit)}".rstrip()
    if unit == "m" and shown_in is LengthUnit.FT_IN:
        return f"{write_length(Fraction(quantity) * 1000, shown_in)} ({said})"
    return said


def mass_said(mass_kg: float) -> str:
    """A mass: small ones to a tenth, others to a kilogram.

    >>> mass_said(3.42), mass_said(1830.2)
    ('3.4 kg', '1830 kg')
    """
    return f"{mass_kg:.1f} kg" if mass_kg < _SMALL_KG else f"{mass_kg:.0f} kg"


_SMALL_KG = 20.0


def masses_between(least_kg: float | None, greatest_kg: float | None) -> str:
    """From the least to the greatest; said once where both read the same, and as not known where neither is.

    >>> masses_between(1830.2, 1912.7), masses_between(50.0, 50.0), masses_between(None, None)
    ('1830 to 1913 kg', '50 kg', 'not known')
    """
    known = [mass_said(each_kg) for each_kg in (least_kg, greatest_kg) if each_kg is not None]
    if not known:
        return "not known"
    first, last = known[0], known[-1]
    return first if first == last else f"{first.removesuffix(' kg')} to {last}"
