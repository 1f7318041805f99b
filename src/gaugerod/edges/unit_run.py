"""Units along a line, from one end to the other: whole ones, and no cut under half of what a whole one covers.

Source: a national housebuilder's site standard: no ridge unit under half, what is left over spread over two (published).
Scope: ridge, mono-ridge and hip units laid end to end, each gaining the same along the line: where units overlap, the last
one is reckoned like the rest, though it would reach further. A line shorter than half a
unit has one that is shorter than the rule allows: ``rules.ridge_units.unit_cut`` says so. Lengths in mm along the line.
"""

from fractions import Fraction
from math import floor

from gaugerod.basis.finding import TOUCH
from gaugerod.edges.answer import UnitRun
from gaugerod.edges.wished import LineUnit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.rules.ridge_units import unit_cut_least
from gaugerod.standards.edition import Edition

_RULE = "units along a line"
_TOUCH = Fraction(TOUCH)


def unit_run(*, where: str, length_mm: float, unit: LineUnit, edition: Edition) -> UnitRun:
    """The fewest units that cover the line. What is left over is one cut unit, or where that were under half, two alike.

    Raises NothingToSetOut for lengths that are no measurements. Source and scope: see the head of this page.

    >>> def run(length_mm: float) -> tuple[int, tuple[float, ...]]:
    ...     units = unit_run(where="ridge", length_mm=length_mm, edition=Edition.GB,
    ...                      unit=LineUnit(length_mm=450.0, cover_mm=450.0))
    ...     return units.whole_count, units.cut_mm
    >>> run(4500.0), run(4800.0), run(4600.0)
    ((10, ()), (10, (300.0,)), (9, (275.0, 275.0)))
    >>> run(4725.0), run(4724.0), run(200.0)
    ((10, (225.0,)), (9, (337.0, 337.0)), (0, (200.0,)))
    """
    refuse_unless_above_nothing(rule=_RULE, where=where, value=length_mm, unit="mm")
    least_mm = Fraction(unit_cut_least(where=where, cover_mm=unit.cover_mm, edition=edition).value)
    length, cover = Fraction(length_mm), Fraction(unit.cover_mm)
    whole_count = floor((length + _TOUCH) / cover)
    left_over = length - whole_count * cover
    if left_over <= _TOUCH and whole_count:
        cuts: tuple[Fraction, ...] = ()
    elif left_over >= least_mm - _TOUCH or whole_count == 0:
        cuts = (left_over,)
    else:
        whole_count -= 1
        cuts = ((cover + left_over) / 2,) * 2
    return UnitRun(
        units_count=whole_count + len(cuts),
        whole_count=whole_count,
        cut_mm=tuple(float(cut) for cut in cuts),
        cover_mm=unit.cover_mm,
        length_mm=length_mm,
        lap_mm=unit.length_mm - unit.cover_mm,
    )
