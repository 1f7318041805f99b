"""Wings whose depths differ by next to nothing: a ridge of a fraction of a millimetre is no side to lay along."""

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.edges.ask import LineKind
from gaugerod.job.edge_lines import edge_lines
from gaugerod.job.set_out import set_out

HOUSE = """
[job]
title = "Two wings"
exposure = "moderate"
[covering]
from = "clay-plain-265x165"
[[building]]
name = "house"
outline = [[0, 0], [9000, 0], [9000, {deep}], [4000, {deep}], [4000, 8000], [0, 8000]]
pitch = ["40°", "40°", "40°", "40°", "40°", "40°"]
"""


@pytest.mark.parametrize("deep_mm", [3990.0, 3998.0, 3999.0, 3999.5, 4000.0, 4000.4, 4001.0, 4002.0, 4010.0])
def test_they_are_set_out_like_any_other(deep_mm: float) -> None:
    result = set_out(read_job_text(HOUSE.format(deep=deep_mm).encode()))
    assert () == result.not_set_out
    assert 6 == len(result.slopes)
    lines = edge_lines(result.slopes, result.roofs, ())[0]
    assert all(line.of_two for line in lines if line.kind in {LineKind.HIP, LineKind.VALLEY})
    (valley,) = [line for line in lines if line.kind is LineKind.VALLEY]
    (roof,) = result.roofs
    assert pytest.approx(roof.form.valleys[0].length_mm, abs=2.0) == valley.length_mm
