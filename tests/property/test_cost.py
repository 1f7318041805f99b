"""Money, whatever is bought: totals are the sums of what is printed, and neither order nor scale changes more than rounding."""

from dataclasses import replace
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.take_off.cost import cost
from gaugerod.take_off.money import Price, PriceList, Quotation, Rate
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, task_of

amounts = st.decimals(min_value=0, max_value=10**6, places=4)
quantities = st.floats(min_value=0, max_value=10**5)
pers = st.sampled_from([Decimal(1), Decimal(3), Decimal(100), Decimal(1000)])
settings_of_money = st.builds(
    MoneySettings,
    places=st.integers(0, 4),
    tax_percent=st.none() | st.decimals(min_value=0, max_value=100, places=3),
)
lists = st.lists(st.tuples(quantities, amounts, pers, st.booleans()), max_size=8)
works = st.lists(st.tuples(quantities, amounts, st.booleans()), max_size=4)
Lines = list[tuple[float, Decimal, Decimal, bool]]
Works = list[tuple[float, Decimal, bool]]


def price_list(lines: Lines, work: Works) -> PriceList:
    return PriceList(
        prices=tuple(
            Price(item=f"i{at}", unit="kg", amount=amount, per=per)
            for at, (_, amount, per, known) in enumerate(lines)
            if known
        ),
        rates=tuple(
            Rate(task=f"t{at}", unit="m", amount=amount) for at, (_, amount, known) in enumerate(work) if known
        ),
    )


def quotation(lines: Lines, work: Works, prices: PriceList, money: MoneySettings) -> Quotation:
    return cost(
        take_off=order_of(*(order_line(f"i{at}", each[0], unit="kg") for at, each in enumerate(lines))),
        tasks=[task_of(f"t{at}", each[0], unit="m") for at, each in enumerate(work)],
        prices=prices,
        money=money,
    )


@given(lists, works, settings_of_money)
def test_totals_are_the_sums_of_the_rounded_amounts(lines: Lines, work: Works, money: MoneySettings) -> None:
    made = quotation(lines, work, price_list(lines, work), money)
    assert sum((each.amount for each in made.materials if each.amount is not None), Decimal(0)) == made.materials_total
    assert sum((each.amount for each in made.labour if each.amount is not None), Decimal(0)) == made.labour_total
    assert made.materials_total + made.labour_total == made.net_total
    assert made.net_total + (made.tax or 0) == made.total
    assert (made.tax is None) == (money.tax_percent is None)
    for amount in (made.materials_total, made.labour_total, made.net_total, made.total):
        assert -money.places == amount.as_tuple().exponent
    unknown = sum(not each[3] for each in lines) + sum(not each[2] for each in work)
    assert unknown == len(made.not_priced)
    assert () == made.not_used


@given(lists, works, settings_of_money, st.randoms(use_true_random=False))
def test_the_order_of_the_list_is_of_no_account(
    lines: Lines, work: Works, money: MoneySettings, shuffle: object
) -> None:
    prices = price_list(lines, work)
    mixed_prices, mixed_rates = list(prices.prices), list(prices.rates)
    shuffle.shuffle(mixed_prices)  # type: ignore[attr-defined]
    shuffle.shuffle(mixed_rates)  # type: ignore[attr-defined]
    mixed = PriceList(prices=tuple(mixed_prices), rates=tuple(mixed_rates))
    assert quotation(lines, work, prices, money) == quotation(lines, work, mixed, money)


@given(lists, works, settings_of_money)
def test_twice_the_prices_are_twice_the_money_but_for_rounding(lines: Lines, work: Works, money: MoneySettings) -> None:
    prices = price_list(lines, work)
    twice = PriceList(
        prices=tuple(replace(each, amount=2 * each.amount) for each in prices.prices),
        rates=tuple(replace(each, amount=2 * each.amount) for each in prices.rates),
    )
    once, double = quotation(lines, work, prices, money), quotation(lines, work, twice, money)
    priced = len(prices.prices) + len(prices.rates)
    # Each amount is out by half a place at most: doubled, by a whole one, and the new one by half.
    most = Decimal(3) / 2 * priced * Decimal(1).scaleb(-money.places)
    assert abs(2 * once.net_total - double.net_total) <= most
