"""Typical masses of coverings, densities, and how much a re-covered roof may change in mass, by edition."""

from dataclasses import dataclass
from enum import StrEnum
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.basis.limit import Limit
from gaugerod.standards.edition import Edition
from gaugerod.standards.loader import load_table


class TypicalMass(StrEnum):
    """The coverings, and the layers below them, that have a typical mass."""

    FIBRE_CEMENT_SLATE = "fibre-cement-slate"
    NATURAL_SLATE = "natural-slate"
    CONCRETE_INTERLOCKING = "concrete-interlocking"
    CLAY_INTERLOCKING = "clay-interlocking"
    CLAY_PLAIN = "clay-plain"
    CONCRETE_PLAIN = "concrete-plain"
    STONE_SLATE = "stone-slate"
    UNDERLAY_LOW_RESISTANCE = "underlay-low-resistance"
    UNDERLAY_HIGH_RESISTANCE = "underlay-high-resistance"
    BATTENS_AND_UNDERLAY = "battens-and-underlay"


class LoadFigure(StrEnum):
    """What a figure says of the load of a roof."""

    SLATE_DENSITY = "slate-density"
    BATTEN_DENSITY = "batten-density"
    RECOVER_SIGNIFICANT = "recover-significant"
    RECOVER_WARN = "recover-warn"


@dataclass(frozen=True, slots=True, kw_only=True)
class MassBand:
    """A mass on the slope, from least to greatest; both the same where it was reckoned from known figures."""

    least_kg_m2: float
    greatest_kg_m2: float
    citation: Citation


def typical_mass(edition: Edition, which: TypicalMass) -> MassBand:
    """The typical mass of a covering as laid, or of what lies under it.

    >>> band = typical_mass(Edition.GB, TypicalMass.FIBRE_CEMENT_SLATE)
    >>> band.least_kg_m2, band.greatest_kg_m2, band.citation.basis.value
    (20.0, 22.0, 'published')
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/roof_masses").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return MassBand(
        least_kg_m2=row.number("least_kg_m2"), greatest_kg_m2=row.number("greatest_kg_m2"), citation=row.citation
    )


def load_figure(edition: Edition, which: LoadFigure) -> Limit:
    """One figure, in its own unit, with where it comes from.

    >>> str(load_figure(Edition.GB, LoadFigure.RECOVER_SIGNIFICANT).citation.basis)
    'memory'
    """
    match edition:
        case Edition.GB:
            row = load_table("gb/trade_practice_2026/load_figures").own_row(name=which.value)
        case _ as unreachable:
            assert_never(unreachable)
    return Limit(value=row.number("figure"), unit=row.word("unit"), citation=row.citation)
