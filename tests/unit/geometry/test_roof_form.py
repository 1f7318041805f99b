"""Roofs a roofer knows, by name."""

import pytest

from gaugerod.basis.errors import InputRefused, RoofAsks, RoofWillNotClose
from gaugerod.basis.finding import Verdict
from gaugerod.geometry.plan_outline import ChangeOfPitch, GableWall, PitchedWall, PlanOutline, Wall
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofSlope, Upright
from gaugerod.geometry.roof_form import Cheeks, roof_form

HOUSE = ((0.0, 0.0), (10000.0, 0.0), (10000.0, 8000.0), (0.0, 8000.0))
SLOPE = PitchedWall(pitch_deg=45.0)
GABLE = GableWall()


def over(
    outer: tuple[Point, ...], *walls: Wall, holes: tuple[tuple[Point, ...], ...] = (), cheeks: Cheeks = "ask"
) -> RoofForm:
    return roof_form(PlanOutline(outer_mm=outer, walls=walls, holes_mm=holes), cheeks=cheeks)


def kinds(slope: RoofSlope) -> list[str]:
    return [side.kind.value for side in slope.sides]


def close(*corners: tuple[float, ...]) -> list[object]:
    return [pytest.approx(corner, abs=1e-6) for corner in corners]


def test_a_hipped_house() -> None:
    form = over(HOUSE, *[SLOPE] * 4)
    assert [kinds(slope) for slope in form.slopes] == [["eaves", "hip", "ridge", "hip"], ["eaves", "hip", "hip"]] * 2
    assert [slope.azimuth_deg for slope in form.slopes] == pytest.approx([180.0, 90.0, 0.0, 270.0])
    front = form.slopes[0]
    rafter_mm = 4000.0 * 2**0.5
    assert close((0, 0), (10000, 0), (6000, rafter_mm), (4000, rafter_mm)) == list(front.outline_mm)
    assert [side.slope for side in front.sides] == [None, 1, 2, 3]
    assert front.sides[0].wall == 0
    (ridge,) = form.ridges
    assert (ridge.length_mm, ridge.slope_deg, ridge.dihedral_deg) == pytest.approx((2000.0, 0.0, 90.0))
    assert (ridge.cut_left_deg, ridge.cut_right_deg) == pytest.approx((0.0, 0.0))
    assert (ridge.backing_left_deg, ridge.backing_right_deg) == pytest.approx((45.0, 45.0))
    for hip in form.hips:
        assert (hip.dihedral_deg, hip.backing_left_deg, hip.slope_deg) == pytest.approx((120.0, 30.0, 35.264390))


def test_a_pyramid_comes_to_one_point() -> None:
    form = over(((0.0, 0.0), (9000.0, 0.0), (9000.0, 9000.0), (0.0, 9000.0)), *[SLOPE] * 4)
    assert not form.ridges
    assert close(*[(4500.0, 4500.0, 4500.0)] * 4) == [hip.head_mm for hip in form.hips]


def test_a_gabled_house() -> None:
    form = over(HOUSE, SLOPE, GABLE, SLOPE, GABLE)
    assert [kinds(slope) for slope in form.slopes] == [["eaves", "verge", "ridge", "verge"]] * 2
    assert [face.walls for face in form.gables] == [(1,), (3,)]
    assert close((0, 0), (8000, 0), (4000, 4000)) == list(form.gables[0].outline_mm)
    assert [side.upright for side in form.slopes[0].sides] == [None, 0, None, 1]


def test_a_mono_pitch_roof_ends_at_its_back_wall() -> None:
    form = over(HOUSE, SLOPE, GABLE, GABLE, GABLE)
    assert [kinds(slope) for slope in form.slopes] == [["eaves", "verge", "mono-ridge", "verge"]]
    assert form.lines == ()


def test_a_wing_lower_than_the_house_leaves_one_front_slope_with_two_eaves() -> None:
    tee = ((0.0, 0.0), (3000.0, 0.0), (3000.0, -4000.0), (7000.0, -4000.0), (7000.0, 0.0), *HOUSE[1:])
    form = over(tee, *[SLOPE] * 8)
    front = form.slopes[0]
    assert front.walls == (0, 4)
    assert kinds(front) == ["eaves", "valley", "valley", "eaves", "hip", "ridge", "hip"]
    for valley in form.valleys:
        assert (valley.dihedral_deg, valley.backing_left_deg) == pytest.approx((120.0, 30.0))
        assert (valley.cut_left_deg, valley.slope_deg) == pytest.approx((54.735610, 35.264390))


def test_eaves_in_line_at_one_pitch_are_one_slope() -> None:
    form = over((HOUSE[0], (4000.0, 0.0), *HOUSE[1:]), *[SLOPE] * 5)
    assert form.slopes[0].walls == (0, 1)
    assert kinds(form.slopes[0]) == ["eaves", "eaves", "hip", "ridge", "hip"]


def test_eaves_in_line_at_two_pitches_are_asked_about() -> None:
    outer = (HOUSE[0], (4000.0, 0.0), *HOUSE[1:])
    walls = (SLOPE, PitchedWall(pitch_deg=30.0), SLOPE, SLOPE, SLOPE)
    with pytest.raises(RoofAsks, match="two slopes in one line") as caught:
        over(outer, *walls)
    assert caught.value.where_mm == pytest.approx((4000.0, 0.0))
    assert "allow an upright cheek between the slopes" in caught.value.choices
    form = over(outer, *walls, cheeks="allow")
    assert [face.walls for face in form.uprights if face.kind is Upright.CHEEK] == [()]
    (finding,) = form.findings
    assert finding.verdict is Verdict.NOT_COVERED
    assert "(4000, 0)" in finding.where
    kinds_at_cheek = {side.kind for slope in form.slopes for side in slope.sides if side.upright is not None}
    assert kinds_at_cheek == {RoofEdge.VERGE, RoofEdge.ABUTMENT}


@pytest.mark.parametrize(("back_mm", "asked"), [(15.0, True), (60.0, False)])
def test_eaves_within_half_a_degree_of_one_line_are_asked_about_too(back_mm: float, *, asked: bool) -> None:
    outer = (HOUSE[0], (5000.0, 0.0), (10000.0, back_mm), *HOUSE[2:])
    walls = (SLOPE, PitchedWall(pitch_deg=40.0), SLOPE, SLOPE, SLOPE)
    if asked:
        with pytest.raises(RoofAsks):
            over(outer, *walls)
    else:
        assert len(over(outer, *walls).slopes) == 5


def test_a_gable_flush_with_the_eaves_is_asked_about_and_a_return_of_a_few_millimetres_answers() -> None:
    flush = (HOUSE[0], (6000.0, 0.0), *HOUSE[1:])
    with pytest.raises(RoofAsks, match="what the return between them carries"):
        over(flush, SLOPE, GABLE, SLOPE, SLOPE, GABLE)
    stepped = (HOUSE[0], (6000.0, 0.0), (6000.0, -2.0), (10000.0, -2.0), *HOUSE[2:])
    form = over(stepped, SLOPE, SLOPE, GABLE, SLOPE, SLOPE, GABLE)
    wing = next(slope for slope in form.slopes if slope.walls == (1,))
    assert kinds(wing) == ["eaves", "verge", "ridge", "valley"]
    assert wing.outline_mm[1][0] == pytest.approx(2.0)


def test_a_courtyard_is_roofed_all_round() -> None:
    court = ((3000.0, 3000.0), (3000.0, 5000.0), (7000.0, 5000.0), (7000.0, 3000.0))
    form = over(HOUSE, *[SLOPE] * 8, holes=(court,))
    assert len(form.slopes) == 8
    assert len(form.valleys) == 4
    assert sum(slope.plan_area_mm2 for slope in form.slopes) == pytest.approx(72e6)


def test_a_half_hip_is_an_end_slope_with_its_eaves_part_way_up_the_gable() -> None:
    end = PitchedWall(pitch_deg=45.0, eaves_height_mm=2500.0)
    form = over(HOUSE, SLOPE, end, SLOPE, GABLE)
    assert kinds(form.slopes[0]) == ["eaves", "verge", "hip", "ridge", "verge"]
    half_hip = form.slopes[1]
    assert kinds(half_hip) == ["eaves", "hip", "hip"]
    assert half_hip.space_mm[0] == pytest.approx((10000.0, 2500.0, 2500.0))
    below = next(face for face in form.uprights if face.kind is Upright.WALL_BELOW_EAVES)
    assert close((0, 0), (8000, 0), (5500, 2500), (2500, 2500)) == list(below.outline_mm)
    assert half_hip.sides[0].upright == below.number


def test_a_sprocket_and_a_mansard_change_pitch_part_way_up() -> None:
    sprocket = PitchedWall(pitch_deg=30.0, changes=(ChangeOfPitch(rise_mm=500.0, pitch_deg=45.0),))
    form = over(HOUSE, sprocket, GABLE, sprocket, GABLE)
    lower, upper = (slope for slope in form.slopes if slope.walls == (0,))
    assert kinds(lower) == ["eaves", "verge", "change-of-pitch", "verge"]
    assert kinds(upper) == ["change-of-pitch", "verge", "ridge", "verge"]
    assert (lower.pitch_deg, upper.pitch_deg) == pytest.approx((30.0, 45.0))
    assert upper.space_mm[0] == pytest.approx((0.0, 500.0 * 3**0.5, 500.0))
    change = next(line for line in form.lines if line.kind is RoofEdge.CHANGE_OF_PITCH)
    assert (change.dihedral_deg, change.slope_deg) == pytest.approx((165.0, 0.0))
    mansard = PitchedWall(pitch_deg=70.0, changes=(ChangeOfPitch(rise_mm=2400.0, pitch_deg=30.0),))
    assert len(over(HOUSE, *[mansard] * 4).slopes) == 8


def test_a_higher_wing_wall_stands_over_the_lower_roof() -> None:
    outer = ((0.0, 0.0), (6000.0, 0.0), (6000.0, -3000.0), (12000.0, -3000.0), (12000.0, 8000.0), (0.0, 8000.0))
    high = PitchedWall(pitch_deg=45.0, eaves_height_mm=1500.0)
    form = over(outer, SLOPE, high, high, high, SLOPE, GABLE)
    low = next(slope for slope in form.slopes if slope.walls == (0,))
    assert "abutment" in kinds(low)


def test_overhangs_carry_the_roof_out_to_the_eaves_line() -> None:
    eaves, verge = PitchedWall(pitch_deg=45.0, overhang_mm=300.0), GableWall(overhang_mm=50.0)
    form = over(HOUSE, eaves, verge, eaves, verge)
    assert form.slopes[0].outline_mm[1][0] == pytest.approx(10100.0)
    assert form.slopes[0].outline_mm[2][1] == pytest.approx(4300.0 * 2**0.5)


def test_a_part_with_gables_all_round_will_not_close_and_says_where() -> None:
    tee = ((0.0, 0.0), (3000.0, 0.0), (3000.0, -4000.0), (7000.0, -4000.0), (7000.0, 0.0), *HOUSE[1:])
    with pytest.raises(RoofWillNotClose, match="only upright walls") as caught:
        over(tee, SLOPE, GABLE, GABLE, GABLE, SLOPE, GABLE, GABLE, GABLE)
    x_mm, y_mm = caught.value.where_mm
    assert 3000.0 <= x_mm <= 7000.0
    assert -4000.0 <= y_mm <= 8000.0


def test_a_faulty_outline_is_refused_with_all_its_faults() -> None:
    with pytest.raises(InputRefused) as caught:
        over(HOUSE[::-1], SLOPE, GABLE)
    assert [fault.field for fault in caught.value.faults] == ["outline", "walls"]


def test_slopes_know_their_place_in_the_building() -> None:
    for slope in over(HOUSE, *[PitchedWall(pitch_deg=37.0)] * 4).slopes:
        assert [slope.plane.in_building(corner) for corner in slope.outline_mm] == [
            pytest.approx(corner) for corner in slope.space_mm
        ]
        assert [corner[:2] for corner in slope.space_mm] == list(slope.plan_mm)
