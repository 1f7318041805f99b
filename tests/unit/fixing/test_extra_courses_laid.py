"""The course under the eaves and the short one at the top, counted by hand."""

from dataclasses import replace

import pytest

from gaugerod.fixing.extra_courses import SHORT, UNDER_EAVES, extra_units, short_course_units, under_eaves_units
from gaugerod.fixing.least_fixing import least_fixing
from gaugerod.laying.ask import EdgeKind, LayingAsk
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras, DoubleLapRod, ShortCourse
from tests.scenario.fixed_slopes import fixing_ask
from tests.scenario.laid_slopes import HIPPED, ring, slope

EAVES, VERGE, RIDGE = EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE


def rectangle(*, bond_mm: float) -> LayingAsk:
    points = [(0.0, 0.0), (1980.0, 0.0), (1980.0, 1000.0), (0.0, 1000.0)]
    return slope(
        ring(points, ["eaves", "right verge", "ridge", "left verge"], [EAVES, VERGE, RIDGE, VERGE]), bond_mm=bond_mm
    )


def extras(*, short_mm: tuple[float | None, ...]) -> DoubleLapExtras:
    """A rod at each end, with a short course whose tail is so high there."""
    rods = tuple(
        DoubleLapRod(
            at_mm=1980.0 * at,
            tails_mm=(),
            under_eaves_mark_mm=150.0,
            short=None
            if tail_mm is None
            else ShortCourse(mark_mm=tail_mm + 180.0, tail_mm=tail_mm, length_mm=190.0, above_mm=25.0),
            laps_mm=(),
        )
        for at, tail_mm in enumerate(short_mm)
    )
    return DoubleLapExtras(
        marks_are="top edge of batten", under_eaves_length_mm=190.0, holing_mm=None, greatest_headlap_mm=65.0, rods=rods
    )


@pytest.mark.parametrize(("bond_mm", "whole", "cut"), [(0.0, 12, 0), (82.5, 11, 2)])
def test_the_course_under_the_eaves_stands_over_the_joints_of_the_first(bond_mm: float, whole: int, cut: int) -> None:
    units = under_eaves_units(rectangle(bond_mm=bond_mm), length_mm=190.0)
    assert (UNDER_EAVES, whole, cut) == (units.name, units.laying.whole_count, units.laying.cut_count)
    assert 190.0 == units.ask.courses[0].unit_length_mm


def test_the_short_course_lies_in_bond_with_the_last_and_reaches_the_ridge() -> None:
    units = short_course_units(rectangle(bond_mm=82.5), extras(short_mm=(900.0, 900.0)))
    assert units is not None
    # Course 10 starts half a tile over, so the short course above it starts on a whole one.
    assert (SHORT, 12, 0) == (units.name, units.laying.whole_count, units.laying.cut_count)
    assert 12 * 165.0 * 100.0 == pytest.approx(units.laying.whole_area_mm2)


def test_a_short_course_out_of_parallel_follows_its_rods() -> None:
    units = short_course_units(rectangle(bond_mm=0.0), extras(short_mm=(900.0, 880.2)))
    assert units is not None
    tail = units.ask.courses[0].tail
    assert [900.0, 880.2] == pytest.approx([tail.height_mm(0.0), tail.height_mm(1980.0)])


@pytest.mark.parametrize("short_mm", [(None, None), (900.0, None), (1000.0, 1000.0)])
def test_where_the_ridge_laps_without_it_there_is_no_short_course(short_mm: tuple[float | None, ...]) -> None:
    assert short_course_units(rectangle(bond_mm=0.0), extras(short_mm=short_mm)) is None


def test_every_unit_of_both_is_perimeter_by_its_own_edge() -> None:
    asked = rectangle(bond_mm=0.0)
    ask = replace(fixing_ask(asked), extra=tuple(extra_units(asked, extras=extras(short_mm=(900.0, 900.0)))))
    under, short = least_fixing(ask).extra
    for course, own, other in ((under, EAVES, RIDGE), (short, RIDGE, EAVES)):
        assert 0 == course.number
        assert 12 == sum(run.count for run in course.runs) + len(course.pieces)
        whys = [*(run.why for run in course.runs), *(piece.why for piece in course.pieces)]
        assert all(own in why and other not in why for why in whys)
        helds = [*(run.held for run in course.runs), *(piece.held for piece in course.pieces)]
        assert {2} == {held.in_all_count for held in helds}


def test_under_a_hipped_slope_the_course_below_is_cut_to_the_hips() -> None:
    units = under_eaves_units(slope(HIPPED), length_mm=190.0)
    plan = least_fixing(fixing_ask(slope(HIPPED)))
    shown = units.laying.whole_count + units.laying.cut_count
    first = sum(run.count for run in plan.courses[0].runs) + len(plan.courses[0].pieces)
    assert abs(shown - first) <= 4
    assert {EdgeKind.HIP} == {cut.edge.kind for piece in units.pieces for cut in piece.cuts}
