"""The catalogue: generic records, no maker's. A job starts from one and may override every field."""

import tomllib
from collections.abc import Mapping
from difflib import get_close_matches
from functools import cache
from importlib.resources import files
from typing import Any

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.errors import Fault, InputRefused, TableDamaged
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.coverings.single_lap_fields import SINGLE_LAP_FIELDS, Plain, single_lap_from, written_name

GENERIC = Citation(source="generic record, not a maker's; check against the tile in your hand", basis=Basis.HOUSE)


@cache
def catalogue() -> tuple[SingleLapTile, ...]:
    """Every generic record, by name. Raises TableDamaged when a shipped record is not sound.

    >>> [tile.name for tile in catalogue()][:2]
    ['clay-pantile-340x240', 'flat-interlocking-420x330']
    """
    records = (record for record in files("gaugerod.coverings").joinpath("records").iterdir())
    named = sorted((record.name.removesuffix(".toml"), record) for record in records if record.name.endswith(".toml"))
    return tuple(read_record(name, record.read_text(encoding="utf-8")) for name, record in named)


def covering(name: str) -> SingleLapTile:
    """The generic record of this name. Raises InputRefused with the names there are and the nearest.

    >>> covering("flat-interlocking-420x330").gauge_max_mm
    345.0
    """
    for record in catalogue():
        if record.name == name:
            return record
    names = [record.name for record in catalogue()]
    raise InputRefused([_unknown("covering.from", name, names)])


def override(record: SingleLapTile, changes: Mapping[str, Plain]) -> SingleLapTile:
    """The record with some fields changed, checked as a whole; its citation says which were changed.

    ``changes`` is by field name with the unit (``headlap_min_mm``), lengths in mm. Raises InputRefused with all faults.

    >>> tile = override(covering("flat-interlocking-420x330"), {"headlap_min_mm": 100.0})
    >>> tile.gauge_max_mm, tile.citation.source
    (320.0, "generic record, not a maker's; check against the tile in your hand; given in the job: headlap_min")
    """
    if not changes:
        return record
    known = {field: value for field, value in changes.items() if field in SINGLE_LAP_FIELDS}
    faults = [_unknown(f"covering.{field}", field, SINGLE_LAP_FIELDS) for field in changes if field not in known]
    given = ", ".join(written_name(field) for field in known)
    citation = Citation(source=f"{record.citation.source}; given in the job: {given}", basis=record.citation.basis)
    try:
        changed = single_lap_from(
            {field: getattr(record, field) for field in SINGLE_LAP_FIELDS} | known,
            citation=citation,
            measured=record.measured - known.keys(),
        )
    except InputRefused as refused:
        raise InputRefused([*faults, *refused.faults]) from None
    if faults:
        raise InputRefused(faults)
    return changed


def read_record(name: str, text: str) -> SingleLapTile:
    """A record from the text of its file. ``family`` says which kind of covering it is. Raises TableDamaged."""
    try:
        values: dict[str, Any] = tomllib.loads(text)
    except tomllib.TOMLDecodeError as wrong:
        raise TableDamaged(name, f"the record cannot be read: {wrong}") from wrong
    family = values.pop("family", None)
    if family != "single-lap":
        raise TableDamaged(name, f"unknown family {family!r}")
    if unknown := sorted(values.keys() - set(SINGLE_LAP_FIELDS)):
        raise TableDamaged(name, f"unknown fields: {', '.join(unknown)}")
    try:
        return single_lap_from({"name": name, **values}, citation=GENERIC)
    except InputRefused as wrong:
        raise TableDamaged(name, str(wrong)) from wrong


def _unknown(field: str, given: str, names: "list[str] | tuple[str, ...]") -> Fault:
    nearest = get_close_matches(given, names, n=1, cutoff=0.0)
    return Fault(field=field, given=given, allowed=", ".join(names), do=f"Did you mean {nearest[0]}?")
