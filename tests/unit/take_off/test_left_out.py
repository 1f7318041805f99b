"""What the order leaves out is said, a sentence each; what it holds is not."""

from dataclasses import replace

from gaugerod.take_off.left_out import left_out
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished, Pack
from tests.scenario.take_off_asks import ask, edge, edges, part
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import ask_of, result_of, slope, taken


def test_parts_that_were_not_asked_for() -> None:
    assert ["Battens", "Underlay", "Nails, clips and hooks"] == [
        next(name for name in ("Battens", "Underlay", "Nails, clips and hooks") if said.startswith(name))
        for said in left_out(ask(), ())
    ]


def test_edges_that_were_not_said_how_they_are_made_are_named() -> None:
    roof = edges(edge("ridge", part("ridge-unit", 1.0)), edge("left verge", made=""), edge("right verge", made=""))
    said = "Edges of which it was not said how they are made: left verge; right verge."
    assert said == list(left_out(ask(edges=roof), ()))[-1]


def test_a_pack_of_what_is_not_taken() -> None:
    answer = take_off(ask(wished=OrderWished(packs=(Pack(item="slate", size=10.0), Pack(item="tile", size=10.0)))))
    assert "A pack is stated for slate, and this job takes none." == answer.not_counted[-1]
    assert not any("for tile" in said for said in answer.not_counted)


def test_nothing_is_left_out_where_all_was_worked_out() -> None:
    assert () == take_off(ask_of(example("demo"))).not_counted


def test_a_slope_that_one_part_was_not_worked_out_for_is_named() -> None:
    asked = ask_of(example("hipped-house"))
    assert asked.battens is not None
    first = asked.slopes[0].name
    without = replace(
        asked,
        underlay=tuple(each for each in asked.underlay if each.where != first),
        fixings=tuple(each for each in asked.fixings if each.where != first),
        battens=replace(asked.battens, slopes=tuple(each for each in asked.battens.slopes if each.where != first)),
    )
    assert [
        f"{first}: the battens of this slope and their nails. What was found of it says why.",
        f"{first}: the underlay of this slope. What was found of it says why.",
        f"{first}: the fixings of this slope's covering. What was found of it says why.",
    ] == list(take_off(without).not_counted)


def test_a_slope_whose_battens_could_not_be_planned_is_named() -> None:
    asked = ask_of(example("hipped-house"))
    assert asked.battens is not None
    first, *others = asked.battens.slopes
    none_planned = replace(asked.battens, slopes=(replace(first, net_mm=0), *others))
    said = f"{first.where}: the battens of this slope and their nails. What was found of it says why."
    assert (said,) == take_off(replace(asked, battens=none_planned)).not_counted


def test_parts_of_edges_that_could_not_be_counted_are_named() -> None:
    """A ridge whose unit is not given, soakers with no flashing over them, a dry verge of plain tiles."""
    tables = {
        "ridge": {"made": "dry"},
        "wall": {"lead_code": 3},
        "verge": {"made": "dry"},
        "eaves": {"tray_length": 1500},
    }
    one = slope("rear", across_mm=6000, rafter_mm=4000, right="abutment")
    said = taken(result_of("clay-plain-265x165", one, edges=tables)).not_counted
    for where, why in (
        ("rear, ridge", "The ridge unit is not known, so none are counted"),
        ("rear, abutment", "Code 3 lead is for soakers only: in the open it splits. None is counted."),
        ("rear, verge", "For this covering none are counted"),
    ):
        assert 1 == sum(each.startswith(f"{where}: ") and why in each for each in said)
