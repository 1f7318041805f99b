"""A valley lining of a stated width: boards under all of it, a saddle as wide, its welts against cut units and battens."""

from dataclasses import replace

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.edges.ask import LineKind
from gaugerod.edges.valley_lining import valley_lining
from gaugerod.edges.valleys import valley_edge
from gaugerod.edges.wished import EdgesWished, ValleyMade, ValleyWished
from gaugerod.standards.edition import Edition
from tests.scenario.edged_roofs import edges_ask, finding, line, part

VALLEY = line(LineKind.VALLEY, slope_deg=26.3)
LEAD = ValleyWished(made=ValleyMade.LEAD)


def valley(wished: ValleyWished) -> MadeEdge:
    return valley_edge(edges_ask(VALLEY, wished=EdgesWished(valley=wished)), VALLEY)


@pytest.mark.parametrize(
    ("girth_mm", "board_mm", "saddle_mm"),
    [(None, 260, 450.0), (400.0, 260, 450.0), (450.0, 260, 450.0), (451.0, 260.5, 451.0), (600.0, 335, 600.0)],
)
def test_boards_and_saddle_are_as_wide_as_the_lining_asks(
    girth_mm: float | None, board_mm: float, saddle_mm: float
) -> None:
    """600 wide: welts 300 − 25 = 275 from the line, batten ends at 285, boards 50 further."""
    edge = valley(replace(LEAD, girth_mm=girth_mm))
    assert f"{board_mm:g} mm wide" in part(edge, "valley-board").what
    (saddle,) = [each for each in edge.lead if each.use is LeadUse.VALLEY_SADDLE]
    assert saddle_mm == saddle.width_mm


def test_a_width_that_is_not_stated_is_held_to_nothing() -> None:
    assert not [each for each in valley(LEAD).findings if each.rule == "valley lining"]


@pytest.mark.parametrize(
    ("girth_mm", "verdict", "says"),
    [
        (160.0, Verdict.OUTSIDE, "stop 7.5 mm short of the cut units"),
        (174.0, Verdict.OUTSIDE, "stop 0.5 mm short of the cut units"),
        (175.0, Verdict.NOT_COVERED, "nearer the line than the usual 200 mm"),  # 87.5 − 25 = 62.5: at the cut edge
        (176.0, Verdict.NOT_COVERED, "nearer the line than the usual 200 mm"),
        (449.0, Verdict.NOT_COVERED, "nearer the line than the usual 200 mm"),
        (450.0, Verdict.WITHIN, "where the battens are cut for them"),
        (451.0, Verdict.NOT_COVERED, "further from the line than the 200 mm"),
    ],
)
def test_the_welts_lie_under_the_cut_units_and_where_the_battens_stop(
    girth_mm: float, verdict: Verdict, says: str
) -> None:
    found = finding(valley(replace(LEAD, girth_mm=girth_mm)).findings, "valley lining")
    assert verdict is found.verdict
    assert says in found.says


@pytest.mark.parametrize("wrong", [0.0, -1.0, float("nan"), float("inf")])
def test_what_is_no_width_is_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="valley lining"):
        valley_lining(where="valley", girth_mm=wrong, clear_mm=125.0, edition=Edition.GB)
    with pytest.raises(NothingToSetOut, match="valley lining"):
        valley_lining(where="valley", girth_mm=450.0, clear_mm=wrong, edition=Edition.GB)
