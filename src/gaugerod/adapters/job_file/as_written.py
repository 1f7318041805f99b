"""Reading a document as it was written, before it is checked: what can be read is given, and nothing is refused."""

from contextlib import suppress

from pydantic_core import PydanticCustomError

from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.adapters.job_file.fields import length_mm, words

Table = dict[str, object]


def table_in(table: Table, key: str) -> Table:
    """The table that stands under a key; an empty one where none does."""
    found = table.get(key)
    return found if isinstance(found, dict) else {}


def tables_in(table: Table, key: str, *, most: int, inside: str = "") -> list[tuple[str, Table]]:
    """The tables of a list of tables, each with its path; whatever else stands there is left out."""
    found = listed(table, key, most=most)
    return [(f"{inside}{key}[{index}]", each) for index, each in enumerate(found) if isinstance(each, dict)]


def listed(table: Table, key: str, *, most: int) -> list[object]:
    """What is in a list, up to the most there may be; nothing where no list stands."""
    found = table.get(key)
    return found[:most] if isinstance(found, list) else []


def length_in_mm(table: Table, key: str, allowed: Allowed) -> float | None:
    """The length under a key; None where it cannot be read."""
    with suppress(PydanticCustomError):
        return length_mm(table.get(key), allowed)
    return None


def words_of(value: object) -> str | None:
    """A name; None where it cannot be read."""
    with suppress(PydanticCustomError):
        return words(value)
    return None
