"""Random roofs: what was set out passes, a batten moved makes exactly the laps it must short, the strip-back is the least."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from gaugerod.as_built.ask import BattensMeasured, MarginsMeasured, RoofAsk
from gaugerod.as_built.check_roof import check_roof
from gaugerod.as_built.laps import section
from gaugerod.as_built.needed import needed_by
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.coverings.double_lap_catalogue import plain_tile
from gaugerod.setting_out.courses import Courses, CoursesAsk, Strategy
from gaugerod.setting_out.section_laid import laps_as_laid
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod
from tests.scenario.roofs_as_built import TILE, battens, roof

NOISE_MM = 1e-6
FAST = settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
SLOW = settings(max_examples=5000, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])


@dataclass(frozen=True)
class SetOut:
    """A roof as it was set out, and the courses it was set out with."""

    ask: RoofAsk
    courses: Courses


@st.composite
def roofs(draw: st.DrawFn) -> SetOut:
    """A roof set out by the engine: one to three places, single or double lap, tapered or not."""
    double = draw(st.booleans())
    count = draw(st.integers(1, 3))
    lengths_mm = [draw(st.integers(1200, 6000))]
    lengths_mm += [lengths_mm[0] + draw(st.integers(-15, 15)) for _ in range(count - 1)]
    stations = [
        BattensMeasured(at_mm=2500.0 * place, length_mm=float(length), marks_mm=(300.0, 400.0, 500.0))
        for place, length in enumerate(lengths_mm)
    ]
    least = draw(st.none() | st.integers(80, 130))
    covering = plain_tile("clay-plain-265x165") if double else replace(TILE, headlap_max_mm=least)
    ask = replace(roof(*stations, covering=covering, ridge_cover_mm=170.0, pitch_deg=45.0), top=None)
    try:
        courses = set_out_courses(needed_by(ask).afresh)
    except NothingToSetOut:
        assume(condition=False)
        raise
    assume(courses.strategy is not Strategy.NONE)
    assume(len(courses.rods[0].marks_mm) >= (3 if double else 2))
    rods = tuple(
        BattensMeasured(at_mm=rod.at_mm, length_mm=rod.length_mm, marks_mm=rod.marks_mm) for rod in courses.rods
    )
    return SetOut(ask=replace(ask, rods=rods), courses=courses)


@st.composite
def spoilt(draw: st.DrawFn) -> RoofAsk:
    """A roof whose battens above the first went in out of place, by a little or a lot, some at every place alike."""
    made = draw(roofs())
    battens_count = len(made.courses.rods[0].marks_mm)
    slip_mm = st.sampled_from([0, 0, 0, 0, 5, -5, 12, 30, -30])
    slips_mm = [0, *draw(st.lists(slip_mm, min_size=battens_count - 1, max_size=battens_count - 1))]
    rods = []
    for rod in made.ask.rods:
        assert isinstance(rod, BattensMeasured)
        marks_mm = tuple(mark + slip for mark, slip in zip(rod.marks_mm, slips_mm, strict=True))
        assume(all(upper > lower for lower, upper in pairwise(marks_mm)))
        assume(marks_mm[-1] <= rod.length_mm)
        rods.append(replace(rod, marks_mm=marks_mm))
    return replace(made.ask, rods=tuple(rods), finished=draw(st.booleans()))


def laps_by_hand(marks_mm: Sequence[float], *, length_mm: float, apart: int) -> list[float]:
    """Head of the lower less tail of the upper, from nothing but the marks and the length."""
    return [marks_mm[k] + length_mm - marks_mm[k + apart] for k in range(len(marks_mm) - apart)]


def check_what_was_set_out_passes(made: SetOut) -> None:
    check = check_roof(made.ask)
    assert () == check.leaks
    assert check.strip_back is None
    laps = {finding.rule for finding in check.findings if finding.verdict is Verdict.OUTSIDE}
    assert {"lap as built", "headlap", "headlap default", "ridge cover", "eaves overhang"}.isdisjoint(laps)


def check_every_lap_two_ways(ask: RoofAsk) -> None:
    check = check_roof(ask)
    needed, apart = check.needed, int(check.needed.lapping)
    for rod in check.rods:
        here = [lap.lap_mm for lap in rod.laps]
        as_laid = laps_as_laid(section(rod.marks_mm, needed=needed), lap_over=needed.lapping)
        assert pytest.approx([lap.lap_mm for lap in as_laid], abs=NOISE_MM) == here
        assert pytest.approx(laps_by_hand(rod.marks_mm, length_mm=needed.usable_mm, apart=apart), abs=NOISE_MM) == here
    short = {lap.course for rod in check.rods for lap in rod.laps if lap.lap_mm < needed.least_lap.value - NOISE_MM}
    assert short == {leak.lap.course for leak in check.leaks}


def check_a_batten_moved_shortens_what_it_must(made: SetOut, moved: int, by_mm: float) -> None:
    """Up by d: the laps of that course, over those below, lose d; those over it gain d. Nothing else changes."""
    before = check_roof(made.ask)
    rods = []
    for rod in made.ask.rods:
        assert isinstance(rod, BattensMeasured)
        marks_mm = list(rod.marks_mm)
        batten = moved % len(marks_mm)
        marks_mm[batten] += by_mm
        assume(all(upper > lower for lower, upper in pairwise(marks_mm)))
        assume(marks_mm[-1] <= rod.length_mm)
        rods.append(replace(rod, marks_mm=tuple(marks_mm)))
    after = check_roof(replace(made.ask, rods=tuple(rods)))
    for was, now in zip(before.rods, after.rods, strict=True):
        batten = moved % len(was.marks_mm)
        for lap_was, lap_now in zip(was.laps, now.laps, strict=True):
            change = -by_mm if lap_was.course == batten + 1 else by_mm if lap_was.over == batten + 1 else 0.0
            assert pytest.approx(lap_was.lap_mm + change, abs=NOISE_MM) == lap_now.lap_mm
            assert lap_now.is_short == (lap_was.lap_mm + change < before.needed.least_lap.value - NOISE_MM)


def check_the_strip_back_is_the_least(ask: RoofAsk) -> None:
    check = check_roof(ask)
    cure = check.strip_back
    short = bool(check.leaks) or any(
        rod.cover_mm is not None and rod.cover_mm < check.needed.cover_least.value - NOISE_MM for rod in check.rods
    )
    assert (cure is not None) == (short or not ask.finished)
    if cure is None:
        return
    battens_count = check.courses_count
    assert cure.keep_count + cure.strip_count == battens_count
    best = max((keep for keep in range(battens_count + 1) if holds(ask, keep)), default=None)
    assert cure.cures == (best is not None)
    if best is None:
        return
    assert best == cure.keep_count
    assert cure.courses is not None
    for was, rod in zip(check.rods, cure.courses.rods, strict=True):
        assert pytest.approx(was.marks_mm[:best], abs=NOISE_MM) == rod.marks_mm[:best]
        apart = int(check.needed.lapping)
        laps = laps_by_hand(rod.marks_mm, length_mm=check.needed.usable_mm, apart=apart)
        assert all(lap >= check.needed.least_lap.value - NOISE_MM for lap in laps)


def holds(ask: RoofAsk, keep: int) -> bool:
    """By brute force: with so many battens kept, can the rest be set out with no lap short and no end out of place?"""
    needed = needed_by(ask)
    length_mm, apart, least_mm = needed.usable_mm, int(needed.lapping), needed.least_lap.value
    rods = []
    for rod in ask.rods:
        assert isinstance(rod, BattensMeasured)
        rods.append(NailedRod(at_mm=rod.at_mm, marks_mm=rod.marks_mm[:keep]))
    if any(
        lap < least_mm - NOISE_MM
        for rod in rods
        for lap in laps_by_hand(rod.marks_mm, length_mm=length_mm, apart=apart)
    ):
        return False
    greatest_mm = needed.afresh.gauge_max_mm
    if apart == 2 and keep >= 2:
        greatest_mm = min(greatest_mm, *(length_mm - least_mm - rod.marks_mm[-1] + rod.marks_mm[-2] for rod in rods))
    least_gauge_mm = needed.afresh.gauge_min_mm
    if greatest_mm < max(least_gauge_mm or 10.0, 10.0):
        return False
    again = replace(needed.afresh, gauge_max_mm=greatest_mm, nailed=tuple(rods) if keep else ())
    return keeps_its_limits(again, keep=keep, length_mm=length_mm, apart=apart, least_mm=least_mm)


def keeps_its_limits(again: CoursesAsk, *, keep: int, length_mm: float, apart: int, least_mm: float) -> bool:
    try:
        courses = set_out_courses(again)
    except NothingToSetOut:
        return False
    for rod in courses.rods:
        marks_mm, top_mm = rod.marks_mm, rod.length_mm - rod.marks_mm[-1]
        if any(lap < least_mm - NOISE_MM for lap in laps_by_hand(marks_mm, length_mm=length_mm, apart=apart)):
            return False
        if not again.top.least_mm - NOISE_MM <= top_mm <= again.top.greatest_mm + NOISE_MM:
            return False
        new_gaps = rod.gaps_mm[max(keep - 1, 0) :]
        if courses.strategy is Strategy.PARALLEL:
            new_gaps = (*new_gaps[:-1], rod.gauge_mm)
        if any(again.gauge_min_mm is not None and gap < again.gauge_min_mm - NOISE_MM for gap in new_gaps):
            return False
    return True


@FAST
@given(made=roofs())
def test_a_roof_as_set_out_passes(made: SetOut) -> None:
    check_what_was_set_out_passes(made)


@FAST
@given(ask=spoilt())
def test_every_lap_agrees_with_the_section_as_laid(ask: RoofAsk) -> None:
    check_every_lap_two_ways(ask)


@FAST
@given(made=roofs(), moved=st.integers(0, 60), by_mm=st.integers(-40, 40))
def test_a_batten_moved_makes_exactly_the_laps_it_must_short(made: SetOut, moved: int, by_mm: int) -> None:
    check_a_batten_moved_shortens_what_it_must(made, moved, float(by_mm))


@FAST
@given(ask=spoilt())
def test_the_strip_back_leaves_no_lap_short_and_keeps_the_most_battens(ask: RoofAsk) -> None:
    check_the_strip_back_is_the_least(ask)


@pytest.mark.slow
@SLOW
@given(made=roofs())
def test_thousands_of_roofs_as_set_out_pass(made: SetOut) -> None:
    check_what_was_set_out_passes(made)


@pytest.mark.slow
@SLOW
@given(made=roofs(), moved=st.integers(0, 60), by_mm=st.integers(-40, 40))
def test_thousands_of_battens_moved(made: SetOut, moved: int, by_mm: int) -> None:
    check_a_batten_moved_shortens_what_it_must(made, moved, float(by_mm))


@pytest.mark.slow
@SLOW
@given(ask=spoilt())
def test_thousands_of_strip_backs_are_the_least(ask: RoofAsk) -> None:
    check_the_strip_back_is_the_least(ask)


@FAST
@given(ask=spoilt())
def test_margins_tell_the_same_as_battens(ask: RoofAsk) -> None:
    needed = needed_by(ask)
    rods = []
    for rod in ask.rods:
        assert isinstance(rod, BattensMeasured)
        margins_mm = tuple(upper - lower for lower, upper in pairwise(rod.marks_mm))
        overhang_mm = needed.afresh.hanging_length_mm - rod.marks_mm[0]
        rods.append(
            MarginsMeasured(at_mm=rod.at_mm, length_mm=rod.length_mm, overhang_mm=overhang_mm, margins_mm=margins_mm)
        )
    by_battens, by_margins = check_roof(ask), check_roof(replace(ask, rods=tuple(rods)))
    assert [leak.lap.course for leak in by_battens.leaks] == [leak.lap.course for leak in by_margins.leaks]
    kept = [None if each.strip_back is None else each.strip_back.keep_count for each in (by_battens, by_margins)]
    assert kept[0] == kept[1]


@FAST
@given(ask=spoilt())
def test_a_mirrored_roof_has_the_same_laps_and_the_same_strip_back(ask: RoofAsk) -> None:
    width_mm = ask.rods[-1].at_mm
    mirrored = tuple(replace(rod, at_mm=width_mm - rod.at_mm) for rod in reversed(ask.rods))
    here, there = check_roof(ask), check_roof(replace(ask, rods=mirrored))
    assert [rod.laps[0].lap_mm for rod in here.rods] == [rod.laps[0].lap_mm for rod in reversed(there.rods)]
    assert [leak.lap.course for leak in here.leaks] == [leak.lap.course for leak in there.leaks]
    assert (here.strip_back is None) == (there.strip_back is None)
    if here.strip_back is not None and there.strip_back is not None:
        assert here.strip_back.keep_count == there.strip_back.keep_count


def test_a_batten_slipped_down_at_one_place_only_is_found_there() -> None:
    left = battens(330.0, 650.0, 970.0, 1290.0)
    right = battens(330.0, 640.0, 970.0, 1290.0, at_mm=5000.0)
    check = check_roof(roof(left, right))
    assert [(5000.0, 3)] == [(leak.lap.at_mm, leak.lap.course) for leak in check.leaks]
