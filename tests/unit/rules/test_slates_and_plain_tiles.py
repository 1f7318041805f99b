from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap import MadeTo, PlainTile
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.coverings.single_lap import Material
from gaugerod.rules.double_lap_gauge import greatest_gauge_mm, holing_gauge_mm, sidelap_mm, under_eaves_length_mm
from gaugerod.rules.plain_tile import (
    SevereLap,
    plain_tile_headlap,
    plain_tile_laps,
    plain_tile_nailing,
    plain_tile_pitch,
)
from gaugerod.rules.slates import slate_headlap_least, slate_laps, slate_pitch, slate_rafter
from gaugerod.standards.edition import Edition, Exposure

CLAY, CONCRETE = plain_tile("clay-plain-265x165"), plain_tile("concrete-plain-265x165")
SLATE = sized_slate("slate-500x250")


def laps_of_slate(lap_mm: float, pitch_deg: float, exposure: Exposure = Exposure.MODERATE) -> list[tuple[str, str]]:
    found = slate_laps(
        where="rear",
        least_lap_mm=lap_mm,
        greatest_lap_mm=lap_mm,
        slate=SLATE,
        pitch_deg=pitch_deg,
        exposure=exposure,
        edition=Edition.GB,
    )
    return [(finding.rule, finding.verdict.value) for finding in found]


def test_a_slate_lap_is_held_against_each_source_that_has_the_size() -> None:
    by_first = [laps_of_slate(lap, 25.0)[0] for lap in (94.9, 95.0, 95.1)]
    by_second = [laps_of_slate(lap, 25.0)[1] for lap in (99.9, 100.0, 100.1)]
    assert [("headlap", "outside"), ("headlap", "within"), ("headlap", "within")] == by_first == by_second


def test_a_size_not_recommended_at_the_pitch_is_outside_whatever_its_lap() -> None:
    assert ("slate size at this pitch", "outside") == laps_of_slate(160.0, 24.9)[0]


def test_slates_other_than_natural_are_not_covered() -> None:
    cement = replace(SLATE, material=Material.FIBRE_CEMENT)
    found = slate_laps(
        where="rear",
        least_lap_mm=100.0,
        greatest_lap_mm=100.0,
        slate=cement,
        pitch_deg=30.0,
        exposure=Exposure.MODERATE,
        edition=Edition.GB,
    )
    assert Verdict.NOT_COVERED is found[0].verdict
    assert slate_headlap_least(slate=cement, pitch_deg=30.0, exposure=Exposure.MODERATE, edition=Edition.GB) is None


def test_the_least_lap_to_set_out_with_never_goes_below_the_floor() -> None:
    least = slate_headlap_least(slate=SLATE, pitch_deg=85.0, exposure=Exposure.MODERATE, edition=Edition.GB)
    assert least is not None
    assert 54.0 == least.value


@pytest.mark.parametrize(("pitch_deg", "verdict"), [(19.9, "outside"), (20.0, "within"), (20.1, "within")])
def test_slates_begin_at_20_degrees(pitch_deg: float, verdict: str) -> None:
    assert verdict == slate_pitch(where="rear", pitch_deg=pitch_deg, edition=Edition.GB).verdict


@pytest.mark.parametrize(
    ("exposure", "longest_mm"), [(Exposure.SHELTERED, 9000.0), (Exposure.MODERATE, 9000.0), (Exposure.SEVERE, 6000.0)]
)
def test_long_rafters_at_low_pitch_are_outside(exposure: Exposure, longest_mm: float) -> None:
    verdicts = [
        slate_rafter(where="rear", rafter_mm=longest_mm + more, pitch_deg=30.0, exposure=exposure, edition=Edition.GB)[
            0
        ].verdict.value
        for more in (-0.1, 0.0, 0.1)
    ]
    assert ["within", "within", "outside"] == verdicts


def test_clay_tiles_not_known_to_be_even_need_40_degrees_and_concrete_35() -> None:
    def verdicts(tile: PlainTile, *pitches_deg: float) -> list[str]:
        return [
            plain_tile_pitch(where="rear", pitch_deg=pitch, tile=tile, edition=Edition.GB).verdict.value
            for pitch in pitches_deg
        ]

    assert ["outside", "within", "within"] == verdicts(CLAY, 39.9, 40.0, 40.1)
    assert ["outside", "within", "within"] == verdicts(replace(CLAY, made_to=MadeTo.BS_EN_1304), 34.9, 35.0, 35.1)
    assert ["outside", "within", "within"] == verdicts(CONCRETE, 34.9, 35.0, 35.1)


def test_a_tile_that_only_its_makers_declaration_would_allow_is_told_how_to_declare_it() -> None:
    def says(pitch_deg: float, tile: PlainTile = CLAY) -> str:
        return plain_tile_pitch(where="rear", pitch_deg=pitch_deg, tile=tile, edition=Edition.GB).says

    assert 'write made_to = "BS EN 1304"' in says(37.0)
    assert "made_to" not in says(34.0)
    assert "made_to" not in says(37.0, replace(CLAY, pitch_min_deg=38.0))
    assert "declared in the job to be made to the sizes of BS EN 1304" in says(
        37.0, replace(CLAY, made_to=MadeTo.BS_EN_1304)
    )


def test_in_severe_exposure_the_published_lap_answers_and_the_recalled_one_stands_beside_it() -> None:
    published = plain_tile_headlap(tile=CLAY, exposure=Exposure.SEVERE, edition=Edition.GB)
    recalled = plain_tile_headlap(tile=CLAY, exposure=Exposure.SEVERE, edition=Edition.GB, severe=SevereLap.RECALLED)
    assert [(75.0, Basis.PUBLISHED), (65.0, Basis.MEMORY)] == [
        (limit.value, limit.citation.basis) for limit in (published, recalled)
    ]
    found = plain_tile_laps(
        where="rear", least_lap_mm=70.0, greatest_lap_mm=88.4, tile=CLAY, exposure=Exposure.SEVERE, edition=Edition.GB
    )
    assert ["outside", "within", "outside"] == [finding.verdict.value for finding in found]


def test_tiles_without_nibs_are_all_nailed_at_any_pitch() -> None:
    nibless = replace(CLAY, nibs=False)
    assert 1 == plain_tile_nailing(pitch_deg=40.0, tile=nibless, edition=Edition.GB).every_count
    pattern = plain_tile_nailing(pitch_deg=40.0, tile=CLAY, edition=Edition.GB)
    assert (5, 2, 2) == (pattern.every_count, pattern.nails_each_count, pattern.perimeter_courses_count)
    assert Basis.MEMORY is pattern.perimeter_limit.citation.basis


@pytest.mark.parametrize("wrong", [nan, inf, -inf, 0.0, -1.0])
def test_a_gauge_needs_real_lengths(wrong: float) -> None:
    with pytest.raises(NothingToSetOut):
        greatest_gauge_mm(length_mm=wrong, headlap_mm=65.0)
    with pytest.raises(NothingToSetOut):
        greatest_gauge_mm(length_mm=265.0, headlap_mm=wrong)


def test_no_gauge_is_left_when_the_lap_is_the_whole_length() -> None:
    with pytest.raises(NothingToSetOut):
        greatest_gauge_mm(length_mm=265.0, headlap_mm=265.0)


def test_the_under_eaves_length_and_the_holing_gauge_meet_at_the_head_below() -> None:
    # Slate 500, lap 100: gauge 200; the head below stands 300 up from the tail.
    assert 300.0 == under_eaves_length_mm(length_mm=500.0, gauge_mm=200.0)
    assert 310.0 == holing_gauge_mm(length_mm=500.0, gauge_mm=200.0, nail_clear_mm=10.0)


def test_half_bond_gives_the_most_sidelap() -> None:
    laps = [sidelap_mm(width_mm=165.0, joint_mm=0.0, offset_ratio=ratio) for ratio in (1 / 3, 0.5, 2 / 3)]
    assert pytest.approx([55.0, 82.5, 55.0]) == laps


@pytest.mark.parametrize(
    ("pitch_deg", "exposure", "told"),
    [
        (44.9, Exposure.MODERATE, False),
        (45.0, Exposure.MODERATE, True),
        (75.0, Exposure.SHELTERED, True),
        (75.1, Exposure.MODERATE, False),
        (45.0, Exposure.SEVERE, False),
    ],
)
def test_the_floor_of_54_mm_allows_nothing_outside_its_scope(
    pitch_deg: float, exposure: Exposure, *, told: bool
) -> None:
    rules = [rule for rule, _ in laps_of_slate(64.0, pitch_deg, exposure)]
    assert told == ("headlap floor" in rules)


def test_a_lap_under_the_floor_is_short_at_every_pitch() -> None:
    assert ("headlap floor", "outside") in laps_of_slate(53.0, 30.0, Exposure.SEVERE)
