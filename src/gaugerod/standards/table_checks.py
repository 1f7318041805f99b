"""What a table must keep as a whole: its seal, no row twice, no gap and no overlap between bands."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from decimal import Decimal
from itertools import pairwise
from typing import Any

from gaugerod.basis.errors import TableDamaged
from gaugerod.standards.table import BandColumns, Cell, Row


def refuse_wrong_seal(
    name: str, seal: Mapping[str, Any], *, rows_count: int, numbers: Mapping[str, Sequence[Decimal]]
) -> None:
    """The seal states the count of rows and the sum of every column of numbers. Raises TableDamaged."""
    if seal.keys() != {"rows", *numbers}:
        raise TableDamaged(name, f"the seal must state {', '.join(['rows', *numbers])}, and nothing else")
    if not all(isinstance(total, (int, float)) for total in seal.values()):
        raise TableDamaged(name, "the seal holds something that is no number")
    if seal["rows"] != rows_count:
        raise TableDamaged(name, f"the seal says {seal['rows']} rows, there are {rows_count}")
    for column, cells in numbers.items():
        total = sum(cells, start=Decimal(0))
        if Decimal(str(seal[column])) != total:
            raise TableDamaged(name, f"the seal says {column} sums to {seal[column]}, it sums to {total}")


def refuse_duplicates(name: str, rows: Sequence[Row], *, keys: Sequence[str], bands: Sequence[BandColumns]) -> None:
    """No two rows answer to the same words and the same foot of each band. Raises TableDamaged."""
    seen: set[tuple[Cell, ...]] = set()
    for at, row in enumerate(rows, start=1):
        named = tuple(row.cells[column] for column in (*keys, *(band.from_column for band in bands)))
        if named in seen:
            raise TableDamaged(name, f"row {at} repeats {', '.join(str(cell) for cell in named)}")
        seen.add(named)


def refuse_bad_bands(name: str, rows: Sequence[Row], *, keys: Sequence[str], bands: Sequence[BandColumns]) -> None:
    """Under the same words, each band begins where the one before it ends. Raises TableDamaged."""
    for band in bands:
        others = [other.from_column for other in bands if other is not band]
        ladders: dict[tuple[Cell, ...], list[tuple[float, float]]] = defaultdict(list)
        for row in rows:
            ladders[tuple(row.cells[column] for column in (*keys, *others))].append(_ends(row, band))
        for ladder in ladders.values():
            for lower, upper in ladder:
                if not lower < upper:
                    raise TableDamaged(name, f"band {band.name} runs backwards: {lower:g} to {upper:g}")
            for (_, end), (begin, _) in pairwise(sorted(ladder)):
                if begin < end:
                    raise TableDamaged(name, f"band {band.name} overlaps itself between {begin:g} and {end:g}")
                if begin > end:
                    raise TableDamaged(name, f"band {band.name} has a gap between {end:g} and {begin:g}")


def _ends(row: Row, band: BandColumns) -> tuple[float, float]:
    lower, upper = row.number_or_none(band.from_column), row.number_or_none(band.to_column)
    return (float("-inf") if lower is None else lower, float("inf") if upper is None else upper)
