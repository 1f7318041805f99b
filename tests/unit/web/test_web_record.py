"""The page of the record: who and where, and everything outside a rule accepted by name or left open."""

import re
from typing import Any

import pytest

from tests.scenario.app_browser import Browser


def path(browser: Browser) -> str:
    return f"/jobs/{browser.job}/record"


def twin(browser: Browser) -> dict[str, Any]:
    found: dict[str, Any] = browser.get(f"{path(browser)}.json").json()
    return found


@pytest.fixture
def too_flat(browser: Browser) -> Browser:
    """The demo at a pitch its tile is not made for."""
    document = browser.document()
    document["slope"][0]["pitch"] = 19
    browser.store.save(browser.job, document, by="test", base_rev=1)
    return browser


def accepted(browser: Browser, number: int, *, by: str, rev: str = "2", **more: str) -> Any:  # noqa: ANN401
    form = {
        f"accept[{number}].{key}": text for key, text in {"what": "Left as it is.", "accepted_by": by, **more}.items()
    }
    return browser.post(f"{path(browser)}/accept", {"rev": rev, "number": str(number), **form})


def test_who_and_where_is_kept_as_it_was_typed(browser: Browser) -> None:
    typed = {"record.site": "Yard Cottage, Mill Lane", "record.laid_by": "A. Hand", "record.handed_to": "", "rev": "1"}
    assert 303 == browser.post(path(browser), typed).status_code
    assert {"site": "Yard Cottage, Mill Lane", "laid_by": "A. Hand"} == browser.document()["record"]
    assert 'value="Yard Cottage, Mill Lane"' in browser.get(path(browser)).text


def test_a_roof_with_nothing_outside_has_nothing_to_accept(browser: Browser) -> None:
    answer = twin(browser)
    assert ([], 0) == (answer["outside"], answer["not_accepted_count"])
    assert f"/jobs/{browser.job}/sheets/record.pdf" == answer["sheet"]
    assert 200 == browser.get(answer["sheet"]).status_code


def test_what_is_outside_a_rule_is_accepted_by_name(too_flat: Browser) -> None:
    before = twin(too_flat)
    assert before["not_accepted_count"] == len(before["outside"])
    number = next(each["number"] for each in before["outside"] if each["row"]["rule"] == "Pitch")
    assert 303 == accepted(too_flat, number, by="the owner", on="1 May").status_code
    deviation = too_flat.document()["record"]["deviation"]
    assert [
        {"what": "Left as it is.", "accepted_by": "the owner", "on": "1 May", "rule": "pitch", "where": "rear"}
    ] == deviation
    after = twin(too_flat)
    assert before["not_accepted_count"] - 1 == after["not_accepted_count"]
    assert len(before["outside"]) == len(after["outside"]), "it stays outside the rule"
    assert ["accepted by the owner, 1 May"] == [each["accepted"] for each in after["outside"] if each["accepted"]]


def test_a_second_acceptance_stands_beside_the_first(too_flat: Browser) -> None:
    accepted(too_flat, 0, by="the owner")
    still = next(each["number"] for each in twin(too_flat)["outside"] if not each["accepted"])
    accepted(too_flat, still, by="the inspector", rev="3")
    assert ["the owner", "the inspector"] == [
        each["accepted_by"] for each in too_flat.document()["record"]["deviation"]
    ]


def test_an_acceptance_without_a_name_is_refused_and_nothing_typed_is_lost(too_flat: Browser) -> None:
    page = accepted(too_flat, 0, by="", what="Kept: the owner likes it.")
    assert 422 == page.status_code
    assert "Accepted by: This is needed" in page.text
    assert 'value="Kept: the owner likes it."' in page.text
    assert "record" not in too_flat.document()


@pytest.mark.parametrize("number", ["99", "-1", "x", "", "١"])
def test_an_acceptance_of_nothing_changes_nothing(too_flat: Browser, number: str) -> None:
    before = too_flat.document()
    answer = too_flat.post(f"{path(too_flat)}/accept", {"rev": "2", "number": number, "accept[0].accepted_by": "x"})
    assert (303, before) == (answer.status_code, too_flat.document())


def test_a_finding_of_several_places_is_accepted_at_all_or_at_one(browser: Browser) -> None:
    document = browser.document()
    document["slope"][0]["pitch"] = 19
    document["slope"].append({**document["slope"][0], "name": "front"})
    browser.store.save(browser.job, document, by="test", base_rev=1)
    listed = twin(browser)["outside"]
    each = next(one for one in listed if one["row"]["rule"] == "Pitch")
    where = f"accept[{each['number']}].where"
    choices = next(field["choices"] for field in each["fields"] if field["name"] == where)
    assert ["", "rear", "front"] == [choice["value"] for choice in choices]
    accepted(browser, each["number"], by="the owner", where="front")
    assert ["front"] == [row["where"] for row in browser.document()["record"]["deviation"]]
    left = next(one for one in twin(browser)["outside"] if one["row"]["rule"] == "Pitch" and not one["accepted"])
    assert "rear" == left["row"]["where"]


def test_both_places_at_once_make_a_line_for_each(browser: Browser) -> None:
    document = browser.document()
    document["slope"][0]["pitch"] = 19
    document["slope"].append({**document["slope"][0], "name": "front"})
    browser.store.save(browser.job, document, by="test", base_rev=1)
    each = next(one for one in twin(browser)["outside"] if one["row"]["rule"] == "Pitch")
    accepted(browser, each["number"], by="the owner")
    assert ["rear", "front"] == [row["where"] for row in browser.document()["record"]["deviation"]]
    refused = accepted(
        browser, next(o["number"] for o in twin(browser)["outside"] if not o["accepted"]), by="", rev="3"
    )
    assert 422 == refused.status_code


def test_what_the_page_shows_and_sends_back_is_the_same_document(too_flat: Browser) -> None:
    accepted(too_flat, 0, by="the owner")
    before = too_flat.document()
    page = too_flat.get(path(too_flat)).text.partition("</form>")[2]
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    assert "record.deviation[0].what" in form
    too_flat.post(path(too_flat), {**form, "rev": "3"})
    assert before == too_flat.document()


def test_a_deviation_cleared_is_taken_out(too_flat: Browser) -> None:
    accepted(too_flat, 0, by="the owner")
    keys = ("what", "accepted_by", "on", "rule", "where")
    too_flat.post(path(too_flat), {"rev": "3", **{f"record.deviation[0].{key}": "" for key in keys}})
    assert "deviation" not in too_flat.document()["record"]


def test_a_deviation_by_hand_needs_a_name(browser: Browser) -> None:
    form = {"record.deviation[0].what": "Old gutter kept.", "record.deviation[0].accepted_by": "", "rev": "1"}
    page = browser.post(path(browser), form)
    assert 422 == page.status_code
    assert 'value="Old gutter kept."' in page.text
    assert "record" not in browser.document()
