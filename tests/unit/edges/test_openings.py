"""Chimneys dressed in lead, windows with their kit, and openings of which nothing is said."""

from dataclasses import replace

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import Covering, EdgeOpening
from gaugerod.edges.made_lead import LEAD_CAUTION
from gaugerod.edges.make_edges import make_edges
from gaugerod.edges.openings import opening_edge
from gaugerod.edges.wished import EdgesWished, OpeningMade, WallWished
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, items, part, slope

SLATE = sized_slate("slate-500x250")
CHIMNEY = EdgeOpening(
    name="chimney", slope="rear", width_mm=600.0, height_mm=700.0, made=OpeningMade.CHIMNEY, courses_count=3
)


def opening(
    at: EdgeOpening = CHIMNEY,
    *,
    wished: WallWished | None = None,
    covering: Covering = FLAT,
    pitch_deg: float = 35.0,
) -> MadeEdge:
    ask = edges_ask(wished=EdgesWished(wall=wished), covering=covering)
    return opening_edge(replace(ask, slopes=(slope("rear", pitch_deg=pitch_deg),), openings=(at,)), at)


def lead(edge: MadeEdge, use: LeadUse) -> LeadPieces:
    (found,) = [each for each in edge.lead if each.use is use]
    return found


def cut(one: LeadPieces) -> tuple[int, float, float, int, float]:
    return one.count, one.length_mm, one.width_mm, one.code, one.run_mm


def uses(edge: MadeEdge) -> list[LeadUse]:
    return [each.use for each in edge.lead]


def test_an_opening_of_which_nothing_is_said_is_told_all_round() -> None:
    edge = opening(replace(CHIMNEY, made=None))
    assert ("rear, chimney", "", (), (), ()) == (edge.name, edge.made, edge.parts, edge.lead, edge.findings)
    assert ("2600 mm all round. What stands in it is not said: give made in its [[slope.opening]].",) == edge.says
    assert 0 == edge.working.value
    assert [2600.0] == [each.value for each in edge.working.parts]


def test_a_window_comes_with_its_kit_and_no_lead() -> None:
    edge = opening(replace(CHIMNEY, made=OpeningMade.KIT))
    assert ["opening-kit"] == items(edge)
    assert (1.0, ()) == (part(edge, "opening-kit").net, edge.lead)
    assert "600 × 700 mm" in part(edge, "opening-kit").what
    assert "2600 mm all round" in edge.says[0]
    assert "fragile" in edge.says[0]
    assert LEAD_CAUTION not in edge.says


def test_a_chimney_among_single_lap_tiles() -> None:
    edge = opening()
    assert "chimney, dressed in lead" == edge.made
    assert [
        LeadUse.APRON,
        LeadUse.STEP_AND_COVER,
        LeadUse.BACK_GUTTER,
        LeadUse.COVER_FLASHING,
    ] == uses(edge)
    assert (1, 900.0, 25 + 75 + 150, 4, 900.0) == cut(lead(edge, LeadUse.APRON))
    assert (2, 800.0, 25 + 75 + 65 + 150, 4, 1600.0) == cut(lead(edge, LeadUse.STEP_AND_COVER))
    assert (1, 900.0, 100 + 150 + 225, 5, 900.0) == cut(lead(edge, LeadUse.BACK_GUTTER))
    assert (1, 800.0, 25 + 75, 4, 800.0) == cut(lead(edge, LeadUse.COVER_FLASHING))
    assert {Verdict.WITHIN} == {each.verdict for each in edge.findings}
    assert LEAD_CAUTION == edge.says[-1]
    assert any("asbestos" in said for said in edge.says)


def test_the_numbers_in_words_are_those_the_lead_is_cut_to() -> None:
    edge = opening()
    assert (
        "600 mm and 150 mm past each corner; width: 25 mm into the joint + 75 mm up + 150 mm down over the covering"
        == lead(edge, LeadUse.APRON).how
    )
    assert (
        "600 mm and 150 mm past each corner; width: 100 mm up the chimney + 150 mm of sole + 225 mm under the covering"
        == lead(edge, LeadUse.BACK_GUTTER).how
    )
    assert (
        "600 mm and 100 mm round each corner; width: 25 mm into the joint + 75 mm down over the gutter's upstand"
        == lead(edge, LeadUse.COVER_FLASHING).how
    )
    assert lead(edge, LeadUse.STEP_AND_COVER).how.startswith("both sides alike; each: 800 mm in equal pieces")


def test_both_sides_are_counted() -> None:
    """Twice one side: soakers, pieces, run and mass."""
    edge = opening(covering=SLATE)
    soakers, flashing = lead(edge, LeadUse.SOAKER), lead(edge, LeadUse.STEP_FLASHING)
    assert (6, 445.0, 175.0, 3, 6 * 445.0) == cut(soakers)
    assert soakers.how.startswith("both sides alike; each: one to each of 3 courses")
    assert (2, 800.0, 165.0, 4, 1600.0) == cut(flashing)
    assert 2 * 3 * 0.445 * 0.175 * 14.97 == pytest.approx(soakers.mass_kg)


def test_a_tall_chimney_has_pieces_that_lap_on_each_side() -> None:
    sides = lead(opening(replace(CHIMNEY, height_mm=2000.0)), LeadUse.STEP_AND_COVER)
    # 2100 and a lap of 75 ÷ sin 35° = 130.8, so 131; (2100 + 131) ÷ 2 = 1115.5
    assert (4, 1116.0, 131.0, 4200.0) == (sides.count, sides.length_mm, sides.lap_mm, sides.run_mm)


@pytest.mark.parametrize(("width_mm", "count"), [(1199.9, 1), (1200.0, 1), (1200.1, 2), (2600.0, 2), (2600.1, 3)])
def test_the_apron_reaches_past_the_corners_and_is_cut_where_too_long(width_mm: float, count: int) -> None:
    apron = lead(opening(replace(CHIMNEY, width_mm=width_mm)), LeadUse.APRON)
    assert (count, width_mm + 300.0) == (apron.count, apron.run_mm)


@pytest.mark.parametrize(("width_mm", "counted"), [(1199.9, True), (1200.0, True), (1200.1, False), (2600.0, False)])
def test_a_back_gutter_longer_than_a_piece_is_not_covered_and_not_counted(width_mm: float, counted: bool) -> None:  # noqa: FBT001
    edge = opening(replace(CHIMNEY, width_mm=width_mm))
    assert counted is (LeadUse.BACK_GUTTER in uses(edge))
    found = [each for each in edge.findings if each.rule == "back gutter"]
    assert ([] if counted else [Verdict.NOT_COVERED]) == [each.verdict for each in found]
    assert {LeadUse.APRON, LeadUse.COVER_FLASHING} <= set(uses(edge))


def test_the_mass_is_that_of_all_four_sides() -> None:
    edge = opening()
    area_m2 = 0.9 * 0.25 + 2 * 0.8 * 0.315 + 0.8 * 0.1
    assert area_m2 * 20.41 + 0.9 * 0.475 * 25.40 == pytest.approx(edge.working.value)
    assert {"pieces": 5.0} == edge.working.inputs
    assert [each.mass_kg for each in edge.lead] == [each.value for each in edge.working.parts[1:]]


def test_no_courses_beside_it_take_no_soakers() -> None:
    edge = opening(replace(CHIMNEY, courses_count=0), covering=SLATE)
    assert LeadUse.SOAKER not in uses(edge)
    assert LeadUse.STEP_FLASHING in uses(edge)


@pytest.mark.parametrize(("code", "verdict"), [(3, Verdict.OUTSIDE), (6, Verdict.NOT_COVERED)])
def test_of_a_code_that_may_not_lie_here_only_soakers_are_counted(code: int, verdict: Verdict) -> None:
    edge = opening(wished=WallWished(lead_code=code), covering=SLATE)
    assert [LeadUse.SOAKER] == uses(edge)
    verdicts = {each.proposed: each.verdict for each in edge.findings if each.rule == "lead code"}
    assert {float(code): verdict, 5.0: Verdict.WITHIN} == verdicts
    assert () == opening(wished=WallWished(lead_code=code)).lead


def test_with_code_5_said_the_whole_chimney_is_of_code_5() -> None:
    assert {5} == {each.code for each in opening(wished=WallWished(lead_code=5)).lead}


def test_a_short_side_cover_is_outside_at_a_chimney_too() -> None:
    edge = opening(wished=WallWished(side_cover_mm=149.0))
    assert Verdict.OUTSIDE in {each.verdict for each in edge.findings if each.rule == "side cover of a flashing"}
    assert 165.0 + 149.0 == lead(edge, LeadUse.STEP_AND_COVER).width_mm


def test_findings_come_once_each() -> None:
    found = opening().findings
    assert len(set(found)) == len(found)
    assert 131.0 == finding(found, "lead lap").limit
    steep = opening(pitch_deg=60.0).findings
    assert 100.0 == finding(steep, "lead lap").limit  # 75 ÷ sin 60° = 86.6, less than flashings lap


def test_where_rain_splashes_apron_and_sides_go_higher() -> None:
    edge = opening(wished=WallWished(splash=True))
    assert 25 + 150 + 150 == lead(edge, LeadUse.APRON).width_mm
    assert "+ 150 mm up +" in lead(edge, LeadUse.APRON).how
    assert 25 + 75 + 150 + 150 == lead(edge, LeadUse.STEP_AND_COVER).width_mm


def test_on_a_slope_too_flat_for_laps_that_is_found() -> None:
    edge = opening(pitch_deg=9.9)
    assert Verdict.NOT_COVERED in {each.verdict for each in edge.findings if each.rule == "lead lap"}


@pytest.mark.parametrize("wrong", [float("nan"), float("inf"), 0.0, -1.0])
def test_openings_that_cannot_be_are_refused_together(wrong: float) -> None:
    bad = replace(CHIMNEY, width_mm=wrong, height_mm=wrong, courses_count=-1)
    wished = EdgesWished(wall=WallWished(side_cover_mm=wrong))
    with pytest.raises(InputRefused) as refused:
        make_edges(replace(edges_ask(wished=wished), openings=(bad,)))
    assert [
        "edges.wall.side_cover",
        "rear, chimney.width",
        "rear, chimney.height",
        "rear, chimney.courses",
    ] == [fault.field for fault in refused.value.faults]
