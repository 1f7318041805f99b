"""Lengths of the edges as they are counted, against printed rafter tables and a surveyed roof.

Framing square: length of hip rafter for each foot of run of the common rafter, as printed on carpenters' squares: 18.76 in
at 8 in rise, 20.78 at 12; the common rafter 13.42 in at 6 in rise.
Griffith, Carpentry (1916), App. IV: half pitch over a span of 25 ft, hip 259.75 in (from its printed unit).
Basis: read in print.
"""

from typing import NamedTuple

import pytest

from gaugerod.adapters.job_file.read import read_job_text
from gaugerod.edges.ask import EdgeLine, LineKind
from gaugerod.job.edge_lines import edge_lines
from gaugerod.job.set_out import set_out

INCH_MM = 25.4
JOB = """
[job]
title = "Square house"
exposure = "moderate"
[covering]
from = "flat-interlocking-420x330"
[[building]]
name = "house"
outline = [["0 mm", "0 mm"], ["{side} mm", "0 mm"], ["{side} mm", "{side} mm"], ["0 mm", "{side} mm"]]
pitch = {pitch}
overhang = "0 mm"
verge_overhang = "0 mm"
"""


def lines_of(*, run_in: float, pitch: str) -> tuple[EdgeLine, ...]:
    """The lines of a house on a square, whose common rafters run as far as half its side."""
    text = JOB.format(side=2 * run_in * INCH_MM, pitch=pitch)
    result = set_out(read_job_text(text.encode()))
    assert () == result.not_set_out
    return edge_lines(result.slopes, result.roofs, ())[0]


class Printed(NamedTuple):
    """A length, inches, for so many feet of run of the common rafter."""

    rise_in: int
    run_ft: float
    printed_in: float
    places_in: float
    source: str


HIPS = [
    Printed(8, 12.5, 18.76, 0.005, "framing square, hip per foot run"),
    Printed(12, 12.5, 20.78, 0.005, "framing square, hip per foot run; Griffith (1916) App. IV"),
]


@pytest.mark.parametrize("case", HIPS)
def test_each_hip_is_as_long_as_printed(case: Printed) -> None:
    pitch = f"{[f'{case.rise_in} in 12'] * 4}"
    hips = [line for line in lines_of(run_in=12 * case.run_ft, pitch=pitch) if line.kind is LineKind.HIP]
    assert 4 == len(hips)
    for hip in hips:
        assert case.printed_in == pytest.approx(hip.length_mm / INCH_MM / case.run_ft, abs=case.places_in)


VERGES = [
    Printed(8, 12.5, 14.42, 0.005, "framing square, common rafter per foot run"),
    Printed(12, 12.5, 16.97, 0.005, "framing square, common rafter per foot run"),
]


@pytest.mark.parametrize("case", VERGES)
def test_each_verge_is_as_long_as_the_printed_common_rafter(case: Printed) -> None:
    pitch = f'["{case.rise_in} in 12", "gable", "{case.rise_in} in 12", "gable"]'
    verges = [line for line in lines_of(run_in=12 * case.run_ft, pitch=pitch) if line.kind is LineKind.VERGE]
    assert 4 == len(verges)
    for verge in verges:
        assert case.printed_in == pytest.approx(verge.length_mm / INCH_MM / case.run_ft, abs=case.places_in)


def test_the_ridge_of_a_gabled_house_is_as_long_as_the_house() -> None:
    lines = lines_of(run_in=150.0, pitch='["8 in 12", "gable", "8 in 12", "gable"]')
    (ridge,) = [line for line in lines if line.kind is LineKind.RIDGE]
    assert 300.0 == pytest.approx(ridge.length_mm / INCH_MM)
    assert ridge.of_two
