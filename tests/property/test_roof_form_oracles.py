"""Roofs against other ways to the same answer: least of all planes, mitred offsets, a skeleton library, running water."""

from math import hypot, radians, tan
from random import Random

import pytest
from py_straight_skeleton import compute_skeleton
from shapely import Point, Polygon
from shapely.ops import unary_union

from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.polygon import part_left_of_line
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofSlope
from gaugerod.geometry.roof_form import roof_form
from tests.property.random_plans import dice, random_plan

SEEDS = range(25)


def plan_and_form(shape: str, load: str, seed: int) -> tuple[PlanOutline, RoofForm]:
    plan = random_plan(dice(f"oracle {shape} {load} {seed}"), shape=shape, load=load)
    return plan, roof_form(plan, cheeks="allow")


def points_inside(rng: Random, slope: RoofSlope, count: int) -> list[tuple[float, float]]:
    face = Polygon(slope.plan_mm)
    least_x, least_y, most_x, most_y = face.bounds
    found: list[tuple[float, float]] = []
    for _ in range(20 * count):
        x, y = rng.uniform(least_x, most_x), rng.uniform(least_y, most_y)
        if len(found) < count and face.contains(Point(x, y)) and face.exterior.distance(Point(x, y)) > 1.0:
            found.append((x, y))
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_over_a_plan_without_inner_corners_the_roof_is_the_least_of_all_planes(seed: int) -> None:
    plan, form = plan_and_form("convex", "weighted", seed)
    ring = plan.outer_mm

    def least_mm(x: float, y: float) -> float:
        heights = []
        for (ax, ay), (bx, by), wall in zip(ring, (*ring[1:], ring[0]), plan.walls, strict=True):
            assert isinstance(wall, PitchedWall)
            in_mm = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / hypot(bx - ax, by - ay)
            heights.append(in_mm * tan(radians(wall.pitch_deg)))
        return min(heights)

    for slope in form.slopes:
        for x, y, height_mm in slope.space_mm:
            assert height_mm == pytest.approx(least_mm(x, y), abs=1e-3)
        for x, y in points_inside(dice(f"{seed}"), slope, 5):
            assert slope.plane.height_over_plan_mm((x, y)) == pytest.approx(least_mm(x, y), abs=1e-6)


@pytest.mark.parametrize("shape", ["rectilinear", "star8"])
@pytest.mark.parametrize("seed", SEEDS)
def test_at_one_pitch_the_level_lines_are_the_outline_moved_in_with_mitred_corners(shape: str, seed: int) -> None:
    plan, form = plan_and_form(shape, "uniform", seed)
    top_mm = max(height for slope in form.slopes for *_, height in slope.space_mm)
    run_ratio = 1 / tan(radians(form.slopes[0].pitch_deg))
    for share in (0.1, 0.35, 0.6, 0.9):
        above = 0.0
        for slope in form.slopes:
            # the part of the slope above a height, cut off by the level line walked with the higher side on its left
            (left_x, left_y, _), (tx, ty) = slope.plane.left_end_mm, slope.plane.along
            in_mm = share * top_mm * run_ratio
            start = (left_x - ty * in_mm, left_y + tx * in_mm)
            part = part_left_of_line(slope.plan_mm, start, (start[0] + tx * 1000.0, start[1] + ty * 1000.0))
            above += Polygon(part).area if part else 0.0
        moved_in = Polygon(plan.outer_mm, plan.holes_mm).buffer(
            -share * top_mm * run_ratio, join_style="mitre", mitre_limit=1e6
        )
        assert above == pytest.approx(moved_in.area, rel=1e-6, abs=2000.0)


@pytest.mark.parametrize("shape", ["rectilinear", "star8"])
@pytest.mark.parametrize("seed", SEEDS)
def test_at_one_pitch_the_nodes_are_those_of_a_skeleton_library(shape: str, seed: int) -> None:
    plan, form = plan_and_form(shape, "uniform", seed)
    try:
        skeleton = compute_skeleton(
            [list(corner) for corner in plan.outer_mm], [[list(corner) for corner in hole] for hole in plan.holes_mm]
        )
    except Exception as fault:  # noqa: BLE001 - the library fails on plans with many events at one height, each in its own way
        pytest.skip(f"the library cannot do this plan: {type(fault).__name__}")
    rise_ratio = tan(radians(form.slopes[0].pitch_deg))
    own = {corner for slope in form.slopes for corner in slope.space_mm}
    for node in skeleton.nodes:
        x, y, height_mm = node.position.x, node.position.y, node.time * rise_ratio
        on_own = min(max(abs(x - at[0]), abs(y - at[1]), abs(height_mm - at[2])) for at in own)
        if on_own > 1.0:  # the library keeps a node where two slopes of one plane meet; the roof has none there
            assert abs(height_over(form, x, y) - height_mm) < 1.0


def height_over(form: RoofForm, x: float, y: float) -> float:
    nearest = min(form.slopes, key=lambda slope: Polygon(slope.plan_mm).distance(Point(x, y)))
    return nearest.plane.height_over_plan_mm((x, y))


@pytest.mark.parametrize(("shape", "load"), [("rectilinear", "uniform"), ("star14", "uniform"), ("star14", "weighted")])
@pytest.mark.parametrize("seed", range(12))
def test_water_leaves_every_slope_by_its_eaves_or_a_valley(shape: str, load: str, seed: int) -> None:
    """With unlike pitches it may also run over a hip, but only onto a steeper slope."""
    _, form = plan_and_form(shape, load, seed)
    for slope in form.slopes:
        for x_mm, y_mm in (slope.plane.from_plan(point) for point in points_inside(dice(f"{seed}"), slope, 4)):
            way_out = exit_below(slope, x_mm, y_mm)
            side = slope.sides[way_out]
            if side.kind in {RoofEdge.EAVES, RoofEdge.VALLEY}:
                continue
            assert load == "weighted"
            assert side.kind is RoofEdge.HIP
            assert side.slope is not None
            assert form.slopes[side.slope].pitch_deg > slope.pitch_deg


def exit_below(slope: RoofSlope, x_mm: float, y_mm: float) -> int:
    """The side where a drop that runs straight down the slope from a point leaves it."""
    below: list[tuple[float, int]] = []
    corners = slope.outline_mm
    for at, ((ax, ay), (bx, by)) in enumerate(zip(corners, (*corners[1:], corners[0]), strict=True)):
        if (ax <= x_mm) != (bx <= x_mm):
            crossing_mm = ay + (by - ay) * (x_mm - ax) / (bx - ax)
            if crossing_mm < y_mm:
                below.append((crossing_mm, at))
    return max(below)[1]


@pytest.mark.parametrize("seed", range(10))
def test_slopes_cover_the_plan_once(seed: int) -> None:
    plan, form = plan_and_form("survey", "weighted", seed)
    faces = [Polygon(slope.plan_mm).buffer(-0.01) for slope in form.slopes]
    assert unary_union(faces).area == pytest.approx(sum(face.area for face in faces), rel=1e-9)
    assert Polygon(plan.outer_mm, plan.holes_mm).area == pytest.approx(sum(face.plan_area_mm2 for face in form.slopes))
