"""Pitch against the tables carpenters' squares carry, and handbook examples.

Framing square: "length of common rafters per foot run" and area multipliers by rise in 12, as printed on squares and
reprinted in: Griffith, Carpentry (1916), App. IV (16.97 at 12 in); US Army engineer carpentry subcourse EN5156 (17.69
at 13 in). Basis: read in print. Most are to the nearest hundredth; the area multipliers at 4 and 5 in are rounded up
(1.06 for 1.0541, 1.09 for 1.0833), so their tolerance is one whole last place.
"""

from fractions import Fraction
from typing import NamedTuple

import pytest

from gaugerod.basis.lengths import read_length_mm
from gaugerod.geometry.pitch import pitch_from_rafter_and_run_deg, rafter_mm
from gaugerod.geometry.read_pitch import read_pitch_deg


class CommonRafter(NamedTuple):
    """Inches of common rafter per foot of run, as printed."""

    rise_in: int
    printed_in: float
    tolerance_in: float = 0.005


COMMON_RAFTERS = [
    CommonRafter(2, 12.17),
    CommonRafter(4, 12.65),
    CommonRafter(5, 13.0),
    CommonRafter(6, 13.42),
    CommonRafter(8, 14.42),
    CommonRafter(9, 15.0),
    CommonRafter(11, 16.28),
    CommonRafter(12, 16.97),
    CommonRafter(13, 17.69),
    CommonRafter(15, 19.21),
    CommonRafter(16, 20.0),
    CommonRafter(18, 21.63),
]


@pytest.mark.parametrize("case", COMMON_RAFTERS)
def test_a_foot_of_run_gives_the_printed_length_of_common_rafter(case: CommonRafter) -> None:
    foot_mm = float(read_length_mm("1 ft"))
    rafter_in = rafter_mm(run_mm=foot_mm, pitch_deg=read_pitch_deg(f"{case.rise_in} in 12")) / float(
        read_length_mm("1 in")
    )
    assert case.printed_in == pytest.approx(rafter_in, abs=case.tolerance_in + 1e-9)


@pytest.mark.parametrize("case", COMMON_RAFTERS)
def test_the_printed_rafter_over_a_foot_of_run_is_that_pitch_again(case: CommonRafter) -> None:
    from_print_deg = pitch_from_rafter_and_run_deg(rafter_mm=case.printed_in, run_mm=12.0)
    assert from_print_deg == pytest.approx(read_pitch_deg(f"{case.rise_in}:12"), abs=0.15)


class AreaMultiplier(NamedTuple):
    """Sloped area over plan area, as printed."""

    rise_in: int
    printed: float
    tolerance: float = 0.005


@pytest.mark.parametrize(
    "case",
    [
        AreaMultiplier(4, 1.06, 0.01),  # printed rounded up
        AreaMultiplier(5, 1.09, 0.01),  # printed rounded up
        AreaMultiplier(6, 1.12),
        AreaMultiplier(8, 1.20),
        AreaMultiplier(9, 1.25),
    ],
)
def test_the_area_multiplier_is_rafter_over_run(case: AreaMultiplier) -> None:
    ratio = rafter_mm(run_mm=1000.0, pitch_deg=read_pitch_deg(f"{case.rise_in} in 12")) / 1000.0
    assert case.printed == pytest.approx(ratio, abs=case.tolerance)


class HandbookRafter(NamedTuple):
    """A worked common rafter: rise in 12, run in feet, and the length printed for it."""

    source: str
    rise_in: int
    run_ft: Fraction
    printed: str
    tolerance_in: float


@pytest.mark.parametrize(
    "case",
    [
        # Bridge measure rounded to 13.89 in before multiplying, then to the sixteenth.
        HandbookRafter("US Navy NAVEDTRA 14044, Builder 3&2, vol. 2 ch. 2", 7, Fraction(8), "9 ft 3 1/8 in", 0.0625),
        # 17.69 in × 10 1/3, printed to the nearest inch.
        HandbookRafter("US Army engineer carpentry subcourse EN5156", 13, Fraction(31, 3), "15 ft 3 in", 0.5),
        # 16.97 in per foot, so 0.02 in short over 12 1/2 ft.
        HandbookRafter("Griffith, Carpentry (1916), App. IV", 12, Fraction(25, 2), "17 ft 8.12 in", 0.02),
    ],
)
def test_worked_rafters_come_out_as_the_handbook_prints_them(case: HandbookRafter) -> None:
    run_mm = float(case.run_ft * read_length_mm("1 ft"))
    exact_mm = rafter_mm(run_mm=run_mm, pitch_deg=read_pitch_deg(f"{case.rise_in} in 12"))
    printed_mm = float(read_length_mm(case.printed))
    assert printed_mm == pytest.approx(exact_mm, abs=case.tolerance_in * 25.4)


def test_a_known_misprint_is_not_reproduced() -> None:
    """Hodgson, ABC of the Steel Square prints 42 ft 6 1/8 in for 12 in 12 over 30 ft of run; it is 42 ft 5 1/8 in."""
    exact_mm = rafter_mm(run_mm=float(read_length_mm("30 ft")), pitch_deg=read_pitch_deg("12 in 12"))
    assert abs(exact_mm - float(read_length_mm("42 ft 6 1/8 in"))) > 25
