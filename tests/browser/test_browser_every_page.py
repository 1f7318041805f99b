"""Every page, at both sizes and in both lights: to be read by anyone, with any hand, and on paper."""

from collections.abc import Iterator
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Browser, Page

from tests.scenario.browser_pages import DESK, NARROW_PHONE, PHONE, Opener
from tests.scenario.every_page import every_page
from tests.scenario.served_app import ServedApp, served_app

LEAST_TARGET = 44
"""Of a thumb, in the browser's own pixels: WCAG 2.2, 2.5.5 Target Size (Enhanced), level AAA."""
RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}
TARGETS = """() => [...document.querySelectorAll('a[href], button, input:not([type=hidden]), select, summary')]
  .filter((each) => each.checkVisibility() && !each.closest('.unseen, .skip'))
  .map((each) => {
    const label = ['radio', 'checkbox'].includes(each.type) ? each.closest('label') : null;
    const box = (label ?? each).getBoundingClientRect();
    return [(label ?? each).innerText.trim().slice(0, 40) || each.id, box.width, box.height];
  })"""
SHADOWED = """() => [...document.forms].flatMap((form) => [...form.elements]
  .map((each) => each.name).filter((name) => ['form', 'elements', 'closest', 'matches', 'submit', 'action', 'method',
    'target', 'children', 'parentNode', 'getAttribute', 'addEventListener', 'isConnected'].includes(name)))"""


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[ServedApp, dict[str, str]]]:
    """An app of its own, with jobs of every kind in it."""
    with served_app(tmp_path_factory.mktemp("every")) as served:
        yield served, every_page(served.routes, served.store)


def faults_by_axe(chromium: Browser, place: tuple[ServedApp, dict[str, str]], **context: Any) -> list[str]:  # noqa: ANN401
    """The policy of the pages lets nothing in, so it is lifted for the one that looks, and for nobody else."""
    served, pages = place
    opened = chromium.new_context(base_url=served.address, bypass_csp=True, **context)
    page, axe = opened.new_page(), Axe()
    found: list[str] = []
    for name, path in pages.items():
        page.goto(path)
        seen = axe.run(page, options=RULES).response
        assert seen["passes"], f"{name}: nothing was looked at"
        for violation in seen["violations"]:
            nodes = [str(node["target"]) for node in violation["nodes"]]
            found.append(f"{name}: {violation['id']} ({violation['help']}) {nodes[:3]}")
    opened.close()
    return found


def test_every_page_is_complete_for_those_who_do_not_see_it_by_night_on_a_phone(
    chromium: Browser, place: tuple[ServedApp, dict[str, str]]
) -> None:
    assert [] == faults_by_axe(chromium, place, color_scheme="dark", **PHONE)


def test_every_page_is_complete_for_those_who_do_not_see_it_by_day_on_a_laptop(
    chromium: Browser, place: tuple[ServedApp, dict[str, str]]
) -> None:
    assert [] == faults_by_axe(chromium, place, color_scheme="light", **DESK)


@pytest.mark.slow
@pytest.mark.parametrize(("light", "size"), [("light", PHONE), ("dark", DESK)])
def test_every_page_is_complete_the_other_way_round(
    chromium: Browser, place: tuple[ServedApp, dict[str, str]], light: str, size: dict[str, Any]
) -> None:
    assert [] == faults_by_axe(chromium, place, color_scheme=light, **size)


def test_no_page_is_wider_than_the_narrowest_phone_and_every_target_is_as_large_as_a_thumb(
    opened: Opener, place: tuple[ServedApp, dict[str, str]]
) -> None:
    served, pages = place
    page = opened(NARROW_PHONE, base_url=served.address)
    small: list[str] = []
    for name, path in pages.items():
        page.goto(path)
        assert 360 >= page.evaluate("document.documentElement.scrollWidth"), name
        small += [
            f"{name}: {said} {width:.0f} × {height:.0f}"
            for said, width, height in page.evaluate(TARGETS)
            if height < LEAST_TARGET - 0.5 or width < 24
        ]
    assert [] == small


def test_no_field_is_named_like_a_part_of_its_form(opened: Opener, place: tuple[ServedApp, dict[str, str]]) -> None:
    """A field called ``form`` hides the form from the script that sends it."""
    served, pages = place
    page = opened(DESK, base_url=served.address)
    shadowed: dict[str, list[str]] = {}
    for name, path in pages.items():
        page.goto(path)
        shadowed[name] = page.evaluate(SHADOWED)
    assert {} == {name: names for name, names in shadowed.items() if names}


def test_no_page_asks_anything_of_another_machine_or_breaks_its_own_policy(
    opened: Opener, place: tuple[ServedApp, dict[str, str]]
) -> None:
    """What is asked and what the policy refuses is watched while the pages stand open."""
    served, pages = place
    page = opened(DESK, base_url=served.address)
    for path in pages.values():
        page.goto(path, wait_until="load")


def test_nothing_moves_for_those_who_want_it_still(opened: Opener, place: tuple[ServedApp, dict[str, str]]) -> None:
    served, pages = place
    page = opened(DESK, base_url=served.address, reduced_motion="reduce")
    moving = """() => [...document.querySelectorAll('*')].filter((each) => {
      const style = getComputedStyle(each);
      return style.animationName !== 'none' || parseFloat(style.transitionDuration) > 0 || style.scrollBehavior === 'smooth';
    }).length"""
    for name in ("/", "/jobs/{job}/set-out", "/jobs/{job}/slopes/{slope}", "/jobs/{job}/findings"):
        page.goto(pages[name])
        assert 0 == page.evaluate(moving), name


def test_on_paper_there_is_ink_on_white_and_nothing_to_press(
    opened: Opener, place: tuple[ServedApp, dict[str, str]]
) -> None:
    served, pages = place
    page = opened(DESK, base_url=served.address, color_scheme="dark")
    for name in ("/jobs/{job}/set-out", "/jobs/{job}/findings", "outside, set out"):
        page.goto(pages[name])
        page.emulate_media(media="print")
        assert "rgb(255, 255, 255)" == page.evaluate("getComputedStyle(document.body).backgroundColor"), name
        assert [] == _pressed(page), name
        assert page.locator("h1").is_visible()
    assert page.locator(".drawing-room.wide svg").is_visible()


def _pressed(page: Page) -> list[str]:
    return [each.inner_text() for each in page.locator("button, input, .button").all() if each.is_visible()]
