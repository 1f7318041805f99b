from math import isclose

import pytest

from gaugerod.geometry.slope_plane import slope_plane


@pytest.mark.parametrize("pitch_deg", [1.0, 22.5, 60.0, 89.0])
@pytest.mark.parametrize("along", [(1.0, 0.0), (0.0, -1.0), (0.6, 0.8)])
def test_own_axes_and_building_are_one_another_undone(pitch_deg: float, along: tuple[float, float]) -> None:
    plane = slope_plane((1000.0, -200.0, 2400.0), along=along, pitch_deg=pitch_deg)
    for point in ((0.0, 0.0), (3500.0, 0.0), (-120.0, 4100.0)):
        in_building = plane.in_building(point)
        assert plane.from_building(in_building) == pytest.approx(point)
        assert plane.from_plan(plane.on_plan(point)) == pytest.approx(point)
        assert plane.height_over_plan_mm(plane.on_plan(point)) == pytest.approx(in_building[2])


def test_up_the_slope_goes_in_to_the_left_of_the_eaves_and_up() -> None:
    plane = slope_plane((0.0, 0.0, 0.0), along=(1.0, 0.0), pitch_deg=60.0)
    assert plane.in_building((0.0, 2000.0)) == pytest.approx((0.0, 1000.0, 1732.0508))


def test_an_upright_face_goes_straight_up() -> None:
    plane = slope_plane((0.0, 0.0, 100.0), along=(0.0, 1.0), pitch_deg=90.0)
    assert plane.in_building((500.0, 2000.0)) == (0.0, 500.0, 2100.0)
    assert isclose(plane.rise_ratio, 1.0)
