"""What stands in an opening: nothing said, the kit of its maker, or a chimney dressed in lead."""

from dataclasses import replace

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import Covering, EdgeOpening, LineKind
from gaugerod.edges.openings import opening_edge
from gaugerod.edges.wished import EdgesWished, OpeningMade, WallWished
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, line

SLATE = sized_slate("slate-500x250")
STACK = EdgeOpening(
    name="stack", slope="rear", width_mm=800.0, height_mm=600.0, made=OpeningMade.CHIMNEY, courses_count=3
)


def made(opening: EdgeOpening = STACK, *, covering: Covering = FLAT, wall: WallWished | None = None) -> MadeEdge:
    over = line(LineKind.EAVES)
    return opening_edge(edges_ask(over, wished=EdgesWished(wall=wall), covering=covering), opening)


def piece(edge: MadeEdge, use: LeadUse) -> LeadPieces:
    (found,) = [each for each in edge.lead if each.use is use]
    return found


def test_of_which_nothing_is_said_only_its_round_is_told() -> None:
    edge = made(replace(STACK, made=None))
    assert ("", (), (), ()) == (edge.made, edge.parts, edge.lead, edge.findings)
    assert edge.says[0].startswith("2800 mm all round.")


def test_a_window_comes_with_one_kit_and_no_lead() -> None:
    edge = made(replace(STACK, made=OpeningMade.KIT))
    (kit,) = edge.parts
    assert ("opening-kit", 1.0) == (kit.item, kit.net)
    assert () == edge.lead
    assert "fragile" in edge.says[0]


def test_a_chimney_in_tiles_has_an_apron_two_sides_a_gutter_and_its_flashing() -> None:
    edge = made()
    apron, gutter, over = (piece(edge, use) for use in (LeadUse.APRON, LeadUse.BACK_GUTTER, LeadUse.COVER_FLASHING))
    sides = piece(edge, LeadUse.STEP_AND_COVER)
    assert (1, 800.0 + 2 * 150, 25.0 + 75 + 150) == (apron.count, apron.length_mm, apron.width_mm)
    assert (2, 600.0 + 100) == (sides.count, sides.length_mm)
    assert (1, 1100.0, 100.0 + 150 + 225, 5) == (gutter.count, gutter.length_mm, gutter.width_mm, gutter.code)
    assert (1, 800.0 + 2 * 100, 25.0 + 75) == (over.count, over.length_mm, over.width_mm)


def test_in_slates_each_side_has_a_soaker_to_each_course() -> None:
    edge = made(covering=SLATE)
    assert 2 * 3 == piece(edge, LeadUse.SOAKER).count
    assert 2 == piece(edge, LeadUse.STEP_FLASHING).count


def test_where_rain_splashes_the_apron_goes_higher() -> None:
    assert 25.0 + 150 + 150 == piece(made(wall=WallWished(splash=True)), LeadUse.APRON).width_mm


@pytest.mark.parametrize(("width_mm", "counted"), [(1200.0, True), (1200.1, False), (1600.0, False)])
def test_a_gutter_longer_than_a_piece_is_not_covered_and_not_counted(width_mm: float, counted: bool) -> None:  # noqa: FBT001
    edge = made(replace(STACK, width_mm=width_mm))
    assert counted == any(each.use is LeadUse.BACK_GUTTER for each in edge.lead)
    if not counted:
        assert Verdict.NOT_COVERED is finding(edge.findings, "back gutter").verdict
    assert any(each.use is LeadUse.APRON for each in edge.lead)


def test_lead_of_no_allowed_code_is_not_counted() -> None:
    edge = made(wall=WallWished(lead_code=3))
    assert () == edge.lead
    codes = [each.verdict for each in edge.findings if each.rule == "lead code"]
    assert [Verdict.OUTSIDE, Verdict.WITHIN] == codes  # the flashings, and the gutter of its own code
