"""The JSON Schema of the result document, made from its shape."""

from collections.abc import Iterator
from enum import Enum
from types import NoneType, UnionType
from typing import Any, get_args, get_origin, get_type_hints, is_typeddict

from gaugerod.adapters.result_document.shape import ResultDocument

Schema = dict[str, Any]

_PLAIN = {str: "string", float: "number", int: "integer", bool: "boolean", NoneType: "null"}


def result_schema() -> Schema:
    """The schema, with every field described in plain words. No field is missing or extra, ever."""
    tables = {table.__name__: _table(table) for table in _tables(ResultDocument, met=[])}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": ResultDocument.__name__,
        **tables.pop(ResultDocument.__name__),
        "$defs": dict(sorted(tables.items())),
    }


def _tables(kind: Any, *, met: list[Any]) -> Iterator[Any]:  # noqa: ANN401 - a type can be any form of annotation
    """This table and all below it, each once."""
    if is_typeddict(kind):
        if kind in met:
            return
        met.append(kind)
        yield kind
        for part in get_type_hints(kind).values():
            yield from _tables(part, met=met)
    for part in get_args(kind):
        yield from _tables(part, met=met)


def _table(kind: Any) -> Schema:  # noqa: ANN401
    fields = {name: _field(hint) for name, hint in get_type_hints(kind, include_extras=True).items()}
    return {
        "description": kind.__doc__,
        "type": "object",
        "properties": fields,
        "required": list(fields),
        "additionalProperties": False,
    }


def _field(hint: Any) -> Schema:  # noqa: ANN401
    kind, sentence, *choices = get_args(hint)
    schema: Schema = {**_kind(kind), "description": sentence}
    for choice in choices:
        schema["enum"] = [member.value for member in choice if isinstance(member, Enum)]
        if NoneType in get_args(kind):
            schema["enum"].append(None)
    return schema


def _kind(kind: Any) -> Schema:  # noqa: ANN401
    if kind in _PLAIN:
        return {"type": _PLAIN[kind]}
    if is_typeddict(kind):
        return {"$ref": f"#/$defs/{kind.__name__}"}
    origin, parts = get_origin(kind), get_args(kind)
    if origin is list:
        return {"type": "array", "items": _kind(parts[0])}
    if origin is dict:
        return {"type": "object", "additionalProperties": _kind(parts[1])}
    if origin is UnionType and all(part in _PLAIN for part in parts):
        return {"type": [_PLAIN[part] for part in parts]}
    if origin is UnionType:
        return {"anyOf": [_kind(part) for part in parts]}
    raise TypeError(f"the result document has no {kind}")
