"""Pages in a real browser, watched: whatever a page does wrong by itself is found out."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlsplit

from playwright.sync_api import Browser, BrowserContext, Page, Request

from tests.scenario.served_app import ServedApp

PHONE: dict[str, Any] = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
NARROW_PHONE: dict[str, Any] = {**PHONE, "viewport": {"width": 360, "height": 740}}
DESK: dict[str, Any] = {"viewport": {"width": 1280, "height": 900}}
_NO_WORSE_THAN_ASKED = "Failed to load resource: the server responded with a status of 4"
"""The browser's own word for an answer that refuses what was typed: such answers are looked at by the tests."""


@dataclass
class Watch:
    """What went wrong by itself while pages were open, and every address they asked."""

    faults: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def over(self, context: BrowserContext) -> None:
        """Look at every page of the context."""
        context.add_init_script(
            "document.addEventListener('securitypolicyviolation',"
            " (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`))"
        )
        context.on("page", self._on_page)
        context.on("request", self._on_request)

    def _on_page(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.faults.append(f"error on the page: {error}"))
        page.on("console", lambda said: self._on_console(said.type, said.text))

    def _on_console(self, kind: str, text: str) -> None:
        if kind in {"error", "warning"} and not text.startswith(_NO_WORSE_THAN_ASKED):
            self.faults.append(f"console: {text}")

    def _on_request(self, request: Request) -> None:
        self.asked.append(request.url)
        parts = urlsplit(request.url)
        if parts.scheme in {"http", "https", "ws", "wss"} and parts.hostname not in {"127.0.0.1", "localhost"}:
            self.faults.append(f"asked another machine: {request.url}")


Opener = Callable[..., Page]


@contextmanager
def opening(chromium: Browser, app: ServedApp) -> Iterator[Opener]:
    """Gives pages in contexts of their own, all watched; at the end there must be nothing to complain of."""
    contexts: list[BrowserContext] = []
    watch = Watch()

    def page_of(size: dict[str, Any], **more: Any) -> Page:  # noqa: ANN401 - as the browser takes it
        context = chromium.new_context(**{"base_url": app.address, "locale": "en-GB", **size, **more})
        context.set_default_timeout(10_000)
        contexts.append(context)
        watch.over(context)
        return context.new_page()

    try:
        yield page_of
    finally:
        for context in contexts:
            context.close()
    assert [] == watch.faults
