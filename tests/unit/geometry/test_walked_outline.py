import cmath
from math import inf, nan, pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.geometry.closing_finding import closing_finding
from gaugerod.geometry.walked_outline import WalkedWall, walk_outline, walls_of_corners, way_of_first_wall_deg

L_SHAPE = ((12400.0, 90.0), (7200.0, 90.0), (5600.0, -90.0), (4400.0, 90.0), (6800.0, 90.0), (11600.0, 90.0))


def walls(*pairs: tuple[float | None, float | None]) -> list[WalkedWall]:
    return [WalkedWall(length_mm=long_mm, turn_deg=turn_deg) for long_mm, turn_deg in pairs]


def fields(refused: pytest.ExceptionInfo[InputRefused]) -> list[str]:
    return [fault.field for fault in refused.value.faults]


def test_square_walls_come_out_on_whole_millimetres() -> None:
    walk = walk_outline(walls(*L_SHAPE))
    expected = ((0.0, 0.0), (12400.0, 0.0), (12400.0, 7200.0), (6800.0, 7200.0), (6800.0, 11600.0), (0.0, 11600.0))
    assert expected == walk.corners_mm
    assert (0.0, 0.0) == walk.missed_mm
    assert walk.checked


def test_a_walk_agrees_with_steps_in_the_complex_plane() -> None:
    """An independent way: every wall is a complex number, every turn a multiplication."""
    walked = ((4000.0, 72.0), (4000.0, 72.0), (4000.0, 72.0), (4000.0, 72.0), (4000.0, 72.0))
    walk = walk_outline(walls(*walked), start_mm=(300.0, -200.0), first_wall_deg=17.0)
    at, way = complex(300, -200), cmath.rect(1, radians(17))
    for (x, y), (long_mm, turn_deg) in zip(walk.corners_mm, walked, strict=True):
        assert at == pytest.approx(complex(x, y), abs=1e-8)
        at, way = at + way * long_mm, way * cmath.rect(1, radians(turn_deg))
    assert complex(*walk.missed_mm) == pytest.approx(at - complex(300, -200), abs=1e-8)


def test_two_lengths_that_were_not_measured_are_found_and_not_checked() -> None:
    walk = walk_outline(walls((9000.0, 90.0), (6000.0, 90.0), (None, 90.0), (None, None)))
    assert ((2, 3), False) == (walk.found, walk.checked)
    assert (9000.0, 6000.0, 9000.0, 6000.0) == walk.walls_mm
    finding = closing_finding(walk, where="barn")
    assert Verdict.NOT_COVERED is finding.verdict
    assert "wall 3 is 9000.0 mm, wall 4 is 6000.0 mm" in finding.says


def test_one_length_is_found_and_the_rest_still_checked() -> None:
    walk = walk_outline(walls((9000.0, 90.0), (None, 90.0), (9025.0, 90.0), (6000.0, 90.0)))
    assert ((1,), True) == (walk.found, walk.checked)
    assert 25.0 == walk.closing_error_mm
    assert Verdict.OUTSIDE is closing_finding(walk, where="barn").verdict


def test_a_last_wall_without_a_direction_runs_straight_home() -> None:
    walk = walk_outline(walls((4000.0, 90.0), (3000.0, None), (None, None)))
    assert 5000.0 == pytest.approx(walk.walls_mm[2])
    assert not walk.checked
    measured = walk_outline(walls((4000.0, 90.0), (3000.0, None), (5004.0, None)))
    assert 4.0 == pytest.approx(measured.closing_error_mm)
    assert measured.checked


@pytest.mark.parametrize(
    ("over_mm", "verdict"), [(9.9, Verdict.WITHIN), (10.0, Verdict.WITHIN), (10.1, Verdict.OUTSIDE)]
)
def test_tape_figures_should_agree_to_ten_millimetres(over_mm: float, verdict: Verdict) -> None:
    walk = walk_outline(walls((9000.0, 90.0), (6000.0, 90.0), (9000.0 + over_mm, 90.0), (6000.0, 90.0)))
    assert verdict is closing_finding(walk, where="barn").verdict


def test_walls_that_run_the_way_it_misses_are_named_and_found_ones_are_not() -> None:
    walk = walk_outline(walls((12000.0, 90.0), *L_SHAPE[1:]))
    assert "Measure again first: wall 1, wall 3, wall 5." in closing_finding(walk, where="house").says


def test_a_walk_that_misses_by_more_than_a_wall_had_a_turn_wrong() -> None:
    turned = ((12400.0, 90.0), (7200.0, 90.0), (5600.0, 90.0), *L_SHAPE[3:])
    assert "Look at the turns first" in closing_finding(walk_outline(walls(*turned)), where="house").says


@pytest.mark.parametrize("long_mm", [0.0, -1.0, nan, inf])
def test_a_length_that_cannot_be_is_refused(long_mm: float) -> None:
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((9000.0, 90.0), (long_mm, 90.0), (9000.0, 90.0), (6000.0, 90.0)))
    assert ["wall[1].length"] == fields(refused)


@pytest.mark.parametrize("turn_deg", [180.0, -180.0, nan, inf])
def test_a_turn_that_cannot_be_is_refused(turn_deg: float) -> None:
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((9000.0, turn_deg), (6000.0, 90.0), (9000.0, 90.0), (6000.0, 90.0)))
    assert ["wall[0].turn"] == fields(refused)


def test_all_faults_are_told_together() -> None:
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((-5.0, None), (None, 90.0), (None, 90.0), (None, 90.0)))
    assert ["wall[0].length", "wall[1].length", "wall[2].length", "wall[3].length", "wall[0].turn"] == fields(refused)
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((9000.0, 90.0), (6000.0, 90.0)))
    assert ["wall"] == fields(refused)


def test_two_unknown_walls_in_line_cannot_be_found() -> None:
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((None, 90.0), (6000.0, 90.0), (None, 90.0), (6000.0, 90.0)))
    assert ["wall[2].length"] == fields(refused)


def test_a_length_found_below_nothing_is_no_length() -> None:
    with pytest.raises(InputRefused) as refused:
        walk_outline(walls((9000.0, 90.0), (6000.0, -90.0), (4000.0, 90.0), (None, 90.0), (13000.0, None)))
    assert ["wall[3].length"] == fields(refused)
    assert "-6000.0 mm by closing" == refused.value.faults[0].given


corner_angles = st.lists(st.floats(0.2, 1.8), min_size=3, max_size=12)


@given(corner_angles, st.lists(st.floats(2000.0, 20000.0), min_size=12, max_size=12))
def test_corners_walked_and_walls_found_are_one_another_undone(shares: list[float], radii: list[float]) -> None:
    angle, whole, corners = 0.0, sum(shares), []
    for share, radius in zip(shares, radii, strict=False):
        corners.append((radius * cmath.rect(1, angle).real, radius * cmath.rect(1, angle).imag))
        angle += 2 * pi * share / whole
    walk = walk_outline(walls_of_corners(corners), start_mm=corners[0], first_wall_deg=way_of_first_wall_deg(corners))
    for expected, actual in zip(corners, walk.corners_mm, strict=True):
        assert expected == pytest.approx(actual, abs=1e-6)
    assert walk.closing_error_mm < 1e-6
