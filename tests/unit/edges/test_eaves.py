"""Eaves: trays and their laps, and the comb filler two sources differ on."""

from math import inf, nan

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.catalogue import covering as generic
from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import Covering, LineKind
from gaugerod.edges.eaves import eaves_edge, eaves_trays
from gaugerod.edges.wished import EavesWished, EdgesWished
from gaugerod.standards.edition import Edition
from tests.scenario.edged_roofs import FLAT, PROFILED, edges_ask, items, line, part


def eaves(wished: EavesWished | None, covering: Covering = PROFILED) -> MadeEdge:
    over = line(LineKind.EAVES, past_ends_mm=90.0)
    return eaves_edge(edges_ask(over, wished=EdgesWished(eaves=wished), covering=covering), over)


@pytest.mark.parametrize("gap_mm", [9.9, 10.0, 15.9, 16.0, 30.0])
def test_a_comb_filler_is_counted_as_soon_as_one_source_asks_for_it(gap_mm: float) -> None:
    edge = eaves(EavesWished(gap_mm=gap_mm))
    needed = gap_mm >= 10.0
    assert (["comb-filler"] if needed else []) == items(edge)
    assert 2 == len(edge.findings)
    assert {Verdict.WITHIN} == {each.verdict for each in edge.findings}
    assert (10.0 <= gap_mm < 16.0) == any("Sources differ" in each.says for each in edge.findings)
    if needed:
        assert 9.09 == pytest.approx(part(edge, "comb-filler").net)


def test_a_gap_that_was_not_measured_is_not_covered() -> None:
    edge = eaves(EavesWished())
    assert [] == items(edge)
    assert [Verdict.NOT_COVERED] == [each.verdict for each in edge.findings]


@pytest.mark.parametrize("covering", [FLAT, sized_slate("slate-500x250")])
def test_flat_tiles_and_slates_leave_no_gap_to_close(covering: Covering) -> None:
    edge = eaves(EavesWished(gap_mm=30.0), covering)
    assert ((), ()) == (edge.parts, edge.findings)
    assert edge.made
    assert any("30 mm is not used" in said for said in edge.says)


def test_a_pantile_leaves_gaps() -> None:
    assert 1 == len(eaves(EavesWished(), generic("clay-pantile-340x240")).findings)


def test_trays_lap() -> None:
    edge = eaves(EavesWished(tray_length_mm=1500.0), FLAT)
    assert 7.0 == part(edge, "eaves-tray").net  # 7 × 1500 − 6 × 100 = 9900, six reach 8500 of 9090
    assert "trays" == edge.made


@pytest.mark.parametrize(("length_mm", "count"), [(0.1, 1), (1500.0, 1), (1500.1, 2), (2900.0, 2), (2900.1, 3)])
def test_trays_just_reach(length_mm: float, count: int) -> None:
    assert count == eaves_trays(where="rear", length_mm=length_mm, tray_length_mm=1500.0, edition=Edition.GB)


@pytest.mark.parametrize("wrong", [nan, inf, -inf, 0.0, -1.0, 100.0])
def test_a_tray_that_is_none_is_refused(wrong: float) -> None:
    with pytest.raises(NothingToSetOut, match="eaves trays, rear"):
        eaves_trays(where="rear", length_mm=9000.0, tray_length_mm=wrong, edition=Edition.GB)


def test_an_eaves_of_which_nothing_is_said_has_a_length_only() -> None:
    edge = eaves(None)
    assert ("", (), ()) == (edge.made, edge.parts, edge.findings)
    assert ("9090 mm long. How it is made is not said: give it in [edges.eaves].",) == edge.says
