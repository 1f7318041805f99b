"""The kinds of value the tables of order and record hold: per cent, tax read exactly, names of items, sentences."""

import re
from datetime import date, datetime
from decimal import Decimal
from typing import Annotated

from gaugerod.adapters.job_file.fields import kind, words
from gaugerod.adapters.job_file.number_fields import number_of, whole_of
from gaugerod.adapters.job_file.refusing import refuse_value

_TAX = re.compile(r"\s*([0-9]{1,3}(?:[.,][0-9]{1,6})?)\s*%?\s*")
_ITEM = re.compile(r"[a-z0-9][a-z0-9.-]{0,59}")


def tax_percent(value: object) -> Decimal:
    """Per cent, exactly as it is written: ``20``, ``17.5``, ``"8.875"`` or ``"8,875 %"``.

    >>> tax_percent("8,875 %"), tax_percent(17.5), tax_percent(0)
    (Decimal('8.875'), Decimal('17.5'), Decimal('0'))
    """
    if isinstance(value, (int, float, str)) and not isinstance(value, bool):
        said = _TAX.fullmatch(value if isinstance(value, str) else _written(value))
        if said is not None and (percent := Decimal(said[1].replace(",", "."))) <= 100:
            return percent
    allowed = 'per cent, from 0 to 100, like 20, 17.5 or "8.875"'
    raise refuse_value(value, allowed=allowed, do="Write the tax with six places at most.")


def _written(number: float) -> str:
    """The number as the file wrote it; digits without end are no tax."""
    return "" if not -1000 < number < 1000 else repr(number)


def item_name(value: object) -> str:
    """The name of an item of the take-off: small letters, digits, dashes."""
    if isinstance(value, str) and _ITEM.fullmatch(value.strip()):
        return value.strip()
    allowed = "the name of an item, like tile or ridge-unit: small letters, digits and dashes"
    raise refuse_value(value, allowed=allowed, do="Copy it from the take-off.")


def sentence(value: object) -> str:
    """What is said in the record: one line that can be read and printed."""
    if isinstance(value, str) and 0 < len(value.strip()) <= 400 and value.strip().isprintable():
        return value.strip()
    raise refuse_value(value, allowed="one line of words, up to 400 letters", do="Write it in words.")


def day(value: object) -> str:
    """A day: as the file gives it, or in words."""
    return value.isoformat() if isinstance(value, date) and not isinstance(value, datetime) else words(value)


def currency(value: object) -> str:
    """The name or sign of a currency."""
    if isinstance(value, str) and 0 < len(value.strip()) <= 12 and value.strip().isprintable():
        return value.strip()
    raise refuse_value(value, allowed="the name or sign of a currency, up to 12 letters", do="Write it in words.")


TaxPerCent = Annotated[
    Decimal, *kind(tax_percent, {"type": ["number", "string"], "title": 'per cent, like 17.5 or "8.875"'})
]
ItemName = Annotated[str, *kind(item_name, {"type": "string", "minLength": 1, "maxLength": 60})]
Sentence = Annotated[str, *kind(sentence, {"type": "string", "minLength": 1, "maxLength": 400})]
Day = Annotated[str, *kind(day, {"type": "string", "minLength": 1, "maxLength": 120})]
Currency = Annotated[str, *kind(currency, {"type": "string", "minLength": 1, "maxLength": 12})]
SharePerCent = Annotated[float, *number_of(least=0, greatest=50, what="per cent")]
PackSize = Annotated[float, *number_of(least=0.001, greatest=100_000, what="what one pack holds")]
PacksOnPallet = Annotated[int, *whole_of(least=1, greatest=10_000, what="packs on a pallet")]
MoneyPlaces = Annotated[int, *whole_of(least=0, greatest=4, what="decimal places")]
