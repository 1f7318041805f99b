"""Two edits of one job from the same beginning, put together field by field; what both changed differently is asked.

A field is one measurement: a pitch given as rise and run, a band or a row of rafters is taken whole, never half from each.
Only the document, its headings, and tables with a name of their own (slopes, openings, buildings) are gone into.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Literal

from gaugerod.adapters.store.records import Document

Path = tuple[str, ...]
"""Where a field stands: ``("slope", "rear", "pitch")``; a table with a name is gone into by its name."""
Side = Literal["mine", "theirs"]


class Absent(Enum):
    """Stands for a field that one side does not have."""

    ABSENT = "not there"


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """A field that both changed, and not alike. ``Absent.ABSENT`` where a side took it out, or never had it."""

    path: Path
    base: object
    mine: object
    theirs: object


@dataclass(frozen=True, slots=True, kw_only=True)
class Merge:
    """The two edits together. ``document`` is None as long as a conflict is not chosen."""

    document: Document | None
    conflicts: tuple[Conflict, ...]


def merged(base: Document, mine: Document, theirs: Document, *, chosen: Mapping[Path, Side] | None = None) -> Merge:
    """Put both edits together. ``chosen`` answers conflicts found before: whose value stands, by the conflict's path.

    >>> base = {"job": {"title": "Row"}, "slope": [{"name": "rear", "pitch": "35°"}]}
    >>> mine = {"job": {"title": "Chapel Row"}, "slope": [{"name": "rear", "pitch": "35°"}]}
    >>> theirs = {"job": {"title": "Row"}, "slope": [{"name": "rear", "pitch": "36°"}]}
    >>> merged(base, mine, theirs).document
    {'job': {'title': 'Chapel Row'}, 'slope': [{'name': 'rear', 'pitch': '36°'}]}
    """
    merging = _Merging(chosen or {})
    document = merging.tables((), base, mine, theirs)
    return Merge(document=None if merging.conflicts else document, conflicts=tuple(merging.conflicts))


class _Merging:
    def __init__(self, chosen: Mapping[Path, Side]) -> None:
        self._chosen = chosen
        self.conflicts: list[Conflict] = []

    def tables(self, path: Path, base: Document, mine: Document, theirs: Document) -> Document:
        """The fields of three tables together, in my order, then what only the others have."""
        return self._together(path, list(dict.fromkeys([*mine, *theirs])), base, mine, theirs)

    def _together(self, path: Path, keys: list[str], base: Document, mine: Document, theirs: Document) -> Document:
        fields = {
            key: self._field((*path, key), *(table.get(key, Absent.ABSENT) for table in (base, mine, theirs)))
            for key in keys
        }
        return {key: value for key, value in fields.items() if value is not Absent.ABSENT}

    def _field(self, path: Path, base: object, mine: object, theirs: object) -> object:
        if _same(mine, theirs) or _same(theirs, base):
            return mine
        if _same(mine, base):
            return theirs
        if len(path) == 1 and isinstance(mine, dict) and isinstance(theirs, dict):
            return self.tables(path, base if isinstance(base, dict) else {}, mine, theirs)
        tables = self._named_tables(path, base, mine, theirs)
        return self._chosen_one(path, base, mine, theirs) if tables is None else tables

    def _named_tables(self, path: Path, base: object, mine: object, theirs: object) -> list[object] | None:
        """Lists of tables with names, put together name by name; None when they are not, or both changed their order."""
        ours, others = _by_name(mine), _by_name(theirs)
        before = {} if base is Absent.ABSENT else _by_name(base)
        if before is None or ours is None or others is None:
            return None
        names = _order(list(before), list(ours), list(others))
        if names is None:
            return None
        tables: list[object] = []
        for name in names:
            was, my, their = (tables_of.get(name, Absent.ABSENT) for tables_of in (before, ours, others))
            table = self._named_table((*path, name), was, my, their)
            if table is not Absent.ABSENT:
                tables.append(table)
        return tables

    def _named_table(self, path: Path, base: object, mine: object, theirs: object) -> object:
        if isinstance(base, dict) and isinstance(mine, dict) and isinstance(theirs, dict):
            return self.tables(path, base, mine, theirs)
        return self._field(path, base, mine, theirs)

    def _chosen_one(self, path: Path, base: object, mine: object, theirs: object) -> object:
        match self._chosen.get(path):
            case "mine":
                return mine
            case "theirs":
                return theirs
            case None:
                self.conflicts.append(Conflict(path=path, base=base, mine=mine, theirs=theirs))
                return mine


def _same(one: object, other: object) -> bool:
    """Written alike, the order of keys apart. Not ``==``: that takes true for 1."""
    if one is Absent.ABSENT or other is Absent.ABSENT:
        return one is other
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def _by_name(value: object) -> dict[str, object] | None:
    """The tables of a list by their names; None when it is no such list, or a name is there twice."""
    if not isinstance(value, list):
        return None
    names = [table["name"] for table in value if isinstance(table, dict) and isinstance(table.get("name"), str)]
    if len(names) < len(value) or len(set(names)) < len(names):
        return None
    return dict(zip(names, value, strict=True))


def _order(base: list[str], mine: list[str], theirs: list[str]) -> list[str] | None:
    """The names in the order of whoever changed it; None when both did, and not alike."""
    kept = {name for name in base if name in mine and name in theirs}
    was, my, their = ([name for name in names if name in kept] for names in (base, mine, theirs))
    if my not in (was, their) and their != was:
        return None
    first, then = (theirs, mine) if my == was else (mine, theirs)
    return list(dict.fromkeys([*first, *then]))
