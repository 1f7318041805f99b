"""Roofs worked by hand: laps, what leaks first, the strip-back and its new marks."""

import pytest

from gaugerod.as_built.ask import MarginsMeasured
from gaugerod.as_built.check_roof import check_roof
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile, sized_slate
from gaugerod.standards.edition import Exposure
from tests.scenario.roofs_as_built import at_gaps, battens, roof

EVEN = at_gaps(320, 320, 320, 320, 320, 320)


def outside(check: RoofCheck) -> list[str]:
    return [finding.rule for finding in check.findings if finding.verdict is Verdict.OUTSIDE]


def test_an_even_roof_has_nothing_outside_and_nothing_to_strip() -> None:
    check = check_roof(roof(battens(*EVEN)))
    assert [80.0] * 6 == [lap.lap_mm for lap in check.rods[0].laps]
    assert [] == outside(check)
    assert () == check.leaks
    assert check.strip_back is None
    assert () == check.outside
    assert () == check.advice


@pytest.mark.parametrize(("gap_mm", "short"), [(324.9, False), (325.0, False), (325.1, True)])
def test_a_lap_is_short_just_past_the_greatest_gauge(gap_mm: float, *, short: bool) -> None:
    check = check_roof(roof(battens(*at_gaps(320, gap_mm, 320))))
    assert short == any(lap.is_short for lap in check.rods[0].laps)
    assert short == ("lap as built" in outside(check))
    assert short == (check.strip_back is not None)


def test_a_batten_ten_too_high_makes_the_lap_below_it_short_and_is_said_with_record_and_edition() -> None:
    # 400 − 330 = 70: 5 short of the record's 75, and of the edition's 75 (NHBC Standards 7.2.19)
    check = check_roof(roof(battens(*at_gaps(320, 320, 330, 310, 320, 320))))
    (leak,) = check.leaks
    assert (4, 3, 70.0, 5.0, 5.0) == (
        leak.lap.course,
        leak.lap.over,
        leak.lap.lap_mm,
        leak.lap.short_by_mm,
        leak.lap.short_of_edition_mm,
    )
    said = next(finding.says for finding in check.findings if finding.rule == "lap as built")
    assert "5.0 mm short of 75 mm" in said
    assert "short of the edition's 75 mm as well" in said


def test_the_least_strip_back_keeps_the_battens_below_and_sets_out_the_rest() -> None:
    # Battens at 330, 650, 970, 1300, 1610, 1930, 2250; apex 2285. Kept to 970: 2285 − 37.5 − 970 = 1277.5, four gauges.
    check = check_roof(roof(battens(*at_gaps(320, 320, 330, 310, 320, 320))))
    cure = check.strip_back
    assert cure is not None
    assert cure.courses is not None
    assert (True, 3, 4) == (cure.cures, cure.keep_count, cure.strip_count)
    (rod,) = cure.courses.rods
    assert (330.0, 650.0, 970.0) == rod.marks_mm[:3]
    assert 7 == len(rod.marks_mm)
    assert all(gap <= 325 for gap in rod.gaps_mm)
    assert 25 <= rod.below_apex_mm <= 50


def test_battens_above_that_stand_on_a_new_mark_already_may_stay_nailed() -> None:
    cure = check_roof(roof(battens(*at_gaps(320, 320, 330, 310, 320, 320)))).strip_back
    assert cure is not None
    assert cure.courses is not None
    marks_mm = cure.courses.rods[0].marks_mm
    # The same roof nailed to the new marks, but for batten 4, which is 15 too high.
    one_out = (*marks_mm[:3], marks_mm[3] + 15.0, *marks_mm[4:])
    again = check_roof(roof(battens(*one_out, below_apex_mm=2285.0 - one_out[-1]))).strip_back
    assert again is not None
    assert again.courses is not None
    assert marks_mm == again.courses.rods[0].marks_mm
    assert (3, 4) == (again.keep_count, again.strip_count)
    assert again.says.endswith("The units come off, but battens 5, 6, 7 may stay nailed: on a new mark already.")


def test_more_comes_off_where_the_courses_above_cannot_be_set_out_from_the_last_sound_batten() -> None:
    # The top gap of 400 is short. From batten 3 at 970 to the apex 1405 less 25 to 50: 385 to 410 is neither one gauge
    # of 280 to 325 nor two. From batten 2 at 650: 705 to 730 is neither two (560 to 650) nor three. From batten 1 at 330:
    # 1025 to 1050 is no three (840 to 975), no four (1120 …). From the eaves, first batten 325 to 335: still no three.
    check = check_roof(roof(battens(*at_gaps(320, 320, 400))))
    cure = check.strip_back
    assert cure is not None
    assert (False, 0, 4) == (cure.cures, cure.keep_count, cure.strip_count)
    assert cure.courses is not None
    assert cure.courses.alternatives
    assert "No strip-back cures it" in cure.says


def test_two_more_battens_come_off_when_only_then_the_gauge_fits() -> None:
    # Marks 330, 650, 930, 1260, short by the gap of 330; apex 1645 (1260 + 350 + 35) with gaps 280 and 330 and 350.
    # From 930: 665 to 690 is no two gauges (560 to 650), no three (840 …). From 650: 945 to 970 is three (840 to 975).
    check = check_roof(roof(battens(*at_gaps(320, 280, 330, 350))))
    cure = check.strip_back
    assert cure is not None
    assert cure.courses is not None
    assert (True, 2, 3) == (cure.cures, cure.keep_count, cure.strip_count)
    assert 5 == len(cure.courses.rods[0].marks_mm)


def test_a_short_ridge_cover_alone_is_cured_from_the_top_down() -> None:
    # 110 − 70 + 20 = 60 of cover, 15 short of 75 (trade practice). The top batten comes off and goes back 30 higher.
    check = check_roof(roof(battens(*at_gaps(300, 300, 290), below_apex_mm=70.0)))
    assert 60.0 == check.rods[0].cover_mm
    assert () == check.leaks
    cure = check.strip_back
    assert cure is not None
    assert cure.courses is not None
    assert (True, 3, 1) == (cure.cures, cure.keep_count, cure.strip_count)
    (rod,) = cure.courses.rods
    assert 110.0 - rod.below_apex_mm + 20.0 >= 75.0


def test_a_half_finished_roof_is_carried_on_from_its_last_sound_batten() -> None:
    rod = battens(*at_gaps(320, 320), below_apex_mm=1320.0)
    check = check_roof(roof(rod, finished=False))
    assert {"ridge cover", "top batten"}.isdisjoint({finding.rule for finding in check.findings})
    cure = check.strip_back
    assert cure is not None
    assert cure.courses is not None
    assert (3, 0) == (cure.keep_count, cure.strip_count)
    assert 7 == len(cure.courses.rods[0].marks_mm)
    assert "strip nothing" in cure.says


def test_the_worst_of_several_places_decides() -> None:
    left = battens(*at_gaps(320, 320, 320))
    right = battens(*at_gaps(320, 335, 305), at_mm=6000.0)
    check = check_roof(roof(left, right))
    (leak,) = check.leaks
    assert (6000.0, 65.0) == (leak.lap.at_mm, leak.lap.lap_mm)
    cure = check.strip_back
    assert cure is not None
    assert 2 == cure.keep_count


def test_an_open_lap_leaks_first_and_of_equal_laps_the_lower() -> None:
    # Gaps 405: 5 open. Two of 340: 15 short each; the lower one has more of the slope above it.
    check = check_roof(roof(battens(*at_gaps(340, 320, 340, 320, 405, 320))))
    assert [6, 2, 4] == [leak.lap.course for leak in check.leaks]
    assert [True, False, False] == [leak.is_open for leak in check.leaks]
    assert [1, 2, 3] == [leak.rank for leak in check.leaks]
    second = check.leaks[1]
    assert pytest.approx(15 / 75) == second.missing_ratio
    # tail of course 2: 330 + 340 − 380 = 290; apex 330 + 2045 + 35 = 2410
    assert pytest.approx((2410 - 290) / 2410) == second.water_ratio


def test_plain_tiles_lap_the_second_course_below() -> None:
    # 265 − (100 + 104) = 61 of the second lap: 4 short of 65 (NHBC Standards 7.2.19 Table 21)
    tile = plain_tile("clay-plain-265x165")
    marks = at_gaps(100, 100, 104, 98, 100, first_mm=204.0)
    check = check_roof(roof(battens(*marks, below_apex_mm=45.0), covering=tile, ridge_cover_mm=150.0, pitch_deg=45.0))
    assert [65.0, 61.0, 63.0, 67.0] == [lap.lap_mm for lap in check.rods[0].laps]
    assert [(4, 2), (5, 3)] == [(leak.lap.course, leak.lap.over) for leak in check.leaks]
    unknown = {finding.rule for finding in check.findings if finding.verdict is Verdict.NOT_COVERED}
    assert {"lap over the under-eaves course", "lap of the short course under the ridge"} <= unknown


def test_plain_tiles_in_severe_exposure_need_the_greater_lap() -> None:
    tile = plain_tile("clay-plain-265x165")
    rod = battens(*at_gaps(100, 100, 100, first_mm=204.0), below_apex_mm=45.0)
    check = check_roof(roof(rod, covering=tile, exposure=Exposure.SEVERE, ridge_cover_mm=150.0, pitch_deg=45.0))
    assert 75.0 == check.needed.least_lap.value
    assert [10.0, 10.0] == [lap.short_by_mm for lap in check.rods[0].laps]


def test_slates_are_measured_by_their_margins_and_marked_by_their_tails() -> None:
    # 500 long, 210 margins: 500 − 420 = 80, what the table asks at 30° in moderate exposure; 215 + 210 leaves 75.
    rod = MarginsMeasured(at_mm=0.0, length_mm=2400.0, overhang_mm=50.0, margins_mm=(210.0, 210.0, 215.0, 210.0, 210.0))
    slate = sized_slate("slate-500x250")
    check = check_roof(roof(rod, covering=slate, finished=False, pitch_deg=30.0))
    assert [80.0, 75.0, 75.0, 80.0] == [lap.lap_mm for lap in check.rods[0].laps]
    assert -50.0 == check.rods[0].tails_mm[0]
    assert "head of slate" == check.needed.marks_are
    cure = check.strip_back
    assert cure is not None
    assert 3 == cure.keep_count


def test_the_working_shows_every_lap() -> None:
    check = check_roof(roof(battens(*at_gaps(320, 330, 320))))
    steps = {step.name: step.value for _, step in check.working.walk()}
    assert 80.0 == steps["lap of course 2 over course 1"]
    assert 70.0 == steps["lap of course 3 over course 2"]
    assert 1.0 == steps["check of rear"]
