"""The same covering by a flat percentage on the area, and counted from the cuts: which orders more, and by how many.

Source: flat percentages are the edition's, or stated. Scope: what covers the area, the short course at the top with it; the
course under the eaves covers none of its own, and both ways need it besides. Counted in widths of a whole unit: a half unit is
half of one, a unit and a half one and a half.
"""

from collections.abc import Iterator
from math import ceil

from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import RandomSlates, SizedSlate
from gaugerod.fixing.extra_courses import UNDER_EAVES
from gaugerod.laying.ask import EdgeKind
from gaugerod.laying.cut_unit import Remedy
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.allowances import breakage
from gaugerod.take_off.answer import WasteCompared
from gaugerod.take_off.ask import Covering, LaidSlope, TakeOffAsk
from gaugerod.take_off.covering import main_item, sawn_count, wide_count

NOISE = 1e-6
"""Counts nearer than this to a whole number are that number."""


def units_by_area_count(*, area_mm2: float, gauge_mm: float, cover_mm: float) -> float:
    """Units on an area, each showing gauge × cover width: no allowance. Count, not rounded.

    >>> round(units_by_area_count(area_mm2=1e6, gauge_mm=100.0, cover_mm=165.0), 1)
    60.6
    """
    return area_mm2 / (gauge_mm * cover_mm)


def flat_waste(covering: Covering, wished: Limit | None, ask: TakeOffAsk) -> Limit:
    """The flat percentage: as stated, else the edition's for this covering."""
    if wished is not None:
        return wished
    if isinstance(covering, SizedSlate):
        return waste_figure(ask.edition, WasteFigure.FLAT_SIZED_SLATES)
    if isinstance(covering, RandomSlates):
        return waste_figure(ask.edition, WasteFigure.FLAT_RANDOM_SLATES)
    return waste_figure(ask.edition, WasteFigure.FLAT_TILES)


def waste_compared(ask: TakeOffAsk) -> Iterator[WasteCompared]:
    """One comparison for the covering; none for random slates, or where a cover width is not known."""
    if isinstance(ask.covering, RandomSlates) or not ask.slopes:
        return
    net_count = 0.0
    for slope in ask.slopes:
        if slope.cover_mm is None:
            return
        net_count += units_by_area_count(area_mm2=slope.area_mm2, gauge_mm=slope.gauge_mm, cover_mm=slope.cover_mm)
    flat = flat_waste(ask.covering, ask.wished.flat_waste, ask)
    saved = 0 if ask.offcuts is None else ask.offcuts.saved_count
    widths_count = sum(laid_widths_count(slope) for slope in ask.slopes) - saved
    flat_count, counted_count = _with(net_count, flat), _with(widths_count, breakage(ask))
    yield WasteCompared(
        item=main_item(ask.covering),
        net_by_area_count=net_count,
        flat_ratio=flat.value / 100,
        flat_citation=flat.citation,
        flat_count=flat_count,
        counted_count=counted_count,
        cuts_count=sum(sawn_count(slope) for slope in ask.slopes),
        offcuts_saved_count=saved,
        says=_says(ask, flat, flat_count=flat_count, counted_count=counted_count, net_count=net_count),
    )


def laid_widths_count(slope: LaidSlope) -> float:
    """What covers one slope if no offcut served, in widths of a whole unit. Count.

    Pieces are counted as the whole units they are sawn from.
    """
    top = sum(extra.units_count for extra in slope.extra if extra.name != UNDER_EAVES)
    wide = 1.5 * wide_count(slope, Remedy.UNIT_AND_A_HALF) + 2.0 * wide_count(slope, Remedy.DOUBLE)
    return slope.whole_count + sawn_count(slope) + top + 0.5 * slope.half_count + wide


def _with(count: float, percent: Limit) -> int:
    """A count with so many per cent on top, whole units up."""
    return ceil(count * (1 + percent.value / 100) - NOISE)


def _says(ask: TakeOffAsk, flat: Limit, *, flat_count: int, counted_count: int, net_count: float) -> str:
    over = flat_count - counted_count
    by_area = f"{net_count:.0f} units by the area and {flat.value:g} per cent make {flat_count}"
    widths = " (half and wide units by their width)" if _any_other_width(ask) else ""
    both = f"{by_area}; counted from the cuts it is {counted_count}{widths}"
    if over > 0:
        says = f"{both}: the flat percentage orders {over} more than this roof takes."
    elif over < 0:
        says = f"{both}: the flat percentage would leave you {-over} short on this roof."
    else:
        says = f"{both}: here both are the same."
    return f"{says}{_many_hips(ask, net_count)}"


def _any_other_width(ask: TakeOffAsk) -> bool:
    wide = (Remedy.UNIT_AND_A_HALF, Remedy.DOUBLE)
    return any(slope.half_count or any(wide_count(slope, each) for each in wide) for slope in ask.slopes)


def _many_hips(ask: TakeOffAsk, net_count: float) -> str:
    """Where no percentage is stated and hips or valleys are cut: the other percentages that are usual then."""
    kinds = {cut.edge.kind for slope in ask.slopes for piece in slope.pieces for cut in piece.cuts}
    if ask.wished.flat_waste is not None or not kinds & {EdgeKind.HIP, EdgeKind.VALLEY}:
        return ""
    least, greatest = (
        waste_figure(ask.edition, which)
        for which in (WasteFigure.FLAT_MANY_HIPS_LEAST, WasteFigure.FLAT_MANY_HIPS_GREATEST)
    )
    return (
        f" On roofs with many hips and valleys {least.value:g} to {greatest.value:g} per cent is taken "
        f"({least.citation.basis.value.replace('-', ' ')}): {_with(net_count, least)} to {_with(net_count, greatest)}."
    )
