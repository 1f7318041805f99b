"""Plain tiles and shingles to an area.

Sources beside each group. RECALLED: figures of the British trade for a 265 × 165 tile, from memory: no evidence by
themselves, kept so that a slip shows. DERIVED: arithmetic on sizes that are printed.
"""

from math import ceil, floor

import pytest

from gaugerod.rules.double_lap_gauge import batten_m_per_m2, greatest_gauge_mm, headlap_mm, units_per_m2_count

INCH = 25.4
SQUARE_M2 = 100 * 0.3048**2

# (gauge mm, headlap mm, exact to the m2, printed, batten m to the m2)
RECALLED = ((100, 65, 60.606, 60, 10.0), (95, 75, 63.796, 64, 10.526), (115, 35, 52.701, 53, 8.696))
DERIVED = ((90, 85, 67.34, 11.111), (110, 45, 55.096, 9.091), (113, 39, 53.634, 8.85))
# Size 10 1/2 × 6 1/2 in: Encyclopaedia Britannica, 14th edition, vol. 19, "Roofs" (printed). Gauges of 4 and 4 1/4 in:
# Modern Buildings (c. 1905), specimen specifications (printed). The counts are arithmetic on them.
# (gauge in, headlap in, to the square, batten ft to the square)
INCH_TILES = (
    (4.0, 2.5, 553.846, 300.0),
    (3.75, 3.0, 590.769, 320.0),
    (3.5, 3.5, 632.967, 342.857),
    (3.0, 4.5, 738.462, 400.0),
    (4.25, 2.0, 521.267, 282.353),
    (4.5, 1.5, 492.308, 266.667),
)


@pytest.mark.parametrize(("gauge_mm", "lap_mm", "exact", "printed", "batten_m"), RECALLED)
def test_recalled_counts_of_265_by_165_tiles(
    gauge_mm: float, lap_mm: float, exact: float, printed: int, batten_m: float
) -> None:
    count = units_per_m2_count(width_mm=165.0, gauge_mm=gauge_mm, joint_mm=0.0)
    assert exact == pytest.approx(count, abs=6e-4)
    assert printed in {floor(count), ceil(count)}
    assert gauge_mm == greatest_gauge_mm(length_mm=265.0, headlap_mm=lap_mm)
    assert batten_m == pytest.approx(batten_m_per_m2(gauge_mm=gauge_mm), abs=6e-4)


@pytest.mark.parametrize(("gauge_mm", "lap_mm", "exact", "batten_m"), DERIVED)
def test_other_gauges_of_265_by_165_tiles(gauge_mm: float, lap_mm: float, exact: float, batten_m: float) -> None:
    assert exact == pytest.approx(units_per_m2_count(width_mm=165.0, gauge_mm=gauge_mm, joint_mm=0.0), abs=6e-4)
    assert lap_mm == headlap_mm(length_mm=265.0, gauges_mm=(gauge_mm, gauge_mm))
    assert batten_m == pytest.approx(batten_m_per_m2(gauge_mm=gauge_mm), abs=6e-4)


@pytest.mark.parametrize(("gauge_in", "lap_in", "per_square", "batten_ft"), INCH_TILES)
def test_inch_tiles_to_the_square(gauge_in: float, lap_in: float, per_square: float, batten_ft: float) -> None:
    count = units_per_m2_count(width_mm=6.5 * INCH, gauge_mm=gauge_in * INCH, joint_mm=0.0) * SQUARE_M2
    assert per_square == pytest.approx(count, abs=6e-4)
    assert lap_in * INCH == pytest.approx(headlap_mm(length_mm=10.5 * INCH, gauges_mm=(gauge_in * INCH,) * 2), abs=1e-9)
    metres = batten_m_per_m2(gauge_mm=gauge_in * INCH) * SQUARE_M2
    assert batten_ft == pytest.approx(metres / 0.3048, abs=6e-4)


def test_shingles_4_in_wide_at_4_in_exposure_are_900_to_the_square() -> None:
    """A period text on hip and tin roofs prints 900, and 1000 to be ordered for waste."""
    count = units_per_m2_count(width_mm=4 * INCH, gauge_mm=4 * INCH, joint_mm=0.0)
    assert pytest.approx(900, abs=1e-9) == count * SQUARE_M2


def test_the_weight_of_a_square_foot_lies_in_the_printed_range() -> None:
    """Tile 2 1/4 lb (Britannica, 14th edition); 11 to 14 lb to the square foot (Kidder, Building Construction, table IV)."""
    count = units_per_m2_count(width_mm=6.5 * INCH, gauge_mm=4 * INCH, joint_mm=0.0)
    assert 11 <= 2.25 * count * 0.3048**2 <= 14
