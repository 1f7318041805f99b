"""Orders made by hand to be priced: lines of any quantity, tasks, prices and rates given as they are written."""

from decimal import Decimal

from gaugerod.basis.citation import house
from gaugerod.basis.working import Step
from gaugerod.take_off.answer import Allowance, Masses, Measured, OrderLine, TakeOff, Trade
from gaugerod.take_off.money import Price, PriceList, Rate, Task
from gaugerod.take_off.ordered import ordered
from gaugerod.take_off.packs import packed
from gaugerod.take_off.wished import Pack

LOST = house("example")
UNKNOWN = Masses(new_least_kg=None, new_greatest_kg=None, old_least_kg=None, old_greatest_kg=None)


def order_line(
    item: str,
    net: float,
    *,
    unit: str = "pieces",
    what: str = "",
    added_percent: float = 0.0,
    pack_size: float | None = None,
    each_kg: float | None = None,
) -> OrderLine:
    """One line: so much measured, so many per cent on it, whole pieces, packed or loose."""
    added = net * added_percent / 100
    order = ordered(net + added, unit, loose=pack_size is None)
    packs = None if pack_size is None else packed(order, Pack(item=item, size=pack_size))
    comes = order if packs is None else packs.packs_count * packs.pack_size
    return OrderLine(
        measured=Measured(
            item=item,
            what=what or item.replace("-", " "),
            trade=Trade.COVERING,
            unit=unit,
            net=net,
            by_slope=(("rear", net),),
            how="counted",
            each_kg=each_kg,
        ),
        allowances=(Allowance(name="lost", amount=added, citation=LOST),) if added else (),
        order=order,
        packed=packs,
        mass_kg=None if each_kg is None else comes * each_kg,
    )


def order_of(*lines: OrderLine, not_counted: tuple[str, ...] = ()) -> TakeOff:
    """A take-off of these lines."""
    return TakeOff(
        lines=lines,
        compared=(),
        masses=UNKNOWN,
        not_counted=not_counted,
        findings=(),
        working=Step("take-off", "given", {}, float(len(lines)), "lines"),
    )


def task_of(name: str, quantity: float, *, unit: str = "m2") -> Task:
    """So much work of this kind."""
    return Task(task=name, what=name.replace("-", " "), unit=unit, quantity=quantity)


def price(item: str, amount: str, *, per: str = "1", unit: str = "pieces") -> Price:
    """A price as it is written."""
    return Price(item=item, unit=unit, amount=Decimal(amount), per=Decimal(per))


def rate(task: str, amount: str, *, unit: str = "m2") -> Rate:
    """A rate as it is written."""
    return Rate(task=task, unit=unit, amount=Decimal(amount))


def price_list(*entries: Price | Rate) -> PriceList:
    """These prices and rates."""
    return PriceList(
        prices=tuple(each for each in entries if isinstance(each, Price)),
        rates=tuple(each for each in entries if isinstance(each, Rate)),
    )
