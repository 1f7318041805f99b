"""An outline moved edge by edge."""

from math import sqrt

import pytest

from gaugerod.geometry.moved_edges import moved_outline_mm
from gaugerod.geometry.polygon import signed_area_mm2

RECTANGLE = [(0.0, 0.0), (6000.0, 0.0), (6000.0, 4000.0), (0.0, 4000.0)]


def test_nothing_moved_changes_nothing() -> None:
    assert (tuple(RECTANGLE), (0, 1, 2, 3)) == moved_outline_mm(RECTANGLE, [0.0] * 4)


def test_each_edge_moves_by_its_own_distance() -> None:
    points, _ = moved_outline_mm(RECTANGLE, [50.0, 40.0, 0.0, -10.0])
    assert 6030.0 * 4050.0 == pytest.approx(signed_area_mm2(points))


def test_a_hip_is_drawn_out_to_the_tails() -> None:
    points, _ = moved_outline_mm([(0.0, 0.0), (8000.0, 0.0), (4000.0, 4000.0)], [50.0, 0.0, 0.0])
    assert [(-50.0, -50.0), (8050.0, -50.0), (4000.0, 4000.0)] == [pytest.approx(point) for point in points]


def test_edges_in_one_line_that_move_apart_are_joined_by_a_step() -> None:
    outline = [(0.0, 0.0), (3000.0, 0.0), (6000.0, 0.0), (6000.0, 4000.0), (0.0, 4000.0)]
    points, edges = moved_outline_mm(outline, [50.0, 0.0, 0.0, 0.0, 0.0])
    assert 6 == len(points) == len(edges)
    assert 6000.0 * 4000.0 + 3000.0 * 50.0 == pytest.approx(signed_area_mm2(points))


def test_a_short_edge_that_its_neighbours_meet_in_front_of_is_cut_away_whole() -> None:
    # a stub of hip between a ridge and a valley that is cut back by 100 mm
    outline = [(0.0, 0.0), (8000.0, 0.0), (6000.0, 2000.0), (5960.0, 2020.0), (0.0, 2020.0)]
    points, edges = moved_outline_mm(outline, [0.0, -100.0, 0.0, 0.0, 0.0])
    assert 2 not in edges
    across_mm = 100 * sqrt(2)
    assert points[edges.index(1)] == pytest.approx((8000.0 - across_mm, 0.0))
    assert points[edges.index(3)] == pytest.approx((8000.0 - across_mm - 2020.0, 2020.0))
    # where it is long enough, what is left of it stays
    assert 2 in moved_outline_mm(outline, [0.0, 10.0, 0.0, 0.0, 0.0])[1]
    # three sides are never fewer: what is turned inside out is for the outline's own faults to tell
    assert 3 == len(moved_outline_mm([(0.0, 0.0), (80.0, 0.0), (40.0, 40.0)], [-50.0] * 3)[1])
