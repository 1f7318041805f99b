"""An outline moved edge by edge."""

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
