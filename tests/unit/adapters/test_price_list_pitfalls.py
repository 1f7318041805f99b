"""Price lists as they come out of other programs: what could be read two ways, and which line a fault is really on."""

from decimal import Decimal

import pytest

from gaugerod.adapters.order_files.read_prices import blank_price_list, read_price_list
from gaugerod.basis.errors import InputRefused
from gaugerod.take_off.money import PriceList
from tests.scenario.priced_orders import order_line, order_of

HEAD = "kind,item,unit,price,per,note\n"


def fields(text: str) -> list[str]:
    with pytest.raises(InputRefused) as refused:
        read_price_list(text.encode())
    return [fault.field for fault in refused.value.faults]


def test_a_comma_in_a_price_that_parts_cells_does_not_become_a_price_for_fifty() -> None:
    # 12,50 for one, with no note, makes as many cells as 12 for fifty with the note "1"
    assert ["line 2, note"] == fields(f"{HEAD}item,tile,pieces,12,50,1\n")
    found = read_price_list(f"{HEAD}item,tile,pieces,12,50,from the yard\n".encode()).prices[0]
    assert (Decimal(12), Decimal(50)) == (found.amount, found.per)
    # without a note the line ends early
    assert ["line 2, per"] == fields(f"{HEAD}item,tile,pieces,12,50\n")
    assert ["line 2, per"] == fields(f"{HEAD}item,tile,pieces,12,5\n")
    several = read_price_list(
        f"{HEAD}item,tile,pieces,12,50,\nitem,slate,pieces,9,1000\nitem,hip,pieces,2,1\n".encode()
    )
    assert [Decimal(50), Decimal(1000), Decimal(1)] == [price.per for price in several.prices]
    # where the list has no column per, the pence would be the note
    assert ["line 2, note"] == fields("kind,item,unit,price,note\nitem,tile,pieces,12,50\n")


@pytest.mark.parametrize(("amount", "per"), [("0.01", "3"), ("10", "7"), ("38", "0.3")])
def test_a_rate_that_does_not_end_as_a_decimal_is_asked_for_one(amount: str, per: str) -> None:
    assert ["line 2, per"] == fields(f"{HEAD}work,ridge,m,{amount},{per},\n")


@pytest.mark.parametrize(
    ("amount", "per", "one"),
    [("38", "10", "3.8"), ("0.000001", "1000", "0.000000001"), ("9", "3", "3"), ("1", "64", "0.015625")],
)
def test_a_rate_that_ends_is_exact(amount: str, per: str, one: str) -> None:
    found = read_price_list(f"{HEAD}work,ridge,m,{amount},{per},\n".encode())
    assert Decimal(one) == found.rates[0].amount


def test_an_item_for_three_stays_for_three() -> None:
    found = read_price_list(f"{HEAD}item,tile,pieces,10,3,\n".encode()).prices[0]
    assert (Decimal(10), Decimal(3)) == (found.amount, found.per)


@pytest.mark.parametrize("before", ["\n\n", "\r\n", ",,,,,\n", " ; ;\n"])
@pytest.mark.parametrize("comma", [",", ";"])
def test_empty_lines_above_the_heading_are_passed_over(before: str, comma: str) -> None:
    if ";" in before and comma == ",":
        before = before.replace(";", ",")
    text = before + f"{HEAD}item,tile,pieces,2,1,\n".replace(",", comma)
    if comma == ";":
        text = text.replace(",", ";")
    assert [Decimal(2)] == [price.amount for price in read_price_list(text.encode()).prices]


def test_a_fault_is_told_by_the_line_of_the_file() -> None:
    text = f'\n{HEAD}item,tile,pieces,1,1,"red\nor blue"\n\nitem,bonnet,pieces,dear,1,\n'
    assert ["line 6, price"] == fields(text)
    assert ["line 3"] * 2 == fields("\n\nkind,item,unit,cost\n")


@pytest.mark.parametrize("end", ["\r", "\n", "\r\n", "\u2028"])
def test_a_blank_list_is_read_back_whatever_line_ends_are_in_the_words(end: str) -> None:
    blank = blank_price_list(order_of(order_line("tile", 3.0, what=f"tile{end}red")), ())
    assert 2 == len(blank.splitlines())
    assert PriceList(prices=(), rates=()) == read_price_list(blank.encode())
