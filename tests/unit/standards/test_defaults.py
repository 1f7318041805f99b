"""The defaults: each has a value, a unit and a source, and says how sure it is."""

from collections.abc import Callable
from math import inf, nan

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Basis
from gaugerod.basis.limit import Limit
from gaugerod.standards import defaults
from gaugerod.standards.defaults import Tolerance, tolerance
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.exposure import exposure_of_spell, spell_band
from gaugerod.standards.table import OffTable

LIMITS: dict[Callable[[Edition], Limit], tuple[float, str, Basis]] = {
    defaults.single_lap_headlap_least: (75.0, "mm", Basis.PUBLISHED),
    defaults.single_lap_pitch_least: (30.0, "deg", Basis.PUBLISHED),
    defaults.ridge_cover_least: (75.0, "mm", Basis.PUBLISHED),
    defaults.top_flashing_cover_least: (150.0, "mm", Basis.PUBLISHED),
    defaults.perps_every_count: (3.0, "count", Basis.PUBLISHED),
    defaults.minimum_cut: (0.5, "ratio", Basis.PUBLISHED),
}
BANDS: dict[Callable[[Edition], Band], tuple[float, float, Basis]] = {
    defaults.eaves_overhang_band: (45.0, 55.0, Basis.COMMON_PRACTICE),
    defaults.verge_overhang_band: (38.0, 50.0, Basis.PUBLISHED),
    defaults.top_batten_band: (25.0, 50.0, Basis.COMMON_PRACTICE),
    defaults.abutment_set_back_band: (5.0, 15.0, Basis.HOUSE),
}


@pytest.mark.parametrize(("ask", "answer"), LIMITS.items())
def test_a_limit_has_its_unit_and_says_how_sure_it_is(
    ask: Callable[[Edition], Limit], answer: tuple[float, str, Basis]
) -> None:
    limit = ask(Edition.GB)
    assert answer == (limit.value, limit.unit, limit.citation.basis)
    assert limit.citation.source


@pytest.mark.parametrize(("ask", "answer"), BANDS.items())
def test_a_band_says_how_sure_it_is(ask: Callable[[Edition], Band], answer: tuple[float, float, Basis]) -> None:
    band = ask(Edition.GB)
    assert answer == (band.least_mm, band.greatest_mm, band.citation.basis)


def test_every_tolerance_is_a_house_choice() -> None:
    assert {Basis.HOUSE} == {tolerance(Edition.GB, which).citation.basis for which in Tolerance}


def test_the_published_overhangs_disagree_and_both_are_kept() -> None:
    statements = defaults.eaves_overhang_statements(Edition.GB)
    assert [(50.0, None), (None, 50.0)] == [(each.least_mm, each.greatest_mm) for each in statements]
    assert 2 == len({each.citation.source for each in statements})


@pytest.mark.parametrize(
    ("spell_l_m2", "exposure"),
    [
        (0.0, Exposure.SHELTERED),
        (32.9, Exposure.SHELTERED),
        (33.0, Exposure.MODERATE),
        (56.4, Exposure.MODERATE),
        (56.5, Exposure.SEVERE),
        (99.9, Exposure.SEVERE),
        (100.0, Exposure.VERY_SEVERE),
        (400.0, Exposure.VERY_SEVERE),
    ],
)
def test_a_spell_falls_in_the_class_that_begins_with_it(spell_l_m2: float, exposure: Exposure) -> None:
    assert exposure is exposure_of_spell(Edition.GB, spell_l_m2=spell_l_m2)


@pytest.mark.parametrize("spell_l_m2", [-0.1, nan, inf])
def test_what_is_no_spell_has_no_class(spell_l_m2: float) -> None:
    assert isinstance(exposure_of_spell(Edition.GB, spell_l_m2=spell_l_m2), OffTable)


@pytest.mark.parametrize("exposure", Exposure)
def test_every_class_begins_inside_itself(exposure: Exposure) -> None:
    band = spell_band(Edition.GB, exposure)
    assert exposure is exposure_of_spell(Edition.GB, spell_l_m2=band.spell_from_l_m2)
