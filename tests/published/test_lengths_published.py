"""Feet and inches against the international yard and pound agreement (1959): 1 yd = 0.9144 m, so 1 in = 25.4 mm.

Source: United States Federal Register, 1 July 1959, "Refinement of values for the yard and the pound"; Weights and
Measures Act 1985 (UK), schedule 1. Basis: memory, and every conversion table printed since agrees.
"""

from fractions import Fraction

import pytest

from gaugerod.basis.lengths import LengthUnit, read_length_mm, write_length


@pytest.mark.parametrize(
    ("text", "printed_mm"),
    [
        ("1 in", "25.4"),
        ("12 in", "304.8"),
        ("1 ft", "304.8"),
        ("3 ft", "914.4"),
        ('1/16"', "1.5875"),
        ("100 ft", "30480"),
    ],
)
def test_the_international_inch_and_foot_are_exact(text: str, printed_mm: str) -> None:
    assert Fraction(printed_mm) == read_length_mm(text)


@pytest.mark.parametrize(("printed_mm", "expected"), [("304.8", "1' 0\""), ("914.4", "3' 0\""), ("25.4", '1"')])
def test_whole_feet_and_inches_are_written_whole(printed_mm: str, expected: str) -> None:
    assert expected == write_length(Fraction(printed_mm), LengthUnit.FT_IN)
