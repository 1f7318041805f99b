"""The main path without a mouse and without a finger: every step reached by the tab key, and seen to be reached."""

import re

from playwright.sync_api import Page, expect

from tests.scenario.served_app import ServedApp

_NAME = """() => {
  const here = document.activeElement;
  if (here === document.body) return [null, false];
  const style = getComputedStyle(here);
  const label = here.labels?.[0]?.innerText ?? here.getAttribute('aria-label') ?? here.innerText ?? '';
  return [label.trim(), style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2];
}"""
MOST_STEPS_COUNT = 90


def reach(page: Page, name: str) -> None:
    """Press tab until it stands on what is called so; where it stands must be seen at every step."""
    passed = []
    for _ in range(MOST_STEPS_COUNT):
        page.keyboard.press("Tab")
        said, outlined = page.evaluate(_NAME)
        assert outlined or said is None, f"the focus cannot be seen on {said!r}"
        if said is not None and re.match(name, said):
            return
        passed.append(said)
    raise AssertionError(f"{name} cannot be reached by tab; passed {passed}")


def write(page: Page, name: str, text: str) -> None:
    reach(page, name)
    page.keyboard.type(text)


def press(page: Page, name: str) -> None:
    reach(page, name)
    page.keyboard.press("Enter")


def test_a_job_is_set_out_with_the_keyboard_alone(desk: Page) -> None:
    desk.goto("/")
    press(desk, "New job$")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Site")
    write(desk, "Title of the job", "Keyboard Mews")
    write(desk, "Driving rain", "mod")
    press(desk, "Save$")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Slopes")
    press(desk, "Measure a slope")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Measure a slope")
    for name, text in (
        ("Name of the slope", "front"),
        ("Pitch$", "40"),
        ("Along the eaves", "6.4 m"),
        ("Rafter 1", "4.12 m"),
        ("Rafter 2", "4.12 m"),
        ("Rafter to rafter", "400"),
        ("At the left", "verge"),
        ("At the right", "verge"),
        ("At the top", "ridge"),
    ):
        write(desk, name, text)
    press(desk, "Save the slope")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Covering")
    press(desk, "Plain tiles")
    reach(desk, "Clay pantile")
    tile = desk.get_by_role("radio", name=re.compile("^Clay plain tile")).first
    for _ in range(MOST_STEPS_COUNT):
        desk.keyboard.press("ArrowDown")
        if tile.is_checked():
            break
    expect(tile).to_be_focused()
    expect(desk.get_by_role("button", name="Lay this")).to_be_visible()
    press(desk, "Lay this$")
    expect(desk.get_by_role("heading", level=1)).to_have_text("Set out")
    reach(desk, "Eaves overhang")
    desk.keyboard.press("ArrowRight")
    desk.keyboard.press("ArrowRight")
    expect(desk.get_by_label(re.compile("hold at")).first).to_be_checked()
    slider = desk.get_by_label("Eaves overhang")
    first = desk.locator(".figures > div", has_text="Eaves overhang").locator("dd").first
    expect(first).to_have_text(f"{slider.input_value()} mm")
    expect(slider).to_be_focused()
    press(desk, "Keep these")
    expect(first).to_have_text(f"{slider.input_value()} mm")


def test_the_first_tab_leads_past_the_head_of_the_page(desk: Page, app: ServedApp) -> None:
    desk.goto(f"/jobs/{app.demo}/set-out")
    desk.keyboard.press("Tab")
    expect(desk.get_by_role("link", name="To the page")).to_be_focused()
    desk.keyboard.press("Enter")
    expect(desk.locator("main")).to_be_focused()


def test_a_table_too_wide_for_a_phone_is_reached_and_moved_by_the_keys(narrow_phone: Page, app: ServedApp) -> None:
    narrow_phone.goto(f"/jobs/{app.demo}/set-out")
    room = narrow_phone.get_by_role("region", name="How the courses end")
    room.focus()
    expect(room).to_be_focused()
    narrow_phone.keyboard.press("ArrowRight")
