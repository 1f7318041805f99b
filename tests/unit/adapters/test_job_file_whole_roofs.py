"""Buildings and slopes by outline: what the file says is what the job holds."""

import tomllib
from math import isclose
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.job_file.read import read_job, read_job_document
from gaugerod.basis.errors import InputRefused
from gaugerod.geometry.plan_outline import GableWall, PitchedWall
from gaugerod.geometry.roof_form import roof_form
from gaugerod.job.model import TopKind
from gaugerod.job.set_out import set_out
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.across import SideKind

JOBS = Path(__file__).parents[2] / "faults" / "jobs"
EXAMPLES = Path(__file__).parents[3] / "src" / "gaugerod" / "adapters" / "job_file" / "examples"


def document(name: str) -> dict[str, Any]:
    return tomllib.loads((JOBS / name).read_text("utf-8"))


def test_a_building_reaches_the_job_wall_by_wall() -> None:
    (building,) = read_job(JOBS / "building-sound.toml").buildings
    pitched, gable = PitchedWall(pitch_deg=40.0, overhang_mm=300.0), GableWall(overhang_mm=0.0)
    assert ("house", "ask", None) == (building.name, building.cheeks, building.rafter_spacing_mm)
    assert ((0.0, 0.0), (9000.0, 0.0), (9000.0, 6000.0), (0.0, 6000.0)) == building.plan.outer_mm
    assert (pitched, gable, pitched, gable) == building.plan.walls


def test_one_overhang_goes_to_the_eaves_and_the_verge_has_its_own() -> None:
    job = document("building-sound.toml")
    job["building"][0]["verge_overhang"] = "50 mm"
    (building,) = read_job_document(job).buildings
    assert [300.0, 50.0, 300.0, 50.0] == [wall.overhang_mm for wall in building.plan.walls]


def test_each_wall_may_have_its_own_overhang_and_height() -> None:
    job = document("building-sound.toml")
    job["building"][0] |= {"overhang": [300, 40, 250, 60], "eaves_height": ["2.4 m", "gable", "3 m", "gable"]}
    (building,) = read_job_document(job).buildings
    front, _, rear, _ = building.plan.walls
    assert [300.0, 40.0, 250.0, 60.0] == [wall.overhang_mm for wall in building.plan.walls]
    assert isinstance(front, PitchedWall)
    assert isinstance(rear, PitchedWall)
    assert (2400.0, 3000.0) == (front.eaves_height_mm, rear.eaves_height_mm)


def test_the_walls_of_a_hole_follow_those_of_the_outline() -> None:
    job = document("building-sound.toml")
    job["building"][0] |= {
        "holes": [[["3 m", "2 m"], ["3 m", "4 m"], ["6 m", "4 m"], ["6 m", "2 m"]]],
        "pitch": ["40°", "40°", "40°", "40°", "30°", "30°", "30°", "30°"],
    }
    plan = read_job_document(job).buildings[0].plan
    assert ((3000.0, 2000.0), (3000.0, 4000.0), (6000.0, 4000.0), (6000.0, 2000.0)) == plan.holes_mm[0]
    assert [40.0] * 4 + [30.0] * 4 == [wall.pitch_deg for wall in plan.walls if isinstance(wall, PitchedWall)]


def test_a_slope_by_outline_starts_at_the_left_end_of_its_lowest_eaves() -> None:
    job = document("outline-sound.toml")
    job["slope"][0]["outline"] = [["1 m", "2 m"], ["10 m", "2 m"], ["7 m", "6 m"], ["4 m", "6 m"]]
    (slope,) = read_job_document(job).slopes
    assert slope.outline is not None
    assert ((0.0, 0.0), (9000.0, 0.0), (6000.0, 4000.0), (3000.0, 4000.0)) == slope.outline.points_mm
    assert (EdgeKind.EAVES, EdgeKind.HIP, EdgeKind.RIDGE, EdgeKind.HIP) == slope.outline.kinds
    assert (SideKind.HIP, SideKind.HIP, TopKind.RIDGE) == (slope.left, slope.right, slope.top)
    assert ["rooflight"] == [opening.name for opening in slope.openings]


@pytest.mark.parametrize(
    ("edge", "top"),
    [("ridge", TopKind.RIDGE), ("mono-ridge", TopKind.MONO_RIDGE), ("abutment", TopKind.ABUTMENT)],
)
def test_the_head_of_an_outline_is_what_its_top_edge_says(edge: str, top: TopKind) -> None:
    job = document("outline-sound.toml")
    job["slope"][0]["edges"][2] = edge
    assert top == read_job_document(job).slopes[0].top


def test_eaves_out_of_level_by_as_much_as_is_allowed_are_eaves() -> None:
    job = document("outline-sound.toml")
    for rise_mm in (10.0, -10.0):
        job["slope"][0]["outline"][1] = [9000, rise_mm]
        assert read_job_document(job).slopes
    for rise_mm in (10.001, -10.001):
        job["slope"][0]["outline"][1] = [9000, rise_mm]
        with pytest.raises(InputRefused, match="level within 10 mm"):
            read_job_document(job)


def test_the_hipped_house_has_the_area_of_its_plan_over_the_cosine_of_its_pitch() -> None:
    job = read_job(EXAMPLES / "hipped-house.toml")
    form = roof_form(job.buildings[0].plan)
    # Eaves line: 13.0 by 7.8 m and a wing 7.4 m wide that reaches 4.15 m further; cos 35° = 0.8191520443.
    plan_m2 = 13.0 * 7.8 + 7.4 * (11.65 - 7.5)
    assert isclose(plan_m2 / 0.8191520442889918, form.area_mm2 / 1e6, rel_tol=1e-9)
    assert (2, 1, 1) == (len(form.ridges), len(form.valleys), len(form.gables))


def test_the_hipped_house_is_set_out_and_every_slope_is_laid() -> None:
    result = set_out(read_job(EXAMPLES / "hipped-house.toml"))
    assert ["house 1", "house 2", "house 3", "house 4", "house 5"] == [slope.slope.name for slope in result.slopes]
    for slope in result.slopes:
        assert slope.laid is not None
        assert isclose(0.0, slope.laid.laying.bare_mm2, abs_tol=1.0)
    assert not result.anything_outside


def test_slopes_by_outline_are_set_out() -> None:
    (slope,) = set_out(read_job(JOBS / "outline-sound.toml")).slopes
    assert isclose(24.0, slope.shape.area_mm2 / 1e6)
    assert slope.laid is not None
