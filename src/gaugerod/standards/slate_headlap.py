"""The least headlap of natural slates: two reproductions of one printed table, read apart and never averaged."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.loader import load_table
from gaugerod.standards.table import OffTable, Row, Table

FOLDER = "gb/bs_5534_1997_reproduced"
SAME_SIZE_MM = 10.0
"""A slate up to this much longer and wider than a printed size is read as that size: a 510 × 255 as a 500 × 250
(house: the old inch sizes and the metric ones that took their place)."""


class Reading(StrEnum):
    """Which reproduction of the table answers. ``safer``: the larger lap of the two, and "not recommended" before any."""

    FIRST = "first"
    SECOND = "second"
    SAFER = "safer"


class BetweenPitches(StrEnum):
    """How the table is read between two printed pitches: at the lower one (safer), or on the line between them."""

    NEXT_LOWER = "next-lower"
    INTERPOLATED = "interpolated"


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedLap:
    """What one reproduction prints for a size at a pitch.

    ``headlap_mm``           None where it prints a dash: the size is not recommended at this pitch
    ``recommended_from_deg`` the least pitch at which it prints a lap for this size
    """

    size: str
    headlap_mm: float | None
    recommended_from_deg: float
    citation: Citation


def slate_headlap(
    *,
    length_mm: float,
    width_mm: float,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    reading: Reading = Reading.SAFER,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> PrintedLap | OffTable:
    """The least headlap of a centre-nailed natural slate, mm.

    Source: BS 5534:1997 headlap tables as reproduced by suppliers (published); the code of 2003 and after calculates
    instead. Scope: printed sizes, 20 degrees and over. Outside it the answer is that there is no row.

    >>> def severe(reading):
    ...     return slate_headlap(length_mm=600.0, width_mm=300.0, pitch_deg=32.0, exposure=Exposure.SEVERE,
    ...                          edition=Edition.GB, reading=reading).headlap_mm
    >>> [severe(reading) for reading in Reading]
    [100.0, 120.0, 120.0]
    >>> low = slate_headlap(length_mm=400.0, width_mm=200.0, pitch_deg=29.9, exposure=Exposure.MODERATE,
    ...                     edition=Edition.GB)
    >>> low.size, low.headlap_mm
    ('400x200', None)
    """
    match reading:
        case Reading.FIRST | Reading.SECOND:
            return _lap(_table(edition, exposure, reading), length_mm, width_mm, pitch_deg, between)
        case Reading.SAFER:
            found = printed_laps(
                length_mm=length_mm,
                width_mm=width_mm,
                pitch_deg=pitch_deg,
                exposure=exposure,
                edition=edition,
                between=between,
            )
            if not found:
                return _lap(_table(edition, exposure, Reading.FIRST), length_mm, width_mm, pitch_deg, between)
            return max(found, key=lambda lap: float("inf") if lap.headlap_mm is None else lap.headlap_mm)
        case _ as unreachable:
            assert_never(unreachable)


def printed_laps(
    *,
    length_mm: float,
    width_mm: float,
    pitch_deg: float,
    exposure: Exposure,
    edition: Edition,
    between: BetweenPitches = BetweenPitches.NEXT_LOWER,
) -> tuple[PrintedLap, ...]:
    """What every reproduction that has the size says, first to second: to be shown side by side.

    >>> [lap.headlap_mm for lap in printed_laps(length_mm=500.0, width_mm=250.0, pitch_deg=25.0,
    ...                                         exposure=Exposure.MODERATE, edition=Edition.GB)]
    [95.0, 100.0]
    """
    read = (
        _lap(_table(edition, exposure, each), length_mm, width_mm, pitch_deg, between)
        for each in (Reading.FIRST, Reading.SECOND)
    )
    return tuple(lap for lap in read if isinstance(lap, PrintedLap))


def _table(edition: Edition, exposure: Exposure, reading: Reading) -> Table:
    match edition:
        case Edition.GB:
            folder = FOLDER
        case _ as unreachable:
            assert_never(unreachable)
    match exposure:
        case Exposure.SHELTERED | Exposure.MODERATE:
            return load_table(f"{folder}/slate_headlap_moderate_{reading.value}")
        case Exposure.SEVERE | Exposure.VERY_SEVERE:
            return load_table(f"{folder}/slate_headlap_severe_{reading.value}")
        case _ as never:
            assert_never(never)


def _lap(
    table: Table, length_mm: float, width_mm: float, pitch_deg: float, between: BetweenPitches
) -> PrintedLap | OffTable:
    size = next(_sizes(table, length_mm, width_mm), None)
    if size is None:
        says = f"no row for slates {length_mm:g} × {width_mm:g} mm; the table covers: {table.scope}"
        return OffTable(says=says, citation=table.citation)
    row = table.row_in_band("pitch", pitch_deg, size=size)
    if isinstance(row, OffTable):
        return row
    headlap_mm = row.number_or_none("headlap_mm")
    if headlap_mm is not None and between is BetweenPitches.INTERPOLATED:
        headlap_mm = _on_the_line_mm(table, row, headlap_mm, pitch_deg)
    recommended_from_deg = min(
        each.number("pitch_from_deg")
        for each in table.rows_where(size=size)
        if each.number_or_none("headlap_mm") is not None
    )
    return PrintedLap(
        size=size, headlap_mm=headlap_mm, recommended_from_deg=recommended_from_deg, citation=row.citation
    )


def _sizes(table: Table, length_mm: float, width_mm: float) -> Iterator[str]:
    """Printed sizes this slate may be read as, the nearest first."""
    near: dict[str, float] = {}
    for row in table.rows:
        longer_mm, wider_mm = length_mm - row.number("length_mm"), width_mm - row.number("width_mm")
        if 0 <= longer_mm <= SAME_SIZE_MM and 0 <= wider_mm <= SAME_SIZE_MM:
            near[row.word("size")] = longer_mm + wider_mm
    return iter(sorted(near, key=lambda size: near[size]))


def _on_the_line_mm(table: Table, row: Row, headlap_mm: float, pitch_deg: float) -> float:
    """Between this printed pitch and the next; on the last one there is none, and its own lap holds."""
    next_row = table.row_in_band("pitch", row.number("pitch_to_deg"), size=row.word("size"))
    if isinstance(next_row, OffTable) or next_row.number_or_none("headlap_mm") is None:
        return headlap_mm
    from_deg, to_deg = row.number("pitch_from_deg"), row.number("pitch_to_deg")
    share = (pitch_deg - from_deg) / (to_deg - from_deg)
    return headlap_mm + share * (next_row.number("headlap_mm") - headlap_mm)
