"""A spreadsheet worked out by other code than wrote it: the few forms of formula the order has, in exact fractions.

``ROUND`` and ``ROUNDUP`` go away from nothing, as spreadsheets have it.
"""

import io
import re
from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor

import openpyxl

Value = Fraction | str | None
Book = dict[str, dict[str, object]]
_TOKEN = re.compile(r'\s*("[^"]*"|[A-Za-z]+![A-Z]+[0-9]+|[A-Z]+[0-9]+|[A-Z]+(?=\()|[0-9]+(?:\.[0-9]+)?|<>|[-+*/(),:=])')


def cells_of(content: bytes, *, cached: bool = False) -> Book:
    """Every cell that has something in it: its formula, or (``cached``) the figure that was written beside it."""
    book = openpyxl.load_workbook(io.BytesIO(content), data_only=cached)
    return {
        sheet.title: {
            cell.coordinate: cell.value for row in sheet.iter_rows() for cell in row if cell.value is not None
        }
        for sheet in book.worksheets
    }


def worked_out(book: Book, sheet: str, at: str) -> Value:
    """What a cell comes to."""
    value = book[sheet].get(at)
    if isinstance(value, str):
        return _Formula(book, sheet, value[1:]).value() if value.startswith("=") else value
    return None if value is None else Fraction(str(value))


class _Formula:
    """One formula, read from left to right."""

    def __init__(self, book: Book, sheet: str, text: str) -> None:
        self.book, self.sheet, self.at = book, sheet, 0
        self.tokens: list[str] = []
        place = 0
        while place < len(text):
            match = _TOKEN.match(text, place)
            assert match is not None, f"not a form the order has: {text[place:]!r}"
            self.tokens.append(match[1])
            place = match.end()

    def value(self) -> Value:
        found = self.compared()
        assert self.at == len(self.tokens), self.tokens[self.at :]
        return found

    def peek(self) -> str:
        return self.tokens[self.at] if self.at < len(self.tokens) else ""

    def take(self, wanted: str = "") -> str:
        token = self.peek()
        assert wanted in ("", token), (wanted, token)
        self.at += 1
        return token

    def compared(self) -> Value:
        left = self.added()
        if self.peek() not in ("=", "<>"):
            return left
        same = self.take() == "="
        return Fraction(int(((left or "") == (self.added() or "")) is same))

    def added(self) -> Value:
        left = self.multiplied()
        while self.peek() in ("+", "-"):
            sign = 1 if self.take() == "+" else -1
            left = number(left) + sign * number(self.multiplied())
        return left

    def multiplied(self) -> Value:
        left = self.one()
        while self.peek() in ("*", "/"):
            times, right = self.take() == "*", None
            right = number(self.one())
            left = number(left) * right if times else number(left) / right
        return left

    def one(self) -> Value:
        part = self.take()
        if part == "(":
            inside = self.compared()
            self.take(")")
            return inside
        if part.startswith('"'):
            return part[1:-1]
        if part[0].isdigit():
            return Fraction(part)
        if self.peek() == "(":
            return self.called(part)
        sheet, _, cell = part.rpartition("!")
        return worked_out(self.book, sheet or self.sheet, cell)

    def called(self, name: str) -> Value:
        self.take("(")
        if name in ("SUM", "COUNTBLANK"):
            found = self.ranged()
            if name == "COUNTBLANK":
                return Fraction(sum(each in (None, "") for each in found))
            return sum((each for each in found if isinstance(each, Fraction)), Fraction(0))
        if name == "IF":
            return self.chosen()
        given = [self.compared()]
        while self.peek() == ",":
            self.take()
            given.append(self.compared())
        self.take(")")
        return _CALLS[name](*(number(each) for each in given))

    def chosen(self) -> Value:
        """Only the part that is chosen is worked out: the other may divide by an empty cell."""
        wanted = number(self.compared())
        self.take(",")
        if not wanted:
            self.passed_over()
            self.take(",")
        found = self.compared()
        if wanted:
            self.take(",")
            self.passed_over()
        self.take(")")
        return found

    def passed_over(self) -> None:
        """To the comma or bracket that ends this part."""
        deep = 0
        while deep or self.peek() not in (",", ")"):
            deep += {"(": 1, ")": -1}.get(self.take(), 0)

    def ranged(self) -> list[Value]:
        """The cells of a range in one column."""
        first, last = self.take(), (self.take(":"), self.take())[1]
        self.take(")")
        sheet, _, first = first.rpartition("!")
        column = first.rstrip("0123456789")
        rows = range(int(first.removeprefix(column)), int(last.removeprefix(column)) + 1)
        return [worked_out(self.book, sheet or self.sheet, f"{column}{row}") for row in rows]


def number(value: Value) -> Fraction:
    """A number; an empty cell counts as nothing, words are an error as they are in a spreadsheet."""
    assert not isinstance(value, str), f"{value!r} is no number"
    return Fraction(0) if value is None else value


def _round(value: Fraction, places: Fraction) -> Fraction:
    scale = 10 ** int(places)
    whole = floor(abs(value) * scale + Fraction(1, 2))
    return Fraction(whole if value >= 0 else -whole, scale)


def _round_up(value: Fraction, places: Fraction) -> Fraction:
    scale = 10 ** int(places)
    whole = ceil(abs(value) * scale)
    return Fraction(whole if value >= 0 else -whole, scale)


_CALLS: dict[str, Callable[..., Fraction]] = {
    "ROUND": _round,
    "ROUNDUP": _round_up,
    "MAX": lambda *values: max(values),
}
