"""Pitch as people write it."""

from contextlib import suppress
from math import atan, degrees, isclose

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.basis.errors import PitchUnclear
from gaugerod.geometry.read_pitch import read_pitch_deg


@pytest.mark.parametrize(
    ("text", "expected_deg"),
    [
        ("35", 35.0),
        ("35°", 35.0),
        ("35 °", 35.0),
        ("35º", 35.0),
        ("35 deg", 35.0),
        ("35deg", 35.0),
        ("35 Degrees", 35.0),
        (" 22.5° ", 22.5),
        ("22,5°", 22.5),
        ("0.1", 0.1),
        ("89.9", 89.9),
    ],
)
def test_degrees_are_read(text: str, expected_deg: float) -> None:
    assert expected_deg == read_pitch_deg(text)


@pytest.mark.parametrize(
    ("text", "rise_over_run"),
    [
        ("8 in 12", 8 / 12),
        ("8in12", 8 / 12),
        ("8 IN 12", 8 / 12),
        ("8:12", 8 / 12),
        ("8 : 12", 8 / 12),
        ("12 in 12", 1.0),
        ("1 in 3", 1 / 3),
        ("7 1/2 in 12", 7.5 / 12),
        ("7-1/2 in 12", 7.5 / 12),
        ("7½ in 12", 7.5 / 12),
        ("7.5 in 12", 7.5 / 12),
        ("7,5 in 12", 7.5 / 12),
        ("35 in 100", 0.35),
    ],
)
def test_rise_in_run_is_read(text: str, rise_over_run: float) -> None:
    assert isclose(degrees(atan(rise_over_run)), read_pitch_deg(text), rel_tol=1e-12)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("8/12", "rise over run or rise over span; write it like 8 in 12"),
        ("35%", "write it like 35 in 100"),
        ("-35", "below level"),
        ("−35°", "below level"),
        ("0", "more than 0° and less than 90°"),
        ("0°", "more than 0° and less than 90°"),
        ("90", "more than 0° and less than 90°"),
        ("90.0001°", "more than 0° and less than 90°"),
        ("145", "more than 0° and less than 90°"),
        ("0 in 12", "above nothing"),
        ("8 in 0", "above nothing"),
        ("7 1/0 in 12", "divides by nothing"),
        ("", "cannot be read"),
        ("steep", "cannot be read"),
        ("nan", "cannot be read"),
        ("inf", "cannot be read"),
        ("3e1", "cannot be read"),
        ("35 mm", "cannot be read"),
        ("35 rad", "cannot be read"),
        ("٣٥", "cannot be read"),
        ("8 in 12 in", "cannot be read"),
        ("1" * 41, "too long to be a pitch"),
    ],
)
def test_what_is_not_a_pitch_is_refused_with_the_reason(text: str, said: str) -> None:
    with pytest.raises(PitchUnclear, match=said):
        read_pitch_deg(text)


@given(text=st.text(max_size=30) | st.text(alphabet="0123456789 .,/:°½-indeg%", max_size=20))
@settings(max_examples=300)
def test_any_text_is_a_pitch_or_is_refused_in_words(text: str) -> None:
    with suppress(PitchUnclear):
        assert 0 < read_pitch_deg(text) < 90
