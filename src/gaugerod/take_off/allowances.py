"""What is added to each measured quantity, and why: the cuts are counted already, so only breakage and loss are left.

Source: the edition's figures, or the job's own breakage. Scope: battens, rolls and lead are bought by their own cutting plans,
so nothing is added to them; random slates are broken already in their record.
"""

from collections.abc import Iterator

from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.answer import Allowance, Measured, Trade
from gaugerod.take_off.ask import TakeOffAsk

_MORTAR = "mortar"


def allowances(ask: TakeOffAsk, measured: Measured) -> Iterator[Allowance]:
    """The allowances of one quantity, in its unit."""
    if measured.item == _MORTAR:
        yield _of(measured, "lost in mixing and on the board", waste_figure(ask.edition, WasteFigure.MORTAR_LOST))
        return
    match measured.trade:
        case Trade.COVERING:
            if not isinstance(ask.covering, RandomSlates):
                stated = ask.wished.breakage
                yield _of(measured, "breakage", stated or waste_figure(ask.edition, WasteFigure.BREAKAGE))
        case Trade.EDGES if measured.unit == "pieces" and _is_unit(measured.item):
            yield _of(measured, "breakage", waste_figure(ask.edition, WasteFigure.LINE_UNITS_BREAKAGE))
        case Trade.FIXINGS:
            yield _of(measured, "dropped and bent", waste_figure(ask.edition, WasteFigure.FIXINGS_DROPPED))
        case Trade.BATTENS if measured.item.startswith("batten-nails"):
            yield _of(measured, "dropped and bent", waste_figure(ask.edition, WasteFigure.FIXINGS_DROPPED))
        case _:
            return


def _is_unit(item: str) -> bool:
    """Is it a unit that breaks: of the ridge, the hip, the verge or the valley?"""
    return item.startswith(("ridge-unit", "mono-ridge-unit", "hip-unit", "bonnet", "cloaked-verge-tile", "valley-tile"))


def _of(measured: Measured, name: str, percent: Limit) -> Allowance:
    return Allowance(
        name=f"{name}, {percent.value:g} per cent",
        amount=measured.net * percent.value / 100,
        citation=percent.citation,
    )
