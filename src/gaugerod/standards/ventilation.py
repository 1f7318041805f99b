"""Ventilation openings of pitched roofs, and the figures that choose between them, by edition."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class VentCase(StrEnum):
    """What one row of the openings is for."""

    HIGH_RESISTANCE = "high-resistance"
    HIGH_RESISTANCE_LOW_PITCH = "high-resistance-low-pitch"
    HIGH_RESISTANCE_HIGH_LEVEL = "high-resistance-high-level"
    LOW_RESISTANCE_DWELLING_SEALED = "low-resistance-dwelling-sealed"
    LOW_RESISTANCE_DWELLING_SEALED_INSTEAD = "low-resistance-dwelling-sealed-instead"
    LOW_RESISTANCE_DWELLING_NORMAL = "low-resistance-dwelling-normal"
    LOW_RESISTANCE_LARGER_SEALED = "low-resistance-larger-sealed"
    LOW_RESISTANCE_LARGER_NORMAL = "low-resistance-larger-normal"
    BATTEN_SPACE = "batten-space"
    NO_THROUGH_FLOW = "no-through-flow"
    WARM = "warm"


class VentFigure(StrEnum):
    """What a figure says of ventilation."""

    LOW_PITCH_TO = "low-pitch-to"
    STEEP_FROM = "steep-from"
    SPAN_FROM = "span-from"
    CLEAR_VOID = "clear-void"
    MESH_LEAST = "mesh-least"
    MESH_GREATEST = "mesh-greatest"


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningsStated:
    """The continuous openings one source states. None: it asks for none there."""

    eaves_mm: float | None
    high_mm: float | None
    citation: Citation


def openings_stated(edition: Edition, case: VentCase) -> OpeningsStated:
    """The openings at each eaves and at high level for one case, as the width of a continuous slot.

    >>> openings_stated(Edition.GB, VentCase.WARM).eaves_mm, openings_stated(Edition.GB, VentCase.WARM).high_mm
    (25.0, 5.0)
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/bs_5250_2021/roof_ventilation").own_row(name=case.value)
        case _ as unreachable:
            assert_never(unreachable)
    return OpeningsStated(
        eaves_mm=row.number_or_none("eaves_mm"), high_mm=row.number_or_none("high_mm"), citation=row.citation
    )


def vent_figure(edition: Edition, which: VentFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> vent_figure(Edition.GB, VentFigure.LOW_PITCH_TO).value
    15.0
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/bs_5250_2021/ventilation_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
