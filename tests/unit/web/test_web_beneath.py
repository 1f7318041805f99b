"""Battens, underlay, air, fixings and masses on their page: asked part by part, answered while typed, and nothing lost."""

import re
from importlib.resources import files
from typing import Any

import pytest

from gaugerod.web.job_answer import answer_of
from gaugerod.wiring import document_of_file
from tests.scenario.app_browser import Browser

PARTIAL = {"hx-request": "true", "hx-request-type": "partial"}
EVERY_PART = {
    "on_battens": "yes", "on_underlay": "yes", "underlay.resistance": "low", "underlay.lies_on": "rafters",
    "on_ventilation": "yes", "ventilation.insulated": "at-ceiling", "on_fixings": "yes", "fixings.nail_metal": "aluminium",
    "fixings.nail_holes": "1", "fixings.thickness": "25 mm", "on_load": "yes", "load.old.least": "48",
}  # fmt: skip
PARTS = ("battens", "underlay", "ventilation", "fixings", "load")


@pytest.fixture(autouse=True)
def nothing_asked_yet(browser: Browser) -> None:
    """The demo job without what lies beneath, as its only revision."""
    document = {key: value for key, value in browser.document().items() if key not in PARTS}
    browser.store.save(browser.job, document, by="test", base_rev=1)


def path(browser: Browser) -> str:
    return f"/jobs/{browser.job}/beneath"


def answer(browser: Browser, form: dict[str, str]) -> dict[str, Any]:
    """What the twin answers to a form that is looked at and not saved."""
    found: dict[str, Any] = browser.post(f"{path(browser)}.json", {"rev": "2", **form}).json()
    return found


def field(twin: dict[str, Any], name: str) -> dict[str, Any]:
    every = [
        each
        for part in twin["asked"]
        for group in (
            part["first"],
            *([*more["fields"], *(f for row in more["rows"] for f in row)] for more in part["more"]),
        )
        for each in group
    ]
    return next(each for each in every if each["name"] == name)


def headings(twin: dict[str, Any]) -> list[str]:
    return [plan["heading"] for plan in twin["answered"]["of_slope"]]


def test_a_job_that_asks_for_nothing_is_told_how_to_begin(browser: Browser) -> None:
    page = browser.get(path(browser)).text
    assert "Switch a part on" in page
    assert " checked" not in page


def test_every_part_is_answered_as_soon_as_it_is_switched_on(browser: Browser) -> None:
    twin = answer(browser, EVERY_PART)
    assert ["Batten joints", "Underlay", "Nails and clips"] == headings(twin)
    assert ["Openings for air", "Mass on the slope"] == [part["heading"] for part in twin["answered"]["rows"]]
    assert ["Battens to buy and to saw", "Underlay to buy and to cut"] == [
        plan["heading"] for plan in twin["answered"]["to_cut"]
    ]
    ordered = twin["answered"]["order"][0]["tables"][0]["rows"]
    assert ["Battens", "Nails of the battens", "Underlay", "Fixings, rear"] == [row[0] for row in ordered]
    assert all(
        drawing["wide"].startswith("<svg") for plan in twin["answered"]["of_slope"] for drawing in plan["drawings"]
    )
    assert 2 == len(browser.store.revisions(browser.job)), "looking saves nothing"


def test_only_what_is_switched_on_is_answered(browser: Browser) -> None:
    form = {**EVERY_PART, "on_underlay": "", "on_ventilation": "", "on_fixings": "", "on_load": ""}
    twin = answer(browser, form)
    assert ["Batten joints"] == headings(twin)
    assert [] == twin["answered"]["rows"]


def test_the_answer_alone_is_sent_while_a_person_types(browser: Browser) -> None:
    sent = browser.post(path(browser), {"rev": "2", **EVERY_PART}, headers=PARTIAL).text
    assert "<html" not in sent
    assert "Batten joints" in sent
    assert 'name="battens.stock"' not in sent


def test_what_is_saved_stands_in_the_job_as_it_was_typed(browser: Browser) -> None:
    typed = {
        **EVERY_PART, "battens.stock": "3.6 m, 480 cm", "battens.counter_battens.width": "38",
        "battens.counter_battens.depth": "2.5 cm",
        "battens.gun_nails": "yes", "underlay.rating[0].resists": "1600", "underlay.rating[0].gauge": "345 mm",
        "underlay.rating[0].laps_held": "no", "underlay.on_hill_or_cliff": "no", "underlay.altitude": "120 m",
        "underlay.wind_zone": "2", "load.old.title": "old slates", "load.covering": "45.5", "rev": "2", "do": "save",
    }  # fmt: skip
    saved = browser.post(path(browser), typed)
    assert (303, path(browser)) == (saved.status_code, saved.headers["location"])
    document = browser.document()
    assert {
        "stock": ["3.6 m", "480 cm"], "gun_nails": True, "counter_battens": {"width": "38", "depth": "2.5 cm"},
    } == document["battens"]  # fmt: skip
    assert {
        "resistance": "low", "lies_on": "rafters", "rating": [{"resists": 1600, "gauge": "345 mm", "laps_held": False}],
        "on_hill_or_cliff": False, "altitude": "120 m", "wind_zone": 2,
    } == document["underlay"]  # fmt: skip
    assert {"covering": 45.5, "old": {"least": 48, "title": "old slates"}} == document["load"]
    page = browser.get(path(browser)).text
    for shown in ('value="3.6 m, 480 cm"', 'value="120 m"', 'value="45.5"', 'value="1600"'):
        assert shown in page
    assert [False] == list({line.draft for line in browser.store.revisions(browser.job)})


def test_what_the_page_shows_and_sends_back_is_the_same_document(browser: Browser) -> None:
    document = browser.document()
    document["battens"] = {"stock": ["3.6 m", 4800], "kerf": "3 mm", "close_joints": "together"}
    document["underlay"] = {
        "resistance": "high", "lies_on": "boards", "mass": 0.4, "valley_strip": "600 mm", "between_battens": "tape",
        "rating": [{"resists": 900, "gauge": "310 mm", "laps_held": True}], "ceiling_sealed": True,
    }  # fmt: skip
    document["ventilation"] = {"insulated": "along-slope", "span": "9.2 m", "through_flow": True}
    document["fixings"] = {"nail_metal": "copper", "slates_by": "hooks", "hook_wire": "2.7 mm"}
    document["load"] = {"old": {"least": 40, "greatest": 44.5}, "warn": 12}
    browser.store.save(browser.job, document, by="test", base_rev=2)
    page = browser.get(path(browser)).text
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    for name, options in re.findall(r'<select id="[^"]+" name="([^"]+)"[^>]*>(.*?)</select>', page, re.DOTALL):
        form[name] = "".join(re.findall(r'<option value="([^"]*)" selected', options))
    form |= {f"on_{part}": "yes" for part in PARTS}
    assert 303 == browser.post(path(browser), {**form, "rev": "3", "do": "save"}).status_code
    document["battens"]["stock"] = ["3.6 m", "4800 mm"]
    assert document == browser.document()


def test_a_part_switched_off_is_taken_out_and_the_others_stay(browser: Browser) -> None:
    browser.post(path(browser), {**EVERY_PART, "rev": "2", "do": "save"})
    without = {**EVERY_PART, "on_load": "", "on_battens": ""}
    browser.post(path(browser), {**without, "rev": "3", "do": "save"})
    assert ["fixings", "underlay", "ventilation"] == sorted(set(PARTS) & set(browser.document()))
    browser.post(f"/jobs/{browser.job}/go-back", {"to": "3"})
    assert {"least": 48} == browser.document()["load"]["old"]


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("battens.stock", "long ones"),
        ("battens.stock", "3 600 4 200"),
        ("battens.kerf", "4.905"),
        ("underlay.roll_width", "wide"),
        ("underlay.resistance", ""),
        ("underlay.wind_zone", "7"),
        ("underlay.wind_zone", "2.5"),
        ("ventilation.span", "-3 m"),
        ("fixings.nail_holes", "two"),
        ("fixings.nail_shank", "nan"),
        ("load.covering", "1e9"),
        ("load.covering", "inf"),
        ("load.old.least", "48 kg"),
    ],
)
def test_a_fault_stands_beside_its_field_in_words_and_nothing_typed_is_lost(
    browser: Browser, name: str, text: str
) -> None:
    before = browser.document()
    typed = {**EVERY_PART, "battens.kerf": "3 mm", "underlay.title": 'the "blue" one', name: text}
    refused = browser.post(path(browser), {**typed, "rev": "2", "do": "save"})
    assert 422 == refused.status_code
    assert "to put right" in refused.text
    twin = browser.post(f"{path(browser)}.json", {**typed, "rev": "2", "do": "save"}).json()
    assert [] != field(twin, name)["faults"]
    assert field(twin, name)["value"] == text
    assert 'the "blue" one' == field(twin, "underlay.title")["value"]
    assert not any("[0]" in fault["says"] or "_" in fault["says"] for fault in twin["faults"])
    assert before == browser.document()


def test_a_part_with_a_fault_waits_and_the_others_are_answered(browser: Browser) -> None:
    twin = answer(browser, {**EVERY_PART, "fixings.nail_holes": "two"})
    assert ["Batten joints", "Underlay"] == headings(twin)
    assert ["f-fixings-nail-holes"] == [each["field_id"] for each in twin["to_say"]]
    twin = answer(browser, {**EVERY_PART, "underlay.resistance": ""})
    assert ["Batten joints", "Nails and clips"] == headings(twin)
    assert ["Mass on the slope"] == [part["heading"] for part in twin["answered"]["rows"]], "air needs the underlay"


def test_air_without_underlay_is_said_in_the_words_of_the_page(browser: Browser) -> None:
    twin = answer(browser, {"on_ventilation": "yes", "ventilation.insulated": "at-ceiling"})
    assert ["Openings depend on the underlay. Wanted: the underlay switched on as well."] == field(
        twin, "ventilation.insulated"
    )["faults"]


def test_what_is_typed_in_a_part_switched_off_stays_on_the_form(browser: Browser) -> None:
    twin = answer(browser, {**EVERY_PART, "on_load": "", "load.covering": "45"})
    assert "45" == field(twin, "load.covering")["value"]
    assert "load" not in {part["key"] for part in twin["asked"] if part["on"]}


def test_a_group_under_more_stands_open_when_something_is_in_it(browser: Browser) -> None:
    shut, wide = (answer(browser, {**EVERY_PART, **more}) for more in ({}, {"underlay.roll_width": "1.5 m"}))
    opened = [[more["opened"] for part in twin["asked"] for more in part["more"]] for twin in (shut, wide)]
    assert [0, 1] == [sum(groups) for groups in opened]


def test_the_plans_of_any_slope_can_be_chosen(browser: Browser) -> None:
    hipped = files("gaugerod.adapters.job_file").joinpath("examples", "hipped-house.toml").read_bytes()
    job = browser.store.create(document_of_file(hipped), by="test", draft=False).job
    twin = browser.post(f"/jobs/{job}/beneath.json", {**EVERY_PART, "rev": "1", "slope": "house 3"}).json()
    assert ("house 3", 5) == (twin["slope"], len(twin["slopes"]))
    assert all(
        "house 3" in drawing["wide"] for plan in twin["answered"]["of_slope"][:1] for drawing in plan["drawings"]
    )
    saved = browser.post(f"/jobs/{job}/beneath", {**EVERY_PART, "rev": "1", "slope": "house 3", "do": "save"})
    assert f"/jobs/{job}/beneath?slope=house%203" == saved.headers["location"]
    assert "house 3" == browser.get(f"{saved.headers['location']}".replace("?", ".json?")).json()["slope"]


def test_what_is_outside_in_the_setting_out_is_not_passed_over(browser: Browser) -> None:
    assert 0 == answer(browser, EVERY_PART)["answered"]["setting_out_outside_count"]
    document = browser.document()
    document["slope"][0]["pitch"] = 14
    browser.store.save(browser.job, document, by="test", base_rev=2)
    twin = answer(browser, {**EVERY_PART, "rev": "3"})
    assert 0 < twin["answered"]["setting_out_outside_count"]
    page = browser.post(path(browser), {**EVERY_PART, "rev": "3"}).text
    assert page.index("OUTSIDE a rule in the setting out") < page.index("To order")


def test_a_slope_that_is_not_set_out_is_named(browser: Browser) -> None:
    document = browser.document()
    short = {**document["slope"][0], "name": "lean-to", "rafters": ["0.2 m"]}
    del short["opening"], short["ridge"], short["diagonals"]
    browser.store.save(browser.job, {**document, "slope": [*document["slope"], short]}, by="test", base_rev=2)
    twin = answer(browser, {**EVERY_PART, "rev": "3"})
    assert ["lean-to"] == twin["answered"]["not_set_out"]
    assert ["rear"] == [choice["value"] for choice in twin["slopes"]]


def test_on_a_screen_no_scale_is_promised(browser: Browser) -> None:
    twin = answer(browser, EVERY_PART)
    captions = [drawing["caption"] for plan in twin["answered"]["of_slope"] for drawing in plan["drawings"]]
    assert 3 == len(captions)
    assert not any("1:" in caption for caption in captions)


def test_the_page_says_the_numbers_the_engine_gives(browser: Browser) -> None:
    twin = answer(browser, EVERY_PART)
    browser.post(path(browser), {**EVERY_PART, "rev": "2", "do": "save"})
    result = answer_of(browser.document()).result
    assert result is not None
    assert result.beneath.battens is not None
    assert result.beneath.rolls is not None
    plans = {plan["heading"]: plan for plan in (*twin["answered"]["of_slope"], *twin["answered"]["to_cut"])}

    def figure(plan: str, label: str) -> str:
        return next(str(each["values"][0]) for each in plans[plan]["figures"] if each["label"] == label)

    assert str(result.beneath.fixings[0].total.nails_count) == figure("Nails and clips", "Nails")
    assert str(len(result.beneath.underlay[0].runs)) == figure("Underlay", "Runs")
    assert str(result.beneath.rolls.rolls_count) == figure("Underlay to buy and to cut", "Rolls")
    assert f"{result.beneath.battens.cutting.bought_mm / 1000:.1f} m" == figure("Battens to buy and to saw", "Bought")
    air = next(part for part in twin["answered"]["rows"] if part["heading"] == "Openings for air")
    assert [f"{each.slot_mm:g} mm" for each in (*result.beneath.air[0].low, *result.beneath.air[0].high)] == [
        dict(row["numbers"])["slot"] for row in air["rows"][:2]
    ]


def test_findings_are_told_part_by_part(browser: Browser) -> None:
    browser.post(path(browser), {**EVERY_PART, "rev": "2", "do": "save"})
    twin = browser.get(f"/jobs/{browser.job}/findings.json").json()
    names = ["Setting out", "Battens", "Underlay", "Nails and clips", "Mass on the slope", "Edges", "Order"]
    assert names == [name for name in twin["parts_of_job"] if name != "Openings for air"]
    rows = [*twin["outside"], *twin["not_covered"], *twin["within"]]
    assert set(twin["parts_of_job"]) == {row["part"] for row in rows}
    assert len(rows) == len({tuple(row.values()) for row in rows}), "what reads the same is told once"


def test_what_lies_beneath_does_not_hold_up_the_sliders_of_the_setting_out(browser: Browser) -> None:
    before = browser.get(f"/jobs/{browser.job}/set-out.json").json()
    document = {**browser.document(), "battens": {"kerf": "no length"}}
    browser.store.save(browser.job, document, by="test", base_rev=2, draft=True)
    after = browser.get(f"/jobs/{browser.job}/set-out.json").json()
    assert before["slope"] == after["slope"]
    assert after["more_asked"]
    lacks = browser.get(f"/jobs/{browser.job}/findings.json").json()["lacks"]
    assert [path(browser)] == [lack["href"] for lack in lacks]


def test_the_middles_of_rafters_are_typed_on_the_page_of_the_slope(browser: Browser) -> None:
    page = f"/jobs/{browser.job}/slopes/1"
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', browser.get(page).text))
    choices = {"pitch_by": "angle", "left": "verge", "right": "abutment", "top": "ridge", "rev": "2", "do": "save"}
    unclear = browser.post(f"{page}.json", {**form, **choices, "rafters_at": "1 400"})
    assert (422, ["f-rafters-at"]) == (unclear.status_code, [each["field_id"] for each in unclear.json()["faults"]])
    middles = "20 mm, 0.45 m, 900, 1350, 7440"
    assert 303 == browser.post(page, {**form, **choices, "rafters_at": middles}).status_code
    assert ["20 mm", "0.45 m", "900", "1350", "7440"] == browser.document()["slope"][0]["rafters_at"]
    assert f'value="{middles}"' in browser.get(page).text
