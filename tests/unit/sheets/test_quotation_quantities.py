"""On a quotation the quantity and the price that stand there make the amount that stands there."""

from dataclasses import replace
from decimal import ROUND_HALF_UP, Decimal

import pytest

from gaugerod.sheets.quotation_sheet import quotation_sheet
from gaugerod.sheets.sheet import PaperSize, Table
from gaugerod.take_off.money import Price
from tests.scenario.taken_off import quoted


@pytest.mark.parametrize(
    ("quantity", "unit", "shown", "price", "amount"),
    [
        ("7.859", "m", "7.859 m", "£12.00 for 1 m", "94.31"),  # 7.9 × 12 would be 94.80
        ("4.955", "m", "4.955 m", "£12.00 for 1 m", "59.46"),
        ("13.626", "litres", "13.626 litres", "£12.00 a litre", "163.51"),
        ("1", "rolls", "1 roll", "£12.00 a roll", "12.00"),
        ("400", "pieces", "400", "£12.00 each", "4800.00"),
    ],
)
def test_quantity_and_price_make_the_amount(quantity: str, unit: str, shown: str, price: str, amount: str) -> None:
    result, made = quoted()
    first = made.materials[0]
    charged = replace(
        first,
        line=replace(first.line, measured=replace(first.line.measured, what="thing", unit=unit)),
        quantity=Decimal(quantity),
        price=Price(item="thing", unit=unit, amount=Decimal(12)),
        amount=Decimal(amount),
    )
    assert Decimal(amount) == (Decimal(quantity) * 12).quantize(Decimal("0.01"), ROUND_HALF_UP)
    sheet = quotation_sheet(result, replace(made, materials=(charged,)), size=PaperSize.A4)
    (row,) = [row for block in sheet.blocks if isinstance(block, Table) for row in block.rows if row[0] == "Thing"]
    assert (shown, price) == row[1:3]


def test_work_is_shown_as_it_is_charged_too() -> None:
    """4.955 m at 40: 198.20, where 5.0 m would be 200."""
    result, made = quoted()
    first = made.labour[0]
    assert first.rate is not None
    charged = replace(
        first,
        task=replace(first.task, what="make the edge", unit="m"),
        rate=replace(first.rate, unit="m", amount=Decimal(40)),
        quantity=Decimal("4.955"),
        amount=Decimal("198.20"),
    )
    sheet = quotation_sheet(result, replace(made, labour=(charged,)), size=PaperSize.A4)
    (row,) = [
        row for block in sheet.blocks if isinstance(block, Table) for row in block.rows if row[0] == "Make the edge"
    ]
    assert ("4.955 m", "£40.00 for 1 m", "£198.20") == row[1:]
