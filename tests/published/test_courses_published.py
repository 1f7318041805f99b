"""Courses and gauges against printed figures. Each row names its source."""

from dataclasses import replace
from fractions import Fraction

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import common_practice
from gaugerod.basis.rounding import Division
from gaugerod.coverings.catalogue import covering, override
from gaugerod.setting_out.courses import CoursesAsk
from gaugerod.setting_out.equal_gauge import fewest_gauges
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import Station

HOW_TO = "general how-to text on battens (web), read in a stored copy"


@pytest.mark.parametrize(
    ("between_mm", "greatest_mm", "printed_gauges", "source"),
    [
        # 204 in between first and top batten, greatest gauge 13 in: 16 courses of 12.75 in
        (Fraction("5181.6"), Fraction("330.2"), 16, HOW_TO),
        # 3000 mm at 300 mm: exact division adds no course
        (Fraction(3000), Fraction(300), 10, HOW_TO),
    ],
)
def test_number_of_gauges(between_mm: Fraction, greatest_mm: Fraction, printed_gauges: int, source: str) -> None:
    assert source
    assert printed_gauges == fewest_gauges(span_mm=between_mm, gauge_max_mm=greatest_mm)


def _ask(*, first_to_top_mm: float, gauge_max_mm: float) -> CoursesAsk:
    """A slope whose first and top batten are this far apart: 400 mm hanging, 50 mm overhang, 30 mm below the apex."""
    fixed = common_practice("laid out round the printed figure")
    return CoursesAsk(
        where="printed case",
        stations=(Station(at_mm=0.0, length_mm=400.0 - 50.0 + first_to_top_mm + 30.0),),
        unit_length_mm=420.0,
        hanging_length_mm=400.0,
        gauge_min_mm=None,
        gauge_max_mm=gauge_max_mm,
        gauge_citation=fixed,
        overhang=Band(50.0, 50.0, fixed),
        top=Band(30.0, 30.0, fixed),
        division=Division.MILLIMETRE,
    )


@pytest.mark.parametrize(
    ("first_to_top_mm", "gauge_max_mm", "printed_gauges", "printed_gauge_mm", "half_last_place_mm"),
    [
        # 204 in, at most 13 in: 16 gauges of 12.75 in
        (5181.6, 330.2, 16, 12.75 * 25.4, 0.005 * 25.4),
        # 450 cm in 14 gauges: 32.14 cm (the greatest gauge is ours: any that asks for 14 gauges)
        (4500.0, 345.0, 14, 321.4, 0.05),
        # 3000 mm at 300 mm: ten of 300, no eleventh
        (3000.0, 300.0, 10, 300.0, 0.0),
    ],
)
def test_the_rod_has_the_printed_gauges(
    *,
    first_to_top_mm: float,
    gauge_max_mm: float,
    printed_gauges: int,
    printed_gauge_mm: float,
    half_last_place_mm: float,
) -> None:
    """Source: general how-to texts on battens (web), read in stored copies."""
    courses = set_out_courses(_ask(first_to_top_mm=first_to_top_mm, gauge_max_mm=gauge_max_mm))
    assert printed_gauges == courses.count - 1
    assert pytest.approx(printed_gauge_mm, abs=half_last_place_mm + 1e-9) == courses.rods[0].gauge_mm


def test_the_first_batten_of_a_16_inch_tile_stands_12_inches_up() -> None:
    """Source: general how-to text (web): 16 in tile, nib 1 in below its head, 3 in overhang: first batten 12 in up."""
    inch_mm = 25.4
    fixed = common_practice("overhang of the printed case")
    ask = replace(
        _ask(first_to_top_mm=3000.0, gauge_max_mm=300.0),
        unit_length_mm=16 * inch_mm,
        hanging_length_mm=(16 - 1) * inch_mm,
        overhang=Band(3 * inch_mm, 3 * inch_mm, fixed),
        division=Division.SIXTEENTH,
    )
    assert pytest.approx(12 * inch_mm) == set_out_courses(ask).rods[0].marks_mm[0]


@pytest.mark.parametrize(("length_mm", "lap_mm", "printed_gauge_mm"), [(420.0, 75.0, 345.0)])
def test_greatest_gauge_of_a_single_lap_tile(length_mm: float, lap_mm: float, printed_gauge_mm: float) -> None:
    """Source: general how-to text on battens (web): a 420 mm tile at 75 mm lap gives 345 mm."""
    tile = override(covering("flat-interlocking-420x330"), {"length_mm": length_mm, "headlap_min_mm": lap_mm})
    assert printed_gauge_mm == tile.gauge_max_mm
