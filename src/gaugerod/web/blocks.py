"""Blocks of a sheet as a page shows them: headings, sentences and tables; boxes to tick stay on paper."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from gaugerod.sheets.sheet import Block, Bullets, ColumnKind, Heading, Prose, Steps, Table


@dataclass(frozen=True, slots=True, kw_only=True)
class TableShown:
    """A table: its caption, headings and rows; ``strong_every`` names the rows that stand out (0: none)."""

    caption: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    strong_every: int = 0
    mark_columns: tuple[int, ...] = ()
    """The columns of marks to be read at arm's length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartShown:
    """A heading with what follows it."""

    heading: str
    says: tuple[str, ...]
    tables: tuple[TableShown, ...]


def parts_shown(blocks: Iterable[Block]) -> tuple[PartShown, ...]:
    """The blocks, gathered under their headings."""
    return tuple(_parts(blocks))


def _parts(blocks: Iterable[Block]) -> Iterator[PartShown]:
    heading, says, tables = "", list[str](), list[TableShown]()
    for block in blocks:
        match block:
            case Heading():
                if says or tables:
                    yield PartShown(heading=heading, says=tuple(says), tables=tuple(tables))
                heading, says, tables = block.text, [], []
            case Prose():
                says.append(block.text)
            case Steps() | Bullets():
                says.extend(block.lines)
            case Table():
                tables.append(_table(block, caption=heading))
            case _:
                pass  # pictures and page breaks are the paper's own
    if says or tables:
        yield PartShown(heading=heading, says=tuple(says), tables=tuple(tables))


def _table(table: Table, *, caption: str) -> TableShown:
    kept = [index for index, column in enumerate(table.columns) if column.kind is not ColumnKind.TICK]
    return TableShown(
        caption=caption,
        headings=tuple(table.columns[index].heading for index in kept),
        rows=tuple(tuple(row[index] for index in kept) for row in table.rows),
        strong_every=table.set_count,
        mark_columns=tuple(at for at, index in enumerate(kept) if table.columns[index].kind is ColumnKind.MARK),
    )
