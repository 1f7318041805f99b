"""The job in money: every amount rounded once, half away from nothing, and nothing left out without its name."""

from decimal import Decimal

import pytest

from gaugerod.take_off.answer import OrderLine
from gaugerod.take_off.cost import cost, exact, in_money
from gaugerod.take_off.money import Price, Quotation, Rate, Task
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, price, price_list, rate, task_of

PLAIN = MoneySettings()


def costed(*what: OrderLine | Task, at: tuple[Price | Rate, ...] = (), money: MoneySettings = PLAIN) -> Quotation:
    lines = [each for each in what if isinstance(each, OrderLine)]
    tasks = [each for each in what if isinstance(each, Task)]
    return cost(take_off=order_of(*lines), tasks=tasks, prices=price_list(*at), money=money)


@pytest.mark.parametrize(
    ("amount", "places", "rounded"),
    [
        ("2.344999", 2, "2.34"),
        ("2.345", 2, "2.35"),
        ("2.355", 2, "2.36"),
        ("-2.345", 2, "-2.35"),
        ("2.5", 0, "3"),
        ("3.5", 0, "4"),
        ("2.49999", 0, "2"),
        ("0.0005", 3, "0.001"),
        ("7", 3, "7.000"),
    ],
)
def test_half_goes_away_from_nothing(amount: str, places: int, rounded: str) -> None:
    assert rounded == str(in_money(Decimal(amount), MoneySettings(places=places)))


@pytest.mark.parametrize(
    ("quantity", "decimal"),
    [
        (0.0, "0"),
        (371.0, "371"),
        (0.1 + 0.2, "0.300"),
        (8.2082, "8.208"),
        (0.0004, "0"),
        (0.0005, "0.001"),
        (1.0005, "1.001"),
        (1e7, "10000000"),
        (12345678.1234, "12345678.123"),
    ],
)
def test_a_quantity_goes_into_money_to_a_thousandth(quantity: float, decimal: str) -> None:
    assert decimal == str(exact(quantity))


@pytest.mark.parametrize(("places", "amount"), [(0, "1"), (2, "1.01"), (3, "1.005")])
def test_the_places_are_those_of_the_currency(places: int, amount: str) -> None:
    quotation = costed(order_line("tile", 3), at=(price("tile", "0.335"),), money=MoneySettings(places=places))
    assert amount == str(quotation.materials[0].amount)
    assert amount == str(quotation.total)


def test_a_price_by_the_thousand() -> None:
    quotation = costed(order_line("tile", 371), at=(price("tile", "1340.50", per="1000"),))
    # 371 × 1.3405 = 497.3255
    assert "497.33" == str(quotation.materials[0].amount)


def test_it_is_divided_last_so_that_a_half_stays_a_half() -> None:
    """4 of 0.00375 for three are 0.005, a half penny: up. Divided first it would be 0.00499…"""
    quotation = costed(order_line("clip", 4), at=(price("clip", "0.00375", per="3"),))
    assert "0.01" == str(quotation.materials[0].amount)


def test_whole_packs_are_priced_not_what_is_ordered() -> None:
    quotation = costed(order_line("tile", 43, pack_size=42.0), at=(price("tile", "2"),))
    assert (Decimal(84), "168.00") == (quotation.materials[0].quantity, str(quotation.materials[0].amount))


def test_each_line_is_rounded_once_and_the_total_is_their_sum() -> None:
    """Two lines of 0.335 are 0.34 each, so 0.68 together; rounding the sum of 0.67 would be another figure."""
    lines = (order_line("tile", 1), order_line("ridge-unit", 1))
    quotation = costed(*lines, task_of("ridge", 0.5, unit="m"), at=(
        price("tile", "0.335"), price("ridge-unit", "0.335"), rate("ridge", "0.01", unit="m"),
    ))  # fmt: skip
    assert ["0.34", "0.34"] == [str(each.amount) for each in quotation.materials]
    assert ("0.68", "0.01", "0.69", "0.69") == tuple(
        str(each) for each in (quotation.materials_total, quotation.labour_total, quotation.net_total, quotation.total)
    )


def test_nothing_priced_is_nothing_in_all_and_everything_by_name() -> None:
    quotation = costed(order_line("tile", 10), task_of("lay-covering", 20.0))
    assert ("0.00", "0.00", "0.00", "0.00") == tuple(
        str(each) for each in (quotation.materials_total, quotation.labour_total, quotation.net_total, quotation.total)
    )
    assert ("tile: tile", "lay-covering: lay covering") == quotation.not_priced
    assert (None, None) == (quotation.materials[0].amount, quotation.labour[0].amount)


def test_a_price_of_nothing_is_a_price() -> None:
    quotation = costed(order_line("tile", 10), at=(price("tile", "0"),))
    assert ("0.00", ()) == (str(quotation.materials[0].amount), quotation.not_priced)


def test_another_unit_is_not_used_and_both_are_said() -> None:
    quotation = costed(
        order_line("lead-code-4-340", 36.5, unit="kg"),
        task_of("ridge", 7.5, unit="m"),
        at=(price("lead-code-4-340", "9", unit="m"), rate("ridge", "20", unit="pieces")),
    )
    assert (
        "lead-code-4-340: lead code 4 340; the list has it by m, and it is counted in kg",
        "ridge: ridge; the list has it by pieces, and it is counted in m",
    ) == quotation.not_priced
    assert () == quotation.not_used
    assert "0.00" == str(quotation.total)


def test_of_two_prices_the_one_in_its_unit_is_used() -> None:
    at = (price("lead", "9", unit="m"), price("lead", "4", unit="kg"))
    assert "8.00" == str(costed(order_line("lead", 2.0, unit="kg"), at=at).total)


def test_what_nothing_asks_for_is_named() -> None:
    at = (price("tile", "1"), price("bonnet", "1"), rate("lay-covering", "1"), rate("hip", "1", unit="m"))
    quotation = costed(order_line("tile", 1), task_of("lay-covering", 1.0), at=at)
    assert ("bonnet", "hip") == quotation.not_used
    assert () == quotation.not_priced


@pytest.mark.parametrize(
    ("tax", "tax_amount", "total"),
    [(None, None, "10.10"), ("0", "0.00", "10.10"), ("20", "2.02", "12.12"), ("17.5", "1.77", "11.87")],
)
def test_one_tax_on_the_whole(tax: str | None, tax_amount: str | None, total: str) -> None:
    money = MoneySettings(tax_name="VAT", tax_percent=None if tax is None else Decimal(tax))
    quotation = costed(order_line("tile", 10), at=(price("tile", "1.01"),), money=money)
    assert tax_amount == (None if quotation.tax is None else str(quotation.tax))
    assert ("10.10", total) == (str(quotation.net_total), str(quotation.total))


def test_the_tax_is_taken_on_the_rounded_sum() -> None:
    """Half a penny of tax goes up: 20 per cent of 0.03 is 0.006; of 0.02, 0.004."""
    money = MoneySettings(tax_percent=Decimal(20))
    assert "0.01" == str(costed(order_line("tile", 3), at=(price("tile", "0.01"),), money=money).tax)
    assert "0.00" == str(costed(order_line("tile", 2), at=(price("tile", "0.01"),), money=money).tax)


def test_an_order_of_no_lines_costs_nothing() -> None:
    assert ("0.00", (), ()) == (str(costed().total), costed().materials, costed().not_priced)
