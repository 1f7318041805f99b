"""Reading lengths as people write them, and writing them back."""

from fractions import Fraction

import pytest

from gaugerod.basis.errors import GaugerodError
from gaugerod.basis.lengths import MM_PER, LengthUnclear, LengthUnit, read_length_mm, write_greatest, write_length

INCH = Fraction("25.4")


@pytest.mark.parametrize(
    ("text", "expected_mm"),
    [
        ("345", 345),
        ("345.", 345),
        ("345.5", Fraction("345.5")),
        ("345,5", Fraction("345.5")),
        ("1234.567", Fraction("1234.567")),
        ("345 mm", 345),
        ("345MM", 345),
        ("345 millimetres", 345),
        ("34.5cm", 345),
        ("461.2cm", 4612),
        ("4.905 m", 4905),
        ("4,905 m", 4905),
        ("4.905m", 4905),
        (".5 m", 500),
        (",5 m", 500),
        ("0,123 mm", Fraction("0.123")),
        ("1234,567 mm", Fraction("1234.567")),
        ("½ m", 500),
        ("1 m 20 cm", 1200),
        ("1m20cm5mm", 1205),
        ("  4 \t m  ", 4000),
        ("4\u00a0905\u202fmm", 4905),
        ("-5 mm", -5),
        ("−5 mm", -5),
        ("0", 0),
        ("0 mm", 0),
    ],
)
def test_metric_lengths_are_read_exactly(text: str, expected_mm: Fraction) -> None:
    assert expected_mm == read_length_mm(text)


@pytest.mark.parametrize(
    ("text", "expected_in"),
    [
        ("12 in", 12),
        ("12 ins", 12),
        ('12"', 12),
        ("12''", 12),
        ("12″", 12),
        ("12”", 12),
        ("12 in.", 12),
        ("1 ft", 12),
        ("1 foot", 12),
        ("1'", 12),
        ("1′", 12),
        ("1’", 12),
        ("5' 3\"", 63),
        ("5'3", 63),
        ("5 ft 3 in", 63),
        ("5ft3in", 63),
        ("5 ft. 3 in.", 63),
        ("5'-3\"", 63),
        ("5' - 3\"", 63),
        ("5′–3″", 63),
        ("10' 6 3/8\"", 126 + Fraction(3, 8)),
        ("10'-6 3/8\"", 126 + Fraction(3, 8)),
        ("10' 6-3/8\"", 126 + Fraction(3, 8)),
        ("10' 6⅜\"", 126 + Fraction(3, 8)),
        ("10' 6 ⅜″", 126 + Fraction(3, 8)),
        ("10' 3/8\"", 120 + Fraction(3, 8)),
        ("6 3⁄8 in", 6 + Fraction(3, 8)),
        ("6 3 / 8 in", 6 + Fraction(3, 8)),
        ('½"', Fraction(1, 2)),
        ("6½″", Fraction(13, 2)),
        ("10½ ft", 126),
        ("5.125 in", Fraction("5.125")),
        ("5' 3.5\"", Fraction("63.5")),
        ("-1' 6\"", -18),
        ("15/16 in", Fraction(15, 16)),
    ],
)
def test_feet_inches_and_fractions_are_read_exactly(text: str, expected_in: Fraction) -> None:
    assert expected_in * INCH == read_length_mm(text)


@pytest.mark.parametrize(
    ("sign", "expected_in"),
    [
        ("½", Fraction(1, 2)),
        ("¼", Fraction(1, 4)),
        ("¾", Fraction(3, 4)),
        ("⅛", Fraction(1, 8)),
        ("⅜", Fraction(3, 8)),
        ("⅝", Fraction(5, 8)),
        ("⅞", Fraction(7, 8)),
        ("⅓", Fraction(1, 3)),
        ("⅔", Fraction(2, 3)),
    ],
)
def test_every_fraction_sign_is_read(sign: str, expected_in: Fraction) -> None:
    assert (2 + expected_in) * INCH == read_length_mm(f'2{sign}"')


@pytest.mark.parametrize("text", ["1 234 mm", "1 234", "1\u2009234 mm"])
def test_a_space_may_mark_the_thousands_of_millimetres(text: str) -> None:
    assert read_length_mm(text) == 1234


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1,234", "could be 1234 mm or 1.234 m"),
        ("1.234", "could be 1234 mm or 1.234 m"),
        ("4.905", "could be 4905 mm or 4.905 m"),
        ("123.456", "could be 123456 mm or 123.456 m"),
        ("0.345", "could be 0.345 mm or 0.345 m"),
        ("2,5", "could be 2.5 mm or 2.5 m"),
        ("99.9", "could be 99.9 mm or 99.9 m"),
        ("1,234 mm", "could be 1234 mm or 1.234 mm"),
        ("1.234 mm", "could be 1234 mm or 1.234 mm"),
        ("12,345 cm", "could be 12345 cm or 12.345 cm"),
        ("5,125 in", "could be 5125 in or 5.125 in"),
        ("5,125 ft", "could be 5125 ft or 5.125 ft"),
        ("1,234.5 mm", "more than one decimal mark"),
        ("1,234,567 mm", "more than one decimal mark"),
        ("1.2.3 m", "more than one decimal mark"),
        ("6 3/8", "has no unit; write 6 3/8 in"),
        ("1/2", "has no unit; write 1/2 in"),
    ],
)
def test_what_could_mean_two_things_is_refused_with_what_to_write(text: str, said: str) -> None:
    with pytest.raises(LengthUnclear) as refused:
        read_length_mm(text)
    assert said in str(refused.value)
    assert text == refused.value.text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no length in it"),
        ("   ", "no length in it"),
        ("nan", "cannot be read"),
        ("inf", "cannot be read"),
        ("-inf m", "cannot be read"),
        ("1e3", "cannot be read"),
        ("1e3 mm", "cannot be read"),
        ("0x10 mm", "cannot be read"),
        ("+5 mm", "cannot be read"),
        ("--5 mm", "cannot be read"),
        ("mm", "cannot be read"),
        ("five mm", "cannot be read"),
        ("5 yards", "cannot be read"),
        ("٣ mm", "cannot be read"),
        ("5 meterſ", "cannot be read"),
        ("45-55 mm", "cannot be read"),
        ("1 m - 20 cm", "cannot be read"),
        ("17/16 in", "write 1 1/16"),
        ("3 17/16 in", "write 4 1/16"),
        ("16/16 in", "write 1"),
        ("3/0 in", "divides by nothing"),
        ("1½½ in", "no unit"),
        ("½3 in", "no unit"),
        ("5 mm 3", "no unit"),
        ("1 m 5", "no unit"),
        ("1 234 in", "two numbers before one unit"),
        ("3 in 5 ft", "out of order"),
        ("5' 3'", "out of order"),
        ("20 cm 1 m", "out of order"),
        ("5' 12\"", "more in than go into one ft"),
        ("1 m 100 cm", "more cm than go into one m"),
        ("5.5 ft 3 in", "a part of a ft and in besides"),
        ("1.5 m 20 cm", "a part of a m and cm besides"),
        ("1'234 mm", "mixes feet and inches with metric"),
        ("9" * 61, "too long to be a length"),
        ("9" * 100_000, "too long to be a length"),
    ],
)
def test_what_is_not_a_length_is_refused_with_the_reason(text: str, said: str) -> None:
    with pytest.raises(LengthUnclear, match=said):
        read_length_mm(text)


def test_an_unclear_length_is_one_of_this_packages_own_errors() -> None:
    assert issubclass(LengthUnclear, GaugerodError)


def test_a_number_without_a_unit_is_in_the_unit_asked_for() -> None:
    assert [6 * INCH, 72 * INCH, 6000] == [read_length_mm("6", bare_unit=unit) for unit in ("in", "ft", "m")]
    assert read_length_mm("4.905", bare_unit="m") == 4905
    assert (6 + Fraction(3, 8)) * INCH == read_length_mm("6 3/8", bare_unit="in")


def test_a_very_long_roll_of_digits_is_still_exact() -> None:
    assert 10**40 + 1 == read_length_mm(f"1{'0' * 39}1 mm")


@pytest.mark.parametrize(
    ("unit", "expected_mm"),
    [("mm", "1"), ("cm", "10"), ("m", "1000"), ("in", "25.4"), ("ft", "304.8")],
)
def test_the_units_are_exact(unit: str, expected_mm: str) -> None:
    assert Fraction(expected_mm) == MM_PER[unit]


@pytest.mark.parametrize(
    ("length_mm", "unit", "expected"),
    [
        (0, LengthUnit.MM, "0 mm"),
        (0, LengthUnit.CM, "0.0 cm"),
        (0, LengthUnit.M, "0.000 m"),
        (0, LengthUnit.FT_IN, '0"'),
        (4905.4999, LengthUnit.MM, "4905 mm"),
        (4905.5, LengthUnit.MM, "4906 mm"),
        (5, LengthUnit.CM, "0.5 cm"),
        (5, LengthUnit.M, "0.005 m"),
        (-5, LengthUnit.MM, "-5 mm"),
        (-5, LengthUnit.CM, "-0.5 cm"),
        (-1005, LengthUnit.M, "-1.005 m"),
        (10**20 + 1, LengthUnit.M, "100000000000000000.001 m"),
        (INCH / 2, LengthUnit.FT_IN, '1/2"'),
        (INCH, LengthUnit.FT_IN, '1"'),
        (12 * INCH, LengthUnit.FT_IN, "1' 0\""),
        (Fraction(25, 2) * INCH, LengthUnit.FT_IN, "1' 1/2\""),
        (-13 * INCH, LengthUnit.FT_IN, "-1' 1\""),
    ],
)
def test_lengths_are_written_to_the_division(length_mm: float | Fraction, unit: LengthUnit, expected: str) -> None:
    assert expected == write_length(length_mm, unit)


SIXTEENTH_MM = INCH / 16
A_LITTLE_MM = Fraction(1, 1000)


@pytest.mark.parametrize(
    ("whole_in", "below", "at_and_above"),
    [
        (Fraction(1), '15/16"', '1"'),
        (Fraction(6), '5 15/16"', '6"'),
        (Fraction(12), '11 15/16"', "1' 0\""),
        (Fraction(24), "1' 11 15/16\"", "2' 0\""),
        (Fraction(1, 2), '7/16"', '1/2"'),
    ],
)
def test_a_last_half_sixteenth_rolls_over_to_the_next_inch_or_foot(
    whole_in: Fraction, below: str, at_and_above: str
) -> None:
    threshold_mm = whole_in * INCH - SIXTEENTH_MM / 2
    assert below == write_length(threshold_mm - A_LITTLE_MM, LengthUnit.FT_IN)
    assert at_and_above == write_length(threshold_mm, LengthUnit.FT_IN)
    assert at_and_above == write_length(threshold_mm + A_LITTLE_MM, LengthUnit.FT_IN)


@pytest.mark.parametrize("unit", list(LengthUnit))
@pytest.mark.parametrize("length_mm", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_length_is_never_written(length_mm: float, unit: LengthUnit) -> None:
    with pytest.raises((ValueError, OverflowError)):
        write_length(length_mm, unit)


@pytest.mark.parametrize(
    ("limit_mm", "unit", "expected"),
    [
        (344.999, LengthUnit.MM, "344 mm"),
        (345, LengthUnit.MM, "345 mm"),
        (345.001, LengthUnit.MM, "345 mm"),
        (345.999, LengthUnit.CM, "34.5 cm"),
        (345.999, LengthUnit.M, "0.345 m"),
        (12 * INCH - A_LITTLE_MM, LengthUnit.FT_IN, '11 15/16"'),
        (12 * INCH, LengthUnit.FT_IN, "1' 0\""),
    ],
)
def test_a_greatest_length_is_never_written_longer_than_it_is(
    limit_mm: float | Fraction, unit: LengthUnit, expected: str
) -> None:
    assert expected == write_greatest(limit_mm, unit)
