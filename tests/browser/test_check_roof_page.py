"""Checking a roof in a real browser: the answer follows what is typed, and the record is taken along."""

from playwright.sync_api import Page, expect

MARKS = "347\n685, 1040\n1361"
"""By hand: a tile of 420 with a least lap of 75; 355 from batten 2 to batten 3 leaves 65, 10 short."""


def fill_in(page: Page) -> None:
    page.goto("/check-roof")
    page.get_by_label("Rod 1 is at").fill("0.3 m")
    page.get_by_label("Rafter, rod 1").fill("1.4 m")
    page.get_by_label("Covering", exact=True).select_option("flat-interlocking-420x330")
    page.get_by_label("Pitch", exact=True).fill("35")
    page.get_by_label("Driving rain").select_option("moderate")
    page.get_by_label("Marks or margins, rod 1").fill(MARKS)


def test_the_answer_follows_what_is_typed(page: Page) -> None:
    fill_in(page)
    verdict = page.locator(".sentence")
    expect(verdict).to_contain_text("1 of 3 laps is short; course 3 over 2 leaks first, short by 10 mm.")
    page.get_by_label("Marks or margins, rod 1").fill(MARKS.replace("1040", "1023"))
    expect(verdict).to_contain_text("No lap is short and nothing is outside a rule.")
    page.get_by_label("Marks or margins, rod 1").fill("347, 1 023")
    expect(page.locator("#answer")).to_contain_text("could be 1023, or 1 and 023")


def test_the_record_and_the_roof_file_are_taken_along_and_brought_back(page: Page) -> None:
    fill_in(page)
    page.get_by_role("button", name="Check this roof").click()
    expect(page.locator(".sentence")).to_be_visible()
    with page.expect_download() as record:
        page.get_by_role("button", name="The record of the check").click()
    assert "roof-check.pdf" == record.value.suggested_filename
    with page.expect_download() as kept:
        page.get_by_role("button", name="Keep it as a roof file").click()
    page.goto("/check-roof")
    page.get_by_text("Bring in a roof file").click()
    page.get_by_label("A roof file (TOML or JSON)").set_input_files(kept.value.path())
    page.get_by_role("button", name="Bring in").click()
    expect(page.locator(".sentence")).to_contain_text("course 3 over 2 leaks first")
    expect(page.get_by_label("Marks or margins, rod 1")).to_have_value("347\n685\n1040\n1361")


def test_the_margins_ask_for_the_overhang(page: Page) -> None:
    page.goto("/check-roof")
    expect(page.get_by_label("Overhang, rod 1")).to_be_hidden()
    page.get_by_label("Measured, rod 1").select_option("margins")
    expect(page.get_by_label("Overhang, rod 1")).to_be_visible()
