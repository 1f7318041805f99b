"""Pitch, rafter and run, each checked a second way."""

from math import acos, degrees, isclose

import pytest

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.geometry.pitch import (
    atan2_deg,
    cos_deg,
    length_mm,
    pitch_from_rafter_and_run_deg,
    pitch_from_rise_and_run_deg,
    rafter_mm,
    sin_deg,
    tan_deg,
)

NAN, INF = float("nan"), float("inf")


@pytest.mark.parametrize(
    ("rise_mm", "run_mm", "expected_deg"), [(1.0, 1.0, 45.0), (3**0.5, 1.0, 60.0), (1.0, 3**0.5, 30.0)]
)
def test_the_pitch_of_known_triangles(rise_mm: float, run_mm: float, expected_deg: float) -> None:
    assert isclose(expected_deg, pitch_from_rise_and_run_deg(rise_mm=rise_mm, run_mm=run_mm), rel_tol=1e-12)


@pytest.mark.parametrize("run_mm", [1.0, 500.0, 3600.0, 4999.0])
def test_rafter_and_run_give_the_angle_whose_cosine_is_run_over_rafter(run_mm: float) -> None:
    expected_deg = degrees(acos(run_mm / 5000.0))
    assert isclose(expected_deg, pitch_from_rafter_and_run_deg(rafter_mm=5000.0, run_mm=run_mm), rel_tol=1e-9)


def test_a_rafter_and_its_run_give_back_the_pitch_it_was_cut_to() -> None:
    for pitch_deg in (1.0, 22.5, 35.0, 60.0, 89.0):
        rafter = rafter_mm(run_mm=4000.0, pitch_deg=pitch_deg)
        assert isclose(pitch_deg, pitch_from_rafter_and_run_deg(rafter_mm=rafter, run_mm=4000.0), rel_tol=1e-9)


@pytest.mark.parametrize(
    ("rise_mm", "run_mm"), [(0.0, 1.0), (1.0, 0.0), (-1.0, 1.0), (NAN, 1.0), (1.0, NAN), (INF, 1.0)]
)
def test_a_pitch_needs_a_rise_and_a_run(rise_mm: float, run_mm: float) -> None:
    with pytest.raises(NothingToSetOut):
        pitch_from_rise_and_run_deg(rise_mm=rise_mm, run_mm=run_mm)


@pytest.mark.parametrize(("rafter", "run"), [(1.0, 1.0), (0.999, 1.0), (1.0, 0.0), (1.0, -1.0), (NAN, 1.0), (INF, 1.0)])
def test_a_rafter_must_be_longer_than_its_run(rafter: float, run: float) -> None:
    with pytest.raises(NothingToSetOut):
        pitch_from_rafter_and_run_deg(rafter_mm=rafter, run_mm=run)


def test_a_rafter_just_longer_than_its_run_is_nearly_level() -> None:
    assert 0 < pitch_from_rafter_and_run_deg(rafter_mm=1.001, run_mm=1.0) < 3


@pytest.mark.parametrize("pitch_deg", [-0.001, 90.0, 90.001, NAN, INF])
def test_no_rafter_stands_plumb_or_falls(pitch_deg: float) -> None:
    with pytest.raises(NothingToSetOut):
        rafter_mm(run_mm=4000.0, pitch_deg=pitch_deg)


def test_a_level_rafter_is_as_long_as_its_run() -> None:
    assert rafter_mm(run_mm=4000.0, pitch_deg=0.0) == 4000.0


def test_degrees_meet_trigonometry_the_same_way_everywhere() -> None:
    assert isclose(0.5, sin_deg(30.0), rel_tol=1e-12)
    assert isclose(0.5, cos_deg(60.0), rel_tol=1e-12)
    assert isclose(1.0, tan_deg(45.0), rel_tol=1e-12)
    assert isclose(135.0, atan2_deg(1.0, -1.0), rel_tol=1e-12)
    assert length_mm(3.0, -4.0) == 5.0
