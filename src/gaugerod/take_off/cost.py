"""The job in money: the order at the user's prices, the work at the user's rates. All money is decimal.

Scope: prices and rates before tax; one tax on the whole. What has no price is named and is not in the total.
"""

from collections.abc import Iterator, Sequence
from decimal import ROUND_HALF_UP, Context, Decimal, localcontext

from gaugerod.take_off.answer import OrderLine, TakeOff
from gaugerod.take_off.money import LabourCost, MaterialCost, Price, PriceList, Quotation, Rate, Task
from gaugerod.take_off.wished import MoneySettings

_ENOUGH = Context(prec=60, rounding=ROUND_HALF_UP)
"""Digits enough that no product or sum is ever cut short, whatever arithmetic the caller has set."""
QUANTITY_PLACES = Decimal("0.001")
"""Quantities go into money to a thousandth of their unit: a gram, a millimetre, a cubic centimetre."""


def cost(*, take_off: TakeOff, tasks: Sequence[Task], prices: PriceList, money: MoneySettings) -> Quotation:
    """The quotation. Every amount is rounded once, half away from nothing; totals are sums of the rounded amounts.

    A price is of the item's own unit: one in another unit is not used, and said. What is bought is priced: whole packs.
    """
    with localcontext(_ENOUGH):
        return _cost(take_off, tasks, prices, money)


def _cost(take_off: TakeOff, tasks: Sequence[Task], prices: PriceList, money: MoneySettings) -> Quotation:
    materials = tuple(_material(line, _price_of(line, prices.prices), money) for line in take_off.lines)
    labour = tuple(_labour(task, _rate_of(task, prices.rates), money) for task in tasks)
    materials_total = sum((each.amount for each in materials if each.amount is not None), Decimal(0))
    labour_total = sum((each.amount for each in labour if each.amount is not None), Decimal(0))
    net_total = materials_total + labour_total
    tax = None if money.tax_percent is None else in_money(net_total * money.tax_percent / 100, money)
    return Quotation(
        materials=materials,
        labour=labour,
        money=money,
        materials_total=in_money(materials_total, money),
        labour_total=in_money(labour_total, money),
        net_total=in_money(net_total, money),
        tax=tax,
        total=in_money(net_total if tax is None else net_total + tax, money),
        not_priced=(*_not_priced(materials, prices.prices), *_not_rated(labour, prices.rates)),
        not_used=tuple(_not_used(take_off, tasks, prices)),
    )


def in_money(amount: Decimal, money: MoneySettings) -> Decimal:
    """An amount to the currency's places, half away from nothing.

    >>> [str(in_money(Decimal(amount), MoneySettings())) for amount in ("2.345", "-2.345", "2")]
    ['2.35', '-2.35', '2.00']
    """
    return amount.quantize(Decimal(1).scaleb(-money.places), rounding=ROUND_HALF_UP, context=_ENOUGH)


def exact(quantity: float) -> Decimal:
    """A quantity as decimal, to a thousandth.

    >>> str(exact(12.0)), str(exact(7.4555555))
    ('12', '7.456')
    """
    rounded = Decimal(repr(quantity)).quantize(QUANTITY_PLACES, rounding=ROUND_HALF_UP, context=_ENOUGH)
    whole = rounded.to_integral_value()
    return whole if whole == rounded else rounded


def _material(line: OrderLine, price: Price | None, money: MoneySettings) -> MaterialCost:
    quantity = exact(line.bought)
    amount = None if price is None else in_money(quantity * price.amount / price.per, money)
    return MaterialCost(line=line, price=price, quantity=quantity, amount=amount)


def _labour(task: Task, rate: Rate | None, money: MoneySettings) -> LabourCost:
    quantity = exact(task.quantity)
    amount = None if rate is None else in_money(quantity * rate.amount, money)
    return LabourCost(task=task, rate=rate, quantity=quantity, amount=amount)


def _price_of(line: OrderLine, prices: Sequence[Price]) -> Price | None:
    measured = line.measured
    return next((price for price in prices if price.item == measured.item and price.unit == measured.unit), None)


def _rate_of(task: Task, rates: Sequence[Rate]) -> Rate | None:
    return next((rate for rate in rates if rate.task == task.task and rate.unit == task.unit), None)


def _not_priced(materials: Sequence[MaterialCost], prices: Sequence[Price]) -> Iterator[str]:
    units = {price.item: price.unit for price in prices}
    for each in materials:
        if each.amount is None:
            measured = each.line.measured
            yield _left_out(measured.item, measured.what, measured.unit, units.get(measured.item))


def _not_rated(labour: Sequence[LabourCost], rates: Sequence[Rate]) -> Iterator[str]:
    units = {rate.task: rate.unit for rate in rates}
    for each in labour:
        if each.amount is None:
            yield _left_out(each.task.task, each.task.what, each.task.unit, units.get(each.task.task))


def _left_out(name: str, what: str, unit: str, listed_unit: str | None) -> str:
    why = "" if listed_unit is None else f"; the list has it by {listed_unit}, and it is counted in {unit}"
    return f"{name}: {what}{why}"


def _not_used(take_off: TakeOff, tasks: Sequence[Task], prices: PriceList) -> Iterator[str]:
    items = {line.measured.item for line in take_off.lines}
    named = {task.task for task in tasks}
    yield from (price.item for price in prices.prices if price.item not in items)
    yield from (rate.task for rate in prices.rates if rate.task not in named)
