"""Jobs as they are kept: copied, put away, taken along, shared, gone back to, and changed by two at once."""

import re
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.scenario.browser_pages import DESK, PHONE, Opener
from tests.scenario.served_app import ServedApp

TITLE = "Yard Cottage, rear slope"


def copy_of_the_demo(page: Page, app: ServedApp, title: str) -> str:
    """A copy under another title; gives its path."""
    job = app.store.duplicate(app.demo, by="the test").job
    page.goto(f"/jobs/{job}/site")
    page.get_by_label("Title of the job").fill(title)
    page.get_by_role("button", name="Save").click()
    expect(page.locator(".jobname")).to_have_text(title)
    return f"/jobs/{job}"


def test_a_job_is_copied_put_away_and_taken_out_again(page: Page) -> None:
    page.goto("/")
    page.get_by_role("button", name=f"Copy {TITLE}").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Site")
    page.get_by_label("Title of the job").fill("Coach House")
    page.get_by_role("button", name="Save").click()
    page.goto("/")
    page.get_by_role("button", name="Put away Coach House").first.click()
    expect(page.get_by_role("link", name="Coach House")).to_have_count(0)
    page.get_by_role("link", name=re.compile("^Put away: ")).click()
    page.get_by_role("button", name="Take out Coach House").first.click()
    page.goto("/")
    expect(page.get_by_role("link", name=re.compile("^Coach House")).first).to_be_visible()
    page.get_by_role("button", name="Put away Coach House").first.click()


def test_what_was_taken_along_is_brought_in_elsewhere(page: Page, app: ServedApp, tmp_path: Path) -> None:
    copy_of_the_demo(page, app, "Taken Along")
    page.goto("/")
    with page.expect_download() as coming:
        page.get_by_role("link", name="Save Taken Along as a file").first.click()
    file = tmp_path / "job.json"
    coming.value.save_as(file)
    jobs_before_count = len(app.store.jobs())
    page.get_by_text("Bring jobs in, or save them all").click()
    page.get_by_label(re.compile("A job file")).set_input_files(file)
    page.get_by_role("button", name="Bring in").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Jobs")
    assert jobs_before_count + 1 == len(app.store.jobs())
    with page.expect_download() as everything:
        page.get_by_text("Bring jobs in, or save them all").click()
        page.get_by_role("link", name="Save all jobs to one file").click()
    assert "Taken Along" in Path(everything.value.path()).read_text("utf-8")


def test_a_file_that_is_no_job_is_refused_in_words(page: Page, tmp_path: Path) -> None:
    file = tmp_path / "notes.toml"
    file.write_text("this is no job", encoding="utf-8")
    page.goto("/")
    page.get_by_text("Bring jobs in, or save them all").click()
    page.get_by_label(re.compile("A job file")).set_input_files(file)
    page.get_by_role("button", name="Bring in").click()
    expect(page.locator("#faults")).to_be_visible()
    expect(page.locator("#faults")).to_be_focused()


def test_undo_goes_back_and_two_saves_are_compared_by_what_moved(page: Page, app: ServedApp) -> None:
    job = copy_of_the_demo(page, app, "Compared Row")
    page.goto(f"{job}/set-out")
    page.get_by_label("Eaves overhang").fill("55")
    page.get_by_role("button", name="Keep these").click()
    expect(page.locator(".figures > div", has_text="Eaves overhang").locator("dd").first).to_have_text("55 mm")
    page.get_by_role("link", name="History").click()
    page.get_by_role("link", name=re.compile("^What moved in save")).first.click()
    expect(page.get_by_role("row", name="set out, eaves overhang")).to_contain_text("55 mm")
    expect(page.get_by_role("table", name=re.compile("rod 1"))).to_contain_text(re.compile(r"[+-]\d+ mm"))
    page.get_by_role("link", name="Every save").click()
    page.get_by_role("button", name="Undo the last save").click()
    expect(page.locator(".saves > li").first).to_contain_text("Save 4")
    page.get_by_role("link", name="Compare save 2 with now").click()
    expect(page.get_by_text("Nothing was typed differently.")).to_be_visible()


def test_a_link_shows_a_job_to_read_until_it_is_taken_back(page: Page, opened: Opener, app: ServedApp) -> None:
    job = copy_of_the_demo(page, app, "Shown Lane")
    page.goto(f"{job}/sheets")
    page.get_by_role("button", name="Make a link").click()
    link = page.locator(".link a").inner_text()
    assert link.startswith(f"{app.address}/shared/")
    other = opened(PHONE)
    other.goto(link)
    expect(other.get_by_role("heading", level=1)).to_have_text("Shown Lane")
    expect(other.get_by_role("navigation", name="Steps of the job")).to_have_count(0)
    assert ["/light"] == [form.get_attribute("action") for form in other.locator("form").all()]
    with other.expect_download() as coming:
        other.get_by_role("link", name=re.compile("Setting-out sheet")).click()
    assert Path(coming.value.path()).read_bytes().startswith(b"%PDF")
    page.get_by_role("button", name="Take all links back").click()
    expect(page.get_by_text("1 link taken back.")).to_be_visible()
    other.reload()
    expect(other.get_by_role("heading", level=1)).to_have_text("There is nothing here.")


def test_two_at_once_lose_nothing_and_choose_where_both_changed_the_same(
    page: Page, opened: Opener, app: ServedApp
) -> None:
    job = copy_of_the_demo(page, app, "Two Hands")
    other = opened(DESK)
    other.goto(f"{job}/slopes/1")
    page.goto(f"{job}/slopes/1")
    other.get_by_label("Along the eaves").fill("7.5 m")
    other.get_by_label("Rafter 1").fill("4.91 m")
    other.get_by_role("button", name="Save the slope").last.click()
    expect(other.get_by_role("heading", level=1)).to_have_text("Set out")
    page.get_by_label("Along the eaves").fill("7.4 m")
    page.get_by_label("Rafter to rafter").fill("450")
    page.get_by_role("button", name="Save the slope").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Someone saved while you typed")
    choice = page.locator("fieldset", has_text="across")
    expect(choice).to_contain_text("7.5 m")
    choice.get_by_role("radio", name="Yours").check()
    page.get_by_role("button", name="Save with these").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    page.goto(f"{job}/slopes/1")
    expect(page.get_by_label("Along the eaves")).to_have_value("7.4 m")
    expect(page.get_by_label("Rafter 1")).to_have_value("4.91 m")
    expect(page.get_by_label("Rafter to rafter")).to_have_value("450")


def test_the_name_given_here_stands_on_every_save(page: Page, app: ServedApp) -> None:
    page.goto("/about")
    page.get_by_label("Your name on saves").fill("Zoë")
    page.get_by_role("button", name="Keep these").click()
    job = copy_of_the_demo(page, app, "Signed Off")
    page.goto(f"{job}/history")
    expect(page.locator(".saves > li").first).to_contain_text("by Zoë")
