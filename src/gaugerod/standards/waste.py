"""Allowances for waste and breakage, by edition."""

from enum import StrEnum
from typing import assert_never

from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class WasteFigure(StrEnum):
    """What an allowance is for. Flat ones are taken on the area, cutting and breakage together."""

    FLAT_SIZED_SLATES = "flat-sized-slates"
    FLAT_RANDOM_SLATES = "flat-random-slates"
    FLAT_TILES = "flat-tiles"
    FLAT_MANY_HIPS_LEAST = "flat-many-hips-least"
    FLAT_MANY_HIPS_GREATEST = "flat-many-hips-greatest"
    BREAKAGE = "breakage"
    FIXINGS_DROPPED = "fixings-dropped"
    LINE_UNITS_BREAKAGE = "line-units-breakage"
    MORTAR_LOST = "mortar-lost"
    TIMBER_BY_THE_METRE = "timber-by-the-metre"
    ROLLS_BY_THE_METRE = "rolls-by-the-metre"


def waste_figure(edition: Edition, which: WasteFigure) -> Limit:
    """One allowance, per cent, with where it comes from.

    >>> print(waste_figure(Edition.GB, WasteFigure.FLAT_SIZED_SLATES))
    2.5 percent (handbook of roof coverings: 2.5 per cent on sized slates; taken as cutting and breakage together (published))
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/waste").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
