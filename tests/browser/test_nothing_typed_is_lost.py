"""What is typed and not saved is not left, nor an answer missing, without a word; the light changes on the page as it stands."""

from playwright.sync_api import Browser, Dialog, Page, expect

from tests.scenario.served_app import ServedApp


def questions_of(page: Page) -> list[str]:
    """What the browser asks, each answered with yes."""
    asked: list[str] = []

    def answer(dialog: Dialog) -> None:
        asked.append(dialog.type)
        dialog.accept()

    page.on("dialog", answer)
    return asked


def test_leaving_with_something_unsaved_asks_first_and_saving_does_not(page: Page, app: ServedApp) -> None:
    asked = questions_of(page)
    page.goto(f"/jobs/{app.demo}/record")
    page.get_by_role("link", name="Findings").first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Findings")
    assert [] == asked
    page.goto(f"/jobs/{app.demo}/record")
    page.get_by_label("Site", exact=True).click()
    page.keyboard.type("the yard")
    page.get_by_role("link", name="Findings").first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Findings")
    assert ["beforeunload"] == asked


def test_saving_is_not_asked_about(page: Page, app: ServedApp) -> None:
    copy = app.store.duplicate(app.demo, by="test").job
    asked = questions_of(page)
    page.goto(f"/jobs/{copy}/record")
    page.get_by_label("Site", exact=True).click()
    page.keyboard.type("the yard")
    with page.expect_navigation():
        page.get_by_role("button", name="Save", exact=True).last.click()
    expect(page.get_by_label("Site", exact=True)).to_have_value("the yard")
    assert [] == asked
    app.store.archive(copy)


def test_daylight_and_night_keep_what_is_typed(page: Page, app: ServedApp) -> None:
    page.goto(f"/jobs/{app.demo}/record")
    page.get_by_label("Site", exact=True).fill("the yard")
    button = page.locator(".lights button")
    first = button.inner_text()
    for _ in range(2):
        with page.expect_response("**/light"):
            button.click()
    assert first == button.inner_text()
    assert page.evaluate("document.documentElement.dataset.light") in {"day", "night"}
    expect(page.get_by_label("Site", exact=True)).to_have_value("the yard")
    page.on("dialog", lambda dialog: dialog.accept())
    light = page.evaluate("document.documentElement.dataset.light")
    page.reload()
    assert light == page.evaluate("document.documentElement.dataset.light"), "kept for the next page"


def test_where_no_answer_came_it_is_said_until_one_does(chromium: Browser, app: ServedApp) -> None:
    """In a page of its own: the browser writes what failed into its console, and every other page here has a clean one."""
    page = chromium.new_page(base_url=app.address)
    page.goto(f"/jobs/{app.demo}/edges")
    path = f"**/jobs/{app.demo}/edges"
    page.route(path, lambda route: route.abort())
    length = page.get_by_label("Length of one").first
    length.fill("440 mm")
    told = page.locator("#answer .unanswered")
    expect(told).to_be_visible()
    page.unroute(path)
    length.fill("430 mm")
    expect(told).to_have_count(0)
    expect(length).to_have_value("430 mm")
    page.close()


def test_of_coverings_chosen_fast_the_last_is_answered(page: Page, app: ServedApp) -> None:
    page.goto(f"/jobs/{app.demo}/covering")
    page.locator(".picks").evaluate(
        """(picks) => [...picks.querySelectorAll("input[type=radio]")].slice(1, 4).forEach((each) => {
          each.checked = true;
          each.dispatchEvent(new Event("change", { bubbles: true }));
        })"""
    )
    chosen = page.locator(".picks label", has=page.locator("input[type=radio]:checked")).locator("b")
    expect(page.locator("#answer")).to_contain_text(chosen.text_content() or "nothing is chosen")
