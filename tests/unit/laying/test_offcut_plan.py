"""Two pieces from one unit."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import pytest
from shapely import Polygon, box
from shapely.affinity import translate

from gaugerod.laying.ask import LayingAsk, OffcutRule, Unit
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from gaugerod.laying.offcuts import KERF_MM, OffcutPlan, from_wider_units, plan_offcuts
from tests.scenario.laid_slopes import HIPPED, PLAIN_TILE, mirrored, slope

PLAIN = replace(PLAIN_TILE, unit_and_a_half=False)
SLATE = replace(PLAIN, nibs=(), holes=(), offcut_rule=OffcutRule.ALONG)


def pieces_of(ask: LayingAsk) -> tuple[CutUnit, ...]:
    return cut_units(ask, lay(ask))


def verge_pieces(left_mm: float, right_mm: float) -> tuple[CutUnit, ...]:
    """One course of a tile 100 mm long: a piece of left_mm at the left verge and one of right_mm at the right."""
    end = 165.0 * 4 + left_mm + right_mm
    return pieces_of(slope([(0.0, 0.0), (end, 0.0), (end, 100.0), (0.0, 100.0)], unit=PLAIN, first_mm=left_mm - 165.0,
                           unit_length_mm=100.0))  # fmt: skip


@pytest.mark.parametrize(("right_mm", "saved"), [(79.999, 1), (80.0, 1), (80.001, 0)])
def test_left_and_right_pieces_come_from_one_unit_when_the_blade_fits_between(right_mm: float, saved: int) -> None:
    plan = plan_offcuts([verge_pieces(80.0, right_mm)], unit=PLAIN)
    assert (plan.pieces_count, plan.saved_count, plan.units_count) == (2, saved, 2 - saved)


def test_two_left_pieces_of_tile_do_not_share_a_unit() -> None:
    pieces = [piece for piece in verge_pieces(80.0, 120.0) if piece.index == 0]
    assert plan_offcuts([pieces * 2], unit=PLAIN).saved_count == 0


def test_two_left_pieces_of_slate_share_one_moved_apart() -> None:
    pieces = [piece for piece in verge_pieces(80.0, 120.0) if piece.index == 0]
    (use,) = plan_offcuts([pieces * 2], unit=SLATE).uses
    assert sorted([use.first_shift_mm, use.second_shift_mm]) == pytest.approx([-85.0, 0.0])


def test_pieces_of_different_lengths_never_share_a_unit() -> None:
    pieces = verge_pieces(80.0, 80.0)
    other = replace(pieces[1], length_mm=110.0)
    assert plan_offcuts([[pieces[0], other]], unit=PLAIN).saved_count == 0


def test_pieces_cut_from_a_unit_and_a_half_are_left_out() -> None:
    ask = slope([(0.0, 0.0), (1540.0, 0.0), (1540.0, 2000.0), (0.0, 2000.0)], bond_mm=0.0)
    assert plan_offcuts([pieces_of(ask)], unit=PLAIN_TILE).pieces_count < len(pieces_of(ask))


def test_a_neighbour_cut_with_a_small_piece_from_one_wider_unit_is_left_out_too() -> None:
    pieces = pieces_of(slope(HIPPED))
    with_neighbour = {(piece.course, piece.neighbour) for piece in pieces if piece.remedy is Remedy.UNIT_AND_A_HALF}
    sawn_too = [at for at, piece in enumerate(pieces) if (piece.course, piece.index) in with_neighbour]
    assert sawn_too
    assert set(sawn_too) <= from_wider_units(pieces)
    plan = plan_offcuts([pieces], unit=PLAIN_TILE)
    assert plan.pieces_count == len(pieces) - len(from_wider_units(pieces))
    assert not {at for use in plan.uses for at in (use.first, use.second)} & from_wider_units(pieces)


def test_neighbours_are_told_apart_slope_by_slope() -> None:
    pieces = pieces_of(slope(HIPPED))
    small = [piece for piece in pieces if piece.remedy is Remedy.UNIT_AND_A_HALF]
    at_its_place = [piece for piece in pieces if (piece.course, piece.index) == (small[0].course, small[0].neighbour)]
    assert at_its_place
    assert plan_offcuts([small[:1], at_its_place], unit=PLAIN_TILE).pieces_count == len(at_its_place)
    assert plan_offcuts([[*small[:1], *at_its_place]], unit=PLAIN_TILE).pieces_count == 0


def test_no_pieces_need_no_units() -> None:
    plan = plan_offcuts([], unit=PLAIN)
    assert (plan.uses, plan.units_count, plan.by_edges) == ((), 0, ())


def never_overlap(pieces: Sequence[CutUnit], plan: OffcutPlan, width_mm: float, kerf_mm: float) -> None:
    """Every pair lies apart by the blade, inside the unit, neither turned nor raised; no piece is used twice."""
    for use in plan.uses:
        first, second = (Polygon(pieces[at].own_rings_mm[0]) for at in (use.first, use.second))
        first, second = translate(first, use.first_shift_mm), translate(second, use.second_shift_mm)
        assert first.distance(second) >= kerf_mm - 1e-9
        unit = box(0.0, 0.0, width_mm, pieces[use.first].length_mm).buffer(1e-6)
        assert unit.contains(first)
        assert unit.contains(second)
    used = Counter(at for use in plan.uses for at in (use.first, use.second))
    assert set(used.values()) <= {1}


@pytest.mark.parametrize("unit", [PLAIN, SLATE], ids=["tile", "slate"])
def test_hip_to_hip_pairs_really_fit(unit: Unit) -> None:
    pieces = pieces_of(slope(HIPPED, unit=unit))
    plan = plan_offcuts([pieces], unit=unit)
    assert plan.saved_count > 10
    never_overlap(pieces, plan, 165.0, KERF_MM)
    assert sum(count for _, count in plan.by_edges) == plan.saved_count


def test_tiles_at_equal_hips_pair_left_with_right() -> None:
    plan = plan_offcuts([pieces_of(slope(HIPPED, unit=PLAIN))], unit=PLAIN)
    assert ("left hip", "right hip") in dict(plan.by_edges)


def test_a_wider_blade_never_saves_more() -> None:
    pieces = pieces_of(slope(HIPPED, unit=PLAIN))
    saved = [
        plan_offcuts([pieces], unit=PLAIN, kerf_mm=kerf_mm).saved_count for kerf_mm in (0.0, 5.0, 20.0, 60.0, 200.0)
    ]
    assert saved == sorted(saved, reverse=True)
    assert saved[-1] < saved[0]


def test_the_mirrored_slope_saves_as_many() -> None:
    ask = slope(HIPPED, unit=PLAIN)
    one, other = (plan_offcuts([pieces_of(way)], unit=PLAIN).saved_count for way in (ask, mirrored(ask)))
    assert one == other
