from importlib.resources import files
from typing import Any

import pytest

from gaugerod.wiring import document_of_file
from tests.scenario.app_browser import Browser

HIPPED = files("gaugerod.adapters.job_file").joinpath("examples", "hipped-house.toml").read_bytes()
NEW = {"name": "barn", "pitch_by": "angle", "pitch": "40°", "overhang": "300", "verge_overhang": "50 mm"}


def typed(lengths: list[str], **more: str) -> dict[str, str]:
    return {**NEW, **{f"wall[{at}].length": text for at, text in enumerate(lengths)}, **more}


def wall(at: int, **what: str) -> dict[str, str]:
    return {f"wall[{at}].{key}": value for key, value in what.items()}


def look(browser: Browser, form: dict[str, str], *, building: str = "new") -> dict[str, Any]:
    twin: dict[str, Any] = browser.post(f"/jobs/{browser.job}/buildings/{building}.json", form).json()
    return twin


def form_of(page: dict[str, Any]) -> dict[str, str]:
    """The form as a browser would send it back."""
    fields = [page["named"], *page["pitch"], *page["around"]]
    for row in page["walls"]:
        fields += [row["length"], row["turn"], row["angle"], row["stands"], row["pitch"], *row["apart"]]
    form = {field["name"]: field["value"] for field in fields if field is not None}
    cheeks = {"cheeks": "allow"} if page["cheeks"] else {}
    return {**form, **cheeks, "start": page["start"], "way": page["way"], "corners": page["corners"]}


@pytest.fixture
def hipped(browser: Browser) -> Browser:
    browser.store.save(browser.job, document_of_file(HIPPED), by="test", base_rev=1)
    return browser


def test_two_lengths_and_a_pitch_make_a_roof(browser: Browser) -> None:
    page = look(browser, typed(["9 m", "6000", "", ""]))
    assert "4 slopes, 4 hips, 1 ridge" in page["roof"]["line"]
    assert "not-covered" == page["closes"]["verdict"]
    assert [] == page["open_faults"]


def test_the_roof_is_that_of_plain_trigonometry(browser: Browser) -> None:
    """A gabled roof over 9 m by 6 m at 45°, no overhangs: two slopes of 9 m by 3 m times the square root of two."""
    form = typed(["9 m", "6 m", "", ""], pitch="45°", overhang="", verge_overhang="") | wall(1, stands="gable")
    page = look(browser, form | wall(3, stands="gable"))
    each = f"{9 * 3 * 2**0.5:.2f}"
    assert [each, each] == [row[3] for row in page["roof"]["slopes"]["rows"]]
    assert f"{2 * 9 * 3 * 2**0.5:.2f} m²" in page["roof"]["line"]


def test_a_saved_building_stands_in_the_job_and_its_slopes_are_set_out(browser: Browser) -> None:
    form = (
        typed(["9 m", "6 m", "9 m", "6 m"], do="save")
        | wall(1, stands="gable")
        | wall(3, stands="own", pitch="8 in 12")
    )
    answer = browser.post(f"/jobs/{browser.job}/buildings/new", form)
    assert (303, f"/jobs/{browser.job}/set-out") == (answer.status_code, answer.headers["location"])
    assert [
        {
            "name": "barn",
            "outline": [["0 mm", "0 mm"], ["9000 mm", "0 mm"], ["9000 mm", "6000 mm"], ["0 mm", "6000 mm"]],
            "pitch": ["40°", "gable", "40°", "8 in 12"],
            "overhang": "300",
            "verge_overhang": "50 mm",
        }
    ] == browser.document()["building"]
    names = [slope["name"] for slope in browser.get(f"/jobs/{browser.job}/set-out.json").json()["slopes"]]
    assert ["barn 1", "barn 2", "barn 3"] == names[-3:]


def test_opening_and_saving_a_building_changes_nothing(hipped: Browser) -> None:
    before = hipped.document()
    page = hipped.get(f"/jobs/{hipped.job}/buildings/1.json").json()
    answer = hipped.post(f"/jobs/{hipped.job}/buildings/1", {**form_of(page), "do": "save"})
    assert 303 == answer.status_code
    assert before == hipped.document()


def test_a_moved_wall_changes_the_outline_and_keeps_the_rest(hipped: Browser) -> None:
    page = hipped.get(f"/jobs/{hipped.job}/buildings/1.json").json()
    form = form_of(page) | wall(0, length="12.600 m") | wall(2, length="5.800 m")
    assert 303 == hipped.post(f"/jobs/{hipped.job}/buildings/1", {**form, "do": "save"}).status_code
    saved = hipped.document()["building"][0]
    assert [["12600 mm", "0 mm"], ["12600 mm", "7200 mm"], ["6800 mm", "7200 mm"]] == saved["outline"][1:4]
    assert ["35°", "35°", "35°", "35°", "gable", "35°"] == saved["pitch"]
    assert "400 mm" == saved["rafter_spacing"]


def test_each_way_of_writing_overhangs_and_heights_goes_there_and_back(hipped: Browser) -> None:
    document = hipped.document()
    building = document["building"][0]
    del building["verge_overhang"]
    building["overhang"] = ["300 mm", "300 mm", "250 mm", "300 mm", "50 mm", "300 mm"]
    building["eaves_height"] = ["2.400 m", "2.400 m", "2.400 m", "2.400 m", "gable", "2.400 m"]
    building["pitch"][2] = {"rise": "2 m", "run": "3 m"}
    hipped.store.save(hipped.job, document, by="test", base_rev=2)
    page = hipped.get(f"/jobs/{hipped.job}/buildings/1.json").json()
    assert ["", "", "250 mm", "", "", ""] == [row["apart"][0]["value"] for row in page["walls"]]
    assert ["300 mm", "50 mm"] == [field["value"] for field in page["around"][:2]]
    assert "own" == page["walls"][2]["stands"]["value"]
    assert 303 == hipped.post(f"/jobs/{hipped.job}/buildings/1", {**form_of(page), "do": "save"}).status_code
    assert document == hipped.document()


def test_courtyards_stay_as_they_were_written(hipped: Browser) -> None:
    document = hipped.document()
    building = document["building"][0]
    building["holes"] = [[["2 m", "2 m"], ["2 m", "4 m"], ["4 m", "4 m"], ["4 m", "2 m"]]]
    building["pitch"] += ["35°", "35°", "35°", "30°"]
    hipped.store.save(hipped.job, document, by="test", base_rev=2)
    page = hipped.get(f"/jobs/{hipped.job}/buildings/1.json").json()
    assert page["courtyards"].startswith("A courtyard is kept")
    form = form_of(page) | {"pitch": "36°", "do": "save"} | wall(1, overhang="200 mm")
    answer = hipped.post(f"/jobs/{hipped.job}/buildings/1.json", form)
    assert 200 == answer.status_code, answer.json().get("faults")
    saved = hipped.document()["building"][0]
    assert building["holes"] == saved["holes"]
    assert ["36°", "36°", "36°", "30°"] == saved["pitch"][6:]
    assert ["300 mm"] * 4 == saved["overhang"][6:]


def test_walking_the_other_way_round_saves_the_same_building(browser: Browser) -> None:
    form = typed(["6 m", "9 m", "6 m", "9 m"], do="save", way="90") | wall(1, stands="gable")
    for at in range(3):
        form |= wall(at, turn="right")
    assert "on your right" in look(browser, {**form, "do": "look"})["notes"][0]
    assert 303 == browser.post(f"/jobs/{browser.job}/buildings/new", form).status_code
    saved = browser.document()["building"][0]
    assert [["0 mm", "0 mm"], ["9000 mm", "0 mm"], ["9000 mm", "6000 mm"], ["0 mm", "6000 mm"]] == saved["outline"]
    assert ["40°", "40°", "gable", "40°"] == saved["pitch"]


def test_tapped_corners_become_typed_walls(browser: Browser) -> None:
    page = look(browser, {**NEW, "do": "tapped", "corners": "0,0 9000,0 9000,6000 3000,9000 0,6000"})
    assert ["9000 mm", "6000 mm", "6708.2 mm", "4242.6 mm", "6000 mm"] == [
        row["length"]["value"] for row in page["walls"]
    ]
    assert ["left", "angle", "angle", "angle", None] == [row["turn"] and row["turn"]["value"] for row in page["walls"]]
    assert "116.565°" == page["walls"][1]["angle"]["value"]
    assert "within" == page["closes"]["verdict"]
    again = look(browser, form_of(page))
    assert page["roof"]["line"] == again["roof"]["line"]


@pytest.mark.parametrize("corners", ["0,0", "0,0 9000,0", "", "nonsense", "1e9,0 nan,inf", "0,0," * 500])
def test_too_few_corners_and_nonsense_draw_a_grid(browser: Browser, corners: str) -> None:
    page = look(browser, {**NEW, "do": "tapped", "corners": corners})
    assert (None, None) == (page["roof"], page["closes"])
    assert page["plan"]["grid"]


def test_a_corner_is_taken_back_and_everything_begun_anew(browser: Browser) -> None:
    tapped = look(browser, {**NEW, "do": "tapped", "corners": "0,0 9000,0 9000,6000 4000,9000 0,6000"})
    assert 4 == len(look(browser, {**form_of(tapped), "do": "untap"})["walls"])
    anew = look(browser, {**form_of(tapped), "do": "clear"})
    assert ("barn", "") == (anew["named"]["value"], anew["corners"])
    assert ["", "", "", ""] == [row["length"]["value"] for row in anew["walls"]]


def test_walls_are_put_in_and_taken_out(browser: Browser) -> None:
    form = typed(["9 m", "6 m", "9 m", "6 m"])
    more = look(browser, {**form, "do": "after-1"})["walls"]
    assert ["9 m", "6 m", "", "9 m", "6 m"] == [row["length"]["value"] for row in more]
    less = look(browser, {**form, "do": "drop-0"})["walls"]
    assert ["6 m", "9 m", "6 m"] == [row["length"]["value"] for row in less]
    assert 3 == len(look(browser, {**form_of(look(browser, {**form, "do": "drop-0"})), "do": "drop-0"})["walls"])


def test_what_is_typed_while_a_part_is_asked_is_not_saved(browser: Browser) -> None:
    before = browser.document()
    path = f"/jobs/{browser.job}/buildings/new"
    part = browser.post(path, typed(["9 m", "6 m", "", ""], do="save"), headers={"hx-request-type": "partial"})
    assert 200 == part.status_code
    assert "<html" not in part.text
    assert 'id="plan"' in part.text
    assert before == browser.document()


def test_an_outline_that_misses_its_first_corner_is_saved_only_when_that_was_seen(browser: Browser) -> None:
    form = typed(["9 m", "6 m", "9.3 m", "6 m"], do="save")
    refused = browser.post(f"/jobs/{browser.job}/buildings/new", form)
    assert 422 == refused.status_code
    assert "misses its first corner by 300.0 mm" in refused.text
    assert 'href="#f-straight"' in refused.text
    assert 'id="f-straight"' in refused.text
    assert 303 == browser.post(f"/jobs/{browser.job}/buildings/new", {**form, "straight": "yes"}).status_code
    assert ["-300 mm", "6000 mm"] == browser.document()["building"][0]["outline"][3]


def test_an_outline_that_crosses_itself_is_told_by_its_walls(browser: Browser) -> None:
    tapped = look(browser, {**NEW, "do": "tapped", "corners": "0,0 9000,6000 9000,0 0,6000"})
    assert None is tapped["roof"]
    assert 1 == len(tapped["open_faults"])
    assert "The side from corner 1 crosses the side from corner 3" in tapped["open_faults"][0]["says"]
    refused = browser.post(f"/jobs/{browser.job}/buildings/new", {**form_of(tapped), "do": "save"})
    assert 422 == refused.status_code
    assert 'href="#f-wall-0-length"' in refused.text


def test_a_corner_tapped_twice_is_a_wall_of_no_length(browser: Browser) -> None:
    tapped = look(browser, {**NEW, "do": "tapped", "corners": "0,0 9000,0 9000,0 0,6000"})
    assert ["Wall 2, length: Measure this wall again. Wanted: a length over nothing."] == [
        fault["says"] for fault in tapped["open_faults"]
    ]


def test_every_fault_stands_beside_its_field(browser: Browser) -> None:
    form = typed(["9 m", "4.905", "9 m", "6 m"], pitch="100%", do="save", rafter_spacing="far", name="")
    form |= wall(1, stands="own", pitch="steep", turn="angle", angle="400")
    page = browser.post(f"/jobs/{browser.job}/buildings/new.json", form)
    assert 422 == page.status_code
    wrong = {fault["field_id"] for fault in page.json()["faults"]}
    assert {"f-name", "f-rafter-spacing", "f-wall-1-length", "f-wall-1-angle"} <= wrong
    form |= wall(1, length="6 m", turn="left")
    wrong = {fault["field_id"] for fault in look(browser, form)["faults"]}
    assert {"f-name", "f-rafter-spacing", "f-pitch", "f-wall-1-pitch"} == wrong


def test_a_pitch_that_is_not_typed_yet_is_asked_for_once(browser: Browser) -> None:
    page = look(browser, typed(["9 m", "6 m", "", ""], pitch=""))
    assert ["Pitch: This is needed: the pitch of the slopes, like 35°."] == [
        each["says"] for each in page["open_faults"]
    ]


def test_a_roof_that_leaves_a_choice_asks_it_and_takes_the_answer(browser: Browser) -> None:
    form = typed(["5 m", "4 m", "6 m", "9 m", "6 m"]) | wall(0, turn="straight", stands="own", pitch="30°")
    page = look(browser, form)
    assert [1, 2] == page["asks"]["walls"]
    assert "allow an upright cheek between the slopes" == page["asks"]["choices"][-1]
    assert "<legend>◇ The roof asks</legend>" in browser.post(f"/jobs/{browser.job}/buildings/new", form).text
    allowed = look(browser, {**form, "cheeks": "allow"})
    assert (None, "not-covered") == (allowed["asks"], allowed["roof"]["says"][0]["verdict"])
    browser.post(f"/jobs/{browser.job}/buildings/new", {**form, "cheeks": "allow", "do": "save"})
    assert "allow" == browser.document()["building"][0]["cheeks"]


def test_two_editors_of_one_building_both_keep_what_they_typed(hipped: Browser, second_browser: Browser) -> None:
    page = f"/jobs/{hipped.job}/buildings/1"
    form = {**form_of(hipped.get(f"{page}.json").json()), "rev": "2", "do": "save"}
    assert 303 == second_browser.post(page, {**form, "rafter_spacing": "450 mm"}).status_code
    assert 303 == hipped.post(page, {**form, "overhang": "350 mm"}).status_code
    saved = hipped.document()["building"][0]
    assert ("450 mm", "350 mm") == (saved["rafter_spacing"], saved["overhang"])
    assert 409 == second_browser.post(page, {**form, "overhang": "280 mm"}).status_code


def test_a_building_is_taken_out(hipped: Browser) -> None:
    answer = hipped.post(f"/jobs/{hipped.job}/buildings/1", {"do": "take-out"})
    assert f"/jobs/{hipped.job}/slopes" == answer.headers["location"]
    assert "building" not in hipped.document()
    assert 404 == hipped.get(f"/jobs/{hipped.job}/buildings/1").status_code


def test_the_list_of_slopes_leads_to_the_building(hipped: Browser) -> None:
    text = hipped.get(f"/jobs/{hipped.job}/slopes").text
    assert f'href="/jobs/{hipped.job}/buildings/1"' in text
    assert "5 slopes, 4 hips, 1 valley, 2 ridges, 1 gable, 161.28 m²" in text
    assert "<title>Roof plan, house</title>" in text
    assert f'href="/jobs/{hipped.job}/buildings/new"' in text


def test_every_slope_of_a_building_can_be_set_out_and_is_found_on_its_roof(hipped: Browser) -> None:
    for number in range(1, 6):
        page = hipped.get(f"/jobs/{hipped.job}/set-out.json?slope=house%20{number}").json()
        assert f"house {number}" == page["slope"]["name"]
        assert "Roof plan, house" in page["roof"]["wide"]
        assert page["roof"]["corners"]
        assert page["slope"]["wide"].startswith("<svg")
    assert "Where it lies on the roof of house" in hipped.get(f"/jobs/{hipped.job}/set-out").text
    findings = hipped.get(f"/jobs/{hipped.job}/findings").text
    assert "Slopes house 1, house 2, house 3, house 4, house 5 are coursed together" in findings


def test_a_roof_that_asks_leads_from_setting_out_to_its_building(hipped: Browser) -> None:
    document = hipped.document()
    building = document["building"][0]
    building["outline"].insert(1, ["6 m", "0 m"])
    building["pitch"] = ["30°", *building["pitch"]]
    hipped.store.save(hipped.job, document, by="test", base_rev=2)
    lacks = hipped.get(f"/jobs/{hipped.job}/set-out.json").json()["lacks"]
    assert [f"/jobs/{hipped.job}/buildings/1"] == [lack["href"] for lack in lacks]


def test_names_are_escaped_in_both_drawings(browser: Browser) -> None:
    page = browser.post(
        f"/jobs/{browser.job}/buildings/new", typed(["9 m", "6 m", "", ""], name="</title><script>x</script>")
    )
    assert "<script>x" not in page.text


@pytest.mark.parametrize("outline", ["nonsense", [["a", "b"]], [1, 2, 3], [["0 m"]], [["0 m", "0 m"], None, {}]])
def test_a_draft_that_cannot_be_read_still_opens(hipped: Browser, outline: object) -> None:
    document = hipped.document()
    document["building"][0] |= {"outline": outline, "pitch": "steep", "overhang": {"a": 1}, "eaves_height": [None]}
    hipped.store.save(hipped.job, document, by="test", base_rev=2, draft=True)
    assert 200 == hipped.get(f"/jobs/{hipped.job}/buildings/1").status_code


def test_an_imperial_job_shows_feet_and_inches_and_keeps_its_outline(hipped: Browser) -> None:
    document = hipped.document()
    document["job"]["show_lengths_in"] = "ft-in"
    hipped.store.save(hipped.job, document, by="test", base_rev=2)
    page = hipped.get(f"/jobs/{hipped.job}/buildings/1.json").json()
    assert "40' 8 3/16\"" == page["walls"][0]["length"]["value"]
    assert 303 == hipped.post(f"/jobs/{hipped.job}/buildings/1", {**form_of(page), "do": "save"}).status_code
    assert document["building"][0]["outline"] == hipped.document()["building"][0]["outline"]
