"""Hips of slopes measured one by one, said to be shared: the right-hand hip of one is the left-hand hip of the next."""

from functools import cache

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.edges.ask import LineKind
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from tests.scenario.taken_off_jobs import result_of, slope

HIPPED = """
[job]
title = "Lodge"
exposure = "moderate"
[covering]
from = "flat-interlocking-420x330"
[set_out]
ridge_cover = "150 mm"
[[slope]]
name = "main"
pitch = "45°"
outline = [["0 m", "0 m"], ["8 m", "0 m"], ["5 m", "4.243 m"], ["3 m", "4.243 m"]]
edges = ["eaves", "hip", "ridge", "hip"]
[[slope]]
name = "end"
pitch = "45°"
outline = [["0 m", "0 m"], ["6 m", "0 m"], ["3 m", "4.243 m"]]
edges = ["eaves", "hip", "hip"]
[edges.ridge]
made = "dry"
hip_unit = { length = "450 mm" }
[[edges.shared]]
slopes = ["main", "end"]
edge = "hip"
"""


@cache
def lodge() -> Result:
    return set_out(read_job_text(HIPPED.encode()))


def test_a_right_hand_hip_meets_a_left_hand_one() -> None:
    """All four are as long as each other; of those left over, one is of each hand."""
    edges = lodge().edges
    assert edges is not None
    alone = [edge.line for edge in edges.edges if edge.line is not None and edge.line.kind is LineKind.HIP]
    (both,) = [line for line in alone if line.of_two]
    assert {"main", "end"} == set(both.slopes)
    assert ["main, left hip", "end, right hip"] == [line.name for line in alone if not line.of_two]


def test_lines_that_may_be_one_are_told_with_the_edges_and_so_with_the_take_off() -> None:
    """Two ridges of 6 m that are not said to be shared: 14 units each, where one ridge takes 14."""
    two = (slope("front", across_mm=6000, rafter_mm=4000), slope("rear", across_mm=6000, rafter_mm=4000))
    made = {"ridge": {"made": "dry", "unit": {"length": 450}}}
    result = result_of("flat-interlocking-420x330", *two, edges=made)
    assert result.edges is not None
    (found,) = [each for each in result.edges.findings if each.rule == "shared line"]
    assert "front, ridge; rear, ridge" == found.where
    assert 1 == result.findings.count(found)
