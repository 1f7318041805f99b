from playwright.sync_api import Page, expect

from tests.scenario.served_app import ServedApp


def test_the_list_of_jobs_opens_with_the_demo_job_in_it(page: Page, app: ServedApp) -> None:
    page.goto("/")
    page.locator(f"main a[href='/jobs/{app.demo}/set-out']").first.click()
    expect(page).to_have_url(f"{app.address}/jobs/{app.demo}/set-out")
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
