"""The proof of a closed roof finds what is tampered with."""

import pytest

from gaugerod.basis.errors import RoofWillNotClose
from gaugerod.geometry.plan_outline import PitchedWall
from gaugerod.geometry.roof_skin import skin_of
from gaugerod.geometry.wavefront.sweep import Sweep
from gaugerod.geometry.wavefront.trace import Trace
from gaugerod.geometry.wavefront.wall_fronts import fronts_of_walls

HOUSE = [(-5000.0, -4000.0), (5000.0, -4000.0), (5000.0, 4000.0), (-5000.0, 4000.0)]
FOOTPRINT_MM2 = 80e6


@pytest.fixture
def trace() -> Trace:
    start = fronts_of_walls([HOUSE], [PitchedWall(pitch_deg=45.0)] * 4, tolerance_mm=1e-4)
    sweep = Sweep(start.fronts, tolerance_mm=1e-4, cheeks_allowed=False, origin_mm=(0.0, 0.0))
    return sweep.run([HOUSE], start.front_of_wall, from_mm=0.0)


def test_a_sound_roof_passes(trace: Trace) -> None:
    skin = skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4)
    assert len(skin.faces) == 4
    assert len(skin.face_of_side) == 14


@pytest.mark.parametrize(("lift_mm", "found"), [(0.0003, False), (0.0005, True), (3.0, True)])
def test_a_corner_off_its_plane_is_found(trace: Trace, lift_mm: float, *, found: bool) -> None:
    x, y, height = trace.nodes[-1]
    trace.nodes[-1] = (x, y, height + lift_mm)
    if found:
        with pytest.raises(RoofWillNotClose, match="leaves the plane"):
            skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4)
    else:
        assert len(skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4).faces) == 4


def test_a_missing_side_is_found(trace: Trace) -> None:
    trace.sides[0].pop()
    with pytest.raises(RoofWillNotClose, match="torn"):
        skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4)


def test_a_missing_slope_is_found(trace: Trace) -> None:
    trace.sides[0].clear()
    with pytest.raises(RoofWillNotClose, match="on one side only"):
        skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4)


def test_a_slope_inside_out_is_found(trace: Trace) -> None:
    trace.sides[0] = [(end, start) for start, end in trace.sides[0]]
    with pytest.raises(RoofWillNotClose, match="inside out"):
        skin_of(trace, footprint_mm2=FOOTPRINT_MM2, tolerance_mm=1e-4)


def test_a_wrong_footprint_is_found(trace: Trace) -> None:
    with pytest.raises(RoofWillNotClose, match="on plan"):
        skin_of(trace, footprint_mm2=FOOTPRINT_MM2 + 10.0, tolerance_mm=1e-4)
