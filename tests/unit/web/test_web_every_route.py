"""The door holds for every path there is: read from the app itself, so that no new page is forgotten."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.applications import Starlette
from starlette.routing import Route

from gaugerod.adapters.store.store import JobStore
from gaugerod.web.gate.passphrase import keep_passphrase
from gaugerod.web.gate.wire import HEADERS
from tests.scenario.app_browser import Browser, browsing
from tests.scenario.every_page import every_page

OPEN_TO_ALL = ("/sign-in", "/light", "/shared/", "/asset/")
PLAIN_HEADERS = {name: value for name, value in HEADERS.items() if name != "content-security-policy"}
HARM = """"><script>alert(1)</script>{{ 7 * 7 }}${7*7}{% for x in ().__class__.__base__.__subclasses__() %}<img src=x onerror=y>"""


@pytest.fixture
def reached(store: JobStore, folder: Path) -> Iterator[Browser]:
    """The app where other machines may come in, seen by one that has not given the passphrase."""
    keep_passphrase("slate lath and torching", folder=folder)
    with browsing(store, folder, lan=True, address="http://192.168.0.7:8417") as opened:
        yield opened


def routes(browser: Browser, method: str) -> tuple[str, ...]:
    app = browser.client.app
    assert isinstance(app, Starlette)
    return tuple(
        each.path for each in app.routes if isinstance(each, Route) and each.methods and method in each.methods
    )


def filled(browser: Browser, route: str) -> str:
    parts = {"job": browser.job, "slope": "1", "building": "new", "token": "unknown", "file": "rear-sheet.pdf"}
    return re.sub(r"\{(\w+)\}", lambda found: parts[found[1]], route)


def assert_strict(policy: str) -> None:
    """Our own files only; or, where a file carries its one script in itself, that very script by its hash."""
    parts = dict(part.strip().split(" ", 1) for part in policy.split(";") if part.strip())
    assert "'none'" == parts["default-src"]
    assert "'none'" == parts["frame-ancestors"]
    assert "'none'" == parts["base-uri"]
    assert re.fullmatch(r"'self'|'sha256-[\w+/=]+'", parts["script-src"])
    assert re.fullmatch(r"'self'|'sha256-[\w+/=]+'", parts["style-src"])
    assert parts["form-action"] in {"'self'", "'none'"}


@pytest.mark.parametrize("method", ["GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "FROG"])
def test_every_answer_by_every_method_carries_the_strict_headers(browser: Browser, method: str) -> None:
    for route in {*routes(browser, "GET"), *routes(browser, "POST"), "/nowhere"}:
        answer = browser.client.request(method, filled(browser, route), follow_redirects=False)
        assert answer.status_code < 500, route
        assert_strict(answer.headers["content-security-policy"])
        assert PLAIN_HEADERS == {name: answer.headers.get(name) for name in PLAIN_HEADERS}, route
        assert answer.headers["cache-control"] in {"no-store", "public, max-age=3600"}, route
        assert "server" not in answer.headers, route


def test_no_page_has_a_script_or_a_style_in_it(browser: Browser) -> None:
    for name, path in every_page(routes(browser, "GET"), browser.store).items():
        answer = browser.get(path)
        if "script-src 'sha256-" in answer.headers["content-security-policy"]:
            continue
        page = answer.text
        assert not re.search(r"<script(?![^>]* src=)", page), name
        assert "<style" not in page, name
        assert not re.search(r"<[^>]* (?:style|on\w+)=", page), name
        assert not re.search(r"""(?:src|href|action)=["'](?:https?:)?//(?!localhost:8417/shared/)""", page), name


def test_every_post_without_its_token_is_refused(browser: Browser) -> None:
    browser.get("/")
    before = browser.store.export_all()
    for route in routes(browser, "POST"):
        path = filled(browser, route)
        assert 403 == browser.client.post(path, data={"title": "x"}, follow_redirects=False).status_code, route
        answer = browser.client.post(path, data={"token": "0" * 64}, follow_redirects=False)
        assert 403 == answer.status_code, route
        elsewhere = {"sec-fetch-site": "cross-site"}
        assert 403 == browser.post(path, headers=elsewhere).status_code, route
    assert before == browser.store.export_all()


def test_without_the_passphrase_every_path_but_the_open_ones_is_shut(reached: Browser) -> None:
    for method in ("GET", "POST"):
        for route in routes(reached, method):
            if route.startswith(OPEN_TO_ALL):
                continue
            answer = reached.client.request(method, filled(reached, route), follow_redirects=False)
            assert answer.status_code in {303, 401}, route
            assert "Yard Cottage" not in answer.text, route


def test_what_is_typed_is_shown_as_typed_and_never_becomes_part_of_the_page(browser: Browser) -> None:
    for page in ("site", "slopes/1", "covering", "covering/own", "set-out", "beneath", "edges", "order", "record"):
        fields = set(re.findall(r' name="([^"]+)"', browser.get(f"/jobs/{browser.job}/{page}").text)) - {"token", "rev"}
        answer = browser.post(f"/jobs/{browser.job}/{page}", dict.fromkeys(fields, HARM))
        assert "<script>alert" not in answer.text, page
        assert "<img src=x" not in answer.text, page
        assert "49" not in re.findall(r"alert\(1\)&lt;/script&gt;(.{2})", answer.text), page


def test_a_title_and_a_slope_that_look_like_markup_stay_words_everywhere(browser: Browser) -> None:
    document = browser.document()
    document["job"]["title"] = "<b onclick=x>Row</b> {{ 7 * 7 }}"
    document["slope"][0]["name"] = "rear<svg/onload=x>"
    browser.store.save(browser.job, document, by="<i>hand</i>", base_rev=1, draft=True)
    link = browser.store.share(browser.job)
    for path in ("/", f"/shared/{link}", *(f"/jobs/{browser.job}/{page}" for page in
                 ("site", "slopes", "slopes/1", "set-out", "beneath", "edges", "order", "quotation", "record", "findings",
                  "working", "sheets", "history"))):  # fmt: skip
        page = browser.get(path).text
        assert "<b onclick" not in page, path
        assert "<svg/onload" not in page, path
        assert "<i>hand" not in page, path
        assert " 49" not in page.partition("</title>")[0], path


def test_an_address_that_looks_like_markup_does_not_get_into_the_link_to_share(browser: Browser) -> None:
    answer = browser.post(f"/jobs/{browser.job}/share", headers={"host": 'localhost:1"><script>'})
    assert "<script>" not in answer.text.replace('<script src="/asset/', "")


def test_a_name_kept_in_a_cookie_adds_no_header(browser: Browser) -> None:
    answer = browser.post("/about", {"who": "Ann\r\nset-cookie: x=1", "light": "day"})
    assert "x" not in answer.cookies


def test_links_to_share_cannot_be_guessed_and_open_one_job_each(browser: Browser) -> None:
    other = browser.store.duplicate(browser.job, by="a hand").job
    links = {browser.store.share(browser.job) for _ in range(200)} | {browser.store.share(other)}
    assert 201 == len(links)
    assert all(len(link) >= 43 for link in links), "256 bits, six to a letter"
    assert {browser.job, other} == {browser.store.shared(link) for link in links}
    link = browser.store.share(browser.job)
    assert browser.store.shared(link.swapcase()) is None
    assert browser.store.shared(link[:-1]) is None
    assert 202 - 1 == browser.store.revoke(browser.job)
    assert browser.store.shared(link) is None
    assert 404 == browser.get(f"/shared/{link}/files/rear-sheet.pdf").status_code
    assert 404 == browser.get(f"/shared/{link}.json").status_code
