"""The ridge over the top course, checked against coordinates laid down the slope from the apex."""

from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.rules.ridge_cover import TopBand, ridge_cover, top_band_narrowed
from gaugerod.standards.defaults import ridge_cover_least, top_batten_band, top_flashing_cover_least
from gaugerod.standards.edition import Edition

BAND = top_batten_band(Edition.GB)  # 25 to 50 mm below the apex
LEAST = ridge_cover_least(Edition.GB)  # 75 mm
UNREAL = [nan, inf, -inf]


def cover(reach_mm: float | None, below_apex_mm: float, head_mm: float | None = 20.0) -> Finding:
    return ridge_cover(
        where="rear",
        ridge_cover_mm=reach_mm,
        top_batten_below_apex_mm=below_apex_mm,
        head_to_nib_mm=head_mm,
        least=LEAST,
    )


def narrowed(reach_mm: float | None, head_mm: float | None = 20.0) -> TopBand:
    return top_band_narrowed(where="rear", band=BAND, ridge_cover_mm=reach_mm, head_to_nib_mm=head_mm, least=LEAST)


@pytest.mark.parametrize("reach_mm", [90.0, 100.0, 120.0])
@pytest.mark.parametrize("below_apex_mm", [25.0, 37.5, 50.0])
def test_the_cover_is_from_the_head_of_the_top_unit_to_the_foot_of_the_ridge(
    reach_mm: float, below_apex_mm: float
) -> None:
    batten_at, ridge_foot_at = below_apex_mm, reach_mm  # both down from the apex
    head_at = batten_at - 20.0  # the head stands above its batten
    assert ridge_foot_at - head_at == cover(reach_mm, below_apex_mm).proposed


@pytest.mark.parametrize(
    ("below_apex_mm", "verdict"),
    [(44.9, Verdict.WITHIN), (45.0, Verdict.WITHIN), (45.1, Verdict.OUTSIDE)],
)
def test_the_least_cover_is_allowed_and_no_less(below_apex_mm: float, verdict: Verdict) -> None:
    assert verdict is cover(100.0, below_apex_mm).verdict


def test_a_ridge_that_does_not_reach_the_heads_is_outside() -> None:
    found = cover(20.0, 50.0)
    assert (-10.0, Verdict.OUTSIDE) == (found.proposed, found.verdict)


def test_a_flashing_must_cover_more_than_a_ridge() -> None:
    found = ridge_cover(
        where="rear",
        ridge_cover_mm=150.0,
        top_batten_below_apex_mm=30.0,
        head_to_nib_mm=20.0,
        least=top_flashing_cover_least(Edition.GB),
    )
    assert (140.0, 150.0, Verdict.OUTSIDE) == (found.proposed, found.limit, found.verdict)


@pytest.mark.parametrize(("reach_mm", "head_mm"), [(None, 20.0), (100.0, None), (None, None)])
def test_what_is_not_known_is_not_covered_and_leaves_the_band_alone(
    reach_mm: float | None, head_mm: float | None
) -> None:
    assert Verdict.NOT_COVERED is cover(reach_mm, 40.0, head_mm).verdict
    found = narrowed(reach_mm, head_mm)
    assert BAND is found.band
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in found.findings]


@pytest.mark.parametrize(
    ("reach_mm", "greatest_mm"),
    [(110.0, 50.0), (105.0, 50.0), (104.9, 49.9), (90.0, 35.0), (80.0, 25.0)],
)
def test_the_band_ends_where_the_ridge_would_cover_too_little(reach_mm: float, greatest_mm: float) -> None:
    found = narrowed(reach_mm)
    assert found.band is not None
    assert 25.0 == found.band.least_mm
    assert greatest_mm == pytest.approx(found.band.greatest_mm)
    assert Verdict.WITHIN is cover(reach_mm, found.band.greatest_mm).verdict
    assert () == found.findings


def test_a_narrowed_band_says_why_and_keeps_its_basis() -> None:
    band = narrowed(90.0).band
    assert band is not None
    assert band.citation.source.endswith("at most 35 mm so that the ridge covers the top course by 75 mm")
    assert Basis.COMMON_PRACTICE is band.citation.basis


def test_a_ridge_too_small_for_any_top_batten_is_outside_and_says_what_it_must_reach() -> None:
    found = narrowed(79.9)
    assert found.band is None
    (finding,) = found.findings
    assert Verdict.OUTSIDE is finding.verdict
    assert "It must reach 80.0 mm down the slope." in finding.says


@pytest.mark.parametrize("figure", [*UNREAL, 0.0, -80.0])
def test_an_unreal_ridge_is_refused(figure: float) -> None:
    with pytest.raises(NothingToSetOut, match="ridge cover, rear"):
        cover(figure, 40.0)
    with pytest.raises(NothingToSetOut, match="ridge cover, rear"):
        narrowed(figure)


@pytest.mark.parametrize("figure", UNREAL)
def test_an_unreal_batten_or_head_is_refused(figure: float) -> None:
    with pytest.raises(NothingToSetOut, match="ridge cover, rear"):
        cover(100.0, figure)
    with pytest.raises(NothingToSetOut, match="ridge cover, rear"):
        cover(100.0, 40.0, figure)
