"""The page on the roof, opened from the file: by thumb, in the sun, with no signal."""

import re
from collections.abc import Callable
from datetime import datetime
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Page, expect

from gaugerod.adapters.on_roof.write import write_on_roof_html
from gaugerod.job.set_out import set_out
from gaugerod.wiring import job_from_file

EXAMPLES = Path(str(files("gaugerod.adapters.job_file").joinpath("examples")))
MADE_AT = datetime(2026, 3, 2, 7, 30)  # noqa: DTZ001 - a wall clock, as it is printed
LEAST_TARGET_PX = 44
NARROW: dict[str, Any] = {"viewport": {"width": 360, "height": 640}, "has_touch": True, "is_mobile": True}
DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}}
SIZES = pytest.mark.parametrize("size", [NARROW, DESK], ids=["phone", "desk"])

Opener = Callable[..., Page]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One file for each example job."""
    folder = tmp_path_factory.mktemp("roof")
    for path in EXAMPLES.glob("*.toml"):
        text = write_on_roof_html(set_out(job_from_file(path)), made_at=MADE_AT)
        (folder / f"{path.stem}.html").write_text(text, encoding="utf-8")
    return folder


def opened_file(opened: Opener, folder: Path, size: dict[str, Any], *, stem: str = "demo", **more: Any) -> Page:  # noqa: ANN401
    page = opened(size, **more)
    page.goto((folder / f"{stem}.html").as_uri())
    return page


def mark(page: Page) -> str:
    return page.locator("#mark").inner_text()


@SIZES
def test_next_and_back_go_one_batten_at_a_time_and_stop_at_the_ends(
    opened: Opener, folder: Path, size: dict[str, Any]
) -> None:
    page = opened_file(opened, folder, size)
    expect(page.locator("#name")).to_have_text("Batten 1 of 15")
    assert "348 mm" == mark(page)
    expect(page.get_by_role("button", name="Back")).to_be_disabled()
    page.get_by_role("button", name="Next").click()
    expect(page.locator("#name")).to_have_text("Batten 2 of 15")
    expect(page.locator("#gap")).to_contain_text("323 mm above batten 1")
    page.get_by_role("button", name="Back").click()
    expect(page.locator("#name")).to_have_text("Batten 1 of 15")
    page.get_by_role("button", name=re.compile("^Batten 15")).click()
    expect(page.get_by_role("button", name="Next")).to_be_disabled()


@SIZES
def test_ticks_go_on_are_undone_and_outlast_the_page(opened: Opener, folder: Path, size: dict[str, Any]) -> None:
    page = opened_file(opened, folder, size)
    for _ in range(3):
        page.get_by_role("button", name="Tick off").click()
    expect(page.locator("#name")).to_have_text("Batten 4 of 15")
    expect(page.locator("#so-far")).to_contain_text("3 of 15 done here")
    page.reload()
    expect(page.locator("#name")).to_have_text("Batten 4 of 15")
    expect(page.locator("#so-far")).to_contain_text("3 of 15 done here")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#name")).to_have_text("Batten 3 of 15")
    expect(page.locator("#so-far")).to_contain_text("2 of 15 done here")
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Untick").click()
    expect(page.locator("#so-far")).to_contain_text("1 of 15 done here")


def test_every_rod_and_line_of_perps_has_ticks_of_its_own(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW)
    choices = page.locator("#which option").all_text_contents()
    assert [
        "Rear: rod 1, left end",
        "Rear: rod 2, 7460 mm along",
        "Rear: perps at the eaves",
        "Rear: perps at the top",
    ] == choices
    page.get_by_role("button", name="Tick off").click()
    page.select_option("#which", index=2)
    expect(page.locator("#name")).to_contain_text("Perp 1 of")
    expect(page.locator("#so-far")).to_contain_text("0 of")
    expect(page.locator("#again-form")).to_be_hidden()


def test_a_phone_that_cannot_keep_the_ticks_says_so(opened: Opener, folder: Path) -> None:
    page = opened(NARROW)
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } });")
    page.goto((folder / "demo.html").as_uri())
    page.get_by_role("button", name="Tick off").click()
    expect(page.locator("#so-far")).to_contain_text("▲ This phone does not keep your ticks")
    expect(page.locator("#so-far")).to_contain_text("1 of 15 done here")


def test_marks_are_read_aloud_when_that_is_asked(opened: Opener, folder: Path) -> None:
    page = opened(NARROW)
    page.add_init_script("window.heard = []; speechSynthesis.speak = (spoken) => window.heard.push(spoken.text);")
    page.goto((folder / "feet-and-inches.html").as_uri())
    page.get_by_role("button", name="Next").click()
    assert [] == page.evaluate("heard")
    page.get_by_role("button", name="Read aloud").click()
    page.get_by_role("button", name="Next").click()
    heard = page.evaluate("heard")
    assert 2 == len(heard)
    assert re.fullmatch(r"Batten 3\. 3 feet, 3 and 1 sixteenth inches\.", heard[1]), heard


def test_the_screen_is_asked_to_stay_lit_and_the_page_says_whether_it_does(opened: Opener, folder: Path) -> None:
    page = opened(NARROW)
    page.add_init_script(
        "Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => new EventTarget() } });"
    )
    page.goto((folder / "demo.html").as_uri())
    expect(page.locator("#screen")).to_contain_text("stays lit")
    without = opened(NARROW)
    without.add_init_script("Object.defineProperty(navigator, 'wakeLock', { value: undefined });")
    without.goto((folder / "demo.html").as_uri())
    expect(without.locator("#screen")).to_contain_text("may go dark")


def test_what_is_outside_a_rule_stands_above_the_marks_and_at_the_mark(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW, stem="narrow-gauge")
    expect(page.locator("#told summary")).to_contain_text("▲ OUTSIDE: least gauge")
    page.locator("#told summary").click()
    expect(page.locator("#told")).to_contain_text("See what could change")
    page.get_by_role("button", name="Next").click()
    expect(page.locator("#fault")).to_contain_text("▲ GAP TOO CLOSE by")


def test_a_batten_elsewhere_sets_the_rest_out_again_and_keeps_only_ticks_that_still_hold(
    opened: Opener, folder: Path
) -> None:
    page = opened_file(opened, folder, NARROW)
    for _ in range(6):
        page.get_by_role("button", name="Tick off").click()
    page.get_by_role("button", name=re.compile("^Batten 4")).click()
    page.get_by_role("button", name="Re-gauge").click()
    page.get_by_label("At rod 1, left end").fill("1.330 m")
    page.get_by_role("button", name="Set the rest out again").click()
    expect(page.locator("#again-says summary")).to_have_text("Set out again from batten 4: 11 more.")
    expect(page.locator("#again-says")).to_contain_text("see how they end there before you lay")
    expect(page.locator("#name")).to_have_text("Batten 5 of 15")
    assert "1652 mm" == mark(page)
    expect(page.locator("#so-far")).to_contain_text("4 of 15 done here")
    page.get_by_role("button", name="Back", exact=True).click()
    assert "1330 mm" == mark(page)
    expect(page.locator("#state")).to_have_text("✓ nailed already")
    page.reload()
    assert "1330 mm" == mark(page)
    page.get_by_role("button", name="Back to the marks as sent").click()
    assert "1316 mm" == mark(page)
    page.get_by_role("button", name="Undo").click()
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#so-far")).to_contain_text("6 of 15 done here")


def test_a_limit_that_cannot_be_kept_is_said_with_how_many_to_take_down(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW)
    page.get_by_role("button", name=re.compile("^Batten 14")).click()
    page.get_by_label("At rod 1, left end").fill("4600")
    page.get_by_label("At rod 2, 7460 mm along").fill("4600")
    page.get_by_role("button", name="Set the rest out again").click()
    said = page.locator("#again-says")
    expect(said.locator("summary")).to_contain_text("▲ OUTSIDE: No even gauge keeps every limit from batten 14 up.")
    expect(said).to_contain_text("Batten 14: ▲ LAP SHORT by 33 mm, at rod 1.")
    page.get_by_role("button", name=re.compile("^Batten 14")).click()
    expect(page.locator("#fault")).to_contain_text("▲ LAP SHORT by")
    said.locator("summary").click()
    page.get_by_role("button", name="Set out from batten 13").click()
    expect(said.locator("summary")).to_have_text("Set out again from batten 13: 2 more.")
    expect(page.locator("#name")).to_have_text("Batten 14 of 15")
    expect(page.locator("#fault")).to_be_hidden()


def test_where_the_unit_does_not_reach_the_one_below_it_is_said_to_be_open(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW)
    page.get_by_role("button", name=re.compile("^Batten 14")).click()
    # Batten 13 is marked at 4222 on the left: a tile of 420 laid 430 above it lies 10 clear of the one below.
    page.get_by_label("At rod 1, left end").fill("4652")
    page.get_by_label("At rod 2, 7460 mm along").fill("4652")
    page.get_by_role("button", name="Set the rest out again").click()
    expect(page.locator("#again-says")).to_contain_text("Batten 14: ▲ NO LAP: OPEN by 10 mm, at rod 1.")


def test_a_batten_with_a_short_lap_is_to_come_down_even_where_the_rest_fits_above_it(
    opened: Opener, folder: Path
) -> None:
    page = opened_file(opened, folder, NARROW)
    page.get_by_role("button", name=re.compile("^Batten 4")).click()
    page.get_by_label("At rod 1, left end").fill("1440")
    page.get_by_label("At rod 2, 7460 mm along").fill("1440")
    page.get_by_role("button", name="Set the rest out again").click()
    said = page.locator("#again-says")
    expect(said.locator("summary")).to_contain_text("▲ OUTSIDE")
    expect(said).to_contain_text("Batten 4 must not stay there: take it down before you go on.")
    page.get_by_role("button", name="Set out from batten 3").click()
    expect(said.locator("summary")).to_have_text("Set out again from batten 3: 12 more.")
    expect(said).not_to_contain_text("must not stay")
    expect(page.locator("#name")).to_have_text("Batten 4 of 15")
    expect(page.locator("#fault")).to_be_hidden()


def test_the_first_batten_out_of_place_comes_down_with_all_above_it(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW)
    for batten, typed in ((4, "1440"), (5, "1750")):
        page.get_by_role("button", name=re.compile(f"^Batten {batten}")).click()
        page.get_by_label("At rod 1, left end").fill(typed)
        page.get_by_role("button", name="Set the rest out again").click()
    expect(page.locator("#again-says")).to_contain_text("Battens 4 to 5 must not stay there: take them down")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("", "Type where it really is"),
        ("1,234", "Could be 1234 mm or 1.234 m"),
        ("300", "cannot be at or below batten 3"),
        ("9 m", "past the apex"),
        ("about a metre", "cannot be read as a length"),
    ],
)
def test_what_cannot_be_is_refused_and_nothing_is_lost(opened: Opener, folder: Path, typed: str, says: str) -> None:
    page = opened_file(opened, folder, NARROW)
    page.get_by_role("button", name=re.compile("^Batten 4")).click()
    field = page.get_by_label("At rod 1, left end")
    field.fill(typed)
    page.get_by_role("button", name="Set the rest out again").click()
    expect(page.get_by_role("alert")).to_contain_text(says)
    expect(field).to_have_value(typed)
    expect(page.locator("#again-says")).to_be_hidden()


@pytest.mark.parametrize("stem", ["demo", "narrow-gauge", "hipped-house", "slates", "random-slates", "plain-tiles"])
@pytest.mark.parametrize("scheme", ["light", "dark"])
@SIZES
def test_axe_finds_nothing_in_either_light(
    opened: Opener, folder: Path, size: dict[str, Any], scheme: str, stem: str
) -> None:
    page = opened_file(opened, folder, size, stem=stem, color_scheme=scheme)
    page.get_by_role("button", name="Tick off").click()
    if page.locator("#told").is_visible():
        page.locator("#told summary").click()
    if page.locator("#again-0").is_visible():
        page.locator("#again-0").fill("1 mile")
        page.get_by_role("button", name="Set the rest out again").click()
    assert [] == [(each["id"], each["nodes"][0]["html"]) for each in Axe().run(page).response["violations"]]
    page.get_by_role("button", name=re.compile("Night|Daylight")).click()
    assert [] == [(each["id"], each["nodes"][0]["html"]) for each in Axe().run(page).response["violations"]]


@SIZES
def test_everything_is_in_reach_of_a_gloved_thumb_and_nothing_runs_off_the_side(
    opened: Opener, folder: Path, size: dict[str, Any]
) -> None:
    page = opened_file(opened, folder, size, stem="feet-and-inches")
    small = """(least) => [...document.querySelectorAll("button, select, input, summary")]
        .filter((each) => each.checkVisibility())
        .map((each) => [each.id || each.textContent, each.getBoundingClientRect().height])
        .filter(([, height]) => height < least)"""
    assert [] == page.evaluate(small, LEAST_TARGET_PX)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    box = page.get_by_role("button", name="Tick off").bounding_box()
    assert box is not None
    assert box["y"] + box["height"] <= size["viewport"]["height"]
    assert page.evaluate("parseFloat(getComputedStyle(document.getElementById('mark')).fontSize)") >= 60


def test_without_a_script_the_marks_are_tables(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, NARROW, java_script_enabled=False)
    expect(page.locator("#roof")).to_be_hidden()
    expect(page.get_by_role("cell", name="1316 mm")).to_be_visible()
    expect(page.get_by_role("table")).to_have_count(4)


def test_on_paper_the_marks_are_tables(opened: Opener, folder: Path) -> None:
    page = opened_file(opened, folder, DESK)
    page.emulate_media(media="print")
    expect(page.get_by_role("cell", name="1316 mm")).to_be_visible()
    expect(page.locator("#roof")).to_be_hidden()


def test_the_file_asks_nothing_of_any_network(opened: Opener, folder: Path) -> None:
    page = opened(NARROW)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.context.set_offline(True)
    file = (folder / "hipped-house.html").as_uri()
    page.goto(file)
    page.get_by_role("button", name="Tick off").click()
    assert [file] == asked
    assert page.evaluate("navigator.serviceWorker ? navigator.serviceWorker.controller === null : true")
