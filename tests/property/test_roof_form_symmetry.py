"""A roof does not depend on where the plan lies, which way it is turned or mirrored, or at which corner its list starts."""

import pytest

from gaugerod.geometry.plan_outline import PitchedWall, PlanOutline
from gaugerod.geometry.roof_faces import RoofForm
from gaugerod.geometry.roof_form import roof_form
from tests.property.random_plans import dice, plan_of, random_plan, turned

CASES = [("rectilinear", "weighted"), ("rectilinear", "uniform"), ("star14", "weighted"), ("convex", "weighted")]
SEEDS = range(10)


def measured(form: RoofForm, *, scale: float = 1.0) -> list[tuple[str, float, float]]:
    """The slopes and lines of a roof as figures that no turning changes, in order."""
    slopes = [("slope", slope.area_mm2 / scale**2 / 1e6, slope.pitch_deg) for slope in form.slopes]
    lines = [(line.kind.value, line.length_mm / scale / 1e3, line.dihedral_deg) for line in form.lines]
    return sorted((kind, round(size, 6), round(angle, 6)) for kind, size, angle in [*slopes, *lines])


def same(one: list[tuple[str, float, float]], other: list[tuple[str, float, float]]) -> None:
    assert [kind for kind, *_ in one] == [kind for kind, *_ in other]
    for (_, *figures), (_, *other_figures) in zip(one, other, strict=True):
        assert figures == pytest.approx(other_figures, abs=2e-5)


@pytest.fixture(params=[(shape, load, seed) for shape, load in CASES for seed in SEEDS], ids=str)
def plan(request: pytest.FixtureRequest) -> PlanOutline:
    shape, load, seed = request.param
    return random_plan(dice(f"symmetry {shape} {load} {seed}"), shape=shape, load=load)


def test_turning_and_moving_the_plan_changes_nothing(plan: PlanOutline) -> None:
    was = measured(roof_form(plan, cheeks="allow"))
    for angle_deg, x_mm, y_mm in ((90.0, 0.0, 0.0), (33.0, 4e6, -7e6)):
        rings = turned(plan.rings_mm, angle_deg=angle_deg, to_mm=False)
        moved = tuple(tuple((x + x_mm, y + y_mm) for x, y in ring) for ring in rings)
        same(was, measured(roof_form(plan_of(moved, plan.walls), cheeks="allow")))


def test_a_mirrored_plan_has_the_same_slopes_and_lines(plan: PlanOutline) -> None:
    rings = tuple(tuple((-x, y) for x, y in reversed(ring)) for ring in plan.rings_mm)
    walls = []
    first = 0
    for ring in plan.rings_mm:
        own = plan.walls[first : first + len(ring)]
        walls += [*reversed(own[:-1]), own[-1]]
        first += len(ring)
    same(measured(roof_form(plan, cheeks="allow")), measured(roof_form(plan_of(rings, tuple(walls)), cheeks="allow")))


def test_a_plan_three_times_as_large_has_nine_times_the_area(plan: PlanOutline) -> None:
    rings = tuple(tuple((3 * x, 3 * y) for x, y in ring) for ring in plan.rings_mm)
    scaled = roof_form(plan_of(rings, plan.walls), cheeks="allow")
    same(measured(roof_form(plan, cheeks="allow")), measured(scaled, scale=3.0))


def test_the_corner_a_ring_starts_at_does_not_matter(plan: PlanOutline) -> None:
    was = measured(roof_form(plan, cheeks="allow"))
    count = len(plan.outer_mm)
    for by in (1, count // 2):
        outer = (*plan.outer_mm[by:], *plan.outer_mm[:by])
        walls = (*plan.walls[by:count], *plan.walls[:by], *plan.walls[count:])
        same(was, measured(roof_form(plan_of((outer, *plan.holes_mm), walls), cheeks="allow")))


def test_a_symmetrical_plan_gives_a_symmetrical_roof() -> None:
    cross = ((3, 0), (6, 0), (6, 3), (9, 3), (9, 6), (6, 6), (6, 9), (3, 9), (3, 6), (0, 6), (0, 3), (3, 3))
    outer = tuple((1000.0 * x, 1000.0 * y) for x, y in cross)
    form = roof_form(PlanOutline(outer_mm=outer, walls=(PitchedWall(pitch_deg=35.0),) * 12))
    assert len({round(line.length_mm, 6) for line in form.valleys}) == 1
    assert len({round(line.length_mm, 6) for line in form.hips}) == 1
    corners = {(round(x, 6), round(y, 6)) for slope in form.slopes for x, y in slope.plan_mm}
    assert corners == {(9000.0 - x, y) for x, y in corners} == {(y, x) for x, y in corners}
