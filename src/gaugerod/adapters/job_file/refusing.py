"""Refusing a value: every fault of a value goes to the person in the same shape, whoever found it."""

import reprlib
from collections.abc import Iterable
from datetime import date, time

from pydantic_core import PydanticCustomError

from gaugerod.basis.errors import Fault

REFUSED = "refused"
"""The type under which a refusal travels through the checking of the document."""

_LONGEST_SHOWN_COUNT = 60
_SHORTLY = reprlib.Repr()
_SHORTLY.maxlevel = 2
_SHORTLY.maxstring = _SHORTLY.maxother = _SHORTLY.maxlong = _LONGEST_SHOWN_COUNT


def refuse(*faults: Fault) -> PydanticCustomError:
    """The error that carries these faults; their fields count from the value refused."""
    return PydanticCustomError(REFUSED, "refused", {"faults": faults})


def refuse_value(value: object, *, allowed: str, do: str) -> PydanticCustomError:
    """The error for one value as a whole."""
    return refuse(Fault(field="", given=shown(value), allowed=allowed, do=do))


def shown(value: object) -> str:
    """The value as a person may have written it, shortened, and safe to print anywhere."""
    match value:
        case str() | date() | time():
            text = str(value)
        case bool():
            text = "true" if value else "false"
        case _:
            text = _SHORTLY.repr(value).replace("'", '"')
    short = text if len(text) <= _LONGEST_SHOWN_COUNT else text[:_LONGEST_SHOWN_COUNT] + "…"
    return short.encode("utf-8", errors="backslashreplace").decode("utf-8")


def path_of(keys: Iterable[str | int]) -> str:
    """The path of a field, as it is written in every fault.

    >>> path_of(["slope", 0, "rafters", 1, "length"])
    'slope[0].rafters[1].length'
    """
    path = ""
    for key in keys:
        name = shown(key) or '""'
        path += f"[{key}]" if isinstance(key, int) else f".{name}" if path else name
    return path or "file"
