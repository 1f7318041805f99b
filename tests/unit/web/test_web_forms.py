import re

import pytest

from tests.scenario.app_browser import Browser

SLOPE = {
    "name": "porch", "pitch_by": "angle", "pitch": "40", "across": "3.2 m", "rafters[0].length": "2.1 m",
    "rafters[1].length": "2.1 m", "left": "verge", "right": "verge", "top": "ridge", "do": "save",
}  # fmt: skip


def shown(page: str, field: str) -> str:
    found = re.search(rf'name="{re.escape(field)}" value="([^"]*)"', page)
    assert found is not None, field
    return found[1]


def test_a_job_is_made_from_nothing_page_by_page(browser: Browser) -> None:
    job = browser.post("/jobs").headers["location"].split("/")[2]
    site = browser.post(
        f"/jobs/{job}/site", {"title": "Porch", "exposure": "severe", "show_lengths_in": "mm", "rev": "1"}
    )
    assert f"/jobs/{job}/slopes" == site.headers["location"]
    slope = browser.post(f"/jobs/{job}/slopes/new", {**SLOPE, "rev": "2"})
    assert f"/jobs/{job}/covering" == slope.headers["location"]
    covering = browser.post(f"/jobs/{job}/covering", {"from": "flat-interlocking-420x330", "rev": "3", "do": "save"})
    assert f"/jobs/{job}/set-out" == covering.headers["location"]
    twin = browser.get(f"/jobs/{job}/set-out.json").json()
    assert ([], "porch") == (twin["lacks"], twin["slope"]["name"])
    assert [True, True, True, False] == [line.draft for line in browser.store.revisions(job)]


def test_nothing_typed_is_lost_on_a_fault_and_each_fault_stands_beside_its_field(browser: Browser) -> None:
    before = browser.document()
    typed = {**SLOPE, "across": "seven", "rafters[1].length": "4.905", "name": 'the "porch"', "rev": "1"}
    answer = browser.post(f"/jobs/{browser.job}/slopes/new", typed)
    assert 422 == answer.status_code
    assert "seven" == shown(answer.text, "across")
    assert "4.905" == shown(answer.text, "rafters[1].length")
    assert "the &#34;porch&#34;" == shown(answer.text, "name")
    assert 'id="f-across-fault"' in answer.text
    assert 'id="f-rafters-1-length-fault"' in answer.text
    assert 'aria-invalid="true"' in answer.text
    assert 'href="#f-across"' in answer.text
    assert "2 things to put right" in answer.text
    assert before == browser.document()


def test_faults_come_as_json_too(browser: Browser) -> None:
    answer = browser.post(f"/jobs/{browser.job}/slopes/new.json", {**SLOPE, "across": "seven"})
    assert 422 == answer.status_code
    assert ["f-across"] == [fault["field_id"] for fault in answer.json()["faults"]]


@pytest.mark.parametrize(
    ("way", "figures", "expected"),
    [
        ("angle", {"pitch": "8 in 12"}, "8 in 12"),
        ("rise", {"pitch.rise": "2 m", "pitch.run": "3 m"}, {"rise": "2 m", "run": "3 m"}),
        ("rafter", {"pitch.rafter": "4 m", "pitch.run": "3 m"}, {"rafter": "4 m", "run": "3 m"}),
    ],
)
def test_the_pitch_may_be_known_in_any_way(
    browser: Browser, way: str, figures: dict[str, str], expected: object
) -> None:
    form = {name: text for name, text in SLOPE.items() if name != "pitch"}
    assert 303 == browser.post(f"/jobs/{browser.job}/slopes/new", {**form, "pitch_by": way, **figures}).status_code
    slope = browser.document()["slope"][1]
    assert expected == slope["pitch"]


def test_the_drawing_answers_while_the_tape_is_read_out(browser: Browser) -> None:
    part = {"hx-request": "true", "hx-request-type": "partial"}
    path = f"/jobs/{browser.job}/slopes/new"
    nothing = browser.post(path, {"across": "3.2 m"}, headers=part)
    assert "<svg" not in nothing.text
    some = browser.post(path, {"across": "3.2 m", "rafters[0].length": "2.1 m", "ridge": "what?"}, headers=part)
    assert "<svg" in some.text
    assert ">3200</text>" in some.text
    assert "<html" not in some.text
    square = browser.post(
        path,
        {"across": "4 m", "rafters[0].length": "3 m", "rafters[1].length": "3 m", "diagonals.from_left": "5 m",
         "diagonals.from_right": "5.2 m", "ridge": "4 m"},
        headers=part,
    )  # fmt: skip
    assert "OUTSIDE" in square.text
    assert 1 == len(browser.store.revisions(browser.job))


def test_openings_and_what_the_form_does_not_ask_stay_when_a_slope_is_saved(browser: Browser) -> None:
    document = browser.document()
    document["slope"][0]["nailed"] = [{"at": "0 m", "marks": ["348 mm"]}]
    browser.store.save(browser.job, document, by="test", base_rev=1)
    page = browser.get(f"/jobs/{browser.job}/slopes/1").text
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    choices = dict(re.findall(r'<select id="[^"]+" name="([^"]+)".*?<option value="([^"]+)" selected', page, re.DOTALL))
    assert (
        303
        == browser.post(f"/jobs/{browser.job}/slopes/1", {**form, **choices, "name": "back", "do": "save"}).status_code
    )
    saved = browser.document()["slope"][0]
    assert {**document["slope"][0], "name": "back", "bottom": "eaves"} == {"bottom": "eaves", **saved}


def test_what_stands_in_an_opening_is_asked_and_an_emptied_opening_is_taken_out(browser: Browser) -> None:
    page = browser.get(f"/jobs/{browser.job}/slopes/1").text
    form = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    choices = dict(re.findall(r'<select id="[^"]+" name="([^"]+)".*?<option value="([^"]+)" selected', page, re.DOTALL))
    assert "kit" == choices["opening[0].made"]
    sent = {**form, **choices, "do": "save"}
    browser.post(f"/jobs/{browser.job}/slopes/1", {**sent, "opening[0].made": "chimney"})
    assert "chimney" == browser.document()["slope"][0]["opening"][0]["made"]
    emptied = {name: "" for name in form if name.startswith("opening[0]")}
    browser.post(f"/jobs/{browser.job}/slopes/1", {**sent, **emptied})
    assert "opening" not in browser.document()["slope"][0]


def test_a_slope_can_be_taken_out(browser: Browser) -> None:
    assert 303 == browser.post(f"/jobs/{browser.job}/slopes/1", {"do": "take-out"}).status_code
    assert "slope" not in browser.document()


def test_a_moved_wish_is_shown_and_not_kept_until_it_is_sent(browser: Browser) -> None:
    path = f"/jobs/{browser.job}/set-out"
    moved = browser.get(f"{path}.json?moved=yes&overhang=70&hold_overhang=yes").json()
    assert "70 mm" in [value for figure in moved["slope"]["figures"] for value in figure["values"]]
    assert "eaves_overhang" not in browser.document()["set_out"]
    assert 303 == browser.post(path, {"moved": "yes", "overhang": "70", "hold_overhang": "yes", "rev": "1"}).status_code
    assert {"ridge_cover": "125 mm", "eaves_overhang": "70 mm"} == browser.document()["set_out"]
    browser.post(path, {"moved": "yes", "overhang": "70", "rev": "2"})
    assert {"ridge_cover": "125 mm"} == browser.document()["set_out"]


def test_a_greater_lap_closes_the_gauge_and_no_lap_is_short(browser: Browser) -> None:
    moved = browser.get(f"/jobs/{browser.job}/set-out.json?moved=yes&lap=110&hold_lap=yes").json()
    lap = next(figure for figure in moved["slope"]["figures"] if figure["label"].startswith("Headlap"))
    assert float(lap["values"][0].removesuffix(" mm")) >= 110


def test_what_is_outside_a_rule_is_said_before_anything_else(browser: Browser) -> None:
    page = browser.get(f"/jobs/{browser.job}/set-out?moved=yes&ridge=150&hold_ridge=yes").text
    assert "OUTSIDE a rule" in page
    assert page.index("OUTSIDE a rule") < page.index("<svg")


def test_a_wish_that_cannot_be_is_refused_in_words(browser: Browser) -> None:
    answer = browser.get(f"/jobs/{browser.job}/set-out?moved=yes&overhang=long&hold_overhang=yes")
    assert 422 == answer.status_code
    assert "to put right" in answer.text


def test_any_figure_of_a_covering_can_be_put_right(browser: Browser) -> None:
    form = {
        "from": "flat-interlocking-420x330",
        "shown_for": "flat-interlocking-420x330",
        "headlap_min": "100 mm",
        "half_unit": "no",
        "do": "save",
    }
    assert 303 == browser.post(f"/jobs/{browser.job}/covering", form).status_code
    assert {"from": "flat-interlocking-420x330", "headlap_min": "100 mm", "half_unit": False} == browser.document()[
        "covering"
    ]


def test_a_figure_of_one_covering_is_not_carried_to_another(browser: Browser) -> None:
    form = {
        "from": "clay-pantile-340x240",
        "shown_for": "flat-interlocking-420x330",
        "headlap_min": "100 mm",
        "do": "save",
    }
    assert 303 == browser.post(f"/jobs/{browser.job}/covering", form).status_code
    assert {"from": "clay-pantile-340x240"} == browser.document()["covering"]


def test_random_slates_are_counted_heap_by_heap(browser: Browser) -> None:
    form = {
        "from": "random-slates", "shown_for": "random-slates", "do": "save", "heap[0].length": "500 mm", "heap[0].run": "60 m",
        "heap[1].length": "400 mm", "heap[1].slates": "300", "heap[1].average_width": "25 cm",
    }  # fmt: skip
    assert 303 == browser.post(f"/jobs/{browser.job}/covering", form).status_code
    heaps = browser.document()["covering"]["heap"]
    assert [{"length": "500 mm", "run": "60 m"}, {"length": "400 mm", "slates": 300, "average_width": "25 cm"}] == heaps


def test_a_test_lay_becomes_the_covering(browser: Browser) -> None:
    lay = {
        "lap": "75", "gauge_at_lap": "267", "closest_gauge": "240", "width": "230", "ten_closed": "1994", "ten_open": "2048",
        "hanging_length": "320", "mass": "2.4", "pitch_min": "25°", "face": "flat", "material": "clay",
    }  # fmt: skip
    assert 303 == browser.post(f"/jobs/{browser.job}/covering/own", lay).status_code
    covering = browser.document()["covering"]
    assert (342.0, 196.0, 202.0, "25°") == tuple(
        covering[key] for key in ("length", "cover_closed", "cover_open", "pitch_min")
    )
    assert [] == browser.get(f"/jobs/{browser.job}/set-out.json").json()["lacks"]
    assert "Own tile, measured" in browser.get(f"/jobs/{browser.job}/covering").text


def test_a_test_lay_that_contradicts_itself_is_refused_beside_the_figure(browser: Browser) -> None:
    lay = {"lap": "75", "gauge_at_lap": "267", "length": "400", "width": "230"}
    answer = browser.post(f"/jobs/{browser.job}/covering/own", lay)
    assert 422 == answer.status_code
    assert 'id="f-gauge-at-lap-fault"' in answer.text
    assert "400" == shown(answer.text, "length")


def test_jobs_are_copied_put_away_and_taken_out_again(browser: Browser) -> None:
    copy = browser.post(f"/jobs/{browser.job}/copy").headers["location"].split("/")[2]
    assert {browser.job, copy} == {row["id"] for row in browser.get("/jobs.json").json()["jobs"]}
    browser.post(f"/jobs/{copy}/put-away")
    assert [browser.job] == [row["id"] for row in browser.get("/jobs.json").json()["jobs"]]
    assert [copy] == [row["id"] for row in browser.get("/jobs.json?put-away=yes").json()["jobs"]]
    browser.post(f"/jobs/{copy}/take-out")
    assert 2 == len(browser.get("/jobs.json").json()["jobs"])


def test_everything_can_be_taken_along_and_brought_in(browser: Browser) -> None:
    kept = browser.get("/keep-all")
    assert "attachment" in kept.headers["content-disposition"]
    assert 303 == browser.post("/bring-in", files={"file": ("jobs.json", kept.content)}).status_code
    assert 2 == len(browser.store.jobs())
    toml = b'[job]\ntitle = "Shed"\nexposure = "moderate"\n'
    assert 303 == browser.post("/bring-in", files={"file": ("shed.toml", toml)}).status_code
    assert "Shed" == browser.store.jobs()[0].title


@pytest.mark.parametrize(
    "content", [b"", b"\xff\xfe", b"[job", b"{", b'{"format": "gaugerod jobs"}', b"[]", b"{" * 9000]
)
def test_a_file_that_is_no_job_is_refused_in_words(browser: Browser, content: bytes) -> None:
    answer = browser.post("/bring-in", files={"file": ("x", content)})
    assert 422 == answer.status_code
    assert "to put right" in answer.text
    assert 1 == len(browser.store.jobs())


def test_undo_goes_back_and_comparing_shows_which_marks_moved(browser: Browser) -> None:
    browser.post(f"/jobs/{browser.job}/set-out", {"moved": "yes", "overhang": "70", "hold_overhang": "yes", "rev": "1"})
    twin = browser.get(f"/jobs/{browser.job}/compare.json?before=1&after=2").json()
    assert ["set out, eaves overhang"] == [row["mark"] for row in twin["typed"]]
    first = twin["rods"][0]["rows"][0]
    assert ("1", "348 mm", "328 mm", "-20 mm") == (first["mark"], first["before"], first["after"], first["moved"])
    browser.post(f"/jobs/{browser.job}/go-back", {"to": "1"})
    assert browser.store.load(browser.job, 1).document == browser.document()
    assert 3 == browser.store.load(browser.job).rev


def test_files_are_made_when_they_are_asked_for(browser: Browser) -> None:
    files = browser.get(f"/jobs/{browser.job}/sheets.json").json()["downloads"]
    assert {"PDF", "SVG", "HTML", "JSON"} == {file["kind"] for file in files}
    for file in files:
        answer = browser.get(file["href"])
        assert 200 == answer.status_code, file
        assert "attachment" in answer.headers["content-disposition"]
        start = {"PDF": b"%PDF", "SVG": b"<svg", "HTML": b"<!doctype html>", "JSON": b"{"}[file["kind"]]
        assert answer.content.startswith(start), file


def test_a_name_and_a_light_are_kept_in_the_browser(browser: Browser) -> None:
    assert 'data-light="auto"' in browser.get("/").text
    back = browser.post("/light", {"light": "day", "back": f"/jobs/{browser.job}/set-out"})
    assert f"/jobs/{browser.job}/set-out" == back.headers["location"]
    assert 'data-light="day"' in browser.get("/").text
    assert "/" == browser.post("/light", {"light": "night", "back": "//elsewhere.example"}).headers["location"]
    browser.post("/about", {"who": "Ås Örn", "light": "auto"})
    browser.post(f"/jobs/{browser.job}/copy")
    assert "Ås Örn" == browser.store.jobs()[0].by
