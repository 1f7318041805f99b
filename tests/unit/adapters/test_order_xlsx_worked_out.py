"""The spreadsheet of the order, worked out anew by other code: the same figures as the quotation, before and after a change."""

import io
from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal
from fractions import Fraction

import openpyxl
import pytest

from gaugerod.adapters.order_files.order_xlsx import order_xlsx
from gaugerod.take_off.answer import OrderLine
from gaugerod.take_off.cost import cost
from gaugerod.take_off.money import Price, PriceList, Quotation, Rate, Task
from gaugerod.take_off.wished import MoneySettings
from tests.scenario.priced_orders import order_line, order_of, price, price_list, rate, task_of
from tests.scenario.sheet_arithmetic import Book, cells_of, worked_out

MADE_AT = datetime(2026, 3, 1, 8, 0, tzinfo=UTC)
MONEY = MoneySettings(currency="£", places=2, tax_name="tax", tax_percent=Decimal("8.875"))
TILES = order_line("tile", 612.0, added_percent=2.0, pack_size=6.0, each_kg=4.3)
LINES = (
    TILES,
    order_line("half-tile", 17.0, added_percent=2.0),
    order_line("underlay-roll", 3.2, unit="rolls"),
    order_line("counter-batten", 41.3333333, unit="m", added_percent=5.0),
    order_line("lead-code-4-150", 7.4555555, unit="kg", each_kg=1.0),
    order_line("mortar", 63.07, unit="litres", added_percent=10.0, pack_size=25.0),
    order_line("batten-nails-65x335", 1234.0, added_percent=5.0, pack_size=1000.0),
)
TASKS = (task_of("lay-covering", 36.6123456), task_of("ridge", 7.485, unit="m"), task_of("cut", 31.0, unit="pieces"))
PRICES = price_list(
    price("tile", "1340.50", per="1000"),
    price("half-tile", "0.335"),
    price("underlay-roll", "87.125", unit="rolls"),
    price("counter-batten", "0.855", unit="m"),
    price("lead-code-4-150", "4.205", unit="kg"),
    price("batten-nails-65x335", "9.99", per="1000"),
    rate("lay-covering", "38.00"),
    rate("ridge", "20.333333", unit="m"),
)


def quoted(*lines: OrderLine, tasks: tuple[Task, ...] = TASKS, prices: PriceList = PRICES) -> Quotation:
    return cost(take_off=order_of(*lines), tasks=tasks, prices=prices, money=MONEY)


def written(*lines: OrderLine, quotation: Quotation | None, tasks: tuple[Task, ...] = TASKS) -> bytes:
    return order_xlsx(
        order_of(*lines),
        tasks,
        title="Byre",
        money=MONEY,
        quotation=quotation,
        cautions=("Mind the edge.",),
        made_at=MADE_AT,
    )


def row_of(book: Book, sheet: str, name: str) -> int:
    """The row that names this thing."""
    return next(int(at[1:]) for at, value in book[sheet].items() if value == name and at[0] in "AB")


def column_of(book: Book, sheet: str, heading: str) -> str:
    """The column under this heading."""
    return next(at[:-1] for at, value in book[sheet].items() if at[1:] == "3" and str(value).startswith(heading))


def money_in(book: Book) -> tuple[list[object], list[object], object]:
    """Amounts of the materials, amounts of the work, and the whole, worked out."""
    amounts, work = column_of(book, "Order", "amount"), column_of(book, "Work", "amount")
    return (
        [worked_out(book, "Order", f"{amounts}{row}") for row in range(4, 4 + len(LINES))],
        [worked_out(book, "Work", f"{work}{row}") for row in range(4, 4 + len(TASKS))],
        worked_out(book, "Total", f"B{row_of(book, 'Total', 'in all')}"),
    )


def money_of(quotation: Quotation) -> tuple[list[object], list[object], object]:
    def shown(amount: Decimal | None) -> object:
        return "" if amount is None else Fraction(amount)

    return (
        [shown(each.amount) for each in quotation.materials],
        [shown(each.amount) for each in quotation.labour],
        Fraction(quotation.total),
    )


def test_worked_out_it_comes_to_the_quotation() -> None:
    quotation = quoted(*LINES)
    assert money_of(quotation) == money_in(cells_of(written(*LINES, quotation=quotation)))


@pytest.mark.parametrize("with_prices", [True, False])
def test_the_figure_beside_every_formula_is_what_it_comes_to(with_prices: bool) -> None:  # noqa: FBT001
    content = written(*LINES, quotation=quoted(*LINES) if with_prices else None)
    book, cached = cells_of(content), cells_of(content, cached=True)
    formulas = 0
    for sheet, cells in book.items():
        for at, value in cells.items():
            if not (isinstance(value, str) and value.startswith("=")):
                continue
            formulas += 1
            found, beside = worked_out(book, sheet, at), cached[sheet].get(at)
            if isinstance(found, Fraction):
                assert float(found) == pytest.approx(beside, rel=1e-12, abs=1e-9), (sheet, at)
            else:
                assert (found or None) == (beside or None), (sheet, at)
    assert formulas > 4 * len(LINES)


def changed(book: Book, sheet: str, name: str, heading: str, value: object) -> None:
    book[sheet][f"{column_of(book, sheet, heading)}{row_of(book, sheet, name)}"] = value


def test_another_price_makes_another_total() -> None:
    book = cells_of(written(*LINES, quotation=quoted(*LINES)))
    changed(book, "Order", "tile", "price", 999.99)
    changed(book, "Work", "cut", "rate", 1.5)  # it had none
    others = [each for each in PRICES.prices if each.item != "tile"]
    prices = PriceList(
        prices=(Price(item="tile", unit="pieces", amount=Decimal("999.99"), per=Decimal(1000)), *others),
        rates=(*PRICES.rates, Rate(task="cut", unit="pieces", amount=Decimal("1.5"))),
    )
    assert money_of(quoted(*LINES, prices=prices)) == money_in(book)


@pytest.mark.parametrize("net", [0.0, 1.0, 588.0, 588.2, 589.0, 5000.0])
def test_another_quantity_is_allowed_for_and_packed_anew(net: float) -> None:
    book = cells_of(written(*LINES, quotation=quoted(*LINES)))
    changed(book, "Order", "tile", "measured", net)
    other = order_line("tile", net, added_percent=2.0, pack_size=6.0, each_kg=4.3)
    assert other.packed is not None
    row = row_of(book, "Order", "tile")
    found = [
        worked_out(book, "Order", f"{column_of(book, 'Order', heading)}{row}")
        for heading in ("to order", "packs", "comes to")
    ]
    assert [other.order, other.packed.packs_count, other.bought] == found
    assert money_of(quoted(other, *LINES[1:])) == money_in(book)


def test_taken_out_of_its_pack_a_thing_is_ordered_loose() -> None:
    book = cells_of(written(*LINES, quotation=quoted(*LINES)))
    changed(book, "Order", "tile", "pack of", None)
    loose = replace(TILES, packed=None)
    assert money_of(quoted(loose, *LINES[1:])) == money_in(book)


def test_prices_written_into_the_sheet_make_the_quotation() -> None:
    book = cells_of(written(*LINES, quotation=None))
    for price_ in PRICES.prices:
        changed(book, "Order", price_.item, "price", price_.amount)
        changed(book, "Order", price_.item, "per", price_.per)
    for rate_ in PRICES.rates:
        changed(book, "Work", rate_.task, "rate", rate_.amount)
    assert money_of(quoted(*LINES)) == money_in(book)


def test_an_order_of_nothing_comes_to_nothing() -> None:
    book = cells_of(written(quotation=quoted(tasks=()), tasks=()))
    assert 0 == worked_out(book, "Total", f"B{row_of(book, 'Total', 'in all')}")


def test_what_is_added_to_nothing_is_not_lost_when_it_is_worked_out() -> None:
    spare = order_line("bonnet", 3.0)
    spare = replace(
        spare, measured=replace(spare.measured, net=0.0), allowances=(replace(TILES.allowances[0], amount=3.0),)
    )
    book = cells_of(written(spare, quotation=quoted(spare, tasks=()), tasks=()))
    assert 3 == worked_out(book, "Order", f"{column_of(book, 'Order', 'to order')}4")


def without_price(book: Book) -> object:
    return worked_out(book, "Total", f"B{row_of(book, 'Total', 'lines without a price, not in the total')}")


def test_what_the_total_leaves_out_is_counted_as_it_is_filled_in() -> None:
    quotation = quoted(*LINES)
    book = cells_of(written(*LINES, quotation=quotation))
    assert ("mortar: mortar", "cut: cut") == quotation.not_priced
    assert 2 == without_price(book)
    changed(book, "Order", "mortar", "price", 0)
    assert 1 == without_price(book)
    assert len(LINES) + len(TASKS) == without_price(cells_of(written(*LINES, quotation=None)))
    assert 0 == without_price(cells_of(written(quotation=quoted(tasks=()), tasks=())))


def test_no_tax_is_said_so() -> None:
    untaxed = MoneySettings(currency="£", places=2)
    content = order_xlsx(
        order_of(*LINES), TASKS, title="Byre", money=untaxed, quotation=None, cautions=(), made_at=MADE_AT
    )
    assert "tax, %: none is counted" in cells_of(content)["Total"].values()


@pytest.mark.parametrize("words", ["=1+1", "+1", "-1", "@SUM(A1)", "https://example.org", "1234"])
def test_words_stay_words(words: str) -> None:
    line = order_line("tile", 3.0, what=words)
    content = order_xlsx(
        order_of(line, not_counted=(words,)),
        (),
        title=words,
        money=MONEY,
        quotation=None,
        cautions=(words,),
        made_at=MADE_AT,
    )
    book = openpyxl.load_workbook(io.BytesIO(content))
    found = [cell for sheet in book for row in sheet.iter_rows() for cell in row if cell.value == words]
    assert 6 == len(found)  # the title of four sheets, the line, the caution
    assert {"s"} == {cell.data_type for cell in found}
    assert not [cell for cell in found if cell.hyperlink]


def test_the_same_order_makes_the_same_bytes() -> None:
    assert written(*LINES, quotation=quoted(*LINES)) == written(*LINES, quotation=quoted(*LINES))


def test_it_is_set_up_to_be_printed() -> None:
    book = openpyxl.load_workbook(io.BytesIO(written(*LINES, quotation=None)))
    assert ["Order", "Work", "Total", "Notes"] == book.sheetnames
    for sheet in book:
        assert ("landscape", "9", "A4") == (
            sheet.page_setup.orientation,
            str(sheet.page_setup.paperSize),
            sheet.freeze_panes,
        )
