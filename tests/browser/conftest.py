"""A real browser on the served app. Whatever a page does wrong by itself fails the test that looked at it."""

import shutil
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, Playwright, sync_playwright

from tests.scenario.browser_pages import DESK, NARROW_PHONE, PHONE, Opener, opening
from tests.scenario.served_app import ServedApp, served_app

CHROMIUM = shutil.which("chromium")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Where no browser is installed these tests say so."""
    for item in items:
        if "tests/browser/" in item.path.as_posix() and CHROMIUM is None:
            item.add_marker(pytest.mark.skip(reason="no chromium on the path: apt-get install chromium"))


@pytest.fixture(scope="session")
def app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[ServedApp]:
    """The app as it starts for the first time: the demo job in its list."""
    with served_app(tmp_path_factory.mktemp("kept")) as served:
        yield served


@pytest.fixture(scope="session")
def _playwright() -> Iterator[Playwright]:
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def chromium(_playwright: Playwright) -> Iterator[Browser]:
    """The browser. It asks nobody anything by itself."""
    args = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]
    browser = _playwright.chromium.launch(executable_path=CHROMIUM, args=args)
    yield browser
    browser.close()


@pytest.fixture
def opened(chromium: Browser, app: ServedApp) -> Iterator[Opener]:
    """Call it for a page: ``opened(PHONE)``, ``opened(DESK, color_scheme="dark")``; more are more browsers."""
    with opening(chromium, app) as page_of:
        yield page_of


@pytest.fixture
def phone(opened: Opener) -> Page:
    """A phone, held upright."""
    return opened(PHONE)


@pytest.fixture
def narrow_phone(opened: Opener) -> Page:
    """The narrowest phone."""
    return opened(NARROW_PHONE)


@pytest.fixture
def desk(opened: Opener) -> Page:
    """A laptop."""
    return opened(DESK)


@pytest.fixture(params=["phone", "desk"])
def page(request: pytest.FixtureRequest, opened: Opener) -> Page:
    """The same on a phone and on a laptop."""
    return opened(PHONE if request.param == "phone" else DESK)
