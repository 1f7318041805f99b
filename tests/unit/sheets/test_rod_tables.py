"""Rod tables: no gap outside the gauge range stands there without its sign."""

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.set_out import set_out
from gaugerod.sheets.rod_tables import rod_tables
from gaugerod.sheets.sheet import Prose, Table

JOB = """
[job]
title = "Half nailed"
exposure = "moderate"

[covering]
from = "flat-interlocking-420x330"

[[slope]]
name = "rear"
pitch = "35°"
across = "7.460 m"
rafters = ["4.905 m", "4.905 m"]
left = "verge"
right = "verge"
top = "ridge"

[[slope.nailed]]
at = "0 m"
marks = ["350 mm", "690 mm", "1030 mm", "{third} mm"]

[set_out]
ridge_cover = "125 mm"
"""


def gaps(third_mm: int) -> tuple[list[str], str]:
    slope = set_out(read_job_text(JOB.format(third=third_mm).encode())).slopes[0]
    blocks = rod_tables(slope, unit=LengthUnit.MM)
    table = next(block for block in blocks if isinstance(block, Table))
    prose = next(block for block in blocks if isinstance(block, Prose))
    return [row[2] for row in table.rows], prose.text


def test_a_nailed_gap_over_the_greatest_gauge_carries_the_sign_and_the_text_explains_it() -> None:
    found, text = gaps(1376)
    assert "▲ 346" == found[3]
    assert 1 == sum("▲" in gap for gap in found)
    assert "▲ is outside the gauge range" in text


def test_a_nailed_gap_under_the_least_gauge_carries_it_too() -> None:
    assert "▲ 294" == gaps(1324)[0][3]


def test_gaps_at_both_ends_of_the_range_carry_none() -> None:
    for third_mm in (1375, 1325):
        found, text = gaps(third_mm)
        assert not any("▲" in gap for gap in found)
        assert "▲" not in text
