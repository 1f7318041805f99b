"""What shows of every unit: counts and areas that can be worked out by hand."""

from dataclasses import replace

import pytest

from gaugerod.laying.ask import CourseLine, LapSide
from gaugerod.laying.laid import Laying
from gaugerod.laying.lay import lay
from tests.scenario.laid_slopes import HIPPED, PLAIN_TILE, ring, slope

SQUARE = [(0.0, 0.0), (1650.0, 0.0), (1650.0, 1000.0), (0.0, 1000.0)]


def closes(laying: Laying) -> bool:
    return abs(laying.bare_mm2) < 1e-3


def test_a_rectangle_of_whole_covers_and_gauges_is_all_whole() -> None:
    laying = lay(slope(SQUARE, bond_mm=0.0))
    assert (laying.whole_count, laying.cut_count, laying.slivers.count, laying.nicks.count) == (100, 0, 0, 0)
    assert len(laying.runs) == 10
    assert closes(laying)


def test_half_bond_leaves_a_half_at_both_ends_of_every_second_course() -> None:
    laying = lay(slope(SQUARE))
    assert (laying.whole_count, laying.cut_count) == (95, 10)
    assert {round(cut.area_mm2, 6) for cut in laying.cuts} == {8250.0}
    assert {cut.course % 2 for cut in laying.cuts} == {1}
    assert closes(laying)


def test_an_opening_on_course_lines_and_joints_takes_whole_units_out() -> None:
    hole = [(330.0, 200.0), (660.0, 200.0), (660.0, 500.0), (330.0, 500.0)]
    laying = lay(slope(SQUARE, openings=[hole], bond_mm=0.0))
    assert (laying.whole_count, laying.cut_count) == (94, 0)
    assert closes(laying)


def test_an_opening_inside_one_unit_leaves_a_hole_in_it() -> None:
    hole = [(30.0, 20.0), (60.0, 20.0), (60.0, 50.0), (30.0, 50.0)]
    laying = lay(slope(SQUARE, openings=[hole], bond_mm=0.0))
    (cut,) = laying.cuts
    assert (cut.course, cut.index) == (0, 0)
    assert cut.area_mm2 == pytest.approx(16500.0 - 900.0)
    assert len(cut.rings) == 2
    assert closes(laying)


def test_a_unit_split_by_an_opening_shows_in_two_rings() -> None:
    hole = [(50.0, 150.0), (100.0, 150.0), (100.0, 450.0), (50.0, 450.0)]
    laying = lay(slope(SQUARE, openings=[hole], bond_mm=0.0))
    split = [cut for cut in laying.cuts if cut.course in {2, 3}]
    assert [len(cut.rings) for cut in split] == [2, 2]
    assert [cut.area_mm2 for cut in split] == pytest.approx([11500.0, 11500.0])
    assert closes(laying)


def test_a_hip_cuts_every_unit_it_runs_through_and_the_areas_close() -> None:
    laying = lay(slope(HIPPED))
    assert laying.slope_area_mm2 == pytest.approx((6600.0 + 2200.0) / 2 * 2800.0)
    assert closes(laying)
    assert laying.whole_area_mm2 == pytest.approx(laying.whole_count * 16500.0)
    assert {laying_cut.edges for laying_cut in laying.cuts} <= {(1,), (3,), (1, 2), (2, 3), (1, 3)}


def test_a_notch_with_reflex_corners_closes() -> None:
    laying = lay(slope([(0.0, 0.0), (3000.0, 0.0), (3000.0, 1500.0), (1777.0, 1500.0), (1610.0, 333.0), (1490.0, 777.0),
                        (1200.0, 1490.0), (0.0, 1500.0)]))  # fmt: skip
    assert closes(laying)


@pytest.mark.parametrize(
    ("missing_mm", "cuts", "nicks"), [(0.00999, 0, 10), (0.0101, 10, 0), (1e-8, 0, 0), (-1e-8, 0, 0)]
)
def test_a_unit_that_would_lose_less_than_a_square_millimetre_is_laid_whole(
    missing_mm: float, cuts: int, nicks: int
) -> None:
    right = 1650.0 - missing_mm
    laying = lay(slope([(0.0, 0.0), (right, 0.0), (right, 1000.0), (0.0, 1000.0)], bond_mm=0.0))
    assert (laying.whole_count + laying.cut_count, laying.cut_count, laying.nicks.count) == (100, cuts, nicks)
    assert closes(laying)


@pytest.mark.parametrize(("more_mm", "cuts", "slivers"), [(0.00999, 0, 10), (0.0101, 10, 0)])
def test_a_piece_under_a_square_millimetre_is_not_laid_but_reported(more_mm: float, cuts: int, slivers: int) -> None:
    right = 1650.0 + more_mm
    laying = lay(slope([(0.0, 0.0), (right, 0.0), (right, 1000.0), (0.0, 1000.0)], bond_mm=0.0))
    assert (laying.whole_count, laying.cut_count, laying.slivers.count) == (100, cuts, slivers)
    assert laying.slivers.area_mm2 == pytest.approx(slivers * more_mm * 100.0, rel=1e-6)
    assert closes(laying)


def test_what_no_course_reaches_is_reported_bare() -> None:
    ask = slope(SQUARE, bond_mm=0.0)
    short = replace(ask, courses=ask.courses[:-1], head=CourseLine(at_mm=900.0))
    assert lay(short).bare_mm2 == pytest.approx(1650.0 * 100.0)


@pytest.mark.parametrize(("lap_side", "first_mm"), [(LapSide.RIGHT, 0.0), (LapSide.LEFT, 30.0)])
def test_the_side_lap_of_the_last_unit_needs_no_unit_of_its_own(lap_side: LapSide, first_mm: float) -> None:
    tile = replace(PLAIN_TILE, width_mm=330.0, lap_side=lap_side)
    right = 9 * 300.0 + 330.0
    ask = slope([(0.0, 0.0), (right, 0.0), (right, 345.0), (0.0, 345.0)], unit=tile, cover_mm=300.0, gauge_mm=345.0,
                unit_length_mm=420.0, first_mm=first_mm)  # fmt: skip
    laying = lay(ask)
    assert (laying.whole_count, laying.cut_count, len(laying.lapped)) == (10, 0, 1)
    assert laying.lapped_area_mm2 == pytest.approx(30.0 * 345.0)
    assert closes(laying)


@pytest.mark.parametrize(("over_mm", "cut", "lapped"), [(0.0, 0, 1), (3.0, 0, 1), (3.1, 1, 0)])
def test_a_strip_wider_than_the_side_lap_and_the_play_is_a_cut_unit(over_mm: float, cut: int, lapped: int) -> None:
    tile = replace(PLAIN_TILE, width_mm=330.0, lap_side=LapSide.RIGHT)
    right = 9 * 300.0 + 330.0 + over_mm
    ask = slope([(0.0, 0.0), (right, 0.0), (right, 345.0), (0.0, 345.0)], unit=tile, cover_mm=300.0, gauge_mm=345.0,
                unit_length_mm=420.0)  # fmt: skip
    laying = lay(ask)
    assert (laying.whole_count, laying.cut_count, len(laying.lapped)) == (10, cut, lapped)


def test_fanned_battens_and_leaning_joints_close_too() -> None:
    ask = slope(SQUARE, rise_ratio=0.004, first_lean_ratio=0.01, cover_lean_ratio=-0.001, first_tail_mm=-200.0,
                spare_courses=3)  # fmt: skip
    laying = lay(ask)
    assert laying.whole_count > 60
    assert closes(laying)


def test_a_course_tells_its_metres_run() -> None:
    laying = lay(slope(SQUARE))
    assert [course.length_mm for course in laying.courses] == pytest.approx([1650.0] * 10)
    assert [course.whole_count for course in laying.courses] == [10, 9] * 5
    assert [course.cut_count for course in laying.courses] == [0, 2] * 5


def test_a_slope_smaller_than_one_unit_is_one_cut_unit() -> None:
    laying = lay(slope([(10.0, 10.0), (60.0, 10.0), (60.0, 50.0)], first_mm=0.0, first_tail_mm=0.0))
    (cut,) = laying.cuts
    assert laying.whole_count == 0
    assert cut.area_mm2 == pytest.approx(1000.0)


def test_a_slope_of_exactly_one_unit_is_whole() -> None:
    laying = lay(slope([(0.0, 0.0), (165.0, 0.0), (165.0, 100.0), (0.0, 100.0)]))
    assert (laying.whole_count, laying.cut_count) == (1, 0)


def test_whole_units_that_adjoin_are_one_run_even_beside_a_corner() -> None:
    laying = lay(slope(ring([(0.0, 0.0), (825.0, 0.0), (1650.0, 0.0), (1650.0, 100.0), (0.0, 100.0)])))
    (run,) = laying.runs
    assert (run.first, run.count) == (0, 10)


def test_a_spike_that_touches_the_rest_in_one_point_is_a_ring_of_its_own() -> None:
    outline = [(177.3, 0.0), (-210.7, -142.1), (-198.5, -139.0), (-243.8, -177.2), (333.5, -459.0)]
    laying = lay(slope(outline, cover_mm=100.0, gauge_mm=80.0, first_mm=0.0, bond_mm=-50.0))
    (cut,) = [cut for cut in laying.cuts if (cut.course, cut.index) == (3, -3)]
    assert [len(ring) for ring in cut.rings] in ([3, 5], [5, 3])
    assert closes(laying)


def test_no_ring_repeats_a_corner_where_an_edge_runs_through_the_corner_of_a_unit() -> None:
    laying = lay(slope([(0.0, 0.0), (3000.0, 0.0), (0.0, 2400.0)], cover_mm=100.0, gauge_mm=80.0, bond_mm=0.0))
    assert laying.cut_count == 30
    assert {len(set(cut.rings[0])) for cut in laying.cuts} == {3}
    assert {len(cut.rings[0]) for cut in laying.cuts} == {3}


def test_an_opening_that_touches_the_course_line_in_one_point_parts_a_unit_in_two() -> None:
    hole = [(49.1, 145.6), (140.7, 173.0), (127.3, 170.1)]
    outline = [(-100.0, 65.7), (250.0, 65.7), (250.0, 280.3), (-100.0, 280.3)]
    laying = lay(slope(outline, openings=[hole], cover_mm=100.0, gauge_mm=107.3, first_mm=-50.0, bond_mm=0.0))
    (cut,) = [cut for cut in laying.cuts if (cut.course, cut.index) == (0, 1)]
    assert sorted(len(ring) for ring in cut.rings) == [4, 5]
    assert closes(laying)
