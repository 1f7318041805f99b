"""The ways a course may end, and the pieces that come of them."""

import pytest

from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import CourseEnd, Fit
from gaugerod.setting_out.end_pieces import (
    HALF,
    NOTHING,
    WHOLE,
    Edge,
    Stop,
    Width,
    end_pieces,
    endings_of,
    least_cut_mm,
    piece_alone,
    row_covers_mm,
)

PLAIN = Edge(name="left", end=CourseEnd.LEFT, stop=Stop.VERGE, least_mm=-50.0, greatest_mm=-40.0, aim_mm=-45.0)


def test_a_width_goes_with_the_cover() -> None:
    assert Width(0.5, -10.0).at_mm(300.0) == 140.0


def test_a_straight_course_ends_whole_cut_or_narrow_in_that_order() -> None:
    endings = endings_of(PLAIN, bond=Bond.STRAIGHT, half_unit=False, unit_and_a_half=False)
    assert [(each.at_least, each.at_most) for each in endings] == [
        ((WHOLE,), (WHOLE,)),
        ((HALF,), (WHOLE,)),
        ((NOTHING,), (HALF,)),
    ]
    assert [each.narrow_ratio for each in endings] == [None, None, 0.0]


def test_a_broken_course_is_whole_and_half_or_has_a_narrow_piece() -> None:
    endings = endings_of(PLAIN, bond=Bond.BROKEN, half_unit=True, unit_and_a_half=False)
    assert [(each.at_least, each.narrow_ratio, each.cut_count) for each in endings] == [
        ((WHOLE,), None, 0),
        ((HALF,), None, 0),
        ((HALF,), 0.5, 2),
        ((NOTHING,), 0.0, 2),
    ]


def test_a_hip_takes_any_ending() -> None:
    hip = Edge(name="left", end=CourseEnd.LEFT, stop=Stop.FREE, least_mm=0.0, greatest_mm=0.0, aim_mm=0.0)
    (only,) = endings_of(hip, bond=Bond.BROKEN, half_unit=False, unit_and_a_half=False)
    assert (only.at_least, only.at_most, only.cut_count) == ((NOTHING,), (WHOLE,), 0)


@pytest.mark.parametrize(
    ("row_0_mm", "row_1_mm"), [(300.0, 150.0), (150.1, 0.1), (150.0, 300.0), (149.9, 299.9), (0.1, 150.1)]
)
def test_the_other_course_is_half_a_unit_over(row_0_mm: float, row_1_mm: float) -> None:
    covers = row_covers_mm(row_0_mm, cover_mm=300.0, bond=Bond.BROKEN)
    assert covers == pytest.approx((row_0_mm, row_1_mm))


def test_no_piece_at_all_is_a_whole_unit() -> None:
    assert row_covers_mm(0.0, cover_mm=300.0, bond=Bond.STRAIGHT) == (300.0,)


@pytest.mark.parametrize(
    ("covers_mm", "half_unit", "fit"),
    [(300.0, False, Fit.WHOLE), (299.99, False, Fit.CUT), (150.0, True, Fit.HALF), (150.0, False, Fit.CUT)],
)
def test_a_piece_is_named_by_what_it_covers(covers_mm: float, *, half_unit: bool, fit: Fit) -> None:
    (found,) = end_pieces(
        PLAIN,
        row_0_mm=covers_mm,
        cover_mm=300.0,
        unit_width_mm=330.0,
        bond=Bond.STRAIGHT,
        half_unit=half_unit,
        large=False,
    )
    assert (found.fit, found.cover_mm) == (fit, covers_mm)
    assert found.width_mm == pytest.approx(covers_mm + 30.0)


@pytest.mark.parametrize(("covers_mm", "with_neighbour_mm"), [(149.9, 449.9), (150.0, 150.0), (150.1, 150.1)])
def test_a_piece_under_half_and_its_neighbour_are_one_unit_and_a_half(
    covers_mm: float, with_neighbour_mm: float
) -> None:
    (found,) = end_pieces(
        PLAIN,
        row_0_mm=covers_mm,
        cover_mm=300.0,
        unit_width_mm=330.0,
        bond=Bond.STRAIGHT,
        half_unit=False,
        large=True,
    )
    assert found.cover_mm == pytest.approx(with_neighbour_mm)


def test_a_unit_alone_covers_its_whole_width_and_nothing_where_there_is_no_room() -> None:
    (alone,) = piece_alone(at="a right to b", bond_row=0, width_mm=220.0, unit_width_mm=330.0)
    assert (alone.fit, alone.cover_mm, alone.width_mm) == (Fit.CUT, 220.0, 220.0)
    assert list(piece_alone(at="a right to b", bond_row=0, width_mm=0.0, unit_width_mm=330.0)) == []
    (whole,) = piece_alone(at="a right to b", bond_row=0, width_mm=330.0, unit_width_mm=330.0)
    assert least_cut_mm([whole]) is None
    assert least_cut_mm([whole, alone]) == 220.0
