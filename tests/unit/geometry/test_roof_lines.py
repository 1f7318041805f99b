from math import cos, radians, sin, tan

import pytest

from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.roof_faces import RoofEdge
from gaugerod.geometry.roof_form import roof_form
from gaugerod.geometry.roof_lines import RIDGE_UNTIL_DEG, line_between
from gaugerod.geometry.slope_plane import SpacePoint, slope_plane


@pytest.mark.parametrize(("off_deg", "kind"), [(-0.001, RoofEdge.RIDGE), (0.0, RoofEdge.RIDGE), (0.001, RoofEdge.HIP)])
def test_a_line_that_falls_away_on_both_sides_is_a_ridge_up_to_half_a_degree(off_deg: float, kind: RoofEdge) -> None:
    """Eaves turned just so far from parallel that the line between two 40° slopes rises by the angle wanted."""
    wanted = RIDGE_UNTIL_DEG + off_deg - 1e-9
    off = tan(radians(wanted)) / tan(radians(40.0))  # the sine of the angle between line and each eaves
    length = 10_000.0
    side = (1 - off**2) ** 0.5
    head: SpacePoint = (-length, 0.0, length * tan(radians(wanted)))
    south, north = (slope_plane((0.0, 0.0, 0.0), along=along, pitch_deg=40.0) for along in ((side, off), (-side, off)))
    assert south.height_over_plan_mm(head[:2]) == pytest.approx(head[2])
    assert north.height_over_plan_mm(head[:2]) == pytest.approx(head[2])
    line = line_between(
        south,
        north,
        foot_mm=(0.0, 0.0, 0.0),
        head_mm=head,
        left_number=0,
        right_number=1,
    )
    assert line.slope_deg == pytest.approx(wanted)
    assert line.kind is kind


@pytest.mark.parametrize("corner_deg", [60.0, 90.0, 120.0, 150.0])
@pytest.mark.parametrize("pitch_deg", [22.5, 45.0, 60.0])
def test_hips_at_any_corner_follow_the_plan_angle_formulas(corner_deg: float, pitch_deg: float) -> None:
    """Hip rise: tan pitch · sin plan angle; backing: sin pitch · cos plan angle; cut: tan plan angle / cos pitch."""
    x, y = 9000.0 * cos(radians(corner_deg)), 9000.0 * sin(radians(corner_deg))
    outer = ((0.0, 0.0), (9000.0, 0.0), (x, y))
    form = roof_form(PlanOutline(outer_mm=outer, walls=(PitchedWall(pitch_deg=pitch_deg),) * 3))
    hip = next(line for line in form.hips if line.foot_mm == (0.0, 0.0, 0.0))
    plan_angle, pitch = radians(corner_deg / 2), radians(pitch_deg)
    assert tan(radians(hip.slope_deg)) == pytest.approx(tan(pitch) * sin(plan_angle))
    for backing_deg in (hip.backing_left_deg, hip.backing_right_deg):
        assert sin(radians(backing_deg)) == pytest.approx(sin(pitch) * cos(plan_angle))
    for cut_deg in (hip.cut_left_deg, hip.cut_right_deg):
        assert tan(radians(cut_deg)) == pytest.approx(tan(plan_angle) / cos(pitch))
    assert hip.dihedral_deg == pytest.approx(180 - hip.backing_left_deg - hip.backing_right_deg)


def test_with_unlike_pitches_the_two_backings_still_make_up_the_dihedral() -> None:
    outer = ((0.0, 0.0), (12000.0, 0.0), (12000.0, 5000.0), (6000.0, 5000.0), (6000.0, 10000.0), (0.0, 10000.0))
    walls = tuple(PitchedWall(pitch_deg=pitch_deg) for pitch_deg in (30.0, 50.0, 35.0, 45.0, 60.0, 40.0))
    lines = roof_form(PlanOutline(outer_mm=outer, walls=walls)).lines
    assert {RoofEdge.HIP, RoofEdge.VALLEY} <= {line.kind for line in lines}
    for line in lines:
        assert line.dihedral_deg == pytest.approx(180 - line.backing_left_deg - line.backing_right_deg)
