"""From the app up on the roof: opened here, kept as a file, or by a link."""

from pathlib import Path

from playwright.sync_api import Page, expect

from tests.scenario.served_app import ServedApp


def test_opened_from_the_sheets_it_ticks_off_under_its_own_policy(page: Page, app: ServedApp) -> None:
    page.goto(f"/jobs/{app.demo}/sheets")
    page.get_by_role("link", name="On the roof: one mark at a time").click()
    page.get_by_role("link", name="Open it here").click()
    expect(page.locator("#name")).to_have_text("Batten 1 of 15")
    page.get_by_role("button", name="Tick off").click()
    page.reload()
    expect(page.locator("#name")).to_have_text("Batten 2 of 15")


def test_the_file_kept_opens_with_the_phone_cut_off(phone: Page, app: ServedApp, tmp_path: Path) -> None:
    phone.goto(f"/jobs/{app.demo}/on-roof")
    with phone.expect_download() as kept:
        phone.get_by_role("link", name="Keep the file").click()
    assert "on-the-roof.html" == kept.value.suggested_filename
    file = tmp_path / kept.value.suggested_filename
    kept.value.save_as(file)
    phone.context.set_offline(True)
    phone.goto(file.as_uri())
    phone.get_by_role("button", name="Next").click()
    expect(phone.locator("#name")).to_have_text("Batten 2 of 15")


def test_a_link_shows_it_to_someone_else(phone: Page, app: ServedApp) -> None:
    phone.goto(f"/shared/{app.store.share(app.demo)}")
    phone.get_by_role("link", name="On the roof: one mark at a time").click()
    expect(phone.locator("#name")).to_have_text("Batten 1 of 15")
