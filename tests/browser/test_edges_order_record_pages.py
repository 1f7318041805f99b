"""The pages of edges, order, quotation and record under a hand: they answer while a person types, and keep what was typed."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.scenario.browser_pages import PHONE, Opener
from tests.scenario.served_app import ServedApp


@pytest.fixture
def job(app: ServedApp) -> str:
    """A job of its own, for what is saved here."""
    return app.store.duplicate(app.demo, by="a hand").job


def test_the_units_of_the_ridge_follow_what_is_typed(page: Page, app: ServedApp, job: str) -> None:
    page.goto(f"/jobs/{job}/edges")
    page.get_by_label("It gains along the line").fill("300 mm")
    expect(page.locator("#answer").get_by_text("25", exact=True).first).to_be_visible()
    assert 1 == len(app.store.revisions(job))
    page.get_by_role("button", name="Save").last.click()
    expect(page.get_by_label("It gains along the line")).to_have_value("300 mm")
    assert "300 mm" == app.store.load(job).document["edges"]["ridge"]["unit"]["cover"]


def test_from_the_order_to_a_priced_quotation_and_its_files(
    page: Page, app: ServedApp, job: str, tmp_path: Path
) -> None:
    page.goto(f"/jobs/{job}/order")
    page.get_by_role("link", name="Price it").click()
    with page.expect_download() as blank:
        page.get_by_role("link", name="List to fill in, CSV").click()
    lines = Path(blank.value.path()).read_text(encoding="utf-8").splitlines()
    filled = tmp_path / "prices.csv"
    filled.write_text(
        "\n".join([lines[0], *(line.replace(",,1,", ",2.50,1,", 1) for line in lines[1:])]), encoding="utf-8"
    )
    page.get_by_label("The list with your prices, CSV").set_input_files(filled)
    page.get_by_role("button", name="Price it").click()
    expect(page.get_by_role("heading", name="Labour")).to_be_visible()
    with page.expect_download() as sent:
        page.get_by_role("button", name="PDF: Quotation").click()
    assert b"%PDF" == Path(sent.value.path()).read_bytes()[:4]
    assert 1 == len(app.store.revisions(job))


def test_what_is_outside_is_accepted_with_a_thumb(opened: Opener, app: ServedApp, job: str) -> None:
    document = app.store.load(job).document
    document["slope"][0]["pitch"] = 19
    app.store.save(job, document, by="a hand", base_rev=1)
    page = opened(PHONE)
    page.goto(f"/jobs/{job}/record")
    first = page.locator("#outside-0")
    first.get_by_text("Accept it").click()
    first.get_by_label("Accepted by").fill("the owner")
    first.get_by_role("button", name="Write it down").click()
    expect(page.locator("main").get_by_text("Accepted by the owner.")).to_be_visible()
    assert "the owner" == app.store.load(job).document["record"]["deviation"][0]["accepted_by"]


def test_every_step_is_reached_from_the_line_of_steps(page: Page, job: str) -> None:
    page.goto(f"/jobs/{job}/site")
    for name in ("Edges", "Order", "Record"):
        page.get_by_role("navigation", name="Steps of the job").get_by_role("link", name=name).click()
        expect(page.get_by_role("heading", name=name, level=1)).to_be_visible()
