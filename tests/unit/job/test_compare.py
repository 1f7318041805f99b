"""Two results compared by their marks."""

from dataclasses import replace
from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.compare import MovedMark, moved_marks
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

DEMO = files("gaugerod.adapters.job_file").joinpath("examples", "demo.toml").read_text(encoding="utf-8")


def demo(*changes: tuple[str, str]) -> Result:
    text = DEMO
    for was, now in changes:
        assert was in text
        text = text.replace(was, now)
    return set_out(read_job_text(text.encode()))


@pytest.fixture(scope="module")
def before() -> Result:
    return demo()


def with_marks(result: Result, *rods: tuple[float, ...]) -> Result:
    """The result with the marks of its rods written by hand."""
    (slope,) = result.slopes
    by_hand = tuple(
        replace(slope.courses.rods[0], at_mm=1000.0 * place, marks_mm=marks_mm) for place, marks_mm in enumerate(rods)
    )
    return replace(result, slopes=(replace(slope, courses=replace(slope.courses, rods=by_hand)),))


def test_the_same_job_moves_nothing(before: Result) -> None:
    assert moved_marks(before, demo()).nothing_moved


def test_only_the_marks_that_moved_are_told_with_how_far(before: Result) -> None:
    one = with_marks(before, (350.0, 670.0, 990.0), (350.0, 671.0, 992.0))
    other = with_marks(before, (350.0, 670.0, 990.0), (350.0, 668.0, 993.0))
    (slope,) = moved_marks(one, other).slopes
    (line,) = slope.lines
    assert ("rear", "rod", 1000.0) == (slope.name, line.line, line.at_mm)
    assert (
        MovedMark(number_count=2, was_mm=671.0, is_mm=668.0),
        MovedMark(number_count=3, was_mm=992.0, is_mm=993.0),
    ) == line.marks
    assert [-3.0, 1.0] == [mark.moved_mm for mark in line.marks]
    assert 3.0 == line.furthest_mm


def test_one_batten_more_is_a_new_mark_at_the_top(before: Result) -> None:
    one, other = with_marks(before, (350.0, 670.0)), with_marks(before, (350.0, 670.0, 990.0))
    (line,) = moved_marks(one, other).slopes[0].lines
    assert (MovedMark(number_count=3, was_mm=None, is_mm=990.0),) == line.marks
    assert (None, 0.0) == (line.marks[0].moved_mm, line.furthest_mm)
    (line,) = moved_marks(other, one).slopes[0].lines
    assert (MovedMark(number_count=3, was_mm=990.0, is_mm=None),) == line.marks


def test_rods_are_met_by_their_place_when_there_is_one_more(before: Result) -> None:
    one, other = with_marks(before, (350.0,)), with_marks(before, (350.0,), (351.0,))
    (line,) = moved_marks(one, other).slopes[0].lines
    assert (1000.0, (MovedMark(number_count=1, was_mm=None, is_mm=351.0),)) == (line.at_mm, line.marks)


def test_a_longer_rafter_moves_its_rod_and_not_the_perps_at_the_eaves(before: Result) -> None:
    after = demo(("4.918 m", "4.930 m"))
    (slope,) = moved_marks(before, after).slopes
    assert "eaves" not in {line.line for line in slope.lines}
    right = [line for line in slope.lines if line.line == "rod"][-1]
    was, now = (result.slopes[0].courses.rods[-1].marks_mm for result in (before, after))
    assert [now[mark.number_count - 1] - was[mark.number_count - 1] for mark in right.marks] == [
        mark.moved_mm for mark in right.marks
    ]


def test_a_wider_roof_moves_perps(before: Result) -> None:
    (slope,) = moved_marks(before, demo(("7.460 m", "7.470 m"))).slopes
    assert [None] == [line.at_mm for line in slope.lines if line.line == "eaves"]


def test_a_slope_under_another_name_is_gone_and_new(before: Result) -> None:
    moved = moved_marks(before, demo(('name = "rear"', 'name = "back"')))
    assert ((), ("rear",), ("back",)) == (moved.slopes, moved.gone, moved.new)
    assert not moved.nothing_moved
