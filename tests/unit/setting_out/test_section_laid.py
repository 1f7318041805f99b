import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.setting_out.section_laid import LaidCourse, LapOver, deep_at, laps_as_laid, refuse_short_laps


def tiles(gauge_mm: float, *, length_mm: float = 420.0, count: int = 4) -> list[LaidCourse]:
    return [LaidCourse(name=str(at), tail_mm=at * gauge_mm, head_mm=at * gauge_mm + length_mm) for at in range(count)]


def test_single_lap_is_over_the_course_below() -> None:
    assert [75.0, 75.0, 75.0] == [lap.lap_mm for lap in laps_as_laid(tiles(345.0), lap_over=LapOver.NEXT_BELOW)]


def test_double_lap_is_over_the_second_course_below() -> None:
    laps = laps_as_laid(tiles(100.0, length_mm=265.0), lap_over=LapOver.SECOND_BELOW)
    assert [("2", "0", 65.0), ("3", "1", 65.0)] == [(lap.course, lap.over, lap.lap_mm) for lap in laps]


def test_a_gap_is_a_negative_lap() -> None:
    assert -10.0 == laps_as_laid(tiles(430.0), lap_over=LapOver.NEXT_BELOW)[0].lap_mm


def test_a_lap_is_refused_only_below_the_least() -> None:
    for least_mm in (74.0, 75.0):
        assert 3 == len(refuse_short_laps(tiles(345.0), lap_over=LapOver.NEXT_BELOW, least_mm=least_mm))
    with pytest.raises(NothingToSetOut, match=r"course 1 laps course 0 by 75\.0 mm"):
        refuse_short_laps(tiles(345.0), lap_over=LapOver.NEXT_BELOW, least_mm=75.1)


def test_courses_out_of_order_and_slates_upside_down_are_refused() -> None:
    with pytest.raises(NothingToSetOut, match="lies below"):
        laps_as_laid(list(reversed(tiles(345.0))), lap_over=LapOver.NEXT_BELOW)
    with pytest.raises(NothingToSetOut, match="head at or below its tail"):
        laps_as_laid([LaidCourse(name="1", tail_mm=10.0, head_mm=10.0)], lap_over=LapOver.NEXT_BELOW)


def test_a_head_no_longer_covers_its_own_edge_but_a_tail_does() -> None:
    courses = tiles(345.0, count=2)
    assert [1, 2, 2, 1] == [deep_at(courses, y_mm=at) for at in (344.9, 345.0, 419.9, 420.0)]
