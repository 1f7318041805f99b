"""Courses up the slope: every way of setting out, with figures worked by hand."""

import re
from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.rounding import Division
from gaugerod.setting_out.courses import Courses, CoursesAsk, Strategy
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod, Opening, Station

EXAMPLE = house("example")
# 420 long, 398 hanging, overhang aimed at 50, top batten aimed at 37.5 (37 on whole-millimetre rafters): first mark 348.
TILE = CoursesAsk(
    where="rear",
    stations=(Station(at_mm=0.0, length_mm=4905.0),),
    unit_length_mm=420.0,
    hanging_length_mm=398.0,
    gauge_min_mm=320.0,
    gauge_max_mm=345.0,
    gauge_citation=EXAMPLE,
    overhang=Band(45.0, 55.0, EXAMPLE),
    top=Band(25.0, 50.0, EXAMPLE),
    division=Division.MILLIMETRE,
)


def with_rafters(*lengths_mm: float, **changes: object) -> CoursesAsk:
    steps = max(len(lengths_mm) - 1, 1)
    stations = tuple(Station(at_mm=6000.0 * index / steps, length_mm=length) for index, length in enumerate(lengths_mm))
    return replace(TILE, stations=stations, **changes)  # type: ignore[arg-type] # fields of the ask


def outside(courses: Courses) -> list[str]:
    return [finding.rule for finding in courses.findings if finding.verdict is Verdict.OUTSIDE]


def test_the_first_batten_stands_at_hanging_length_less_overhang() -> None:
    assert 398.0 - 50.0 == set_out_courses(TILE).rods[0].marks_mm[0]


def test_the_top_batten_stands_below_the_apex_by_its_allowance() -> None:
    rod = set_out_courses(TILE).rods[0]
    assert 4905.0 - 37.5 == rod.exact_mm[-1]
    assert 4868.0 == rod.marks_mm[-1]
    assert Band(25.0, 50.0, EXAMPLE).holds(rod.below_apex_mm)


def test_gauges_are_the_fewest_and_equal() -> None:
    courses = set_out_courses(with_rafters(348.0 + 14 * 345.0 + 37.0, top=Band(37.0, 37.0, EXAMPLE)))
    assert (Strategy.EQUAL, 15, 345.0) == (courses.strategy, courses.count, courses.rods[0].gauge_mm)
    one_more = set_out_courses(with_rafters(348.0 + 14 * 345.0 + 38.0, top=Band(37.0, 37.0, EXAMPLE)))
    assert 16 == one_more.count


def test_a_ridge_out_of_parallel_fans_the_battens() -> None:
    courses = set_out_courses(with_rafters(4905.0, 4918.0))
    assert Strategy.FANNED == courses.strategy
    assert 13.0 / 14 == pytest.approx(courses.taper_per_course_mm)
    assert courses.rods[0].below_apex_mm == courses.rods[1].below_apex_mm
    assert "13 mm out of parallel" in courses.why


def test_a_taper_beyond_the_gauge_range_is_cut_off_the_top_course() -> None:
    courses = set_out_courses(with_rafters(4650.0, 4900.0))
    assert Strategy.PARALLEL == courses.strategy
    assert courses.rods[0].marks_mm[:-1] == courses.rods[1].marks_mm[:-1]
    assert courses.top_course_cut_mm is not None
    assert 250.0 == pytest.approx(courses.top_course_cut_mm[1] - courses.top_course_cut_mm[0], abs=1.0)
    assert [] == outside(courses)


def test_the_ends_are_moved_inside_their_bands_when_the_range_is_tight() -> None:
    courses = set_out_courses(with_rafters(348.0 + 8 * 345.0 + 37.5 + 5.0, gauge_min_mm=340.0))
    assert Strategy.FLEXED == courses.strategy
    assert 345.0 == courses.rods[0].gauge_mm
    assert [] == outside(courses)
    assert 9 == courses.count


def test_with_no_equal_gauge_the_lap_is_kept_and_the_alternatives_are_ranked() -> None:
    courses = set_out_courses(with_rafters(1300.0, gauge_min_mm=340.0))
    assert Strategy.NONE == courses.strategy
    assert ["least gauge"] == outside(courses)
    assert courses.rods[0].gauge_mm <= 345.0
    assert list(range(1, len(courses.alternatives) + 1)) == [each.rank for each in courses.alternatives]
    changes = " ".join(each.change for each in courses.alternatives)
    assert "Cut the top course at its head by 105.5 mm: 3 gauges of 340 mm." in changes
    assert "Two gauges in blocks" in changes
    assert "Another covering, one whose gauge range takes in 304.8 mm (3 gauges)." in changes
    keeps = [each.keeps_limits for each in courses.alternatives]
    assert sorted(keeps, reverse=True) == keeps


def test_no_covering_is_offered_that_could_not_be_made_and_no_block_of_no_gauges() -> None:
    for rafter_mm in (450.0, 500.0, 800.0):
        courses = set_out_courses(with_rafters(rafter_mm, gauge_min_mm=340.0))
        assert Strategy.NONE == courses.strategy
        changes = " ".join(each.change for each in courses.alternatives)
        assert " 0 gauges" not in changes
        assert "1 gauge make " not in courses.why
        for gauge_mm in re.findall(r"takes in ([\d.]+) mm", changes):
            assert 85 <= float(gauge_mm) <= 400


def test_a_ridge_far_out_of_parallel_offers_courses_run_out_against_it() -> None:
    courses = set_out_courses(with_rafters(4905.0, 5300.0))
    assert Strategy.NONE == courses.strategy
    assert any("run out against the ridge" in each.change for each in courses.alternatives)


def test_a_course_that_could_be_saved_is_offered_and_not_taken() -> None:
    courses = set_out_courses(with_rafters(348.0 + 14 * 345.0 + 37.5 + 6.0, gauge_min_mm=None))
    assert 16 == courses.count
    assert "One course fewer" in courses.alternatives[0].costs
    assert 14 == courses.alternatives[0].gauges


def test_kept_battens_are_kept_and_the_rest_set_out_from_the_last() -> None:
    courses = set_out_courses(replace(TILE, nailed=(NailedRod(at_mm=0.0, marks_mm=(352.0, 690.0, 1021.0)),)))
    rod = courses.rods[0]
    assert Strategy.CARRIED_ON == courses.strategy
    assert (352.0, 690.0, 1021.0) == rod.marks_mm[:3]
    assert 3 == rod.kept_count
    assert [] == outside(courses)
    assert (4867.5 - 1021.0) / 12 == pytest.approx(rod.gauge_mm)


def test_a_kept_gap_too_wide_says_which_lap_is_short_and_by_how_much() -> None:
    courses = set_out_courses(replace(TILE, nailed=(NailedRod(at_mm=0.0, marks_mm=(348.0, 700.0)),)))
    short = next(finding for finding in courses.findings if finding.rule == "headlap")
    assert Verdict.OUTSIDE is short.verdict
    assert (68.0, 75.0) == (short.proposed, short.limit)
    assert "the lap there is short by 7 mm" in short.says


def test_everything_nailed_already_is_only_judged() -> None:
    marks = tuple(348.0 + 340.0 * index for index in range(14))
    courses = set_out_courses(with_rafters(marks[-1] + 30.0, nailed=(NailedRod(at_mm=0.0, marks_mm=marks),)))
    assert marks == courses.rods[0].marks_mm
    assert "nothing is added" in courses.why


def test_battens_measured_at_both_ends_run_straight_between() -> None:
    ask = with_rafters(4905.0, 4905.0, 4905.0)
    nailed = (NailedRod(at_mm=0.0, marks_mm=(348.0, 688.0)), NailedRod(at_mm=6000.0, marks_mm=(348.0, 692.0)))
    courses = set_out_courses(replace(ask, nailed=nailed))
    assert [688.0, 690.0, 692.0] == [rod.marks_mm[1] for rod in courses.rods]


def test_openings_are_told_against_the_nearest_courses() -> None:
    opening = Opening(name="rooflight", from_left_mm=2400.0, up_slope_mm=1600.0, width_mm=780.0, height_mm=1180.0)
    courses = set_out_courses(with_rafters(4905.0, 4905.0, openings=(opening,)))
    told = courses.openings[0]
    marks = courses.rods[0].marks_mm
    assert 1600.0 - (marks[told.sill_course - 1] + 22.0) == pytest.approx(told.sill_head_mm)
    assert marks[told.head_course - 1] - 398.0 - 2780.0 == pytest.approx(told.head_tail_mm)
    assert 0 <= told.sill_head_mm < 345.0
    assert 0 <= told.head_tail_mm < 345.0
    assert ["eaves to sill", "sill to head", "head to ridge"] == [segment.name for segment in told.segments]
    assert all(segment.gauge_mm <= 345.0 for segment in told.segments)


def test_sixteenths_are_marked_in_sixteenths() -> None:
    courses = set_out_courses(replace(TILE, division=Division.SIXTEENTH))
    assert all((mark / 1.5875) == pytest.approx(round(mark / 1.5875)) for mark in courses.rods[0].marks_mm)


def test_a_greatest_gauge_between_divisions_is_marked_below_it() -> None:
    courses = set_out_courses(with_rafters(348.0 + 10 * 333.3 + 37.5, gauge_max_mm=333.3, gauge_min_mm=None))
    assert max(courses.rods[0].gaps_mm) <= 333.0


def test_a_slope_too_short_for_two_battens_says_so() -> None:
    with pytest.raises(NothingToSetOut, match="nothing is left"):
        set_out_courses(with_rafters(380.0))


@pytest.mark.parametrize("length_mm", [nan, inf, -inf, -4905.0, 0.0])
def test_lengths_that_are_no_lengths_are_refused(length_mm: float) -> None:
    with pytest.raises(InputRefused):
        set_out_courses(with_rafters(length_mm))


def test_every_fault_is_reported_at_once() -> None:
    with pytest.raises(InputRefused) as refused:
        set_out_courses(replace(TILE, unit_length_mm=nan, gauge_max_mm=-1.0, stations=()))
    assert len(refused.value.faults) >= 3


# A slope whose first and top batten are ``left`` apart: first mark 348, top batten 37.5 below the apex.
def with_left(left_mm: float, **changes: object) -> CoursesAsk:
    return with_rafters(348.0 + left_mm + 37.5, **changes)


@pytest.mark.parametrize("left_mm", [-1.0, 0.0, 5.0, 37.9])
def test_two_battens_nearer_than_a_batten_is_wide_are_no_setting_out(left_mm: float) -> None:
    with pytest.raises(NothingToSetOut, match="is left"):
        set_out_courses(with_left(left_mm, gauge_min_mm=None))


@pytest.mark.parametrize("left_mm", [38.0, 345.0])
def test_one_gauge_is_a_setting_out(left_mm: float) -> None:
    courses = set_out_courses(with_left(left_mm, gauge_min_mm=None))
    assert (2, left_mm) == (courses.count, courses.rods[0].gauge_mm)


FOURTEEN = tuple(348.0 + 345.0 * batten for batten in range(14))


@pytest.mark.parametrize(
    ("below_apex_mm", "broken"), [(24.0, ["top batten"]), (25.0, []), (50.0, []), (51.0, ["top batten"])]
)
def test_a_nailed_top_batten_is_judged_by_its_band(below_apex_mm: float, broken: list[str]) -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=FOURTEEN),)
    courses = set_out_courses(with_rafters(FOURTEEN[-1] + below_apex_mm, nailed=nailed))
    assert 14 == courses.count
    assert broken == outside(courses)


def test_nailed_battens_that_leave_no_room_for_one_more_say_how_many_to_take_down() -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=FOURTEEN),)
    courses = set_out_courses(with_rafters(FOURTEEN[-1] + 60.0, gauge_min_mm=300.0, nailed=nailed))
    assert FOURTEEN == courses.rods[0].marks_mm
    assert "the last stands 60 mm below the apex" in courses.why
    taken_down = courses.alternatives[0]
    # The wished top batten is at 4893 − 37.5 = 4855.5, and the ridge allowance gives 12.5 either way. From batten 9
    # (3108) 1747.5 is left: 22.5 over five 345s, 52.5 short of six 300s. From batten 8 (2763) 2092.5 is left: seven
    # 300s are 2100, 7.5 more, so the top batten goes to 30 below the apex.
    assert "Take down the last 6 nailed battens and set out from batten 8: 7 gauges of 300 mm." == taken_down.change
    assert "The top batten then stands 30 mm below the apex." in taken_down.costs
    assert taken_down.keeps_limits


def test_nailed_battens_past_the_top_line_at_one_end_are_told_and_not_refused() -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=FOURTEEN),)
    courses = set_out_courses(with_rafters(FOURTEEN[-1] + 5.0, FOURTEEN[-1] + 200.0, nailed=nailed))
    assert [FOURTEEN, FOURTEEN] == [rod.marks_mm for rod in courses.rods]
    assert ["top batten", "top batten"] == outside(courses)


@pytest.mark.parametrize(
    ("right_mm", "broken"), [(343.0, []), (342.0, ["eaves overhang"]), (354.0, ["eaves overhang"])]
)
def test_a_nailed_eaves_batten_off_its_band_at_the_far_end_is_told(right_mm: float, broken: list[str]) -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=(348.0,)), NailedRod(at_mm=6000.0, marks_mm=(right_mm,)))
    courses = set_out_courses(with_rafters(4905.0, 4905.0, gauge_min_mm=None, nailed=nailed))
    assert broken == outside(courses)


def test_with_battens_nailed_only_the_ridge_allowance_is_said_to_move() -> None:
    # 352 + 345 = 697 is nailed; seven more 345s end at 3112, 3150.5 − 3112 = 38.5 below the apex, 1 mm under the wish.
    nailed = (NailedRod(at_mm=0.0, marks_mm=(352.0, 697.0)),)
    courses = set_out_courses(with_rafters(3150.5, gauge_min_mm=340.0, nailed=nailed))
    assert "the top batten is 38.5 mm below the apex (1 mm moved in all)" in courses.why
    assert "overhang" not in courses.why


def test_the_remedy_not_taken_is_offered_and_weighed() -> None:
    # 2765 and 2755 wished: eight gauges of 345 are 2760, so 5 mm of move brings the longer in; the shorter then takes
    # 2750 / 8 = 343.75. Cutting the 10 mm taper off the top course departs by 10 and needs the same 5 mm of move.
    courses = set_out_courses(with_rafters(348.0 + 2765.0 + 37.5, 348.0 + 2755.0 + 37.5, gauge_min_mm=340.0))
    assert Strategy.FLEXED == courses.strategy
    assert "cutting the top course instead departs from what is wished by 15 mm, this by 5 mm" in courses.why
    assert "Keep the battens parallel to the eaves at 345 mm" in courses.alternatives[0].change


def test_a_range_with_no_whole_division_is_named_as_the_cause() -> None:
    courses = set_out_courses(with_rafters(4905.0, gauge_min_mm=344.2, gauge_max_mm=344.8))
    assert Strategy.NONE == courses.strategy
    assert max(courses.rods[0].gaps_mm) <= 344.0
    assert "No whole division of the rod lies between 344.2 mm and 344.8 mm" in courses.why


def test_a_top_band_too_narrow_to_mark_is_judged_on_the_exact_length() -> None:
    assert [] == outside(set_out_courses(with_rafters(4905.5, top=Band(30.0, 30.0, EXAMPLE))))


ROOFLIGHT = Opening(name="rooflight", from_left_mm=2400.0, up_slope_mm=1600.0, width_mm=780.0, height_mm=1180.0)


def test_segments_start_from_the_last_nailed_batten() -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=(348.0, 690.0, 1030.0)),)
    told = set_out_courses(with_rafters(4905.0, 4905.0, openings=(ROOFLIGHT,), nailed=nailed)).openings[0]
    # Head of a unit at the sill: batten at 1600 − 22 = 1578; 1578 − 1030 = 548, two gauges of 274, under 320.
    first = told.segments[0]
    assert ("last nailed batten to sill", 1030.0, 1578.0, 2, 274.0, False) == (
        first.name, first.from_mm, first.to_mm, first.count, first.gauge_mm, first.inside,
    )  # fmt: skip


def test_battens_nailed_past_the_sill_leave_no_segments_and_say_so() -> None:
    nailed = (NailedRod(at_mm=0.0, marks_mm=FOURTEEN[:6]),)
    told = set_out_courses(with_rafters(4905.0, 4905.0, openings=(ROOFLIGHT,), nailed=nailed)).openings[0]
    assert () == told.segments
    assert "no room for a batten of its own from last nailed batten to sill" in told.segments_say


def test_a_segment_is_inside_only_where_every_station_is() -> None:
    # Head to ridge starts at 2780 + 398 = 3178. At 4905 it spans about 1690, five gauges of 338; a second station 120 mm
    # shorter spans about 1570: 314 with five gauges, under the least of 320.
    told = set_out_courses(with_rafters(4905.0, 4785.0, openings=(ROOFLIGHT,))).openings[0]
    assert 5 == told.segments[2].count
    assert not told.segments[2].inside
