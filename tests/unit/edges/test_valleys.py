"""Valleys: clear width by pitch, what lines them, and what no rule reaches."""

from dataclasses import replace

import pytest

from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.edges.ask import Covering, EdgeLine, LineKind
from gaugerod.edges.valleys import valley_edge
from gaugerod.edges.wished import EdgesWished, ValleyMade, ValleyWished
from tests.scenario.edged_roofs import FLAT, edges_ask, finding, line, slope

VALLEY = line(LineKind.VALLEY, slope_deg=26.3)
PLAIN = plain_tile("clay-plain-265x165")


def made(
    wished: ValleyWished, *, covering: Covering = FLAT, over: EdgeLine = VALLEY, pitch_deg: float = 35.0
) -> MadeEdge:
    ask = edges_ask(over, wished=EdgesWished(valley=wished), covering=covering)
    return valley_edge(replace(ask, slopes=(slope("front", pitch_deg=40.0), slope("rear", pitch_deg=pitch_deg))), over)


LEAD = ValleyWished(made=ValleyMade.LEAD)


def test_a_valley_of_which_nothing_is_said_has_a_length_only() -> None:
    edge = valley_edge(edges_ask(VALLEY, wished=EdgesWished()), VALLEY)
    assert ("", (), (), ()) == (edge.made, edge.parts, edge.lead, edge.findings)
    assert "[edges.valley]" in edge.says[0]


@pytest.mark.parametrize(("pitch_deg", "least_mm"), [(29.9, 125.0), (30.0, 100.0), (45.0, 100.0)])
def test_the_flatter_slope_decides_how_wide_it_is_at_the_least(pitch_deg: float, least_mm: float) -> None:
    edge = made(LEAD, pitch_deg=pitch_deg)
    assert 125.0 == edge.clear_mm
    assert least_mm == finding(edge.findings, "valley width").limit


@pytest.mark.parametrize(("clear_mm", "verdict"), [(99.9, Verdict.OUTSIDE), (100.0, Verdict.WITHIN)])
def test_a_width_that_is_said_is_held_to_it(clear_mm: float, verdict: Verdict) -> None:
    edge = made(replace(LEAD, clear_mm=clear_mm))
    assert clear_mm == edge.clear_mm
    assert verdict is finding(edge.findings, "valley width").verdict


def test_the_lead_of_a_valley_is_cut_and_lapped_by_its_own_rise() -> None:
    lining, saddle = made(LEAD).lead
    assert LeadUse.VALLEY_LINING is lining.use
    # 75 ÷ sin 26.3° = 169.3; (9000 − 170) ÷ (1500 − 170) = 6.6, so 7; (9000 + 6 × 170) ÷ 7 = 1431.4
    assert (7, 1432.0, 170.0, 5, 450.0) == (
        lining.count,
        lining.length_mm,
        lining.lap_mm,
        lining.code,
        lining.width_mm,
    )
    assert (LeadUse.VALLEY_SADDLE, 1, 4) == (saddle.use, saddle.count, saddle.code)


def test_its_boards_run_down_both_sides() -> None:
    (board,) = made(LEAD).parts
    assert ("valley-board", 18.0) == (board.item, board.net)
    assert "260 mm wide" in board.what


@pytest.mark.parametrize(
    ("code", "verdict"), [(3, Verdict.OUTSIDE), (4, Verdict.WITHIN), (5, Verdict.WITHIN), (6, Verdict.NOT_COVERED)]
)
def test_only_lead_of_a_code_that_may_lie_there_is_counted(code: int, verdict: Verdict) -> None:
    edge = made(replace(LEAD, lead_code=code))
    assert verdict is finding(edge.findings, "lead code").verdict
    assert (verdict is Verdict.WITHIN) == any(pieces.use is LeadUse.VALLEY_LINING for pieces in edge.lead)


def test_lead_flatter_than_it_is_lapped_is_not_covered() -> None:
    edge = made(LEAD, over=replace(VALLEY, slope_deg=9.9))
    assert Verdict.NOT_COVERED is finding(edge.findings, "lead lap").verdict
    assert [LeadUse.VALLEY_SADDLE] == [pieces.use for pieces in edge.lead]


def test_liners_are_counted_with_their_laps() -> None:
    wished = ValleyWished(made=ValleyMade.LINER, liner_length_mm=3000.0, liner_lap_mm=150.0)
    (part,) = made(wished).parts
    # (9000 − 150) ÷ (3000 − 150) = 3.1
    assert ("valley-liner", 4.0) == (part.item, part.net)
    (one,) = made(wished, over=replace(VALLEY, length_mm=3000.0)).parts
    assert 1.0 == one.net


@pytest.mark.parametrize(
    ("length_mm", "lap_mm", "missing"), [(None, 150.0, "How long a liner is"), (3000.0, None, "How far liners lap")]
)
def test_liners_of_unknown_size_are_not_counted(length_mm: float | None, lap_mm: float | None, missing: str) -> None:
    edge = made(ValleyWished(made=ValleyMade.LINER, liner_length_mm=length_mm, liner_lap_mm=lap_mm))
    assert () == edge.parts
    assert finding(edge.findings, "valley liner").says.startswith(missing)


def test_valley_tiles_are_one_to_a_course_with_plain_tiles() -> None:
    edge = made(
        ValleyWished(made=ValleyMade.VALLEY_TILES), covering=PLAIN, over=replace(VALLEY, courses_count=(40, 42))
    )
    (tiles,) = edge.parts
    assert ("valley-tile", 42.0) == (tiles.item, tiles.net)


@pytest.mark.parametrize("covering", [FLAT, sized_slate("slate-500x250")])
def test_valley_tiles_with_other_coverings_are_not_covered(covering: Covering) -> None:
    edge = made(ValleyWished(made=ValleyMade.VALLEY_TILES), covering=covering)
    assert () == edge.parts
    assert Verdict.NOT_COVERED is finding(edge.findings, "valley tiles").verdict
