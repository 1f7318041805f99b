"""The lines of the order: measured, with allowances, in whole units and packs; what is left out is said."""

from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.answer import PartUnit
from gaugerod.laying.cut_unit import Remedy
from gaugerod.laying.offcuts import OffcutPlan, OffcutUse
from gaugerod.take_off.answer import Trade
from gaugerod.take_off.ask import ExtraCourse
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished, Pack
from tests.scenario.take_off_asks import EXAMPLE, ask, edge, edges, laid, line, part, piece


def per_cent(value: float) -> Limit:
    return Limit(value=value, unit="percent", citation=EXAMPLE)


def test_whole_tiles_with_breakage_whole_up() -> None:
    tiles = line(take_off(ask()), "tile")
    assert 200.0 == tiles.measured.net
    assert ["breakage, 2 per cent"] == [each.name for each in tiles.allowances]
    assert 204.0 == tiles.order
    assert None is tiles.packed
    assert 204.0 == tiles.bought
    assert 204.0 * 4.4 == pytest.approx(tiles.mass_kg)


@pytest.mark.parametrize(
    ("breakage", "order"),
    # 200 tiles: 0.499, 0.5 and 0.501 per cent are 0.998, 1 and 1.002 tiles.
    [(0.0, 200.0), (0.499, 201.0), (0.5, 201.0), (0.501, 202.0), (100.0, 400.0)],
)
def test_the_breakage_stated_is_taken_and_pieces_stay_whole(breakage: float, order: float) -> None:
    assert order == line(take_off(ask(wished=OrderWished(breakage=per_cent(breakage)))), "tile").order


@pytest.mark.parametrize(
    ("size", "packs", "over"), [(203.0, 2, 202.0), (204.0, 1, 0.0), (205.0, 1, 1.0), (0.5, 408, 0.0), (10.0, 21, 6.0)]
)
def test_packs_hold_the_order(size: float, packs: int, over: float) -> None:
    tiles = line(take_off(ask(wished=OrderWished(packs=(Pack(item="tile", size=size, pallet_packs_count=5),)))), "tile")
    assert tiles.packed is not None
    assert (packs, over) == (tiles.packed.packs_count, tiles.packed.over)
    assert packs * size == tiles.bought
    assert -(-packs // 5) == tiles.packed.pallets_count
    assert tiles.bought * 4.4 == pytest.approx(tiles.mass_kg)


def test_goods_by_the_metre_are_ordered_to_the_next_tenth_or_as_the_packs_hold_them() -> None:
    roof = edges(edge("ridge", part("line-batten", 8.208, unit=PartUnit.METRES)))
    loose = line(take_off(ask(edges=roof)), "line-batten")
    needed = loose.measured.net + sum(each.amount for each in loose.allowances)
    assert 8.208 <= needed <= loose.order < needed + 0.1
    assert loose.order == round(loose.order, 1) == loose.bought
    packs = OrderWished(packs=(Pack(item="line-batten", size=needed / 2),))
    packed = line(take_off(ask(edges=roof, wished=packs)), "line-batten")
    assert packed.packed is not None
    assert (needed, 2) == (packed.order, packed.packed.packs_count)


def test_pieces_come_two_from_a_unit_where_an_offcut_serves() -> None:
    slope = laid(whole_count=190, pieces=tuple(piece(at) for at in range(10)))
    assert 200.0 == line(take_off(ask(slope)), "tile").measured.net
    uses = tuple(OffcutUse(first=at, second=at + 1, first_shift_mm=0.0, second_shift_mm=0.0) for at in (0, 2, 4))
    plan = OffcutPlan(uses=uses, pieces_count=10, by_edges=(), kerf_mm=5.0)
    tiles = line(take_off(ask(slope, offcuts=plan)), "tile").measured
    assert 197.0 == tiles.net
    assert (("rear", 200.0), ("served by offcuts", -3.0)) == tiles.by_slope
    assert "whole units laid; 10 pieces to saw from 7 units" == tiles.how


def test_a_wider_unit_is_had_for_the_small_cut_and_its_neighbour() -> None:
    small = piece(0, remedy=Remedy.UNIT_AND_A_HALF, neighbour=1)
    beside_whole = laid(whole_count=198, pieces=(small,))
    answer = take_off(ask(beside_whole))
    assert 198.0 == line(answer, "tile").measured.net
    assert 1.0 == line(answer, "tile-and-a-half").measured.net
    beside_cut = laid(whole_count=198, pieces=(small, piece(1)))
    assert 198.0 == line(take_off(ask(beside_cut)), "tile").measured.net
    assert 1.0 == line(take_off(ask(beside_cut)), "tile-and-a-half").measured.net
    double = laid(whole_count=198, pieces=(piece(0, remedy=Remedy.DOUBLE, neighbour=1),))
    assert 1.0 == line(take_off(ask(double)), "double-tile").measured.net
    assert None is take_off(ask(double)).line("tile-and-a-half")


def test_a_piece_bonded_and_clipped_comes_from_a_whole_unit() -> None:
    slope = laid(whole_count=199, pieces=(piece(0, remedy=Remedy.BOND_AND_CLIP, neighbour=1),))
    assert 200.0 == line(take_off(ask(slope)), "tile").measured.net


def test_half_units_stand_apart() -> None:
    answer = take_off(ask(laid(half_count=7)))
    assert (200.0, 7.0) == (line(answer, "tile").measured.net, line(answer, "half-tile").measured.net)
    assert 8.0 == line(answer, "half-tile").order


def test_extra_courses_are_made_so_or_cut_from_whole_units() -> None:
    made = (
        ExtraCourse(name="under the eaves", item="eaves-tile", units_count=30, length_mm=190.0),
        ExtraCourse(name="short course at the top", item="eaves-tile", units_count=31, length_mm=190.0),
    )
    answer = take_off(ask(laid(extra=made)))
    assert (200.0, 61.0) == (line(answer, "tile").measured.net, line(answer, "eaves-tile").measured.net)
    cut = (ExtraCourse(name="under the eaves", item="slate", units_count=30, length_mm=300.0),)
    slates = take_off(ask(laid(extra=cut), covering=sized_slate("slate-500x250")))
    assert 230.0 == line(slates, "slate").measured.net
    assert "whole units laid; units cut for: under the eaves" == line(slates, "slate").measured.how
    assert None is slates.line("eaves-tile")


def test_lines_stand_in_the_order_they_are_bought_and_sum_over_slopes() -> None:
    roof = edges(edge("ridge", part("ridge-unit", 20.0)), edge("eaves", part("air-unit-low", 3.0)))
    answer = take_off(ask(laid("front"), laid("rear", whole_count=100), edges=roof))
    assert ["tile", "ridge-unit", "air-unit-low"] == [each.measured.item for each in answer.lines]
    assert [Trade.COVERING, Trade.EDGES, Trade.AIR] == [each.measured.trade for each in answer.lines]
    assert (("front", 200.0), ("rear", 100.0)) == line(answer, "tile").measured.by_slope
    assert (3.0, "lines") == (answer.working.value, answer.working.unit)
    assert [306.0, 21.0, 3.0] == [step.value for step in answer.working.parts]


def test_a_slope_not_laid_is_found_and_said_and_nothing_is_compared() -> None:
    answer = take_off(ask(not_laid=("dormer",), not_set_out=("porch",)))
    assert [("dormer", Verdict.NOT_COVERED)] == [(each.where, each.verdict) for each in answer.findings]
    assert answer.not_counted[:2] == (
        "porch: nothing of this slope is counted, for it was not set out.",
        "dormer: the covering of this slope, for it was not laid out unit by unit.",
    )
    assert () == answer.compared


def test_every_fault_is_told_at_once() -> None:
    wished = OrderWished(
        breakage=per_cent(-0.1),
        flat_waste=per_cent(nan),
        packs=(Pack(item="tile", size=0.0, pallet_packs_count=0), Pack(item="tile", size=inf)),
    )
    slope = laid(area_mm2=nan, gauge_mm=0.0, cover_mm=-1.0, whole_count=-1, course_runs_mm=(-1.0, inf))
    with pytest.raises(InputRefused) as refused:
        take_off(ask(slope, wished=wished))
    assert [
        "rear.area",
        "rear.gauge",
        "rear.cover",
        "rear.whole",
        "rear.course_runs",
        "rear.course_runs",
        "order.breakage",
        "order.flat_waste",
        "order.pack.tile.size",
        "order.pack.tile.pallet",
        "order.pack.tile.size",
        "order.pack.item",
    ] == [fault.field for fault in refused.value.faults]


@pytest.mark.parametrize("bad", [nan, inf, -inf, -1.0, 0.0])
def test_a_slope_that_cannot_be_is_refused(bad: float) -> None:
    for slope in (laid(area_mm2=bad), laid(gauge_mm=bad), laid(cover_mm=bad)):
        with pytest.raises(InputRefused):
            take_off(ask(slope))
