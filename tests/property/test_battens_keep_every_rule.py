"""Whatever the roof: no batten is too short or on too few supports, no window of joints is too full, nothing is lost.

The rules are counted here afresh from the answer, line by line and rafter by rafter, by brute force.
"""

from collections import Counter, defaultdict
from dataclasses import replace
from itertools import combinations, pairwise
from math import ceil, hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gaugerod.basis.finding import Verdict
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import EdgeKind
from gaugerod.substrate.battens.answer import Arrangement, Battens, SlopeBattens
from gaugerod.substrate.battens.ask import BattenedSlope, BattensAsk, EvenRafters, MeasuredRafters, Rafters
from gaugerod.substrate.battens.plan import plan_battens
from tests.scenario.battened_slopes import asked, gable, rooflight, slope

E, V, R, H, Y = EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.HIP, EdgeKind.VALLEY


@st.composite
def rafters(draw: st.DrawFn, *, width_mm: float) -> Rafters:
    if draw(st.booleans()):
        last = width_mm - 150.0 if draw(st.booleans()) else None
        spacing = draw(st.sampled_from([400.0, 450.0, 600.0]))
        return EvenRafters(first_mm=draw(st.floats(60.0, 500.0)), spacing_mm=spacing, last_mm=last)
    places, at = [], draw(st.floats(60.0, 400.0))
    while at < width_mm - 60.0:
        places.append(at)
        at += draw(st.floats(380.0, 600.0))
    return MeasuredRafters(at_mm=tuple(places))


@st.composite
def slopes(draw: st.DrawFn) -> BattenedSlope:
    gauge = draw(st.sampled_from([90.0, 100.0, 200.0, 201.0, 280.0, 345.0]))
    courses = draw(st.integers(1, 26))
    width, height = draw(st.floats(2_500.0, 16_000.0)), gauge * courses + 60.0
    at = draw(rafters(width_mm=width))
    shape = draw(st.sampled_from(["gable", "out of square", "hip and valley", "hips", "opening"]))
    if shape == "gable":
        return gable(width_mm=width, courses=courses, gauge_mm=gauge, rafters=at)
    lean = draw(st.floats(0.1, 0.9))
    if shape == "out of square":
        points: tuple[Point, ...] = ((0.0, 0.0), (width, 0.0), (width + lean * 60.0, height), (lean * 30.0, height))
        return slope(points, E, V, R, V, gauge_mm=gauge, rafters=at)
    if shape == "hips":
        lean_mm = min(lean * height, width * 0.45)
        points = ((0.0, 0.0), (width, 0.0), (width - lean_mm, height), (lean_mm, height))
        return slope(points, E, H, R, H, gauge_mm=gauge, rafters=at)
    if shape == "hip and valley":
        lean_mm = lean * height
        points = ((0.0, 0.0), (width, 0.0), (width + lean_mm, height), (lean_mm, height))
        return slope(points, E, Y, R, H, gauge_mm=gauge, rafters=at)
    side = draw(st.floats(700.0, 1_200.0))
    opening = rooflight(left_mm=width * lean * 0.5 + 200.0, sill_mm=height * 0.2, width_mm=side, height_mm=height * 0.4)
    points = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return slope(points, E, V, R, V, gauge_mm=gauge, rafters=at, openings=(opening,))


def check(ask: BattensAsk, battens: Battens) -> None:
    for asked_slope, laid in zip(ask.slopes, battens.slopes, strict=True):
        if laid.arrangement is Arrangement.NONE:
            assert laid.why
            assert any(finding.rule == "batten plan" for finding in battens.findings)
            continue
        every_window(asked_slope, laid)
        every_piece(ask, laid)
    assert not any(finding.verdict is Verdict.OUTSIDE for finding in battens.findings)
    nothing_lost(ask, battens)


def every_window(asked_slope: BattenedSlope, laid: SlopeBattens) -> None:
    """On every rafter, over the battens that cross it, and over the battens as they are numbered."""
    gauges = [above.at_mm[0][1] - below.at_mm[0][1] for below, above in pairwise(asked_slope.marks)]
    window, most = (4, 1) if not gauges or max(gauges) > 200.0 + 1e-6 else (12, 3)
    crossing, numbered = defaultdict(list), defaultdict(list)
    for number, line in enumerate(laid.lines):
        for stretch in line.stretches:
            for rafter in stretch.crossed:
                crossing[rafter].append(rafter in stretch.joints)
            for rafter in stretch.joints:
                numbered[rafter].append(number)
    for joined in crossing.values():
        for at in range(len(joined)):
            assert sum(joined[at : at + window]) <= most
        assert not any(below and above for below, above in pairwise(joined))
    for numbers in numbered.values():
        for some in combinations(numbers, most + 1):
            assert some[-1] - some[0] >= window


def every_piece(ask: BattensAsk, laid: SlopeBattens) -> None:
    longest = max(length.value for length in ask.stock)
    for line in laid.lines:
        for stretch in line.stretches:
            (x0, y0), (x1, y1) = stretch.ends_mm
            ends = [x0, *(laid.rafters_mm[joint - 1] for joint in stretch.joints), x1]
            ratio = hypot(x1 - x0, y1 - y0) / (x1 - x0)
            for left, right, length in zip(ends, ends[1:], stretch.pieces_mm, strict=False):
                least = ceil((right - left) * ratio - 1e-6)
                trimmed = EdgeKind.VERGE in stretch.stops_at and (left == x0 or right == x1)
                assert least <= length <= least + (60 if trimmed else 0)
                assert length <= longest
                if stretch.joints:
                    held = sum(left - 1e-6 <= at <= right + 1e-6 for at in laid.rafters_mm)
                    ends_held = {EdgeKind.HIP, EdgeKind.VALLEY, EdgeKind.OPENING}
                    held += left == x0 and stretch.stops_at[0] in ends_held
                    held += right == x1 and stretch.stops_at[1] in ends_held
                    assert (right - left) * ratio >= 1200 - 1e-6
                    assert held >= 3


def nothing_lost(ask: BattensAsk, battens: Battens) -> None:
    """Every piece laid is sawn once, every length holds its pieces and the saw cuts, and the bill is their sum."""
    cutting = battens.cutting
    laid = Counter(
        length
        for each in battens.slopes
        for line in each.lines
        for stretch in line.stretches
        for length in stretch.pieces_mm
    )
    assert laid == Counter(piece.length_mm for sawn in cutting.sawn for piece in sawn.pieces)
    places = [(piece.where, piece.batten, piece.piece) for sawn in cutting.sawn for piece in sawn.pieces]
    assert len(set(places)) == len(places)
    stock = {int(length.value) for length in ask.stock}
    for sawn in cutting.sawn:
        used = sum(piece.length_mm for piece in sawn.pieces)
        assert sawn.stock_mm in stock
        assert used + ask.kerf.value * (len(sawn.pieces) - 1) <= sawn.stock_mm
        assert 0 <= sawn.left_mm <= sawn.stock_mm - used
    assert cutting.bought_mm == sum(each.count * each.stock_mm for each in cutting.buy)
    assert cutting.bought_mm == sum(group.count * group.stock_mm for group in cutting.groups)
    assert cutting.net_mm == sum(each.net_mm for each in battens.slopes)


@settings(max_examples=120, deadline=None)
@given(st.lists(slopes(), min_size=1, max_size=2))
def test_no_rule_is_broken_and_no_piece_is_lost(each: list[BattenedSlope]) -> None:
    ask = asked(*(replace(one, where=f"slope {at}") for at, one in enumerate(each)))
    check(ask, plan_battens(ask))


@pytest.mark.slow
@settings(max_examples=2_000, deadline=None)
@given(st.lists(slopes(), min_size=1, max_size=3))
def test_no_rule_is_broken_on_thousands_of_roofs(each: list[BattenedSlope]) -> None:
    ask = asked(*(replace(one, where=f"slope {at}") for at, one in enumerate(each)))
    check(ask, plan_battens(ask))


@settings(max_examples=40, deadline=None)
@given(slopes())
def test_the_mirrored_slope_has_as_much_batten(each: BattenedSlope) -> None:
    """The lines mirror; so their length together is the same."""
    width = max(x for x, _ in each.outline.points_mm)
    mirrored = BattenedSlope(
        where=each.where,
        outline=type(each.outline)(
            points_mm=tuple((width - x, y) for x, y in reversed(each.outline.points_mm)),
            edges=(*reversed(each.outline.edges[:-1]), each.outline.edges[-1]),
        ),
        openings=tuple(
            type(ring)(points_mm=tuple((width - x, y) for x, y in reversed(ring.points_mm)), edges=ring.edges)
            for ring in each.openings
        ),
        marks=each.marks,
        rafters=each.rafters,
    )
    lengths = [
        sum(x1 - x0 for line in plan.slopes[0].lines for s in line.stretches for (x0, _), (x1, _) in [s.ends_mm])
        for plan in (plan_battens(asked(each)), plan_battens(asked(mirrored)))
        if plan.slopes[0].lines
    ]
    if len(lengths) == 2:
        assert lengths[0] == pytest.approx(lengths[1], abs=1e-3)
