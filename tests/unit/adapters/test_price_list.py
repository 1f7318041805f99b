"""A price list as a file: every fault once, with its line; and a blank list that comes back filled in."""

import csv
import io
from decimal import Decimal
from pathlib import Path

import pytest

from gaugerod.adapters.order_files.price_file import read_price_file
from gaugerod.adapters.order_files.read_prices import (
    MOST_BYTES_COUNT,
    MOST_LETTERS_COUNT,
    MOST_LINES_COUNT,
    blank_price_list,
    plain_cell,
    read_price_list,
)
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.job.quoted import quoted, tasks_of
from gaugerod.take_off.money import Price, PriceList, Rate
from tests.scenario.priced_orders import order_line, order_of, task_of
from tests.scenario.taken_off import example

HEAD = "kind,item,unit,price,per,note\n"
COLUMNS = "kind, item, unit, price, per, note"
AMOUNT = "a number from 0 up, at most nine digits and six places"
LIKE = "Write it like 1234.50, no sign of a currency."
POINT = "Write it with a point and no thousands mark, like 1234.50."


def faults(content: str | bytes) -> list[Fault]:
    with pytest.raises(InputRefused) as refused:
        read_price_list(content if isinstance(content, bytes) else content.encode())
    return list(refused.value.faults)


def read(text: str) -> PriceList:
    return read_price_list(text.encode())


def test_prices_and_rates() -> None:
    found = read(f"{HEAD}item,tile,pieces,1340.50,1000,delivered\nwork,ridge,m,22,,\nItem,mortar,litres,0,1,\n")
    assert (
        PriceList(
            prices=(
                Price(item="tile", unit="pieces", amount=Decimal("1340.50"), per=Decimal(1000), note="delivered"),
                Price(item="mortar", unit="litres", amount=Decimal(0)),
            ),
            rates=(Rate(task="ridge", unit="m", amount=Decimal(22)),),
        )
        == found
    )


def test_a_rate_for_ten_is_a_tenth_for_one() -> None:
    assert Decimal("3.5") == read(f"{HEAD}work,lay-covering,m2,35,10,\n").rates[0].amount


def test_columns_in_any_order_and_only_those_that_are_needed() -> None:
    found = read(" Price , UNIT,item,kind\n 2.50 , m , lap-tape , ITEM \n")
    assert (Price(item="lap-tape", unit="m", amount=Decimal("2.50")),) == found.prices


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("comma", [",", ";"])
def test_commas_or_semicolons_any_line_ends_with_or_without_a_mark(comma: str, mark: str, end: str) -> None:
    lines = [("kind", "item", "unit", "price"), ("item", "tile", "pieces", "1.25")]
    text = mark + end.join(comma.join(line) for line in lines) + end
    assert (Price(item="tile", unit="pieces", amount=Decimal("1.25")),) == read(text).prices


def test_a_line_without_a_price_counts_as_none_and_may_stand_beside_one_that_has() -> None:
    found = read(f"{HEAD}item,tile,pieces,,1,\n,,,,,\n\nitem,tile,pieces,2,1,\n")
    assert ["2"] == [str(each.amount) for each in found.prices]


def test_a_heading_alone_is_a_list_of_nothing() -> None:
    assert PriceList(prices=(), rates=()) == read(HEAD)


def test_words_with_commas_and_lines_stand_in_quotation_marks() -> None:
    assert "red, or\nblue" == read(f'{HEAD}item,tile,pieces,1,1,"red, or\nblue"\n').prices[0].note


@pytest.mark.parametrize("content", ["", "\ufeff"])
def test_nothing_at_all(content: str) -> None:
    assert [Fault("line 1", "nothing", "a heading: kind, item, unit, price", "Write the heading first.")] == faults(
        content
    )


def test_the_heading_that_is_wanting_strange_or_twice_all_told() -> None:
    assert [
        Fault("line 1", "no column kind", COLUMNS, "Add a column headed kind."),
        Fault("line 1", "no column price", COLUMNS, "Add a column headed price."),
        Fault("line 1", "column cost", COLUMNS, "Take it out, or name it so."),
        Fault("line 1", "column without a name", COLUMNS, "Take it out, or name it so."),
        Fault("line 1", "column unit twice", "each column once", "Take one of them out."),
    ] == faults("item,unit,cost,,unit\n")


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("thing,tile,pieces,1,1,", ("kind", "thing", "item or work", "Write item for a thing, work for labour.")),
        (",tile,pieces,1,1,", ("kind", "nothing", "item or work", "Write item for a thing, work for labour.")),
        ("item,,pieces,1,1,", ("item", "nothing", "a name", "Write it as the blank list of this job has it.")),
        ("item,tile,,1,1,", ("unit", "nothing", "a name", "Write it as the blank list of this job has it.")),
        ("item,tile,pieces,1,0,", ("per", "0", "above nothing", "Write 1, or 1000 for a price by the thousand.")),
        ("item,tile,pieces,,0.0,", ("per", "0.0", "above nothing", "Write 1, or 1000 for a price by the thousand.")),
        ("item,tile,pieces,£2,1,", ("price", "£2", AMOUNT, LIKE)),
        ("item,tile,pieces,-2,1,", ("price", "-2", AMOUNT, LIKE)),
        ("item,tile,pieces,1e3,1,", ("price", "1e3", AMOUNT, LIKE)),
        ("item,tile,pieces,nan,1,", ("price", "nan", AMOUNT, LIKE)),
        ("item,tile,pieces,inf,1,", ("price", "inf", AMOUNT, LIKE)),
        ("item,tile,pieces,.5,1,", ("price", ".5", AMOUNT, LIKE)),
        ("item,tile,pieces,٣,1,", ("price", "٣", AMOUNT, LIKE)),
        ("item,tile,pieces,=1+1,1,", ("price", "=1+1", AMOUNT, LIKE)),
        ("item,tile,pieces,1.0000001,1,", ("price", "1.0000001", AMOUNT, LIKE)),
        ("item,tile,pieces,1000000000,1,", ("price", "1000000000", AMOUNT, LIKE)),
        ('item,tile,pieces,"1,50",1,', ("price", "1,50", AMOUNT, POINT)),
        ('item,tile,pieces,"1,340.50",1,', ("price", "1,340.50", AMOUNT, POINT)),
        ("item,tile,pieces,1,many,", ("per", "many", AMOUNT, LIKE)),
    ],
)
def test_every_fault_of_a_cell_with_its_line(line: str, fault: tuple[str, str, str, str]) -> None:
    name, given, allowed, do = fault
    assert [Fault(f"line 3, {name}", given, allowed, do)] == faults(f"{HEAD}item,bonnet,pieces,1,1,\n{line}\n")


@pytest.mark.parametrize("amount", ["0", "0.000001", "999999999", "999999999.999999", "0000012"])
def test_amounts_at_the_limits_are_read(amount: str) -> None:
    assert Decimal(amount) == read(f"{HEAD}item,tile,pieces,{amount},1,\n").prices[0].amount


def test_words_at_and_past_their_length() -> None:
    long = "x" * MOST_LETTERS_COUNT
    assert long == read(f"{HEAD}item,tile,pieces,1,1,{long}\n").prices[0].note
    for at, name in ((1, "item"), (2, "unit"), (5, "note")):
        cells = ["item", "tile", "pieces", "1", "1", ""]
        cells[at] = f"{long}x"
        assert [Fault(f"line 2, {name}", "x" * 40, "at most 200 letters", "Shorten it.")] == faults(
            HEAD + ",".join(cells)
        )


def test_more_cells_than_the_heading() -> None:
    assert [
        Fault(
            "line 2", "more cells than the heading", "one cell to a column", "Put words with commas in quotation marks."
        )
    ] == faults(f"{HEAD}item,tile,pieces,1,1,red,blue\n")
    assert 1 == len(read(f"{HEAD}item,tile,pieces,1,1,red,,\n").prices)


def test_twice_the_same_is_asked_about_in_whatever_unit() -> None:
    assert [
        Fault("item tile", "2 lines", "one line for each", "Keep the one that holds."),
        Fault("work ridge", "3 lines", "one line for each", "Keep the one that holds."),
    ] == faults(
        f"{HEAD}item,tile,pieces,1,1,\nitem,tile,m2,2,1,\nwork,ridge,m,1,1,\nwork,ridge,m,1,1,\nwork,ridge,m,2,1,\n"
        "item,ridge,pieces,1,1,\n"
    )


def test_all_faults_of_all_lines_at_once() -> None:
    told = faults(
        f"{HEAD}thing,,pieces,-1,0,\nitem,tile,pieces,1,1,\nitem,tile,pieces,2,x,\nwork,a,m,1,1,\nwork,a,m,1,1,\n"
    )
    assert ["line 2, kind", "line 2, item", "line 2, price", "line 2, per", "line 4, per", "work a"] == [
        each.field for each in told
    ]


def test_too_many_bytes() -> None:
    fits = HEAD.encode().ljust(MOST_BYTES_COUNT, b"\n")
    allowed = "at most 1000000 bytes"
    assert [Fault("price list", "1000001 bytes", allowed, "Leave out what is not for this job.")] == faults(
        fits + b"\n"
    )
    assert "1000001 bytes" not in str(faults(fits)[0])


def test_too_many_lines() -> None:
    lines = "".join(f"item,i{at},m,1,1,\n" for at in range(MOST_LINES_COUNT - 1))
    assert MOST_LINES_COUNT - 1 == len(read(HEAD + lines).prices)
    assert [Fault("price list", "5001 lines", "at most 5000 lines", "Leave out what is not for this job.")] == faults(
        f"{HEAD}{lines}item,more,m,1,1,\n"
    )


@pytest.mark.parametrize("content", [b"\xff\xfek\x00i\x00", HEAD.encode() + b"item,tile,pieces,1,1,caf\xe9\n"])
def test_letters_that_are_not_utf_8(content: bytes) -> None:
    assert [Fault("price list", "letters that cannot be read", "CSV in UTF-8", "Save it as CSV UTF-8.")] == faults(
        content
    )


@pytest.mark.parametrize("line", ['item,"tile,pieces,1,1,\n', 'item,"tile"s,pieces,1,1,\n', f"item,{'x' * 140_000}"])
def test_quotation_marks_that_do_not_close(line: str) -> None:
    (fault,) = faults(HEAD + line)
    assert ("price list", "CSV", "Look at the quotation marks and save it again.") == (
        fault.field,
        fault.allowed,
        fault.do,
    )


def test_a_file_and_one_that_is_not_there(tmp_path: Path) -> None:
    kept = tmp_path / "prices.csv"
    kept.write_text(f"{HEAD}item,tile,pieces,1,1,\n", encoding="utf-8-sig")
    assert 1 == len(read_price_file(kept).prices)
    for path in (tmp_path / "none.csv", tmp_path):
        with pytest.raises(InputRefused) as refused:
            read_price_file(path)
        assert (str(path), "a CSV file that can be read") == (
            refused.value.faults[0].given,
            refused.value.faults[0].allowed,
        )
    kept.write_bytes(b"x" * (2 * MOST_BYTES_COUNT))
    with pytest.raises(InputRefused, match="at most 1000000 bytes"):
        read_price_file(kept)


@pytest.mark.parametrize("name", ["demo", "hipped-house", "plain-tiles", "random-slates", "slates"])
def test_the_blank_list_of_a_job_comes_back_and_prices_it_whole(name: str) -> None:
    result = example(name)
    assert result.take_off is not None
    blank = blank_price_list(result.take_off, tasks_of(result))
    assert PriceList(prices=(), rates=()) == read(blank)
    rows = list(csv.DictReader(io.StringIO(blank, newline="")))
    names = [(row["kind"], row["item"]) for row in rows]
    assert len(names) == len({*names}) == len(result.take_off.lines) + len(tasks_of(result))
    out = io.StringIO(newline="")
    writer = csv.DictWriter(out, rows[0].keys(), delimiter=";")
    writer.writeheader()
    writer.writerows({**row, "price": f"{at}.25"} for at, row in enumerate(rows, start=1))
    quotation = quoted(result, read_price_list(out.getvalue().encode("utf-8-sig")))
    assert quotation is not None
    assert ((), ()) == (quotation.not_priced, quotation.not_used)
    assert [Decimal(f"{at}.25") for at in range(1, len(rows) + 1)] == [
        *(each.price.amount for each in quotation.materials if each.price is not None),
        *(each.rate.amount for each in quotation.labour if each.rate is not None),
    ]


@pytest.mark.parametrize("letters", [MOST_LETTERS_COUNT, MOST_LETTERS_COUNT + 1, 1000])
def test_the_blank_list_says_no_more_than_a_list_may(letters: int) -> None:
    order = order_of(order_line("tile", 1, what="=" * letters))
    filled = blank_price_list(order, [task_of("cut", 1, unit="pieces")]).replace(",,1,", ",2,1,")
    assert f"'{'=' * (MOST_LETTERS_COUNT - 1)}" == read(filled).prices[0].note


@pytest.mark.parametrize("word", ["=2+2", "+44", "-1", "@SUM(A1)", "\tx", "\rx"])
def test_words_that_look_like_a_formula_are_marked(word: str) -> None:
    assert f"'{word}" == plain_cell(word)


@pytest.mark.parametrize("word", ["tile", "", "2=2", " =2", "'=2"])
def test_other_words_are_left(word: str) -> None:
    assert word == plain_cell(word)
