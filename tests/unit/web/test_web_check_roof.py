"""Checking a roof in the app: what is typed, brought in, taken over from a job, and given back."""

import json
import re
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugerod.adapters.roof_check_file.read import read_roof_document
from gaugerod.web.pages.check_roof.values import document_of, values_of
from gaugerod.wiring import document_of_file, open_store, store_path
from tests.scenario.app_browser import Browser, browsing

EXAMPLES = Path(__file__).parents[3] / "src" / "gaugerod" / "adapters" / "roof_check_file" / "examples"
PATCHED = (EXAMPLES / "patched-slope.toml").read_bytes()
PART = {"hx-request": "true", "hx-request-type": "partial"}
PAGE = "/check-roof"
TYPED = {
    "title": "Back slope", "name": "back", "exposure": "moderate", "pitch_by": "angle", "pitch": "35",
    "covering.from": "flat-interlocking-420x330", "ridge_cover": "125 mm", "finished": "yes", "top": "ridge",
    "show_lengths_in": "mm", "rod[0].at": "0.3 m", "rod[0].rafter": "1.400 m", "rod[0].how": "battens",
    "rod[0].measured": "347\n685, 1023\n1361",
}  # fmt: skip
# By hand: a tile of 420 with a least lap of 75 has a greatest gauge of 345. From 685 to 1040 is 355: lap 65, 10 short.
SHORT = {**TYPED, "rod[0].measured": "347 685 1040 1361"}


def found(browser: Browser, form: dict[str, str], path: str = PAGE) -> Any:  # noqa: ANN401 - as JSON has it
    answer = browser.post(f"{path}.json", {**form, "do": "check"})
    assert 200 == answer.status_code, answer.text
    return answer.json()["found"]


def test_a_door_leads_to_it_from_the_list_and_from_the_slopes(browser: Browser) -> None:
    assert 'href="/check-roof"' in browser.get("/").text
    assert f'href="/jobs/{browser.job}/check-roof"' in browser.get(f"/jobs/{browser.job}/slopes").text


def test_a_sound_roof_is_said_to_be_so_first_of_all(browser: Browser) -> None:
    page = browser.post(PAGE, {**TYPED, "do": "check"}).text
    says = "No lap is short and nothing is outside a rule."
    assert says in page
    assert page.index(says) < page.index("<svg")
    assert "What leaks first" not in page


def test_a_short_lap_is_said_with_how_much_what_leaks_and_what_cures_it(browser: Browser) -> None:
    answer = found(browser, SHORT)
    assert "outside" == answer["verdict"]
    assert "1 of 3 laps is short; course 3 over 2 leaks first, short by 10 mm." == answer["says"]
    assert 1 == len(answer["leaks"])
    laps = next(part for part in answer["courses"] if part["heading"] == "Every lap")["tables"][0]["rows"]
    assert [["2 over 1", "82 mm"], ["3 over 2", "▲ 65 mm, short 10 mm"], ["4 over 3", "99 mm"]] == laps
    assert ["What cures it"] == [part["heading"] for part in answer["cure"]][:1]
    assert {"lap as built", "headlap"} <= {row["rule"].lower() for row in answer["outside"]}
    assert all(row["source"] and row["basis"] for row in answer["outside"])
    page = browser.post(PAGE, {**SHORT, "do": "check"}).text
    assert page.index(answer["says"]) < page.index("What leaks first") < page.index("What cures it")


def test_the_page_says_what_it_does_not_cover_and_that_nothing_is_kept(browser: Browser) -> None:
    page = browser.get(PAGE).text
    for word in (
        "Not covered by this check",
        "Openings in the slope",
        "Hips, valleys",
        "Bow:",
        "is not kept in this program",
    ):
        assert word in page


def test_a_house_tolerance_alone_is_advice_on_the_page_too(browser: Browser) -> None:
    uneven = {**TYPED, "rod[0].rafter": "1.665 m", "rod[0].measured": "347, 647, 947, 1287, 1627"}
    answer = found(browser, uneven)
    assert ([], "open") == (answer["outside"], answer["verdict"])
    assert any("A house tolerance, not a standard" in line for line in answer["advice"])


def test_it_is_checked_while_it_is_typed_and_what_lacks_is_told(browser: Browser) -> None:
    begun = browser.post(PAGE, {"rod[0].measured": "347"}, headers=PART)
    assert 200 == begun.status_code
    assert "Still to give" in begun.text
    assert "This is needed: the pitch of the rafters." in begun.text
    assert "<html" not in begun.text
    whole = browser.post(PAGE, SHORT, headers=PART)
    assert "course 3 over 2 leaks first" in whole.text
    assert "<svg" in whole.text


@pytest.mark.parametrize(
    ("name", "typed", "hint"),
    [
        ("rod[0].measured", "347, 685, 1 023, 1361", "could be 1023, or 1 and 023"),
        ("rod[0].measured", "0.347, 0.685", "could be 0.347 mm or 0.347 m"),
        ("rod[0].measured", "347,685,1023", "has no blank after its commas"),
        ("rod[0].measured", "347, 1023, 685", "Mark 3, 685 mm: give the top edges from the eaves up"),
        ("rod[0].measured", "347", "2 courses or more"),
        ("rod[0].rafter", "4.905", "could be 4905 mm or 4.905 m"),
        ("pitch", "steep", "Pitch:"),
        ("covering.from", "", "Covering: This is needed"),
        ("covering.hanging_length", "430 mm", "Hanging length:"),
        ("headlap", "90 mm", "give it as headlap_min of the covering"),
        ("eaves_overhang[1]", "x", "Eaves overhang, greatest:"),
    ],
)
def test_what_will_not_do_is_refused_beside_its_field_and_nothing_typed_is_lost(
    browser: Browser, name: str, typed: str, hint: str
) -> None:
    form = {**TYPED, "eaves_overhang[0]": "45 mm", name: typed, "do": "check"}
    answer = browser.post(PAGE, form)
    assert 422 == answer.status_code
    assert hint in answer.text.replace("&#39;", "'")
    page = answer.text
    field = "f-" + re.sub(r"[^a-z0-9]+", "-", name).strip("-")
    assert f'href="#{field}"' in page
    assert f'id="{field}-fault"' in page
    for key, value in form.items():
        if key.startswith("rod") and not key.endswith("how"):
            assert f">\n{value}</textarea>" in page if key.endswith("measured") else f'value="{value}"' in page, key


def test_a_covering_that_cannot_be_told_by_its_battens_is_refused_with_what_to_measure(browser: Browser) -> None:
    slates = {**TYPED, "covering.from": "slate-500x250"}
    assert "Measure tail to tail" in browser.post(PAGE, {**slates, "do": "check"}).text
    by_margins = {**slates, "rod[0].how": "margins", "rod[0].overhang": "50 mm", "rod[0].measured": "210 210 215 210",
                  "finished": "no", "rod[0].rafter": "2.4 m", "pitch": "30°"}  # fmt: skip
    answer = found(browser, by_margins)
    # 500 − 420 = 80 and 500 − 425 = 75, where 80 is asked at 30° in moderate exposure
    assert answer["says"].startswith("2 of 3 laps are short")


def test_an_own_tile_is_checked_by_its_own_figures(browser: Browser) -> None:
    own = {
        "covering.from": "own", "covering.form": "flat", "covering.material": "concrete", "covering.length": "400 mm",
        "covering.width": "330 mm", "covering.hanging_length": "380 mm", "covering.headlap_min": "75 mm",
    }  # fmt: skip
    # 338 between battens leaves a tile of 400 a lap of 62: 13 short.
    assert "3 of 3 laps are short" in found(browser, {**TYPED, **own})["says"]
    missing = browser.post(PAGE, {**TYPED, "covering.from": "own", "do": "check"})
    assert 422 == missing.status_code
    assert 'id="f-covering-length-fault"' in missing.text


def test_another_rod_is_added_and_an_emptied_one_is_taken_out(browser: Browser) -> None:
    more = browser.post(PAGE, {**TYPED, "do": "another-rod"})
    assert 'name="rod[1].measured"' in more.text
    assert "347\n685, 1023\n1361</textarea>" in more.text
    two = {
        **TYPED,
        "rod[1].at": "",
        "rod[2].at": "6 m",
        "rod[2].rafter": "1.4 m",
        "rod[2].measured": "347 685 1023 1361",
    }
    rods = browser.post(f"{PAGE}.json", {**two, "do": "check"}).json()["rods"]
    assert ["0.3 m", "6 m"] == [rod["fields"][0]["value"] for rod in rods]


def test_the_roof_file_keeps_what_is_typed_and_brings_it_back(browser: Browser) -> None:
    kept = browser.post(PAGE, {**SHORT, "eaves_overhang[0]": "45 mm", "eaves_overhang[1]": "60 mm", "do": "keep"})
    assert "attachment" in kept.headers["content-disposition"]
    document = json.loads(kept.content)
    assert ["347", "685", "1040", "1361"] == document["rod"][0]["marks"]
    assert ["45 mm", "60 mm"] == document["roof"]["eaves_overhang"]
    back = browser.post(f"{PAGE}.json", {"do": "bring-in"}, files={"file": ("roof.json", kept.content)}).json()
    assert found(browser, SHORT)["leaks"] == back["found"]["leaks"]
    assert "347\n685\n1040\n1361" == back["rods"][0]["measured"]["value"]


def test_what_cannot_be_checked_yet_is_kept_as_well(browser: Browser) -> None:
    kept = browser.post(PAGE, {"name": "back", "rod[0].measured": "1 032, what?", "do": "keep"})
    assert 200 == kept.status_code
    assert {"marks": ["1 032", "what?"]} == json.loads(kept.content)["rod"][0]
    back = browser.post(PAGE, {"do": "bring-in"}, files={"file": ("roof.json", kept.content)})
    assert 422 == back.status_code
    assert "1 032\nwhat?</textarea>" in back.text


def test_what_the_form_does_not_ask_stays_in_the_roof_file() -> None:
    document = {
        **document_of_file(PATCHED),
        "covering": {"from": "flat-interlocking-420x330", "mass": 5.1, "measured": ["mass"]},
    }
    document["roof"] = {**document["roof"], "edition": "GB"}
    values = values_of(document)
    again, unclear = document_of(values)
    assert () == unclear
    assert document["covering"] == again["covering"]
    assert "GB" == again["roof"]["edition"]
    assert read_roof_document(document).ask == read_roof_document(again).ask
    other, _ = document_of({**values, "covering.from": "clay-pantile-340x240"})
    assert {"from": "clay-pantile-340x240"} == other["covering"]


@pytest.mark.parametrize("name", ["patched-slope", "plain-tiles-by-margins"])
def test_an_example_goes_through_the_form_unchanged(name: str) -> None:
    document = document_of_file((EXAMPLES / f"{name}.toml").read_bytes())
    again, unclear = document_of(values_of(document))
    assert () == unclear
    assert read_roof_document(document) == read_roof_document(again)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\xff\xfe",
        b"[roof",
        b"{",
        b"[]",
        b'{"job": {"title": "no roof"}}',
        b'[roof]\ncolour = "red"\n',
        b"{" * 9000,
    ],
)
def test_a_file_that_is_no_roof_file_is_refused_and_leaves_what_is_typed(browser: Browser, content: bytes) -> None:
    answer = browser.post(PAGE, {**TYPED, "do": "bring-in"}, files={"file": ("x", content)})
    assert 422 == answer.status_code
    assert "to put right" in answer.text
    assert "347\n685, 1023\n1361</textarea>" in answer.text


def test_the_record_comes_as_the_command_gives_it(browser: Browser) -> None:
    downloads = found(browser, SHORT)["downloads"]
    assert ["PDF", "SVG", "JSON"] == [each["kind"] for each in downloads]
    starts = {"PDF": b"%PDF", "SVG": b"<svg", "JSON": b"{"}
    for each in downloads:
        answer = browser.post(PAGE, {**SHORT, "do": each["href"]})
        assert 200 == answer.status_code
        assert "attachment" in answer.headers["content-disposition"]
        assert answer.content.startswith(starts[each["kind"]])
    document = json.loads(browser.post(PAGE, {**SHORT, "do": "file:roof-check.json"}).content)
    assert "1 of 3 laps is short; course 3 over 2 leaks first, short by 10 mm." == document["verdict"]
    assert 404 == browser.post(PAGE, {**SHORT, "do": "file:../../etc/passwd"}).status_code
    assert 422 == browser.post(PAGE, {"do": "file:roof-check.pdf"}).status_code


def test_a_job_gives_its_slope_covering_pitch_and_exposure(browser: Browser) -> None:
    twin = browser.get(f"/jobs/{browser.job}/check-roof.json").json()
    fields = {
        field["name"]: field["value"] for group in ("slope", "pitch", "covering", "ends") for field in twin[group]
    }
    assert ("rear", "moderate", "35°") == (fields["name"], fields["exposure"], fields["pitch"])
    assert ("flat-interlocking-420x330", "125 mm") == (fields["covering.from"], fields["ridge_cover"])
    assert ["4905 mm", "4918 mm"] == [rod["fields"][1]["value"] for rod in twin["rods"]]
    assert twin["found"] is None
    assert [] == twin["faults"]
    assert browser.job == twin["job"]["id"]


def test_battens_nailed_in_the_job_are_checked_at_once(browser: Browser) -> None:
    document = browser.document()
    document["slope"][0]["nailed"] = [{"at": "3.730 m", "marks": ["348 mm", "700 mm"]}]
    browser.store.save(browser.job, document, by="test", base_rev=1)
    twin = browser.get(f"/jobs/{browser.job}/check-roof.json").json()
    (rod,) = twin["rods"]
    # half way between rafters of 4905 and 4918
    assert ("4911.5 mm", "348\n700") == (rod["fields"][1]["value"], rod["measured"]["value"])
    # 700 − 348 = 352: a tile of 420 laps 68, 7 short
    assert "1 of 1 lap is short; course 2 over 1 leaks first, short by 7 mm" in twin["found"]["says"]


def test_each_slope_of_a_job_can_be_begun_from(browser: Browser) -> None:
    document = browser.document()
    document["slope"].append({**document["slope"][0], "name": "front", "top": "abutment"})
    browser.store.save(browser.job, document, by="test", base_rev=1)
    twin = browser.get(f"/jobs/{browser.job}/check-roof.json?slope=2").json()
    values = {field["name"]: field["value"] for field in twin["slope"]}
    assert ("front", "abutment") == (values["name"], values["top"])
    assert [("rear", False), ("front", True)] == [(slope["name"], slope["here"]) for slope in twin["begin_from"]]
    assert 404 == browser.get(f"/jobs/{browser.job}/check-roof?slope=3").status_code
    assert 404 == browser.get("/jobs/nobody/check-roof").status_code


def test_a_job_with_nothing_in_it_and_random_slates_begin_an_empty_check(browser: Browser) -> None:
    job = browser.post("/jobs").headers["location"].split("/")[2]
    assert 200 == browser.get(f"/jobs/{job}/check-roof").status_code
    heaps = {"from": "random-slates", "heap": [{"length": "500 mm", "run": "60 m"}]}
    browser.store.save(browser.job, {**browser.document(), "covering": heaps}, by="test", base_rev=1)
    twin = browser.get(f"/jobs/{browser.job}/check-roof.json").json()
    assert "" == twin["covering"][0]["value"]


def test_a_check_saves_nothing(browser: Browser) -> None:
    browser.post(f"/jobs/{browser.job}/check-roof", {**SHORT, "do": "check"})
    assert 1 == len(browser.store.revisions(browser.job))


def test_the_largest_roof_file_is_answered_in_time(browser: Browser) -> None:
    marks = "\n".join(str(330 + 190 * course + (40 if course == 495 else 0)) for course in range(500))
    rods = {f"rod[{index}].{key}": value for index in range(3) for key, value in
            (("at", f"{index} m"), ("rafter", "99 m"), ("how", "battens"), ("measured", marks))}  # fmt: skip
    assert browser.post(PAGE, {**TYPED, **rods, "do": "check"}).status_code in {200, 422}


def test_markup_typed_stays_words(browser: Browser) -> None:
    evil = '</textarea><script>alert(1)</script>{{ 7*7 }}"><img src=x>'
    page = browser.post(PAGE, {**TYPED, "name": evil, "rod[0].measured": evil, "also": evil, "do": "check"}).text
    assert "<script>alert" not in page
    assert "<img" not in page
    named = browser.post(PAGE, {**SHORT, "name": "<b>back</b>", "title": "<i>t</i>", "do": "check"}).text
    assert "<b>back" not in named


FIELDS = (*TYPED, "also", "do", "headlap", "eaves_overhang[0]", "eaves_overhang[1]", "top_batten_from_apex[0]", "pitch.rise",
          "pitch.run", "pitch.rafter", "covering.length", "covering.headlap_min", "covering.hanging_length", "covering.form",
          "covering.nailing",
          "rod[0].overhang", "rod[1].at", "rod[1].rafter", "rod[1].measured", "rod[1].how", "paper")  # fmt: skip
NEAR = ("", "0", "-1", "75", "6 m", "4.905", "nan", "1e309", "35°", "own", "random-slates", "clay-plain-265x165", "slate-500x250",
        "margins", "battens", "yes", "no", "keep", "check", "another-rod", "bring-in", "file:roof-check.pdf",
        "file:roof-check.svg", "347 685 1023", "99, 100, 98", "1 032", "0.1 mm", "100 m", "ft-in", "abutment", "severe", "{}", "[]",
        '{"covering": 1, "roof": [2], "from": {}}', '{"covering": {"mass": []}, "from": "own"}', "\x00", "²", "½",
        "340 340", "5 5 5 5 5 5")  # fmt: skip
TEXT = st.one_of(
    st.sampled_from(NEAR), st.sampled_from(NEAR), st.text(max_size=40).filter(lambda text: "\ud800" not in text)
)
FORM = st.dictionaries(st.sampled_from(FIELDS), TEXT, max_size=12)
JSON = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(-5, 10**400), st.floats(allow_nan=False, allow_infinity=False), TEXT),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4),
        st.dictionaries(st.sampled_from(["at", "rafter", "marks", "margins", "overhang", "from", "length", "pitch", "name"]), inner,
                        max_size=4),
    ),
    max_leaves=10,
)  # fmt: skip
DOCUMENT = st.dictionaries(st.sampled_from(["roof", "covering", "rod", "job"]), JSON, max_size=4)
CALM: dict[str, Any] = {
    "deadline": None,
    "max_examples": 60,
    "suppress_health_check": [HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
}


@pytest.fixture(scope="module")
def one_browser() -> Iterator[Browser]:
    with (
        tempfile.TemporaryDirectory() as folder,
        open_store(store_path(folder)) as store,
        browsing(store, Path(folder)) as opened,
    ):
        yield opened


@settings(**CALM)
@given(form=FORM, whole=st.booleans(), headers=st.sampled_from([{}, {"accept": "application/json"}, PART]))
def test_no_form_ends_in_a_fault_of_the_program(
    one_browser: Browser, form: dict[str, str], headers: dict[str, str], *, whole: bool
) -> None:
    sent = {**(SHORT if whole else {}), **form}
    assert one_browser.post(PAGE, sent, headers=headers).status_code < 500
    assert one_browser.get(f"{PAGE}.json", params=form).status_code < 500
    assert one_browser.get(f"/jobs/{one_browser.job}/check-roof", params=form).status_code < 500


@settings(**CALM)
@given(document=DOCUMENT)
def test_no_file_brought_in_ends_in_a_fault_of_the_program(one_browser: Browser, document: dict[str, Any]) -> None:
    content = json.dumps(document).encode()
    answer = one_browser.post(PAGE, {"do": "bring-in"}, files={"file": ("roof.json", content)})
    assert answer.status_code in {200, 422}


@settings(**CALM)
@given(document=st.dictionaries(st.sampled_from(["job", "covering", "slope", "set_out", "building"]), JSON, max_size=5))
def test_no_job_ends_in_a_fault_when_a_check_is_begun_from_it(one_browser: Browser, document: dict[str, Any]) -> None:
    job = one_browser.store.create(document, by="fuzz", draft=True).job
    assert one_browser.get(f"/jobs/{job}/check-roof").status_code < 500
    one_browser.store.archive(job)
