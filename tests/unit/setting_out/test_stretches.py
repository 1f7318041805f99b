"""The stretches of course beside openings."""

import pytest

from gaugerod.setting_out.across import CourseEnd
from gaugerod.setting_out.stretches import one_unit_stretches, stretches
from tests.unit.setting_out.across_asked import HIP, asked, opening


def test_an_opening_alone_stands_between_the_sides() -> None:
    left, right = stretches(asked(7440.0, openings=(opening("rooflight", 2400.0),)))
    assert (left.at, left.beside_name, left.end, left.run_mm) == (
        "rooflight left",
        "the left verge",
        CourseEnd.RIGHT,
        2400.0,
    )
    assert (right.at, right.beside_name, right.run_mm) == ("rooflight right", "the right verge", 7440.0 - 3180.0)


def test_openings_side_by_side_share_a_stretch_told_once() -> None:
    ask = asked(7440.0, openings=(opening("a", 2000.0), opening("b", 3000.0)))
    alone = list(one_unit_stretches(ask))
    assert [(each.at, each.beside_name, each.run_mm) for each in alone] == [("a right", "b", 220.0)]


def test_openings_at_different_heights_are_not_beside_each_other() -> None:
    ask = asked(7440.0, openings=(opening("a", 2000.0), opening("b", 3000.0, up_slope_mm=2780.0)))
    assert {each.beside_name for each in stretches(ask)} == {"the left verge", "the right verge"}


def test_an_opening_beside_part_of_another_is_told_and_the_rest_follows_the_perps() -> None:
    ask = asked(7440.0, openings=(opening("a", 2000.0), opening("b", 3000.0, up_slope_mm=2000.0)))
    between = next(each for each in stretches(ask) if each.at == "a right")
    assert not between.beside_all_of_it


@pytest.mark.parametrize(("from_left_mm", "alone"), [(289.9, True), (290.0, False), (290.1, False)])
def test_one_unit_serves_up_to_its_own_width(from_left_mm: float, *, alone: bool) -> None:
    # With the least overhang, 40, a stretch of 290 is just one unit of 330 wide.
    stretch = stretches(asked(7440.0, openings=(opening("chimney", from_left_mm),)))[0]
    assert stretch.one_unit(330.0) == alone


def test_a_stretch_to_a_hip_is_never_one_unit() -> None:
    stretch = stretches(asked(7440.0, left=HIP, openings=(opening("chimney", 50.0),)))[0]
    assert not stretch.one_unit(330.0)
