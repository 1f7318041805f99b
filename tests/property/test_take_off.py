"""What the take-off keeps, whatever the roof: quantities add up over slopes, a mirrored roof takes the same, a larger one no
less, and the order always covers the laying.
"""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.laying.offcuts import from_wider_units, wider_units
from gaugerod.take_off.covering import main_item
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished, Pack
from tests.scenario.taken_off_jobs import COVERINGS, ask_of, nets, result_of, slope, taken

acrosses_mm = st.integers(2_500, 9_000)
rafters_mm = st.integers(2_000, 6_000)
coverings = st.sampled_from(COVERINGS)
BENEATH: dict[str, Any] = {
    "battens": {},
    "underlay": {"resistance": "low", "lies_on": "rafters"},
    "fixings": {"nail_metal": "copper"},
    "edges": {
        "ridge": {"made": "dry", "unit": {"length": 450, "cover": 430}},
        "verge": {"made": "bedded"},
        "eaves": {"tray_length": 1500},
    },
}
CUT_TOGETHER = ("batten-", "underlay-roll")
"""Bought for all slopes together, so that what one leaves serves another."""


@settings(deadline=None, max_examples=25)
@given(coverings, acrosses_mm, rafters_mm, acrosses_mm, rafters_mm)
def test_slopes_add_up(covering: str, across_1: int, rafter_1: int, across_2: int, rafter_2: int) -> None:
    first = slope("first", across_mm=across_1, rafter_mm=rafter_1)
    second = slope("second", across_mm=across_2, rafter_mm=rafter_2)
    both = result_of(covering, first, second, **BENEATH)
    alone = [result_of(covering, each, **BENEATH) for each in (first, second)]
    assume(not both.not_set_out and not any(each.not_set_out for each in alone))
    together, apart = nets(taken(both)), [nets(taken(each)) for each in alone]
    for item in {*together, *apart[0], *apart[1]}:
        added = apart[0].get(item, 0.0) + apart[1].get(item, 0.0)
        if item in {"tile", "slate"}:
            assert together[item] <= added
        elif not item.startswith(CUT_TOGETHER) or item.startswith("batten-nails"):
            assert added == pytest.approx(together.get(item, 0.0), abs=1e-9), item


@settings(deadline=None, max_examples=25)
@given(coverings, acrosses_mm, rafters_mm, st.booleans())
def test_a_mirrored_roof_takes_the_same(covering: str, across: int, rafter: int, wall: bool) -> None:  # noqa: FBT001
    sides = ("verge", "abutment") if wall else ("verge", "verge")
    one = result_of(covering, slope("s", across_mm=across, rafter_mm=rafter, left=sides[0], right=sides[1]))
    other = result_of(covering, slope("s", across_mm=across, rafter_mm=rafter, left=sides[1], right=sides[0]))
    assume(not one.not_set_out and not other.not_set_out)
    main = main_item(one.job.covering)
    # Which course begins with the half is chosen from the left, so one piece more or less may stay without its fellow.
    assert pytest.approx(_widths(nets(taken(one)), main), abs=1.0) == _widths(nets(taken(other)), main)
    assert nets(taken(one)).get("eaves-tile") == nets(taken(other)).get("eaves-tile")


def _widths(net: dict[str, float], main: str) -> float:
    """The units in widths of a whole one."""
    wide = net.get(f"{main}-and-a-half", 0.0)
    return net[main] + 0.5 * net.get("half-tile", 0.0) + 1.5 * wide + 2 * net.get(f"double-{main}", 0.0)


@settings(deadline=None, max_examples=25)
@given(coverings, acrosses_mm, rafters_mm, st.integers(700, 2_000), st.integers(700, 2_000))
def test_a_larger_roof_takes_no_less(covering: str, across: int, rafter: int, wider: int, longer: int) -> None:
    small = result_of(covering, slope("s", across_mm=across, rafter_mm=rafter), **BENEATH)
    large = result_of(covering, slope("s", across_mm=across + wider, rafter_mm=rafter + longer), **BENEATH)
    assume(not small.not_set_out and not large.not_set_out)
    main = main_item(small.job.covering)
    of_small, of_large = nets(taken(small)), nets(taken(large))
    assert of_small[main] < of_large[main]
    assert _widths(of_small, main) < _widths(of_large, main)
    for item in (
        "eaves-tile",
        "slate-nails",
        "dry-line-roll",
        "ridge-unit",
        "undercloak",
        "eaves-tray",
        "underlay-roll",
    ):
        assert of_small.get(item, 0.0) <= of_large.get(item, 0.0), item
    battens = [each.beneath.battens for each in (small, large)]
    assert battens[0] is not None
    assert battens[1] is not None
    assert battens[0].cutting.net_mm < battens[1].cutting.net_mm


@settings(deadline=None, max_examples=25)
@given(coverings, acrosses_mm, rafters_mm, st.integers(1, 60), st.integers(0, 20))
def test_the_order_always_covers_the_laying(covering: str, across: int, rafter: int, pack: int, breakage: int) -> None:
    result = result_of(
        covering,
        slope("front", across_mm=across, rafter_mm=rafter),
        slope("back", across_mm=across, rafter_mm=rafter),
        **BENEATH,
    )
    assume(not result.not_set_out)
    wished = OrderWished(
        breakage=Limit(value=float(breakage), unit="percent", citation=house("stated")),
        packs=tuple(Pack(item=item, size=float(pack)) for item in ("tile", "slate")),
    )
    ask = replace(ask_of(result), wished=wished)
    answer = take_off(ask)
    main = main_item(result.job.covering)
    laid = sum(each.laid.laying.whole_count + len(each.laid.laying.cuts) for each in result.slopes if each.laid)
    line = answer.line(main)
    assert line is not None
    sawn = [piece for each in ask.slopes for piece in each.pieces]
    wide = sum(len(wider_units(each.pieces)) for each in ask.slopes)
    by_wide = sum(len(from_wider_units(each.pieces)) for each in ask.slopes)
    halves = sum(each.half_count for each in ask.slopes)
    whole = sum(each.whole_count for each in ask.slopes)
    # Every unit that shows is whole, a half as made, sawn from a whole one, or one of those a wider unit makes.
    assert laid == whole + halves + len(sawn) + sum(
        1
        for each in ask.slopes
        for piece in wider_units(each.pieces)
        if (piece.course, piece.neighbour) not in {(other.course, other.index) for other in each.pieces}
    )
    units_for_sawn = len(sawn) - by_wide - (0 if ask.offcuts is None else ask.offcuts.saved_count)
    assert line.order >= whole + units_for_sawn
    assert line.bought >= line.order >= line.measured.net
    assert (answer.line(f"{main}-and-a-half") is not None) == any(
        piece.remedy.value == "unit-and-a-half" for each in ask.slopes for piece in wider_units(each.pieces)
    )
    if wide:
        assert (
            sum(each.order for each in answer.lines if each.measured.item in {f"{main}-and-a-half", f"double-{main}"})
            >= wide
        )
    for each in answer.lines:
        assert each.order >= each.measured.net
        assert each.bought >= each.order
        assert abs(sum(amount for _, amount in each.measured.by_slope) - each.measured.net) < 1e-6
        if each.measured.unit in {"pieces", "rolls"}:
            assert each.order == int(each.order)
        elif each.packed is None:
            assert each.order == round(each.order, 1), "what is charged is what the order says"
    battens = result.beneath.battens
    assert battens is not None
    bought_mm = sum(
        each.order * int(each.measured.item.removeprefix("batten-"))
        for each in answer.lines
        if each.measured.item.removeprefix("batten-").isdigit()
    )
    assert bought_mm >= battens.cutting.net_mm
