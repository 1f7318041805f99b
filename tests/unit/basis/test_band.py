"""A band holds its ends and nothing past them."""

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH

NAN = float("nan")


def band(least_mm: float, greatest_mm: float) -> Band:
    return Band(least_mm=least_mm, greatest_mm=greatest_mm, citation=house("example"))


@pytest.mark.parametrize(
    ("length_mm", "expected"),
    [(44.999, False), (45.0, True), (45.001, True), (54.999, True), (55.0, True), (55.001, False), (NAN, False)],
)
def test_a_band_holds_its_ends_and_nothing_past_them(length_mm: float, *, expected: bool) -> None:
    assert expected is band(45.0, 55.0).holds(length_mm)


def test_float_noise_at_an_end_is_forgiven() -> None:
    assert band(45.0, 55.0).holds(55.0 + TOUCH / 2)
    assert not band(45.0, 55.0).holds(55.0 + TOUCH * 2)


def test_the_aim_is_the_middle_and_a_band_of_one_length_aims_there() -> None:
    assert [50.0, 50.0] == [band(45.0, 55.0).aim_mm, band(50.0, 50.0).aim_mm]


def test_a_band_of_set_backs_is_negative_throughout() -> None:
    assert -10.0 == band(-15.0, -5.0).aim_mm


@pytest.mark.parametrize(("least_mm", "greatest_mm"), [(55.0, 45.0), (NAN, 55.0), (45.0, NAN)])
def test_a_band_that_runs_backwards_or_nowhere_is_none(least_mm: float, greatest_mm: float) -> None:
    with pytest.raises(ValueError, match="band runs backwards"):
        band(least_mm, greatest_mm)
