"""Every path of the app, by every method, with fields that its own pages ask for and anything in them: never a fault.

Paths and fields are read from the app itself, so that a new page is tried from its first day on.
"""

import re
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.applications import Starlette
from starlette.routing import Route

from gaugerod.wiring import document_of_file, open_store, store_path
from tests.scenario.app_browser import Browser, browsing
from tests.scenario.every_page import every_page
from tests.scenario.odd_words import NEAR, TEXT

METHODS = ("GET", "GET", "POST", "POST", "HEAD", "PUT", "DELETE", "PATCH", "OPTIONS")
CALM: dict[str, Any] = {
    "deadline": None,
    "suppress_health_check": [HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
}
KINDS: tuple[dict[str, str], ...] = (
    {},
    {"accept": "application/json"},
    {"accept": "text/html"},
    {"hx-request": "true", "hx-request-type": "partial"},
    {"sec-fetch-site": "cross-site"},
    {"content-type": "application/json"},
)


@dataclass(frozen=True)
class Tried:
    """The app, its paths, and every field that any of its pages has."""

    browser: Browser
    routes: tuple[str, ...]
    fields: tuple[str, ...]
    jobs: tuple[str, ...]
    token: str


@pytest.fixture(scope="module")
def tried() -> Iterator[Tried]:
    with (
        tempfile.TemporaryDirectory() as folder,
        open_store(store_path(folder)) as store,
        browsing(store, Path(folder)) as browser,
    ):
        app = browser.client.app
        assert isinstance(app, Starlette)
        routes = tuple(dict.fromkeys(each.path for each in app.routes if isinstance(each, Route)))
        pages = every_page(routes, store)
        fields = {name for path in pages.values() for name in re.findall(r' name="([^"]+)"', browser.get(path).text)}
        examples = files("gaugerod.adapters.job_file").joinpath("examples")
        for example in ("slates.toml", "random-slates.toml", "feet-and-inches.toml"):
            store.create(document_of_file(examples.joinpath(example).read_bytes()), by="fuzz")
        jobs = tuple(line.job for line in store.jobs())
        yield Tried(browser, routes, tuple(sorted(fields - {"token"})), jobs, store.share(jobs[0]))


def once(tried: Tried, data: st.DataObject) -> None:
    """One request that could be meant, or not."""
    browser = tried.browser
    route = data.draw(st.sampled_from(tried.routes), "route")
    parts = {
        "job": st.sampled_from(tried.jobs),
        "token": st.just(tried.token),
        "slope": st.sampled_from(["1", "2", "new", "0"]),
        "building": st.sampled_from(["1", "new", "9"]),
        "file": st.sampled_from(["rear-sheet.pdf", "rear.svg", "result.json", "on-the-roof.html"]),
    }
    path = re.sub(
        r"\{(\w+)\}",
        lambda found: data.draw(st.one_of(parts[found[1]], st.sampled_from(["x", "..", "%00", "²"])), found[1]),
        route,
    )
    method = data.draw(st.sampled_from(METHODS), "method")
    pairs = st.dictionaries(st.sampled_from(tried.fields), st.one_of(TEXT, st.sampled_from(NEAR)), max_size=16)
    query, form = data.draw(pairs, "query"), data.draw(pairs, "form")
    headers = data.draw(st.sampled_from(KINDS), "headers")
    sent: dict[str, Any] = {"params": query, "headers": headers}
    if method == "POST":
        token = {"token": browser.token()} if data.draw(st.integers(0, 5), "with the token") else {}
        sent["data"] = {**form, **token}
        if data.draw(st.booleans(), "with a file"):
            sent["files"] = {"file": ("job.toml", data.draw(st.binary(max_size=200), "file"))}
    answer = browser.client.request(method, path, follow_redirects=False, **sent)
    assert answer.status_code < 500, answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    if "application/json" in answer.headers.get("content-type", "") and answer.content:
        answer.json()
    for job in tried.jobs:
        browser.store.unarchive(job)


@settings(max_examples=120, **CALM)
@given(data=st.data())
def test_no_path_by_no_method_ends_in_a_fault(tried: Tried, data: st.DataObject) -> None:
    once(tried, data)


@pytest.mark.slow
@settings(max_examples=6_000, **CALM)
@given(data=st.data())
def test_no_path_by_no_method_ends_in_a_fault_many(tried: Tried, data: st.DataObject) -> None:
    once(tried, data)
