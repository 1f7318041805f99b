"""Whatever is typed, sent or asked for: an answer in words, never a fault of the program."""

import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugerod.wiring import open_store, store_path
from tests.scenario.app_browser import Browser, browsing
from tests.scenario.odd_words import TEXT

FORMS = ("site", "slopes/new", "slopes/1", "covering", "covering/own", "set-out", "plan/new")
ALSO = ("clash", "go-back", "share", "copy")
PAGES = (
    "site",
    "slopes",
    "slopes/1",
    "covering",
    "covering/own",
    "set-out",
    "findings",
    "working",
    "sheets",
    "history",
    "compare",
    "plan/new",
)
FIELDS = """
    title exposure show_lengths_in rev name pitch_by pitch pitch.rise pitch.rafter pitch.run across
    rafters[0].length rafters[0].at rafters[1].length rafters[1].at ridge diagonals.from_left diagonals.from_right
    left right top rafter_spacing opening[0].name opening[0].from_left opening[0].up_slope opening[0].width
    opening[0].height do from shown_for headlap_min headlap_max half_unit heap[0].length heap[0].slates heap[0].run
    heap[1].average_width nailing broken lap gauge_at_lap closest_gauge ten_closed ten_open length width
    hanging_length mass pitch_min high_points face form material bond ten_measured moved overhang hold_overhang
    hold_ridge hold_lap to document base_rev go_to slope units before after paper corners side[0].length
    side[0].turn side[1].length side[1].turn wall[0].pitch wall[1].pitch overhang
""".split()  # noqa: SIM905 - seventy names as a page of words
FORM = st.dictionaries(st.sampled_from(FIELDS), TEXT, max_size=14)
FEW, MANY = 60, 1500


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with (
        tempfile.TemporaryDirectory() as folder,
        open_store(store_path(folder)) as store,
        browsing(store, Path(folder)) as opened,
    ):
        yield opened


def no_fault_on_post(browser: Browser, page: str, form: dict[str, str], headers: dict[str, str]) -> None:
    answer = browser.post(f"/jobs/{browser.job}/{page}", form, headers=headers)
    assert answer.status_code < 500, answer.text
    for each in PAGES:
        assert browser.get(f"/jobs/{browser.job}/{each}").status_code < 500, each


def no_fault_on_get(browser: Browser, page: str, query: dict[str, str], twin: str) -> None:
    answer = browser.get(f"/jobs/{browser.job}/{page}{twin}", params=query)
    assert answer.status_code < 500, answer.text
    if twin and answer.status_code == 200:
        answer.json()


KINDS = st.sampled_from([{}, {"accept": "application/json"}, {"hx-request": "true", "hx-request-type": "partial"}])
POSTS: dict[str, Any] = {"page": st.sampled_from(FORMS + ALSO), "form": FORM, "headers": KINDS}
GETS: dict[str, Any] = {"page": st.sampled_from(PAGES), "query": FORM, "twin": st.sampled_from(["", ".json"])}
CALM: dict[str, Any] = {
    "deadline": None,
    "suppress_health_check": [HealthCheck.too_slow, HealthCheck.function_scoped_fixture],
}


@settings(max_examples=FEW, **CALM)
@given(**POSTS)
def test_no_form_ends_in_a_fault(browser: Browser, page: str, form: dict[str, str], headers: dict[str, str]) -> None:
    no_fault_on_post(browser, page, form, headers)


@settings(max_examples=FEW, **CALM)
@given(**GETS)
def test_no_page_ends_in_a_fault(browser: Browser, page: str, query: dict[str, str], twin: str) -> None:
    no_fault_on_get(browser, page, query, twin)


@pytest.mark.slow
@settings(max_examples=MANY, **CALM)
@given(**POSTS)
def test_no_form_ends_in_a_fault_many(
    browser: Browser, page: str, form: dict[str, str], headers: dict[str, str]
) -> None:
    no_fault_on_post(browser, page, form, headers)


@pytest.mark.slow
@settings(max_examples=MANY, **CALM)
@given(**GETS)
def test_no_page_ends_in_a_fault_many(browser: Browser, page: str, query: dict[str, str], twin: str) -> None:
    no_fault_on_get(browser, page, query, twin)


KEYS = st.sampled_from(
    ["name", "pitch", "across", "rafters", "outline", "edges", "from", "opening", "at", "length", "title"]
)
JSON = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(-5, 10**6), st.floats(allow_nan=False, allow_infinity=False), TEXT),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEYS, inner, max_size=4)),
    max_leaves=12,
)
DOCUMENT = st.dictionaries(
    st.sampled_from(["job", "covering", "slope", "building", "set_out", "roof"]), JSON, max_size=5
)


@settings(max_examples=FEW, **CALM)
@given(document=DOCUMENT)
def test_no_kept_document_ends_in_a_fault(browser: Browser, document: dict[str, Any]) -> None:
    """A draft may hold anything that JSON can: every page still answers."""
    job = browser.store.create(document, by="fuzz", draft=True).job
    for page in PAGES:
        assert browser.get(f"/jobs/{job}/{page}").status_code < 500, page
    assert browser.get("/").status_code < 500
    browser.store.archive(job)
