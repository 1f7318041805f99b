"""What is shown never reads better than what is."""

import pytest

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading


@pytest.mark.parametrize(
    ("unit", "expected"),
    [
        (LengthUnit.MM, "345.3 mm"),
        (LengthUnit.CM, "34.53 cm"),
        (LengthUnit.M, "0.3453 m"),
        (LengthUnit.FT_IN, "1' 1 9/16\""),
    ],
)
def test_a_gauge_is_shown_to_a_tenth_or_a_sixteenth(unit: LengthUnit, expected: str) -> None:
    # 345.27 mm ÷ 25.4 × 16 = 217.49 sixteenths: 217, which is 13 9/16 in
    assert expected == fine_length(345.27, unit)


@pytest.mark.parametrize(("lap_mm", "expected"), [(74.99, "74.9 mm"), (75.0, "75 mm"), (75.01, "75 mm")])
def test_a_lap_just_short_never_reads_as_kept(lap_mm: float, expected: str) -> None:
    assert expected == fine_length(lap_mm, LengthUnit.MM, towards=Sense.AT_LEAST)


@pytest.mark.parametrize(("gauge_mm", "expected"), [(344.99, "345 mm"), (345.0, "345 mm"), (345.01, "345.1 mm")])
def test_a_gauge_just_over_never_reads_as_kept(gauge_mm: float, expected: str) -> None:
    assert expected == fine_length(gauge_mm, LengthUnit.MM, towards=Sense.AT_MOST)


def test_a_sixteenth_is_rounded_away_from_the_limit_too() -> None:
    assert '2 15/16"' == fine_length(75.0, LengthUnit.FT_IN, towards=Sense.AT_LEAST)
    assert '3"' == fine_length(75.0, LengthUnit.FT_IN, towards=Sense.AT_MOST)


@pytest.mark.parametrize(
    ("unit", "expected"), [(LengthUnit.MM, "-45"), (LengthUnit.CM, "-4.5"), (LengthUnit.M, "-0.045")]
)
def test_a_column_names_its_unit_once(unit: LengthUnit, expected: str) -> None:
    assert expected == bare_length(-45.0, unit)
    assert unit.value == unit_heading(unit)
