"""Underlay on random slopes: everything covered, no lap short, every lap held where it is said to be, fewest runs."""

from collections.abc import Sequence
from dataclasses import replace

import pytest
from hypothesis import given, reject, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from gaugerod.basis.errors import InputRefused, NothingToSetOut
from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.courses import Rod
from gaugerod.substrate.underlay.answer import LapBetween, LapOnBatten, RunLap, UnderlayPlan
from gaugerod.substrate.underlay.ask import LapRemedy, RidgeMade, UnderlayAsk
from gaugerod.substrate.underlay.batten_lines import BattenLines
from gaugerod.substrate.underlay.lay_underlay import lay_underlay
from tests.scenario.underlaid_slopes import MEMBRANE, level_rods, ring, rod, underlay_ask

SIDES = [EdgeKind.VERGE, EdgeKind.ABUTMENT, EdgeKind.HIP, EdgeKind.VALLEY]


@st.composite
def slopes(draw: st.DrawFn) -> UnderlayAsk:
    """Four or five corners, sides leaning in or out, a notch in the top at times; battens level or fanned, any gauge."""
    width, height = draw(st.integers(3000, 12000)), draw(st.integers(2000, 8000))
    left, right = draw(st.integers(-800, 1200)), draw(st.integers(-800, 1200))
    drop = draw(st.integers(0, 60))
    right_side, left_side = draw(st.sampled_from(SIDES)), draw(st.sampled_from(SIDES))
    foot: list[Point] = [(0.0, 0.0), (float(width), 0.0)]
    top: list[Point] = [(float(width - right), float(height - drop)), (float(left), float(height))]
    corners, kinds = [*foot, *top], [EdgeKind.EAVES, right_side, EdgeKind.RIDGE, left_side]
    if draw(st.booleans()):
        corners = [*foot, top[0], (width / 2, height / 2), top[1]]
        kinds = [EdgeKind.EAVES, right_side, EdgeKind.VALLEY, EdgeKind.VALLEY, left_side]
    gauge = draw(st.integers(90, 420))
    marks = tuple(float(260 + gauge * at) for at in range((height - 300) // gauge + 1))
    rods = [rod(marks, length_mm=float(height))]
    if draw(st.booleans()):
        fanned = tuple(round(mark * (height - drop) / height) * 1.0 for mark in marks)
        rods.append(rod(fanned, at_mm=float(width), length_mm=float(height - drop)))
    try:
        return underlay_ask(
            outline=ring(tuple(corners), tuple(kinds)),
            rods=tuple(rods),
            pitch_deg=float(draw(st.sampled_from([12.5, 14.9, 15.0, 30.0, 35.0, 50.0]))),
            ridge=draw(st.sampled_from(list(RidgeMade))),
            between_battens=draw(st.sampled_from(list(LapRemedy))),
        )
    except InputRefused:
        reject()


def laid(ask: UnderlayAsk) -> UnderlayPlan:
    try:
        return lay_underlay(ask)
    except NothingToSetOut:
        reject()


def check_slope(ask: UnderlayAsk) -> None:
    plan = laid(ask)
    sheets = unary_union(
        [box(left, run.low_mm, right, run.high_mm) for run in plan.runs for left, right in run.spans_mm]
    )
    assert pytest.approx(0.0, abs=1.0) == Polygon(plan.reach_mm).difference(sheets).area
    assert plan.least_lap_mm is not None
    battens = BattenLines(rods=ask.rods, width_mm=ask.batten_width_mm)
    for lap, below in zip(plan.laps, plan.runs, strict=False):
        assert lap.lap_mm >= plan.least_lap_mm - TOUCH
        check_held(ask, lap, battens, (below.spans_mm[0][0], below.spans_mm[-1][1]))
    assert plan.wind_held


def check_held(ask: UnderlayAsk, lap: RunLap, battens: BattenLines, along: tuple[float, float]) -> None:
    """Every few decimetres along the lap, a batten lies wholly on it; or an added one does, clear of the others."""
    places = [along[0] + (along[1] - along[0]) * step / 40 for step in range(41)]

    def on_lap(top_mm: float) -> bool:
        return lap.low_mm - TOUCH <= top_mm - ask.batten_width_mm and top_mm <= lap.high_mm + TOUCH

    def somewhere(batten: int) -> bool:
        return all(on_lap(battens.top_edge_mm(batten, x)) for x in places)

    match lap.place:
        case LapOnBatten(batten=batten):
            assert somewhere(batten - 1)
        case LapBetween(remedy=LapRemedy.WIDEN):
            assert any(somewhere(batten) for batten in range(battens.count))
        case LapBetween(remedy=LapRemedy.EXTRA_BATTEN, extra_batten_mm=extra):
            assert extra is not None
            assert on_lap(extra)
            assert not any(
                extra - ask.batten_width_mm < battens.top_edge_mm(batten, x) - TOUCH
                and battens.top_edge_mm(batten, x) - ask.batten_width_mm < extra - TOUCH
                for batten in range(battens.count)
                for x in places
            )
        case LapBetween(remedy=LapRemedy.TAPE):
            assert lap.place.length_mm > 0
        case _:
            pytest.fail("a lap that nothing holds")


@settings(max_examples=100, deadline=None)
@given(slopes())
def test_every_slope_is_covered_and_every_lap_kept_and_held(ask: UnderlayAsk) -> None:
    check_slope(ask)


@pytest.mark.slow
@settings(max_examples=4000, deadline=None)
@given(slopes())
def test_thousands_of_slopes_are_covered_and_every_lap_kept_and_held(ask: UnderlayAsk) -> None:
    check_slope(ask)


def mirrored(ask: UnderlayAsk, width_mm: float) -> UnderlayAsk:
    points = tuple((width_mm - x, y) for x, y in reversed(ask.outline.points_mm))
    kinds = [edge.kind for edge in reversed(ask.outline.edges)]
    rods = tuple(rod(each.marks_mm, at_mm=width_mm - each.at_mm, length_mm=each.length_mm) for each in ask.rods[::-1])
    return underlay_ask(
        outline=ring(points, (*kinds[1:], kinds[0])),
        rods=rods,
        pitch_deg=ask.pitch_deg,
        ridge=ask.ridge,
        between_battens=ask.between_battens,
    )


@settings(max_examples=60, deadline=None)
@given(slopes())
def test_a_mirrored_slope_takes_the_same(ask: UnderlayAsk) -> None:
    one, other = laid(ask), laid(mirrored(ask, width_mm=max(x for x, _ in ask.outline.points_mm)))
    assert [run.low_mm for run in one.runs] == [run.low_mm for run in other.runs]
    assert pytest.approx([run.length_mm for run in one.runs], abs=0.01) == [run.length_mm for run in other.runs]
    assert pytest.approx(one.laid_area_mm2) == other.laid_area_mm2


def fewest_runs(marks_mm: Sequence[float], *, batten_mm: int, roll_mm: int, lap_mm: int, top_mm: int) -> int | None:
    """By trying every whole place for every run, each lap holding a batten; None when there is no such plan."""
    reached, count = {0}, 1
    while reached:
        if any(low + roll_mm >= top_mm for low in reached):
            return count
        reached = {
            upper
            for low in reached
            for upper in range(low + roll_mm // 2, low + roll_mm - lap_mm + 1)
            if any(upper <= mark - batten_mm and mark <= low + roll_mm for mark in marks_mm)
        }
        count += 1
    return None


@settings(max_examples=40, deadline=None)
@given(
    gauge=st.integers(60, 380), first=st.integers(60, 380), roll=st.integers(600, 1500), height=st.integers(800, 4000)
)
def test_no_plan_with_every_lap_on_a_batten_takes_fewer_runs(*, gauge: int, first: int, roll: int, height: int) -> None:
    count = (height - first) // gauge + 1
    if count < 1:
        reject()
    rods: tuple[Rod, ...] = level_rods(first_mm=float(first), gauge_mm=float(gauge), count=count)
    plan = laid(
        underlay_ask(
            rods=rods,
            record=replace(MEMBRANE, roll_width_mm=float(roll)),
            outline=ring(((0.0, 0.0), (4000.0, 0.0), (4000.0, float(height)), (0.0, float(height))),
                         (EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.ABUTMENT, EdgeKind.VERGE)),
        )
    )  # fmt: skip
    theirs = fewest_runs(rods[0].marks_mm, batten_mm=50, roll_mm=roll, lap_mm=100, top_mm=height + 100)
    others = [lap for lap in plan.laps if isinstance(lap.place, LapBetween) and lap.place.remedy is not LapRemedy.WIDEN]
    if others:
        assert theirs is None or theirs >= len(plan.runs)
    else:
        assert theirs == len(plan.runs)
