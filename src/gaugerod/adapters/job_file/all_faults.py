"""Every fault of a document, each with its path, what was given, what is allowed and what to do."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from difflib import get_close_matches
from typing import Any

from pydantic import BaseModel, ValidationError

from gaugerod.adapters.job_file.refusing import REFUSED, path_of, shown
from gaugerod.adapters.job_file.slope_tables import BY_OUTLINE, BY_TAPE, OutlinedSlopeTable, SlopeTable
from gaugerod.basis.errors import Fault

Keys = list[str | int]

WAYS: dict[str | int, type[BaseModel]] = {BY_TAPE: SlopeTable, BY_OUTLINE: OutlinedSlopeTable}
"""A slope is read in one of two ways: which, stands third in the path to its faults, but was never written."""

OTHER_WAYS = {
    "outline": "A slope is given by tape or by its outline, not both: take out outline and edges, or the tape figures.",
    "edges": "A slope is given by tape or by its outline, not both: take out outline and edges, or the tape figures.",
}
"""Keys that are no slip of the pen, and what to write in their place."""


def faults_of(error: ValidationError, *, model: type[BaseModel], document: object) -> list[Fault]:
    """The faults in reading order."""
    return [
        fault for detail in error.errors(include_url=False) for fault in _faults(detail, model=model, document=document)
    ]


def _faults(detail: Mapping[str, Any], *, model: type[BaseModel], document: object) -> Iterator[Fault]:
    keys, given, context = list(detail["loc"]), shown(detail["input"]), detail.get("ctx") or {}
    path = path_of(_as_written(keys, document))
    match detail["type"]:
        case type_ if type_ == REFUSED:
            for fault in context["faults"]:
                yield replace(fault, field=_joined(path, fault.field))
        case "extra_forbidden":
            yield _unknown_key(keys, model)
        case "missing":
            yield Fault(path_of(_without_way(keys)), "nothing", _description(keys, model), "This is needed. Add it.")
        case "enum":
            choices = context["expected"].replace("'", "").replace(" or ", ", ")
            near = get_close_matches(str(given), choices.split(", "), n=1)
            yield Fault(path, given, choices, f"Did you mean {near[0]}?" if near else "Write one of these.")
        case "too_short":
            yield Fault(path, "none", "one or more", "Add at least one.")
        case "too_long":
            count, most = context["actual_length"], context["max_length"]
            yield Fault(path, f"{count} of them", f"at most {most}", "Split the job.")
        case "list_type":
            a_table = isinstance(detail["input"], dict)
            do = f"Write its heading in double brackets: [[{path}]]." if a_table else "Put it in square brackets."
            yield Fault(path, given, "a list, like [ … ]", do)
        case _:
            yield Fault(path, given, "a table with keys of its own", "Write it as the reference shows.")


def _as_written(keys: Keys, document: object) -> Keys:
    """The path as far as the document goes: where a bare value stands for a table, its keys were never written."""
    written: Keys = []
    for key in _without_way(keys):
        if isinstance(document, dict):
            document = document.get(key)
        elif isinstance(document, list) and isinstance(key, int):
            document = document[key]
        else:
            break
        written.append(key)
    return written


def _without_way(keys: Keys) -> Keys:
    return keys[:2] + keys[3:] if keys[:1] == ["slope"] else keys


def _joined(path: str, field: str) -> str:
    if not field or path == "file":
        return field or path
    return path + field if field.startswith(("[", ".")) else f"{path}.{field}"


def _unknown_key(keys: Keys, model: type[BaseModel]) -> Fault:
    known = list(_fields(_model_at(keys[:-1], model)))
    key = shown(keys[-1])
    near = get_close_matches(key, known, n=1)
    do = f"Did you mean {near[0]}?" if near else "Take it out, or look it up in the reference."
    return Fault(path_of(_without_way(keys)), key, f"one of {', '.join(known)}", OTHER_WAYS.get(key, do))


def _description(keys: Keys, model: type[BaseModel]) -> str:
    _, text = _fields(_model_at(keys[:-1], model))[str(keys[-1])]
    return text.rstrip(".")


def _model_at(keys: Keys, model: type[BaseModel]) -> type[BaseModel]:
    """The table that a path leads to, walked from the top."""
    for at, key in enumerate(keys):
        if at == 2 and keys[0] == "slope":
            model = WAYS[key]
        elif isinstance(key, str):
            annotation, _ = _fields(model)[key]
            model = _table_of(annotation) or model
    return model


def _fields(model: type[BaseModel]) -> dict[str, tuple[object, str]]:
    """The keys of a table as they are written, each with its kind and what it is."""
    return {
        field.alias or name: (
            field.annotation,
            field.description or (_table_of(field.annotation) or model).__doc__ or "a value",
        )
        for name, field in model.model_fields.items()
    }


def _table_of(annotation: Any) -> type[BaseModel] | None:  # noqa: ANN401 - an annotation can be anything
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for part in getattr(annotation, "__args__", ()):
        if (table := _table_of(part)) is not None:
            return table
    return None
