"""Rounding at its thresholds: to the nearest, never above, never below."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from gaugerod.basis.rounding import Division, count_above, count_below, nearest_count

A_LITTLE_MM = Fraction(1, 1000)
NOISE_MM = Fraction(1, 1_000_000)


@pytest.mark.parametrize("division", list(Division))
@pytest.mark.parametrize("count", [-7, -1, 0, 1, 345, 10**9])
def test_half_a_division_goes_up_and_a_little_less_goes_down(count: int, division: Division) -> None:
    halfway_mm = (count + Fraction(1, 2)) * division.step_mm
    assert count == nearest_count(halfway_mm - A_LITTLE_MM, division)
    assert count + 1 == nearest_count(halfway_mm, division)
    assert count + 1 == nearest_count(halfway_mm + A_LITTLE_MM, division)


@pytest.mark.parametrize("division", list(Division))
@pytest.mark.parametrize("count", [-7, 0, 1, 345])
def test_a_length_on_the_division_is_that_count_whichever_way_it_is_rounded(count: int, division: Division) -> None:
    length_mm = count * division.step_mm
    assert [count] * 3 == [rounded(length_mm, division) for rounded in (nearest_count, count_below, count_above)]


@pytest.mark.parametrize("division", list(Division))
def test_counting_below_never_exceeds_the_length_but_forgives_noise(division: Division) -> None:
    length_mm = 345 * division.step_mm
    assert count_below(length_mm - A_LITTLE_MM, division) == 344
    assert count_below(length_mm - NOISE_MM, division) == 345
    assert count_below(length_mm + A_LITTLE_MM, division) == 345


@pytest.mark.parametrize("division", list(Division))
def test_counting_above_always_reaches_the_length_but_forgives_noise(division: Division) -> None:
    length_mm = 345 * division.step_mm
    assert count_above(length_mm + A_LITTLE_MM, division) == 346
    assert count_above(length_mm + NOISE_MM, division) == 345
    assert count_above(length_mm - A_LITTLE_MM, division) == 345


@pytest.mark.parametrize("rounded", [nearest_count, count_below, count_above])
@pytest.mark.parametrize("length_mm", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_length_has_no_count(rounded: Callable[[float, Division], int], length_mm: float) -> None:
    with pytest.raises((ValueError, OverflowError)):
        rounded(length_mm, Division.MILLIMETRE)


def test_a_sixteenth_is_a_sixteenth_of_an_international_inch() -> None:
    assert Fraction("1.5875") == Division.SIXTEENTH.step_mm
