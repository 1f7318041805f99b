"""The order for other programs: every key there, quantities to a thousandth, money as text in plain digits."""

import csv
import io
import json
import sys
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

import openpyxl
import pytest

from gaugerod.adapters.order_files.order_csv import HEADING, PRICED, order_csv
from gaugerod.adapters.order_files.order_json import OrderLineDocument, order_json
from gaugerod.adapters.order_files.order_xlsx import order_xlsx
from gaugerod.basis.errors import InputRefused
from gaugerod.job.quoted import quoted, tasks_of
from gaugerod.take_off.cost import cost, exact
from gaugerod.take_off.money import PriceList, Quotation
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, price, price_list, rate, task_of
from tests.scenario.sheet_arithmetic import Book, cells_of, worked_out
from tests.scenario.taken_off import example

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)
EXAMPLES = ("demo", "hipped-house", "plain-tiles", "random-slates", "slates")
ORDER = order_of(
    order_line("tile", 100.0, added_percent=2.0, pack_size=42.0, each_kg=4.4),
    order_line("ridge-batten", 7.4620001, unit="m", added_percent=10.0, what="=1+1"),
    not_counted=("Underlay: it was not worked out.",),
)
QUOTED = cost(
    take_off=ORDER,
    tasks=[task_of("ridge", 7.485, unit="m")],
    prices=price_list(
        price("tile", "0.000001", per="1000"), rate("ridge", "0.0000005", unit="m"), price("bonnet", "1")
    ),
    money=MoneySettings(currency="£", tax_name="VAT", tax_percent=Decimal("17.5")),
)


def rows(content: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))


def every_price(name: str) -> Quotation:
    """An example with a price for every line and a rate for every task."""
    result = example(name)
    assert result.take_off is not None
    found = quoted(
        result,
        PriceList(
            prices=tuple(
                price(line.measured.item, f"{at}.335", per="10" if at % 2 else "1", unit=line.measured.unit)
                for at, line in enumerate(result.take_off.lines)
            ),
            rates=tuple(rate(task.task, f"{at}.125", unit=task.unit) for at, task in enumerate(tasks_of(result))),
        ),
    )
    assert found is not None
    return found


def test_csv_without_prices() -> None:
    content = order_csv(ORDER)
    assert content.startswith(b"\xef\xbb\xbftrade,item,")
    assert b"\r\n" in content
    tile, batten = rows(content)
    assert tuple(tile) == HEADING
    assert ("100", "102", "42", "3", "", "126") == tuple(
        tile[name] for name in ("measured", "order", "pack_size", "packs", "pallets", "bought")
    )
    assert Decimal("554.4") == Decimal(tile["mass_kg"])
    assert ("'=1+1", "7.462", "8.300", "", "", "8.300", "") == tuple(
        batten[name] for name in ("what", "measured", "order", "pack_size", "packs", "bought", "mass_kg")
    )


def test_csv_with_prices() -> None:
    tile, batten = rows(order_csv(ORDER, QUOTED))
    assert tuple(tile) == (*HEADING, *PRICED)
    assert ("0.000001", "1000", "0.00") == (tile["price"], tile["per"], tile["amount"])
    assert ("", "", "") == (batten["price"], batten["per"], batten["amount"])


@pytest.mark.parametrize("name", EXAMPLES)
def test_csv_says_what_the_quotation_says(name: str) -> None:
    result, quotation = example(name), every_price(name)
    assert result.take_off is not None
    told = rows(order_csv(result.take_off, quotation))
    assert [
        (each.line.measured.item, str(each.quantity), str(each.price and each.price.amount), str(each.amount))
        for each in quotation.materials
    ] == [(row["item"], row["bought"], row["price"], row["amount"]) for row in told]
    assert quotation.materials_total == sum(Decimal(row["amount"]) for row in told)


def test_json_keys() -> None:
    document: dict[str, Any] = json.loads(order_json(ORDER, QUOTED))
    assert ["lines", "not_counted", "quotation"] == list(document)
    for line in document["lines"]:
        assert list(OrderLineDocument.__annotations__) == list(line)
        for allowance in line["allowances"]:
            assert ["name", "amount", "source", "basis"] == list(allowance)
    quotation = document["quotation"]
    assert [
        "currency", "materials", "work", "materials_total", "work_total", "net_total", "tax_name", "tax_percent", "tax",
        "total", "not_priced", "not_used",
    ] == list(quotation)  # fmt: skip
    assert {("item", "quantity", "unit", "price", "per", "amount")} == {tuple(each) for each in quotation["materials"]}
    assert {("task", "what", "quantity", "unit", "rate", "amount")} == {tuple(each) for each in quotation["work"]}
    assert None is json.loads(order_json(ORDER))["quotation"]


def test_json_money_is_text_in_plain_digits() -> None:
    document: dict[str, Any] = json.loads(order_json(ORDER, QUOTED))
    tile, batten = document["quotation"]["materials"]
    assert ("0.000001", "1000", "0.00", "126") == tuple(tile[name] for name in ("price", "per", "amount", "quantity"))
    assert (None, None, None) == tuple(batten[name] for name in ("price", "per", "amount"))
    assert ("0.0000005", "0.00") == tuple(document["quotation"]["work"][0][name] for name in ("rate", "amount"))
    assert ("17.5", ["bonnet"]) == (document["quotation"]["tax_percent"], document["quotation"]["not_used"])
    assert ["Underlay: it was not worked out."] == document["not_counted"]


def workbook(name: str, quotation: Quotation | None) -> bytes:
    result = example(name)
    assert result.take_off is not None
    return order_xlsx(
        result.take_off,
        tasks_of(result),
        title=result.job.title,
        money=result.job.order.money,
        quotation=quotation,
        cautions=result.cautions,
        made_at=MADE_AT,
    )


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_spreadsheet_of_every_example_works_out_to_its_quotation(name: str) -> None:
    quotation = every_price(name)
    book: Book = cells_of(workbook(name, quotation))
    kept = openpyxl.load_workbook(io.BytesIO(workbook(name, quotation)), data_only=True)
    for sheet, column, amounts in (
        ("Order", "M", [*(each.amount for each in quotation.materials), quotation.materials_total]),
        ("Work", "F", [*(each.amount for each in quotation.labour), quotation.labour_total]),
    ):
        cells = [f"{column}{row}" for row in range(4, 4 + len(amounts))]
        expected = [pytest.approx(float(amount or 0), abs=1e-9) for amount in amounts]
        assert expected == [float(str(kept[sheet][at].value)) for at in cells]
        assert expected == [float(worked_out(book, sheet, at)) for at in cells]  # type: ignore[arg-type]
    for at, line in enumerate(example(name).take_off.lines, start=4):  # type: ignore[union-attr]
        assert exact(line.order) == exact(float(worked_out(book, "Order", f"G{at}")))  # type: ignore[arg-type]
        assert exact(line.bought) == exact(float(worked_out(book, "Order", f"J{at}")))  # type: ignore[arg-type]


def test_without_the_part_that_writes_it_the_spreadsheet_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "xlsxwriter", None)
    with pytest.raises(InputRefused) as refused:
        workbook("demo", None)
    (fault,) = refused.value.faults
    assert ("spreadsheet", "Install it: pip install gaugerod[order]. CSV and JSON need no extra part.") == (
        fault.field,
        fault.do,
    )
