"""Underlay: laps by pitch and support, figures for its edges and types, and the pressures of the wind zones, by edition."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table
from gaugerod.standards.table import OffTable


class UnderlayFigure(StrEnum):
    """What a figure says of underlay. One that ends in ``other`` is a second source that disagrees."""

    SIDE_LAP_LEAST = "side-lap-least"
    EAVES_CARRIER_LAP_LEAST = "eaves-carrier-lap-least"
    RIDGE_BEDDED_OVER_LEAST = "ridge-bedded-over-least"
    RIDGE_BEDDED_OVER_LEAST_STEEP = "ridge-bedded-over-least-steep"
    RIDGE_STEEP_FROM = "ridge-steep-from"
    RIDGE_DRY_STOP_SHORT = "ridge-dry-stop-short"
    RIDGE_DRY_STOP_SHORT_OTHER = "ridge-dry-stop-short-other"
    MONO_RIDGE_OVER_LEAST = "mono-ridge-over-least"
    MONO_RIDGE_OVER_LEAST_OTHER = "mono-ridge-over-least-other"
    HIP_PAST_LEAST = "hip-past-least"
    VALLEY_OVER_STRIP_LEAST = "valley-over-strip-least"
    VALLEY_STRIP_WIDTH = "valley-strip-width"
    ABUTMENT_TURN_UP_LEAST = "abutment-turn-up-least"
    DRAPE_NOMINAL = "drape-nominal"
    DRAPE_GREATEST = "drape-greatest"
    LOW_RESISTANCE_BELOW = "low-resistance-below"
    AIR_PERMEABLE_FROM = "air-permeable-from"
    AIR_PERMEABLE_FROM_OTHER = "air-permeable-from-other"
    ZONE_ALTITUDE_GREATEST = "zone-altitude-greatest"
    ZONE_RIDGE_GREATEST = "zone-ridge-greatest"
    ZONE_PITCH_LEAST = "zone-pitch-least"
    ZONE_PITCH_GREATEST = "zone-pitch-greatest"
    RAFTER_WIDTH = "rafter-width"
    PIECE_LEAST = "piece-least"
    LAP_GREATEST_SHARE = "lap-greatest-share"


@dataclass(frozen=True, slots=True, kw_only=True)
class LapStatement:
    """What one source says of the horizontal lap, beside the table."""

    lap_mm: float
    says: str
    citation: Citation


def underlay_figure(edition: Edition, which: UnderlayFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> underlay_figure(Edition.GB, UnderlayFigure.SIDE_LAP_LEAST).value
    100.0
    >>> underlay_figure(Edition.GB, UnderlayFigure.VALLEY_STRIP_WIDTH).citation.basis.value
    'memory'
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/underlay_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)


def underlay_lap_least(edition: Edition, *, pitch_deg: float, fully_supported: bool) -> Limit | OffTable:
    """The least horizontal lap at this pitch; OffTable below 12.5 degrees.

    Source: BS 5534 as quoted by an independent consultant (published). Scope: that of the table.

    >>> lap = underlay_lap_least(Edition.GB, pitch_deg=34.9, fully_supported=False)
    >>> lap.value, underlay_lap_least(Edition.GB, pitch_deg=35.0, fully_supported=False).value
    (150.0, 100.0)
    """
    match edition:
        case Edition.GB:
            table = load_table("gb/bs_5534_2014/underlay_laps")
        case _ as unreachable:
            assert_never(unreachable)
    row = table.row_in_band("pitch", pitch_deg, support="supported" if fully_supported else "unsupported")
    return row if isinstance(row, OffTable) else Limit(value=row.number("lap_mm"), unit="mm", citation=row.citation)


def underlay_lap_statements(edition: Edition, *, pitch_deg: float, fully_supported: bool) -> tuple[LapStatement, ...]:
    """What other sources say of the horizontal lap at this pitch. They simplify, and disagree; each is shown.

    >>> [said.lap_mm for said in underlay_lap_statements(Edition.GB, pitch_deg=35.0, fully_supported=True)]
    [100.0, 75.0]
    """
    match edition:
        case Edition.GB:
            table = load_table("gb/trade_practice_2026/underlay_lap_statements")
        case _ as unreachable:
            assert_never(unreachable)
    found = []
    for row in table.rows:
        of_support = row.word("support") in {"any", "supported" if fully_supported else "unsupported"}
        if of_support and row.number("pitch_from_deg") <= pitch_deg < row.number("pitch_to_deg"):
            found.append(LapStatement(lap_mm=row.number("lap_mm"), says=row.word("says"), citation=row.citation))
    return tuple(found)


def underlay_zone_pressure(edition: Edition, *, zone: int) -> Limit | OffTable:
    """The design wind pressure on unsupported underlay in one of the zones 1 to 5.

    Source: BS 5534 Annex A as quoted in print (published). Scope: sites inside the gates of the zones.

    >>> underlay_zone_pressure(Edition.GB, zone=1).value, underlay_zone_pressure(Edition.GB, zone=5).value
    (820.0, 1600.0)
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/bs_5534_2014/underlay_zone_pressures").row_where(zone=str(zone))
        case _ as unreachable:
            assert_never(unreachable)
    if isinstance(row, OffTable):
        return row
    return Limit(value=row.number("pressure_pa"), unit="Pa", citation=row.citation)
