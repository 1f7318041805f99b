"""Verges: dry, bedded, cloaked; what is counted, what is said, what is found."""

from dataclasses import replace

import pytest

from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, plain_tiles, sized_slate
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import Covering, Hand, LineKind
from gaugerod.edges.sides import verge_edge
from gaugerod.edges.wished import EdgesWished, VergeMade, VergeWished
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, items, line, part, slope

PLAIN = plain_tile(next(iter(plain_tiles())))
SLATE = sized_slate("slate-500x250")


def verge(
    wished: VergeWished | None,
    *,
    covering: Covering = FLAT,
    gauge_mm: float = 345.0,
    pitch_deg: float = 35.0,
    length_mm: float = 4750.0,
) -> MadeEdge:
    over = line(LineKind.VERGE, length_mm=length_mm, past_ends_mm=50.0)
    ask = edges_ask(over, wished=EdgesWished(verge=wished), covering=covering)
    return verge_edge(replace(ask, slopes=(slope("rear", gauge_mm=gauge_mm, pitch_deg=pitch_deg),)), over)


DRY = VergeWished(made=VergeMade.DRY)
BEDDED = VergeWished(made=VergeMade.BEDDED)
CLOAKED = VergeWished(made=VergeMade.CLOAKED)


@pytest.mark.parametrize(("wished", "item"), [(DRY, "dry-verge-unit"), (CLOAKED, "cloaked-verge-tile")])
def test_a_unit_goes_to_each_course(wished: VergeWished, item: str) -> None:
    edge = verge(wished)
    assert [item] == items(edge)
    assert (14.0, Basis.COMMON_PRACTICE) == (part(edge, item).net, part(edge, item).citation.basis)
    assert any("left-handed or right-handed" in said for said in edge.says)
    assert () == edge.findings


@pytest.mark.parametrize("hand", list(Hand))
def test_units_of_a_known_hand_are_items_of_their_own(hand: Hand) -> None:
    over = line(LineKind.VERGE, length_mm=4800.0, hand=hand)
    edge = verge_edge(edges_ask(over, wished=EdgesWished(verge=DRY)), over)
    found = part(edge, f"dry-verge-unit-{hand.value}")
    assert (14.0, f"dry-verge unit, {hand.value}-hand") == (found.net, found.what)


@pytest.mark.parametrize(
    ("wished", "covering", "counted"),
    [(DRY, PLAIN, False), (DRY, SLATE, False), (CLOAKED, PLAIN, True), (CLOAKED, SLATE, False)],
)
def test_a_verge_not_made_for_the_covering_is_not_counted_but_found(
    wished: VergeWished, covering: Covering, *, counted: bool
) -> None:
    edge = verge(wished, covering=covering)
    assert counted == bool(edge.parts)
    assert ([] if counted else [Verdict.NOT_COVERED]) == [each.verdict for each in edge.findings]
    assert edge.made


@pytest.mark.parametrize(("length_mm", "strips"), [(4749.9, 4), (4750.0, 4), (4750.1, 5)])
def test_undercloak_comes_in_whole_strips(length_mm: float, strips: int) -> None:
    """50 mm past the eaves, so 4800 mm is four strips of 1200."""
    edge = verge(BEDDED, length_mm=length_mm)
    assert ["undercloak", "mortar"] == items(edge)
    assert float(strips) == part(edge, "undercloak").net
    assert Basis.COMMON_PRACTICE is part(edge, "undercloak").citation.basis


def test_the_job_may_give_its_own_strip_and_bed() -> None:
    edge = verge(replace(BEDDED, undercloak_length_mm=900.0, bed_mm=75.0))
    assert 6.0 == part(edge, "undercloak").net
    assert 75 * 25 * 4800 / 1e6 == part(edge, "mortar").net
    assert "900 × 150 mm" in part(edge, "undercloak").what


def test_with_no_bed_given_the_widest_that_a_source_asks_for_is_taken_and_both_are_shown() -> None:
    edge = verge(BEDDED)
    assert 100 * 25 * 4800 / 1e6 == part(edge, "mortar").net
    assert [Verdict.NOT_COVERED, Verdict.WITHIN, Verdict.WITHIN] == [each.verdict for each in edge.findings]
    assert Verdict.WITHIN is finding(edge.findings, "verge bed on the undercloak").verdict


def test_mortar_is_never_said_to_hold_a_verge() -> None:
    assert any("Mortar does not hold them" in said for said in verge(BEDDED).says)


@pytest.mark.parametrize(
    ("gauge_mm", "pitch_deg", "will_do"),
    [(265.0, 30.0, True), (265.1, 30.0, False), (265.0, 29.9, False), (264.9, 30.1, True)],
)
def test_plain_tiles_as_undercloak_only_where_gauge_and_pitch_let_them(
    gauge_mm: float, pitch_deg: float, *, will_do: bool
) -> None:
    said = " ".join(verge(BEDDED, gauge_mm=gauge_mm, pitch_deg=pitch_deg).says)
    assert will_do == ("Plain tiles would do as the undercloak here" in said)
    assert will_do != ("Plain tiles will not do" in said)


def test_a_verge_of_which_nothing_is_said_has_a_length_only() -> None:
    edge = verge(None)
    assert ("", (), ()) == (edge.made, edge.parts, edge.findings)
    assert ("4800 mm long. How it is made is not said: give it in [edges.verge].",) == edge.says
