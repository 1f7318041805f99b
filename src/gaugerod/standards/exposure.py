"""Driving-rain exposure: what each class means in litres, and which class a spell falls in."""

from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.citation import Citation
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.loader import load_table
from gaugerod.standards.table import OffTable, Table


@dataclass(frozen=True, slots=True, kw_only=True)
class SpellBand:
    """The driving rain of one class, per square metre per spell: from (included) to (not included).

    ``spell_to_l_m2`` is None where the class has no upper end.
    """

    exposure: Exposure
    spell_from_l_m2: float
    spell_to_l_m2: float | None
    citation: Citation


def spell_band(edition: Edition, exposure: Exposure) -> SpellBand:
    """The driving rain one exposure class stands for.

    Source: a supplier-hosted headlap table (published). Scope: United Kingdom.

    >>> spell_band(Edition.GB, Exposure.MODERATE).spell_to_l_m2
    56.5
    """
    row = _classes(edition).own_row(exposure=exposure.value)
    return SpellBand(
        exposure=exposure,
        spell_from_l_m2=row.number("spell_from_l_m2"),
        spell_to_l_m2=row.number_or_none("spell_to_l_m2"),
        citation=row.citation,
    )


def exposure_of_spell(edition: Edition, *, spell_l_m2: float) -> Exposure | OffTable:
    """The exposure class of a spell of driving rain.

    >>> exposure_of_spell(Edition.GB, spell_l_m2=56.4), exposure_of_spell(Edition.GB, spell_l_m2=56.5)
    (<Exposure.MODERATE: 'moderate'>, <Exposure.SEVERE: 'severe'>)
    """
    row = _classes(edition).row_in_band("spell", spell_l_m2)
    return row if isinstance(row, OffTable) else Exposure(row.word("exposure"))


def _classes(edition: Edition) -> Table:
    match edition:
        case Edition.GB:
            return load_table("gb/trade_practice_2026/exposure_classes")
        case _ as unreachable:
            assert_never(unreachable)
