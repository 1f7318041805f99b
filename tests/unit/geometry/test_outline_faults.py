from math import inf, nan

import pytest

from gaugerod.geometry.outline_faults import SHORTEST_SIDE_MM, outline_faults
from gaugerod.geometry.polygon import Point

Ring = list[Point]
HOUSE: Ring = [(0, 0), (9000, 0), (9000, 6000), (0, 6000)]
COURT: Ring = [(2000, 2000), (2000, 4000), (4000, 4000), (4000, 2000)]


def said(outer: Ring, holes: list[Ring] | None = None) -> list[str]:
    return [str(fault) for fault in outline_faults(outer, holes=holes or [])]


def test_a_sound_outline_has_no_faults() -> None:
    assert said(HOUSE) == []
    assert said(HOUSE, [COURT]) == []


@pytest.mark.parametrize("bad", [nan, inf, -inf])
def test_a_corner_that_is_no_number_is_named(bad: float) -> None:
    faults = outline_faults([(0, 0), (9000, bad), (9000, 6000)])
    assert [fault.field for fault in faults] == ["outline[1]"]
    assert "finite" in faults[0].allowed


@pytest.mark.parametrize("count", [0, 1, 2])
def test_fewer_than_three_corners_are_refused(count: int) -> None:
    assert "three corners or more" in said(HOUSE[:count])[0]


def test_a_repeated_corner_is_a_side_of_no_length() -> None:
    assert "a side of no length" in said([*HOUSE[:2], HOUSE[1], *HOUSE[2:]])[0]


@pytest.mark.parametrize(
    ("side_mm", "sound"),
    [(SHORTEST_SIDE_MM - 0.001, False), (SHORTEST_SIDE_MM, True), (SHORTEST_SIDE_MM + 0.001, True)],
)
def test_the_shortest_side_is_allowed_and_a_shorter_one_is_not(side_mm: float, *, sound: bool) -> None:
    assert (said([(0, 0), (9000, 0), (9000, 6000), (9000 - side_mm, 6000), (0, 5000)]) == []) is sound


def test_sides_that_cross_are_both_named() -> None:
    faults = outline_faults([(0, 0), (9000, 6000), (9000, 0), (0, 6000)])
    assert [fault.given for fault in faults] == ["the side from corner 0 crosses the side from corner 2"]


def test_a_corner_on_another_side_is_a_touch() -> None:
    touching = [(0, 0), (9000, 0), (9000, 6000), (4500, 0), (0, 6000)]
    assert any("touches" in text for text in said([(float(x), float(y)) for x, y in touching]))


def test_a_side_that_lies_back_along_its_neighbour_is_found() -> None:
    assert any("lies back along" in text for text in said([(0, 0), (9000, 0), (9000, 6000), (9000, 2000), (0, 2000)]))


def test_the_same_corner_at_two_places_touches_itself() -> None:
    waist: Ring = [(0, 0), (4000, 0), (4000, 3000), (8000, 3000), (8000, 6000), (4000, 6000), (4000, 3000), (0, 3000)]
    assert any("touches itself" in text for text in said(waist))


def test_rings_the_wrong_way_round_are_told_which_way() -> None:
    assert "counter-clockwise: walked with the roof on the left" in said(HOUSE[::-1])[0]
    assert "clockwise: walked with the roof on the left" in said(HOUSE, [COURT[::-1]])[0]


@pytest.mark.parametrize("shift_mm", [5000, 7000, 20000])
def test_a_hole_that_reaches_the_outline_or_lies_outside_is_refused(shift_mm: int) -> None:
    assert "wholly inside" in said(HOUSE, [[(x + shift_mm, y) for x, y in COURT]])[0]


def test_holes_over_each_other_are_refused_and_holes_apart_are_not() -> None:
    assert "lies over outline.hole[0]" in said(HOUSE, [COURT, [(x + 1000, y) for x, y in COURT]])[0]
    assert (
        "lies over outline.hole[0]" in said(HOUSE, [COURT, [(2500, 2500), (2500, 3500), (3500, 3500), (3500, 2500)]])[0]
    )
    assert said(HOUSE, [COURT, [(x + 3000, y) for x, y in COURT]]) == []


def test_every_fault_is_reported_at_once() -> None:
    faults = outline_faults(HOUSE[::-1], holes=[COURT[:2], [(nan, 0), *COURT[1:]]])
    assert [fault.field for fault in faults] == ["outline", "outline.hole[0]", "outline.hole[1][0]"]
