"""Money: totals are their lines, the order of a list does not matter, twice the price is twice the money but for the pennies."""

import random
from decimal import Decimal
from fractions import Fraction
from math import floor

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.take_off.answer import TakeOff
from gaugerod.take_off.cost import cost
from gaugerod.take_off.money import Price, PriceList, Quotation, Rate, Task
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, task_of

AMOUNTS = st.decimals(min_value=0, max_value=99_999, places=4)
PERS = st.sampled_from([Decimal(1), Decimal(3), Decimal(42), Decimal(1000), Decimal("0.5")])
QUANTITIES = st.floats(min_value=0, max_value=1e6)
MONEY = st.builds(
    MoneySettings,
    currency=st.just("£"),
    places=st.integers(0, 4),
    tax_percent=st.none() | st.decimals(min_value=0, max_value=100, places=3),
)


@st.composite
def jobs(draw: st.DrawFn) -> tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings]:
    """A job of a few lines and tasks; of some the list says nothing, and it says something of others."""
    lines = [
        order_line(f"item-{number}", draw(QUANTITIES), unit=draw(st.sampled_from(["pieces", "m", "kg"])))
        for number in range(draw(st.integers(0, 6)))
    ]
    tasks = tuple(task_of(f"task-{number}", draw(QUANTITIES)) for number in range(draw(st.integers(0, 4))))
    prices = [
        Price(item=line.measured.item, unit=line.measured.unit, amount=draw(AMOUNTS), per=draw(PERS))
        for line in lines
        if draw(st.booleans())
    ]
    rates = [Rate(task=task.task, unit=task.unit, amount=draw(AMOUNTS)) for task in tasks if draw(st.booleans())]
    if draw(st.booleans()):
        prices.append(Price(item="elsewhere", unit="m", amount=draw(AMOUNTS)))
    return order_of(*lines), tasks, PriceList(prices=tuple(prices), rates=tuple(rates)), draw(MONEY)


def quoted(job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings]) -> Quotation:
    taken, tasks, prices, money = job
    return cost(take_off=taken, tasks=tasks, prices=prices, money=money)


def amounts(quotation: Quotation) -> list[Decimal]:
    found = [*(each.amount for each in quotation.materials), *(each.amount for each in quotation.labour)]
    return [amount for amount in found if amount is not None]


def to_a_thousandth(quantity: float) -> Fraction:
    """Quantities are charged to a thousandth of their unit, the half up; the figure a person reads is the shortest one."""
    return Fraction(floor(Fraction(repr(quantity)) * 1000 + Fraction(1, 2)), 1000)


@given(jobs())
def test_the_total_is_the_sum_of_what_is_shown(job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings]) -> None:
    quotation = quoted(job)
    assert sum(amounts(quotation)) == quotation.net_total
    assert quotation.materials_total + quotation.labour_total == quotation.net_total
    assert quotation.net_total + (quotation.tax or 0) == quotation.total
    shown = [*amounts(quotation), quotation.net_total, quotation.total]
    assert {-job[3].places} == {each.as_tuple().exponent for each in shown}


@given(jobs())
def test_each_amount_is_within_half_a_penny_of_the_exact_one_and_the_half_goes_up(
    job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings],
) -> None:
    taken, tasks, prices, money = job
    quotation, penny = quoted(job), Fraction(1, 10**money.places)
    price_of = {price.item: Fraction(price.amount) / Fraction(price.per) for price in prices.prices}
    rate_of = {rate.task: Fraction(rate.amount) for rate in prices.rates}
    exact = [
        (to_a_thousandth(line.bought) * price_of[line.measured.item], each.amount)
        for line, each in zip(taken.lines, quotation.materials, strict=True)
        if each.amount is not None
    ]
    exact += [
        (to_a_thousandth(task.quantity) * rate_of[task.task], each.amount)
        for task, each in zip(tasks, quotation.labour, strict=True)
        if each.amount is not None
    ]
    known = len(price_of.keys() & {line.measured.item for line in taken.lines}) + len(rate_of)
    assert known == len(exact)
    if quotation.tax is not None:
        exact.append((Fraction(quotation.net_total) * Fraction(money.tax_percent or 0) / 100, quotation.tax))
    for whole, shown in exact:
        assert -penny / 2 < Fraction(shown) - whole <= penny / 2


@given(jobs(), st.randoms(use_true_random=False))
def test_the_order_of_a_list_does_not_matter(
    job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings], chance: random.Random
) -> None:
    taken, tasks, prices, money = job
    shuffled = PriceList(
        prices=tuple(chance.sample(prices.prices, len(prices.prices))),
        rates=tuple(chance.sample(prices.rates, len(prices.rates))),
    )
    other = quoted((taken, tasks, shuffled, money))
    assert quoted(job).total == other.total
    assert quoted(job).materials == other.materials
    assert set(quoted(job).not_priced) == set(other.not_priced)
    assert set(quoted(job).not_used) == set(other.not_used)


@given(jobs())
def test_twice_the_price_is_twice_the_money_but_for_the_pennies(
    job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings],
) -> None:
    taken, tasks, prices, money = job
    doubled = PriceList(
        prices=tuple(
            Price(item=each.item, unit=each.unit, amount=each.amount * 2, per=each.per) for each in prices.prices
        ),
        rates=tuple(Rate(task=each.task, unit=each.unit, amount=each.amount * 2) for each in prices.rates),
    )
    once, twice = quoted(job), quoted((taken, tasks, doubled, money))
    # each line may be half a penny out twice over, and half a penny out in the other
    pennies = Decimal(1).scaleb(-money.places) * len(amounts(once)) * 3 / 2
    assert -pennies <= twice.net_total - 2 * once.net_total <= pennies


@given(jobs())
def test_everything_is_priced_or_named(job: tuple[TakeOff, tuple[Task, ...], PriceList, MoneySettings]) -> None:
    quotation = quoted(job)
    parts_count = len(quotation.materials) + len(quotation.labour)
    assert parts_count == len(amounts(quotation)) + len(quotation.not_priced)
    assert len(job[0].lines) + len(job[1]) == parts_count
