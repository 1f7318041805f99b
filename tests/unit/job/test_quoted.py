"""The one job in money: its own take-off, its own tasks, its own currency."""

from dataclasses import replace
from decimal import Decimal

from gaugerod.job.quoted import quoted, tasks_of
from gaugerod.take_off.money import PriceList
from tests.scenario.priced_orders import price, price_list, rate
from tests.scenario.taken_off import example

NONE = PriceList(prices=(), rates=())


def test_every_line_and_every_task_stands_in_the_quotation() -> None:
    result = example("demo")
    quotation = quoted(result, NONE)
    assert quotation is not None
    assert result.take_off is not None
    assert result.take_off.lines == tuple(each.line for each in quotation.materials)
    assert tasks_of(result) == tuple(each.task for each in quotation.labour)
    assert len(quotation.materials) + len(quotation.labour) == len(quotation.not_priced)
    assert result.job.order.money == quotation.money


def test_the_demo_at_two_prices() -> None:
    """Tiles of the demo come in nine packs of 42, 1.25 each; the ridge is 7.485 m at 20; tax is 20 per cent."""
    quotation = quoted(example("demo"), price_list(price("tile", "1.25"), rate("ridge", "20", unit="m")))
    assert quotation is not None
    assert ("472.50", "149.70", "622.20", "124.44", "746.64") == tuple(
        str(each)
        for each in (
            quotation.materials_total,
            quotation.labour_total,
            quotation.net_total,
            quotation.tax,
            quotation.total,
        )
    )
    assert Decimal(9 * 42) == quotation.materials[0].quantity


def test_where_nothing_was_taken_off_nothing_is_quoted() -> None:
    assert None is quoted(replace(example("demo"), take_off=None), NONE)
