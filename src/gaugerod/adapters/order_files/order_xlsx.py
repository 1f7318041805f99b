"""The order as a spreadsheet whose formulas are live: change a quantity, an allowance, a pack or a price, and the rest follows.

Sheets: the order, the work, the total, and what goes with them. The figures the program came to stand in every formula's cell,
for a reader that does not work them out itself.
"""

import io
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.take_off.answer import OrderLine, TakeOff
from gaugerod.take_off.cost import exact
from gaugerod.take_off.money import LabourCost, Quotation, Task
from gaugerod.take_off.ordered import WHOLE
from gaugerod.take_off.wished import MoneySettings

_ORDER = (
    ("trade", 11), ("item", 22), ("what", 52), ("unit", 8), ("measured", 11), ("added, %", 9), ("to order", 11),
    ("pack of", 9), ("packs", 8), ("comes to", 11), ("price", 11), ("per", 7), ("amount", 13), ("kg each", 9), ("kg", 11),
)  # fmt: skip
_WORK = (("task", 18), ("what", 44), ("unit", 8), ("quantity", 12), ("rate", 11), ("amount", 13))
_NOISE = "0.000001"
"""Float noise below which a quantity is whole, or a tenth, as in the take-off."""
_PACK_NOISE = "0.000000001"
"""The same for packs."""


def order_xlsx(
    take_off: TakeOff,
    tasks: Sequence[Task],
    *,
    title: str,
    money: MoneySettings,
    quotation: Quotation | None,
    cautions: Sequence[str],
    made_at: datetime,
) -> bytes:
    """The workbook. Without a quotation its price cells are empty, to be filled in. Raises InputRefused without the extra part."""
    try:
        import xlsxwriter  # noqa: PLC0415 - an optional part
    except ImportError:
        do = "Install it: pip install gaugerod[order]. CSV and JSON need no extra part."
        given = "XLSX"
        raise InputRefused([Fault("spreadsheet", given, "the optional part that writes it", do)]) from None
    out = io.BytesIO()
    book = xlsxwriter.Workbook(
        out, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    )
    book.set_properties({"title": title, "created": made_at.astimezone(UTC).replace(tzinfo=None)})
    book.set_calc_mode("auto")
    to = _Book(book=book, styles=_Styles(book, places=money.places), title=title, money=money, quotation=quotation)
    _order_sheet(to, take_off)
    _work_sheet(to, tasks)
    _total_sheet(to, lines_count=len(take_off.lines), tasks_count=len(tasks))
    _notes_sheet(to, take_off, cautions)
    book.close()
    return out.getvalue()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Book:
    """The workbook while it is written."""

    book: Any
    styles: "_Styles"
    title: str
    money: MoneySettings
    quotation: Quotation | None


class _Styles:
    """The few ways a cell is written."""

    def __init__(self, book: Any, *, places: int) -> None:  # noqa: ANN401 - the library ships no types
        pence = f"0.{'0' * places}" if places else "0"
        self.title = book.add_format({"bold": True, "font_size": 14})
        self.head = book.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "bottom"})
        self.words = book.add_format({"text_wrap": True, "valign": "top"})
        # A fixed row of places: an open one leaves a bare point behind a whole number.
        self.number = book.add_format({"num_format": "#,##0.000", "valign": "top"})
        self.whole = book.add_format({"num_format": "#,##0", "valign": "top"})
        self.typed = book.add_format({"valign": "top", "bottom": 4})
        self.money = book.add_format({"num_format": f"#,##{pence}", "valign": "top"})
        self.total = book.add_format({"num_format": f"#,##{pence}", "bold": True, "top": 1})
        self.bold = book.add_format({"bold": True})


def _sheet(to: _Book, name: str, columns: Sequence[tuple[str, int]]) -> Any:  # noqa: ANN401
    sheet = to.book.add_worksheet(name)
    sheet.set_landscape()
    sheet.set_paper(9)
    sheet.fit_to_pages(1, 0)
    sheet.set_footer("&L&A&R&P / &N")
    sheet.write_string(0, 0, to.title, to.styles.title)
    for at, (heading, width) in enumerate(columns):
        sheet.set_column(at, at, width)
        sheet.write_string(2, at, heading, to.styles.head)
    sheet.freeze_panes(3, 0)
    sheet.repeat_rows(2)
    return sheet


FIRST_ROW = 3
"""Rows from nothing: a title, a blank, the heading."""


def _order_sheet(to: _Book, take_off: TakeOff) -> None:
    sheet, styles, money, quotation = _sheet(to, "Order", _ORDER), to.styles, to.money, to.quotation
    costs = {} if quotation is None else {each.line.measured.item: each for each in quotation.materials}
    for row, line in enumerate(take_off.lines, start=FIRST_ROW):
        _quantities(sheet, styles, row, line)
        cost = costs.get(line.measured.item)
        number = row + 1
        if cost is not None and cost.price is not None:
            sheet.write_number(row, 10, float(cost.price.amount), styles.typed)
            sheet.write_number(row, 11, float(cost.price.per), styles.typed)
        else:
            sheet.write_blank(row, 10, None, styles.typed)
            sheet.write_number(row, 11, 1, styles.typed)
        amount = "" if cost is None or cost.amount is None else float(cost.amount)
        formula = f'=IF(K{number}="","",ROUND(ROUND(J{number},3)*K{number}/L{number},{money.places}))'
        sheet.write_formula(row, 12, formula, styles.money, amount)
    last = FIRST_ROW + len(take_off.lines)
    sheet.write_string(last, 11, "total", styles.bold)
    total = 0.0 if quotation is None else float(quotation.materials_total)
    summed = f"=SUM(M{FIRST_ROW + 1}:M{last})" if take_off.lines else "=0"
    sheet.write_formula(last, 12, summed, styles.total, total)


def _quantities(sheet: Any, styles: _Styles, row: int, line: OrderLine) -> None:  # noqa: ANN401
    """The left part of a line: words, what was measured, what is added, what comes of it."""
    measured, number = line.measured, row + 1
    for at, text in enumerate((measured.trade.value, measured.item, measured.what, measured.unit)):
        sheet.write_string(row, at, text, styles.words)
    # Quantities stand as they were measured, to the last digit: a rounded one could be a unit, or a penny, out.
    sheet.write_number(row, 4, measured.net, styles.typed)
    added = sum(each.amount for each in line.allowances)
    sheet.write_number(row, 5, 100 * added / measured.net if measured.net else 0, styles.typed)
    plain = f"E{number}*(1+F{number}/100)" if measured.net else f"E{number}+{added!r}"
    up = f"ROUNDUP(MAX(0,{plain}-{_NOISE}),{0 if measured.unit in WHOLE else 1})"
    order = f"={up}" if measured.unit in WHOLE else f'=IF(H{number}="",{up},{plain})'
    shown = styles.whole if measured.unit in WHOLE else styles.number
    sheet.write_formula(row, 6, order, shown, line.order)
    packed = line.packed
    if packed is None:
        sheet.write_blank(row, 7, None, styles.typed)
    else:
        sheet.write_number(row, 7, packed.pack_size, styles.typed)
    packs = f'=IF(H{number}="","",ROUNDUP(MAX(0,G{number}/H{number}-{_PACK_NOISE}),0))'
    sheet.write_formula(row, 8, packs, styles.whole, "" if packed is None else packed.packs_count)
    bought = f'=IF(H{number}="",G{number},I{number}*H{number})'
    sheet.write_formula(row, 9, bought, shown, line.bought)
    if measured.each_kg is not None:
        sheet.write_number(row, 13, measured.each_kg, styles.typed)
        mass = 0.0 if line.mass_kg is None else line.mass_kg
        sheet.write_formula(row, 14, f"=J{number}*N{number}", styles.number, mass)


def _work_sheet(to: _Book, tasks: Sequence[Task]) -> None:
    sheet, styles, money, quotation = _sheet(to, "Work", _WORK), to.styles, to.money, to.quotation
    costs: dict[str, LabourCost] = {} if quotation is None else {each.task.task: each for each in quotation.labour}
    for row, task in enumerate(tasks, start=FIRST_ROW):
        for at, text in enumerate((task.task, task.what, task.unit)):
            sheet.write_string(row, at, text, styles.words)
        sheet.write_number(row, 3, float(exact(task.quantity)), styles.typed)
        cost = costs.get(task.task)
        if cost is not None and cost.rate is not None:
            sheet.write_number(row, 4, float(cost.rate.amount), styles.typed)
        else:
            sheet.write_blank(row, 4, None, styles.typed)
        amount = "" if cost is None or cost.amount is None else float(cost.amount)
        number = row + 1
        sheet.write_formula(
            row, 5, f'=IF(E{number}="","",ROUND(D{number}*E{number},{money.places}))', styles.money, amount
        )
    last = FIRST_ROW + len(tasks)
    sheet.write_string(last, 4, "total", styles.bold)
    total = 0.0 if quotation is None else float(quotation.labour_total)
    sheet.write_formula(last, 5, f"=SUM(F{FIRST_ROW + 1}:F{last})" if tasks else "=0", styles.total, total)


def _total_sheet(to: _Book, *, lines_count: int, tasks_count: int) -> None:
    styles, money, quotation = to.styles, to.money, to.quotation
    sheet = _sheet(to, "Total", (("", 34), (money.currency or "amount", 16)))

    def known(amount: Any) -> float:  # noqa: ANN401
        return 0.0 if quotation is None or amount is None else float(amount)

    tax = money.tax_name or "tax"
    percent = 0.0 if money.tax_percent is None else float(money.tax_percent)
    rows = (
        ("materials", f"=Order!M{FIRST_ROW + lines_count + 1}", known(quotation and quotation.materials_total)),
        ("work", f"=Work!F{FIRST_ROW + tasks_count + 1}", known(quotation and quotation.labour_total)),
        ("together, before tax", "=B4+B5", known(quotation and quotation.net_total)),
        (f"{tax}, %" if money.tax_percent is not None else "tax, %: none is counted", None, percent),
        (tax, f"=ROUND(B6*B7/100,{money.places})", known(quotation and quotation.tax)),
        ("in all", "=B6+B8", known(quotation and quotation.total)),
        (
            "lines without a price, not in the total",
            f"={_blanks('Order', 'K', lines_count)}+{_blanks('Work', 'E', tasks_count)}",
            lines_count + tasks_count if quotation is None else len(quotation.not_priced),
        ),
    )
    for row, (name, formula, value) in enumerate(rows, start=FIRST_ROW):
        sheet.write_string(row, 0, name, styles.bold if name == "in all" else styles.words)
        if formula is None:
            sheet.write_number(row, 1, value, styles.typed)
        else:
            sheet.write_formula(row, 1, formula, styles.total if name == "in all" else styles.money, value)
    for row, left in enumerate(() if quotation is None else quotation.not_priced, start=FIRST_ROW + len(rows) + 1):
        sheet.write_string(row, 0, f"Had no price when this was written: {left}", styles.words)


def _blanks(sheet: str, column: str, lines_count: int) -> str:
    """How many lines of a sheet have nothing in this column."""
    return f"COUNTBLANK({sheet}!{column}{FIRST_ROW + 1}:{column}{FIRST_ROW + lines_count})" if lines_count else "0"


def _notes_sheet(to: _Book, take_off: TakeOff, cautions: Sequence[str]) -> None:
    sheet, styles, quotation = _sheet(to, "Notes", (("what goes with it", 120),)), to.styles, to.quotation
    sources = dict.fromkeys(f"{each.name}: {each.citation}" for line in take_off.lines for each in line.allowances)
    left = () if quotation is None else quotation.not_used
    unused = (f"Not used from the price list: {', '.join(left)}.",) if left else ()
    notes = (*(f"Not counted: {each}" for each in take_off.not_counted), *unused, *sources, *cautions)
    for row, note in enumerate(notes, start=FIRST_ROW):
        sheet.write_string(row, 0, note, styles.words)
