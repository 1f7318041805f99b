"""Random plans: every roof is right, by a proof that shares nothing with the program's own, or refused with a reason."""

from collections import Counter
from math import hypot, radians, tan

import pytest
from shapely import Polygon
from shapely.ops import unary_union

from gaugerod.basis.errors import RoofAsks, RoofWillNotClose
from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofSlope
from gaugerod.geometry.roof_form import roof_form
from tests.property.random_plans import LOADS, SHAPES, dice, random_plan

KINDS = [(shape, load) for shape in SHAPES for load in LOADS]
SLACK_MM = 0.05


def assert_whole(plan: PlanOutline, form: RoofForm) -> None:
    footprint = Polygon(plan.outer_mm, plan.holes_mm)
    faces = [Polygon(slope.plan_mm) for slope in form.slopes]
    assert all(face.is_valid for face in faces) or min(face.buffer(0).area / face.area for face in faces) > 1 - 1e-6
    around_mm = footprint.length
    assert footprint.area == pytest.approx(sum(face.area for face in faces), abs=SLACK_MM * around_mm)
    covered = unary_union([face.buffer(SLACK_MM / 10) for face in faces])
    assert footprint.difference(covered).area < SLACK_MM * around_mm
    for slope in form.slopes:
        assert_on_its_plane(plan, slope)
        assert_rises_from_its_walls(plan, slope)
    assert_edges_shared_by_two(form)


def assert_on_its_plane(plan: PlanOutline, slope: RoofSlope) -> None:
    """By the wall's own line and pitch; above a change of pitch, by the slope's stated pitch alone."""
    wall = plan.walls[slope.walls[0]]
    assert isinstance(wall, PitchedWall)
    if any(side.kind is RoofEdge.CHANGE_OF_PITCH for side in slope.sides) and slope.sides[0].kind is not RoofEdge.EAVES:
        assert any(slope.pitch_deg == pytest.approx(step.pitch_deg) for step in wall.changes)
        foot_mm = slope.space_mm[0][2]
    else:
        assert slope.pitch_deg == pytest.approx(wall.pitch_deg, abs=1e-9)
        foot_mm = wall.eaves_height_mm
    (ax, ay), (bx, by) = wall_ends(plan, slope.walls[0])
    long_mm = hypot(bx - ax, by - ay)
    x0, y0, _ = slope.space_mm[0]
    for x, y, height_mm in slope.space_mm:
        in_mm = ((bx - ax) * (y - y0) - (by - ay) * (x - x0)) / long_mm
        assert height_mm == pytest.approx(foot_mm + in_mm * tan(radians(slope.pitch_deg)), abs=SLACK_MM)


def wall_ends(plan: PlanOutline, wall: int) -> tuple[tuple[float, float], tuple[float, float]]:
    for ring in plan.rings_mm:
        if wall < len(ring):
            return ring[wall], ring[(wall + 1) % len(ring)]
        wall -= len(ring)
    raise AssertionError("no such wall")


def assert_rises_from_its_walls(plan: PlanOutline, slope: RoofSlope) -> None:
    assert slope.walls
    on_ground = {side.wall for side in slope.sides if side.wall is not None}
    assert on_ground <= set(slope.walls)
    corners = slope.plan_mm
    for side, corner, onward in zip(slope.sides, corners, (*corners[1:], corners[0]), strict=True):
        if side.wall is not None:
            start, end = wall_ends(plan, side.wall)
            assert start == pytest.approx(corner, abs=1e-6)
            assert end == pytest.approx(onward, abs=1e-6)


def assert_edges_shared_by_two(form: RoofForm) -> None:
    for slope in form.slopes:
        for side in slope.sides:
            neighbours = [side.slope is not None, side.upright is not None, side.wall is not None]
            assert sum(neighbours) == 1
            if side.slope is not None:
                back = [other for other in form.slopes[side.slope].sides if other.slope == slope.number]
                assert side.kind in {other.kind for other in back}
    shared = Counter(
        tuple(sorted((slope.number, side.slope)))
        for slope in form.slopes
        for side in slope.sides
        if side.slope is not None
    )
    assert all(count % 2 == 0 for count in shared.values())
    assert len(form.lines) * 2 == sum(shared.values())


def try_plan(shape: str, load: str, seed: int) -> str:
    plan = random_plan(dice(f"{shape} {load} {seed}"), shape=shape, load=load)
    try:
        form = roof_form(plan, cheeks="allow")
    except RoofWillNotClose as refused:
        (least_x, least_y, most_x, most_y) = Polygon(plan.outer_mm).bounds
        x_mm, y_mm = refused.where_mm
        assert least_x - 1 <= x_mm <= most_x + 1
        assert least_y - 1 <= y_mm <= most_y + 1
        return "only upright walls" if "only upright walls" in refused.why else "will not close"
    assert_whole(plan, form)
    for finding in form.findings:
        assert finding.rule == "eaves in line"
    if form.findings:
        with pytest.raises(RoofAsks, match="Choose: "):
            roof_form(plan)
    else:
        assert form == roof_form(plan)
    return "right"


@pytest.mark.parametrize(("shape", "load"), KINDS)
def test_a_few_roofs_of_every_kind_are_right_or_refused_with_a_reason(shape: str, load: str) -> None:
    answers = Counter(try_plan(shape, load, seed) for seed in range(5))
    assert answers["will not close"] == 0


@pytest.mark.slow
@pytest.mark.parametrize(("shape", "load"), KINDS)
def test_six_thousand_roofs_are_right_or_refused_with_a_reason(shape: str, load: str) -> None:
    answers = Counter(try_plan(shape, load, seed) for seed in range(172))
    assert answers["will not close"] <= 1
    if "gables" not in load:
        assert answers["right"] >= 170
