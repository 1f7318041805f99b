"""Lengths as people write them, read exactly, and written back.

Reads ``345``, ``345 mm``, ``34.5cm``, ``4,905 m`` (decimal comma), ``1 m 20 cm``, ``10' 6 3/8"``,
``10'-6 3/8"``, ``10 ft 6 in``, ``6½″``. Refuses what could mean two things: ``1,234`` with no unit
(a thousand or a decimal comma?), ``1,234.5``, a bare number after metres.
"""

import re
from enum import StrEnum
from fractions import Fraction
from typing import assert_never

from gaugerod.basis.rounding import Division, nearest_count


class LengthUnit(StrEnum):
    """How lengths are shown."""

    MM = "mm"
    CM = "cm"
    M = "m"
    FT_IN = "ft-in"


class LengthUnclear(ValueError):
    """The text is not a length, or could be two different ones. The message says what to write instead."""


MM_PER = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction("25.4"),
    "ft": Fraction("304.8"),
}
_SAME_AS = {
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "mms": "mm",
    "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "'": "ft", "feet": "ft", "foot": "ft", '"': "in", "inch": "in", "inches": "in", "ins": "in",
}  # fmt: skip
_PLAIN = str.maketrans({
    "′": "'", "’": "'", "‘": "'", "ʹ": "'", "´": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"',
    "⁄": "/", "∕": "/", "−": "-", "–": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " ",
})  # fmt: skip
_FRACTIONS = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip
_NUMBER = r"\d+[ -]+\d+/\d+|\d+/\d+|\d*[.,]\d+|\d+[.]?"
_UNIT = "|".join(sorted([re.escape(word) for word in (*MM_PER, *_SAME_AS)], key=len, reverse=True))
_PART = re.compile(rf"\s*(?:-\s*)?({_NUMBER})\s*({_UNIT})?(?![a-z])\s*", re.IGNORECASE)
_TRY = "Write it like 4.905 m, 345 mm or 10' 6 3/8\""


def read_length_mm(text: str, *, bare_unit: str = "mm") -> Fraction:
    """The length a person wrote, exactly, in mm. A number with no unit is in ``bare_unit``.

    Raises LengthUnclear, with what to write instead.

    >>> read_length_mm("4.905 m"), read_length_mm("4,905 m"), read_length_mm("1 m 20 cm")
    (Fraction(4905, 1), Fraction(4905, 1), Fraction(1200, 1))
    >>> float(read_length_mm("10' 6 3/8\\""))
    3209.925
    >>> read_length_mm("1,234")
    Traceback (most recent call last):
    gaugerod.basis.lengths.LengthUnclear: '1,234' could be 1234 mm or 1.234; write 1234 mm or 1.234 m
    """
    tidy = _tidied(text)
    if not tidy:
        raise LengthUnclear(f"no length given. {_TRY}")
    negative = tidy.startswith("-")
    rest = tidy[1:].lstrip() if negative else tidy
    total_mm = Fraction(0)
    smallest: Fraction | None = None
    last_unit = ""
    at = 0
    while at < len(rest):
        match = _PART.match(rest, at)
        if match is None or match.end() == at:
            raise LengthUnclear(f"cannot read {text.strip()!r} as a length. {_TRY}")
        unit = _unit_of(match[2], last_unit=last_unit, bare_unit=bare_unit, text=text)
        if smallest is not None and MM_PER[unit] >= smallest:
            raise LengthUnclear(f"{text.strip()!r} has its units out of order: the larger comes first. {_TRY}")
        total_mm += _number(match[1], has_unit=match[2] is not None, text=text) * MM_PER[unit]
        smallest, last_unit, at = MM_PER[unit], unit, match.end()
    return -total_mm if negative else total_mm


def _tidied(text: str) -> str:
    tidy = text.strip().translate(_PLAIN).replace("''", '"')
    for sign, words in _FRACTIONS.items():
        tidy = re.sub(rf"(\d)?\s*{sign}", lambda found, words=words: (f"{found[1]} " if found[1] else "") + words, tidy)
    return tidy


def _unit_of(written: str | None, *, last_unit: str, bare_unit: str, text: str) -> str:
    if written is not None:
        word = written.lower()
        return _SAME_AS.get(word, word)
    if last_unit == "ft":
        return "in"
    if last_unit:
        raise LengthUnclear(f"{text.strip()!r}: the last number has no unit. {_TRY}")
    return bare_unit


def _number(written: str, *, has_unit: bool, text: str) -> Fraction:
    if "," in written:
        whole, _, decimals = written.partition(",")
        if len(decimals) == 3 and whole and not has_unit:
            raise LengthUnclear(
                f"{text.strip()!r} could be {whole}{decimals} mm or {whole}.{decimals}; "
                f"write {whole}{decimals} mm or {whole}.{decimals} m"
            )
        written = f"{whole or '0'}.{decimals}"
    total = Fraction(0)
    for piece in re.split(r"[ -]+", written):
        if piece.endswith("/0"):
            raise LengthUnclear(f"{text.strip()!r} divides by nothing. {_TRY}")
        total += Fraction(piece)
    return total


def write_length(length_mm: float | Fraction, unit: LengthUnit) -> str:
    """The length for a person to read: to 1 mm in mm, cm and m; to a sixteenth in feet and inches.

    >>> [write_length(4905, unit) for unit in LengthUnit]
    ['4905 mm', '490.5 cm', '4.905 m', "16' 1 1/8\\""]
    """
    match unit:
        case LengthUnit.MM:
            return f"{nearest_count(length_mm, Division.MILLIMETRE)} mm"
        case LengthUnit.CM:
            return f"{Fraction(nearest_count(length_mm, Division.MILLIMETRE), 10).__float__():.1f} cm"
        case LengthUnit.M:
            return f"{Fraction(nearest_count(length_mm, Division.MILLIMETRE), 1000).__float__():.3f} m"
        case LengthUnit.FT_IN:
            return _feet_and_inches(nearest_count(length_mm, Division.SIXTEENTH))
        case _ as unreachable:
            assert_never(unreachable)


def _feet_and_inches(sixteenths: int) -> str:
    sign = "-" if sixteenths < 0 else ""
    feet, rest = divmod(-sixteenths if sixteenths < 0 else sixteenths, 12 * 16)
    inches, part = divmod(rest, 16)
    fraction = Fraction(part, 16)
    tail = f"{inches} {fraction}" if inches and part else (f"{fraction}" if part else f"{inches}")
    return f"{sign}{feet}' {tail}\"" if feet else f'{sign}{tail}"'
