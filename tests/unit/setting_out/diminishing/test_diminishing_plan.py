from dataclasses import replace
from math import inf, nan

import pytest

from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap import Heap, Nailing
from gaugerod.setting_out.diminishing.ask import Aim
from gaugerod.setting_out.diminishing.plan import plan_diminishing
from tests.scenario.random_slates import ask, mm

COURSE_MM = 7155.0
"""Run of one course of the example: 7 m wide, a joint, and 150 mm lost at the sides."""


def heap(length_mm: float, courses: float) -> Heap:
    """So many courses of sound slate, the broken allowance of a twentieth put back on."""
    return Heap(length_mm=length_mm, run_mm=courses * COURSE_MM / 0.95)


def test_least_left_lays_more_courses_than_fewest_courses() -> None:
    more = plan_diminishing(ask(aim=Aim.LEAST_LEFT)).plan
    fewer = plan_diminishing(ask(aim=Aim.FEWEST_COURSES)).plan
    assert more is not None
    assert fewer is not None
    assert more.courses_count > fewer.courses_count
    assert more.left_run_mm < fewer.left_run_mm


def test_a_plan_that_is_found_offers_the_other_aim_and_a_larger_lap() -> None:
    offers = [offer.change.partition(":")[0] for offer in plan_diminishing(ask()).alternatives]
    assert ["Fewer short courses", "A larger lap"] == offers


def test_a_short_stack_says_what_stays_bare_and_what_to_buy() -> None:
    # 500 mm slates, hole 25 down, lap 75: gauge 200. Three courses reach 600 of 800 + 45 mm (the least overhang).
    # Five courses and one for the under-eaves are 6 × 7155 mm of run, 3.9 of them there; a twentieth will break.
    answer = plan_diminishing(ask(heaps=(heap(500.0, 3.9),), rafters_mm=(1000.0,)))
    assert answer.plan is None
    assert "245 mm" in answer.why
    assert [Verdict.WITHIN, Verdict.NOT_COVERED] == [finding.verdict for finding in answer.findings]
    assert ["Buy 15.9 m run of slates 500 mm long"] == [offer.change for offer in answer.alternatives]


def test_what_it_says_to_buy_is_enough_and_less_is_not() -> None:
    there_mm = 3.9 * COURSE_MM / 0.95
    enough = Heap(length_mm=500.0, run_mm=there_mm + 15_900.0)
    assert plan_diminishing(ask(heaps=(enough,), rafters_mm=(1000.0,))).plan is not None
    less = Heap(length_mm=500.0, run_mm=there_mm + 15_700.0)
    assert plan_diminishing(ask(heaps=(less,), rafters_mm=(1000.0,))).plan is None


def test_the_under_eaves_course_comes_out_of_the_same_stack() -> None:
    # Four courses cover the slope; without a fifth there is nothing to cut the under-eaves slates from.
    assert plan_diminishing(ask(heaps=(heap(500.0, 4.0),), rafters_mm=(900.0,))).plan is None
    plan = plan_diminishing(ask(heaps=(heap(500.0, 5.0),), rafters_mm=(900.0,))).plan
    assert plan is not None
    assert 4 == plan.courses_count
    assert pytest.approx(COURSE_MM) == plan.heaps[0].under_eaves_run_mm
    # Gauge 200, lap 75, and the 25 above its hole.
    assert plan.under_eaves_length_mm == 300.0


def test_slates_too_short_for_the_under_eaves_course_do_not_count_for_it() -> None:
    longs = heap(500.0, 4.0)
    for short_mm, found in ((299.0, False), (300.0, True), (301.0, True)):
        plan = plan_diminishing(ask(heaps=(longs, heap(short_mm, 1.0)), rafters_mm=(900.0,))).plan
        assert found == (plan is not None)


def test_a_drop_that_brings_two_battens_together_is_not_planned() -> None:
    # 500 mm slates gauge 200: from them to a length d shorter the battens are 200 − d apart, and need 50.
    for short_mm, found in ((349.0, False), (350.0, True), (351.0, True)):
        heaps = (heap(500.0, 3.0), heap(short_mm, 4.0))
        plan = plan_diminishing(ask(heaps=heaps, rafters_mm=(1100.0,))).plan
        assert found == (plan is not None)


def test_the_overhang_gives_way_only_when_the_stack_needs_it() -> None:
    # Four courses of gauge 200 and one for the under-eaves: 800 mm.
    heaps = (heap(500.0, 5.0),)
    for rafter_mm, overhang_mm in ((950.0, 50.0), (951.0, 45.0), (955.0, 45.0)):
        plan = plan_diminishing(ask(heaps=heaps, rafters_mm=(rafter_mm,))).plan
        assert plan is not None
        assert overhang_mm == plan.overhang_mm
    assert plan_diminishing(ask(heaps=heaps, rafters_mm=(956.0,))).plan is None


def test_a_ridge_too_narrow_to_lap_the_course_below_the_top_one_is_refused_with_its_width() -> None:
    # Apex clear 25, hole 25 below the head, lap 75.
    assert plan_diminishing(ask(ridge_cover_mm=125.0)).plan is not None
    narrow = plan_diminishing(ask(ridge_cover_mm=124.0))
    assert narrow.plan is None
    assert Verdict.OUTSIDE is narrow.findings[0].verdict
    assert narrow.findings[0].limit == 125.0
    assert "125 mm" in narrow.alternatives[0].change


def test_where_the_apex_is_off_the_division_the_ridge_asked_for_is_the_one_that_does() -> None:
    rafters = (8000.5,)
    assert plan_diminishing(ask(rafters_mm=rafters, ridge_cover_mm=126.0)).plan is not None
    narrow = plan_diminishing(ask(rafters_mm=rafters, ridge_cover_mm=125.0))
    assert narrow.plan is None
    assert 126.0 == narrow.findings[0].limit
    assert "126 mm" in narrow.alternatives[0].change
    assert "126 mm" in narrow.why


def test_part_courses_dressed_down_are_offered_when_they_close_the_gap() -> None:
    # Half a course of 500 mm and half of 475 mm make a third course of 475 mm (gauge 187), and 310 mm slates the
    # under-eaves.
    heaps = (heap(500.0, 3.5), heap(475.0, 2.5), heap(310.0, 1.0))
    rafter_mm = 200.0 - 50.0 + 3 * 200.0 + 3 * 187.0
    answer = plan_diminishing(ask(heaps=heaps, rafters_mm=(rafter_mm,)))
    assert answer.plan is None
    assert answer.alternatives[0].change.startswith("Dress the odd slates")


def test_each_station_gets_its_own_rod_that_ends_at_its_own_ridge() -> None:
    plan = plan_diminishing(ask(rafters_mm=(8000.0, 7980.0))).plan
    assert plan is not None
    ends = [rod.tails_mm[-1] + rod.margins_mm[-1] for rod in plan.rods]
    assert [7800.0, 7780.0] == ends


def test_rafters_that_differ_too_much_for_one_plan_are_refused() -> None:
    # Below the drop of 100 mm a course must show 150 for two battens, so the 400 mm slates alone would give way.
    heaps = (heap(500.0, 3.0), heap(400.0, 6.0))
    assert plan_diminishing(ask(heaps=heaps, rafters_mm=(1300.0, 900.0))).plan is not None
    with pytest.raises(NothingToSetOut, match="rafters differ too much"):
        plan_diminishing(ask(heaps=heaps, rafters_mm=(1300.0, 400.0)))


def test_centre_nails_fall_just_clear_of_the_head_below() -> None:
    plan = plan_diminishing(ask(nailing=Nailing.CENTRE)).plan
    assert plan is not None
    rod = plan.rods[0]
    assert rod.marks_mm[0] == rod.tails_mm[0] + plan.under_eaves_length_mm + 10.0
    assert rod.marks_mm[1] == rod.tails_mm[0] + plan.groups[0].length_mm + 10.0


def test_a_short_slate_lapped_by_more_than_a_third_is_said_to_be() -> None:
    for length_mm, verdict in ((299.0, Verdict.OUTSIDE), (300.0, Verdict.WITHIN), (301.0, Verdict.WITHIN)):
        answer = plan_diminishing(ask(heaps=(heap(length_mm, 30.0),), rafters_mm=(1000.0,), headlap_mm=100.0))
        third = next(finding for finding in answer.findings if finding.rule == "greatest headlap")
        assert verdict is third.verdict


def test_a_counted_heap_says_how_many_slates_stay() -> None:
    heaps = (Heap(length_mm=500.0, slates_count=200, average_width_mm=245.0),)
    plan = plan_diminishing(ask(heaps=heaps, rafters_mm=(900.0,))).plan
    assert plan is not None
    # 190 sound slates of 250 mm run; five courses of 7155 mm laid and cut: 11 725 mm over.
    assert 46 == plan.heaps[0].left_slates_count


@pytest.mark.parametrize("wrong", [nan, inf, -inf, -1.0, 0.0])
def test_lengths_that_are_no_lengths_are_refused_together(wrong: float) -> None:
    asked = replace(ask(heaps=(Heap(length_mm=wrong, run_mm=1000.0),)), course_width_mm=wrong, headlap=mm(wrong))
    with pytest.raises(InputRefused) as refused:
        plan_diminishing(asked)
    assert {"course_width", "headlap", "heap[0].length"} <= {fault.field for fault in refused.value.faults}


@pytest.mark.parametrize(
    "heaps",
    [
        (),
        (Heap(length_mm=400.0),),
        (Heap(length_mm=400.0, run_mm=1.0, slates_count=1, average_width_mm=200.0),),
        (Heap(length_mm=400.0, slates_count=10),),
        (Heap(length_mm=400.0, run_mm=nan),),
        (Heap(length_mm=400.0, run_mm=-1.0),),
        (Heap(length_mm=400.0, run_mm=1.0), Heap(length_mm=400.0, run_mm=1.0)),
    ],
)
def test_a_heap_that_is_not_counted_one_way_is_refused(heaps: tuple[Heap, ...]) -> None:
    with pytest.raises(InputRefused):
        plan_diminishing(ask(heaps=heaps))


def test_the_working_names_every_heap_and_the_sum() -> None:
    steps = [step.name for _, step in plan_diminishing(ask()).working.walk()]
    assert 14 == sum(name.startswith("heap of") for name in steps)
    assert "reach of the plan" == steps[-1]
