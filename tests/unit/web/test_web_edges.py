"""The page of the edges: only what this roof has is asked, answered while typed, and nothing else is touched."""

import re
from importlib.resources import files
from typing import Any

import pytest

from gaugerod.wiring import document_of_file
from tests.scenario.app_browser import Browser

PARTIAL = {"hx-request": "true", "hx-request-type": "partial"}
_EXAMPLES = files("gaugerod.adapters.job_file").joinpath("examples")


def path(browser: Browser, job: str = "") -> str:
    return f"/jobs/{job or browser.job}/edges"


def twin(browser: Browser, job: str = "") -> dict[str, Any]:
    found: dict[str, Any] = browser.get(f"{path(browser, job)}.json").json()
    return found


def looked_at(browser: Browser, form: dict[str, str]) -> dict[str, Any]:
    found: dict[str, Any] = browser.post(f"{path(browser)}.json", {"rev": "1", **form}).json()
    return found


def sent_back(browser: Browser) -> dict[str, str]:
    """Every field of the page as a browser sends it."""
    page = browser.get(path(browser)).text
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    for name, options in re.findall(r'<select id="[^"]+" name="([^"]+)"[^>]*>(.*?)</select>', page, re.DOTALL):
        form[name] = "".join(re.findall(r'<option value="([^"]*)" selected', options))
    form |= dict(re.findall(r'<input type="hidden" name="(asked_[^"]+)" value="(yes)"', page))
    return form | dict.fromkeys(re.findall(r'<input type="checkbox" name="([^"]+)" value="yes" checked', page), "yes")


def edge(answer: dict[str, Any], name: str) -> dict[str, Any]:
    return next(each for each in answer["answered"]["edges"] if each["name"] == name)


def with_edges(browser: Browser, edges: dict[str, Any] | None) -> None:
    document = {key: value for key, value in browser.document().items() if key != "edges"}
    browser.store.save(browser.job, document if edges is None else {**document, "edges": edges}, by="test", base_rev=1)


def hipped(browser: Browser) -> str:
    document = document_of_file(_EXAMPLES.joinpath("hipped-house.toml").read_bytes())
    return browser.store.create(document, by="test").job


def test_only_the_edges_of_this_roof_are_asked_about(browser: Browser) -> None:
    assert ["Ridges", "Verges", "Walls", "Eaves", "Vents"] == [part["title"] for part in twin(browser)["asked"]]
    of_house = twin(browser, hipped(browser))["asked"]
    assert ["Ridges and hips", "Verges", "Valleys", "Eaves", "Vents"] == [part["title"] for part in of_house]
    assert ["Ridge unit", "Hip unit"] == [more["title"] for more in of_house[0]["more"]]


def test_what_the_job_says_of_an_edge_it_has_not_is_shown_all_the_same(browser: Browser) -> None:
    with_edges(browser, {"valley": {"made": "lead"}})
    assert "Valleys" in [part["title"] for part in twin(browser)["asked"]]


def test_every_edge_is_told_with_its_length_and_what_it_takes(browser: Browser) -> None:
    answer = twin(browser)
    ridge = edge(answer, "rear, ridge")
    assert ("7485 mm", "18") == (dict(ridge["numbers"])["long, as laid"], dict(ridge["numbers"])["units"])
    assert {"Ridge unit, 450 mm long", "Roll that seals a dry ridge or hip"} <= {
        f"{part['what'][:1].upper()}{part['what'][1:]}" for part in ridge["parts"]
    }
    assert all(part["source"] for each in answer["answered"]["edges"] for part in (*each["parts"], *each["lead"]))
    assert edge(answer, "rear, abutment")["lead"]
    assert all(drawing["wide"].startswith("<svg") for drawing in answer["answered"]["drawings"])
    assert f"/jobs/{browser.job}/sheets/edges.pdf" == answer["answered"]["sheet"]


def test_an_edge_of_which_nothing_is_said_has_a_length_only(browser: Browser) -> None:
    with_edges(browser, None)
    answer = twin(browser)
    assert "" == edge(answer, "rear, ridge")["made"]
    assert "7485 mm" == dict(edge(answer, "rear, ridge")["numbers"])["long, as laid"]
    assert (0, []) == (len(edge(answer, "rear, ridge")["parts"]), edge(answer, "rear, ridge")["lead"])
    assert "not said how" in browser.get(path(browser)).text


def test_the_answer_follows_what_is_typed_and_nothing_is_saved(browser: Browser) -> None:
    form = sent_back(browser)
    answer = looked_at(browser, {**form, "edges.ridge.unit.cover": "300 mm"})
    assert "25" == dict(edge(answer, "rear, ridge")["numbers"])["units"]
    part = browser.post(path(browser), {"rev": "1", **form}, headers=PARTIAL).text
    assert "<html" not in part
    assert "Edge by edge" in part
    assert 1 == len(browser.store.revisions(browser.job))


def test_what_the_page_shows_and_sends_back_is_the_same_document(browser: Browser) -> None:
    before = browser.document()
    assert 303 == browser.post(path(browser), {**sent_back(browser), "rev": "1", "do": "save"}).status_code
    after = browser.document()
    assert before == after


def test_what_is_not_asked_stays_in_the_job(browser: Browser) -> None:
    document = browser.document()
    document["edges"]["ridge"]["hips"] = "bonnet"
    browser.store.save(browser.job, document, by="test", base_rev=1)
    sent = {"asked_edges.verge": "yes", "on_edges.verge": "yes", "edges.verge.made": "dry", "rev": "2", "do": "save"}
    assert 303 == browser.post(path(browser), sent).status_code
    document["edges"]["verge"]["made"] = "dry"
    assert document == browser.document()


def test_a_part_switched_off_is_taken_out_and_the_last_takes_the_table_along(browser: Browser) -> None:
    form = {**sent_back(browser), "rev": "1", "do": "save"}
    browser.post(path(browser), {**form, "on_edges.verge": ""})
    assert {"air", "eaves", "ridge", "wall"} == set(browser.document()["edges"])
    off = {name: "" for name in form if name.startswith("on_")}
    browser.post(path(browser), {**form, **off, "rev": "2"})
    assert "edges" not in browser.document()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("edges.ridge.made", ""),
        ("edges.ridge.made", "glued"),
        ("edges.ridge.unit.length", "long"),
        ("edges.ridge.unit.cover", "451 mm"),
        ("edges.ridge.unit.fixings", "many"),
        ("edges.wall.lead_code", "2"),
        ("edges.wall.lead_code", "nan"),
        ("edges.air.low.area", "-1"),
        ("slope[0].opening[0].made", "a door"),
    ],
)
def test_a_fault_stands_beside_its_field_keeps_what_was_typed_and_saves_nothing(
    browser: Browser, name: str, text: str
) -> None:
    form = {**sent_back(browser), "rev": "1", name: text}
    answer = looked_at(browser, form)
    assert 1 == len(answer["to_say"])
    assert answer["answered"] is not None, "the other edges are answered"
    saved = browser.post(path(browser), {**form, "do": "save"})
    assert 422 == saved.status_code
    assert "Nothing was saved yet" in saved.text
    assert f'name="{name}"' in saved.text
    assert 1 == len(browser.store.revisions(browser.job))


def test_what_stands_in_an_opening_is_asked_here_as_well(browser: Browser) -> None:
    form = {**sent_back(browser), "rev": "1", "do": "save", "slope[0].opening[0].made": "chimney"}
    assert 303 == browser.post(path(browser), form).status_code
    assert "chimney" == browser.document()["slope"][0]["opening"][0]["made"]
    assert edge(twin(browser), "rear, rooflight")["lead"]
    browser.post(path(browser), {**form, "rev": "2", "slope[0].opening[0].made": ""})
    assert "made" not in browser.document()["slope"][0]["opening"][0]


def test_a_save_on_top_of_another_keeps_both_and_asks_where_they_differ(browser: Browser) -> None:
    form = {**sent_back(browser), "rev": "1", "do": "save"}
    browser.post(path(browser), {**form, "edges.ridge.unit.mass": "5 kg"})
    browser.post(path(browser), {**form, "edges.verge.bed": "90 mm"})
    assert ("5 kg", "90 mm") == (
        browser.document()["edges"]["ridge"]["unit"]["mass"], browser.document()["edges"]["verge"]["bed"],
    )  # fmt: skip
    clash = browser.post(path(browser), {**form, "edges.ridge.unit.mass": "6 kg"})
    assert 409 == clash.status_code


def test_an_edge_with_a_fault_in_the_kept_job_waits_and_leads_here_from_elsewhere(browser: Browser) -> None:
    document = browser.document()
    document["edges"]["ridge"]["made"] = "glued"
    browser.store.save(browser.job, document, by="test", base_rev=1, draft=True)
    assert edge(twin(browser), "rear, verge")["made"]
    assert f'href="/jobs/{browser.job}/edges"' in browser.get(f"/jobs/{browser.job}/findings").text


@pytest.mark.parametrize("key", ["edges", "order", "record"])
def test_what_follows_the_marks_does_not_hold_up_the_sliders_of_the_setting_out(browser: Browser, key: str) -> None:
    before = browser.get(f"/jobs/{browser.job}/set-out.json").json()
    document = {**browser.document(), key: {"unheard": "of"}}
    browser.store.save(browser.job, document, by="test", base_rev=1, draft=True)
    after = browser.get(f"/jobs/{browser.job}/set-out.json").json()
    assert before["slope"] == after["slope"]
    assert after["more_asked"]


def test_the_setting_out_says_nothing_is_asked_where_nothing_is(browser: Browser) -> None:
    kept = {key: value for key, value in browser.document().items() if key in {"job", "covering", "slope", "set_out"}}
    browser.store.save(browser.job, kept, by="test", base_rev=1)
    assert not browser.get(f"/jobs/{browser.job}/set-out.json").json()["more_asked"]


def test_findings_of_edges_and_order_stand_under_their_own_name(browser: Browser) -> None:
    names = browser.get(f"/jobs/{browser.job}/findings.json").json()["parts_of_job"]
    assert {"Setting out", "Edges", "Order"} <= set(names)
