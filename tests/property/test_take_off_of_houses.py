"""Whole houses on an L, with hips, a valley and a gable: what is ordered holds what is laid, fixed and edged; mirrored alike."""

from math import ceil
from typing import Any

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from gaugerod.edges.ask import LineKind
from gaugerod.fixing.extra_courses import SHORT, UNDER_EAVES
from gaugerod.take_off.answer import Trade
from gaugerod.take_off.compared import laid_widths_count, units_by_area_count
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.tasks import tasks
from tests.scenario.taken_off_jobs import COVERINGS, ask_of, house_of, nets, taken

EDGES: dict[str, Any] = {
    "ridge": {"made": "bedded", "unit": {"length": 450, "cover": 450}, "hip_unit": {"length": 450, "cover": 430}},
    "verge": {"made": "bedded"},
    "valley": {"made": "lead", "lead_code": 5},
    "eaves": {"tray_length": 1500},
}
coverings = st.sampled_from(COVERINGS)
House = dict[str, Any]


_SIZES: dict[str, st.SearchStrategy[Any]] = {
    "wide_mm": st.integers(7_000, 14_000),
    "deep_mm": st.integers(4_000, 8_000),
    "wing_mm": st.tuples(st.integers(3_500, 5_000), st.integers(1_500, 5_000)),
}
houses: st.SearchStrategy[House] = st.fixed_dictionaries(_SIZES).filter(
    # Where the ridges differ by less than a millimetre they are one, and it lies at the height of either.
    lambda house: not 0 < abs(house["wing_mm"][0] - house["deep_mm"]) < 2
)


@settings(deadline=None, max_examples=20)
@given(coverings, houses)
def test_every_unit_that_is_held_is_ordered(covering: str, house: House) -> None:
    """The fixings are counted along the courses, unit by unit: a second way to the same units."""
    result = house_of(covering, **house, fixings={"nail_metal": "copper"})
    assume(not result.not_set_out)
    ask = ask_of(result)
    held_count = sum(kind.units_count for plan in ask.fixings for kind in plan.kinds)
    units = [line.measured.net for line in take_off(ask).lines if line.measured.trade is Trade.COVERING]
    saved = 0 if ask.offcuts is None else ask.offcuts.saved_count
    extra = sum(len(slope.extra) for slope in ask.slopes)
    assert {extra.name for slope in ask.slopes for extra in slope.extra} <= {UNDER_EAVES, SHORT}
    # Extra courses are counted from end to end, whichever way their bond begins: a unit or two more than are laid.
    assert held_count <= sum(units) + saved <= held_count + 2 * extra


@settings(deadline=None, max_examples=20)
@given(coverings, houses)
def test_the_counted_roof_is_about_its_area_and_never_far_below(covering: str, house: House) -> None:
    """Offcuts apart, what is laid covers the slopes, but for the strip at the top that ridge units cover."""
    result = house_of(covering, **house)
    assume(not result.not_set_out)
    for slope in ask_of(result).slopes:
        assert slope.cover_mm is not None
        by_area = units_by_area_count(area_mm2=slope.area_mm2, gauge_mm=slope.gauge_mm, cover_mm=slope.cover_mm)
        at_top = 2 * house["wide_mm"] / slope.cover_mm
        assert laid_widths_count(slope) >= by_area - at_top


@settings(deadline=None, max_examples=20)
@given(coverings, houses)
@example(COVERINGS[0], {"wide_mm": 7000, "deep_mm": 4000, "wing_mm": (3921, 1500)})
@example(COVERINGS[1], {"wide_mm": 7000, "deep_mm": 4000, "wing_mm": (4010, 1500)})
def test_a_mirrored_house_has_the_same_edges_and_nearly_the_same_units(covering: str, house: House) -> None:
    tables: dict[str, Any] = {"edges": EDGES}
    one = house_of(covering, **house, **tables)
    other = house_of(covering, **house, mirrored=True, **tables)
    assume(not one.not_set_out and not other.not_set_out)
    asks = [ask_of(each) for each in (one, other)]
    work = [{task.task: task.quantity for task in tasks(each)} for each in asks]
    assert set(work[0]) == set(work[1])
    for task, quantity in work[0].items():
        if task != "cut":
            assert quantity == pytest.approx(work[1][task], abs=1e-6), task
    of_edges = [
        {
            line.measured.item: line.measured.net
            for line in taken(each).lines
            if line.measured.trade in {Trade.EDGES, Trade.LEAD}
        }
        for each in (one, other)
    ]
    assert of_edges[0] == pytest.approx(of_edges[1])
    # The bond begins at the left and single-lap tiles lap one way, so a hip is cut elsewhere on the other hand.
    widths = [sum(laid_widths_count(slope) for slope in each.slopes) for each in asks]
    assert widths[0] == pytest.approx(widths[1], rel=0.01)


@settings(deadline=None, max_examples=10)
@given(houses)
def test_a_gable_takes_verge_units_of_either_hand(house: House) -> None:
    """The wing's gable stands between two slopes: on the right of one, on the left of the other, in a mirror too."""
    for mirrored in (False, True):
        tables: dict[str, Any] = {"edges": {"verge": {"made": "dry"}}}
        result = house_of(COVERINGS[0], **house, mirrored=mirrored, **tables)
        assume(not result.not_set_out)
        most = max(each.courses.count for each in result.slopes)
        net = nets(taken(result))
        left, right = net["dry-verge-unit-left"], net["dry-verge-unit-right"]
        assert 0 < min(left, right) <= max(left, right) <= most
        # One of the two slopes may go on above the gable's ridge, and its next course begins a little below that.
        assert abs(left - right) <= 1


@settings(deadline=None, max_examples=10)
@given(coverings, houses)
def test_edges_are_gathered_whole(covering: str, house: House) -> None:
    result = house_of(covering, **house, edges=EDGES)
    assume(not result.not_set_out)
    assert result.edges is not None
    answer = taken(result)
    net = nets(answer)
    for item in ("ridge-unit", "hip-unit", "undercloak", "eaves-tray", "mortar"):
        parts = sum(part.net for edge in result.edges.edges for part in edge.parts if part.item == item)
        assert parts == pytest.approx(net[item])
    lines = [edge.line for edge in result.edges.edges if edge.line is not None]
    long_mm = {kind: [line.laid_mm for line in lines if line.kind is kind] for kind in LineKind}
    # By hand from the lengths: whole units of their cover, strips of 1200 mm butted, trays of 1500 mm that lap 100 mm.
    assert net["ridge-unit"] == sum(ceil(each / 450 - 1e-9) for each in long_mm[LineKind.RIDGE])
    assert net["hip-unit"] == sum(ceil(each / 430 - 1e-9) for each in long_mm[LineKind.HIP])
    assert net["undercloak"] == sum(ceil(each / 1200 - 1e-9) for each in long_mm[LineKind.VERGE])
    assert net["eaves-tray"] == sum(1 + max(0, ceil((each - 1500) / 1400 - 1e-9)) for each in long_mm[LineKind.EAVES])
    of_lead = [line for line in answer.lines if line.measured.trade is Trade.LEAD]
    assert result.edges.lead_kg == pytest.approx(sum(line.measured.net for line in of_lead))
    assert of_lead
