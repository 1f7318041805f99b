"""Each rule of a single-lap covering just below, at and just above its limit; nothing unreal is answered."""

from collections.abc import Callable, Iterable
from math import inf, nan

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import Basis, house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.coverings.catalogue import covering, override
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.battens import BattenedCovering, batten_section
from gaugerod.rules.eaves_overhang import eaves_overhang
from gaugerod.rules.exposure import exposure, low_pitch_lap
from gaugerod.rules.gauge import gauge
from gaugerod.rules.headlap import greatest_headlap, headlap
from gaugerod.rules.material import material_cautions
from gaugerod.rules.pitch import pitch
from gaugerod.rules.sides import abutment_set_back, verge_overhang
from gaugerod.standards.defaults import abutment_set_back_band, eaves_overhang_band, verge_overhang_band
from gaugerod.standards.edition import Edition, Exposure

IN, OUT, OPEN = Verdict.WITHIN, Verdict.OUTSIDE, Verdict.NOT_COVERED
FLAT = covering("flat-interlocking-420x330")  # least lap 75, greatest 125, least pitch 30
UNREAL = [nan, inf, -inf]
NOT_ABOVE_NOTHING = [*UNREAL, 0.0, -30.0]


def verdicts(findings: Iterable[Finding]) -> list[Verdict]:
    return [finding.verdict for finding in findings]


def pitch_of(pitch_deg: float, tile: SingleLapTile = FLAT) -> tuple[Finding, ...]:
    return pitch(where="rear", pitch_deg=pitch_deg, tile=tile, edition=Edition.GB)


def headlap_of(headlap_mm: float, tile: SingleLapTile = FLAT) -> tuple[Finding, ...]:
    return headlap(where="rear", headlap_mm=headlap_mm, tile=tile, edition=Edition.GB)


@pytest.mark.parametrize(("pitch_deg", "both"), [(29.99, OUT), (30.0, IN), (30.01, IN), (89.9, IN)])
def test_a_pitch_is_held_to_the_record_and_the_default(pitch_deg: float, both: Verdict) -> None:
    assert [both, both] == verdicts(pitch_of(pitch_deg))


def test_a_record_that_allows_less_than_the_default_leaves_the_default_not_covered() -> None:
    tile = override(FLAT, {"pitch_min_deg": 22.5})
    assert [OUT, OUT] == verdicts(pitch_of(22.4, tile))
    assert [IN, OPEN] == verdicts(pitch_of(22.5, tile))
    assert [IN, IN] == verdicts(pitch_of(30.0, tile))
    assert "written figure" in pitch_of(22.5, tile)[1].says


def test_a_record_with_no_pitch_answers_not_covered_and_the_default_still_holds() -> None:
    tile = override(FLAT, {"pitch_min_deg": None})
    assert [OPEN, IN] == verdicts(pitch_of(30.0, tile))
    assert [OPEN, OUT] == verdicts(pitch_of(29.9, tile))


@pytest.mark.parametrize("pitch_deg", [*NOT_ABOVE_NOTHING, 90.0, 120.0])
def test_what_is_no_slope_is_refused(pitch_deg: float) -> None:
    with pytest.raises(NothingToSetOut, match="pitch, rear"):
        pitch_of(pitch_deg)


@pytest.mark.parametrize(
    ("headlap_mm", "both"), [(-5.0, OUT), (0.0, OUT), (74.99, OUT), (75.0, IN), (75.01, IN), (125.0, IN)]
)
def test_a_lap_is_held_to_the_record_and_the_default(headlap_mm: float, both: Verdict) -> None:
    assert [both, both] == verdicts(headlap_of(headlap_mm))


def test_a_larger_lap_of_the_record_holds_beside_the_default() -> None:
    tile = override(FLAT, {"headlap_min_mm": 100.0})
    found = headlap_of(90.0, tile)
    assert [OUT, IN] == verdicts(found)
    assert [100.0, 75.0] == [finding.limit for finding in found]
    assert [Basis.HOUSE, Basis.PUBLISHED] == [finding.citation.basis for finding in found]


def test_a_smaller_lap_of_the_record_leaves_the_default_not_covered() -> None:
    tile = override(FLAT, {"headlap_min_mm": 60.0})
    assert [IN, OPEN] == verdicts(headlap_of(60.0, tile))
    assert [OUT, OUT] == verdicts(headlap_of(59.9, tile))


def test_a_short_lap_says_how_short_and_never_nothing() -> None:
    assert "4.0 mm short" in headlap_of(71.0)[0].says
    assert "0.1 mm short" in headlap_of(74.99)[0].says


@pytest.mark.parametrize("headlap_mm", UNREAL)
def test_what_is_no_lap_is_refused(headlap_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="headlap, rear"):
        headlap_of(headlap_mm)
    with pytest.raises(NothingToSetOut, match="greatest headlap, rear"):
        greatest_headlap(where="rear", headlap_mm=headlap_mm, tile=FLAT)


@pytest.mark.parametrize(("headlap_mm", "verdict"), [(124.9, IN), (125.0, IN), (125.1, OUT)])
def test_the_greatest_lap_is_allowed_and_no_more(headlap_mm: float, verdict: Verdict) -> None:
    assert verdict is greatest_headlap(where="rear", headlap_mm=headlap_mm, tile=FLAT).verdict


def test_no_greatest_lap_is_not_covered() -> None:
    tile = override(FLAT, {"headlap_max_mm": None})
    assert OPEN is greatest_headlap(where="rear", headlap_mm=200.0, tile=tile).verdict
    assert [IN, OPEN] == verdicts(gauge(where="rear", least_gauge_mm=10.0, greatest_gauge_mm=10.0, tile=tile))


@pytest.mark.parametrize(
    ("least_mm", "greatest_mm", "expected"),
    [
        (295.0, 345.0, [IN, IN]),
        (294.9, 345.0, [IN, OUT]),
        (295.0, 345.1, [OUT, IN]),
        (295.1, 344.9, [IN, IN]),
    ],
)
def test_a_gauge_is_held_between_its_ends(least_mm: float, greatest_mm: float, expected: list[Verdict]) -> None:
    assert expected == verdicts(gauge(where="rear", least_gauge_mm=least_mm, greatest_gauge_mm=greatest_mm, tile=FLAT))


@pytest.mark.parametrize("gauge_mm", NOT_ABOVE_NOTHING)
def test_what_is_no_gauge_is_refused(gauge_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="gauge, rear"):
        gauge(where="rear", least_gauge_mm=gauge_mm, greatest_gauge_mm=340.0, tile=FLAT)
    with pytest.raises(NothingToSetOut, match="gauge, rear"):
        gauge(where="rear", least_gauge_mm=300.0, greatest_gauge_mm=gauge_mm, tile=FLAT)


def test_gauges_that_run_backwards_are_refused() -> None:
    with pytest.raises(NothingToSetOut, match="least 340 mm is over greatest 330 mm"):
        gauge(where="rear", least_gauge_mm=340.0, greatest_gauge_mm=330.0, tile=FLAT)


@pytest.mark.parametrize(
    ("site", "verdict"),
    [(Exposure.SHELTERED, IN), (Exposure.MODERATE, IN), (Exposure.SEVERE, OPEN), (Exposure.VERY_SEVERE, OPEN)],
)
def test_severe_exposure_is_not_covered_and_sends_to_the_maker(site: Exposure, verdict: Verdict) -> None:
    found = exposure(where="site", exposure=site, edition=Edition.GB)
    assert verdict is found.verdict
    assert ("maker" in found.says) == (verdict is OPEN)


@pytest.mark.parametrize(("pitch_deg", "count"), [(29.9, 1), (30.0, 0), (30.1, 0)])
def test_below_the_default_pitch_a_larger_lap_is_a_caution_and_no_limit(pitch_deg: float, count: int) -> None:
    found = low_pitch_lap(where="rear", pitch_deg=pitch_deg, headlap_mm=75.0, edition=Edition.GB)
    assert [OPEN] * count == verdicts(found)
    assert [Basis.COMMON_PRACTICE] * count == [finding.citation.basis for finding in found]


@pytest.mark.parametrize("figure", NOT_ABOVE_NOTHING)
def test_a_low_pitch_lap_of_unreal_figures_is_refused(figure: float) -> None:
    for pitch_deg, headlap_mm in ((figure, 75.0), (25.0, figure)):
        with pytest.raises(NothingToSetOut):
            low_pitch_lap(where="rear", pitch_deg=pitch_deg, headlap_mm=headlap_mm, edition=Edition.GB)


def batten(spacing_mm: float | None, kind: BattenedCovering = BattenedCovering.TILE_SINGLE_LAP) -> Finding:
    return batten_section(where="rear", covering=kind, rafter_spacing_mm=spacing_mm, edition=Edition.GB)


@pytest.mark.parametrize(
    ("spacing_mm", "section"), [(400.0, "38 × 25"), (450.0, "38 × 25"), (450.1, "50 × 25"), (600.0, "50 × 25")]
)
def test_the_batten_grows_over_450(spacing_mm: float, section: str) -> None:
    assert IN is batten(spacing_mm).verdict
    assert section in batten(spacing_mm).says


def test_rafters_over_600_are_off_the_table() -> None:
    assert OPEN is batten(600.1).verdict
    assert "have the battens designed" in batten(600.1).says


def test_no_rafter_spacing_is_not_covered() -> None:
    assert OPEN is batten(None).verdict
    assert "Measure it" in batten(None).says


@pytest.mark.parametrize("spacing_mm", NOT_ABOVE_NOTHING)
def test_what_is_no_rafter_spacing_is_refused(spacing_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="batten section, rear"):
        batten(spacing_mm)


@pytest.mark.parametrize(
    ("overhang_mm", "expected"),
    [
        (44.9, [OUT, IN, OPEN, IN]),
        (45.0, [IN, IN, OPEN, IN]),
        (49.9, [IN, IN, OPEN, IN]),
        (50.0, [IN, IN, IN, IN]),
        (50.1, [IN, IN, IN, OPEN]),
        (55.0, [IN, IN, IN, OPEN]),
        (55.1, [IN, OUT, IN, OPEN]),
        (0.0, [OUT, IN, OPEN, IN]),
        (-20.0, [OUT, IN, OPEN, IN]),
    ],
)
def test_the_overhang_is_held_to_its_band_and_shown_beside_sources_that_differ(
    overhang_mm: float, expected: list[Verdict]
) -> None:
    band = eaves_overhang_band(Edition.GB)
    assert expected == verdicts(eaves_overhang(where="rear", overhang_mm=overhang_mm, band=band, edition=Edition.GB))


SIDES: list[tuple[Callable[[float], tuple[Finding, Finding]], float, float]] = [
    (
        lambda mm: verge_overhang(where="rear, left", overhang_mm=mm, band=verge_overhang_band(Edition.GB)),
        38.0,
        50.0,
    ),
    (
        lambda mm: abutment_set_back(where="rear, left", set_back_mm=mm, band=abutment_set_back_band(Edition.GB)),
        5.0,
        15.0,
    ),
]


@pytest.mark.parametrize(("side", "least_mm", "greatest_mm"), SIDES, ids=["verge", "abutment"])
def test_a_side_is_held_between_its_ends(
    side: Callable[[float], tuple[Finding, Finding]], least_mm: float, greatest_mm: float
) -> None:
    assert [OUT, IN] == verdicts(side(least_mm - 0.1))
    assert [IN, IN] == verdicts(side(least_mm))
    assert [IN, IN] == verdicts(side(greatest_mm))
    assert [IN, OUT] == verdicts(side(greatest_mm + 0.1))
    assert [OUT, IN] == verdicts(side(-10.0))


@pytest.mark.parametrize("length_mm", UNREAL)
def test_what_is_no_overhang_is_refused(length_mm: float) -> None:
    band = Band(least_mm=1.0, greatest_mm=2.0, citation=house("test"))
    for side, _, _ in SIDES:
        with pytest.raises(NothingToSetOut):
            side(length_mm)
    with pytest.raises(NothingToSetOut):
        eaves_overhang(where="rear", overhang_mm=length_mm, band=band, edition=Edition.GB)


@pytest.mark.parametrize(("pitch_deg", "expected"), [(29.9, [OUT]), (30.0, [OPEN]), (34.9, [OPEN]), (35.0, [])])
def test_a_pantile_is_sure_from_35_and_outside_below_30(pitch_deg: float, expected: list[Verdict]) -> None:
    found = material_cautions(where="rear", pitch_deg=pitch_deg, tile=covering("clay-pantile-340x240"))
    assert expected == verdicts(found)
    assert {Basis.MEMORY} >= {finding.citation.basis for finding in found}


@pytest.mark.parametrize(("pitch_deg", "expected"), [(30.0, [OPEN]), (34.9, [OPEN]), (35.0, [])])
def test_a_sanded_face_is_asked_about_near_the_least_pitch(pitch_deg: float, expected: list[Verdict]) -> None:
    assert expected == verdicts(material_cautions(where="rear", pitch_deg=pitch_deg, tile=FLAT))


def test_a_slate_in_a_single_lap_is_sent_to_its_maker() -> None:
    slate = override(FLAT, {"material": "fibre-cement"})
    assert [OPEN] == verdicts(material_cautions(where="rear", pitch_deg=60.0, tile=slate))


@pytest.mark.parametrize("pitch_deg", NOT_ABOVE_NOTHING)
def test_a_caution_for_no_pitch_is_refused(pitch_deg: float) -> None:
    with pytest.raises(NothingToSetOut, match="material, rear"):
        material_cautions(where="rear", pitch_deg=pitch_deg, tile=FLAT)
