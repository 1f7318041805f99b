"""A stack of reclaimed slates on two slopes, from the first heap to the sheets of each slope."""

import re

from playwright.sync_api import Page, expect

STACK = (("24in", "420", "12in"), ("20in", "620", "10in"), ("16in", "1150", "8 1/2in"), ("14in", "900", "8in"))


def begun(page: Page) -> str:
    page.goto("/")
    page.get_by_role("button", name="New job").click()
    page.get_by_label("Title of the job").fill("Old Forge")
    page.get_by_label("Driving rain at the site").select_option("moderate")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Slopes")
    return page.url.removesuffix("/slopes")


def type_slope(page: Page, name: str) -> None:
    page.get_by_label("Name of the slope").fill(name)
    page.get_by_label("Pitch", exact=True).fill("38")
    page.get_by_label("Along the eaves").fill("8.42 m")
    page.get_by_label("Rafter 1").fill("4.61 m")
    page.get_by_label("Rafter 2").fill("4.63 m")
    for side in ("At the left", "At the right"):
        page.get_by_label(side).select_option("verge")
    page.get_by_label("At the top").select_option("ridge")


def count_stack(page: Page) -> None:
    page.locator("summary", has_text="Random or reclaimed slates").click()
    page.get_by_role("radio", name=re.compile("Random slates")).check()
    for number, (length, how_many, width) in enumerate(STACK, 1):
        if page.get_by_label(f"Length, heap {number}", exact=True).count() == 0:
            page.get_by_role("button", name="More heaps").press("Enter")
            expect(page.get_by_role("button", name="More heaps")).to_be_focused()
        page.get_by_label(f"Length, heap {number}", exact=True).fill(length)
        page.get_by_label(f"How many, heap {number}").fill(how_many)
        page.get_by_label(f"Average width, heap {number}").fill(width)


def test_two_slopes_are_covered_from_one_stack_without_leaving_the_pages(page: Page) -> None:
    job = begun(page)
    page.goto(f"{job}/slopes/new")
    type_slope(page, "Front")
    page.get_by_role("button", name="Save, then the next slope").click()
    expect(page.get_by_label("Name of the slope")).to_have_value("")
    type_slope(page, "Back")
    page.get_by_role("button", name="Save the slope").last.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Covering")
    count_stack(page)
    page.get_by_role("button", name="Lay this").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Set out")
    page.get_by_label("Lap to keep").fill("90")
    page.get_by_label("Ridge or flashing reaches down").fill("180")
    page.get_by_role("button", name="Keep these").click()
    expect(page.locator(".verdicts")).to_contain_text("nothing outside a rule")
    expect(page.get_by_label("Lap to keep", exact=True)).to_have_count(0)
    page.get_by_role("link", name="Sheets", exact=True).click()
    expect(page.get_by_role("link", name="Setting-out sheet Front, PDF")).to_have_count(1)
    expect(page.get_by_role("link", name="Setting-out sheet Back, PDF")).to_have_count(1)


def test_a_third_rafter_and_an_opening_come_into_sight_where_they_are_typed(phone: Page) -> None:
    job = begun(phone)
    phone.goto(f"{job}/slopes/new")
    type_slope(phone, "Front")
    phone.get_by_role("button", name="Another rafter").click()
    expect(phone.get_by_label("Rafter 3")).to_be_in_viewport()
    expect(phone.get_by_label("Rafter 1")).to_have_value("4.61 m")
    phone.get_by_role("button", name="Add an opening").click()
    expect(phone.get_by_label("What it is")).to_be_in_viewport()
    expect(phone.get_by_label("Along the eaves")).to_have_value("8.42 m")
