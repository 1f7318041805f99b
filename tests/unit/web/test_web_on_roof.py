"""The page for the roof, in the app and by a link: its own policy, and only there."""

from gaugerod.adapters.on_roof.write import on_roof_policy
from tests.scenario.app_browser import Browser


def test_the_page_before_the_roof_opens_it_or_keeps_it(browser: Browser) -> None:
    page = browser.get(f"/jobs/{browser.job}/on-roof")
    assert 200 == page.status_code
    assert f'href="/jobs/{browser.job}/on-roof/open"' in page.text
    assert f'href="/jobs/{browser.job}/sheets/on-the-roof.html" download' in page.text
    assert 'aria-current="page">Sheets' in page.text
    twin = browser.get(f"/jobs/{browser.job}/on-roof.json").json()
    assert (f"/jobs/{browser.job}/on-roof/open", 0) == (twin["open_href"], twin["outside_count"])


def test_opened_here_it_brings_its_own_policy_and_no_page_may_frame_it(browser: Browser) -> None:
    opened = browser.get(f"/jobs/{browser.job}/on-roof/open")
    assert f"{on_roof_policy()}; frame-ancestors 'none'" == opened.headers["content-security-policy"]
    assert "connect-src" not in on_roof_policy()
    assert "unsafe" not in opened.headers["content-security-policy"]
    assert "DENY" == opened.headers["x-frame-options"]
    assert opened.headers["content-disposition"].startswith("inline")
    assert "Yard Cottage" in opened.text


def test_kept_as_a_file_it_is_the_same_page_and_the_policy_of_the_app_stays(browser: Browser) -> None:
    kept = browser.get(f"/jobs/{browser.job}/sheets/on-the-roof.html")
    assert kept.headers["content-disposition"].startswith("attachment")
    assert "script-src 'self'" in kept.headers["content-security-policy"]
    assert f'content="{on_roof_policy()}"' in kept.text


def test_a_job_not_set_out_says_what_it_lacks_and_has_no_marks(browser: Browser) -> None:
    new = browser.post("/jobs", {"title": "Bare"}).headers["location"].split("/")[2]
    page = browser.get(f"/jobs/{new}/on-roof")
    assert "Still to do" in page.text
    assert "on-roof/open" not in page.text
    assert 404 == browser.get(f"/jobs/{new}/on-roof/open").status_code
    assert 404 == browser.get(f"/jobs/{new}/sheets/on-the-roof.html").status_code


def test_whoever_has_the_link_may_open_it_until_the_link_is_taken_back(
    browser: Browser, second_browser: Browser
) -> None:
    token = browser.store.share(browser.job)
    assert f'href="/shared/{token}/on-roof"' in second_browser.get(f"/shared/{token}").text
    opened = second_browser.get(f"/shared/{token}/on-roof")
    assert f"{on_roof_policy()}; frame-ancestors 'none'" == opened.headers["content-security-policy"]
    assert 405 == second_browser.client.post(f"/shared/{token}/on-roof").status_code
    browser.store.revoke(browser.job)
    assert 404 == second_browser.get(f"/shared/{token}/on-roof").status_code
