"""What was typed differently in two documents, field by field."""

from collections.abc import Iterator
from typing import Any

from gaugerod.web.pages.compare.context import MarkRow
from gaugerod.web.place_said import place_said

NONE = "—"


def typed_differently(before: Any, after: Any, path: str = "") -> Iterator[MarkRow]:  # noqa: ANN401 - any JSON
    """Every field that differs.

    >>> [(row.mark, row.before, row.after) for row in typed_differently({"a": ["1"]}, {"a": ["1", "2"]})]
    [('a 2', '—', '2')]
    """
    if isinstance(before, dict) and isinstance(after, dict):
        for key in dict.fromkeys([*before, *after]):
            yield from typed_differently(before.get(key), after.get(key), f"{path}.{key}" if path else str(key))
    elif isinstance(before, list) and isinstance(after, list):
        for index in range(max(len(before), len(after))):
            was = before[index] if index < len(before) else None
            now = after[index] if index < len(after) else None
            yield from typed_differently(was, now, f"{path}[{index}]")
    elif before != after:
        if isinstance(before, (dict, list)) or isinstance(after, (dict, list)):
            yield from typed_differently(_empty_like(before, after), _empty_like(after, before), path)
        else:
            yield MarkRow(mark=place_said(path), before=_said(before), after=_said(after), moved="")


def _empty_like(value: Any, other: Any) -> Any:  # noqa: ANN401
    """The value, or an empty table or list to set against the other; a plain value stands under no key of its own."""
    if isinstance(value, (dict, list)) and (not isinstance(other, (dict, list)) or type(value) is type(other)):
        return value
    if isinstance(value, dict) or isinstance(other, dict):
        return value if isinstance(value, dict) else {"": value} if value is not None else {}
    return value if isinstance(value, list) else [value] if value is not None else []


def _said(value: object) -> str:
    match value:
        case None:
            return NONE
        case bool():
            return "yes" if value else "no"
        case _:
            return str(value)
