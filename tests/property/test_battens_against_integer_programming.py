"""The repeating pattern of battens against mixed-integer programming: another solver, with its own list of ways and cuts."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugerod.laying.ask import EdgeKind
from gaugerod.substrate.battens.any_pattern import any_pattern
from gaugerod.substrate.battens.lines import End, Span
from gaugerod.substrate.battens.repeating import EXTRA_PIECES_COUNT, best_repeating
from gaugerod.substrate.battens.ways import PieceRules, Ways, fewest_pieces_count, ways_of
from tests.scenario.batten_programme import Course, programme, solved

USUAL = (3600, 4200, 4800, 5100)


def ways_on(course: Course) -> Ways:
    span = Span(End(course.left_mm, EdgeKind.VERGE, "verge"), End(course.right_mm, EdgeKind.VERGE, "verge"), 1.0)
    rules = PieceRules(
        least_mm=course.least_mm, greatest_mm=max(course.stock_mm), supports_count=3, same_support_mm=50.0
    )
    return ways_of(span, course.rafters_mm, rules)


def even(bays: int, *, kerf_mm: float, past_mm: float = 0.0, stock_mm: tuple[int, ...] = USUAL) -> Course:
    rafters = tuple(600.0 * at for at in range(bays + 1))
    return Course(-past_mm, 600.0 * bays + past_mm, rafters, 1200, stock_mm, kerf_mm)


@pytest.mark.parametrize(
    ("extra", "lengths"), [(0, 75), (1, 72)], ids=["three pieces to a course", "four pieces to a course"]
)
def test_thirty_courses_of_nineteen_bays_buy_what_the_solver_buys(
    extra: int, lengths: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """11.4 m, 30 courses, no kerf: 342.0 m in 75 lengths with three pieces to a course, 72 with four."""
    monkeypatch.setattr("gaugerod.substrate.battens.repeating.EXTRA_PIECES_COUNT", extra)
    course = even(19, kerf_mm=0.0)
    best = best_repeating(ways_on(course), courses_count=30, repeat_count=4, stock_mm=USUAL, kerf_mm=0.0)
    assert best is not None
    assert (342_000, lengths) == (sum(cut.stock_mm for cut in best.cuts), len(best.cuts))
    assert best.proved
    if extra == 0:
        model = programme(course, courses_count=30, repeat_count=4, most_pieces=3)
        assert (342_000, lengths) == solved(model)


@st.composite
def courses(draw: st.DrawFn) -> Course:
    stock = draw(st.lists(st.sampled_from([2400, 2700, 3000, 3600, 3900, 4200, 4800, 5100]), min_size=1, max_size=4))
    kerf = draw(st.sampled_from([0.0, 3.0, 5.0]))
    if draw(st.booleans()):
        past = draw(st.sampled_from([0.0, 60.0, 110.0, 215.0]))
        bays, spacing = draw(st.integers(3, 11)), draw(st.sampled_from([400.0, 450.0, 600.0]))
        rafters = tuple(spacing * at for at in range(bays + 1))
        return Course(-past, rafters[-1] + past, rafters, 1200, tuple(sorted(set(stock))), kerf)
    gaps = draw(st.lists(st.sampled_from([570.0, 600.0, 630.0]), min_size=3, max_size=8))
    rafters = tuple(sum(gaps[:at]) for at in range(len(gaps) + 1))
    return Course(-80.0, rafters[-1] + 80.0, rafters, 1200, tuple(sorted(set(stock))), kerf)


def compared(course: Course, courses_count: int) -> None:
    ways = ways_on(course)
    fewest = fewest_pieces_count(ways)
    best = best_repeating(
        ways, courses_count=courses_count, repeat_count=4, stock_mm=course.stock_mm, kerf_mm=course.kerf_mm
    )
    if fewest is None:
        assert best is None
        return
    model = programme(course, courses_count=courses_count, repeat_count=4, most_pieces=fewest + EXTRA_PIECES_COUNT)
    optimum = solved(model)
    if best is None:
        assert optimum is None
        return
    found = (sum(cut.stock_mm for cut in best.cuts), len(best.cuts))
    assert any_pattern(ways, repeat_count=min(4, courses_count)) is not None
    if best.proved:
        assert optimum == found
    else:
        assert optimum is not None
        assert optimum <= found


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(courses(), st.integers(1, 13))
def test_no_repeating_pattern_buys_less(course: Course, courses_count: int) -> None:
    compared(course, courses_count)


@pytest.mark.slow
@settings(max_examples=1500, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(courses(), st.integers(1, 16))
def test_no_repeating_pattern_buys_less_on_many_more(course: Course, courses_count: int) -> None:
    compared(course, courses_count)


@settings(max_examples=60, deadline=None)
@given(st.integers(3, 24), st.sampled_from([(2400,), (2700,), (3000,), (3600,), (4200, 4800)]), st.integers(1, 9))
def test_there_is_a_pattern_just_when_the_solver_finds_one(
    bays: int, stock_mm: tuple[int, ...], courses_count: int
) -> None:
    """Any number of pieces: as many as there are bays."""
    course = even(min(bays, 9), kerf_mm=0.0, stock_mm=stock_mm)
    pattern = any_pattern(ways_on(course), repeat_count=min(4, courses_count))
    model = programme(course, courses_count=courses_count, repeat_count=4, most_pieces=min(bays, 9))
    assert (solved(model) is None) == (pattern is None)
