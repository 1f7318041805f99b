"""One stack on two slopes: no slate is promised twice."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out

EXAMPLE = files("gaugerod.adapters.job_file").joinpath("examples", "random-slates.toml").read_text(encoding="utf-8")


def two_slopes(*, east_rafter: str = "4.600 m", more_slates: bool = True) -> Result:
    west = EXAMPLE.split("[[slope]]")[1].split("[set_out]")[0]
    east = west.replace('"west"', '"east"').replace("4.600 m", east_rafter)
    text = EXAMPLE.replace("[set_out]", f"[[slope]]{east}[set_out]")
    if more_slates:
        for slates in ("260", "320", "360"):
            text = text.replace(f"slates = {slates}", f"slates = {2 * int(slates)}")
        text = text.replace("60 m", "120 m")
    return set_out(read_job_text(text.encode()))


def test_twice_the_stack_on_twice_the_roof_is_the_same_plan() -> None:
    (alone,) = set_out(read_job_text(EXAMPLE.encode())).slopes
    west, east = two_slopes().slopes
    assert west.diminishing is not None
    assert east.diminishing is not None
    assert alone.diminishing is not None
    assert west.diminishing.groups == east.diminishing.groups == alone.diminishing.groups
    assert west.diminishing.heaps == alone.diminishing.heaps


@pytest.mark.parametrize("east_rafter", ["4.600 m", "3.200 m", "6.000 m"])
def test_the_shares_never_sum_to_more_than_the_stack(east_rafter: str) -> None:
    found = two_slopes(east_rafter=east_rafter)
    stack = found.job.covering
    assert isinstance(stack, RandomSlates)
    for number, heap in enumerate(stack.heaps):
        there_mm = heap.run_mm
        if there_mm is None:
            assert heap.slates_count is not None
            assert heap.average_width_mm is not None
            there_mm = heap.slates_count * (heap.average_width_mm + stack.joint_mm)
        used_mm = 0.0
        for slope in found.slopes:
            assert slope.diminishing is not None
            use = slope.diminishing.heaps[number]
            width_mm = slope.slope.taped.eaves_mm
            used_mm += use.courses_laid_count * width_mm + use.under_eaves_run_mm
        assert used_mm <= there_mm


def test_the_sharing_is_told_and_a_lone_slope_has_none() -> None:
    (told,) = [finding for finding in two_slopes().findings if finding.rule == "stack shared"]
    assert "west 50.0%, east 50.0%" in told.says
    alone = set_out(read_job_text(EXAMPLE.encode()))
    assert not [finding for finding in alone.findings if finding.rule == "stack shared"]


def test_one_roofs_stack_on_two_slopes_is_short_and_says_so() -> None:
    found = two_slopes(more_slates=False)
    assert [short.slope.name for short in found.not_set_out] == ["west", "east"]
    assert found.anything_outside
