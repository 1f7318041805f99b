"""What the take-off is measured from, made of a job that was set out."""

from dataclasses import replace

import pytest

from gaugerod.adapters.job_file.read import read_job_document
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.setting_out.diminishing.stack import sound_run_mm
from gaugerod.take_off.ask import LaidSlope
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import ask_of, result_of, slope, taken


def only_slope(result: Result) -> LaidSlope:
    (found,) = ask_of(result).slopes
    return found


def test_the_area_is_that_of_the_covering_out_to_its_overhangs_without_its_openings() -> None:
    result = result_of("flat-interlocking-420x330", slope("s", across_mm=6000, rafter_mm=4500))
    found, (set_out_slope,) = only_slope(result), result.slopes
    across, courses = set_out_slope.across, set_out_slope.courses
    assert across is not None
    wide_mm = 6000 + across.left_overhang_mm + across.right_overhang_mm
    assert wide_mm * (4500 + courses.overhang_mm) == pytest.approx(found.area_mm2)
    light = {"name": "light", "from_left": 2000, "up_slope": 1500, "width": 780, "height": 980}
    holed = only_slope(
        result_of("flat-interlocking-420x330", slope("s", across_mm=6000, rafter_mm=4500, opening=[light]))
    )
    assert 780 * 980 == pytest.approx(found.area_mm2 - holed.area_mm2)


def test_a_slope_with_no_width_known_is_named_and_not_counted() -> None:
    result = example("demo")
    bare = replace(result, slopes=tuple(replace(each, laid=None) for each in result.slopes))
    asked = ask_of(bare)
    assert ((), tuple(each.slope.name for each in result.slopes)) == (asked.slopes, asked.not_laid)


def test_a_slope_not_set_out_is_named() -> None:
    good, tiny = slope("good", across_mm=5000, rafter_mm=4000), slope("tiny", across_mm=5000, rafter_mm=150)
    result = result_of("flat-interlocking-420x330", good, tiny)
    assert ["tiny"] == [each.slope.name for each in result.not_set_out]
    asked = ask_of(result)
    assert (("tiny",), ["good"]) == (asked.not_set_out, [each.name for each in asked.slopes])


def test_plain_tiles_have_eaves_tiles_under_the_eaves_and_at_the_top() -> None:
    found = only_slope(result_of("clay-plain-265x165", slope("s", across_mm=5000, rafter_mm=3000)))
    assert ["under the eaves", "short course at the top"] == [each.name for each in found.extra]
    assert {"eaves-tile"} == {each.item for each in found.extra}
    assert found.cover_mm is not None
    for each in found.extra:
        # Enough for the whole width, whichever way the bond begins.
        assert each.units_count * found.cover_mm >= 5000


def test_slates_of_those_courses_are_cut_from_whole_ones() -> None:
    found = only_slope(result_of("slate-500x250", slope("s", across_mm=5000, rafter_mm=3000)))
    assert {"slate"} == {each.item for each in found.extra}
    assert all(each.length_mm <= 500 for each in found.extra)


def test_single_lap_tiles_have_no_such_courses() -> None:
    assert () == only_slope(result_of("flat-interlocking-420x330", slope("s", across_mm=5000, rafter_mm=3000))).extra


@pytest.mark.parametrize("ridge_cover", [240, 260, 280])
def test_a_short_course_that_runs_out_on_its_way_is_ordered_for_the_whole_width(ridge_cover: int) -> None:
    """The slope is out of parallel: at one end the ridge laps without the short course, at the other it does not."""
    taped = {
        **slope("s", across_mm=5000, rafter_mm=3000),
        "rafters": [3000, 3000 + {240: 1200, 260: 700, 280: 400}[ridge_cover]],
    }
    document = {
        "job": {"title": "Byre", "exposure": "moderate"},
        "covering": {"from": "clay-plain-265x165"},
        "slope": [taped],
        "set_out": {"ridge_cover": ridge_cover},
    }
    result = set_out(read_job_document(document))
    extras = result.slopes[0].double_lap
    assert extras is not None
    assert {True, False} == {rod.short is None for rod in extras.rods}
    under, top = only_slope(result).extra
    assert ("short course at the top", under.units_count) == (top.name, top.units_count)


def test_random_slates_are_told_by_the_run_of_every_course() -> None:
    result = example("random-slates")
    found = only_slope(result)
    assert found.diminishing is not None
    assert found.diminishing.courses_count == len(found.course_runs_mm)
    (taped,) = result.slopes
    assert all(run_mm >= taped.slope.taped.eaves_mm for run_mm in found.course_runs_mm)
    heaps = {heap.length_mm: heap for heap in found.diminishing.heaps}
    for group in found.diminishing.groups:
        assert group.length_mm in heaps


def test_random_slates_are_ordered_as_the_plan_takes_them_from_the_stack() -> None:
    """The plan reckons with the widest verge overhang allowed, the order with the one set out: a little less."""
    result = example("random-slates")
    slates = result.job.covering
    assert isinstance(slates, RandomSlates)
    plan = only_slope(result).diminishing
    assert plan is not None
    for heap in plan.heaps:
        stack = next(each for each in slates.heaps if each.length_mm == heap.length_mm)
        taken_m = (sound_run_mm(stack, slates=slates) - heap.left_run_mm) / 1000
        line = taken(result).line(f"random-slates-{heap.length_mm:g}")
        ordered_m = 0.0 if line is None else line.order
        assert 0.99 * taken_m <= ordered_m <= taken_m
