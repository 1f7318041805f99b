"""Every fault of a document, each with its path, what was given, what is allowed and what to do."""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from pydantic import BaseModel, ValidationError

from gaugerod.adapters.job_file.refusing import path_of, shown
from gaugerod.basis.errors import Fault


def faults_of(error: ValidationError, model: type[BaseModel]) -> tuple[Fault, ...]:
    """The faults in reading order, each told once."""
    found: dict[Fault, None] = {}
    for detail in error.errors(include_url=False):
        for fault in _faults(detail, model):
            found.setdefault(fault)
    return tuple(found)


def _faults(detail: Mapping[str, Any], model: type[BaseModel]) -> Iterator[Fault]:
    keys = [key for key in detail["loc"] if not _names_a_branch(key)]
    path, context = path_of(keys), detail.get("ctx") or {}
    match detail["type"]:
        case "refused":
            for fault in context["faults"]:
                yield _placed(fault, path)
        case "extra_forbidden":
            yield _unknown_key(keys, model)
        case "missing":
            yield Fault(path, "nothing", "a value", "This is needed. Add it.")
        case "enum" | "literal_error":
            yield Fault(path, shown(detail["input"]), context["expected"].replace("'", ""), _nearest(detail, context))
        case "too_short":
            yield Fault(path, "none", "one or more", "Add at least one.")
        case "too_long":
            yield Fault(
                path, f"{context['actual_length']} of them", f"at most {context['max_length']}", "Split the job."
            )
        case "list_type":
            yield Fault(path, shown(detail["input"]), "a list, like [ … ]", "Put it in square brackets.")
        case _:
            yield Fault(path, shown(detail["input"]), "a table of its own keys", "Write it as the reference shows.")


def _names_a_branch(key: object) -> bool:
    """Where a value may be one of two kinds, the checker puts the kind into the path; a person never wrote it."""
    return isinstance(key, str) and (key == "RafterTable" or "[" in key or key in {"float", "list"})


def _placed(fault: Fault, path: str) -> Fault:
    whole = path if not fault.field else fault.field if path == "file" else f"{path}{_joint(fault.field)}{fault.field}"
    return Fault(whole, fault.given, fault.allowed, fault.do)


def _joint(field: str) -> str:
    return "" if field.startswith(("[", ".")) else "."


def _nearest(detail: Mapping[str, Any], context: Mapping[str, Any]) -> str:
    choices = context["expected"].replace("'", "").replace(" or ", ", ").split(", ")
    near = get_close_matches(str(detail["input"]), choices, n=1)
    return f"Did you mean {near[0]}?" if near else "Write one of these."


def _unknown_key(keys: list[str | int], model: type[BaseModel]) -> Fault:
    known = _keys_at(keys[:-1], model)
    near = get_close_matches(str(keys[-1]), known, n=1)
    do = f"Did you mean {near[0]}?" if near else "Take it out, or look it up in the reference."
    return Fault(path_of(keys), shown(keys[-1]), f"one of {', '.join(known)}", do)


def _keys_at(keys: list[str | int], model: type[BaseModel]) -> list[str]:
    """The keys a table may have, found by walking the path from the top."""
    for key in keys:
        if isinstance(key, str):
            model = _table_in(model, key)
    return [field.alias or name for name, field in model.model_fields.items()]


def _table_in(model: type[BaseModel], key: str) -> type[BaseModel]:
    for name, field in model.model_fields.items():
        if key in {name, field.alias}:
            return _table_of(field.annotation) or model
    return model


def _table_of(annotation: Any) -> type[BaseModel] | None:  # noqa: ANN401 - an annotation can be anything
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for part in getattr(annotation, "__args__", ()):
        if (table := _table_of(part)) is not None:
            return table
    return None
