"""What is added to each measured quantity, and why: the cuts are counted already, so only breakage and loss are left.

Source: the edition's figures, or the job's own breakage. Flat percentages are taken to cover cutting and breakage together, so
none of them is added here: see ``compared``. Scope: battens, rolls of underlay and lead are bought by their own cutting plans,
so nothing is added to them; random slates are broken already in their record, and lose only what is cut off at the sides.
"""

from collections.abc import Iterator

from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.setting_out.said import counted
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure
from gaugerod.standards.waste import WasteFigure, waste_figure
from gaugerod.take_off.answer import Allowance, Measured, Trade
from gaugerod.take_off.ask import TakeOffAsk
from gaugerod.take_off.covering import random_item

_BREAK = ("ridge-unit", "mono-ridge-unit", "hip-unit", "bonnet", "cloaked-verge-tile", "valley-tile")
"""Units of the edges that break as those of the covering do."""
_TIMBER = ("counter-batten", "lap-batten", "ridge-batten", "valley-board")


def breakage(ask: TakeOffAsk) -> Limit:
    """Of the covering's units: as the job states it, else the edition's. Per cent; nothing where nothing is stated so."""
    stated = ask.wished.breakage
    return waste_figure(ask.edition, WasteFigure.BREAKAGE) if stated is None else stated


def allowances(ask: TakeOffAsk, measured: Measured) -> Iterator[Allowance]:
    """The allowances of one quantity, in its unit."""
    if measured.trade is Trade.COVERING and isinstance(ask.covering, RandomSlates):
        yield from _cut_at_the_sides(ask, measured)
        return
    for name, percent in _shares(ask, measured):
        yield _share(measured, name, percent)


def _shares(ask: TakeOffAsk, measured: Measured) -> Iterator[tuple[str, Limit]]:
    """The allowances that are a part of the quantity: their names, and per cent."""

    def usual(which: WasteFigure) -> Limit:
        return waste_figure(ask.edition, which)

    item = measured.item
    if measured.unit == "litres":
        yield "lost in mixing and on the board", usual(WasteFigure.MORTAR_LOST)
    elif measured.unit == "m":
        if item.startswith(_TIMBER):
            yield "ends cut off", usual(WasteFigure.TIMBER_BY_THE_METRE)
        else:
            yield "ends cut off, and its own laps", usual(WasteFigure.ROLLS_BY_THE_METRE)
    elif measured.trade is Trade.COVERING:
        yield "breakage", breakage(ask)
    elif item.startswith(_BREAK):
        yield "breakage", usual(WasteFigure.LINE_UNITS_BREAKAGE)
    elif _is_small(measured):
        yield "dropped and bent", usual(WasteFigure.FIXINGS_DROPPED)


def _is_small(measured: Measured) -> bool:
    """Is it a nail, clip, hook or screw, which is dropped or bent? A bond is none of these."""
    if measured.trade is Trade.FIXINGS:
        return measured.item != "bonds"
    return measured.item.startswith(("batten-nails", "line-unit-fixing"))


def _share(measured: Measured, name: str, percent: Limit) -> Allowance:
    return Allowance(
        name=f"{name}, {percent.value:g} per cent",
        amount=measured.net * percent.value / 100,
        citation=percent.citation,
    )


def _cut_at_the_sides(ask: TakeOffAsk, measured: Measured) -> Iterator[Allowance]:
    """The same run for each course as the plan of the courses takes from the stack."""
    each = double_lap_figure(ask.edition, DoubleLapFigure.RANDOM_SLATE_SIDE_WASTE)
    courses_count = sum(
        group.courses_count
        for slope in ask.slopes
        if slope.diminishing is not None
        for group in slope.diminishing.groups
        if measured.item == random_item(group.length_mm)
    )
    if courses_count:
        name = f"cut off at the sides of {counted(courses_count, 'course')}"
        yield Allowance(name=name, amount=courses_count * each.value / 1000, citation=each.citation)
