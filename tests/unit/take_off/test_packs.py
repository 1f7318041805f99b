"""Whole packs and pallets: just below, at and just above what they hold."""

import pytest

from gaugerod.take_off.packs import packed
from gaugerod.take_off.wished import Pack


@pytest.mark.parametrize(
    ("order", "packs", "over"),
    [(0.0, 0, 0.0), (1.0, 1, 41.0), (41.0, 1, 1.0), (42.0, 1, 0.0), (43.0, 2, 41.0), (84.0, 2, 0.0), (85.0, 3, 41.0)],
)
def test_packs_of_forty_two(order: float, packs: int, over: float) -> None:
    bought = packed(order, Pack(item="tile", size=42.0))
    assert (packs, over) == (bought.packs_count, bought.over)
    assert (None, None) == (bought.pallet_packs_count, bought.pallets_count)


@pytest.mark.parametrize(("order", "pallets"), [(0.0, 0), (1.0, 1), (251.0, 1), (252.0, 1), (253.0, 2), (504.0, 2)])
def test_pallets_of_six_packs(order: float, pallets: int) -> None:
    assert pallets == packed(order, Pack(item="tile", size=42.0, pallet_packs_count=6)).pallets_count


@pytest.mark.parametrize(("metres", "rolls"), [(0.3, 3), (0.1 + 0.2, 3), (0.300001, 4), (0.299999, 3)])
def test_float_noise_buys_no_pack_more(metres: float, rolls: int) -> None:
    assert rolls == packed(metres, Pack(item="lap-tape", size=0.1)).packs_count
