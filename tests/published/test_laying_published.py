"""Laying against figures in print.

Jack rafters: the difference in length of jacks is what a hip gains up the slope over their spacing, so it is also what
the cut rises across a unit as wide as the spacing. Printed on framing squares and reprinted in Griffith, Carpentry
(1916), App. IV; prints at 8 in are truncated, so their tolerance is one whole last place. Basis: read in print.

Plain tiles to the square metre, 265 × 165: figures of the UK trade. Basis: memory. 60 is 60.6 rounded down.
"""

from typing import NamedTuple

import pytest

from gaugerod.geometry.pitch import cos_deg, tan_deg
from gaugerod.geometry.read_pitch import read_pitch_deg
from gaugerod.laying.cutting import cut_units
from gaugerod.laying.lay import lay
from tests.scenario.laid_slopes import slope

INCH_MM = 25.4


class JackDifference(NamedTuple):
    """Inches between one jack rafter and the next, as printed."""

    rise_in: int
    spacing_in: float
    printed_in: float
    tolerance_in: float = 0.005


@pytest.mark.parametrize(
    "case",
    [
        JackDifference(8, 16.0, 19.22, 0.01),
        JackDifference(8, 24.0, 28.84, 0.01),
        JackDifference(9, 16.0, 20.0),
        JackDifference(9, 24.0, 30.0),
        JackDifference(12, 16.0, 22.63),
        JackDifference(12, 24.0, 33.94),
    ],
)
def test_the_cut_at_a_square_hip_rises_by_the_printed_difference_of_jacks(case: JackDifference) -> None:
    cover_mm = case.spacing_in * INCH_MM
    half_span_mm = 8000.0
    up_mm = half_span_mm / cos_deg(read_pitch_deg(f"{case.rise_in} in 12"))
    ask = slope([(0.0, 0.0), (2 * half_span_mm, 0.0), (half_span_mm, up_mm)], cover_mm=cover_mm, gauge_mm=300.0)
    left = [cut for piece in cut_units(ask, lay(ask)) for cut in piece.cuts if cut.edge.name == "c"]
    assert len(left) > 10
    for cut in left:
        assert case.printed_in == pytest.approx(case.spacing_in * tan_deg(cut.angle_deg), abs=case.tolerance_in + 1e-9)


@pytest.mark.parametrize(
    ("gauge_mm", "printed_per_m2", "tolerance"), [(100.0, 60, 1.0), (95.0, 64, 0.5), (115.0, 53, 0.5)]
)
def test_plain_tiles_to_the_square_metre(gauge_mm: float, printed_per_m2: int, tolerance: float) -> None:
    side = (0.0, 165.0 * 100, 165.0 * 100, 0.0)
    top = gauge_mm * 150
    laying = lay(slope(list(zip(side, (0.0, 0.0, top, top), strict=True)), gauge_mm=gauge_mm, bond_mm=0.0))
    assert laying.cut_count == 0
    assert printed_per_m2 == pytest.approx(laying.whole_count / (laying.slope_area_mm2 / 1e6), abs=tolerance)
