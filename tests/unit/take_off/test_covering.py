"""Small slopes whose units can be counted by hand: 3000 mm between two verges, 2000 mm up."""

import pytest

from tests.scenario.taken_off_jobs import ask_of, nets, result_of, slope, taken

REAR = slope("rear", across_mm=3000, rafter_mm=2000)


def test_single_lap_in_broken_bond() -> None:
    """Six courses of 3088 mm, 297 mm shown by each tile.

    Three begin with a whole tile: nine are 2673, and the last 415 come from a tile-and-a-half (445.5).
    Three begin with a half (148.5): with nine whole they reach 2821.5, and the last 266.5 are sawn from a whole one.
    """
    answer = taken(result_of("flat-interlocking-420x330", REAR))
    assert {"tile": 6 * 9 + 3, "half-tile": 3, "tile-and-a-half": 3} == nets(answer)


def test_plain_tiles() -> None:
    """Nineteen courses of 3078.75 mm, 166.5 mm shown: 17 are 2830.5, and the last 248.25 come from a tile-and-a-half (249.75).

    Under the eaves and at the top 18½ tiles end to end: 19 each, whichever way they are begun.
    """
    answer = taken(result_of("clay-plain-265x165", REAR))
    assert {"tile": 19 * 17, "tile-and-a-half": 19, "eaves-tile": 2 * 19} == nets(answer)


def test_slates() -> None:
    """Eight courses of 3088 mm, 252.5 mm shown with the joint.

    Four: 11 whole are 2777.5, the last 310.5 from a slate-and-a-half (378.75). Four begin with one of those: ten whole reach
    2903.75, and the last 184.25 are cut from a whole one. The courses under the eaves and at the top take 13 each.
    """
    answer = taken(result_of("slate-500x250", REAR))
    assert {"slate": 4 * 11 + 4 * (10 + 1) + 2 * 13, "slate-and-a-half": 8} == nets(answer)


@pytest.mark.parametrize("covering", ["flat-interlocking-420x330", "clay-plain-265x165", "slate-500x250"])
def test_two_like_slopes_take_twice_as_much_where_no_offcut_serves(covering: str) -> None:
    one = result_of(covering, REAR)
    two = result_of(covering, REAR, {**REAR, "name": "front"})
    offcuts = ask_of(two).offcuts
    assert 0 == (0 if offcuts is None else offcuts.saved_count)
    assert {item: 2 * count for item, count in nets(taken(one)).items()} == nets(taken(two))
