"""Random slating against a published rule and its one worked case.

Source: Stone Roofing Association, random slating: lath gauge (length below the peg − lap)/2, the drop course's gauge
less by half the difference of the lengths; 20 in and 18 in slates at 3 in lap. The gauges are printed; the positions
that follow from them course by course are arithmetic on the printed rule.
"""

from fractions import Fraction

import pytest

from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import Heap, Nailing
from gaugerod.setting_out.diminishing.ask import DiminishingAsk
from gaugerod.setting_out.diminishing.plan import plan_diminishing
from gaugerod.setting_out.section_laid import LaidCourse, LapOver, laps_as_laid
from tests.scenario.random_slates import ask

INCH = 25.4


def two_lengths(*, rafter_in: float) -> DiminishingAsk:
    """20 in and 18 in slates, 3 in lap, marked to a sixteenth: three courses of each can be made."""
    return ask(
        heaps=(
            Heap(length_mm=20 * INCH, run_mm=4 * 7155.0),
            Heap(length_mm=18 * INCH, run_mm=3 * 7155.0),
        ),
        rafters_mm=(rafter_in * INCH,),
        headlap_mm=3 * INCH,
        nailing=Nailing.CENTRE,
        division=Division.SIXTEENTH,
        ridge_cover_mm=8 * INCH,
        broken_ratio=0.0,
        overhang=(2 * INCH, 2 * INCH),
    )


@pytest.mark.parametrize(
    ("length_in", "printed_gauge_in"),
    [(20, Fraction(17, 2)), (18, Fraction(15, 2))],
    ids=["G1: 20 in slates", "G2: 18 in slates"],
)
def test_the_gauge_of_a_length_is_the_printed_one(length_in: int, printed_gauge_in: Fraction) -> None:
    plan = plan_diminishing(two_lengths(rafter_in=8 + 6 * 8 - 2)).plan
    assert plan is not None
    gauges_in = {round(group.length_mm / INCH): group.gauge_mm / INCH for group in plan.groups}
    assert float(printed_gauge_in) == pytest.approx(gauges_in[length_in], abs=1e-9)


def test_the_first_18_in_course_is_gauged_at_the_printed_6_1_2_in() -> None:
    plan = plan_diminishing(two_lengths(rafter_in=8 + 6 * 8 - 2)).plan
    assert plan is not None
    assert plan.groups[1].drop_gauge_mm == pytest.approx(6.5 * INCH, abs=1e-9)


DIMINISHING_CASE = (
    # course, length, head and tail above the first tail, lap over the second below (None: nothing there)
    (1, 20, 20.0, 0.0, None),
    (2, 20, 28.5, 8.5, None),
    (3, 20, 37.0, 17.0, 3.0),
    (4, 18, 43.5, 25.5, 3.0),
    (5, 18, 51.0, 33.0, 4.0),
    (6, 18, 58.5, 40.5, 3.0),
)


def test_three_courses_of_each_length_fall_where_the_rule_puts_them() -> None:
    # Under the ridge edge just as far up as the six gauges reach: 3 × 8 1/2 + 3 × 7 1/2 = 48 in above the first tail.
    plan = plan_diminishing(two_lengths(rafter_in=48 - 2 + 8)).plan
    assert plan is not None
    assert [(20, 3), (18, 3)] == [(round(group.length_mm / INCH), group.courses_count) for group in plan.groups]
    tails_in = [(tail - plan.rods[0].tails_mm[0]) / INCH for tail in plan.rods[0].tails_mm]
    assert [tail for _, _, _, tail, _ in DIMINISHING_CASE] == pytest.approx(tails_in, abs=1e-9)


def test_the_laps_of_the_case_read_off_its_section_are_the_stated_ones() -> None:
    section = [
        LaidCourse(name=str(course), tail_mm=tail, head_mm=head) for course, _, head, tail, _ in DIMINISHING_CASE
    ]
    stated = [lap for *_, lap in DIMINISHING_CASE if lap is not None]
    assert stated == [lap.lap_mm for lap in laps_as_laid(section, lap_over=LapOver.SECOND_BELOW)]


def test_without_the_drop_the_lap_falls_an_inch_short() -> None:
    """The printed warning: the first 18 in course kept at its 7 1/2 in gauge from head to head."""
    section = [
        LaidCourse(name="2", tail_mm=8.5, head_mm=28.5),
        LaidCourse(name="3", tail_mm=17.0, head_mm=37.0),
        LaidCourse(name="4", tail_mm=26.5, head_mm=44.5),
    ]
    assert [2.0] == [lap.lap_mm for lap in laps_as_laid(section, lap_over=LapOver.SECOND_BELOW)]
