from math import asin, cos, sin

import pytest

from gaugerod.geometry.wavefront.front import (
    NEARLY_IN_LINE,
    Front,
    cheek_between,
    face_each_other,
    run_of_meeting,
)


def front(inward: tuple[float, float], *, run_ratio: float = 1.0) -> Front:
    return Front(inward=inward, start_mm=0.0, run_ratio=run_ratio)


def turned(turn: float) -> tuple[float, float]:
    """Inward normal of a wall that turns from one facing up the plan, by the sine given."""
    return (-sin(asin(turn)), cos(asin(turn)))


def test_the_corner_of_two_like_slopes_moves_along_the_bisector() -> None:
    assert run_of_meeting(front((0.0, 1.0)), front((-1.0, 0.0))) == pytest.approx((-1.0, 1.0))


def test_beside_an_upright_wall_the_corner_moves_along_the_wall() -> None:
    assert run_of_meeting(front((0.0, 1.0)), front((-1.0, 0.0), run_ratio=0.0)) == pytest.approx((0.0, 1.0))


def test_in_line_fronts_of_one_pitch_move_on_together_and_of_two_part() -> None:
    assert run_of_meeting(front((0.0, 1.0)), front((0.0, 1.0))) == (0.0, 1.0)
    assert run_of_meeting(front((0.0, 1.0)), front((0.0, 1.0), run_ratio=0.5)) is None


@pytest.mark.parametrize(("turn", "meets"), [(0.99, False), (-0.99, False), (1.01, True), (-1.01, True)])
def test_unlike_fronts_meet_only_beyond_half_a_degree(turn: float, *, meets: bool) -> None:
    other = front(turned(turn * NEARLY_IN_LINE), run_ratio=0.5)
    assert (run_of_meeting(front((0.0, 1.0)), other) is not None) is meets


@pytest.mark.parametrize("turn", [0.5, -0.5])
def test_like_fronts_nearly_in_line_still_meet_at_a_corner(turn: float) -> None:
    run = run_of_meeting(front((0.0, 1.0)), front(turned(turn * NEARLY_IN_LINE)))
    assert run is not None
    assert run[1] == pytest.approx(1.0)


def test_head_on_fronts_meet_nowhere() -> None:
    assert run_of_meeting(front((0.0, 1.0)), front((0.0, -1.0))) is None
    assert face_each_other(front((0.0, 1.0)), front((0.0, -1.0)))
    assert not face_each_other(front((0.0, 1.0)), front((0.0, 1.0)))


def test_a_cheek_stands_square_to_the_eaves_and_faces_the_slope_that_moves_faster() -> None:
    fast, slow = front((0.0, 1.0), run_ratio=2.0), front((0.0, 1.0), run_ratio=1.0)
    on_the_right = cheek_between(fast, slow, (500.0, 0.0))
    assert (on_the_right.inward, on_the_right.start_mm, on_the_right.run_ratio) == ((1.0, 0.0), 500.0, 0.0)
    on_the_left = cheek_between(slow, fast, (500.0, 0.0))
    assert (on_the_left.inward, on_the_left.start_mm) == ((-1.0, 0.0), -500.0)


def test_a_front_stands_where_its_run_has_brought_it() -> None:
    assert Front(inward=(0.0, 1.0), start_mm=-4000.0, run_ratio=1.5).place_mm(1000.0) == -2500.0
