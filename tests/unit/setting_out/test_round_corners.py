"""Courses round corners: lines meet where they can, and where they cannot the step is told."""

import pytest

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.rounding import Division
from gaugerod.geometry.pitch import sin_deg
from gaugerod.setting_out.courses import CoursesAsk, Strategy
from gaugerod.setting_out.courses_together import courses_together
from gaugerod.setting_out.round_corners import CornerSlope, set_together
from gaugerod.setting_out.stations import Station

EXAMPLE = house("example")


def slope(name: str, rafter_mm: float, pitch_deg: float, *, gauge_min_mm: float = 295.0) -> CornerSlope:
    ask = CoursesAsk(
        where=name,
        stations=(Station(at_mm=0.0, length_mm=rafter_mm),),
        unit_length_mm=420.0,
        hanging_length_mm=398.0,
        gauge_min_mm=gauge_min_mm,
        gauge_max_mm=345.0,
        gauge_citation=EXAMPLE,
        overhang=Band(45.0, 55.0, EXAMPLE),
        top=Band(25.0, 50.0, EXAMPLE),
        division=Division.MILLIMETRE,
    )
    return CornerSlope(name=name, ask=ask, pitch_deg=pitch_deg)


def tail_heights_mm(slopes: list[CornerSlope]) -> list[list[float]]:
    """Independent of the solver: the height of every tail line from its own marks."""
    together = set_together(slopes)
    heights = []
    for each, shared in zip(slopes, together.shared, strict=True):
        marks = [shared.first_mm + k * shared.gauge_mm for k in range(5)]
        heights.append([(mark - each.ask.hanging_length_mm) * sin_deg(each.pitch_deg) for mark in marks])
    return heights


def test_equal_pitches_have_the_same_marks() -> None:
    together = set_together([slope("main", 5221.0, 40.0), slope("end", 5221.0, 40.0)])
    assert together.meets
    assert 1 == len({(each.first_mm, each.gauge_mm, each.gauges_count) for each in together.shared})
    assert "with the same marks" in together.says


@pytest.mark.parametrize("pitches", [(40.0, 40.0), (35.0, 37.0), (40.0, 44.0), (30.0, 33.0)])
def test_lines_that_meet_lie_at_the_same_heights(pitches: tuple[float, float]) -> None:
    one, other = tail_heights_mm([slope("main", 5000.0, pitches[0]), slope("end", 4700.0, pitches[1])])
    assert one == pytest.approx(other, abs=1e-3)


def test_every_ridge_is_served_when_one_gauge_can() -> None:
    together = set_together([slope("main", 5221.0, 40.0), slope("wing", 3300.0, 40.0)])
    assert [False, False] == [each.cut_top for each in together.shared]
    assert 1 == len({each.gauge_mm for each in together.shared})
    for each, rafter in zip(together.shared, (5221.0, 3300.0), strict=True):
        assert 25.0 - 1e-3 <= rafter - each.top_mm <= 50.0 + 1e-3


def test_a_lower_ridge_the_lines_miss_takes_a_cut_top_course() -> None:
    narrow = [slope("main", 5221.0, 40.0, gauge_min_mm=340.0), slope("wing", 3350.0, 40.0, gauge_min_mm=340.0)]
    together = set_together(narrow)
    assert together.meets
    assert [False, True] == [each.cut_top for each in together.shared]
    assert "cut at its head" in together.says


def test_gauge_ranges_that_give_no_one_rise_tell_the_step() -> None:
    together = set_together([slope("main", 5221.0, 40.0), slope("end", 3875.0, 60.0)])
    assert not together.meets
    assert 295.0 * sin_deg(60.0) - 345.0 * sin_deg(40.0) == pytest.approx(together.step_mm)
    assert "They part by 33.7 mm in height with every course" in together.says


def test_plain_tile_pitches_meet_up_to_the_printed_limit() -> None:
    """sin(lower)/sin(steeper) ≥ 88/100: with 40° the steeper at most 46.9° (derived from the gauge range 88 to 100)."""

    def plain(name: str, pitch_deg: float) -> CornerSlope:
        ask = slope(name, 5000.0, pitch_deg).ask
        return CornerSlope(
            name=name,
            ask=CoursesAsk(
                **{field: getattr(ask, field) for field in CoursesAsk.__slots__}
                | {"unit_length_mm": 265.0, "hanging_length_mm": 250.0, "gauge_min_mm": 88.0, "gauge_max_mm": 100.0}
            ),
            pitch_deg=pitch_deg,
        )

    assert set_together([plain("main", 40.0), plain("end", 46.8)]).meets
    assert set_together([plain("main", 40.0), plain("end", 47.0)]).step_mm > 0


@pytest.mark.parametrize("rafters", [(5221.0, 3300.0), (5000.0, 4713.0), (4400.0, 2950.0)])
def test_the_courses_shared_out_keep_every_lap_as_marked(rafters: tuple[float, float]) -> None:
    slopes = [slope("main", rafters[0], 40.0), slope("wing", rafters[1], 40.0)]
    together = set_together(slopes)
    for each, shared in zip(slopes, together.shared, strict=True):
        courses = courses_together(each.ask, shared, says=together.says)
        gaps = courses.rods[0].gaps_mm[:-1] if courses.strategy is Strategy.PARALLEL else courses.rods[0].gaps_mm
        assert max(gaps) <= 345.0
        assert min(gaps) >= 295.0
        assert together.says == courses.why
    marks = [
        courses_together(each.ask, shared, says="").rods[0].marks_mm
        for each, shared in zip(slopes, together.shared, strict=True)
    ]
    shorter = min(map(len, marks)) - 1
    assert marks[0][:shorter] == marks[1][:shorter]


@pytest.mark.parametrize("wing_mm", [3000.0 + 7.0 * step for step in range(60)])
def test_a_cut_top_course_always_has_room_for_its_batten(wing_mm: float) -> None:
    """Two battens nearer than 38 mm, a batten's width, cannot both be nailed."""
    slopes = [slope(name, rafter, 40.0, gauge_min_mm=335.0) for name, rafter in (("main", 5221.0), ("wing", wing_mm))]
    together = set_together(slopes)
    for each, shared in zip(slopes, together.shared, strict=False):
        courses = courses_together(each.ask, shared, says="")
        assert courses.rods[0].gaps_mm[-1] >= 38.0
        assert 25.0 <= courses.rods[0].below_apex_mm <= 50.0


def test_lines_meet_wherever_the_gauge_ranges_allow_even_if_every_top_course_is_cut() -> None:
    """Six pitches on an L: one rise from 197.4 to 197.9 mm serves all six gauge ranges, but arrives under no ridge."""
    slopes = [
        slope(f"house {number}", rafter_mm, pitch_deg)
        for number, (rafter_mm, pitch_deg) in enumerate(
            [(5178.1, 35.0), (4139.4, 40.0), (4638.9, 35.0), (4438.5, 42.0), (4620.6, 40.0), (4824.1, 38.0)], 1
        )
    ]
    together = set_together(slopes)
    assert together.meets
    rises = {
        round(each.gauge_mm * sin_deg(other.pitch_deg), 6) for each, other in zip(together.shared, slopes, strict=True)
    }
    assert 1 == len(rises)
    assert 295.0 * sin_deg(42.0) - 1e-6 <= rises.pop() <= 345.0 * sin_deg(35.0) + 1e-6


def test_overhangs_that_bring_no_tails_to_one_height_tell_how_far_the_lines_part() -> None:
    wide = {"gauge_min_mm": 200.0}
    together = set_together([slope("main", 5221.0, 35.0, **wide), slope("end", 3875.0, 50.0, **wide)])
    assert not together.meets
    assert f"part by {45.0 * sin_deg(50.0) - 55.0 * sin_deg(35.0):.1f} mm in height" in together.says
