"""A job from the first tap to the sheet, as a roofer goes through it, on a phone and on a laptop."""

import re
from io import BytesIO
from pathlib import Path

from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.scenario.browser_pages import PHONE, Opener
from tests.scenario.served_app import ServedApp


def begin(page: Page, title: str) -> str:
    """A new job with its site filled in; gives its path."""
    page.goto("/")
    page.get_by_role("button", name="New job").click()
    page.get_by_label("Title of the job").fill(title)
    page.get_by_label("Driving rain at the site").select_option("severe")
    page.get_by_role("button", name="Save").click()
    expect(page).to_have_url(re.compile(r"/jobs/\w+/slopes$"))
    return page.url.removesuffix("/slopes")


def measure(page: Page, job: str) -> None:
    """One slope by tape, square and plain."""
    page.goto(f"{job}/slopes/new")
    page.get_by_label("Name of the slope").fill("front")
    page.get_by_label("Pitch", exact=True).fill("40°")
    page.get_by_label("Along the eaves").fill("6.4 m")
    page.get_by_label("Rafter 1").fill("4120")
    page.get_by_label("Rafter 2").fill("4.12 m")
    page.get_by_label("Rafter to rafter").fill("400")
    page.get_by_label("At the left").select_option("verge")
    page.get_by_label("At the right").select_option("verge")
    page.get_by_label("At the top").select_option("ridge")


def lay(page: Page) -> None:
    """The covering chosen from the records."""
    page.locator("summary", has_text="Plain tiles").click()
    page.get_by_role("radio", name="Clay plain tile").first.check()
    expect(page.get_by_role("heading", name="Clay plain tile").first).to_be_visible()
    page.get_by_role("button", name="Lay this").click()


def set_out_job(page: Page, title: str) -> str:
    """A whole job, ready; gives its path."""
    job = begin(page, title)
    measure(page, job)
    page.get_by_role("button", name="Save the slope").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Covering")
    lay(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    return job


def test_a_job_goes_from_nothing_to_a_sheet(page: Page) -> None:
    job = set_out_job(page, "Dairy Row, front")
    expect(page.locator(".drawing-room svg:visible").first).to_be_visible()
    expect(page.locator(".figures")).to_contain_text("Gauge")
    page.get_by_role("link", name="What each rule says").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Findings")
    page.get_by_text(re.compile(r"^Within: \d+$")).click()
    within = page.locator("details.group[open] .card").last
    expect(within).to_contain_text(re.compile("published|memory|common practice|house"))
    page.get_by_role("link", name="Working").click()
    expect(page.locator("details.step").first).to_contain_text("Dairy Row")
    page.get_by_role("link", name="Sheets", exact=True).click()
    with page.expect_download() as coming:
        page.get_by_role("link", name=re.compile("Setting-out sheet")).click()
    sheet = Path(coming.value.path()).read_bytes()
    text = "".join(each.extract_text() for each in PdfReader(BytesIO(sheet)).pages)
    assert "Dairy Row" in text
    assert page.url == f"{job}/sheets"


def test_the_drawing_dimensions_itself_while_the_tape_is_read_out(page: Page) -> None:
    job = begin(page, "Long Barn")
    page.goto(f"{job}/slopes/new")
    page.get_by_label("Along the eaves").press_sequentially("7460")
    expect(page.get_by_text("Give the eaves and one rafter")).to_be_visible()
    page.get_by_label("Rafter 1").press_sequentially("4905")
    drawing = page.locator(".measure svg")
    expect(drawing).to_contain_text("7460")
    expect(drawing).to_contain_text("4905")
    page.get_by_label("Rafter 2").press_sequentially("4.918 m")
    expect(drawing).to_contain_text("4918")
    expect(page.locator("#says")).to_contain_text("13 mm longer")
    page.get_by_label("Along the ridge").fill("7460")
    page.get_by_label("Diagonal from the left").fill("8.93 m")
    page.get_by_label("Diagonal from the right").fill("9.13 m")
    expect(page.locator("#says")).to_contain_text("OUTSIDE")
    expect(page.get_by_label("Along the eaves")).to_have_value("7460")


def test_the_drawing_stays_in_sight_on_a_phone(phone: Page, app: ServedApp) -> None:
    phone.goto(f"/jobs/{app.demo}/slopes/1")
    phone.get_by_label("Rafter to rafter").scroll_into_view_if_needed()
    phone.mouse.wheel(0, 300)
    expect(phone.locator(".measure svg")).to_be_in_viewport(ratio=0.9)


def test_nothing_moves_under_the_thumb_when_the_drawing_comes_and_goes(phone: Page, app: ServedApp) -> None:
    phone.goto(f"/jobs/{app.demo}/slopes/new")
    field = phone.get_by_label("Along the eaves")
    place = "(each) => each.getBoundingClientRect().top + scrollY"
    before = field.evaluate(place)
    field.fill("7460")
    phone.get_by_label("Rafter 1").fill("4905")
    expect(phone.locator(".measure svg")).to_contain_text("4905")
    assert before == field.evaluate(place)


def test_the_pitch_is_known_by_whatever_was_measured(page: Page) -> None:
    job = begin(page, "Three ways")
    measure(page, job)
    page.get_by_label("Pitch known by").select_option("rise")
    expect(page.get_by_label("Pitch", exact=True)).to_be_hidden()
    page.get_by_label("Rise", exact=True).fill("2.65 m")
    page.get_by_label(re.compile("^Run")).fill("3.155 m")
    page.get_by_role("button", name="Save the slope").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Covering")
    page.goto(f"{job}/slopes")
    expect(page.get_by_role("link", name="front")).to_contain_text("rise")


def test_what_cannot_be_read_is_said_beside_it_and_nothing_typed_is_lost(page: Page) -> None:
    job = begin(page, "Slip of the thumb")
    measure(page, job)
    page.get_by_label("Along the eaves").fill("six paces")
    page.get_by_role("button", name="Save the slope").last.click()
    expect(page.locator("#faults")).to_be_focused()
    expect(page.locator("#faults")).to_contain_text("Nothing was saved yet")
    eaves = page.get_by_label("Along the eaves")
    expect(eaves).to_have_value("six paces")
    expect(eaves).to_have_attribute("aria-invalid", "true")
    expect(page.get_by_label("Rafter 2")).to_have_value("4.12 m")
    page.locator("#faults a").click()
    expect(eaves).to_be_focused()


def test_a_tile_of_ones_own_is_measured_and_laid(page: Page) -> None:
    job = begin(page, "Old pantiles")
    measure(page, job)
    page.get_by_role("button", name="Save the slope").last.click()
    page.get_by_role("link", name="Measure your own tile").click()
    for label, text in {
        "Lap": "75",
        "Batten to batten, top edge to top edge": "315",
        "Batten to batten now": "290",
        "Ten pushed up": "2.04 m",
        "Ten pulled open": "2.08 m",
        "Length": "390",
        "Width": "240",
        "Hanging length": "365",
        "Mass of one, kg": "2.6",
        "Least pitch": "30°",
        "Title on the sheets": "Reclaimed pantile",
    }.items():
        page.get_by_label(label, exact=True).fill(text)
    expect(page.locator("#answer .figures")).to_contain_text("315")
    page.get_by_role("button", name="Lay this tile").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    expect(page.locator("#answer")).to_contain_text("Reclaimed pantile")


def test_a_slider_moves_the_whole_answer_and_is_kept_only_when_asked(page: Page) -> None:
    set_out_job(page, "Slider Terrace")
    overhang = page.get_by_label("Eaves overhang")
    first = page.locator(".figures > div", has_text="Eaves overhang").locator("dd").first
    before = first.inner_text()
    overhang.fill("58")
    expect(first).to_have_text("58 mm")
    expect(page.get_by_label(re.compile("hold at")).first).to_be_checked()
    page.reload()
    expect(first).to_have_text(before)
    overhang.fill("58")
    expect(first).to_have_text("58 mm")
    page.get_by_role("button", name="Keep these").click()
    expect(first).to_have_text("58 mm")
    page.reload()
    expect(first).to_have_text("58 mm")
    expect(overhang).to_have_value("58")


def test_a_wish_that_breaks_a_rule_says_so_at_once(page: Page, app: ServedApp) -> None:
    page.goto(f"/jobs/{app.demo}/set-out")
    page.get_by_label("Top batten below the apex").fill("200")
    expect(page.locator(".alarm")).to_contain_text("OUTSIDE")
    page.get_by_label("Top batten below the apex").fill("40")
    expect(page.locator(".alarm")).to_have_count(0)


def test_every_unit_is_drawn_when_asked_for(desk: Page, app: ServedApp) -> None:
    desk.goto(f"/jobs/{app.demo}/set-out")
    desk.get_by_role("link", name="Draw every unit").click()
    expect(desk.locator(".units svg")).to_be_visible()


def test_the_answer_comes_without_a_script_too(opened: Opener, app: ServedApp) -> None:
    page = opened(PHONE, java_script_enabled=False)
    page.goto(f"/jobs/{app.demo}/set-out")
    page.locator("#h-overhang").check()
    page.locator("#s-overhang").focus()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    page.get_by_role("button", name="Look").click()
    expect(page.locator("#h-overhang")).to_be_checked()
    expect(page.locator(".figures")).to_contain_text("53 mm")


def test_daylight_is_forced_by_one_tap_and_night_again_by_another(opened: Opener, app: ServedApp) -> None:
    page = opened(PHONE, color_scheme="dark")
    page.goto(f"/jobs/{app.demo}/set-out")
    ground = "getComputedStyle(document.body).backgroundColor"
    night = page.evaluate(ground)
    page.get_by_role("button", name="Daylight").click()
    expect(page.locator("html")).to_have_attribute("data-light", "day")
    expect(page).to_have_url(f"{app.address}/jobs/{app.demo}/set-out")
    assert page.evaluate(ground) != night
    page.get_by_role("button", name="Night").click()
    expect(page.locator("html")).to_have_attribute("data-light", "night")
    assert night == page.evaluate(ground)
