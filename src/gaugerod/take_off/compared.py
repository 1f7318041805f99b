"""The same covering by a flat percentage on the area, and counted from the cuts: which orders more, and by how many.

Source: flat percentages are the edition's, or stated. Scope: units of the full courses of every width, not eaves tiles.
"""

from collections.abc import Iterator
from math import ceil

from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import RandomSlates, SizedSlate
from gaugerod.laying.offcuts import from_wider_units
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.answer import OrderLine, WasteCompared
from gaugerod.take_off.ask import Covering, TakeOffAsk
from gaugerod.take_off.covering import main_item


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


def waste_compared(ask: TakeOffAsk, lines: tuple[OrderLine, ...]) -> Iterator[WasteCompared]:
    """One comparison for the covering; none for random slates, or where a cover width is not known."""
    if isinstance(ask.covering, RandomSlates) or not ask.slopes:
        return
    net_count = 0.0
    for slope in ask.slopes:
        if slope.cover_mm is None:
            return
        net_count += units_by_area_count(area_mm2=slope.area_mm2, gauge_mm=slope.gauge_mm, cover_mm=slope.cover_mm)
    item = main_item(ask.covering)
    flat = flat_waste(ask.covering, ask.wished.flat_waste, ask)
    flat_count = ceil(net_count * (1 + flat.value / 100) - 1e-6)
    widths = (item, "half-tile", f"{item}-and-a-half", f"double-{item}")
    extra = sum(extra.units_count for slope in ask.slopes for extra in slope.extra if extra.item == item)
    counted_count = int(sum(line.order for line in lines if line.measured.item in widths)) - extra
    saved = 0 if ask.offcuts is None else ask.offcuts.saved_count
    cuts = sum(len(slope.pieces) - len(from_wider_units(slope.pieces)) for slope in ask.slopes)
    yield WasteCompared(
        item=item,
        net_by_area_count=net_count,
        flat_ratio=flat.value / 100,
        flat_citation=flat.citation,
        flat_count=flat_count,
        counted_count=counted_count,
        cuts_count=cuts,
        offcuts_saved_count=saved,
        says=_says(flat, flat_count, counted_count, net_count),
    )


def _says(flat: Limit, flat_count: int, counted_count: int, net_count: float) -> str:
    over = flat_count - counted_count
    by_area = f"{net_count:.0f} units by the area and {flat.value:g} per cent make {flat_count}"
    both = f"{by_area}; counted from the cuts it is {counted_count} (wide and half units too)"
    if over > 0:
        return f"{both}: the flat percentage orders {over} more than this roof takes."
    if over < 0:
        return f"{both}: the flat percentage would leave you {-over} short on this roof."
    return f"{both}: here both are the same."
