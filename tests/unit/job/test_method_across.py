"""The steps across say which edge of a unit a perp mark is, and it is that edge on the slope as laid."""

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out

JOB = """
[job]
title = "Rear"
exposure = "moderate"

[covering]
from = "{covering}"

[[slope]]
name = "rear"
pitch = "40°"
across = "7.460 m"
rafters = ["4.905 m"]
left = "verge"
right = "verge"
top = "ridge"

[set_out]
ridge_cover = "125 mm"
"""


@pytest.mark.parametrize(
    ("covering", "which"),
    [
        ("flat-interlocking-420x330", "the left edge of a unit of courses 1, 3, 5 …, lap and all"),
        ("clay-plain-265x165", "the left edge of a unit of courses 1, 3, 5 …, lap and all"),
        ("profiled-two-roll-420x330", "the left edge of a unit, lap and all"),
    ],
)
def test_a_perp_mark_is_the_left_edge_of_a_unit_as_laid(covering: str, which: str) -> None:
    slope = set_out(read_job_text(JOB.format(covering=covering).encode())).slopes[0]
    assert any(which in step for step in slope.method)
    assert slope.across is not None
    assert slope.laid is not None
    perps = slope.laid.ask.courses[0].perps
    line = slope.across.perp_lines[0]
    for mark_mm in line.exact_mm[:-1]:
        units_over = (mark_mm - perps.first_mm) / perps.cover_mm
        assert round(units_over) == pytest.approx(units_over, abs=1e-6)
    ends_at_mm = max(x for x, _ in slope.laid.ask.outline.points_mm)
    assert ends_at_mm == pytest.approx(line.exact_mm[-1])
