"""Many lengths in one text, as a person writes them down from a tape: one to a line, or several with a clear gap between.

Parts at line ends, tabs, semicolons, and commas with a blank after them. Blanks part plain numbers (``348 687 1028``) and
metric lengths with a unit each (``348 mm 687 mm``). What could be one length or two (``1 032``) is not parted but told.
"""

import re
from dataclasses import dataclass
from itertools import pairwise

from gaugerod.basis.errors import LengthUnclear
from gaugerod.basis.lengths import read_length_mm

_PARTED = re.compile(r"[\n\r\t;]|,(?=\s|$)")
_NUMBERS = re.compile(r"[0-9]+(?:[.,][0-9]+)?(?: +[0-9]+(?:[.,][0-9]+)?)+", re.ASCII)
_METRIC = re.compile(r"(?:[0-9]+(?:[.,][0-9]+)? ?(mm|cm|m)(?: +|$))(?:[0-9]+(?:[.,][0-9]+)? ?\1(?: +|$))+", re.ASCII)
_ONE_METRIC = re.compile(r"[0-9]+(?:[.,][0-9]+)? ?(?:mm|cm|m)", re.ASCII)
_ONE_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)*", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthList:
    """The lengths in their order, each as it was written; and those that could be one length or several."""

    texts: tuple[str, ...]
    unclear: tuple[LengthUnclear, ...]


def parted_lengths(text: str, *, greatest_mm: float) -> LengthList:
    r"""The lengths of a text, parted but not yet read. A number over ``greatest_mm`` can only be two with a blank between.

    >>> parted_lengths("348, 687\n1 m 2 cm; 10' 6 3/8\"", greatest_mm=100_000).texts
    ('348', '687', '1 m 2 cm', '10\' 6 3/8"')
    >>> parted_lengths("348 687 1028", greatest_mm=100_000).texts
    ('348', '687', '1028')
    >>> [str(each) for each in parted_lengths("1 032", greatest_mm=100_000).unclear]
    ["'1 032' could be 1032, or 1 and 032; write it without the blank, or put each on its own line"]
    """
    texts: list[str] = []
    unclear: list[LengthUnclear] = []
    for part in _PARTED.split(text):
        piece = " ".join(part.split())
        if not piece:
            continue
        try:
            texts += _pieces(piece, greatest_mm=greatest_mm)
        except LengthUnclear as found:
            texts.append(piece)
            unclear.append(found)
    return LengthList(texts=tuple(texts), unclear=tuple(unclear))


def _pieces(piece: str, *, greatest_mm: float) -> list[str]:
    if _NUMBERS.fullmatch(piece):
        numbers = piece.split(" ")
        _refuse_thousands(piece, numbers, greatest_mm=greatest_mm)
        return numbers
    if _METRIC.fullmatch(piece):
        return [each.strip() for each in _ONE_METRIC.findall(piece)]
    if re.fullmatch(r"[0-9]+(?:,[0-9]+){2,}", piece, re.ASCII):
        raise LengthUnclear(piece, "has no blank after its commas; put one there, or put each on its own line")
    if len(_ONE_NUMBER.findall(piece)) > 1 and not _is_one_length(piece):
        raise LengthUnclear(piece, "cannot be read as one length; put each on its own line")
    return [piece]


def _refuse_thousands(piece: str, numbers: list[str], *, greatest_mm: float) -> None:
    """A blank may part thousands: ``1 032`` is one length to one person and two to another."""
    for first, second in pairwise(numbers):
        in_thousands = first.isdigit() and second.isdigit() and len(first) <= 3 and len(second) == 3
        if in_thousands and int(first + second) <= greatest_mm:
            both = f"{first}{second}, or {first} and {second}"
            raise LengthUnclear(piece, f"could be {both}; write it without the blank, or put each on its own line")


def _is_one_length(piece: str) -> bool:
    try:
        read_length_mm(piece)
    except LengthUnclear:
        return False
    return True
