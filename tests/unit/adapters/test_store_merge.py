"""Two edits of one job put together: each field from whoever changed it, asked where both did."""

from copy import deepcopy
from typing import Any

import pytest

from gaugerod.adapters.store.merge import Absent, Conflict, merged
from tests.scenario.kept_jobs import a_job


def edited(**slope: object) -> dict[str, Any]:
    document = a_job()
    document["slope"][0].update(slope)
    return document


def two_slopes(*names: str, **changed: object) -> dict[str, Any]:
    document = a_job()
    document["slope"] = [{**document["slope"][0], "name": name} for name in names]
    document["slope"][0].update(changed)
    return document


BASE = a_job()


def test_each_field_comes_from_whoever_changed_it() -> None:
    mine = edited(pitch="36°")
    theirs = edited(across="7.500 m")
    theirs["job"]["title"] = "Yard"
    expected = edited(pitch="36°", across="7.500 m")
    expected["job"]["title"] = "Yard"
    for one, other in ((mine, theirs), (theirs, mine)):
        merge = merged(BASE, one, other)
        assert (expected, ()) == (merge.document, merge.conflicts)


def test_nothing_given_is_changed_by_merging() -> None:
    mine, theirs = edited(pitch="36°"), edited(across="7.500 m")
    before = deepcopy((BASE, mine, theirs))
    merged(BASE, mine, theirs)
    assert before == (BASE, mine, theirs)


def test_a_field_both_changed_is_asked_and_the_answer_stands() -> None:
    mine, theirs = edited(pitch="36°"), edited(pitch="37°")
    path = ("slope", "rear", "pitch")
    merge = merged(BASE, mine, theirs)
    assert merge.document is None
    assert (Conflict(path=path, base="35°", mine="36°", theirs="37°"),) == merge.conflicts
    assert mine == merged(BASE, mine, theirs, chosen={path: "mine"}).document
    assert theirs == merged(BASE, mine, theirs, chosen={path: "theirs"}).document


def test_both_made_the_same_change_is_no_conflict() -> None:
    assert edited(pitch="36°") == merged(BASE, edited(pitch="36°"), edited(pitch="36°")).document


@pytest.mark.parametrize(
    ("base", "mine", "theirs"),
    [
        (["4.905 m", "4.918 m"], ["4.900 m", "4.918 m"], ["4.905 m", "4.920 m"]),
        ({"rise": "8", "run": "12"}, {"rise": "9", "run": "12"}, {"rise": "8", "run": "10"}),
        ([{"at": "0 m"}], [{"at": "1 m"}], [{"at": "0 m"}, {"at": "2 m"}]),
    ],
    ids=["rafters", "pitch by rise and run", "rafters by place"],
)
def test_one_measurement_is_never_taken_half_from_each(base: object, mine: object, theirs: object) -> None:
    merge = merged(edited(measured=base), edited(measured=mine), edited(measured=theirs))
    assert (Conflict(path=("slope", "rear", "measured"), base=base, mine=mine, theirs=theirs),) == merge.conflicts


def test_slopes_are_met_by_their_names() -> None:
    base = two_slopes("rear", "front")
    mine = two_slopes("rear", "front", "porch", pitch="36°")
    theirs = two_slopes("front", "rear", pitch="40°")
    merge = merged(base, mine, theirs)
    assert merge.document is not None
    assert [("front", "40°"), ("rear", "36°"), ("porch", "35°")] == [
        (slope["name"], slope["pitch"]) for slope in merge.document["slope"]
    ]


def test_openings_inside_a_slope_are_met_by_their_names_too() -> None:
    base = edited(opening=[{"name": "rooflight", "width": "780 mm", "height": "1180 mm"}])
    mine = edited(opening=[{"name": "rooflight", "width": "800 mm", "height": "1180 mm"}])
    theirs = edited(opening=[{"name": "rooflight", "width": "780 mm", "height": "1200 mm"}, {"name": "chimney"}])
    expected = edited(opening=[{"name": "rooflight", "width": "800 mm", "height": "1200 mm"}, {"name": "chimney"}])
    assert expected == merged(base, mine, theirs).document


def test_a_slope_taken_out_by_one_goes_unless_the_other_changed_it() -> None:
    base = two_slopes("rear", "front")
    without = two_slopes("front")
    assert without == merged(base, without, base).document == merged(base, base, without).document
    changed = two_slopes("rear", "front", pitch="36°")
    (conflict,) = merged(base, without, changed).conflicts
    assert (("slope", "rear"), Absent.ABSENT, changed["slope"][0]) == (conflict.path, conflict.mine, conflict.theirs)
    assert without == merged(base, without, changed, chosen={("slope", "rear"): "mine"}).document
    chosen = merged(base, without, changed, chosen={("slope", "rear"): "theirs"}).document
    assert chosen is not None
    assert changed["slope"][0] in chosen["slope"]


def test_the_same_name_added_by_both_is_asked_whole() -> None:
    mine, theirs = two_slopes("rear", "porch"), two_slopes("rear", "porch")
    theirs["slope"][1]["pitch"] = "50°"
    assert [("slope", "porch")] == [conflict.path for conflict in merged(BASE, mine, theirs).conflicts]


def test_names_that_stand_twice_make_the_list_one_field() -> None:
    base, mine, theirs = (two_slopes("rear", "rear", pitch=pitch) for pitch in ("35°", "36°", "37°"))
    assert [("slope",)] == [conflict.path for conflict in merged(base, mine, theirs).conflicts]


def test_an_order_changed_by_both_is_asked() -> None:
    base, mine, theirs = two_slopes("a", "b", "c"), two_slopes("b", "a", "c"), two_slopes("a", "c", "b")
    assert [("slope",)] == [conflict.path for conflict in merged(base, mine, theirs).conflicts]
    assert mine == merged(base, mine, mine).document
    assert theirs == merged(base, base, theirs).document


def test_a_heading_added_by_both_is_put_together_by_field() -> None:
    mine = {**BASE, "set_out": {"bond": "broken"}}
    theirs = {**BASE, "set_out": {"perps_every": 2}}
    assert {**BASE, "set_out": {"bond": "broken", "perps_every": 2}} == merged(BASE, mine, theirs).document


def test_a_heading_taken_out_and_changed_is_asked() -> None:
    base = {**BASE, "set_out": {"bond": "broken"}}
    (conflict,) = merged(base, BASE, {**BASE, "set_out": {"bond": "straight"}}).conflicts
    assert (("set_out",), Absent.ABSENT) == (conflict.path, conflict.mine)


def test_true_is_not_one() -> None:
    merge = merged({"covering": {"x": 1}}, {"covering": {"x": True}}, {"covering": {"x": 1}})
    assert merge.document is not None
    assert True is merge.document["covering"]["x"]
