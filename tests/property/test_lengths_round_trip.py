"""Lengths written and read back, over many lengths and over any text at all."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.basis.lengths import LengthUnclear, LengthUnit, read_length_mm, write_greatest, write_length
from gaugerod.basis.rounding import Division

HALF_A_DIVISION_MM = {
    LengthUnit.MM: Division.MILLIMETRE.step_mm / 2,
    LengthUnit.CM: Division.MILLIMETRE.step_mm / 2,
    LengthUnit.M: Division.MILLIMETRE.step_mm / 2,
    LengthUnit.FT_IN: Division.SIXTEENTH.step_mm / 2,
}
LENGTHS_MM = st.floats(min_value=-1e9, max_value=1e9) | st.fractions(min_value=-100_000, max_value=100_000)
LETTERS_OF_LENGTHS = st.text(alphabet="0123456789 .,-/'\"½⅜′″mcftinchesr", max_size=20)


def returns_within_half_a_division(length_mm: float | Fraction, unit: LengthUnit) -> None:
    written = write_length(length_mm, unit)
    assert abs(read_length_mm(written) - Fraction(length_mm)) <= HALF_A_DIVISION_MM[unit]


def is_never_a_whole_of_the_next_unit(length_mm: float | Fraction) -> None:
    words = write_length(length_mm, LengthUnit.FT_IN).replace("-", "").split()
    assert '12"' not in words
    assert not any(word.startswith("16/16") for word in words)


def is_a_length_or_is_refused(text: str) -> None:
    with suppress(LengthUnclear):
        assert isinstance(read_length_mm(text), Fraction)


@given(length_mm=LENGTHS_MM, unit=st.sampled_from(LengthUnit))
@settings(max_examples=100)
def test_a_written_length_reads_back_within_half_a_division(length_mm: float | Fraction, unit: LengthUnit) -> None:
    returns_within_half_a_division(length_mm, unit)


@given(length_mm=LENGTHS_MM)
@settings(max_examples=100)
def test_twelve_inches_and_sixteen_sixteenths_are_never_written(length_mm: float | Fraction) -> None:
    is_never_a_whole_of_the_next_unit(length_mm)


@given(text=st.text(max_size=30) | LETTERS_OF_LENGTHS)
@settings(max_examples=200)
def test_any_text_is_a_length_or_is_refused_in_words(text: str) -> None:
    is_a_length_or_is_refused(text)


@given(limit_mm=LENGTHS_MM, unit=st.sampled_from(LengthUnit))
@settings(max_examples=100)
def test_a_greatest_length_as_written_is_less_than_a_division_short_and_never_over(
    limit_mm: float | Fraction, unit: LengthUnit
) -> None:
    short_by_mm = Fraction(limit_mm) - read_length_mm(write_greatest(limit_mm, unit))
    noise_mm = Fraction(1, 1_000_000)
    assert -noise_mm <= short_by_mm < 2 * HALF_A_DIVISION_MM[unit]


def test_every_sixteenth_of_a_hundred_feet_is_written_and_read_back_exactly() -> None:
    for count in range(100 * 12 * 16 + 1):
        length_mm = count * Division.SIXTEENTH.step_mm
        assert length_mm == read_length_mm(write_length(length_mm, LengthUnit.FT_IN))


@pytest.mark.slow
@given(length_mm=LENGTHS_MM, unit=st.sampled_from(LengthUnit))
@settings(max_examples=10_000)
def test_many_written_lengths_read_back_within_half_a_division(length_mm: float | Fraction, unit: LengthUnit) -> None:
    returns_within_half_a_division(length_mm, unit)
    is_never_a_whole_of_the_next_unit(length_mm)


@pytest.mark.slow
@given(text=st.text(max_size=30) | LETTERS_OF_LENGTHS)
@settings(max_examples=10_000)
def test_a_great_many_texts_are_lengths_or_are_refused_in_words(text: str) -> None:
    is_a_length_or_is_refused(text)
