"""Whatever the stack and the slope: no lap short as marked, no margin taller than the one below, the slope filled."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Heap, Nailing
from gaugerod.setting_out.diminishing.answer import DiminishingPlan, DiminishingRod
from gaugerod.setting_out.diminishing.ask import Aim, DiminishingAsk
from gaugerod.setting_out.diminishing.best import best_plan
from gaugerod.setting_out.diminishing.plan import plan_diminishing
from gaugerod.setting_out.section_laid import LaidCourse, deep_at
from tests.scenario.random_slates import ask

LENGTHS = st.floats(230.0, 620.0, allow_nan=False).map(lambda length: round(length, 1))


@st.composite
def asks(draw: st.DrawFn) -> DiminishingAsk:
    lengths = draw(st.sets(LENGTHS, min_size=1, max_size=9))
    rafter_mm = draw(st.floats(900.0, 9000.0))
    nailing = draw(st.sampled_from(Nailing))
    return ask(
        heaps=tuple(Heap(length_mm=length, run_mm=draw(st.floats(0.0, 150_000.0))) for length in lengths),
        rafters_mm=(rafter_mm, rafter_mm + draw(st.floats(-30.0, 30.0))),
        headlap_mm=draw(st.floats(50.0, 110.0)),
        nailing=nailing,
        aim=draw(st.sampled_from(Aim)),
        division=draw(st.sampled_from(Division)),
        ridge_cover_mm=draw(st.floats(165.0, 260.0)),
    )


def section_of(asked: DiminishingAsk, plan: DiminishingPlan, rod: DiminishingRod) -> list[LaidCourse]:
    """Every course where its tail is marked, with the slate it is laid with, measured on the ground."""
    lost_mm = asked.slates.lost_at_head_mm
    lengths = [group.length_mm for group in plan.groups for _ in range(group.courses_count)]
    for course, cut_mm in rod.cut_lengths_mm:
        lengths[course - 1] = cut_mm
    slates = [(rod.tails_mm[0], plan.under_eaves_length_mm), *zip(rod.tails_mm, lengths, strict=True)]
    courses = [
        LaidCourse(name=str(at), tail_mm=tail, head_mm=tail + length - lost_mm)
        for at, (tail, length) in enumerate(slates)
    ]
    ridge = LaidCourse(name="ridge", tail_mm=rod.rafter_mm - asked.ridge_cover_mm, head_mm=rod.rafter_mm)
    return [*courses, ridge]


def check_the_plan(asked: DiminishingAsk, plan: DiminishingPlan) -> None:
    for rod in plan.rods:
        section = section_of(asked, plan, rod)
        # Layer by layer: two slates deep everywhere below the ridge, three deep for the lap above every tail.
        edge_mm = section[-1].tail_mm
        for lower, upper in pairwise([rod.tails_mm[0], *rod.tails_mm[1:], edge_mm]):
            for at in (lower + 0.01, (lower + upper) / 2, upper - 0.01):
                if at < edge_mm:
                    assert deep_at(section, y_mm=at) >= 2
        for tail in (*rod.tails_mm[1:], edge_mm):
            for into_lap in (0.01, asked.headlap.value / 2, asked.headlap.value - 0.01):
                assert deep_at(section, y_mm=tail + into_lap) >= 3
        assert all(upper <= lower + 1e-6 for lower, upper in pairwise(rod.margins_mm))
        assert min(rod.margins_mm) > 0
        assert abs(sum(rod.margins_mm) - rod.overhang_mm - edge_mm) <= float(asked.division.step_mm)
        step_mm = float(asked.division.step_mm)
        assert all(abs(mark / step_mm - round(mark / step_mm)) < 1e-6 for mark in rod.marks_mm)
        assert all(upper >= lower for lower, upper in pairwise(rod.marks_mm))
    lengths = [group.length_mm for group in plan.groups]
    assert sorted(lengths, reverse=True) == lengths
    check_the_stack(asked, plan)


def check_the_stack(asked: DiminishingAsk, plan: DiminishingPlan) -> None:
    course_mm = asked.course_width_mm + asked.slates.joint_mm + asked.side_waste_mm
    assert plan.courses_count == sum(heap.courses_laid_count for heap in plan.heaps)
    assert abs(sum(heap.under_eaves_run_mm for heap in plan.heaps) - course_mm) < 1e-6
    for use in plan.heaps:
        heap = next(one for one in asked.slates.heaps if one.length_mm == use.length_mm)
        assert heap.run_mm is not None
        laid_mm = use.courses_laid_count * course_mm + use.under_eaves_run_mm + use.left_run_mm
        assert abs(laid_mm - heap.run_mm * (1 - asked.slates.broken_ratio)) < 1e-3
        assert use.left_run_mm >= -1e-6
        if use.under_eaves_run_mm > 0:
            assert use.length_mm >= plan.under_eaves_length_mm - 1e-6


def check(asked: DiminishingAsk) -> None:
    try:
        answer = plan_diminishing(asked)
    except NothingToSetOut:  # one plan cannot serve rafters that differ too much; one rafter always has its plan
        assert len({station.length_mm for station in asked.stations}) > 1
        return
    if answer.plan is None:
        assert answer.why
        assert answer.findings
    else:
        check_the_plan(asked, answer.plan)


@settings(max_examples=100, deadline=None)
@given(asks())
def test_every_plan_keeps_the_lap_as_laid(asked: DiminishingAsk) -> None:
    check(asked)


@pytest.mark.slow
@settings(max_examples=3000, deadline=None)
@given(asks())
def test_every_plan_keeps_the_lap_as_laid_over_many_stacks(asked: DiminishingAsk) -> None:
    check(asked)


@settings(max_examples=50, deadline=None)
@given(asks())
def test_the_order_the_heaps_are_counted_in_does_not_matter(asked: DiminishingAsk) -> None:
    heaps = tuple(reversed(asked.slates.heaps))
    one_rafter = replace(asked, stations=asked.stations[:1])
    turned = replace(one_rafter, slates=replace(asked.slates, heaps=heaps))
    assert best_plan(one_rafter) == best_plan(turned)
