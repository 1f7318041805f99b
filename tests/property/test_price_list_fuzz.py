"""Whatever stands in a price list, it is read or refused in words; and words written for a spreadsheet are never a formula."""

import csv
import io
from contextlib import suppress
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from gaugerod.adapters.order_files.order_csv import order_csv
from gaugerod.adapters.order_files.read_prices import COLUMNS, blank_price_list, plain_cell, read_price_list
from gaugerod.basis.errors import InputRefused
from gaugerod.take_off.money import PriceList
from tests.scenario.priced_orders import order_line, order_of, task_of

HEADING = ",".join(COLUMNS)
CELLS = st.one_of(
    st.sampled_from(["item", "work", "tile", "pieces", "m", "1", "0", "1.5", "1,5", "1000", "-1", "1e9", "nan", ""]),
    st.text(max_size=8),
)
BEGINS = ("=", "+", "-", "@", "\t", "\r")
WORDS = st.tuples(st.sampled_from(["", " ", *BEGINS, "＝", "\n", '"', ",", ";"]), st.text(max_size=12)).map("".join)


def read(content: bytes) -> None:
    with suppress(InputRefused):
        found = read_price_list(content)
        assert isinstance(found, PriceList)
        assert all(price.amount.is_finite() and price.amount >= 0 and price.per > 0 for price in found.prices)
        assert all(rate.amount.is_finite() and rate.amount >= 0 for rate in found.rates)
        assert len({price.item for price in found.prices}) == len(found.prices)
        assert len({rate.task for rate in found.rates}) == len(found.rates)


@given(st.binary(max_size=400))
def test_any_bytes(content: bytes) -> None:
    read(content)


@given(st.text(alphabet=st.sampled_from('kindtemuprcwo,;"\n\r\t\0 1.\u00a0\u2028\ufeff')), st.sampled_from(",;"))
def test_any_text_below_a_heading(text: str, comma: str) -> None:
    read((HEADING.replace(",", comma) + "\n" + text).encode())


@given(st.lists(st.lists(CELLS, max_size=8), max_size=5), st.sampled_from([HEADING, "kind;item;unit;price", "kind"]))
def test_any_cells_below_a_heading(rows: list[list[str]], heading: str) -> None:
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=";" if ";" in heading else ",").writerows(rows)
    read(f"{heading}\r\n{out.getvalue()}".encode("utf-8", "replace"))


@given(
    st.decimals(min_value=0, max_value=999_999_999, places=6),
    st.decimals(min_value=Decimal("0.000001"), max_value=999_999_999, places=6),
)
def test_a_rate_that_is_read_is_the_one_that_was_written(amount: Decimal, per: Decimal) -> None:
    try:
        found = read_price_list(f"{HEADING}\nwork,ridge,m,{amount:f},{per:f},\n".encode())
    except InputRefused:
        return  # it has no end as a decimal
    assert amount == found.rates[0].amount * per


@given(WORDS)
def test_words_are_never_a_formula_in_a_spreadsheet(words: str) -> None:
    assert not plain_cell(words).startswith(BEGINS)
    content = order_csv(order_of(order_line("tile", 3.0, what=words))).decode("utf-8-sig")
    rows = list(csv.reader(io.StringIO(content, newline="")))
    assert 2 == len(rows)
    assert not [cell for cell in rows[1] if cell.startswith(BEGINS)]


@given(WORDS)
def test_a_blank_list_is_read_back_as_no_prices_whatever_a_thing_is_called(words: str) -> None:
    line, task = order_line("tile", 3.0, what=words), task_of("ridge", 2.0, unit="m")
    blank = blank_price_list(order_of(line), (task,))
    assert PriceList(prices=(), rates=()) == read_price_list(blank.encode())
