"""Rules and defaults against what was read in print. Each case names its source; none was computed here.

What no case here reaches stands in docs/validation/gaps.md.
"""

from typing import NamedTuple

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.catalogue import catalogue, covering, override
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.battens import BattenedCovering, BattenSection, least_batten_section
from gaugerod.rules.eaves_overhang import eaves_overhang
from gaugerod.rules.exposure import exposure
from gaugerod.rules.gauge import gauge
from gaugerod.rules.headlap import headlap
from gaugerod.rules.pitch import pitch
from gaugerod.rules.ridge_cover import ridge_cover
from gaugerod.rules.sides import verge_overhang
from gaugerod.standards.defaults import (
    eaves_overhang_band,
    minimum_cut,
    perps_every_count,
    ridge_cover_least,
    single_lap_headlap_least,
    single_lap_pitch_least,
    top_flashing_cover_least,
    verge_overhang_band,
)
from gaugerod.standards.edition import Edition, Exposure
from gaugerod.standards.exposure import exposure_of_spell
from gaugerod.standards.table import OffTable

GB = Edition.GB
FLAT = covering("flat-interlocking-420x330")


class Batten(NamedTuple):
    """One printed cell: least batten width × depth."""

    covering: BattenedCovering
    spacing_mm: float
    printed_mm: tuple[float, float]


# BS 5534:2014+A2:2018 Table 3, columns "up to 450 mm" and "451 to 600 mm", as quoted by the NFRC (article on fixing
# battens, December 2018) and printed as NHBC Standards 7.2.17 Table 9.
BATTENS = [
    Batten(BattenedCovering.NATURAL_SLATE, 450.0, (50.0, 25.0)),
    Batten(BattenedCovering.NATURAL_SLATE, 451.0, (50.0, 25.0)),
    Batten(BattenedCovering.NATURAL_SLATE, 600.0, (50.0, 25.0)),
    Batten(BattenedCovering.MADE_SLATE, 450.0, (38.0, 25.0)),
    Batten(BattenedCovering.MADE_SLATE, 451.0, (50.0, 25.0)),
    Batten(BattenedCovering.MADE_SLATE, 600.0, (50.0, 25.0)),
    Batten(BattenedCovering.TILE_DOUBLE_LAP, 450.0, (38.0, 25.0)),
    Batten(BattenedCovering.TILE_DOUBLE_LAP, 451.0, (38.0, 25.0)),
    Batten(BattenedCovering.TILE_DOUBLE_LAP, 600.0, (38.0, 25.0)),
    Batten(BattenedCovering.TILE_SINGLE_LAP, 450.0, (38.0, 25.0)),
    Batten(BattenedCovering.TILE_SINGLE_LAP, 451.0, (50.0, 25.0)),
    Batten(BattenedCovering.TILE_SINGLE_LAP, 600.0, (50.0, 25.0)),
]


@pytest.mark.parametrize("case", BATTENS)
def test_the_batten_section_is_the_printed_one(case: Batten) -> None:
    found = least_batten_section(covering=case.covering, rafter_spacing_mm=case.spacing_mm, edition=GB)
    assert isinstance(found, BattenSection)
    assert case.printed_mm == (found.width_mm, found.depth_mm)


@pytest.mark.parametrize("kind", BattenedCovering)
def test_over_600_mm_the_table_asks_for_calculation(kind: BattenedCovering) -> None:
    """Source: a supplier-hosted page on batten sizes: over 600 mm, calculate to BS 5534 Annex F."""
    assert isinstance(least_batten_section(covering=kind, rafter_spacing_mm=601.0, edition=GB), OffTable)


def test_the_default_lap_of_a_single_lap_tile_is_75_mm() -> None:
    """Source: NHBC Standards 7.2.19 (the 2020 issue the same): headlap 75 mm, or the maker's figure."""
    assert 75.0 == single_lap_headlap_least(GB).value
    assert Verdict.WITHIN is headlap(where="slope", headlap_mm=75.0, tile=FLAT, edition=GB)[1].verdict
    assert Verdict.OUTSIDE is headlap(where="slope", headlap_mm=74.0, tile=FLAT, edition=GB)[1].verdict


def test_the_default_pitch_of_a_single_lap_tile_is_30_degrees() -> None:
    """Source: NHBC Standards 7.2.19 Note 2 (the 2020 issue the same): 30 degrees, lower needs evidence."""
    assert 30.0 == single_lap_pitch_least(GB).value
    assert Verdict.WITHIN is pitch(where="slope", pitch_deg=30.0, tile=FLAT, edition=GB)[1].verdict
    lower = override(FLAT, {"pitch_min_deg": 20.0})
    assert Verdict.NOT_COVERED is pitch(where="slope", pitch_deg=25.0, tile=lower, edition=GB)[1].verdict


def test_a_420_mm_tile_at_75_mm_lap_has_a_greatest_gauge_of_345_mm() -> None:
    """Source: general how-to text on battens (web): 420 mm tile, 75 mm lap, 345 mm gauge."""
    tile = override(FLAT, {"length_mm": 420.0, "headlap_min_mm": 75.0})
    greatest = gauge(where="slope", least_gauge_mm=340.0, greatest_gauge_mm=345.0, tile=tile)[0]
    assert 345.0 == greatest.limit
    assert Verdict.WITHIN is greatest.verdict


class Spell(NamedTuple):
    """The first spell of each printed class, in litres per square metre."""

    from_l_m2: float
    printed: Exposure


# A supplier-hosted headlap table: sheltered under 33, moderate 33 to under 56.5, severe 56.5 to under 100, very severe
# 100 and over; lap tables have one part for under 56.5 and one for 56.5 and over (three supplier-hosted prints agree).
SPELLS = [
    Spell(0.0, Exposure.SHELTERED),
    Spell(33.0, Exposure.MODERATE),
    Spell(56.5, Exposure.SEVERE),
    Spell(100.0, Exposure.VERY_SEVERE),
]


@pytest.mark.parametrize("case", SPELLS)
def test_a_driving_rain_class_begins_where_it_is_printed(case: Spell) -> None:
    assert case.printed is exposure_of_spell(GB, spell_l_m2=case.from_l_m2)


def test_the_lap_classes_part_at_56_5_litres() -> None:
    """Source: as SPELLS."""
    found = exposure(where="site", exposure=Exposure.MODERATE, edition=GB)
    assert (56.5, 56.5) == (found.proposed, found.limit)


@pytest.mark.parametrize(("overhang_mm", "inside"), [(37.0, False), (38.0, True), (50.0, True), (51.0, False)])
def test_a_verge_overhangs_by_38_to_50_mm(*, overhang_mm: float, inside: bool) -> None:
    """Source: an independent consultant's trade article on verges: 38 to 50 mm past wall or undercloak."""
    found = verge_overhang(where="slope, left", overhang_mm=overhang_mm, band=verge_overhang_band(GB))
    assert inside == all(finding.verdict is Verdict.WITHIN for finding in found)


def test_both_printed_overhangs_are_met_at_50_mm_alone() -> None:
    """Sources: NHBC Standards 7.2.17 (2021), 50 mm at least over the gutter; an architect's specification (2014-19),
    50 mm into the gutter or to its centre, whichever is less."""
    for overhang_mm, all_met in ((49.0, False), (50.0, True), (51.0, False)):
        found = eaves_overhang(where="slope", overhang_mm=overhang_mm, band=eaves_overhang_band(GB), edition=GB)
        assert all_met == all(finding.verdict is Verdict.WITHIN for finding in found)


def test_a_ridge_covers_the_top_course_by_75_mm() -> None:
    """Source: a trade how-to page on batten gauge: ridge or flashing at least 75 mm over the top course."""
    least = ridge_cover_least(GB)
    assert 75.0 == least.value
    found = ridge_cover(
        where="slope", ridge_cover_mm=100.0, top_batten_below_apex_mm=45.0, head_to_nib_mm=20.0, least=least
    )
    assert Verdict.WITHIN is found.verdict


def test_a_top_edge_flashing_covers_by_150_mm_where_there_are_no_tops_tiles() -> None:
    """Source: a supplier-hosted page on top-edge abutments: 100 mm over tops tiles, 150 mm without them."""
    assert 150.0 == top_flashing_cover_least(GB).value


def test_a_perp_line_every_three_tiles_is_about_900_mm() -> None:
    """Source: a trade magazine article on interlocking tiles: every 3 tiles, about 900 mm for 300 mm cover."""
    assert 900.0 == perps_every_count(GB).value * 300.0


def test_no_cut_tile_is_under_half() -> None:
    """Source: a building magazine article on pitched roofs by a warranty author: at least half a tile."""
    assert 0.5 == minimum_cut(GB).value


@pytest.mark.parametrize("tile", catalogue(), ids=lambda tile: tile.name)
def test_a_generic_interlocking_tile_weighs_what_is_printed_for_its_kind(tile: SingleLapTile) -> None:
    """Source: US Army TI 809-53 (1999) Table 8-1: interlocking tile 40 to 44 kg/m2 (8 to 9 lb/ft2), whole numbers."""
    assert tile.mass_kg is not None
    assert tile.cover_closed_mm is not None
    assert tile.cover_open_mm is not None
    cover_mm = (tile.cover_closed_mm + tile.cover_open_mm) / 2
    laid_kg_m2 = tile.mass_kg / (cover_mm * tile.gauge_max_mm) * 1e6
    assert 40 - 0.5 <= laid_kg_m2 <= 44 + 0.5
