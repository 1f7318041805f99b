"""Courses and gauges against printed figures. Each row names its source."""

from fractions import Fraction

import pytest

from gaugerod.setting_out.equal_gauge import fewest_gauges

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


def test_450_cm_in_14_gauges_prints_32_14_cm() -> None:
    # Source: general how-to text on battens (web). Printed to two places.
    assert pytest.approx(32.14, abs=0.005) == float(Fraction(4500) / 14) / 10


def test_first_batten_from_the_fascia() -> None:
    """Source: general how-to text (web): 16 in tile, 1 in to the nib, 3 in overhang: first batten 12 in up."""
    hanging_length_in, overhang_in = 16 - 1, 3
    assert 12 == hanging_length_in - overhang_in


@pytest.mark.parametrize(("length_mm", "lap_mm", "printed_gauge_mm"), [(420.0, 75.0, 345.0)])
def test_greatest_gauge_of_a_single_lap_tile(length_mm: float, lap_mm: float, printed_gauge_mm: float) -> None:
    """Source: general how-to text on battens (web): a 420 mm tile at 75 mm lap gives 345 mm."""
    from gaugerod.coverings.catalogue import covering, override  # noqa: PLC0415 - beside the only case that needs it

    tile = override(covering("flat-interlocking-420x330"), {"length_mm": length_mm, "headlap_min_mm": lap_mm})
    assert printed_gauge_mm == tile.gauge_max_mm
