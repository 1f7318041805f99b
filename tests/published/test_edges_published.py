"""Ridges, hips, verges and eaves against what was read in print. Each case names its source; none was computed here."""

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Finding, Verdict
from gaugerod.edges.unit_run import unit_run
from gaugerod.edges.wished import LineUnit
from gaugerod.rules.eaves_closer import eaves_closer
from gaugerod.rules.mitred_hip import mitred_hip
from gaugerod.rules.ridge_units import unit_cut, unit_fixings
from gaugerod.rules.verge_made import plain_tile_undercloak, verge_bed
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

GB = Edition.GB


def verdicts(*findings: Finding) -> list[str]:
    assert {Basis.PUBLISHED} == {finding.citation.basis for finding in findings}
    return [finding.verdict.value for finding in findings]


def test_no_ridge_unit_is_cut_to_less_than_half() -> None:
    """Source: a national housebuilder's site standard: none less than half a ridge."""
    half, under = (unit_cut(where="ridge", cut_mm=cut_mm, cover_mm=450.0, edition=GB) for cut_mm in (225.0, 224.0))
    assert ["within", "outside"] == verdicts(half, under)


def test_what_is_left_over_is_spread_over_two() -> None:
    """Source: the same: where the last would be less than half, spread over two."""
    run = unit_run(where="ridge", length_mm=4600.0, unit=LineUnit(length_mm=450.0, cover_mm=450.0), edition=GB)
    assert 2 == len(run.cut_mm)


def test_mortar_is_not_accepted_as_the_only_fixing() -> None:
    """Source: roof tile trade association, technical library; a national housebuilder's site standard."""
    assert ["outside"] == verdicts(unit_fixings(where="ridge", fixings_count=0, edition=GB))


def test_mitred_hips_are_not_below_30_degrees() -> None:
    """Source: a supplier-hosted slate manual, pages 12 to 15."""
    at, below = (mitred_hip(where="hip", pitch_deg=pitch, slated=True, edition=GB) for pitch in (30.0, 29.0))
    assert ["within", "outside"] == verdicts(at, below)


@pytest.mark.parametrize(
    ("gauge_mm", "pitch_deg", "printed"),
    [(265.0, 30.0, ["within", "within"]), (266.0, 30.0, ["outside", "within"]), (265.0, 29.0, ["within", "outside"])],
)
def test_plain_tile_undercloak_has_a_greatest_gauge_and_a_least_pitch(
    gauge_mm: float, pitch_deg: float, printed: list[str]
) -> None:
    """Source: independent consultant's trade article on verges: not with a gauge over 265 mm, nor below 30 degrees."""
    assert printed == verdicts(*plain_tile_undercloak(where="left", gauge_mm=gauge_mm, pitch_deg=pitch_deg, edition=GB))


@pytest.mark.parametrize(
    ("bed_mm", "by_article", "by_warranty"), [(50.0, True, False), (75.0, True, False), (100.0, False, True)]
)
def test_the_two_sources_on_the_verge_bed(bed_mm: float, *, by_article: bool, by_warranty: bool) -> None:
    """Sources: the same article, outer 50 to 75 mm of the undercloak; a page quoting NHBC on mortar, 100 mm or more."""
    article, warranty, _ = verge_bed(where="left", bed_mm=bed_mm, edition=GB)
    assert (by_article, by_warranty) == (article.verdict is Verdict.WITHIN, warranty.verdict is Verdict.WITHIN)


@pytest.mark.parametrize(
    ("which", "printed"),
    [
        (EdgeFigure.UNDERCLOAK_WIDTH, 150.0),  # the same article
        (EdgeFigure.UNDERCLOAK_UNDER_BATTEN_GREATEST, 50.0),  # the same article
        (EdgeFigure.MORTAR_SAND_PARTS, 3.0),  # roof tile trade association, technical library: 1:3
    ],
)
def test_the_printed_figures_stand(which: EdgeFigure, printed: float) -> None:
    figure = edge_figure(GB, which)
    assert (printed, Basis.PUBLISHED) == (figure.value, figure.citation.basis)


@pytest.mark.parametrize(("gap_mm", "needed"), [(9.0, False), (10.0, True), (16.0, True)])
def test_the_two_sources_on_comb_filler(gap_mm: float, *, needed: bool) -> None:
    """Sources: two trade pages on eaves: one closes openings from 10 mm, one from 16 mm."""
    closer = eaves_closer(where="eaves", gap_mm=gap_mm, edition=GB)
    assert needed is closer.needed
    assert [10.0, 16.0] == [finding.limit for finding in closer.findings]
