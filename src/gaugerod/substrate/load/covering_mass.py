"""The mass of a covering as laid, laps and all: from what is known of the unit, or else its typical band.

Source: units in each m² are 1 000 000 / (cover × gauge) (geometry); slates lie length / gauge deep (geometry), at the density
of a 19th-century handbook (published); typical bands (each with its basis). Scope: whole slopes at one gauge.
"""

from typing import assert_never

from gaugerod.basis.citation import Citation, house
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import Material, SingleLapTile
from gaugerod.standards.edition import Edition
from gaugerod.standards.roof_masses import LoadFigure, MassBand, TypicalMass, load_figure, typical_mass

Covering = SingleLapTile | PlainTile | SizedSlate | RandomSlates

PLAIN_BAND_GAUGE_MM = 100.0
"""The gauge the typical bands of plain tiles are for. A closer gauge takes more tiles, in proportion."""

_INTERLOCKING = {
    Material.CLAY: TypicalMass.CLAY_INTERLOCKING,
    Material.CONCRETE: TypicalMass.CONCRETE_INTERLOCKING,
}
_PLAIN = {Material.CLAY: TypicalMass.CLAY_PLAIN, Material.CONCRETE: TypicalMass.CONCRETE_PLAIN}
_SLATE = {Material.NATURAL_SLATE: TypicalMass.NATURAL_SLATE, Material.FIBRE_CEMENT: TypicalMass.FIBRE_CEMENT_SLATE}


def covering_mass(
    covering: Covering, *, gauge_mm: float, cover_mm: float | None, edition: Edition
) -> tuple[MassBand, str] | None:
    """The mass on the slope, and how it was come by in words; None where nothing is known of it.

    ``cover_mm`` is what one unit adds to a course, joint included; None: not known. Source and scope: see the head of this
    page.

    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> from dataclasses import replace
    >>> slate = replace(sized_slate("slate-500x250"), mass_kg=None, thickness_mm=5.0)
    >>> band, says = covering_mass(slate, gauge_mm=200.0, cover_mm=255.0, edition=Edition.GB)
    >>> band.least_kg_m2, says
    (35.0, 'thickness × density × length / gauge')
    """
    match covering:
        case RandomSlates():
            return None
        case SingleLapTile() | PlainTile() | SizedSlate():
            if covering.mass_kg is not None and cover_mm is not None:
                mass_kg_m2 = covering.mass_kg * 1e6 / (cover_mm * gauge_mm)
                return _known(mass_kg_m2, covering.citation), "mass of one unit × 1 000 000 / (cover × gauge)"
        case _ as unreachable:
            assert_never(unreachable)
    if isinstance(covering, SizedSlate) and covering.thickness_mm and covering.material is Material.NATURAL_SLATE:
        density = load_figure(edition, LoadFigure.SLATE_DENSITY)
        mass_kg_m2 = covering.thickness_mm / 1000 * density.value * covering.length_mm / gauge_mm
        return _known(mass_kg_m2, density.citation), "thickness × density × length / gauge"
    return _typical(covering, gauge_mm=gauge_mm, edition=edition)


def _known(mass_kg_m2: float, citation: Citation) -> MassBand:
    return MassBand(least_kg_m2=mass_kg_m2, greatest_kg_m2=mass_kg_m2, citation=citation)


def _typical(
    covering: SingleLapTile | PlainTile | SizedSlate, *, gauge_mm: float, edition: Edition
) -> tuple[MassBand, str] | None:
    match covering:
        case SingleLapTile():
            which = _INTERLOCKING.get(covering.material)
        case PlainTile():
            which = _PLAIN.get(covering.material)
        case SizedSlate():
            which = _SLATE.get(covering.material)
        case _ as unreachable:
            assert_never(unreachable)
    if which is None:
        return None
    band = typical_mass(edition, which)
    if not isinstance(covering, PlainTile):
        return band, "typical for this covering, as laid"
    more = PLAIN_BAND_GAUGE_MM / gauge_mm
    return (
        MassBand(
            least_kg_m2=band.least_kg_m2 * more, greatest_kg_m2=band.greatest_kg_m2 * more, citation=band.citation
        ),
        "typical for this covering at 100 mm gauge × 100 / gauge",
    )


def stated_mass(mass_kg_m2: float) -> MassBand:
    """A mass the person gives: weighed, or from the maker.

    >>> stated_mass(45.0).greatest_kg_m2
    45.0
    """
    return _known(mass_kg_m2, house("as given for this job"))
