import json
import re
from html.parser import HTMLParser

import pytest

from tests.scenario.app_browser import Browser

PAGES = ("site", "slopes", "slopes/1", "slopes/new", "covering", "covering/own", "set-out", "findings", "working", "sheets",
         "history", "compare", "check-roof")  # fmt: skip


def paths(job: str) -> list[str]:
    return ["/", "/about", "/check-roof", *(f"/jobs/{job}/{page}" for page in PAGES)]


class Reader(HTMLParser):
    """What a page asks the browser to fetch or to do of its own."""

    def __init__(self) -> None:
        super().__init__()
        self.inline: list[str] = []
        self.fetched: list[str] = []
        self.ids: list[str] = []
        self.labelled: set[str] = set()
        self.asked: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.inline += [f"{tag} {name}" for name in given if name.startswith("on") or name == "style"]
        if tag == "style" or (tag == "script" and "src" not in given):
            self.inline.append(tag)
        self.fetched += [
            given[name] or "" for name in ("src", "href") if name in given and tag in {"script", "link", "img"}
        ]
        self.ids += [given["id"] or ""] if "id" in given else []
        if tag == "label" and given.get("for"):
            self.labelled.add(given["for"] or "")
        if tag in {"input", "select", "textarea"} and given.get("type") not in {"hidden", "radio", "checkbox"}:
            self.asked.append(given.get("id") or "without an id")


def test_every_page_answers_and_so_does_its_twin(browser: Browser) -> None:
    for path in paths(browser.job):
        assert 200 == browser.get(path).status_code, path
        twin = browser.get("/jobs.json" if path == "/" else f"{path}.json")
        assert (200, "application/json") == (twin.status_code, twin.headers["content-type"]), path
        by_header = browser.get(path, headers={"accept": "application/json"})
        assert twin.json() == by_header.json(), path


def test_no_page_carries_script_or_style_inside_it_or_asks_another_machine(browser: Browser) -> None:
    for path in paths(browser.job):
        reader = Reader()
        reader.feed(browser.get(path).text)
        assert [] == reader.inline, path
        assert [] == [place for place in reader.fetched if not place.startswith("/asset/")], path


def test_every_field_has_its_label_and_every_id_stands_once(browser: Browser) -> None:
    for path in paths(browser.job):
        reader = Reader()
        reader.feed(browser.get(path).text)
        assert [] == [field for field in reader.asked if field not in reader.labelled], path
        assert len(set(reader.ids)) == len(reader.ids), path


def test_every_page_says_what_it_does_not_replace(browser: Browser) -> None:
    for path in paths(browser.job):
        assert "does not replace the maker&#39;s instructions" in browser.get(path).text, path


def test_the_demo_job_stands_in_the_list_at_the_first_start(browser: Browser) -> None:
    rows = browser.get("/jobs.json").json()["jobs"]
    assert ["Yard Cottage, rear slope"] == [row["title"] for row in rows]


def test_the_twin_of_setting_out_has_the_same_marks_as_the_page(browser: Browser) -> None:
    page = browser.get(f"/jobs/{browser.job}/set-out").text
    twin = browser.get(f"/jobs/{browser.job}/set-out.json").json()
    marks = [row[1] for row in twin["slope"]["parts"][0]["tables"][0]["rows"]]
    assert 15 == len(marks)
    assert [] == [mark for mark in marks if f'<td class="mark">{mark}</td>' not in page]


def test_the_setting_out_page_is_light(browser: Browser) -> None:
    """Own bytes of the first paint without the drawing, as a browser gets them: under 60 kB."""
    page = browser.get(f"/jobs/{browser.job}/set-out").text
    own = len(re.sub(r"<svg.*?</svg>", "", page, flags=re.DOTALL).encode())
    reader = Reader()
    reader.feed(page)
    for place in reader.fetched:
        with browser.client.stream("GET", place, headers={"accept-encoding": "gzip"}) as asset:
            own += len(b"".join(asset.iter_raw()))
    assert own < 60_000


@pytest.mark.parametrize("page", ["findings", "working", "set-out", "sheets"])
def test_a_job_that_lacks_something_says_what_and_where(browser: Browser, page: str) -> None:
    job = browser.post("/jobs").headers["location"].split("/")[2]
    twin = browser.get(f"/jobs/{job}/{page}.json").json()
    assert {f"/jobs/{job}/slopes", f"/jobs/{job}/covering", f"/jobs/{job}/site"} == {
        each["href"] for each in twin["lacks"]
    }
    assert "Still to do" in browser.get(f"/jobs/{job}/{page}").text


def test_what_is_not_there_is_said_plainly(browser: Browser) -> None:
    missing = browser.get("/jobs/nobody/set-out")
    assert 404 == missing.status_code
    assert "There is nothing here." in missing.text
    twin = browser.get("/jobs/nobody/set-out.json")
    assert (404, "There is nothing here.") == (twin.status_code, twin.json()["says"])
    assert 404 == browser.get(f"/jobs/{browser.job}/slopes/7").status_code
    assert 404 == browser.get(f"/jobs/{browser.job}/sheets/../../etc/passwd").status_code
    assert 404 == browser.get(f"/jobs/{browser.job}/sheets/nothing.pdf").status_code


def test_titles_cannot_smuggle_markup_or_templates_into_a_page(browser: Browser) -> None:
    evil = '<script>alert(1)</script>{{ 7*7 }}{% raw %}"><img src=x onerror=alert(1)>'
    job = browser.job
    assert (
        303
        == browser.post(
            f"/jobs/{job}/site", {"title": evil[:110], "exposure": "moderate", "show_lengths_in": "mm"}
        ).status_code
    )
    for path in paths(job):
        text = browser.get(path).text
        assert "<script>alert" not in text, path
        assert "<img" not in text, path
        if "{{ 7*7 }}" not in text:
            assert "49}" not in text, path


def test_names_of_openings_and_slopes_are_escaped_in_drawings(browser: Browser) -> None:
    document = json.loads(json.dumps(browser.document()))
    document["slope"][0]["name"] = "<b>rear</b>"
    document["slope"][0]["opening"][0]["name"] = "</text><script>x</script>"
    browser.store.save(browser.job, document, by="test", base_rev=1)
    for page in ("set-out", "slopes/1", "findings", "working", "sheets"):
        text = browser.get(f"/jobs/{browser.job}/{page}").text
        assert "<b>rear</b>" not in text
        assert "<script>x" not in text
