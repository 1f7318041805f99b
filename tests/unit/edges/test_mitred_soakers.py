"""A soaker of a mitred hip lies along the hip: there it must be longer than one at a wall, or it laps too little."""

from dataclasses import replace

import pytest

from gaugerod.coverings.double_lap_catalogue import sized_slate
from gaugerod.edges.ask import LineKind
from gaugerod.edges.soakers import hip_soaker_length_mm, mitred_hip_soakers, soaker_length_mm
from gaugerod.edges.wished import EdgesWished
from gaugerod.standards.edition import Edition
from tests.scenario.edged_roofs import edges_ask, line, slope

GB = Edition.GB
HIP = line(LineKind.HIP, slope_deg=26.34, courses_count=(19, 19))
"""At 35 degrees on a square corner: tan 35° ÷ √2 is the tangent of 26.34°."""


def test_the_soaker_laps_along_the_hip_as_far_as_the_courses_do() -> None:
    """200 + 100 + 25 up the slope, and a hip 1.2925 as long as the way straight up: sin 35° ÷ sin 26.34°."""
    ask = replace(
        edges_ask(HIP, wished=EdgesWished(), covering=sized_slate("slate-500x250")),
        slopes=(slope("front", gauge_mm=200.0, headlap_mm=100.0), slope("rear", gauge_mm=200.0, headlap_mm=100.0)),
    )
    (soakers,) = mitred_hip_soakers(ask, HIP)
    assert (19, 421.0) == (soakers.count, soakers.length_mm)
    margin_along_the_hip_mm = 200.0 * 1.2925
    assert soakers.length_mm - margin_along_the_hip_mm >= (100.0 + 25.0) * 1.2925
    assert "made longer along the hip: 421 mm" in soakers.how


def test_where_the_pitches_differ_the_steeper_slope_needs_the_longer() -> None:
    """The hip rises at one angle, so to climb as far as a course of the steeper slope does it goes further."""
    flatter, steeper = (slope("front", pitch_deg=pitch, gauge_mm=200.0) for pitch in (35.0, 50.0))
    flat_mm, steep_mm = (hip_soaker_length_mm(each, hip_deg=28.5, edition=GB) for each in (flatter, steeper))
    assert (361.0, 482.0) == (flat_mm, steep_mm)


@pytest.mark.parametrize(("hip_deg", "length_mm"), [(35.0, 301.0), (34.9, 302.0)])
def test_straight_up_the_slope_it_is_as_long_as_at_a_wall(hip_deg: float, length_mm: float) -> None:
    rear = slope("rear", gauge_mm=200.0, headlap_mm=76.0)
    assert 301.0 == soaker_length_mm(rear, GB)
    assert length_mm == hip_soaker_length_mm(rear, hip_deg=hip_deg, edition=GB)
