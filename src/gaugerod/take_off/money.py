"""A job in money: prices and rates of the user's own, and the quotation they make. All money is decimal."""

from dataclasses import dataclass
from decimal import Decimal

from gaugerod.take_off.answer import OrderLine
from gaugerod.take_off.wished import MoneySettings


@dataclass(frozen=True, slots=True, kw_only=True)
class Price:
    """The price of ``per`` units of an item (1000 for a price by the thousand), before tax."""

    item: str
    unit: str
    amount: Decimal
    per: Decimal = Decimal(1)
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """What the user charges for labour: so much for each ``unit`` of a task, before tax.

    ``task``  one of the tasks of ``take_off.tasks``: ``lay-covering`` by the m², ``ridge`` by the m …
    """

    task: str
    unit: str
    amount: Decimal
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceList:
    """What is read from the user's file: prices of items, rates of tasks."""

    prices: tuple[Price, ...]
    rates: tuple[Rate, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Work as it is measured, to be charged by a rate: ``lay-covering``, 36.4 m²."""

    task: str
    what: str
    unit: str
    quantity: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialCost:
    """One line of the order in money. ``price`` None: the list has none, and the line is not in the total."""

    line: OrderLine
    price: Price | None
    quantity: Decimal
    amount: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LabourCost:
    """One task in money. ``rate`` None: the list has none, and the task is not in the total."""

    task: Task
    rate: Rate | None
    quantity: Decimal
    amount: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Quotation:
    """The job in money. Every amount is rounded once, to the currency's places, half away from nothing.

    ``not_priced``  what the total leaves out, by name; ``not_used`` prices and rates of the list that nothing asks for
    """

    materials: tuple[MaterialCost, ...]
    labour: tuple[LabourCost, ...]
    money: MoneySettings
    materials_total: Decimal
    labour_total: Decimal
    net_total: Decimal
    tax: Decimal | None
    total: Decimal
    not_priced: tuple[str, ...]
    not_used: tuple[str, ...]
