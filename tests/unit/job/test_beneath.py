"""What lies beneath, joined to the job: what is asked for is worked out, what cannot be is said."""

import tomllib
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.job_file.read import read_job_document
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Beneath, Result
from gaugerod.job.set_out import set_out

EXAMPLES = Path(str(files("gaugerod.adapters.job_file").joinpath("examples")))
EVERY: dict[str, Any] = {
    "battens": {},
    "underlay": {"resistance": "low", "lies_on": "rafters"},
    "ventilation": {"insulated": "at-ceiling"},
    "fixings": {"nail_metal": "copper"},
    "load": {"old": {"least": 45}},
}


def example(name: str, **tables: Any) -> dict[str, Any]:  # noqa: ANN401 - tables as a job file has them
    document = tomllib.loads((EXAMPLES / f"{name}.toml").read_text("utf-8"))
    for key in EVERY:
        document.pop(key, None)
    return {**document, **tables}


def answer(name: str, **tables: Any) -> Result:  # noqa: ANN401
    return set_out(read_job_document(example(name, **tables)))


def test_what_is_not_asked_for_is_not_worked_out() -> None:
    assert Beneath() == answer("demo").beneath


@pytest.mark.parametrize("name", ["demo", "plain-tiles", "slates", "random-slates", "hipped-house", "feet-and-inches"])
def test_every_part_is_there_for_every_slope(name: str) -> None:
    result = answer(name, **EVERY)
    under, names = result.beneath, [slope.slope.name for slope in result.slopes]
    assert under.battens is not None
    assert under.rolls is not None
    for part in (under.battens.slopes, under.underlay, under.air, under.fixings, under.loads):
        assert names == [each.where for each in part]


@pytest.mark.parametrize("key", sorted(EVERY))
def test_one_part_alone_brings_no_other(key: str) -> None:
    with_underlay = {"underlay": EVERY["underlay"]} if key == "ventilation" else {}
    under = answer(
        "demo",
        **with_underlay,
        **({} if key == "underlay" else {key: EVERY[key]}),
        **({"underlay": EVERY["underlay"]} if key == "underlay" else {}),
    ).beneath
    there = {
        "battens": under.battens is not None,
        "underlay": bool(under.underlay),
        "ventilation": bool(under.air),
        "fixings": bool(under.fixings),
        "load": bool(under.loads),
    }
    assert {key, *with_underlay} == {part for part, is_there in there.items() if is_there}


def test_every_finding_beneath_is_among_the_findings_of_the_result_and_carries_its_source() -> None:
    result = answer("demo", **EVERY)
    assert set(result.beneath.findings) <= set(result.findings)
    assert all(finding.citation.source and finding.citation.basis for finding in result.beneath.findings)


@pytest.mark.parametrize("name", ["demo", "hipped-house", "plain-tiles"])
def test_the_findings_of_every_part_are_among_those_of_the_result(name: str) -> None:
    result = set_out(read_job_document(example(name)))
    assert result.edges is not None
    assert result.take_off is not None
    parts = (
        result.beneath.findings,
        result.edges.findings,
        result.take_off.findings,
        *(slope.findings for slope in result.slopes),
    )
    assert {finding for part in parts for finding in part} <= set(result.findings)
    under = result.beneath
    planned = (
        *(each.findings for each in under.underlay),
        *(each.findings for each in under.fixings),
        *(each.findings for each in under.air),
        *(each.findings for each in under.loads),
    )
    assert {finding for found in planned for finding in found} <= set(under.findings)
    assert {finding for edge in result.edges.edges for finding in edge.findings} <= set(result.edges.findings)


def test_the_working_tells_every_part() -> None:
    names = [part.name for part in answer("demo", **EVERY).working.parts]
    for word in ("batten", "underlay", "rolls", "ventilation", "fix", "load"):
        assert any(word in name for name in names), (word, names)


def test_without_rafters_no_joint_is_placed_and_it_says_so() -> None:
    document = example("demo", battens={})
    del document["slope"][0]["rafter_spacing"]
    result = set_out(read_job_document(document))
    assert result.beneath.battens is None
    said = [finding for finding in result.findings if finding.rule == "batten joints"]
    assert [Verdict.NOT_COVERED] == [finding.verdict for finding in said]
    assert "rafters_at" in said[0].says


def test_rafters_measured_one_by_one_carry_the_joints_and_settle_the_section() -> None:
    document = example("demo", battens={})
    middles = [20, 470, 1000, 1500, 2050, 2600, 3150, 3700, 4250, 4800, 5350, 5900, 6450, 7000, 7440]
    document["slope"][0]["rafters_at"] = middles
    result = set_out(read_job_document(document))
    battens = result.beneath.battens
    assert battens is not None
    assert tuple(map(float, middles)) == battens.slopes[0].rafters_mm
    assert {(50.0, 25.0)} == {
        (slope.section.width_mm, slope.section.depth_mm) for slope in battens.slopes if slope.section is not None
    }
    joints = {x for line in battens.slopes[0].lines for stretch in line.stretches for x, _ in stretch.joints_mm}
    assert joints
    assert all(min(abs(x - middle) for middle in middles) < 0.01 for x in joints)


@pytest.mark.parametrize(
    ("middles", "path"),
    [
        ([500, 400], "slope[0].rafters_at[1]"),
        ([0, 9000], "slope[0].rafters_at[1]"),
        ([-1, 400], "slope[0].rafters_at[0]"),
    ],
)
def test_rafters_out_of_order_or_off_the_roof_are_refused(middles: list[int], path: str) -> None:
    document = example("demo")
    document["slope"][0]["rafters_at"] = middles
    with pytest.raises(InputRefused) as refused:
        read_job_document(document)
    assert path in [fault.field for fault in refused.value.faults]


def test_openings_for_air_need_the_underlay_named() -> None:
    with pytest.raises(InputRefused) as refused:
        read_job_document(example("demo", ventilation={"insulated": "at-ceiling"}))
    assert ["underlay"] == [fault.field for fault in refused.value.faults]


@pytest.mark.parametrize(
    ("table", "path"),
    [
        ({"battens": {"stock": ["1.1 m"]}}, "battens.stock[0]"),
        ({"battens": {"kerf": -1}}, "battens.kerf"),
        ({"underlay": {"lies_on": "rafters"}}, "underlay.resistance"),
        ({"underlay": {"resistance": "low", "lies_on": "air"}}, "underlay.lies_on"),
        ({"underlay": {"resistance": "low", "lies_on": "boards", "wind_zone": 6}}, "underlay.wind_zone"),
        ({"underlay": {"resistance": "low", "lies_on": "boards", "wind_zone": True}}, "underlay.wind_zone"),
        ({"fixings": {}}, "fixings.nail_metal"),
        ({"fixings": {"nail_metal": "copper", "nail_holes": 5}}, "fixings.nail_holes"),
        ({"load": {"covering": "heavy"}}, "load.covering"),
        ({"load": {"covering": float("nan")}}, "load.covering"),
        ({"load": {"old": {"least": 50, "greatest": 40}}}, "load.old.greatest"),
        ({"load": {"warn": 0}}, "load.warn"),
    ],
)
def test_figures_that_cannot_be_are_refused_at_their_place(table: dict[str, Any], path: str) -> None:
    with pytest.raises(InputRefused) as refused:
        read_job_document(example("demo", **table))
    assert path in [fault.field for fault in refused.value.faults]


def test_hooks_for_tiles_are_refused() -> None:
    job = read_job_document(example("demo", fixings={"nail_metal": "copper", "slates_by": "hooks"}))
    with pytest.raises(InputRefused):
        set_out(job)


def test_a_valley_between_two_slopes_has_one_strip() -> None:
    strips = [
        strip
        for plan in answer("hipped-house", **EVERY).beneath.underlay
        for strip in plan.strips
        if strip.kind.value == "valley"
    ]
    assert [False, True] == sorted(strip.elsewhere for strip in strips)


def test_battens_of_slates_stand_about_their_nail_line() -> None:
    result = answer("slates", **EVERY)
    battens = result.beneath.battens
    assert battens is not None
    line = {each.name: each for each in battens.slopes[0].lines}["1"]
    mark_mm = result.slopes[0].courses.rods[0].marks_mm[0]
    assert mark_mm + 25.0 == pytest.approx(line.stretches[0].ends_mm[0][1], abs=0.5)


def test_the_mass_of_battens_is_that_of_the_plan() -> None:
    under = answer("demo", **EVERY).beneath
    assert under.battens is not None
    parts = {part.name: part for part in under.loads[0].parts}
    laid_m = under.battens.slopes[0].net_mm / 1000
    kg_m2 = laid_m * 0.038 * 0.025 * 500 / (under.loads[0].area_mm2 / 1e6)
    assert kg_m2 == pytest.approx(parts["battens"].mass.least_kg_m2, rel=1e-6)


def test_a_slope_turned_round_needs_the_same() -> None:
    document = example("plain-tiles", **EVERY)
    turned = example("plain-tiles", **EVERY)
    slope = turned["slope"][0]
    slope["left"], slope["right"] = slope["right"], slope["left"]
    slope["rafters"] = list(reversed(slope["rafters"]))
    before, after = (set_out(read_job_document(each)).beneath for each in (document, turned))
    assert before.battens is not None
    assert after.battens is not None
    assert before.battens.cutting.bought_mm == after.battens.cutting.bought_mm
    assert [plan.total for plan in before.fixings] == [plan.total for plan in after.fixings]
    assert [round(plan.laid_area_mm2) for plan in before.underlay] == [
        round(plan.laid_area_mm2) for plan in after.underlay
    ]


def test_what_cannot_be_battened_or_underlaid_is_still_weighed() -> None:
    stuck = example("demo", battens={"stock": ["2.4 m"]}, load={})
    stuck["slope"][0].update(rafter_spacing="600 mm", across="8.400 m")
    for key in ("ridge", "diagonals"):
        stuck["slope"][0].pop(key)
    flat = example("demo", **EVERY)
    flat["slope"][0]["pitch"] = "10°"
    for document in (stuck, flat):
        parts = [part.name for part in set_out(read_job_document(document)).beneath.loads[0].parts]
        assert "battens and underlay" in parts


def test_the_outer_rafters_stand_at_both_ends_of_the_roof() -> None:
    battens = answer("demo", battens={}).beneath.battens
    assert battens is not None
    rafters = battens.slopes[0].rafters_mm
    assert (19.0, 419.0, 7460.0 - 19.0) == (rafters[0], rafters[1], rafters[-1])


def high_slots(name: str, *, top: str, pitch: str = "30°") -> list[float]:
    document = example(
        name,
        underlay={"resistance": "high", "lies_on": "rafters"},
        ventilation={"insulated": "at-ceiling", "span": "8 m", "through_flow": True},
    )
    document["slope"][0].update(top=top, pitch=pitch)
    (air,) = set_out(read_job_document(document)).beneath.air
    return [opening.slot_mm for opening in air.high]


def test_a_slope_with_none_behind_it_is_vented_at_its_top() -> None:
    # UK ventilation guides to BS 5250: 10 mm at the eaves alone at 15 to 35 degrees and under 10 m; 5 mm more where mono.
    assert [] == high_slots("demo", top="ridge")
    assert [5.0] == high_slots("demo", top="mono-ridge")
    assert [5.0] == high_slots("demo", top="abutment")


def test_close_slates_ask_for_air_over_the_underlay_and_tiles_do_not() -> None:
    def over_the_underlay(name: str) -> set[str]:
        (air,) = answer(name, underlay=EVERY["underlay"], ventilation=EVERY["ventilation"]).beneath.air
        return {opening.serves for opening in (*air.low, *air.high)}

    assert {"the roof space"} == over_the_underlay("demo")
    assert "the space between counter-battens" in over_the_underlay("slates")


def test_what_an_opening_takes_is_not_weighed() -> None:
    document = example("demo", load={})
    with_hole = set_out(read_job_document(document)).beneath.loads[0].area_mm2
    del document["slope"][0]["opening"]
    without = set_out(read_job_document(document)).beneath.loads[0].area_mm2
    assert 780.0 * 1180.0 == pytest.approx(without - with_hole)


@pytest.mark.parametrize(("altitude", "verdict"), [("100 m", Verdict.WITHIN), ("100.1 m", Verdict.NOT_COVERED)])
def test_heights_of_the_site_reach_the_gates_of_the_wind_zones_in_metres(altitude: str, verdict: Verdict) -> None:
    site = {
        "wind_zone": 1,
        "altitude": altitude,
        "ridge_height": "15 m",
        "on_hill_or_cliff": False,
        "ceiling_sealed": True,
    }
    label = {"resists": 820, "gauge": "345 mm", "laps_held": True}
    result = answer("demo", underlay={**EVERY["underlay"], **site, "rating": [label]})
    uplift = [finding for finding in result.findings if finding.rule == "underlay uplift"]
    assert [verdict] == [finding.verdict for finding in uplift]
