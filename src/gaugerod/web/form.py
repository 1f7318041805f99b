"""Fields of a form as a page shows them, with what was typed and what is wrong with it."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from gaugerod.adapters.job_file.allowed import Allowed
from gaugerod.basis.errors import Fault
from gaugerod.basis.length_lists import parted_lengths
from gaugerod.web.place_said import place_said


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of the things to choose from."""

    value: str
    label: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field: its name in the form, what is asked, what was typed, and its faults. ``choices`` makes it a choice."""

    name: str
    label: str
    value: str = ""
    hint: str = ""
    choices: tuple[Choice, ...] = ()
    faults: tuple[str, ...] = ()
    length: bool = True
    """Is it a length? Then it is short, and a phone offers figures."""

    @property
    def id(self) -> str:
        """Its id on the page.

        >>> Field(name="rafters[0].length", label="Rafter").id
        'f-rafters-0-length'
        """
        return "f-" + re.sub(r"[^a-z0-9]+", "-", self.name.lower()).strip("-")


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultShown:
    """A fault in the list at the top: what, and the field it stands beside (empty: none)."""

    says: str
    field_id: str = ""


def fault_said(fault: Fault) -> str:
    """What to do about it, and what would be accepted.

    >>> fault_said(Fault("slope[0].across", "seven", "a length measured on a roof", "Write it like 4.905 m."))
    'Write it like 4.905 m. Wanted: a length measured on a roof.'
    >>> fault_said(Fault("slope[0].name", "nothing", "What this slope is called", "This is needed. Add it."))
    'This is needed: what this slope is called.'
    """
    if fault.given == "nothing" and fault.allowed:
        return f"This is needed: {fault.allowed[0].lower()}{fault.allowed[1:].rstrip('.')}."
    return f"{fault.do} Wanted: {fault.allowed.rstrip('.')}."


def placed(
    fields: Sequence[Field], faults: Iterable[Fault], *, under: str = ""
) -> tuple[tuple[Field, ...], tuple[FaultShown, ...]]:
    """The fields with their faults beside them, and all faults for the list at the top.

    ``under`` is the part of the document the form is for: a fault of ``slope[0].pitch`` belongs to the field ``pitch``
    of a form under ``slope[0]``.
    """
    beside: dict[str, list[str]] = {}
    listed: list[FaultShown] = []
    for fault in faults:
        path = fault.field.removeprefix(under).lstrip(".")
        field = next((each for each in fields if _belongs(path, each.name)), None)
        if field is None:
            listed.append(FaultShown(says=f"{place_said(path or fault.field)}: {fault_said(fault)}"))
            continue
        beside.setdefault(field.name, []).append(fault_said(fault))
        listed.append(FaultShown(says=f"{field.label}: {fault_said(fault)}", field_id=field.id))
    return tuple(replace(field, faults=tuple(beside.get(field.name, ()))) for field in fields), tuple(listed)


def _belongs(path: str, name: str) -> bool:
    """Is this path the field, a part of it, or the whole it is the first part of?"""
    return path == name or path.startswith((f"{name}.", f"{name}[")) or name.startswith((f"{path}.", f"{path}["))


def under_path(faults: Iterable[Fault], *parts: str) -> tuple[Fault, ...]:
    """The faults of these parts of the document.

    >>> [fault.field for fault in under_path([Fault("slope[1].pitch", "", "", ""), Fault("job.title", "", "", "")], "slope[1]")]
    ['slope[1].pitch']
    """
    return tuple(fault for fault in faults if any(_belongs(fault.field, part) for part in parts))


def typed(form: Mapping[str, str], name: str) -> str | None:
    """What was typed, without idle blanks; None for nothing."""
    return form.get(name, "").strip() or None


def lengths_typed(form: Mapping[str, str], name: str, *, allowed: Allowed) -> tuple[tuple[str, ...], tuple[Fault, ...]]:
    """Several lengths of one field, parted but not yet read; what could be one length or two is a fault of the field.

    >>> stock = Allowed(least_mm=1_200, greatest_mm=12_000, what="a length battens are sold in")
    >>> lengths_typed({"stock": "3.6 m, 4.8 m"}, "stock", allowed=stock)
    (('3.6 m', '4.8 m'), ())
    """
    listed = parted_lengths(typed(form, name) or "", greatest_mm=allowed.greatest_mm)
    clear = f"{allowed.what}, with a comma and a blank to the next"
    return listed.texts, tuple(Fault(name, each.text[:40], clear, f"It {each.reason}.") for each in listed.unclear)


def shown_length(value: Any) -> str:  # noqa: ANN401 - whatever a job file may hold
    """A length of a document as a field shows it: as typed, a bare number in mm.

    >>> shown_length("4.905 m"), shown_length(75), shown_length(None)
    ('4.905 m', '75 mm', '')
    """
    match value:
        case None:
            return ""
        case str():
            return value
        case bool() | list() | dict():
            return ""
        case _:
            return f"{value:g} mm"


def shown_lengths(value: Any) -> str:  # noqa: ANN401
    """A list of lengths of a document as one field shows it.

    >>> shown_lengths(["3.6 m", 4800])
    '3.6 m, 4800 mm'
    """
    return ", ".join(shown_length(each) for each in value) if isinstance(value, list) else ""


def table_of(document: Mapping[str, Any], key: str) -> dict[str, Any]:
    """A table of a document, a fresh copy; empty when it is not there or no table."""
    value = document.get(key)
    return dict(value) if isinstance(value, dict) else {}


def list_of(document: Mapping[str, Any], key: str) -> list[Any]:
    """A list of a document, a fresh copy; empty when it is not there or no list."""
    value = document.get(key)
    return list(value) if isinstance(value, list) else []


def with_keys(table: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """The table with some keys set; None takes a key out."""
    changed = {**table, **changes}
    return {key: value for key, value in changed.items() if value is not None}
