"""Roofs against three tables of derived figures: arithmetic in metres, checked by mesh area and by a second library.

No print stands behind these tables: they catch slips of ours and are no evidence of what the trade does.
"""

from csv import DictReader
from pathlib import Path

import pytest

from gaugerod.geometry.plan_outline import GableWall, PitchedWall, PlanOutline, Wall
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofLine, RoofSlope
from gaugerod.geometry.roof_form import roof_form

Row = dict[str, str]
IN_LINE_EAVES = {"T_14x6_stem5x5"}
"""Plans whose in-line eaves share a slope: the table counts a seam up the middle of that one plane, a roof has none."""


def rows(name: str) -> list[Row]:
    with (Path(__file__).parent / "derived" / f"{name}.csv").open(encoding="utf-8") as table:
        return list(DictReader(table))


def over(corners_m: list[tuple[float, float]], walls: list[Wall]) -> RoofForm:
    return roof_form(PlanOutline(outer_mm=tuple((1000 * x, 1000 * y) for x, y in corners_m), walls=tuple(walls)))


def close(figure: str, off: float = 1e-6) -> object:
    """A printed figure, half its last place allowed."""
    return pytest.approx(float(figure), abs=off)


def area_m2(slope: RoofSlope) -> float:
    return slope.area_mm2 / 1e6


def metres(lines: tuple[RoofLine, ...]) -> float:
    return sum(line.length_mm for line in lines) / 1e3


@pytest.mark.parametrize(
    "row", rows("hip_roofs"), ids=lambda row: f"{row['L']}x{row['B']}-{row['pitch_main']}-{row['pitch_end']}"
)
def test_a_hipped_rectangle_agrees_with_the_table(row: Row) -> None:
    long_m, deep_m = float(row["L"]), float(row["B"])
    main, end = PitchedWall(pitch_deg=float(row["pitch_main"])), PitchedWall(pitch_deg=float(row["pitch_end"]))
    form = over([(0, 0), (long_m, 0), (long_m, deep_m), (0, deep_m)], [main, end, main, end])
    hip = next(line for line in form.hips if {line.left, line.right} == {0, 1})
    assert (hip.left, hip.right) == (0, 1)
    assert close(row["hip_len"]) == hip.length_mm / 1e3
    assert close(row["hip_slope_deg"], 1e-4) == hip.slope_deg
    assert close(row["hip_dihedral_deg"], 1e-4) == hip.dihedral_deg
    assert 180 - hip.dihedral_deg == pytest.approx(hip.backing_left_deg + hip.backing_right_deg)
    assert close(row["angle_hip_to_eaves_in_main_plane_deg"], 1e-4) == hip.cut_left_deg
    assert close(row["angle_hip_to_eaves_in_end_plane_deg"], 1e-4) == hip.cut_right_deg
    assert close(row["hips_total"], 4e-6) == metres(form.hips)
    assert close(row["ridge"]) == metres(form.ridges)
    assert close(row["rise"]) == max(height for *_, height in form.slopes[0].space_mm) / 1e3
    assert close(row["rafter_main"]) == max(y for _, y in form.slopes[0].outline_mm) / 1e3
    assert close(row["rafter_end"]) == max(y for _, y in form.slopes[1].outline_mm) / 1e3
    assert close(row["area_main_each"]) == area_m2(form.slopes[0])
    assert close(row["area_end_each"]) == area_m2(form.slopes[1])
    assert close(row["area_total"], 2e-6) == form.area_mm2 / 1e6


@pytest.mark.parametrize("row", rows("valley_roofs"), ids=lambda row: f"{row['L']}x{row['B']}-{row['pitch']}")
def test_a_gabled_wing_agrees_with_the_table(row: Row) -> None:
    long_m, deep_m, left_m = float(row["L"]), float(row["B"]), float(row["x0"])
    right_m, out_m = left_m + float(row["wing_W"]), float(row["wing_projection"])
    slope, gable = PitchedWall(pitch_deg=float(row["pitch"])), GableWall()
    form = over(
        [
            (0, 0),
            (left_m, 0),
            (left_m, -out_m),
            (right_m, -out_m),
            (right_m, 0),
            (long_m, 0),
            (long_m, deep_m),
            (0, deep_m),
        ],
        [slope, slope, gable, slope, slope, gable, slope, gable],
    )
    for valley in form.valleys:
        assert close(row["valley_len"]) == valley.length_mm / 1e3
        assert close(row["valley_slope_deg"], 1e-4) == valley.slope_deg
        assert close(row["valley_each_side_interior_angle_deg"], 1e-4) == 360 - valley.dihedral_deg
    assert len(form.valleys) == 2
    wing = [face for face in form.slopes if face.walls in {(1,), (3,)}]
    for face in wing:
        assert close(row["wing_slope_area_each"]) == area_m2(face)
    wing_ridge = next(line for line in form.ridges if {line.left, line.right} == {face.number for face in wing})
    assert close(row["wing_ridge_len"]) == wing_ridge.length_mm / 1e3
    assert close(row["main_front_area"]) == sum(area_m2(face) for face in form.slopes if set(face.walls) & {0, 4})
    assert close(row["area_total"], 2e-6) == form.area_mm2 / 1e6
    top_m = max(height for *_, height in form.slopes[-1].space_mm) / 1e3
    back = next(face for face in form.slopes if face.walls == (6,))
    ridge_m = sum(
        abs(to[0] - here[0]) / 1e3
        for here, to in zip(back.space_mm, (*back.space_mm[1:], back.space_mm[0]), strict=True)
        if min(here[2], to[2]) / 1e3 > top_m - 1e-6
    )
    assert close(row["ridge_main"]) == ridge_m


@pytest.mark.parametrize("row", rows("skeleton_hip_roofs"), ids=lambda row: f"{row['plan']}-{row['pitch']}")
def test_a_hipped_plan_of_any_shape_agrees_with_the_table(row: Row) -> None:
    corners = [(float(x), float(y)) for x, y in (corner.split(",") for corner in row["vertices"].split(" "))]
    form = over(corners, [PitchedWall(pitch_deg=float(row["pitch"]))] * len(corners))
    assert close(row["roof_area"], 1e-5) == form.area_mm2 / 1e6
    assert close(row["level_ridges"], 2e-6) == metres(form.ridges)
    from_eaves = [line for line in form.lines if line.foot_mm[2] == 0]
    hips = tuple(line for line in from_eaves if line.kind is RoofEdge.HIP)
    valleys = tuple(line for line in from_eaves if line.kind is RoofEdge.VALLEY)
    assert (int(row["n_hips"]), int(row["n_valleys"])) == (len(hips), len(valleys))
    assert close(row["hips_from_eaves"], 5e-6) == metres(hips)
    assert close(row["valleys_from_eaves"], 5e-6) == metres(valleys)
    inner = tuple(line for line in form.lines if line.foot_mm[2] > 0 and line.kind is not RoofEdge.RIDGE)
    if row["plan"] not in IN_LINE_EAVES:
        assert close(row["inner_sloping_edges"], 5e-6) == metres(inner)
    assert close(row["max_height"]) == max(height for slope in form.slopes for *_, height in slope.space_mm) / 1e3
    eaves_mm = sum(
        abs(slope.outline_mm[(at + 1) % len(slope.outline_mm)][0] - slope.outline_mm[at][0])
        for slope in form.slopes
        for at, side in enumerate(slope.sides)
        if side.kind is RoofEdge.EAVES
    )
    assert close(row["eaves"]) == eaves_mm / 1e3
