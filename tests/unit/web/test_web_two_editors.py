from concurrent.futures import ThreadPoolExecutor

from tests.scenario.app_browser import Browser

SITE = {"title": "Yard Cottage, rear slope", "exposure": "moderate", "show_lengths_in": "mm", "rev": "1"}


def test_two_who_change_different_things_both_keep_theirs(browser: Browser, second_browser: Browser) -> None:
    job = browser.job
    assert 303 == browser.post(f"/jobs/{job}/site", {**SITE, "title": "Mine"}).status_code
    moved = {"moved": "yes", "overhang": "60", "hold_overhang": "yes", "rev": "1"}
    assert 303 == second_browser.post(f"/jobs/{job}/set-out", moved).status_code
    document = browser.document()
    assert ("Mine", "60 mm") == (document["job"]["title"], document["set_out"]["eaves_overhang"])
    assert 3 == browser.store.load(job).rev


def test_two_who_change_the_same_thing_are_asked_and_nothing_is_lost(browser: Browser, second_browser: Browser) -> None:
    job = browser.job
    second_browser.post("/about", {"who": "Wren"})
    assert 303 == second_browser.post(f"/jobs/{job}/site", {**SITE, "title": "Theirs"}).status_code
    clash = browser.post(f"/jobs/{job}/site", {**SITE, "title": "Mine"})
    assert 409 == clash.status_code
    assert "Wren" in clash.text
    assert "Mine" in clash.text
    assert "Theirs" == browser.document()["job"]["title"]
    twin = browser.post(f"/jobs/{job}/site.json", {**SITE, "title": "Mine"}).json()
    (field,) = twin["fields"]
    chosen = {"document": twin["document"], "base_rev": str(twin["base_rev"]), "go_to": twin["go_to"]}
    again = browser.post(f"/jobs/{job}/clash", chosen)
    assert 409 == again.status_code
    done = browser.post(f"/jobs/{job}/clash", {**chosen, f"choose:{field['name']}": "mine"})
    assert 303 == done.status_code
    assert "Mine" == browser.document()["job"]["title"]


def test_a_clash_cannot_be_made_up(browser: Browser) -> None:
    for form in (
        {},
        {"document": "[", "base_rev": "1"},
        {"document": "{}", "base_rev": "-1"},
        {"document": "[]", "base_rev": "1"},
    ):
        assert 303 == browser.post(f"/jobs/{browser.job}/clash", form).status_code
    assert 404 == browser.post(f"/jobs/{browser.job}/clash", {"document": "{}", "base_rev": "99"}).status_code
    assert 1 == browser.store.load(browser.job).rev


def test_many_who_save_at_once_lose_nothing(browser: Browser) -> None:
    job, token = browser.job, browser.token()

    def save(number: int) -> int:
        form = {"token": token, "moved": "yes", "rev": "1"}
        form |= {"overhang": str(45 + number), "hold_overhang": "yes"} if number % 2 else {"bond": "straight"}
        status: int = browser.client.post(f"/jobs/{job}/set-out", data=form, follow_redirects=False).status_code
        return status

    with ThreadPoolExecutor(8) as pool:
        statuses = list(pool.map(save, range(16)))
    assert set(statuses) <= {303, 409}
    assert 303 in statuses
    assert statuses.count(303) + 1 == browser.store.load(job).rev
