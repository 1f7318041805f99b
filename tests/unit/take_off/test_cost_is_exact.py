"""Money to the last digit: divisions that never end, sums beyond any roof, a thousand prices, the caller's own arithmetic."""

from decimal import ROUND_HALF_UP, Decimal, localcontext

import pytest

from gaugerod.take_off.cost import cost
from gaugerod.take_off.money import Quotation
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, price, price_list, rate, task_of

PENCE = MoneySettings(currency="£", places=2, tax_name="tax", tax_percent=Decimal(20))


def one(net: float, amount: str, *, per: str = "1") -> Quotation:
    """So much of one thing that is sold by weight, so that no part of it is made whole."""
    line = order_line("lead", net, unit="kg")
    return cost(
        take_off=order_of(line), tasks=(), prices=price_list(price("lead", amount, per=per, unit="kg")), money=PENCE
    )


@pytest.mark.parametrize(
    ("net", "amount", "per", "expected"),
    [
        (1.5, "0.01", "3", "0.01"),  # 0.015 by three: half a penny to the last digit
        (7.0, "0.045", "63", "0.01"),
        (7.0, "0.044999", "63", "0.00"),
        (3.0, "10", "3", "10.00"),
        (2.0, "0.01", "3", "0.01"),  # 0.00666…
        (1.0, "0.01", "3", "0.00"),  # 0.00333…
        (1.0, "2.675", "1", "2.68"),  # in binary 2.675 lies below the half
        (1.0, "1.025", "1", "1.03"),  # to the even penny it would be 1.02
    ],
)
def test_half_a_penny_stays_half_a_penny(net: float, amount: str, per: str, expected: str) -> None:
    assert expected == str(one(net, amount, per=per).materials_total)


def test_a_thousand_prices_against_decimal_itself() -> None:
    lines, prices, expected = [], [], Decimal(0)
    for number in range(1, 1001):
        item = f"item-{number}"
        quantity, amount = number * 37 % 991, Decimal(number * 7919 % 100003) / 1000
        lines.append(order_line(item, float(quantity)))
        prices.append(price(item, str(amount)))
        expected += (quantity * amount).quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)
    quotation = cost(take_off=order_of(*lines), tasks=(), prices=price_list(*prices), money=PENCE)
    assert expected == quotation.materials_total
    assert () == (*quotation.not_priced, *quotation.not_used)


def test_sums_beyond_any_roof_are_exact_to_the_penny() -> None:
    greatest = order_line("lead", 999_999_999_999.0, unit="kg")
    prices = price_list(
        price("lead", "999999999.999999", per="0.000001", unit="kg"), price("tile", "0.01"), rate("ridge", "0.07")
    )
    quotation = cost(
        take_off=order_of(greatest, order_line("tile", 1.0)),
        tasks=(task_of("ridge", 1.0),),
        prices=prices,
        money=PENCE,
    )
    # (10^12 - 1)(10^15 - 1) = 10^27 - 10^15 - 10^12 + 1
    assert "999999999998999000000000001.01" == str(quotation.materials_total)
    assert "999999999998999000000000001.08" == str(quotation.net_total)
    assert "199999999999799800000000000.22" == str(quotation.tax)
    assert "1199999999998798800000000001.30" == str(quotation.total)


def test_money_does_not_hang_on_the_arithmetic_of_whoever_asks() -> None:
    with localcontext(prec=3):
        quotation = one(1.0, "12345.675")
    assert ("12345.68", "2469.14", "14814.82") == (
        str(quotation.net_total), str(quotation.tax), str(quotation.total),
    )  # fmt: skip
