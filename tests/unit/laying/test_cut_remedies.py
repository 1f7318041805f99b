"""When little is left of a unit, or nothing holds it."""

from dataclasses import replace

import pytest

from gaugerod.laying.ask import OffcutRule
from gaugerod.laying.cut_unit import Remedy
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.laying.remedy import Kept, remedy_for
from tests.scenario.laid_slopes import PLAIN_TILE, slope

BARE = replace(PLAIN_TILE, unit_and_a_half=False)
BOTH = replace(PLAIN_TILE, double=True)


@pytest.mark.parametrize(
    ("shows_ratio", "remedy"),
    [(0.4999, Remedy.UNIT_AND_A_HALF), (0.5, Remedy.AS_CUT), (0.5001, Remedy.AS_CUT), (0.0001, Remedy.UNIT_AND_A_HALF)],
)
def test_half_or_more_is_laid_as_cut(shows_ratio: float, remedy: Remedy) -> None:
    assert remedy_for(Kept(shows_ratio, 0.5, 1, 1), PLAIN_TILE)[0] is remedy


@pytest.mark.parametrize(
    ("reach_count", "remedy"),
    [(0.4999, Remedy.UNIT_AND_A_HALF), (0.5, Remedy.UNIT_AND_A_HALF), (0.5001, Remedy.DOUBLE)],
)
def test_a_piece_that_reaches_past_half_a_cover_needs_a_double(reach_count: float, remedy: Remedy) -> None:
    assert remedy_for(Kept(0.3, reach_count, 1, 1), BOTH)[0] is remedy


def test_without_wider_units_a_small_piece_is_bonded_and_clipped() -> None:
    assert remedy_for(Kept(0.3, 0.4, 1, 1), BARE)[0] is Remedy.BOND_AND_CLIP
    assert remedy_for(Kept(0.3, 0.6, 1, 1), PLAIN_TILE)[0] is Remedy.BOND_AND_CLIP


def test_a_small_piece_between_two_units_or_none_gains_nothing_from_a_wider_unit() -> None:
    assert remedy_for(Kept(0.3, None, 1, 1), BOTH)[0] is Remedy.BOND_AND_CLIP


def test_a_narrow_random_slate_is_chosen_from_the_stack() -> None:
    assert remedy_for(Kept(0.3, 0.3, 0, 0), replace(BARE, random=True))[0] is Remedy.CHOOSE_WIDTH


def test_a_large_piece_with_neither_nib_nor_hole_is_bonded_and_clipped() -> None:
    remedy, remark, _ = remedy_for(Kept(0.9, 0.9, 0, 0), PLAIN_TILE)
    assert remedy is Remedy.BOND_AND_CLIP
    assert remark.startswith("No nib and no nail hole")


def test_what_still_holds_a_piece_is_said() -> None:
    assert remedy_for(Kept(0.9, 0.9, 1, 0), PLAIN_TILE)[1] == "Keeps 1 of 2 nibs and 0 of 2 nail holes."


def test_unknown_nibs_and_holes_are_said_to_be_unknown() -> None:
    assert "not known" in remedy_for(Kept(0.9, 0.9, 0, 0), replace(PLAIN_TILE, nibs=(), holes=()))[1]


def test_the_remedy_names_the_neighbour() -> None:
    ask = slope([(0.0, 0.0), (1540.0, 0.0), (1540.0, 2000.0), (0.0, 2000.0)], bond_mm=0.0)
    piece = cut_units(ask, lay(ask))[0]
    assert (piece.index, piece.neighbour, piece.remedy) == (9, 8, Remedy.UNIT_AND_A_HALF)


def test_a_large_piece_of_slate_is_holed_after_it_is_cut() -> None:
    slate = replace(PLAIN_TILE, offcut_rule=OffcutRule.ALONG, nibs=(), holes=())
    remedy, remark, citation = remedy_for(Kept(0.6, 0.6, 0, 0), slate)
    assert remedy is Remedy.AS_CUT
    assert remark.startswith("Holed after it is cut")
    assert "common-practice" == citation.basis.value
