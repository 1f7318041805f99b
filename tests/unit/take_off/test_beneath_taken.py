"""Underlay, battens, nails and fixings come into the order just as their own plans count them."""

from dataclasses import replace

import pytest

from gaugerod.fixing.held import Held
from gaugerod.take_off.beneath import beneath_measured
from tests.scenario.take_off_asks import ask
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import ask_of, result_of, slope


def test_nothing_worked_out_nothing_measured() -> None:
    assert [] == list(beneath_measured(ask()))


def test_battens_are_the_lengths_the_cutting_list_buys() -> None:
    asked = ask_of(example("hipped-house"))
    assert asked.battens is not None
    bought = {each.item: each.net for each in beneath_measured(asked) if each.item.removeprefix("batten-").isdigit()}
    assert {f"batten-{each.stock_mm}": float(each.count) for each in asked.battens.cutting.buy} == bought
    metres = sum(int(item.removeprefix("batten-")) * count for item, count in bought.items())
    assert asked.battens.cutting.bought_mm == metres


def test_batten_nails_are_counted_and_weighed() -> None:
    asked = ask_of(example("demo"))
    assert asked.battens is not None
    (nails,) = asked.battens.nails
    (found,) = [each for each in beneath_measured(asked) if each.item.startswith("batten-nails")]
    assert f"batten-nails-{nails.length_mm:g}x{nails.shank_mm:g}" == found.item
    assert float(nails.count) == found.net
    assert found.each_kg is not None
    assert nails.mass_kg == pytest.approx(found.net * found.each_kg)


def test_rolls_are_those_the_runs_are_cut_from() -> None:
    asked = ask_of(example("hipped-house"))
    assert asked.rolls is not None
    (rolls,) = [each for each in beneath_measured(asked) if each.item == "underlay-roll"]
    assert (float(asked.rolls.rolls_count), "rolls") == (rolls.net, rolls.unit)


def test_every_fixing_of_every_slope_is_counted_once_and_names_its_slope() -> None:
    asked = ask_of(example("hipped-house"))
    found = [each for each in beneath_measured(asked) if each.trade.value == "fixings"]
    assert sum(plan.total.in_all_count for plan in asked.fixings) == sum(each.net for each in found)
    for each in found:
        assert [plan.where for plan in asked.fixings] == [name for name, _ in each.by_slope]
        assert each.net == sum(count for _, count in each.by_slope)


def test_each_kind_of_fixing_has_its_item() -> None:
    asked = ask_of(example("demo"))
    plan = replace(asked.fixings[0], total=Held(*range(1, 8)))
    found = {
        each.item: each.net for each in beneath_measured(replace(asked, fixings=(plan,), battens=None, rolls=None))
    }
    assert {
        "tile-nails": 1.0,
        "tail-clips": 2.0,
        "eaves-clips": 3.0,
        "verge-clips": 4.0,
        "slate-hooks": 5.0,
        "bonds": 6.0,
        "nails-or-clips": 7.0,
    } == {item: net for item, net in found.items() if item not in {"lap-tape", "lap-batten"}}


def test_slates_have_slate_nails_with_their_mass() -> None:
    result = result_of(
        "slate-500x250",
        slope("s", across_mm=5000, rafter_mm=4000),
        fixings={"nail_metal": "copper", "thickness": "5 mm"},
    )
    asked = ask_of(result)
    nail = asked.fixings[0].nail
    assert nail is not None
    (found,) = [each for each in beneath_measured(asked) if each.item == "slate-nails"]
    assert (float(nail.count), nail.each_kg) == (found.net, found.each_kg)
    assert "copper clout nail" in found.what


def test_laps_between_battens_that_are_taped_or_battened_are_measured() -> None:
    asked = ask_of(example("demo"))
    plan = asked.underlay[0]
    assert plan.remedies
    first = replace(plan.remedies[0], tape_length_mm=12_300.0, extra_batten_length_mm=4_500.0)
    other = replace(first, tape_length_mm=1_000.0, extra_batten_length_mm=2_000.0)
    taped = replace(plan, remedies=(first, other))
    found = {each.item: (each.net, each.unit) for each in beneath_measured(replace(asked, underlay=(taped,)))}
    assert (12.3, "m") == found["lap-tape"]
    assert (4.5, "m") == found["lap-batten"]


def test_counter_battens_are_measured_by_the_metre() -> None:
    result = result_of(
        "flat-interlocking-420x330",
        slope("s", across_mm=5000, rafter_mm=4000),
        battens={"counter_battens": {"depth": "25 mm", "width": "38 mm"}},
    )
    asked = ask_of(result)
    assert asked.battens is not None
    counter = asked.battens.slopes[0].counter_battens
    assert counter is not None
    (found,) = [each for each in beneath_measured(asked) if each.item == "counter-batten"]
    assert (counter.length_mm / 1000, "m") == (found.net, found.unit)
