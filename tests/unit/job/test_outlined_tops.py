"""Slopes by outline whose top is not one level ridge: raking ridges get a rod at each end, lower ones are told."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.result import SlopeResult
from gaugerod.job.set_out import set_out

JOB = """
[job]
title = "Byre, end slope"
exposure = "moderate"

[covering]
from = "flat-interlocking-420x330"

[[slope]]
name = "byre"
pitch = "35°"
outline = {outline}
edges = {edges}

[set_out]
ridge_cover = "125 mm"
"""


def byre(corners: list[tuple[int, int]], edges: list[str]) -> SlopeResult:
    outline = [[f"{x} mm", f"{y} mm"] for x, y in corners]
    (slope,) = set_out(read_job_text(JOB.format(outline=outline, edges=edges).encode())).slopes
    return slope


def test_a_ridge_out_of_level_gets_a_rod_at_each_end_and_every_gauge_keeps_its_limit() -> None:
    slope = byre([(0, 0), (6000, 0), (6000, 4030), (0, 4130)], ["eaves", "verge", "ridge", "verge"])
    assert [(rod.at_mm, rod.length_mm) for rod in slope.courses.rods] == [(0.0, 4130.0), (6000.0, 4030.0)]
    for rod in slope.courses.rods:
        gaps = [upper - lower for lower, upper in zip(rod.marks_mm, rod.marks_mm[1:], strict=False)]
        assert max(gaps) <= slope.courses.gauge_max_mm
        assert rod.length_mm > rod.marks_mm[-1]
    assert not [finding for finding in slope.findings if finding.rule.startswith("lower")]


def test_the_ends_of_a_raking_ridge_between_hips_are_measured_on_its_own_line() -> None:
    slope = byre([(0, 0), (8000, 0), (6000, 4000), (2000, 4040)], ["eaves", "hip", "ridge", "hip"])
    assert [(rod.at_mm, rod.length_mm) for rod in slope.courses.rods] == [(0.0, 4060.0), (8000.0, 3980.0)]


def test_a_level_ridge_keeps_one_rod() -> None:
    slope = byre([(0, 0), (6000, 0), (6000, 4100), (0, 4100)], ["eaves", "verge", "ridge", "verge"])
    assert [rod.length_mm for rod in slope.courses.rods] == [4100.0]


def test_a_lower_ridge_is_told_with_the_head_that_stands_below_it() -> None:
    corners = [(0, 0), (9000, 0), (9000, 3000), (5000, 3000), (5000, 4100), (0, 4100)]
    slope = byre(corners, ["eaves", "verge", "ridge", "verge", "ridge", "verge"])
    (told,) = [finding for finding in slope.findings if finding.rule == "lower ridge"]
    below = [mark for mark in slope.courses.rods[0].marks_mm if mark <= 3000]
    assert told.proposed == pytest.approx(3000 - below[-1])
    assert f"Course {len(below)} " in told.says


def test_the_lower_ridge_of_the_wing_in_the_example_is_told() -> None:
    text = files("gaugerod.adapters.job_file").joinpath("examples", "hipped-house.toml").read_bytes()
    told = [finding for finding in set_out(read_job_text(text)).findings if finding.rule == "lower ridge"]
    # The wing is 6.800 m wide and the house 7.200 m, both with 300 mm overhang at 35 degrees.
    assert [finding.where for finding in told] == ["house 5"]
    assert "4517 mm up" in told[0].says
