from random import Random

import pytest
from shapely import LineString, Point, Polygon

from gaugerod.geometry.polygon import (
    bounding_box_mm,
    distance_to_outline_mm,
    holds_point,
    part_left_of_line,
    runs_counter_clockwise,
    sides_cross,
    signed_area_mm2,
)

L_SHAPE = [(0.0, 0.0), (12.0, 0.0), (12.0, 5.0), (6.0, 5.0), (6.0, 10.0), (0.0, 10.0)]


def test_area_is_positive_counter_clockwise_and_negative_clockwise() -> None:
    assert signed_area_mm2(L_SHAPE) == 90.0
    assert signed_area_mm2(L_SHAPE[::-1]) == -90.0
    assert runs_counter_clockwise(L_SHAPE)
    assert not runs_counter_clockwise(L_SHAPE[::-1])


def test_area_is_exact_far_from_the_origin() -> None:
    assert signed_area_mm2([(x + 4e8, y - 3e8) for x, y in L_SHAPE]) == 90.0


def test_a_point_in_the_notch_is_outside() -> None:
    assert holds_point(L_SHAPE, (5.9, 9.0))
    assert not holds_point(L_SHAPE, (6.1, 9.0))
    assert distance_to_outline_mm(L_SHAPE, (9.0, 7.0)) == 2.0


@pytest.mark.parametrize("seed", range(20))
def test_points_and_half_plane_cuts_agree_with_shapely(seed: int) -> None:
    rng = Random(seed)  # noqa: S311 - points to try, no secrets
    shape = Polygon(L_SHAPE)
    start, end = (rng.uniform(-2, 14), rng.uniform(-2, 12)), (rng.uniform(-2, 14), rng.uniform(-2, 12))
    assert holds_point(L_SHAPE, start) == shape.contains(Point(start))
    assert distance_to_outline_mm(L_SHAPE, start) == pytest.approx(shape.exterior.distance(Point(start)))
    left, right = part_left_of_line(L_SHAPE, start, end), part_left_of_line(L_SHAPE, end, start)
    areas = [signed_area_mm2(part) if part else 0.0 for part in (left, right)]
    assert sum(areas) == pytest.approx(90.0)
    assert min(areas) >= 0
    far = LineString([start, end])
    if not shape.intersects(far.buffer(50)):
        assert areas in ([90.0, 0.0], [0.0, 90.0])


def test_a_line_along_a_side_keeps_all_or_nothing() -> None:
    assert part_left_of_line(L_SHAPE, (0.0, 0.0), (12.0, 0.0)) == L_SHAPE
    assert part_left_of_line(L_SHAPE, (12.0, 0.0), (0.0, 0.0)) == []


def test_sides_that_only_touch_do_not_cross() -> None:
    assert sides_cross((0, 0), (4, 4), (0, 4), (4, 0))
    assert not sides_cross((0, 0), (4, 0), (2, 0), (2, 3))
    assert not sides_cross((0, 0), (4, 0), (4, 0), (6, 2))
    assert not sides_cross((0, 0), (4, 0), (0, 1), (4, 1))


def test_the_bounding_box_is_its_least_and_greatest_corner() -> None:
    assert bounding_box_mm(L_SHAPE) == ((0.0, 0.0), (12.0, 10.0))
