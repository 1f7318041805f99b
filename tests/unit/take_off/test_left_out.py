"""What the order leaves out is said, a sentence each; what it holds is not."""

import re
from dataclasses import replace
from typing import Any

import pytest

from gaugerod.edges.ask import LineKind
from gaugerod.edges.make_edges import make_edges
from gaugerod.edges.wished import AirUnit, AirUnitsWished, EdgesWished
from gaugerod.take_off.left_out import left_out
from gaugerod.take_off.take_off import take_off
from gaugerod.take_off.wished import OrderWished, Pack
from tests.scenario.edged_roofs import edges_ask, line
from tests.scenario.take_off_asks import ask, edge, edges, opening, part
from tests.scenario.taken_off import example
from tests.scenario.taken_off_jobs import ask_of, result_of, slope, taken

BARE_EDGES: tuple[dict[str, Any], ...] = (
    {"ridge": {"made": "dry"}, "valley": {"made": "lead"}, "verge": {"made": "dry"}, "wall": {"lead_code": 3}},
    {"ridge": {"made": "bedded"}, "valley": {"made": "liner"}, "verge": {"made": "cloaked"}, "wall": {"lead_code": 7}},
    {"valley": {"made": "valley-tiles"}, "eaves": {"tray_length": 1500}, "wall": {"beside": "soakers"}},
)
"""Edges of which too little is said, or what does not go with every covering."""


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
    assert "No item of this job is called slate, so the pack stated for it is not used." == answer.not_counted[-1]
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


@pytest.mark.parametrize("code", [3, 7, 8])
def test_flashings_of_lead_that_may_not_lie_there_are_named(code: int) -> None:
    one = slope("rear", across_mm=6000, rafter_mm=4000, right="abutment")
    said = taken(result_of("flat-interlocking-420x330", one, edges={"wall": {"lead_code": code}})).not_counted
    assert 1 == sum(each.startswith("rear, abutment: ") and " counted" in each for each in said)


def test_what_a_finding_leaves_out_is_named_whatever_words_stand_in_it() -> None:
    unit = AirUnit(title="strip no. 3: short", area_mm2=10_000.0, length_mm=1000.0)
    wished = EdgesWished(air=AirUnitsWished(low=unit))
    roof = make_edges(edges_ask(line(LineKind.EAVES), wished=wished))
    (missing,) = [each for each in roof.findings if each.leaves_out]
    assert f"{missing.where}: {missing.says}" in list(left_out(ask(edges=roof), ()))
    assert "none of strip no. 3: short are counted" in missing.says


@pytest.mark.parametrize("covering", ["clay-plain-265x165", "flat-interlocking-420x330", "slate-500x250"])
@pytest.mark.parametrize("tables", BARE_EDGES)
def test_every_finding_that_says_nothing_is_counted_leaves_something_out(covering: str, tables: dict[str, Any]) -> None:
    """Whoever writes such a sentence must say so to the order too."""
    for right in ("abutment", "verge", "valley", "hip"):
        one = slope("rear", across_mm=6000, rafter_mm=4000, right=right)
        edges = result_of(covering, one, edges=tables).edges
        assert edges is not None
        for finding in edges.findings:
            says_so = re.search(r"\b(?:no|none)\b.*\bcounted\b", finding.says, re.IGNORECASE) is not None
            assert says_so == finding.leaves_out, finding


def test_an_opening_of_which_nothing_is_said_is_named() -> None:
    said = list(left_out(ask(edges=edges(opening("dormer"))), ()))[-1]
    assert "Openings of which it was not said what stands in them, their lead and kits with them: dormer." == said


def test_batten_nails_that_no_rule_reaches_are_named() -> None:
    asked = ask_of(example("hipped-house"))
    assert asked.battens is not None
    (said,) = take_off(replace(asked, battens=replace(asked.battens, nails=()))).not_counted
    assert said.startswith("The nails of the battens")
