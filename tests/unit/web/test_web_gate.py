import re
from collections.abc import Iterator
from io import StringIO
from pathlib import Path

import pytest

from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import InputRefused
from gaugerod.web.gate.passphrase import PassphraseUnfit, fits, keep_passphrase, kept_hash
from gaugerod.web.gate.session import SIGNED_IN_FOR_S, Session, Sessions, kept_key
from gaugerod.web.gate.throttle import FREE_TRIES_COUNT, LONGEST_WAIT_OF_ALL_S, LONGEST_WAIT_S, Throttle
from gaugerod.web.serve import PASSPHRASE_VARIABLE, Served, serve
from tests.scenario.app_browser import Browser, browsing

PASSPHRASE = "slate lath and torching"  # noqa: S105 - of these tests only


@pytest.fixture
def reached(store: JobStore, folder: Path) -> Iterator[Browser]:
    """The app where other machines may come in."""
    keep_passphrase(PASSPHRASE, folder=folder)
    with browsing(store, folder, lan=True, secure=True, address="https://192.168.0.7:8417") as opened:
        yield opened


def sign_in(browser: Browser, passphrase: str = PASSPHRASE, to: str = "/") -> int:
    page = browser.get("/sign-in").text
    found = re.search(r'name="token" value="([0-9a-f]+)"', page)
    assert found is not None
    form = {"token": found[1], "passphrase": passphrase, "to": to}
    status: int = browser.client.post("/sign-in", data=form, follow_redirects=False).status_code
    return status


def test_every_answer_carries_the_strict_headers(browser: Browser) -> None:
    for path in ("/", f"/jobs/{browser.job}/set-out", "/asset/app.css", "/nowhere", "/jobs.json", "/keep-all"):
        headers = browser.get(path).headers
        policy = headers["content-security-policy"]
        assert "unsafe" not in policy, path
        assert "default-src 'none'" in policy, path
        assert "frame-ancestors 'none'" in policy, path
        assert "nosniff" == headers["x-content-type-options"], path
        assert "same-origin" == headers["referrer-policy"], path
        if not path.startswith("/asset"):
            assert "no-store" == headers["cache-control"], path
    assert "server" not in browser.get("/").headers


def test_the_cookie_is_for_this_program_only(browser: Browser, reached: Browser) -> None:
    cookie = browser.get("/").headers["set-cookie"]
    assert {"HttpOnly", "SameSite=strict"} <= set(cookie.split("; "))
    tls = reached.get("/sign-in").headers["set-cookie"]
    assert tls.startswith("__Host-gaugerod=")
    assert {"HttpOnly", "SameSite=strict", "Secure", "Path=/"} <= set(tls.split("; "))


@pytest.mark.parametrize(
    "host", ["roof.example", "127.0.0.1.roof.example", "localhost.roof.example:8417", "192.168.0.7", ""]
)
def test_a_name_that_is_not_ours_is_refused(browser: Browser, host: str) -> None:
    assert 421 == browser.get("/", headers={"host": host}).status_code


def test_a_post_without_its_token_is_refused_and_changes_nothing(browser: Browser) -> None:
    browser.get("/")
    for token in ("", "0" * 64, "é"):
        answer = browser.client.post(f"/jobs/{browser.job}/put-away", data={"token": token}, follow_redirects=False)
        assert 403 == answer.status_code
        assert "may have to be typed once more" in answer.text
    assert 1 == len(browser.store.jobs())


def test_the_token_of_one_browser_is_no_use_in_another(browser: Browser, second_browser: Browser) -> None:
    stolen = browser.token()
    second_browser.get("/")
    answer = second_browser.client.post("/jobs", data={"token": stolen}, follow_redirects=False)
    assert 403 == answer.status_code


def test_a_post_from_a_page_of_another_site_is_refused(browser: Browser) -> None:
    for site in ("cross-site", "same-site"):
        assert 403 == browser.post("/jobs", headers={"sec-fetch-site": site}).status_code
    assert 303 == browser.post("/jobs", headers={"sec-fetch-site": "same-origin"}).status_code


def test_a_body_too_large_is_refused_in_words(browser: Browser) -> None:
    answer = browser.post(f"/jobs/{browser.job}/site", {"title": "x" * 400_000})
    assert 413 == answer.status_code
    assert "more than a job can be" in answer.text
    many = {f"field{number}": "x" for number in range(4_000)}
    assert 400 == browser.post(f"/jobs/{browser.job}/site", many).status_code


def test_a_get_changes_nothing(browser: Browser) -> None:
    for path in ("copy", "put-away", "go-back", "share", "revoke", "clash"):
        assert 405 == browser.get(f"/jobs/{browser.job}/{path}").status_code
    assert 405 == browser.get("/bring-in").status_code


def test_without_the_passphrase_nobody_sees_a_job(reached: Browser) -> None:
    answer = reached.get(f"/jobs/{reached.job}/set-out")
    assert (303, f"/sign-in?to=/jobs/{reached.job}/set-out") == (answer.status_code, answer.headers["location"])
    assert 401 == reached.get("/jobs.json").status_code
    assert 401 == reached.client.post("/jobs", follow_redirects=False).status_code
    for path in ("/keep-all", f"/jobs/{reached.job}/keep", f"/jobs/{reached.job}/sheets/rear-sheet.pdf", "/about"):
        assert 303 == reached.get(path).status_code, path


def test_the_passphrase_lets_in_and_signing_out_ends_it_wherever_the_cookie_is(reached: Browser) -> None:
    reached.get("/sign-in")
    before = reached.client.cookies["__Host-gaugerod"]
    assert 401 == sign_in(reached, "slate lath and torchinG")
    assert 303 == sign_in(reached)
    cookie = reached.client.cookies["__Host-gaugerod"]
    assert before != cookie, "a session known before is not the one that is signed in"
    assert 200 == reached.get("/").status_code
    assert 303 == reached.post("/sign-out").status_code
    reached.client.cookies.set("__Host-gaugerod", cookie)
    assert 303 == reached.get("/").status_code


def test_wrong_tries_wait_longer_and_longer(reached: Browser) -> None:
    statuses = [sign_in(reached, "wrong") for _ in range(FREE_TRIES_COUNT + 2)]
    assert [401] * (FREE_TRIES_COUNT) == statuses[:FREE_TRIES_COUNT]
    assert 429 == statuses[-1]
    assert 429 == sign_in(reached), "the right one waits too"


def test_where_to_go_after_signing_in_is_only_inside(reached: Browser) -> None:
    page = reached.get("/sign-in?to=https://elsewhere.example/").text
    assert 'name="to" value="/"' in page


def test_each_wrong_try_doubles_the_wait_of_its_address_and_all_together_wait_less() -> None:
    throttle, now_s = Throttle(), 1000.0
    for _ in range(FREE_TRIES_COUNT):
        assert 0.0 == throttle.ask("a", now_s=now_s)
    waits_s = []
    for _ in range(14):
        wait_s = throttle.ask("a", now_s=now_s)
        waits_s.append(wait_s)
        now_s += wait_s
        assert 0.0 == throttle.ask("a", now_s=now_s)
    assert [1.0, 2.0, 4.0, 8.0] == waits_s[:4]
    assert LONGEST_WAIT_S == max(waits_s)
    assert 0.0 == throttle.ask("b", now_s=now_s)
    for number in range(60):
        throttle.ask(f"other {number}", now_s=now_s)
    assert 0.0 < throttle.ask("new", now_s=now_s) <= LONGEST_WAIT_OF_ALL_S
    now_s += LONGEST_WAIT_OF_ALL_S
    assert 0.0 == throttle.ask("owner", now_s=now_s)
    throttle.right("owner")


def test_the_right_passphrase_forgives_the_tries_of_its_address() -> None:
    throttle = Throttle()
    for _ in range(FREE_TRIES_COUNT + 1):
        throttle.ask("a", now_s=0.0)
        throttle.right("a")
    assert 0.0 == throttle.ask("a", now_s=0.0)


def test_a_cookie_that_was_changed_is_nobodys() -> None:
    sessions = Sessions(key=b"k" * 32)
    session = sessions.new(signed_in_from_s=1000)
    cookie = sessions.cookie(session)
    assert session == sessions.of_cookie(cookie)
    id_, until, seal = cookie.split(".")
    for changed in (None, "", "..", f"{id_}.{int(until) + 1}.{seal}", f"x{id_}.{until}.{seal}", f"{id_}.{until}.{seal[:-1]}0",
                    f"{id_}.-1.{seal}", f"{id_}.{until}", f"{id_}.²{until}.{seal}"):  # fmt: skip
        assert sessions.of_cookie(changed) in {None, session if changed == cookie else None}
    assert Sessions(key=b"x" * 32).of_cookie(cookie) is None


def test_a_session_ends_when_its_time_is_over_or_it_is_ended() -> None:
    sessions = Sessions(key=b"k" * 32)
    session = sessions.new(signed_in_from_s=1000)
    assert sessions.signed_in(session, now_s=1000 + SIGNED_IN_FOR_S - 1)
    assert not sessions.signed_in(session, now_s=1000 + SIGNED_IN_FOR_S)
    sessions.end(session, now_s=1001)
    assert not sessions.signed_in(session, now_s=1002)
    assert not sessions.signed_in(Session("anyone"), now_s=0)


def test_only_the_hash_of_the_passphrase_is_kept_for_its_owner_only(tmp_path: Path) -> None:
    keep_passphrase(PASSPHRASE, folder=tmp_path)
    kept = kept_hash(tmp_path)
    assert kept is not None
    assert kept.startswith("$argon2id$")
    assert fits(PASSPHRASE, kept=kept)
    assert not fits(PASSPHRASE + " ", kept=kept)
    assert not fits("x" * 100_000, kept=kept)
    assert not fits(PASSPHRASE, kept="nonsense")
    first = kept_key(tmp_path, passphrase_hash=kept)
    assert first == kept_key(tmp_path, passphrase_hash=kept)
    assert first != kept_key(tmp_path, passphrase_hash="another")  # noqa: S106
    assert {0o600} == {path.stat().st_mode & 0o777 for path in tmp_path.iterdir()}
    for unfit in ("short", "", "x" * 501):
        with pytest.raises(PassphraseUnfit):
            keep_passphrase(unfit, folder=tmp_path)


def test_other_machines_are_never_let_in_without_a_passphrase(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    served = Served(port=0, data=str(tmp_path), lan=True, cert=None, key=None)
    monkeypatch.delenv(PASSPHRASE_VARIABLE, raising=False)
    monkeypatch.setattr("sys.stdin", StringIO())
    with pytest.raises(InputRefused, match="passphrase"):
        serve(served, say=lambda _: None)
    monkeypatch.setenv(PASSPHRASE_VARIABLE, "short")
    with pytest.raises(InputRefused, match="letters"):
        serve(served, say=lambda _: None)


def test_a_shared_job_can_be_read_and_its_link_taken_back(reached: Browser) -> None:
    sign_in(reached)
    link = reached.post(f"/jobs/{reached.job}/share").text
    found = re.search(r'href="http[^"]+(/shared/[^"]+)"', link)
    assert found is not None
    place = found[1]
    assert len(place) > 40
    reached.client.cookies.clear()
    page = reached.get(place)
    assert 200 == page.status_code
    assert "Yard Cottage" in page.text
    assert f"/jobs/{reached.job}" not in page.text
    assert "<form" not in re.sub(r'<form method="post" action="/light".*?</form>', "", page.text, flags=re.DOTALL)
    assert reached.get(f"{place}.json").json()["slopes"]
    assert reached.get(f"{place}/files/rear-sheet.pdf").content.startswith(b"%PDF")
    assert 303 == reached.get("/").status_code, "the link shows its job, and nothing else"
    sign_in(reached)
    assert "1 link taken back" in reached.post(f"/jobs/{reached.job}/revoke").text
    assert 404 == reached.get(place).status_code
    assert 404 == reached.get("/shared/guessed").status_code


def test_a_link_made_by_the_number_others_use_is_not_called_for_this_machine_only(reached: Browser) -> None:
    assert 303 == sign_in(reached)
    page = reached.post(f"/jobs/{reached.job}/share").text
    assert "https://192.168.0.7:8417/shared/" in page
    assert "on this machine only" not in page
