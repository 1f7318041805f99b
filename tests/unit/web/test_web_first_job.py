"""What a roofer meets on the first job: two slopes, reclaimed slates, the ridge, a link to send, a file to keep."""

import re
from pathlib import Path
from typing import Any

import pytest

from gaugerod.adapters.store.store import JobStore
from tests.scenario.app_browser import Browser, browsing

SLOPE = {
    "pitch_by": "angle", "pitch": "38", "across": "8.42 m", "rafters[0].length": "4.61 m", "rafters[1].length": "4.63 m",
    "left": "verge", "right": "verge", "top": "ridge",
}  # fmt: skip
HEAPS = {
    "heap[0].length": "600", "heap[0].slates": "900", "heap[0].average_width": "300",
    "heap[1].length": "500", "heap[1].slates": "1400", "heap[1].average_width": "270",
}  # fmt: skip


def rev(browser: Browser, job: str) -> str:
    return str(browser.store.load(job).rev)


def begun(browser: Browser) -> str:
    """A job with its site and its front slope; the back is next."""
    job = browser.post("/jobs").headers["location"].split("/")[2]
    browser.post(f"/jobs/{job}/site", {"title": "14 Mill Lane", "exposure": "moderate", "show_lengths_in": "mm"})
    slope = {**SLOPE, "name": "Front", "do": "save-and-next", "rev": rev(browser, job)}
    assert f"/jobs/{job}/slopes/new" == browser.post(f"/jobs/{job}/slopes/new", slope).headers["location"]
    return job


def with_both_slopes(browser: Browser) -> str:
    job = begun(browser)
    slope = {**SLOPE, "name": "Back", "do": "save", "rev": rev(browser, job)}
    assert f"/jobs/{job}/covering" == browser.post(f"/jobs/{job}/slopes/new", slope).headers["location"]
    return job


def set_out(browser: Browser, job: str) -> dict[str, Any]:
    twin: dict[str, Any] = browser.get(f"/jobs/{job}/set-out.json").json()
    return twin


def ridge_verdicts(browser: Browser) -> set[str]:
    rows = browser.get(f"/jobs/{browser.job}/findings.json").json()
    return {
        row["verdict"]
        for key in ("outside", "not_covered", "within")
        for row in rows[key]
        if row["rule"] == "Ridge cover"
    }


def test_every_sheet_says_which_slope_it_is_of(browser: Browser) -> None:
    job = with_both_slopes(browser)
    browser.post(f"/jobs/{job}/covering", {"from": "flat-interlocking-420x330", "do": "save", "rev": rev(browser, job)})
    files = browser.get(f"/jobs/{job}/sheets.json").json()["downloads"]
    assert ["Front", "Back", ""] == list(dict.fromkeys(file["of"] for file in files))
    for file in files:
        own = file["href"].rpartition("/")[2].partition("-")[0].partition(".")[0]
        assert file["of"].lower() == (own if own in {"front", "back"} else "")
    page = browser.get(f"/jobs/{job}/sheets").text
    assert ["Front", "Back", "The whole job"] == re.findall(r"<h2>(Front|Back|The whole job)</h2>", page)
    assert 1 == page.count("<b>Setting-out sheet</b> <span>Back, PDF</span>")


def test_a_bare_pitch_is_shown_in_degrees(browser: Browser) -> None:
    job = begun(browser)
    assert "8.42 m along the eaves, pitch 38°, 2 rafters measured" in browser.get(f"/jobs/{job}/slopes").text


def test_there_is_room_for_one_rafter_more_without_saving(browser: Browser) -> None:
    job = begun(browser)
    asked = {**SLOPE, "name": "Back", "do": "another-rafter", "rev": rev(browser, job)}
    page = browser.post(f"/jobs/{job}/slopes/new", asked)
    assert 200 == page.status_code
    assert 'name="rafters[2].length" value=""' in page.text
    assert "opening[0]" not in page.text
    assert 1 == len(browser.store.load(job).document["slope"])


def test_heaps_are_added_before_the_covering_is_saved(browser: Browser) -> None:
    asked = {**HEAPS, "from": "random-slates", "shown_for": "random-slates", "do": "show", "rev": "1"}
    page = browser.post(f"/jobs/{browser.job}/covering", asked)
    assert 'name="heap[1].slates" value="1400"' in page.text
    assert 'name="heap[3].length" value=""' in page.text
    assert 1 == browser.store.load(browser.job).rev


def test_no_heap_is_asked_for_in_words_and_not_in_brackets(browser: Browser) -> None:
    page = browser.post(f"/jobs/{browser.job}/covering", {"from": "random-slates", "do": "save", "rev": "1"})
    assert 422 == page.status_code
    assert "one heap for each length" in page.text
    assert "[[" not in page.text


def test_reclaimed_slates_are_set_out_with_what_the_page_asks_for(browser: Browser) -> None:
    job = with_both_slopes(browser)
    asked = {**HEAPS, "from": "random-slates", "shown_for": "random-slates", "do": "save", "rev": rev(browser, job)}
    browser.post(f"/jobs/{job}/covering", asked)
    lacking = set_out(browser, job)
    assert f"/jobs/{job}/set-out" == lacking["lacks"][0]["href"]
    assert ["headlap", "ridge_cover"] == [field["name"] for field in lacking["stated"]]
    stated = {"moved": "yes", "headlap": "90 mm", "ridge_cover": "180", "rev": rev(browser, job)}
    assert 303 == browser.post(f"/jobs/{job}/set-out", stated).status_code
    answer = set_out(browser, job)
    assert ([], "Front", "") == (answer["lacks"], answer["slope"]["name"], answer["not_set_out"])
    assert ["ridge_cover"] == [field["name"] for field in answer["stated"]]


def test_the_reach_of_the_ridge_is_kept_checked_and_taken_out(browser: Browser) -> None:
    kept = {"moved": "yes", "ridge_cover": "130", "rev": "1"}
    browser.post(f"/jobs/{browser.job}/set-out", kept)
    assert "130" == browser.document()["set_out"]["ridge_cover"]
    assert {"within"} == ridge_verdicts(browser)
    browser.post(f"/jobs/{browser.job}/set-out", {"moved": "yes", "ridge_cover": "", "rev": "2"})
    assert "ridge_cover" not in browser.document().get("set_out", {})
    assert {"not-covered"} == ridge_verdicts(browser)


def test_a_reach_that_could_be_two_lengths_is_asked_beside_its_field(browser: Browser) -> None:
    page = browser.post(f"/jobs/{browser.job}/set-out", {"moved": "yes", "ridge_cover": "1.25", "rev": "1"})
    assert 422 == page.status_code
    assert 'id="f-ridge-cover-fault"' in page.text
    assert 1 == page.text.count("Still to do")
    assert 1 == browser.store.load(browser.job).rev


def test_what_a_form_without_sliders_did_not_ask_stays_held(browser: Browser) -> None:
    held = {
        "moved": "yes",
        "overhang": "48",
        "hold_overhang": "yes",
        "lap": "80",
        "hold_lap": "yes",
        "bond": "straight",
        "rev": "1",
    }
    browser.post(f"/jobs/{browser.job}/set-out", held)
    browser.post(f"/jobs/{browser.job}/set-out", {"moved": "yes", "ridge_cover": "140 mm", "rev": "2"})
    document = browser.document()
    assert {"eaves_overhang": "48 mm", "bond": "straight", "ridge_cover": "140 mm"} == {
        key: document["set_out"][key] for key in ("eaves_overhang", "bond", "ridge_cover")
    }
    assert "80 mm" == document["covering"]["headlap_min"]


def test_a_save_without_a_name_names_nobody_and_the_example_is_called_one(browser: Browser) -> None:
    assert "an example to look round in" in browser.get("/").text
    browser.post(f"/jobs/{browser.job}/set-out", {"moved": "yes", "ridge_cover": "130", "rev": "1"})
    for page in ("/", f"/jobs/{browser.job}/history"):
        assert "someone" not in browser.get(page).text, page
    assert "an example to look round in" not in browser.get("/").text


def test_a_job_kept_as_a_file_has_its_title_in_the_name(browser: Browser) -> None:
    said = browser.get(f"/jobs/{browser.job}/keep").headers["content-disposition"]
    assert "gaugerod-job-yard-cottage-rear-slope.json" in said


@pytest.mark.parametrize("address", ["http://localhost:8417", "http://127.0.0.1:8417"])
def test_a_link_that_only_this_machine_can_follow_says_so(store: JobStore, folder: Path, address: str) -> None:
    with browsing(store, folder, address=address) as browser:
        page = browser.post(f"/jobs/{browser.job}/share").text
    assert f"{address}/shared/" in page
    assert "This link opens on this machine only." in page


def test_the_page_of_sheets_warns_of_no_link_before_one_is_made(browser: Browser) -> None:
    assert "This link opens on this machine only." not in browser.get(f"/jobs/{browser.job}/sheets").text


def test_two_jobs_of_one_title_are_told_apart_from_the_rest(browser: Browser) -> None:
    begun(browser)
    assert "another job has this title" not in browser.get("/").text
    begun(browser)
    jobs = sorted((row["title"], row["namesake"]) for row in browser.get("/jobs.json").json()["jobs"])
    assert [("14 Mill Lane", True), ("14 Mill Lane", True), ("Yard Cottage, rear slope", False)] == jobs
    assert 2 == browser.get("/").text.count("another job has this title: look which one you lay from")


def test_a_length_that_could_be_two_is_asked_about_while_it_is_typed(browser: Browser) -> None:
    job = begun(browser)
    typed = {**SLOPE, "across": "8.42", "rev": rev(browser, job)}
    answer = browser.post(f"/jobs/{job}/slopes/new", typed, headers={"HX-Request": "true"}).text
    assert "8.42 could be 8.42 mm or 8.42 m" in answer
    assert "<svg" not in answer
