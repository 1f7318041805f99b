"""From the bytes of a JSON file to its document, and plain questions to it."""

import json
from math import isfinite
from pathlib import Path

from gaugerod.basis.errors import Fault, InputRefused

Json = dict[str, object]

LARGEST_BYTES = 20_000_000
"""A file larger than this holds a district, not a building (house limit)."""


def bytes_of_file(path: Path) -> bytes:
    """What is in the file. Raises InputRefused."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except OSError as error:
        do = f"It cannot be opened: {error.strerror}."
        raise InputRefused([Fault("file", str(path), "a file that can be read", do)]) from None
    if len(content) > LARGEST_BYTES:
        allowed = f"up to {LARGEST_BYTES // 1_000_000} MB"
        raise InputRefused([Fault("file", str(path), allowed, "Cut the building out of it first.")])
    return content


def json_table(content: bytes, *, what: str) -> Json:
    """The JSON object in the bytes. Raises InputRefused."""
    try:
        document = json.loads(content)
    except UnicodeDecodeError:
        raise InputRefused([Fault("file", "bytes that are no text", what, "Save it as UTF-8.")]) from None
    except json.JSONDecodeError as error:
        do = f"It breaks off at line {error.lineno}, column {error.colno}."
        raise InputRefused([Fault("file", error.msg, what, do)]) from None
    except (RecursionError, ValueError):
        raise InputRefused(
            [Fault("file", "JSON without end", what, "Write it again from the program it is from.")]
        ) from None
    if not isinstance(document, dict):
        raise InputRefused(
            [Fault("file", type(document).__name__, what, "Write it again from the program it is from.")]
        )
    return document


def listed(value: object) -> list[object]:
    """The list, or an empty one where something else stands."""
    return value if isinstance(value, list) else []


def tabled(value: object) -> Json:
    """The table, or an empty one where something else stands."""
    return value if isinstance(value, dict) else {}


def finite_numbers(value: object, *, least_count: int) -> tuple[float, ...] | None:
    """The numbers of a list of numbers, all finite and as many as are needed; None otherwise."""
    numbers = [each for each in listed(value) if isinstance(each, (int, float)) and not isinstance(each, bool)]
    if len(numbers) < least_count or len(numbers) != len(listed(value)):
        return None
    try:
        floats = tuple(map(float, numbers))
    except OverflowError:
        return None
    return floats if all(map(isfinite, floats)) else None
