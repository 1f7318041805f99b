"""The user's own price list, as CSV: prices of items and rates of work. Every fault is told, with its line.

Columns: ``kind`` (item or work), ``item``, ``unit``, ``price``, and, if wished, ``per`` (1000: a price by the thousand) and
``note``. Commas or semicolons part them. A line without a price stands for later, and counts as none.
"""

import csv
import io
import re
from collections.abc import Iterator, Sequence
from decimal import Context, Decimal, Inexact

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.take_off.answer import TakeOff
from gaugerod.take_off.money import Price, PriceList, Rate, Task

COLUMNS = ("kind", "item", "unit", "price", "per", "note")
NEEDED = COLUMNS[:4]
MOST_LINES_COUNT = 5_000
MOST_BYTES_COUNT = 1_000_000
MOST_LETTERS_COUNT = 200
_AMOUNT = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,6})?", re.ASCII)
_TO_THE_END = Context(prec=40, traps=[Inexact])
"""Divides what ends as a decimal, and tells what does not."""


def read_price_list(content: bytes) -> PriceList:
    """The prices and rates in the bytes of a CSV file. Raises InputRefused with every fault."""
    rows = _rows(_text(content))
    if not rows:
        raise InputRefused([Fault("line 1", "nothing", f"a heading: {', '.join(NEEDED)}", "Write the heading first.")])
    heading = [cell.strip().lower() for cell in rows[0][1]]
    faults = list(_heading_faults(rows[0][0], heading))
    if faults:
        raise InputRefused(faults)
    prices: list[Price] = []
    rates: list[Rate] = []
    for number, row in rows[1:]:
        faults.extend(_comma_faults(number, heading, row))
        _line(number, _named(heading, row), prices, rates, faults)
    faults.extend(_twice("item", [price.item for price in prices]))
    faults.extend(_twice("work", [rate.task for rate in rates]))
    if faults:
        raise InputRefused(faults)
    return PriceList(prices=tuple(prices), rates=tuple(rates))


def _text(content: bytes) -> str:
    if len(content) > MOST_BYTES_COUNT:
        allowed = f"at most {MOST_BYTES_COUNT} bytes"
        raise InputRefused(
            [Fault("price list", f"{len(content)} bytes", allowed, "Leave out what is not for this job.")]
        )
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputRefused(
            [Fault("price list", "letters that cannot be read", "CSV in UTF-8", "Save it as CSV UTF-8.")]
        ) from None


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """The rows with something in them, each with the line of the file it begins on: words may run over several."""
    first = next((line for line in re.split(r"[\r\n]", text) if line.strip(" ,;")), "")
    comma = ";" if first.count(";") > first.count(",") else ","
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=comma, strict=True)
    rows: list[tuple[int, list[str]]] = []
    begins = 1
    try:
        for row in reader:
            rows.append((begins, row))
            begins = reader.line_num + 1
    except csv.Error as error:
        given = str(error)
        raise InputRefused(
            [Fault("price list", given, "CSV", "Look at the quotation marks and save it again.")]
        ) from None
    if len(rows) > MOST_LINES_COUNT:
        allowed = f"at most {MOST_LINES_COUNT} lines"
        raise InputRefused([Fault("price list", f"{len(rows)} lines", allowed, "Leave out what is not for this job.")])
    return [(number, row) for number, row in rows if any(cell.strip() for cell in row)]


def _heading_faults(number: int, heading: Sequence[str]) -> Iterator[Fault]:
    line = f"line {number}"
    for name in NEEDED:
        if name not in heading:
            yield Fault(line, f"no column {name}", ", ".join(COLUMNS), f"Add a column headed {name}.")
    for name in heading:
        if name not in COLUMNS:
            yield Fault(
                line,
                f"column {name[:MOST_LETTERS_COUNT] or 'without a name'}",
                ", ".join(COLUMNS),
                "Take it out, or name it so.",
            )
    for name in COLUMNS:
        if heading.count(name) > 1:
            yield Fault(line, f"column {name} twice", "each column once", "Take one of them out.")


def _named(heading: Sequence[str], row: Sequence[str]) -> dict[str, str]:
    """The cells by their column; those past the heading under no name."""
    cells = dict.fromkeys(COLUMNS, "")
    cells.update({name: cell.strip() for name, cell in zip(heading, row, strict=False)})
    cells[""] = "".join(row[len(heading) :]).strip()
    return cells


def _comma_faults(number: int, heading: Sequence[str], row: Sequence[str]) -> Iterator[Fault]:
    """A line that ends early, with a few units to a price: as likely 12,50 for one, parted at its comma, as 12 for 50."""
    last = row[-1].strip()
    if len(row) < len(heading) and heading[len(row) - 1] == "per" and re.fullmatch("[0-9]{1,2}", last) and last != "1":
        yield Fault(
            f"line {number}, per",
            f"{row[-2].strip()[:MOST_LETTERS_COUNT]},{last} at the end of the line",
            "a price with a point, or a line with all its cells",
            f"If the price has a comma in it, write a point, like 1234.50. If it is for {last}, end the line with a note.",
        )


def _line(number: int, cells: dict[str, str], prices: list[Price], rates: list[Rate], faults: list[Fault]) -> None:
    """One line read into the prices or the rates, or its faults told."""
    before = len(faults)
    faults.extend(_cell_faults(number, cells))
    amount = _amount(number, "price", cells["price"], faults) if cells["price"] else None
    per = _amount(number, "per", cells["per"], faults) if cells["per"] else Decimal(1)
    if per is not None and per == 0:
        faults.append(
            Fault(f"line {number}, per", cells["per"], "above nothing", "Write 1, or 1000 for a price by the thousand.")
        )
    if len(faults) > before or amount is None or per is None:
        return
    if cells["kind"].lower() == "item":
        prices.append(Price(item=cells["item"], unit=cells["unit"], amount=amount, per=per, note=cells["note"]))
        return
    try:
        rate = _TO_THE_END.divide(amount, per)
    except Inexact:
        do = "It has no end as a decimal. Write the rate for one."
        faults.append(
            Fault(f"line {number}, per", cells["per"], "a number the rate can be divided by to the last digit", do)
        )
        return
    rates.append(Rate(task=cells["item"], unit=cells["unit"], amount=rate, note=cells["note"]))


def _cell_faults(number: int, cells: dict[str, str]) -> Iterator[Fault]:
    if cells["kind"].lower() not in {"item", "work"}:
        yield Fault(
            f"line {number}, kind", _short(cells["kind"]), "item or work", "Write item for a thing, work for labour."
        )
    for name in ("item", "unit"):
        if not cells[name]:
            yield Fault(f"line {number}, {name}", "nothing", "a name", "Write it as the blank list of this job has it.")
    if cells["price"] and _AMOUNT.fullmatch(cells["note"]):
        yield Fault(
            f"line {number}, note",
            cells["note"],
            "words",
            "If the price has a comma in it, write a point, like 1234.50. Else say the note in words.",
        )
    if cells[""]:
        yield Fault(
            f"line {number}",
            "more cells than the heading",
            "one cell to a column",
            "Put words with commas in quotation marks.",
        )
    for name in COLUMNS:
        if len(cells[name]) > MOST_LETTERS_COUNT:
            yield Fault(
                f"line {number}, {name}", _short(cells[name]), f"at most {MOST_LETTERS_COUNT} letters", "Shorten it."
            )


def _amount(number: int, name: str, text: str, faults: list[Fault]) -> Decimal | None:
    """An amount of money, or of units: digits with one point. A comma could part thousands or pence, so it is asked about."""
    if _AMOUNT.fullmatch(text):
        return Decimal(text)
    do = (
        "Write it with a point and no thousands mark, like 1234.50."
        if "," in text
        else "Write it like 1234.50, no sign of a currency."
    )
    faults.append(
        Fault(f"line {number}, {name}", _short(text), "a number from 0 up, at most nine digits and six places", do)
    )
    return None


def _short(text: str) -> str:
    return text[:40] or "nothing"


def _twice(kind: str, names: Sequence[str]) -> Iterator[Fault]:
    for name in dict.fromkeys(names):
        if names.count(name) > 1:
            yield Fault(f"{kind} {name}", f"{names.count(name)} lines", "one line for each", "Keep the one that holds.")


def blank_price_list(take_off: TakeOff, tasks: Sequence[Task]) -> str:
    """A list of every item and all the work of this job, to fill in the prices. CSV, no tax, one line each."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for line in take_off.lines:
        writer.writerow(("item", line.measured.item, line.measured.unit, "", "1", _note(line.measured.what)))
    for task in tasks:
        writer.writerow(("work", task.task, task.unit, "", "1", _note(task.what)))
    return out.getvalue()


def _note(what: str) -> str:
    """What it is, no longer than a list may say it."""
    return plain_cell(" ".join(what.split()))[:MOST_LETTERS_COUNT]


def plain_cell(text: str) -> str:
    """Words that a spreadsheet cannot take for a formula: a mark in front of those that begin like one.

    >>> plain_cell("=2+2"), plain_cell("tile")
    ("'=2+2", 'tile')
    """
    return f"'{text}" if text.startswith(("=", "+", "-", "@", "\t", "\r")) else text
