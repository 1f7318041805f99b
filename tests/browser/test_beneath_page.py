"""The page of battens, underlay, air, fixings and masses: it answers while a person types, and keeps what was typed."""

import pytest
from playwright.sync_api import Page, expect

from tests.scenario.browser_pages import DESK, PHONE, Opener
from tests.scenario.served_app import ServedApp


@pytest.fixture
def job(app: ServedApp) -> str:
    """A job of its own, for what is saved here."""
    return app.store.duplicate(app.demo, by="a hand").job


def test_the_answer_follows_what_is_typed_and_nothing_is_saved(page: Page, app: ServedApp, job: str) -> None:
    page.goto(f"/jobs/{job}/beneath")
    answer = page.locator("#answer")
    expect(answer.get_by_role("heading", name="Batten joints")).to_be_visible()
    page.get_by_label("New covering, kg/m²").fill("61")
    expect(answer.locator(".rows").get_by_text("61.0").first).to_be_visible()
    assert 1 == len(app.store.revisions(job))


def test_a_part_switched_off_leaves_the_answer_and_comes_back_with_what_was_typed(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/beneath")
    answer, nails = page.locator("#answer"), page.get_by_label("The least by rule for every unit")
    page.get_by_label("Thickness under the nail").fill("22 mm")
    nails.uncheck()
    expect(answer.get_by_role("heading", name="Nails and clips")).to_have_count(0)
    expect(page.get_by_label("Thickness under the nail")).to_be_hidden()
    nails.check()
    expect(answer.get_by_role("heading", name="Nails and clips")).to_be_visible()
    expect(page.get_by_label("Thickness under the nail")).to_have_value("22 mm")


def test_a_fault_is_said_while_the_other_parts_are_answered(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/beneath")
    page.get_by_label("Nail holes of one unit").fill("two")
    answer = page.locator("#answer")
    expect(answer.get_by_role("heading", name="Still to say")).to_be_visible()
    expect(answer.get_by_role("heading", name="Underlay", exact=True)).to_be_visible()
    answer.get_by_role("link", name="Nail holes of one unit").click()
    page.get_by_role("button", name="Save").last.click()
    expect(page.get_by_role("alert")).to_contain_text("Nothing was saved yet")
    expect(page.get_by_label("Nail holes of one unit")).to_have_value("two")


def test_without_a_script_it_is_looked_at_and_saved_all_the_same(opened: Opener, app: ServedApp, job: str) -> None:
    page = opened(DESK, java_script_enabled=False)
    page.goto(f"/jobs/{job}/beneath")
    page.get_by_label("New covering, kg/m²").fill("61")
    page.get_by_role("button", name="Look").click()
    expect(page.locator("#answer .rows").get_by_text("61.0").first).to_be_visible()
    assert 1 == len(app.store.revisions(job))
    page.get_by_role("button", name="Save").last.click()
    expect(page.get_by_label("New covering, kg/m²")).to_have_value("61")
    assert 61 == app.store.load(job).document["load"]["covering"]


def test_on_a_phone_the_answer_is_one_press_away_from_any_field(opened: Opener, job: str) -> None:
    page = opened(PHONE)
    page.goto(f"/jobs/{job}/beneath")
    page.get_by_role("link", name="To the answer").click()
    expect(page.locator("#answer .verdicts")).to_be_in_viewport()
