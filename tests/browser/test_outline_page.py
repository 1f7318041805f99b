"""A building drawn by tapping, on a phone and on a laptop."""

import time
from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Page, Route, expect

from tests.scenario.browser_pages import DESK, PHONE, Opener
from tests.scenario.served_app import ServedApp

L_SHAPE_M = ((2, 2), (14, 2), (14, 9), (9, 9), (9, 13), (2, 13))
"""Corners on the empty grid of 20 by 15 m, from its lower left."""


@pytest.fixture
def job(app: ServedApp) -> Iterator[str]:
    """A copy of the demo job, put away afterwards."""
    copy = app.store.duplicate(app.demo, by="test").job
    yield copy
    app.store.archive(copy)


def tap(page: Page, x_m: float, y_m: float) -> None:
    """Tap at a place on plan, as the drawing now stands; a little beside it, as fingers do."""
    where = on_screen(page, x_m, y_m)
    corners = page.locator("[data-corner]").count()
    page.mouse.click(where[0] + 1.5, where[1] - 1.5)
    expect(page.locator("[data-corner]")).to_have_count(corners + 1)


def on_screen(page: Page, x_m: float, y_m: float) -> tuple[float, float]:
    page.locator("#plan").scroll_into_view_if_needed()
    x, y = page.locator("#plan").evaluate(
        """(plan, [x, y]) => {
          const of = plan.dataset;
          const at = new DOMPoint((x * 1000 - of.leftMm) / of.mmPerUnit, (of.topMm - y * 1000) / of.mmPerUnit);
          const there = at.matrixTransform(plan.getScreenCTM());
          return [there.x, there.y];
        }""",
        [x_m, y_m],
    )
    return float(x), float(y)


def draw_the_l(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/buildings/new")
    for corner in L_SHAPE_M:
        tap(page, *corner)


def lengths(page: Page) -> list[str]:
    return [field.input_value() for field in page.get_by_label("Length", exact=True).all()]


def test_tapping_an_l_draws_it_roofs_it_and_saves_it(page: Page, app: ServedApp, job: str) -> None:
    draw_the_l(page, job)
    assert ["12000 mm", "7000 mm", "5000 mm", "4000 mm", "7000 mm", "11000 mm"] == lengths(page)
    page.get_by_label("Name of the building").fill("house")
    page.get_by_label("Pitch", exact=True).fill("35°")
    expect(page.get_by_text("6 slopes, 5 hips, 1 valley, 2 ridges")).to_be_visible()
    page.mouse.click(*on_screen(page, 5.5, 13))
    expect(page.locator("#f-wall-4-stands")).to_have_value("gable")
    expect(page.get_by_text("1 gable,")).to_be_visible()
    page.get_by_role("button", name="Save the building").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    for number in range(1, 6):
        expect(page.get_by_role("link", name=f"house {number}", exact=True)).to_be_visible()
    saved = app.store.load(job).document["building"][0]
    assert ["35°", "35°", "35°", "35°", "gable", "35°"] == saved["pitch"]
    assert [["2000 mm", "2000 mm"], ["14000 mm", "2000 mm"]] == saved["outline"][:2]


def test_a_tap_is_not_lost_to_an_answer_that_comes_in_its_middle(page: Page, job: str) -> None:
    draw_the_l(page, job)
    page.get_by_label("Pitch", exact=True).fill("35°")
    expect(page.get_by_text("6 slopes, 5 hips, 1 valley, 2 ridges")).to_be_visible()
    page.mouse.move(*on_screen(page, 5.5, 13))
    with page.expect_response(lambda response: response.request.method == "POST") as answered:
        page.mouse.down()  # the field left behind asks once more
    assert answered.value.text()
    page.wait_for_timeout(200)
    page.mouse.up()
    expect(page.locator("#f-wall-4-stands")).to_have_value("gable")
    expect(page.get_by_text("1 gable,")).to_be_visible()


def test_taps_faster_than_the_answers_all_count(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/buildings/new")
    places = [on_screen(page, *corner) for corner in L_SHAPE_M]
    for x, y in places:
        page.mouse.click(x, y)
    expect(page.locator("[data-corner]")).to_have_count(6)
    expect(page.get_by_label("Length", exact=True)).to_have_count(6)
    assert ["12000 mm", "7000 mm", "5000 mm", "4000 mm", "7000 mm", "11000 mm"] == lengths(page)


def slowly(page: Page, seconds: float) -> None:
    """Every answer to a form takes so much longer, as over a weak signal."""

    def later(route: Route) -> None:
        if route.request.method == "POST":
            time.sleep(seconds)
        route.continue_()

    page.route("**/buildings/**", later)


def test_taps_after_typing_count_though_the_answers_are_slow(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/buildings/new")
    slowly(page, 0.2)
    with page.expect_response(lambda response: response.request.method == "POST"):
        page.get_by_label("Name of the building").fill("barn")
    page.wait_for_timeout(500)
    for x, y in [on_screen(page, *corner) for corner in L_SHAPE_M]:
        page.mouse.click(x, y)
    expect(page.get_by_label("Length", exact=True)).to_have_count(6)
    expect(page.locator("[data-corner]")).to_have_count(6)
    expect(page.get_by_label("Name of the building")).to_have_value("barn")


def test_what_is_typed_while_a_tap_is_answered_stays(page: Page, job: str) -> None:
    draw_the_l(page, job)
    slowly(page, 0.4)
    page.mouse.click(*on_screen(page, 4, 8))
    page.get_by_label("Pitch", exact=True).click()
    page.keyboard.type("35", delay=120)
    expect(page.get_by_label("Length", exact=True)).to_have_count(7)
    expect(page.get_by_label("Pitch", exact=True)).to_have_value("35")
    expect(page.get_by_label("Pitch", exact=True)).to_be_focused()


def test_the_last_corners_can_be_taken_back_to_none(page: Page, job: str) -> None:
    draw_the_l(page, job)
    for left in range(5, 0, -1):
        page.get_by_role("button", name="Take the last corner out").click()
        expect(page.locator("[data-corner]")).to_have_count(left)
    page.get_by_role("button", name="Take the last corner out").click()
    expect(page.locator("[data-corner]")).to_have_count(0)


def test_a_corner_is_dragged_with_the_main_button_only(page: Page, job: str) -> None:
    draw_the_l(page, job)
    start, end = on_screen(page, 14, 9), on_screen(page, 14, 10)
    page.mouse.move(*start)
    page.mouse.down(button="right")
    page.mouse.move(*end, steps=3)
    page.mouse.up(button="right")
    page.wait_for_timeout(300)
    assert ["12000 mm", "7000 mm", "5000 mm", "4000 mm", "7000 mm", "11000 mm"] == lengths(page)


def test_a_corner_is_dragged_and_stays_square(page: Page, job: str) -> None:
    draw_the_l(page, job)
    start, end = on_screen(page, 14, 9), on_screen(page, 14, 10)
    page.mouse.move(*start)
    page.mouse.down()
    page.mouse.move((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    page.mouse.move(*end)
    page.mouse.up()
    expect(page.get_by_label("Length", exact=True).nth(1)).to_have_value("8000 mm")


def test_an_exact_length_is_typed_after_tapping(page: Page, job: str) -> None:
    draw_the_l(page, job)
    first = page.get_by_label("Length", exact=True).first
    first.fill("12.4 m")
    expect(page.get_by_text("misses its first corner by 400.0 mm")).to_be_visible()
    page.get_by_label("Length", exact=True).nth(2).fill("5.4 m")
    expect(page.get_by_text("closes to 0.0 mm").first).to_be_visible()
    expect(first).to_have_value("12.4 m")


def test_the_last_corner_can_be_taken_back(page: Page, job: str) -> None:
    draw_the_l(page, job)
    page.get_by_role("button", name="Take the last corner out").click()
    expect(page.locator("[data-corner]")).to_have_count(5)
    page.get_by_role("button", name="Begin anew").click()
    expect(page.locator("[data-corner]")).to_have_count(0)


def test_everything_can_be_done_by_keyboard(desk: Page, app: ServedApp, job: str) -> None:
    desk.goto(f"/jobs/{job}/buildings/new")
    desk.get_by_label("Name of the building").focus()
    for key in ("b", "a", "r", "n", "Tab", "Tab", "4", "0"):
        desk.keyboard.press(key)
    desk.get_by_label("Length", exact=True).first.focus()
    desk.keyboard.type("9 m")
    desk.get_by_label("Length", exact=True).nth(1).focus()
    desk.keyboard.type("6 m")
    expect(desk.get_by_text("4 slopes, 4 hips, 1 ridge")).to_be_visible()
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Set out")
    assert "barn" == app.store.load(job).document["building"][0]["name"]


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_nothing_stands_in_anyones_way(opened: Opener, job: str, size: dict[str, object], light: str) -> None:
    page = opened(size, color_scheme=light)
    for done in (False, True):
        if done:
            draw_the_l(page, job)
            page.get_by_label("Pitch", exact=True).fill("35°")
            expect(page.get_by_text("6 slopes")).to_be_visible()
        else:
            page.goto(f"/jobs/{job}/buildings/new")
        found = Axe().run(page).response["violations"]
        assert [] == [(each["id"], each["nodes"][0]["html"][:120]) for each in found]
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
