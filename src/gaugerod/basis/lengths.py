"""Lengths as people write them, read exactly, and written back.

Reads ``345``, ``345 mm``, ``34.5cm``, ``1 234 mm``, ``4,905 m`` (decimal comma), ``1 m 20 cm``,
``10' 6 3/8"``, ``10'-6 3/8"``, ``10 ft 6 in``, ``6½″``. Refuses whatever could mean two things:
``1,234 mm`` (a thousand or a decimal comma?), ``4.905`` (metres or millimetres?), ``6 3/8``.
"""

import re
from enum import StrEnum
from fractions import Fraction
from itertools import pairwise
from typing import assert_never

from gaugerod.basis.errors import LengthUnclear
from gaugerod.basis.rounding import Division, count_below, nearest_count

__all__ = ["MM_PER", "LengthUnclear", "LengthUnit", "read_length_mm", "write_greatest", "write_length"]


class LengthUnit(StrEnum):
    """How lengths are shown."""

    MM = "mm"
    CM = "cm"
    M = "m"
    FT_IN = "ft-in"


MM_PER = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction("25.4"),
    "ft": Fraction("304.8"),
}
"""Each unit in mm, exactly. Source: the international yard and pound agreement of 1959: an inch is 25.4 mm."""

_SAME_AS = {
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "mms": "mm",
    "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "cms": "cm",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "'": "ft", "feet": "ft", "foot": "ft", '"': "in", "inch": "in", "inches": "in", "ins": "in",
}  # fmt: skip
_PLAIN = str.maketrans({
    "′": "'", "’": "'", "‘": "'", "ʹ": "'", "´": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"',
    "⁄": "/", "∕": "/", "−": "-", "–": "-", "‐": "-", "‑": "-", "\u00a0": " ", "\u2009": " ", "\u202f": " ",
})  # fmt: skip
_FRACTIONS = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip

_THOUSANDS = r"[0-9]{1,3}(?: [0-9]{3})+(?![0-9/.,])"
_MIXED = r"[0-9]+(?: *- *| +)[0-9]+ ?/ ?[0-9]+"
_NUMBER = rf"{_THOUSANDS}|{_MIXED}|[0-9]+ ?/ ?[0-9]+|[0-9]*[.,][0-9]+|[0-9]+[.]?"
_UNIT = "|".join(sorted([re.escape(word) for word in (*MM_PER, *_SAME_AS)], key=len, reverse=True))
_PART = re.compile(rf" *(-?) *({_NUMBER}) *(?:({_UNIT})(?![a-z])[.]?|(?![a-z.,/0-9])) *", re.IGNORECASE | re.ASCII)
_COULD_BE_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}[.,][0-9]{3}")
_IMPERIAL = frozenset({"ft", "in"})
_TRY = "Write it like 4.905 m, 345 mm or 10' 6 3/8\""
_LONGEST_TEXT_COUNT = 60
_LEAST_BARE_DECIMAL_MM = 100
"""A bare decimal below this may well be metres: no slope is a hundred metres long."""


def read_length_mm(text: str, *, bare_unit: str = "mm") -> Fraction:
    r"""The length a person wrote, exactly, in mm. A number with no unit is in ``bare_unit``.

    Raises LengthUnclear, with what to write instead.

    >>> read_length_mm("4.905 m"), read_length_mm("4,905 m"), read_length_mm("1 m 20 cm")
    (Fraction(4905, 1), Fraction(4905, 1), Fraction(1200, 1))
    >>> float(read_length_mm("10' 6 3/8\""))
    3209.925
    >>> read_length_mm("1,234")
    Traceback (most recent call last):
    gaugerod.basis.errors.LengthUnclear: '1,234' could be 1234 mm or 1.234 m; write the one that is meant
    """
    tidy = _tidied(text)
    negative = tidy.startswith("-")
    parts = _parts(tidy.removeprefix("-"), text=text)
    if len(parts) == 1 and parts[0][1] is None:
        _refuse_unclear_bare_number(parts[0][0], bare_unit=bare_unit, text=text)
    measured = _with_units(parts, bare_unit=bare_unit, text=text)
    _refuse_disorder(measured, text=text)
    total_mm = sum((number * MM_PER[unit] for number, unit in measured), Fraction(0))
    return -total_mm if negative else total_mm


def _tidied(text: str) -> str:
    if len(text) > _LONGEST_TEXT_COUNT:
        raise LengthUnclear(text[:20] + "…", f"is too long to be a length. {_TRY}")
    tidy = re.sub(r"\s+", " ", text.translate(_PLAIN)).strip().replace("''", '"')
    for sign, words in _FRACTIONS.items():
        tidy = tidy.replace(sign, f" {words} ")
    tidy = tidy.strip()
    if not tidy:
        raise LengthUnclear(text, f"has no length in it. {_TRY}")
    return tidy


def _parts(tidy: str, *, text: str) -> list[tuple[str, str | None]]:
    """The numbers in the text, each with its unit where one is written."""
    if re.search(r"[.,][0-9]+[.,]", tidy):
        raise LengthUnclear(text, "has more than one decimal mark; write thousands without a mark, like 1234.5 mm")
    parts: list[tuple[str, str | None]] = []
    at = 0
    while at < len(tidy):
        match = _PART.match(tidy, at)
        dash_in_place = bool(parts) and parts[-1][1] == "ft"
        if match is None or (match[1] and not dash_in_place):
            raise LengthUnclear(text, f"cannot be read as a length. {_TRY}")
        word = match[3].lower() if match[3] else None
        parts.append((match[2], None if word is None else _SAME_AS.get(word, word)))
        at = match.end()
    return parts


def _refuse_unclear_bare_number(written: str, *, bare_unit: str, text: str) -> None:
    """Refuse a lone number with no unit that a person may have meant in another unit."""
    if "/" in written and bare_unit not in _IMPERIAL:
        raise LengthUnclear(text, f'has no unit; write {written} in or {written}"')
    if bare_unit != "mm" or not re.search(r"[.,]", written):
        return
    if _COULD_BE_THOUSANDS.fullmatch(written):
        digits = re.sub(r"[.,]", "", written)
        raise LengthUnclear(text, f"could be {digits} mm or {_dotted(written)} m; write the one that is meant")
    if Fraction(_dotted(written)) < _LEAST_BARE_DECIMAL_MM:
        dotted = _dotted(written)
        raise LengthUnclear(text, f"could be {dotted} mm or {dotted} m; write the one that is meant")


def _with_units(parts: list[tuple[str, str | None]], *, bare_unit: str, text: str) -> list[tuple[Fraction, str]]:
    measured: list[tuple[Fraction, str]] = []
    for written, unit in parts:
        if unit is None and not measured and len(parts) == 1:
            unit = bare_unit  # noqa: PLW2901  the unit nobody wrote
        if unit is None and measured and measured[-1][1] == "ft":
            unit = "in"  # noqa: PLW2901  5' 3 is five foot three
        if unit is None:
            raise LengthUnclear(text, f"has a number with no unit. {_TRY}")
        measured.append((_number(written, unit=unit, text=text), unit))
    return measured


def _number(written: str, *, unit: str, text: str) -> Fraction:
    """One number as written: whole, decimal, in thousands by spaces, or with a fraction."""
    if "/" in written:
        return _with_fraction(written, text=text)
    if " " in written:
        if unit != "mm":
            raise LengthUnclear(text, f"has two numbers before one unit. {_TRY}")
        return Fraction(written.replace(" ", ""))
    decimal_is_sure = unit == "m" or (unit in _IMPERIAL and "," not in written)
    if _COULD_BE_THOUSANDS.fullmatch(written) and not decimal_is_sure:
        both = f"{re.sub(r'[.,]', '', written)} {unit} or {_dotted(written)} {unit}"
        raise LengthUnclear(text, f"could be {both}; write the first without its mark, or the second to two places")
    return Fraction(_dotted(written))


def _with_fraction(written: str, *, text: str) -> Fraction:
    *whole, top, bottom = (int(digits) for digits in re.findall(r"[0-9]+", written))
    if bottom == 0:
        raise LengthUnclear(text, f"divides by nothing. {_TRY}")
    if top >= bottom:
        raise LengthUnclear(text, f"has a fraction of one or more; write {_mixed(whole, top, bottom)}")
    return sum(whole) + Fraction(top, bottom)


def _mixed(whole: list[int], top: int, bottom: int) -> str:
    """The same number with a proper fraction."""
    total = sum(whole) + Fraction(top, bottom)
    rest = total - total.__floor__()
    return f"{total.__floor__()} {rest}" if rest else str(total.__floor__())


def _dotted(written: str) -> str:
    """The digits with a decimal point, a nought before it and none hanging after."""
    dotted = written.replace(",", ".").removesuffix(".")
    return f"0{dotted}" if dotted.startswith(".") else dotted


def _refuse_disorder(measured: list[tuple[Fraction, str]], *, text: str) -> None:
    """The larger unit comes first, only the last number may be a fraction, and each makes less than one of the last."""
    for (larger, larger_unit), (smaller, smaller_unit) in pairwise(measured):
        if (larger_unit in _IMPERIAL) is not (smaller_unit in _IMPERIAL):
            raise LengthUnclear(text, f"mixes feet and inches with metric. {_TRY}")
        if MM_PER[smaller_unit] >= MM_PER[larger_unit]:
            raise LengthUnclear(text, f"has its units out of order: the larger comes first. {_TRY}")
        if larger.denominator != 1:
            raise LengthUnclear(text, f"has a part of a {larger_unit} and {smaller_unit} besides. {_TRY}")
        if smaller * MM_PER[smaller_unit] >= MM_PER[larger_unit]:
            raise LengthUnclear(text, f"has more {smaller_unit} than go into one {larger_unit}. {_TRY}")


def write_length(length_mm: float | Fraction, unit: LengthUnit) -> str:
    """The length for a person to read: to 1 mm in mm, cm and m; to a sixteenth in feet and inches.

    >>> print(*(write_length(4905, unit) for unit in LengthUnit), sep=", ")
    4905 mm, 490.5 cm, 4.905 m, 16' 1 1/8"
    """
    match unit:
        case LengthUnit.MM:
            return f"{nearest_count(length_mm, Division.MILLIMETRE)} mm"
        case LengthUnit.CM:
            return f"{_decimal(nearest_count(length_mm, Division.MILLIMETRE), places=1)} cm"
        case LengthUnit.M:
            return f"{_decimal(nearest_count(length_mm, Division.MILLIMETRE), places=3)} m"
        case LengthUnit.FT_IN:
            return _feet_and_inches(nearest_count(length_mm, Division.SIXTEENTH))
        case _ as unreachable:
            assert_never(unreachable)


def _decimal(millimetres: int, *, places: int) -> str:
    """Whole mm with the point set so many places to the left, in whole numbers so that no size is too great."""
    sign = "-" if millimetres < 0 else ""
    whole, rest = divmod(-millimetres if millimetres < 0 else millimetres, 10**places)
    return f"{sign}{whole}.{rest:0{places}d}"


def write_greatest(limit_mm: float | Fraction, unit: LengthUnit) -> str:
    r"""A greatest length for a person to keep to: rounded down, so that what is read never exceeds it.

    >>> [write_greatest(333.9, unit) for unit in LengthUnit]
    ['333 mm', '33.3 cm', '0.333 m', '1\' 1 1/8"']
    """
    division = Division.SIXTEENTH if unit is LengthUnit.FT_IN else Division.MILLIMETRE
    return write_length(count_below(limit_mm, division) * division.step_mm, unit)


def _feet_and_inches(sixteenths: int) -> str:
    sign = "-" if sixteenths < 0 else ""
    feet, rest = divmod(-sixteenths if sixteenths < 0 else sixteenths, 12 * 16)
    inches, part = divmod(rest, 16)
    fraction = Fraction(part, 16)
    tail = f"{inches} {fraction}" if inches and part else (f"{fraction}" if part else f"{inches}")
    return f"{sign}{feet}' {tail}\"" if feet else f'{sign}{tail}"'
