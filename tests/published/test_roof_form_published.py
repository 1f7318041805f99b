"""Hips and cuts against printed rafter tables, and a whole roof against a surveyed building.

Framing square: hip rafter and difference in jacks by rise in 12, as printed on carpenters' squares; 20.78 at 12 in is
reprinted in Griffith, Carpentry (1916), App. IV. Jack side cut: US Navy NAVEDTRA 14044, Builder 3&2, vol. 2, ch. 2.
Jack difference at 10 in: Audel, Carpenters and Builders Guide, vol. 3, p. 975 (1923).
Survey: building NL.IMBAG.Pand.0851100000000564 of 3DBAG, (c) 3DBAG by tudelft3d and 3DGI, CC BY 4.0, 3dbag.nl.
Basis: read in print, or in the published record.
"""

from math import atan2, degrees, radians, tan
from typing import NamedTuple

import pytest

from gaugerod.geometry.plan_outline import GableWall, PitchedWall, PlanOutline
from gaugerod.geometry.read_pitch import read_pitch_deg
from gaugerod.geometry.roof_faces import RoofForm, RoofSlope
from gaugerod.geometry.roof_form import roof_form

INCH_MM = 25.4


def square_roof(*, rise_in: int, run_in: float) -> RoofForm:
    """A hipped roof over a square, so that the common rafter runs as far as half the side."""
    side_mm = 2 * run_in * INCH_MM
    wall = PitchedWall(pitch_deg=read_pitch_deg(f"{rise_in} in 12"))
    return roof_form(PlanOutline(outer_mm=((0, 0), (side_mm, 0), (side_mm, side_mm), (0, side_mm)), walls=(wall,) * 4))


class Hip(NamedTuple):
    """Length of hip, inches, over a run of the common rafter."""

    rise_in: int
    run_in: float
    printed_in: float
    tolerance_in: float
    source: str


HIPS = [
    Hip(8, 12.0, 18.76, 0.005, "framing square, hip per foot run"),
    Hip(12, 12.0, 20.78, 0.005, "framing square, hip per foot run"),
    # 20.78 in for each foot of a 12 1/2 ft run: the printed unit, rounded, times 12.5; so half its last place times 12.5
    Hip(12, 150.0, 259.75, 0.0625, "Griffith (1916) App. IV, half pitch over 25 ft"),
]


@pytest.mark.parametrize("case", HIPS)
def test_a_hip_has_the_printed_length(case: Hip) -> None:
    for hip in square_roof(rise_in=case.rise_in, run_in=case.run_in).hips:
        assert case.printed_in == pytest.approx(hip.length_mm / INCH_MM, abs=case.tolerance_in)


class Jacks(NamedTuple):
    """Difference in length of jacks, inches, at a spacing."""

    rise_in: int
    spacing_in: float
    printed_in: float
    tolerance_in: float
    source: str


JACKS = [
    Jacks(8, 16, 19.22, 0.0101, "framing square (truncated in print: exact 19.230)"),
    Jacks(8, 24, 28.84, 0.005, "framing square"),
    Jacks(9, 16, 20.0, 0.005, "framing square"),
    Jacks(9, 24, 30.0, 0.005, "framing square"),
    Jacks(12, 16, 22.63, 0.005, "framing square"),
    Jacks(12, 24, 33.94, 0.005, "framing square"),
    Jacks(10, 16, 20.83, 0.005, "Audel vol. 3 p. 975"),
    Jacks(10, 20, 26.0, 0.04, "Audel vol. 3 p. 975 (printed to the inch)"),
]


@pytest.mark.parametrize("case", JACKS)
def test_jacks_shorten_by_the_printed_difference(case: Jacks) -> None:
    """A jack ends on the hip: up the slope over along the eaves, in the slope's own plane."""
    slope = square_roof(rise_in=case.rise_in, run_in=144.0).slopes[0]
    apex_x_mm, apex_y_mm = max(slope.outline_mm, key=lambda corner: corner[1])
    assert case.printed_in == pytest.approx(case.spacing_in * apex_y_mm / apex_x_mm, abs=case.tolerance_in)


def test_a_jack_side_cut_at_eight_in_twelve_is_twelve_on_the_tongue_and_ten_on_the_blade() -> None:
    """Printed: 10 (to the whole inch; 9.98 exact). The cut on the square is the slope's own angle from jack to hip."""
    slope = square_roof(rise_in=8, run_in=144.0).slopes[0]
    apex_x_mm, apex_y_mm = max(slope.outline_mm, key=lambda corner: corner[1])
    assert pytest.approx(12.0 * apex_x_mm / apex_y_mm, abs=0.02) == 10.0


SURVEYED_M = (
    (89385.249, 398420.334),
    (89388.356, 398423.170),
    (89391.088, 398425.663),
    (89385.512, 398432.123),
    (89382.803, 398429.733),
    (89379.429, 398426.756),
)
"""Corners of the ground surface, counter-clockwise from the south; walls 2 and 5 carry the eaves."""


@pytest.fixture
def surveyed() -> RoofForm:
    """Pitches as published; eaves at the mean of the published heights of their two ends."""
    gable = GableWall()
    north_east = PitchedWall(pitch_deg=26.4351, eaves_height_mm=(2761 + 2798) / 2)
    south_west = PitchedWall(pitch_deg=27.1986, eaves_height_mm=(2247 + 2480) / 2)
    corners = tuple((1000 * x, 1000 * y) for x, y in SURVEYED_M)
    return roof_form(PlanOutline(outer_mm=corners, walls=(gable, gable, north_east, gable, gable, south_west)))


def test_the_surveyed_gable_has_its_published_areas(surveyed: RoofForm) -> None:
    """Published: ground 68.87 m², sloped roof 77.2 m²."""
    assert pytest.approx(sum(slope.plan_area_mm2 for slope in surveyed.slopes) / 1e6, abs=0.005) == 68.87
    assert pytest.approx(surveyed.area_mm2 / 1e6, abs=0.05) == 77.2


def test_the_surveyed_gable_faces_its_published_ways(surveyed: RoofForm) -> None:
    """Published: azimuths 48.6911° and 230.8007° of planes whose eaves are out of level in the survey.

    Ours stand square to level eaves. Eaves that rise to the right turn a plane by atan(rise per run / tan pitch).
    """
    north_east, south_west = surveyed.slopes
    assert 48.6911 == pytest.approx(north_east.azimuth_deg + turned_deg(north_east, rise_mm=2761 - 2798), abs=0.05)
    assert 230.8007 == pytest.approx(south_west.azimuth_deg + turned_deg(south_west, rise_mm=2480 - 2247), abs=0.05)


def turned_deg(slope: RoofSlope, *, rise_mm: float) -> float:
    eaves_mm = slope.outline_mm[1][0]
    return degrees(atan2(rise_mm / eaves_mm, tan(radians(slope.pitch_deg))))


def test_the_surveyed_ridge_is_at_its_published_height(surveyed: RoofForm) -> None:
    """Published: ridge ends at 4.638 and 4.558 m; the level ridge of the form lies between them within the survey's skew."""
    heights_m = [height / 1e3 for line in surveyed.ridges for *_, height in (line.foot_mm, line.head_mm)]
    assert pytest.approx(sum(heights_m) / len(heights_m), abs=0.1) == (4.638 + 4.558) / 2
