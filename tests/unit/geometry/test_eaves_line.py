from math import hypot, inf, nan

import pytest

from gaugerod.basis.errors import InputRefused
from gaugerod.geometry.eaves_line import eaves_line_mm
from gaugerod.geometry.plan_outline import ChangeOfPitch, GableWall, PitchedWall, PlanOutline, Wall

HOUSE = ((0.0, 0.0), (9000.0, 0.0), (9000.0, 6000.0), (0.0, 6000.0))
L_SHAPE = ((0.0, 0.0), (12000.0, 0.0), (12000.0, 5000.0), (6000.0, 5000.0), (6000.0, 10000.0), (0.0, 10000.0))
PLAIN = PitchedWall(pitch_deg=35.0)


def refused(*walls: Wall, outer: tuple[tuple[float, float], ...] = HOUSE) -> list[str]:
    with pytest.raises(InputRefused) as caught:
        eaves_line_mm(PlanOutline(outer_mm=outer, walls=walls))
    return [fault.field for fault in caught.value.faults]


def test_without_overhangs_the_eaves_line_is_the_wall_line() -> None:
    assert (HOUSE,) == eaves_line_mm(PlanOutline(outer_mm=HOUSE, walls=(PLAIN,) * 4))


def test_each_wall_line_moves_out_by_its_own_overhang() -> None:
    walls = tuple(PitchedWall(pitch_deg=35.0, overhang_mm=over_mm) for over_mm in (100.0, 200.0, 300.0, 0.0))
    (ring,) = eaves_line_mm(PlanOutline(outer_mm=HOUSE, walls=walls))
    assert ring == ((0.0, -100.0), (9200.0, -100.0), (9200.0, 6300.0), (0.0, 6300.0))


def test_an_inner_corner_moves_out_into_the_angle() -> None:
    (ring,) = eaves_line_mm(PlanOutline(outer_mm=L_SHAPE, walls=(PitchedWall(pitch_deg=35.0, overhang_mm=300.0),) * 6))
    assert ring[3] == pytest.approx((6300.0, 5300.0))


def test_a_hole_is_narrowed_by_its_overhangs() -> None:
    court = ((3000.0, 2000.0), (3000.0, 4000.0), (6000.0, 4000.0), (6000.0, 2000.0))
    walls = (PitchedWall(pitch_deg=35.0, overhang_mm=250.0),) * 8
    _, ring = eaves_line_mm(PlanOutline(outer_mm=HOUSE, holes_mm=(court,), walls=walls))
    assert ring[0] == pytest.approx((3250.0, 2250.0))
    assert ring[2] == pytest.approx((5750.0, 3750.0))


def test_a_skew_corner_stays_the_overhang_away_from_both_walls() -> None:
    outer = ((0.0, 0.0), (9000.0, 0.0), (5000.0, 6000.0))
    (ring,) = eaves_line_mm(PlanOutline(outer_mm=outer, walls=(PitchedWall(pitch_deg=35.0, overhang_mm=300.0),) * 3))
    x, y = ring[1]
    assert y == pytest.approx(-300.0)
    along_x, along_y = -4000.0 / hypot(4000, 6000), 6000.0 / hypot(4000, 6000)
    assert (x - 9000.0) * along_y - y * along_x == pytest.approx(300.0)


def test_walls_in_line_with_unlike_overhangs_are_refused() -> None:
    outer = ((0.0, 0.0), (4000.0, 0.0), *HOUSE[1:])
    over = PitchedWall(pitch_deg=35.0, overhang_mm=300.0)
    assert refused(over, PLAIN, PLAIN, PLAIN, PLAIN, outer=outer) == ["walls[1].overhang"]
    (ring,) = eaves_line_mm(PlanOutline(outer_mm=outer, walls=(over, over, PLAIN, PLAIN, PLAIN)))
    assert ring[1] == (4000.0, -300.0)


def test_overhangs_that_swallow_a_recess_are_refused() -> None:
    left, right = (4000.0, 0.0), (4500.0, 0.0)
    recess = (HOUSE[0], left, (4000.0, 1000.0), (4500.0, 1000.0), right, *HOUSE[1:])
    over = PitchedWall(pitch_deg=35.0, overhang_mm=300.0)
    assert refused(*[over] * 8, outer=recess) == ["walls[2].overhang"]


@pytest.mark.parametrize("over_mm", [-1.0, nan, inf])
def test_an_overhang_is_nothing_or_more(over_mm: float) -> None:
    assert refused(GableWall(overhang_mm=over_mm), PLAIN, PLAIN, PLAIN) == ["walls[0].overhang"]


@pytest.mark.parametrize("pitch_deg", [0.0, -35.0, 0.999, 89.001, nan, inf])
def test_a_pitch_outside_its_range_is_refused(pitch_deg: float) -> None:
    assert refused(PLAIN, PitchedWall(pitch_deg=pitch_deg), PLAIN, PLAIN) == ["walls[1].pitch"]


@pytest.mark.parametrize("pitch_deg", [1.0, 1.001, 88.999, 89.0])
def test_the_ends_of_the_range_of_pitch_are_allowed(pitch_deg: float) -> None:
    assert eaves_line_mm(PlanOutline(outer_mm=HOUSE, walls=(PitchedWall(pitch_deg=pitch_deg),) * 4))


def test_every_fault_of_the_walls_is_reported_at_once() -> None:
    bad = PitchedWall(
        pitch_deg=200.0,
        eaves_height_mm=nan,
        changes=(ChangeOfPitch(rise_mm=500.0, pitch_deg=0.0), ChangeOfPitch(rise_mm=500.0, pitch_deg=40.0)),
    )
    assert refused(bad, GableWall(overhang_mm=-5.0), PLAIN) == [
        "walls",
        "walls[0].eaves_height",
        "walls[0].pitch",
        "walls[0].changes[0].pitch",
        "walls[0].changes[1].rise",
        "walls[1].overhang",
    ]


def test_gables_only_carry_no_roof() -> None:
    assert refused(*[GableWall()] * 4) == ["walls"]
