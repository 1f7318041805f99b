"""A verge or a wall above a hip or valley gets its overhang or its gap as any other does."""

from importlib.resources import files

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.job.set_out import set_out

JOB = """
[job]
title = "Front"
exposure = "moderate"

[covering]
from = "concrete-plain-265x165"

[[slope]]
name = "front"
pitch = "40°"
outline = [["0 m","0 m"], ["7 m","0 m"], ["5 m","2.5 m"], ["5 m","4.2 m"], ["1.5 m","4.2 m"]]
edges = ["eaves", "hip", "{upper}", "ridge", "valley"]

[set_out]
ridge_cover = "125 mm"
"""


@pytest.mark.parametrize(("upper", "ends_at_mm"), [("verge", 5044.0), ("abutment", 4990.0)])
def test_the_covering_ends_in_the_middle_of_the_band_past_an_upper_edge(upper: str, ends_at_mm: float) -> None:
    """Middle of 38 to 50 mm past a verge; of 5 to 15 mm clear of a wall."""
    slope = set_out(read_job_text(JOB.format(upper=upper).encode())).slopes[0]
    assert slope.laid is not None
    top_mm = max(y for _, y in slope.laid.ask.outline.points_mm)
    at_top = [x for x, y in slope.laid.ask.outline.points_mm if y == top_mm]
    assert ends_at_mm == pytest.approx(max(at_top))


def test_random_slates_reach_past_their_verges_too() -> None:
    text = files("gaugerod.adapters.job_file").joinpath("examples", "random-slates.toml").read_bytes()
    slope = set_out(read_job_text(text)).slopes[0]
    assert slope.laid is not None
    ends = [x for x, _ in slope.laid.ask.outline.points_mm]
    assert (-44.0, 7244.0) == pytest.approx((min(ends), max(ends)))
