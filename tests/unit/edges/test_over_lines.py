"""Ridges and hips under units, bonnets or nothing: what is counted, what is said, what is found."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, plain_tiles, sized_slate
from gaugerod.edges.answer import LeadUse, MadeEdge, PartUnit
from gaugerod.edges.ask import Covering, EdgeLine, EdgeSlope, LineKind
from gaugerod.edges.over_lines import hip_edge, ridge_edge
from gaugerod.edges.wished import EdgesWished, HipMade, LineUnit, RidgeMade, RidgeWished
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, items, line, part, slope

UNIT = LineUnit(length_mm=460.0, cover_mm=450.0, fixings_count=2, mass_kg=4.0)
DRY = RidgeWished(made=RidgeMade.DRY, ridge=UNIT, mono_ridge=UNIT, hip=UNIT)
BEDDED = replace(DRY, made=RidgeMade.BEDDED)
HIP = line(LineKind.HIP, slope_deg=26.3)
PLAIN = plain_tile(next(iter(plain_tiles())))


def ridge(wished: RidgeWished | None, kind: LineKind = LineKind.RIDGE, length_mm: float = 9000.0) -> MadeEdge:
    over = line(kind, length_mm=length_mm, past_ends_mm=90.0)
    return ridge_edge(edges_ask(over, wished=EdgesWished(ridge=wished)), over)


def test_a_dry_ridge_takes_units_fixings_a_batten_and_a_roll() -> None:
    edge = ridge(DRY)
    assert ["ridge-unit", "line-unit-fixing", "ridge-batten", "dry-line-roll"] == items(edge)
    assert 21.0 == part(edge, "ridge-unit").net  # 9090 = 19 × 450 + 540, shared as two of 270
    assert edge.run is not None
    assert (19, (270.0, 270.0)) == (edge.run.whole_count, edge.run.cut_mm)
    assert 84.0 == part(edge, "ridge-unit").mass_kg
    assert 42.0 == part(edge, "line-unit-fixing").net
    assert (9.0, PartUnit.METRES) == (part(edge, "ridge-batten").net, part(edge, "ridge-batten").unit)
    assert 9.09 == pytest.approx(part(edge, "dry-line-roll").net)
    assert "ridge units, dry" == edge.made
    assert {Verdict.WITHIN} == {each.verdict for each in edge.findings}


@pytest.mark.parametrize(
    ("length_mm", "units", "says"),
    [
        (1260.0, (3, ()), None),  # 1350 = 3 × 450
        (1110.0, (2, (300.0,)), "Keep the cut ones away from the ends, and never at a gable."),
        (1010.0, (1, (325.0, 325.0)), "There is no whole one for each end"),
        (110.0, (0, (200.0,)), "There is no whole one for each end"),
    ],
)
def test_where_cut_units_go_along_a_ridge_is_said_only_where_it_can_be(
    length_mm: float, units: tuple[int, tuple[float, ...]], says: str | None
) -> None:
    edge = ridge(DRY, length_mm=length_mm)
    assert edge.run is not None
    assert units == (edge.run.whole_count, edge.run.cut_mm)
    assert [] == [said for said in edge.says if "away from the ends" in said and says != said]
    assert says is None or any(said.startswith(says) for said in edge.says)


@pytest.mark.parametrize(
    ("length_mm", "says"),
    [
        (449.0, "There is no whole one: lay what there is with its cut end up"),
        (700.0, "Start with a whole one at the foot; the cut ones come below the last at the top."),
    ],
)
def test_a_hip_starts_with_a_whole_unit_only_where_there_is_one(length_mm: float, says: str) -> None:
    over = replace(HIP, length_mm=length_mm)
    edge = hip_edge(edges_ask(over, wished=EdgesWished(ridge=DRY)), over)
    (said,) = [each for each in edge.says if "whole one" in each]
    assert said.startswith(says)


def test_a_bedded_ridge_takes_mortar_and_no_roll() -> None:
    edge = ridge(BEDDED)
    assert ["ridge-unit", "line-unit-fixing", "ridge-batten", "mortar"] == items(edge)
    assert 2 * 50 * 25 * 9090 / 1e6 == part(edge, "mortar").net
    assert PartUnit.LITRES is part(edge, "mortar").unit
    assert Basis.HOUSE is part(edge, "mortar").citation.basis
    assert any("1 cement to 3 sand" in line_said for line_said in edge.says)


def test_a_mono_ridge_takes_its_own_unit() -> None:
    other = replace(DRY, mono_ridge=replace(UNIT, cover_mm=300.0))
    assert ["mono-ridge-unit", "line-unit-fixing", "ridge-batten", "dry-line-roll"] == items(
        ridge(other, LineKind.MONO_RIDGE)
    )
    assert 31.0 == part(ridge(other, LineKind.MONO_RIDGE), "mono-ridge-unit").net  # 9090 = 29 × 300 + 390


def test_mortar_alone_is_outside() -> None:
    loose = replace(BEDDED, ridge=replace(UNIT, fixings_count=0))
    edge = ridge(loose)
    assert Verdict.OUTSIDE is finding(edge.findings, "fixing of ridge and hip units").verdict
    assert "line-unit-fixing" not in items(edge)
    assert Verdict.WITHIN is finding(ridge(BEDDED).findings, "fixing of ridge and hip units").verdict


def test_a_unit_that_is_not_known_is_not_counted_and_that_is_said() -> None:
    edge = ridge(RidgeWished(made=RidgeMade.DRY))
    assert ["ridge-batten", "dry-line-roll"] == items(edge)
    assert edge.run is None
    assert Verdict.NOT_COVERED is finding(edge.findings, "ridge units").verdict
    assert "[edges.ridge.unit]" in finding(edge.findings, "ridge units").says
    assert any("9090 mm" in line_said for line_said in edge.says)


def test_a_ridge_of_which_nothing_is_said_has_a_length_only() -> None:
    edge = ridge(None)
    assert ("", (), (), None) == (edge.made, edge.parts, edge.findings, edge.run)
    assert ("9090 mm long. How it is made is not said: give it in [edges.ridge].",) == edge.says


@pytest.mark.parametrize(("length_mm", "verdict"), [(134.0, Verdict.OUTSIDE), (135.0, Verdict.WITHIN)])
def test_a_line_under_half_a_unit_is_said_to_be(length_mm: float, verdict: Verdict) -> None:
    """90 mm past its ends, so 224 and 225 mm of 450."""
    assert verdict is finding(ridge(DRY, length_mm=length_mm).findings, "cut ridge or hip unit").verdict


@pytest.mark.parametrize(
    ("laid_mm", "verdict"),
    [(2 * 450.0 + 300.0, Verdict.WITHIN), (2 * 450.0 + 100.0, Verdict.NOT_COVERED), (451.0, Verdict.NOT_COVERED)],
)
def test_with_fewer_than_two_whole_units_a_cut_one_comes_to_an_end(laid_mm: float, verdict: Verdict) -> None:
    found = ridge(DRY, length_mm=laid_mm - 90.0).findings
    assert verdict is finding(found, "cut ridge unit at a gable").verdict


def hip(
    wished: RidgeWished, *, over: EdgeLine = HIP, covering: Covering = FLAT, slopes: tuple[EdgeSlope, ...] | None = None
) -> MadeEdge:
    ask = edges_ask(over, wished=EdgesWished(ridge=wished), covering=covering)
    return hip_edge(ask if slopes is None else replace(ask, slopes=slopes), over)


def test_a_bedded_hip_has_an_iron_at_its_foot_and_a_dry_one_none() -> None:
    assert ["hip-unit", "line-unit-fixing", "ridge-batten", "mortar", "hip-iron"] == items(hip(BEDDED))
    assert (1.0, Basis.COMMON_PRACTICE) == (
        part(hip(BEDDED), "hip-iron").net,
        part(hip(BEDDED), "hip-iron").citation.basis,
    )
    assert ["hip-unit", "line-unit-fixing", "ridge-batten", "dry-line-roll"] == items(hip(DRY))
    assert Basis.COMMON_PRACTICE is part(hip(DRY), "ridge-batten").citation.basis
    assert "hip iron" not in " ".join(hip(DRY).says)


def test_bonnets_go_by_the_slope_with_more_courses() -> None:
    edge = hip(replace(BEDDED, hips=HipMade.BONNET), over=replace(HIP, courses_count=(40, 42)), covering=PLAIN)
    assert ["bonnet", "line-unit-fixing", "mortar", "hip-iron"] == items(edge)
    assert 42.0 == part(edge, "bonnet").net
    assert 84.0 == part(edge, "line-unit-fixing").net
    assert "40 end here on the other slope" in part(edge, "bonnet").how
    assert [Verdict.WITHIN] == [each.verdict for each in edge.findings]


def test_bonnets_with_no_unit_given_have_one_nail_each() -> None:
    edge = hip(
        RidgeWished(made=RidgeMade.DRY, hips=HipMade.BONNET), over=replace(HIP, courses_count=(40, 40)), covering=PLAIN
    )
    assert (40.0, 40.0) == (part(edge, "bonnet").net, part(edge, "line-unit-fixing").net)
    assert part(edge, "bonnet").mass_kg is None


def test_bonnets_on_other_than_plain_tiles_are_not_covered() -> None:
    found = hip(replace(BEDDED, hips=HipMade.BONNET)).findings
    assert Verdict.NOT_COVERED is finding(found, "bonnets").verdict


def test_bonnets_of_a_hip_known_from_one_side_say_so() -> None:
    edge = hip(
        replace(BEDDED, hips=HipMade.BONNET), over=replace(HIP, courses_count=(40,), slopes=("rear",)), covering=PLAIN
    )
    assert "[[edges.shared]]" in finding(edge.findings, "bonnets").says


MITRED = replace(DRY, hips=HipMade.MITRED)


@pytest.mark.parametrize(
    ("pitch_deg", "verdict"), [(29.9, Verdict.OUTSIDE), (30.0, Verdict.WITHIN), (30.1, Verdict.WITHIN)]
)
def test_a_mitred_hip_goes_by_the_flatter_slope(pitch_deg: float, verdict: Verdict) -> None:
    slopes = (slope("front", pitch_deg=45.0), slope("rear", pitch_deg=pitch_deg))
    edge = hip(MITRED, covering=sized_slate("slate-500x250"), slopes=slopes)
    assert verdict is finding(edge.findings, "mitred hip").verdict


def test_a_mitred_hip_has_a_soaker_to_each_course_of_the_slope_with_more() -> None:
    edge = hip(MITRED, covering=sized_slate("slate-500x250"), over=replace(HIP, courses_count=(20, 21)))
    assert {LeadUse.SOAKER} == {each.use for each in edge.lead}
    assert 21 == sum(each.count for each in edge.lead)
    assert () == edge.parts
