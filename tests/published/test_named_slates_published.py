"""Gauges of slates by their old names at 3 in headlap, centre-nailed and head-nailed.

Source of PRINTED: Notes on Building Construction (19th-century textbook), "Lap and gauge": a head-nailed slate's lap is
counted from its nail hole, 1 in below the head. SIZES_RECALLED: sizes by name from memory, gauge and count by arithmetic
(14 400 ÷ (gauge × width)): they catch slips and are no evidence of what the trade does.
"""

import pytest

from gaugerod.coverings.double_lap_catalogue import sized_slates
from gaugerod.rules.double_lap_gauge import greatest_gauge_mm, units_per_m2_count

INCH = 25.4
SQUARE_M2 = 100 * 0.3048**2

# (name, length in, width in, nailing, gauge in, to the square)
PRINTED = (
    ("Lady", 16, 8, "head", 6, 300.0),
    ("Countess", 20, 10, "head", 8, 180.0),
    ("Countess", 20, 10, "centre", 8.5, 169.41),
)
SIZES_RECALLED = (
    ("Empress", 26, 16, "centre", 11.5, 78.26),
    ("Empress", 26, 16, "head", 11.0, 81.82),
    ("Princess", 24, 14, "centre", 10.5, 97.96),
    ("Princess", 24, 14, "head", 10.0, 102.86),
    ("Duchess", 24, 12, "centre", 10.5, 114.29),
    ("Duchess", 24, 12, "head", 10.0, 120.0),
    ("Small Duchess", 22, 12, "centre", 9.5, 126.32),
    ("Small Duchess", 22, 12, "head", 9.0, 133.33),
    ("Marchioness", 22, 11, "centre", 9.5, 137.8),
    ("Marchioness", 22, 11, "head", 9.0, 145.45),
    ("Broad Countess", 20, 12, "centre", 8.5, 141.18),
    ("Broad Countess", 20, 12, "head", 8.0, 150.0),
    ("Countess", 20, 10, "centre", 8.5, 169.41),
    ("Countess", 20, 10, "head", 8.0, 180.0),
    ("Small Countess", 18, 10, "centre", 7.5, 192.0),
    ("Small Countess", 18, 10, "head", 7.0, 205.71),
    ("Viscountess", 18, 9, "centre", 7.5, 213.33),
    ("Viscountess", 18, 9, "head", 7.0, 228.57),
    ("Wide Lady", 16, 10, "centre", 6.5, 221.54),
    ("Wide Lady", 16, 10, "head", 6.0, 240.0),
    ("Broad Lady", 16, 9, "centre", 6.5, 246.15),
    ("Broad Lady", 16, 9, "head", 6.0, 266.67),
    ("Lady", 16, 8, "centre", 6.5, 276.92),
    ("Lady", 16, 8, "head", 6.0, 300.0),
    ("Wide Header", 14, 12, "centre", 5.5, 218.18),
    ("Wide Header", 14, 12, "head", 5.0, 240.0),
    ("Header", 14, 10, "centre", 5.5, 261.82),
    ("Header", 14, 10, "head", 5.0, 288.0),
    ("Small Lady", 14, 8, "centre", 5.5, 327.27),
    ("Small Lady", 14, 8, "head", 5.0, 360.0),
    ("Narrow Lady", 14, 7, "centre", 5.5, 374.03),
    ("Narrow Lady", 14, 7, "head", 5.0, 411.43),
    ("Double", 13, 6.5, "centre", 5.0, 443.08),
    ("Double", 13, 6.5, "head", 4.5, 492.31),
    ("Small Double", 12, 6, "centre", 4.5, 533.33),
    ("Small Double", 12, 6, "head", 4.0, 600.0),
)


@pytest.mark.parametrize(
    ("name", "length_in", "width_in", "nailing", "gauge_in", "per_square"), [*PRINTED, *SIZES_RECALLED]
)
def test_gauge_and_count_of_named_slates(
    *, name: str, length_in: float, width_in: float, nailing: str, gauge_in: float, per_square: float
) -> None:
    del name
    lost_mm = INCH if nailing == "head" else 0.0
    gauge_mm = greatest_gauge_mm(length_mm=length_in * INCH, headlap_mm=3 * INCH, lost_at_head_mm=lost_mm)
    assert gauge_in == pytest.approx(gauge_mm / INCH, abs=1e-9)
    count = units_per_m2_count(width_mm=width_in * INCH, gauge_mm=gauge_mm, joint_mm=0.0)
    assert per_square == pytest.approx(count * SQUARE_M2, abs=0.005)


@pytest.mark.parametrize(("name", "length_in", "width_in"), [row[:3] for row in (*PRINTED, *SIZES_RECALLED)])
def test_the_catalogue_holds_each_named_slate_to_the_nearest_5_mm(name: str, length_in: float, width_in: float) -> None:
    slate = sized_slates()[name.lower().replace(" ", "-")]
    assert length_in * INCH == pytest.approx(slate.length_mm, abs=3.0)
    assert width_in * INCH == pytest.approx(slate.width_mm, abs=3.0)
