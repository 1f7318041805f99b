"""Thousands of random slopes: no lap short, ever; marks end where they should; a mirrored slope mirrors."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Verdict
from gaugerod.basis.rounding import Division
from gaugerod.setting_out.courses import Courses, CoursesAsk, Strategy
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod, Station

EXAMPLE = house("random case")
NOISE_MM = 1e-6


@st.composite
def slopes(draw: st.DrawFn, *, stations: int | None = None) -> CoursesAsk:
    length = draw(st.integers(250, 500))
    greatest = draw(st.integers(60, length - 60))
    tenths = draw(st.sampled_from([0.0, 0.3, 0.7]))
    least = draw(st.none() | st.integers(max(greatest - 120, 20), greatest))
    rafter = draw(st.integers(900, 9000))
    count = stations or draw(st.integers(1, 4))
    across = draw(st.integers(1000, 12000))
    taper = draw(st.sampled_from([0, 0, 5, 30, 120]))
    overhang, top = draw(st.integers(30, 60)), draw(st.integers(15, 60))
    return CoursesAsk(
        where="random",
        stations=tuple(
            Station(
                at_mm=across * index / max(count - 1, 1),
                length_mm=rafter + taper * draw(st.floats(-1, 1).map(lambda share: round(share, 2))),
            )
            for index in range(count)
        ),
        unit_length_mm=float(length),
        hanging_length_mm=float(length - draw(st.integers(5, 30))),
        gauge_min_mm=None if least is None else float(least),
        gauge_max_mm=greatest + tenths,
        gauge_citation=EXAMPLE,
        overhang=Band(overhang, overhang + draw(st.integers(0, 15)), EXAMPLE),
        top=Band(top, top + draw(st.integers(0, 30)), EXAMPLE),
        division=draw(st.sampled_from(list(Division))),
    )


def set_out(ask: CoursesAsk) -> Courses:
    try:
        return set_out_courses(ask)
    except NothingToSetOut:
        assume(condition=False)
        raise


FAST = settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])
SLOW = settings(max_examples=5000, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])


def check_no_lap_is_short(ask: CoursesAsk) -> None:
    courses = set_out(ask)
    for rod in courses.rods:
        assert list(rod.marks_mm) == sorted(rod.marks_mm)
        assert all(gap <= ask.gauge_max_mm + NOISE_MM for gap in rod.gaps_mm)
        assert rod.gauge_mm <= ask.gauge_max_mm + NOISE_MM
    assert courses.headlap_mm >= ask.unit_length_mm - ask.gauge_max_mm - NOISE_MM


def check_what_is_broken_is_said(ask: CoursesAsk) -> None:
    courses = set_out(ask)
    last = -1 if courses.strategy is Strategy.PARALLEL else None
    gaps = [gap for rod in courses.rods for gap in rod.gaps_mm[:last]]
    said = {finding.rule for finding in courses.findings if finding.verdict is Verdict.OUTSIDE}
    broken = ask.gauge_min_mm is not None and min(gaps, default=ask.gauge_min_mm) < ask.gauge_min_mm - NOISE_MM
    assert broken == ("least gauge" in said)
    assert broken == (courses.strategy is Strategy.NONE)
    assert not broken or courses.alternatives


def check_marks_are_near_exact_and_end_at_the_top(ask: CoursesAsk) -> None:
    courses = set_out(ask)
    half = float(ask.division.step_mm) / 2
    for rod in courses.rods:
        assert all(
            -half - NOISE_MM <= mark - exact <= half + NOISE_MM
            for mark, exact in zip(rod.marks_mm, rod.exact_mm, strict=True)
        )
        assert rod.length_mm - rod.exact_mm[-1] >= min(ask.top.least_mm, ask.top.aim_mm) - float(ask.division.step_mm)
        assert rod.overhang_mm == pytest.approx(ask.hanging_length_mm - rod.marks_mm[0])
        assert rod.below_apex_mm == pytest.approx(rod.length_mm - rod.marks_mm[-1])
    assert len({len(rod.marks_mm) for rod in courses.rods}) == 1


def check_a_mirrored_slope_mirrors(ask: CoursesAsk) -> None:
    width = ask.stations[-1].at_mm
    mirrored = CoursesAsk(
        **{
            **{name: getattr(ask, name) for name in CoursesAsk.__slots__},
            "stations": tuple(
                Station(at_mm=width - each.at_mm, length_mm=each.length_mm) for each in reversed(ask.stations)
            ),
        }
    )
    here, there = set_out(ask), set_out(mirrored)
    assert here.strategy == there.strategy
    assert [rod.marks_mm for rod in here.rods] == [rod.marks_mm for rod in reversed(there.rods)]


def check_a_station_between_two_changes_nothing(ask: CoursesAsk) -> None:
    first, last = ask.stations[0], ask.stations[-1]
    middle = Station(at_mm=(first.at_mm + last.at_mm) / 2, length_mm=(first.length_mm + last.length_mm) / 2)
    finer = CoursesAsk(
        **{**{name: getattr(ask, name) for name in CoursesAsk.__slots__}, "stations": (first, middle, last)}
    )
    coarse, fine = set_out(ask), set_out(finer)
    assume(coarse.strategy is not Strategy.NONE)
    assert coarse.strategy == fine.strategy
    assert coarse.rods[0].gauge_mm == pytest.approx(fine.rods[0].gauge_mm, abs=0.6)
    assert fine.rods[1].gauge_mm == pytest.approx((fine.rods[0].gauge_mm + fine.rods[2].gauge_mm) / 2, abs=1e-6)


def check_gauges_are_the_fewest(ask: CoursesAsk) -> None:
    """Against exact fractions by counting up: the least N for which the longest rod keeps the greatest gauge that can be marked."""
    courses = set_out(ask)
    assume(courses.strategy in {Strategy.EQUAL, Strategy.FANNED})
    spans = [Fraction(rod.exact_mm[-1]) - Fraction(rod.exact_mm[0]) for rod in courses.rods]
    step = ask.division.step_mm
    greatest = (Fraction(ask.gauge_max_mm) + Fraction(1, 10**6)) // step * step
    count = 1
    while max(spans) / count > greatest + Fraction(1, 10**6):
        count += 1
    assert count == courses.count - 1


@pytest.mark.parametrize(
    "check", [check_no_lap_is_short, check_what_is_broken_is_said, check_marks_are_near_exact_and_end_at_the_top,
              check_a_mirrored_slope_mirrors, check_gauges_are_the_fewest],
)  # fmt: skip
class TestRandomSlopes:
    @FAST
    @given(ask=slopes())
    def test_some(self, check, ask: CoursesAsk) -> None:  # type: ignore[no-untyped-def] # noqa: ANN001 - one of the checks above
        check(ask)

    @pytest.mark.slow
    @SLOW
    @given(ask=slopes())
    def test_thousands(self, check, ask: CoursesAsk) -> None:  # type: ignore[no-untyped-def] # noqa: ANN001
        check(ask)


@st.composite
def part_nailed(draw: st.DrawFn) -> CoursesAsk:
    """A slope with its first few battens nailed at one or both ends, not quite to gauge and not quite straight."""
    ask = draw(slopes(stations=2))
    battens = draw(st.integers(1, 4))
    step_mm = ask.gauge_max_mm
    first_mm = ask.hanging_length_mm - ask.overhang.aim_mm

    def rod(at_mm: float) -> NailedRod:
        slips = draw(st.lists(st.integers(-40, 40), min_size=battens, max_size=battens))
        marks = tuple(first_mm + step_mm * batten + slip / 10 for batten, slip in enumerate(slips))
        return NailedRod(at_mm=at_mm, marks_mm=marks)

    ends = draw(st.sampled_from([(0,), (1,), (0, 1)]))
    nailed = tuple(rod(ask.stations[end].at_mm) for end in ends)
    assume(nailed[0].marks_mm[-1] + 20 < min(station.length_mm for station in ask.stations))
    return replace(ask, nailed=nailed)


def check_nailed_battens_stay_and_no_new_lap_is_short(ask: CoursesAsk) -> None:
    courses = set_out(ask)
    by_place = {rod.at_mm: rod for rod in courses.rods}
    for nailed in ask.nailed:
        rod = by_place[nailed.at_mm]
        assert nailed.marks_mm == pytest.approx(rod.marks_mm[: rod.kept_count], abs=NOISE_MM)
    for rod in courses.rods:
        new_gaps = rod.gaps_mm[rod.kept_count - 1 :]
        assert all(0 < gap <= ask.gauge_max_mm + NOISE_MM for gap in new_gaps)
        step = float(ask.division.step_mm)
        assert all(mark / step == pytest.approx(round(mark / step)) for mark in rod.marks_mm[rod.kept_count :])
    short = [gap for rod in courses.rods for gap in rod.gaps_mm if gap > ask.gauge_max_mm + NOISE_MM]
    assert bool(short) == any(each.rule == "headlap" for each in courses.findings)
    assert courses.headlap_mm == pytest.approx(
        ask.unit_length_mm - max(max((*rod.gaps_mm, rod.gauge_mm)) for rod in courses.rods), abs=1.0
    )


@FAST
@given(ask=part_nailed())
def test_nailed_battens_stay_and_no_new_lap_is_short(ask: CoursesAsk) -> None:
    check_nailed_battens_stay_and_no_new_lap_is_short(ask)


@pytest.mark.slow
@SLOW
@given(ask=part_nailed())
def test_thousands_of_nailed_battens_stay_and_no_new_lap_is_short(ask: CoursesAsk) -> None:
    check_nailed_battens_stay_and_no_new_lap_is_short(ask)


@FAST
@given(ask=slopes(), times=st.integers(2, 5))
def test_a_roof_k_times_as_large_has_as_many_gauges_k_times_as_large(ask: CoursesAsk, times: int) -> None:
    whole = replace(ask, gauge_max_mm=round(ask.gauge_max_mm), division=Division.MILLIMETRE)
    wide = [replace(band, least_mm=band.least_mm * times, greatest_mm=band.greatest_mm * times, citation=EXAMPLE)
            for band in (whole.overhang, whole.top)]  # fmt: skip
    larger = replace(
        whole,
        stations=tuple(Station(at_mm=each.at_mm * times, length_mm=each.length_mm * times) for each in whole.stations),
        unit_length_mm=whole.unit_length_mm * times,
        hanging_length_mm=whole.hanging_length_mm * times,
        gauge_min_mm=None if whole.gauge_min_mm is None else whole.gauge_min_mm * times,
        gauge_max_mm=whole.gauge_max_mm * times,
        overhang=wide[0],
        top=wide[1],
    )
    here, there = set_out(whole), set_out(larger)
    assume(here.strategy in {Strategy.EQUAL, Strategy.FANNED} and here.strategy == there.strategy)
    assert here.count == there.count
    assert [rod.gauge_mm * times for rod in here.rods] == pytest.approx([rod.gauge_mm for rod in there.rods], abs=times)


@FAST
@given(ask=slopes(stations=2))
def test_a_station_between_two_changes_nothing(ask: CoursesAsk) -> None:
    check_a_station_between_two_changes_nothing(ask)
