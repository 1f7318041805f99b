"""Masses of coverings against handbooks. Each case names its source; none was computed here."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.coverings.underlay import Resistance, UnderlayRecord
from gaugerod.rules.recovering import recovering
from gaugerod.standards.edition import Edition
from gaugerod.standards.roof_masses import LoadFigure, TypicalMass, load_figure, typical_mass
from gaugerod.substrate.load.ask import LoadAsk, Timber, UnderlayLaid
from gaugerod.substrate.load.covering_mass import covering_mass, stated_mass
from gaugerod.substrate.load.weigh import GRAVITY_M_PER_S2, weigh

GB = Edition.GB
MEMBRANE = UnderlayRecord(
    title="membrane",
    roll_width_mm=1000.0,
    roll_length_mm=50000.0,
    resistance=Resistance.LOW,
    citation=house("no maker's"),
)
INCH_MM = 25.4
POUND_KG = 0.45359237
PER_FT2_KG_M2 = POUND_KG / 0.3048**2
"""One pound on a square foot, in kg/m²: by the definitions of pound and foot."""


def slate_kg_m2(*, thick_in: float, long_in: float, lap_in: float = 3.0) -> float:
    slate = replace(
        sized_slate("slate-500x250"), length_mm=long_in * INCH_MM, thickness_mm=thick_in * INCH_MM, mass_kg=None
    )
    found = covering_mass(slate, gauge_mm=(long_in - lap_in) / 2 * INCH_MM, cover_mm=None, edition=GB)
    assert found is not None
    return found[0].least_kg_m2


@pytest.mark.parametrize(
    ("thick_in", "printed_lb_ft2"),
    [
        # Kidder, Building Construction and Superintendence, table IV; the size of the slate is not printed.
        (3 / 16, 7.25),
        (1 / 4, 9.6),
    ],
)  # fmt: skip
def test_slates_of_12_to_20_inches_weigh_what_the_handbook_prints(thick_in: float, printed_lb_ft2: float) -> None:
    heaviest = slate_kg_m2(thick_in=thick_in, long_in=12.0) / PER_FT2_KG_M2
    lightest = slate_kg_m2(thick_in=thick_in, long_in=20.0) / PER_FT2_KG_M2
    assert lightest <= printed_lb_ft2 <= heaviest


def test_slates_lie_in_the_army_s_range() -> None:
    """Source: US Army TI 809-53 (1999) Table 8-1: slate of 3/16 to 1/4 in, 34 to 49 kg/m²."""
    assert 34.0 <= slate_kg_m2(thick_in=3 / 16, long_in=12.0) < slate_kg_m2(thick_in=1 / 4, long_in=12.0) <= 49.0


@pytest.mark.parametrize(
    ("least", "greatest"),
    [
        # Kidder table IV: plain tile, 11 to 14 lb/ft2.
        (11 * PER_FT2_KG_M2, 14 * PER_FT2_KG_M2),
        # US Army TI 809-53 (1999) Table 8-1: plain tile, 60 to 90 kg/m2.
        (60.0, 90.0),
    ],
)  # fmt: skip
def test_a_plain_tile_of_2_and_a_quarter_pounds_weighs_what_is_printed(least: float, greatest: float) -> None:
    """The tile: Britannica, 14th edition, Roofs: 10 1/2 × 6 1/2 in, 2 1/4 lb; laid at 4 in gauge."""
    tile = replace(plain_tile("clay-plain-265x165"), mass_kg=2.25 * POUND_KG)
    found = covering_mass(tile, gauge_mm=4 * INCH_MM, cover_mm=6.5 * INCH_MM, edition=GB)
    assert found is not None
    assert least <= found[0].least_kg_m2 <= greatest


def test_battens_weigh_what_the_page_prints() -> None:
    """Source: one page on roof loads: battens at 4 m to the m² make 0.025 kN/m². To half its last place."""
    batten = Timber(name="battens", width_mm=50.0, depth_mm=25.0, length_mm=4000.0)
    slate = sized_slate("slate-500x250")
    underlay = UnderlayLaid(record=MEMBRANE, laid_area_mm2=1e6)
    load = weigh(
        LoadAsk(
            where="rear", covering=slate, area_mm2=1e6, gauge_mm=250.0, cover_mm=255.0, edition=GB, timbers=(batten,),
            underlay=underlay,
        )
    )  # fmt: skip
    (battens,) = (part for part in load.parts if part.name == "battens")
    assert pytest.approx(0.025, abs=0.0005) == battens.mass.least_kg_m2 * GRAVITY_M_PER_S2 / 1000


def test_fibre_cement_slate_is_0_21_kn_m2() -> None:
    """Source: a professional development article of 2011."""
    band = typical_mass(GB, TypicalMass.FIBRE_CEMENT_SLATE)
    assert band.least_kg_m2 <= 0.21 / GRAVITY_M_PER_S2 * 1000 <= band.greatest_kg_m2


def test_one_council_asks_at_10_per_cent_heavier_or_lighter() -> None:
    """Source: a London borough council's note on recovering roofs."""
    warn, significant = load_figure(GB, LoadFigure.RECOVER_WARN), load_figure(GB, LoadFigure.RECOVER_SIGNIFICANT)
    for new_kg_m2, verdicts in (
        (110.0, [Verdict.WITHIN, Verdict.WITHIN]),
        (110.1, [Verdict.OUTSIDE, Verdict.WITHIN]),
        (90.0, [Verdict.WITHIN, Verdict.WITHIN]),
        (89.9, [Verdict.WITHIN, Verdict.OUTSIDE]),
    ):
        found = recovering(
            where="rear", new=stated_mass(new_kg_m2), old=stated_mass(100.0), warn=warn, significant=significant
        )
        assert verdicts == [finding.verdict for finding in found[1:]]
