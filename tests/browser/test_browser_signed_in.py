"""Where other machines may come in: nobody does without the passphrase, and guessing it takes longer and longer."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from gaugerod.web.gate.throttle import FREE_TRIES_COUNT
from tests.scenario.browser_pages import PHONE, Opener, opening
from tests.scenario.served_app import ServedApp, served_app

PASSPHRASE = "slate lath and torching"  # noqa: S105 - of these tests only


@pytest.fixture
def reached_app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[ServedApp]:
    with served_app(tmp_path_factory.mktemp("reached"), passphrase=PASSPHRASE) as served:
        yield served


@pytest.fixture
def reached(chromium: Browser, reached_app: ServedApp) -> Iterator[Opener]:
    with opening(chromium, reached_app) as page_of:
        yield page_of


def test_the_passphrase_opens_the_page_that_was_asked_for_until_one_signs_out(
    reached: Opener, reached_app: ServedApp
) -> None:
    page = reached(PHONE)
    page.goto(f"/jobs/{reached_app.demo}/set-out")
    expect(page.get_by_role("heading", level=1)).to_have_text("Passphrase")
    page.get_by_label("Passphrase of this machine").fill("slate lath and torchinG")
    page.get_by_role("button", name="Open the jobs").click()
    expect(page.get_by_role("alert")).to_be_visible()
    page.get_by_label("Passphrase of this machine").fill(PASSPHRASE)
    page.get_by_role("button", name="Open the jobs").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    cookie = next(each for each in page.context.cookies() if "gaugerod" in each["name"])
    assert cookie["httpOnly"]
    assert "Strict" == cookie["sameSite"]
    page.get_by_role("link", name="Sign out").click()
    page.get_by_role("button", name="Sign out").click()
    page.goto("/")
    expect(page.get_by_role("heading", level=1)).to_have_text("Passphrase")


def told_to_wait(page: Page, *, within: int) -> bool:
    """Is a guess told to wait, at the latest after so many?"""
    for _ in range(within):
        page.get_by_label("Passphrase of this machine").fill("a guess at it")
        page.get_by_role("button", name="Open the jobs").click()
        if "second" in page.get_by_role("alert").inner_text():
            return True
    return False


def test_guessing_is_made_to_wait_and_says_for_how_long(reached: Opener) -> None:
    page, other = reached(PHONE), reached(PHONE)
    page.goto("/")
    other.goto("/")
    assert told_to_wait(page, within=FREE_TRIES_COUNT + 6)
    assert told_to_wait(other, within=FREE_TRIES_COUNT - 1), "another browser at the same place waits too"
