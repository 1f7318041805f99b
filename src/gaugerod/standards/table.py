"""The shape of a printed table, and the two ways of looking a row up in it."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from math import isfinite
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.errors import TableDamaged

Cell = float | str | None
"""A number in its column's unit, a word, or None: an open end of a band, or a cell printed empty on purpose."""


class Includes(StrEnum):
    """Which end of a band belongs to it: 450 in ``over 450 to 600`` belongs to the band below."""

    LOWER = "lower"
    UPPER = "upper"


@dataclass(frozen=True, slots=True, kw_only=True)
class BandColumns:
    """Two columns that give a band, open ends allowed, and the end that is included."""

    name: str
    from_column: str
    to_column: str
    includes: Includes


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One printed row, with where it comes from."""

    cells: Mapping[str, Cell]
    citation: Citation

    def number(self, column: str) -> float:
        """The number in a column, in the unit its name ends with. LookupError when there is none."""
        cell = self.cells[column]
        if isinstance(cell, float):
            return cell
        raise LookupError(f"no number in {column}: {cell!r}")

    def number_or_none(self, column: str) -> float | None:
        """The number in a column; None at an open end or where the table prints no figure."""
        return None if self.cells[column] is None else self.number(column)

    def word(self, column: str) -> str:
        """The word in a column. LookupError when there is none."""
        cell = self.cells[column]
        if isinstance(cell, str):
            return cell
        raise LookupError(f"no word in {column}: {cell!r}")


@dataclass(frozen=True, slots=True, kw_only=True)
class OffTable:
    """The table has no row for this: ``says`` names the table's scope. Nothing is extrapolated."""

    says: str
    citation: Citation


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """One printed table. ``keys`` are the columns that, with the bands, name a row."""

    name: str
    document: str
    edition: str
    locus: str
    scope: str
    interpolation: bool
    citation: Citation
    columns: Mapping[str, str]
    keys: tuple[str, ...]
    bands: Mapping[str, BandColumns]
    rows: tuple[Row, ...]

    def rows_where(self, **words: str) -> tuple[Row, ...]:
        """All rows whose columns hold these words, in printed order."""
        return tuple(row for row in self.rows if all(row.cells[column] == word for column, word in words.items()))

    def row_where(self, **words: str) -> Row | OffTable:
        """The one row whose columns hold these words. LookupError when the words leave several."""
        found = self.rows_where(**words)
        if len(found) > 1:
            raise LookupError(f"table {self.name} has {len(found)} rows for {words}")
        return found[0] if found else self._off(_as_words(words))

    def own_row(self, **words: str) -> Row:
        """The one row that this program itself relies on. TableDamaged when the table has lost it."""
        found = self.row_where(**words)
        if not isinstance(found, Row):
            raise TableDamaged(self.name, found.says)
        return found

    def row_in_band(self, band: str, at: float, **words: str) -> Row | OffTable:
        """The row whose band holds ``at`` (in the band's own unit) and whose columns hold these words."""
        columns = self.bands[band]
        found = [row for row in self.rows_where(**words) if _holds(row, columns, at)]
        if len(found) > 1:
            raise LookupError(f"table {self.name} has {len(found)} rows for {band} {at} and {words}")
        return found[0] if found else self._off(f"{band} {at:g}{', ' if words else ''}{_as_words(words)}")

    def _off(self, asked: str) -> OffTable:
        return OffTable(says=f"no row for {asked}; the table covers: {self.scope}", citation=self.citation)


def _as_words(words: Mapping[str, str]) -> str:
    return ", ".join(f"{column} {word}" for column, word in words.items())


def _holds(row: Row, band: BandColumns, at: float) -> bool:
    lower, upper = row.number_or_none(band.from_column), row.number_or_none(band.to_column)
    match band.includes:
        case Includes.LOWER:
            above_lower, below_upper = lower is None or at >= lower, upper is None or at < upper
        case Includes.UPPER:
            above_lower, below_upper = lower is None or at > lower, upper is None or at <= upper
        case _ as unreachable:
            assert_never(unreachable)
    return isfinite(at) and above_lower and below_upper
