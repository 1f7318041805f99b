"""What a laying refuses."""

from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.laying.ask import CourseLine, Perps, fanned_perps
from tests.scenario.laid_slopes import PLAIN_TILE, ring, slope

SQUARE = [(0.0, 0.0), (1650.0, 0.0), (1650.0, 1000.0), (0.0, 1000.0)]


def test_no_courses_are_refused() -> None:
    with pytest.raises(InputRefused, match="courses: not given"):
        replace(slope(SQUARE), courses=())


def test_an_outline_the_wrong_way_round_is_refused() -> None:
    with pytest.raises(InputRefused, match="counter-clockwise"):
        slope(SQUARE[::-1])


def test_an_outline_that_crosses_itself_is_refused() -> None:
    with pytest.raises(InputRefused, match="crosses"):
        slope([(0.0, 0.0), (1650.0, 1000.0), (1650.0, 0.0), (0.0, 1000.0)])


def test_an_edge_without_a_name_is_refused() -> None:
    outline = ring(SQUARE)
    with pytest.raises(InputRefused, match="4 points, 3 edges"):
        slope(replace(outline, edges=outline.edges[:3]))


@pytest.mark.parametrize("width_mm", [0.0, -1.0, nan, inf])
def test_a_unit_without_width_is_refused(width_mm: float) -> None:
    with pytest.raises(InputRefused, match="width_mm"):
        slope(SQUARE, unit=replace(PLAIN_TILE, width_mm=width_mm))


@pytest.mark.parametrize("unit_length_mm", [0.0, -1.0, nan, inf])
def test_a_unit_without_length_is_refused(unit_length_mm: float) -> None:
    with pytest.raises(InputRefused, match="long"):
        slope(SQUARE, unit_length_mm=unit_length_mm)


@pytest.mark.parametrize("cover_mm", [0.0, -1.0, nan])
def test_a_course_without_cover_is_refused(cover_mm: float) -> None:
    ask = slope(SQUARE)
    courses = (replace(ask.courses[0], perps=Perps(first_mm=0.0, cover_mm=cover_mm)), *ask.courses[1:])
    with pytest.raises(InputRefused, match=r"courses\[0\].*cover"):
        replace(ask, courses=courses)


def test_joints_that_run_together_within_the_slope_are_refused() -> None:
    with pytest.raises(InputRefused, match="cover"):
        slope(SQUARE, cover_lean_ratio=-0.17)


@pytest.mark.parametrize("at_mm", [900.0, 899.0, nan])
def test_a_head_line_not_above_the_last_tails_is_refused(at_mm: float) -> None:
    with pytest.raises(InputRefused, match=r"courses\[9\].*gauge"):
        replace(slope(SQUARE), head=CourseLine(at_mm=at_mm))


def test_course_lines_that_cross_within_the_slope_are_refused() -> None:
    with pytest.raises(InputRefused, match=r"courses\[9\].*gauge"):
        replace(slope(SQUARE), head=CourseLine(at_mm=1000.0, rise_ratio=-0.1))


def test_perps_struck_between_equal_marks_are_square() -> None:
    perps = fanned_perps(eaves_first_mm=5.0, eaves_cover_mm=300.0, top_first_mm=5.0, top_cover_mm=300.0, top_mm=4000.0)
    assert perps == Perps(first_mm=5.0, cover_mm=300.0)
