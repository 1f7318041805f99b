"""Reads a table from its csv and toml, and refuses it when anything about it is not as described."""

import csv
import tomllib
from collections.abc import Mapping
from decimal import Decimal, InvalidOperation
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.errors import TableDamaged
from gaugerod.standards.table import BandColumns, Cell, Includes, Row, Table
from gaugerod.standards.table_checks import refuse_bad_bands, refuse_duplicates, refuse_wrong_seal

UNITS = ("mm", "m", "m2", "mm2", "deg", "kg", "kg_m2", "pa", "ratio", "count", "l_m2")
"""Units a column of numbers may have; its name ends with the unit. Two more words: ``word``, and ``by-row`` where
the column ``unit`` of the same table gives it row by row."""

OPEN = "open"
"""Written in a band's cell: the band has no end on this side."""

ABSENT = "-"
"""Written where the source prints no figure on purpose; only in columns that say what that means."""

BY_ROW = "by-row"
"""Written as the basis of a table whose rows have a source and a basis each."""

_NEEDED = {"document", "edition", "locus", "source", "basis", "scope", "interpolation", "columns", "seal"}
_ALLOWED = _NEEDED | {"bands"}


@cache
def load_table(name: str) -> Table:
    """A shipped table by its path below this folder, read once: ``gb/bs_5534_2014/batten_sections``.

    Raises TableDamaged when the table does not match its own description and seal.

    >>> table = load_table("gb/bs_5534_2014/batten_sections")
    >>> table.locus, table.row_in_band("support_spacing", 600.0, covering="tile-single-lap").number("width_mm")
    ('Table 3', 50.0)
    """
    folder = files("gaugerod.standards")
    return read_table(
        name,
        description=folder.joinpath(f"{name}.toml").read_text(encoding="utf-8"),
        printed=folder.joinpath(f"{name}.csv").read_text(encoding="utf-8"),
    )


def read_table(name: str, *, description: str, printed: str) -> Table:
    """A table from the texts of its toml (``description``) and csv (``printed``). Raises TableDamaged."""
    about = _about(name, description)
    columns, absent, keys = _columns(name, about["columns"])
    bands = _bands(name, about.get("bands", {}), columns)
    lines = _lines(name, printed, tuple(columns))
    may_be_open = {end for band in bands.values() for end in (band.from_column, band.to_column)}
    numbers: dict[str, list[Decimal]] = {column: [] for column, unit in columns.items() if unit != "word"}
    rows = []
    for at, line in enumerate(lines, start=1):
        cells: dict[str, Cell] = {}
        for column, text in line.items():
            if column not in numbers:
                cells[column] = text
            elif (text == OPEN and column in may_be_open) or (text == ABSENT and column in absent):
                cells[column] = None
            else:
                number = _number(name, text, where=f"row {at}, {column}")
                numbers[column].append(number)
                cells[column] = float(number)
        rows.append(Row(cells=MappingProxyType(cells), citation=_citation(name, about, line, where=f"row {at}")))
    refuse_wrong_seal(name, about["seal"], rows_count=len(rows), numbers=numbers)
    refuse_duplicates(name, rows, keys=keys, bands=tuple(bands.values()))
    refuse_bad_bands(name, rows, keys=keys, bands=tuple(bands.values()))
    return Table(
        name=name,
        document=about["document"],
        edition=about["edition"],
        locus=about["locus"],
        scope=about["scope"],
        interpolation=about["interpolation"],
        citation=Citation(source=about["source"], basis=_basis_of_whole(about)),
        columns=columns,
        keys=keys,
        bands=bands,
        rows=tuple(rows),
    )


def _about(name: str, description: str) -> dict[str, Any]:
    try:
        about = tomllib.loads(description)
    except tomllib.TOMLDecodeError as wrong:
        raise TableDamaged(name, f"the description cannot be read: {wrong}") from wrong
    if missing := sorted(_NEEDED - about.keys()):
        raise TableDamaged(name, f"the description does not state {', '.join(missing)}")
    if unknown := sorted(about.keys() - _ALLOWED):
        raise TableDamaged(name, f"the description has unknown keys: {', '.join(unknown)}")
    if not isinstance(about["interpolation"], bool):
        raise TableDamaged(name, f"interpolation must be true or false, not {about['interpolation']!r}")
    if about["basis"] not in {BY_ROW, *Basis}:
        raise TableDamaged(name, f"unknown basis {about['basis']!r}")
    if about["basis"] == BY_ROW and not {"source", "basis"} <= about["columns"].keys():
        raise TableDamaged(name, "the basis is by row, but there are no columns source and basis")
    return about


def _columns(name: str, described: Mapping[str, Any]) -> tuple[dict[str, str], set[str], tuple[str, ...]]:
    """The unit of each column, the columns that may be absent, and the key columns."""
    columns: dict[str, str] = {}
    for column, says in described.items():
        if not isinstance(says, dict):
            raise TableDamaged(name, f"column {column} is described by {says!r}, not by its unit")
        if unknown := sorted(says.keys() - {"unit", "key", "absent_means"}):
            raise TableDamaged(name, f"column {column} has unknown keys: {', '.join(unknown)}")
        unit = says.get("unit")
        if unit is None:
            raise TableDamaged(name, f"column {column} has no unit")
        if unit not in {"word", BY_ROW, *UNITS}:
            raise TableDamaged(name, f"column {column} has the unknown unit {unit!r}")
        if unit in UNITS and not column.endswith(f"_{unit}"):
            raise TableDamaged(name, f"column {column} is in {unit}, so its name must end with _{unit}")
        if unit == BY_ROW and "unit" not in described:
            raise TableDamaged(name, f"column {column} has its unit by row, but there is no column unit")
        columns[column] = unit
    absent = {column for column, says in described.items() if "absent_means" in says}
    keys = tuple(column for column, says in described.items() if says.get("key", False))
    return columns, absent, keys


def _bands(name: str, described: Mapping[str, Any], columns: Mapping[str, str]) -> dict[str, BandColumns]:
    bands = {}
    for band, says in described.items():
        if says.keys() != {"from", "to", "includes"}:
            raise TableDamaged(name, f"band {band} must state from, to and includes, and nothing else")
        if says["includes"] not in set(Includes):
            raise TableDamaged(name, f"band {band} includes its {says['includes']!r} end; say lower or upper")
        for end in (says["from"], says["to"]):
            if columns.get(end, "word") == "word":
                raise TableDamaged(name, f"band {band} stands on {end}, which is no column of numbers")
        bands[band] = BandColumns(
            name=band, from_column=says["from"], to_column=says["to"], includes=Includes(says["includes"])
        )
    return bands


def _lines(name: str, printed: str, columns: tuple[str, ...]) -> list[dict[str, str]]:
    try:
        lines = list(csv.reader(printed.splitlines(), strict=True))
    except csv.Error as wrong:
        raise TableDamaged(name, f"the csv cannot be read: {wrong}") from wrong
    header = tuple(lines[0]) if lines else ()
    if unknown := [column for column in header if column not in columns]:
        raise TableDamaged(name, f"unknown columns: {', '.join(unknown)}")
    if header != columns:
        raise TableDamaged(name, f"the columns must be {', '.join(columns)}, in this order")
    for at, line in enumerate(lines[1:], start=1):
        if len(line) != len(columns):
            raise TableDamaged(name, f"row {at} has {len(line)} cells, not {len(columns)}")
        for column, text in zip(columns, line, strict=True):
            if not text.strip():
                raise TableDamaged(name, f"row {at}, {column} is blank")
    return [dict(zip(columns, line, strict=True)) for line in lines[1:]]


def _number(name: str, text: str, *, where: str) -> Decimal:
    try:
        number = Decimal(text)
    except InvalidOperation as wrong:
        raise TableDamaged(name, f"{where} is not a number: {text!r}") from wrong
    if not number.is_finite():
        raise TableDamaged(name, f"{where} is not a number: {text!r}")
    return number


def _citation(name: str, about: Mapping[str, Any], line: Mapping[str, str], *, where: str) -> Citation:
    if about["basis"] != BY_ROW:
        return Citation(source=about["source"], basis=Basis(about["basis"]))
    if line["basis"] not in set(Basis):
        raise TableDamaged(name, f"{where} has the unknown basis {line['basis']!r}")
    return Citation(source=line["source"], basis=Basis(line["basis"]))


def _basis_of_whole(about: Mapping[str, Any]) -> Basis:
    """What stands beside "the table has no row for this": a table gathered row by row is our own gathering."""
    return Basis.HOUSE if about["basis"] == BY_ROW else Basis(about["basis"])
