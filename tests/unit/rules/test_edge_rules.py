"""Ridge units, mitred hips, verge beds and the eaves closer: each threshold just below, at, just above."""

from math import inf, nan

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Sense, Verdict
from gaugerod.rules.eaves_closer import eaves_closer
from gaugerod.rules.mitred_hip import mitred_hip
from gaugerod.rules.ridge_units import cuts_off_the_gable, unit_cut, unit_cut_least, unit_fixings
from gaugerod.rules.verge_made import plain_tile_undercloak, verge_bed
from gaugerod.standards.edition import Edition

GB = Edition.GB
UNREAL = [nan, inf, -inf, 0.0, -1.0]


@pytest.mark.parametrize(
    ("cut_mm", "verdict"), [(149.9, Verdict.OUTSIDE), (150.0, Verdict.WITHIN), (150.1, Verdict.WITHIN)]
)
def test_a_cut_unit_is_half_or_more(cut_mm: float, verdict: Verdict) -> None:
    found = unit_cut(where="ridge", cut_mm=cut_mm, cover_mm=300.0, edition=GB)
    assert (verdict, 150.0, Basis.PUBLISHED) == (found.verdict, found.limit, found.citation.basis)


def test_a_cut_that_is_too_short_says_by_how_much() -> None:
    assert "0.1 mm too short" in unit_cut(where="ridge", cut_mm=149.95, cover_mm=300.0, edition=GB).says


@pytest.mark.parametrize("wrong", UNREAL)
def test_cuts_that_are_no_measurements_are_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="cut ridge or hip unit, ridge"):
        unit_cut(where="ridge", cut_mm=wrong, cover_mm=300.0, edition=GB)
    with pytest.raises(NothingToSetOut, match="cut ridge or hip unit, ridge"):
        unit_cut_least(where="ridge", cover_mm=wrong, edition=GB)


@pytest.mark.parametrize(("count", "verdict"), [(0, Verdict.OUTSIDE), (1, Verdict.WITHIN), (2, Verdict.WITHIN)])
def test_mortar_alone_holds_no_unit(count: int, verdict: Verdict) -> None:
    assert verdict is unit_fixings(where="ridge", fixings_count=count, edition=GB).verdict


@pytest.mark.parametrize(
    ("count", "verdict"), [(0, Verdict.NOT_COVERED), (1, Verdict.NOT_COVERED), (2, Verdict.WITHIN), (3, Verdict.WITHIN)]
)
def test_two_whole_units_keep_the_cut_ones_off_both_ends(count: int, verdict: Verdict) -> None:
    assert verdict is cuts_off_the_gable(where="ridge", whole_count=count, edition=GB).verdict


def test_fewer_than_none_is_refused() -> None:
    with pytest.raises(NothingToSetOut, match="-1 fixings"):
        unit_fixings(where="ridge", fixings_count=-1, edition=GB)
    with pytest.raises(NothingToSetOut, match="-1 units"):
        cuts_off_the_gable(where="ridge", whole_count=-1, edition=GB)


@pytest.mark.parametrize(
    ("pitch_deg", "verdict"), [(29.9, Verdict.OUTSIDE), (30.0, Verdict.WITHIN), (30.1, Verdict.WITHIN)]
)
def test_a_mitred_hip_is_30_degrees_or_more(pitch_deg: float, verdict: Verdict) -> None:
    assert verdict is mitred_hip(where="hip", pitch_deg=pitch_deg, slated=True, edition=GB).verdict
    assert Verdict.NOT_COVERED is mitred_hip(where="hip", pitch_deg=pitch_deg, slated=False, edition=GB).verdict


@pytest.mark.parametrize("wrong", UNREAL)
def test_pitches_that_are_none_are_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="mitred hip, hip"):
        mitred_hip(where="hip", pitch_deg=wrong, slated=True, edition=GB)
    with pytest.raises(NothingToSetOut, match="plain-tile undercloak, left"):
        plain_tile_undercloak(where="left", gauge_mm=100.0, pitch_deg=wrong, edition=GB)
    with pytest.raises(NothingToSetOut, match="plain-tile undercloak, left"):
        plain_tile_undercloak(where="left", gauge_mm=wrong, pitch_deg=35.0, edition=GB)


OUT, IN, DIFFER = Verdict.OUTSIDE, Verdict.WITHIN, Verdict.NOT_COVERED


@pytest.mark.parametrize(
    ("bed_mm", "verdicts"),
    [
        (49.9, [OUT, OUT, IN]),
        (50.0, [IN, DIFFER, IN]),
        (75.0, [IN, DIFFER, IN]),
        (75.1, [OUT, OUT, IN]),
        (99.9, [OUT, OUT, IN]),
        (100.0, [DIFFER, IN, IN]),
        (150.0, [DIFFER, IN, IN]),
        (150.1, [DIFFER, IN, OUT]),
    ],
)
def test_a_bed_goes_by_both_statements_and_by_the_undercloak(bed_mm: float, verdicts: list[Verdict]) -> None:
    assert verdicts == [each.verdict for each in verge_bed(where="left", bed_mm=bed_mm, edition=GB)]


def test_a_bed_between_the_two_is_held_against_the_end_it_misses() -> None:
    first, second, _ = verge_bed(where="left", bed_mm=80.0, edition=GB)
    assert [(75.0, Sense.AT_MOST), (100.0, Sense.AT_LEAST)] == [(each.limit, each.sense) for each in (first, second)]


@pytest.mark.parametrize("wrong", UNREAL)
def test_beds_that_are_no_measurements_are_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="verge bed, left"):
        verge_bed(where="left", bed_mm=wrong, edition=GB)


@pytest.mark.parametrize(
    ("gap_mm", "needed", "differ"),
    [(0.0, False, False), (9.9, False, False), (10.0, True, True), (15.9, True, True), (16.0, True, False)],
)
def test_the_eaves_are_closed_as_soon_as_one_source_asks(gap_mm: float, *, needed: bool, differ: bool) -> None:
    closer = eaves_closer(where="eaves", gap_mm=gap_mm, edition=GB)
    assert needed is closer.needed
    assert [10.0, 16.0] == [each.limit for each in closer.findings]
    assert {Verdict.WITHIN} == {each.verdict for each in closer.findings}
    assert differ == any("Sources differ" in each.says for each in closer.findings)


@pytest.mark.parametrize("wrong", [nan, inf, -inf, -0.1])
def test_gaps_that_are_none_are_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="openings at the eaves, eaves"):
        eaves_closer(where="eaves", gap_mm=wrong, edition=GB)
