"""The served app on the wire itself: whoever is too slow or says too much is turned away, and nobody else is kept waiting."""

import socket
import time
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from gaugerod.web.gate import prompt, wire
from tests.scenario.served_app import ServedApp, served_app


@pytest.fixture
def app(tmp_path: Path) -> Iterator[ServedApp]:
    with served_app(tmp_path) as served:
        yield served


def calling(app: ServedApp) -> socket.socket:
    return socket.create_connection(("127.0.0.1", app.port), timeout=5.0)


def said(caller: socket.socket) -> bytes:
    """Everything until the app hangs up."""
    heard = b""
    while more := caller.recv(65_536):
        heard += more
    return heard


def hung_up(caller: socket.socket, *, after: bytes) -> bool:
    """Has the app hung up, seen when more is said?"""
    try:
        caller.sendall(after)
    except ConnectionError:
        return True
    return False


def test_a_head_that_does_not_end_is_hung_up_on(app: ServedApp, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(prompt, "HEAD_WITHIN_S", 0.5)
    with calling(app) as silent, calling(app) as dripping:
        began_s = time.monotonic()
        dripping.sendall(b"GET / HTTP/1.1\r\nhost: localhost\r\n")
        while not hung_up(dripping, after=b"x-more: 1\r\n") and time.monotonic() - began_s < 9.0:
            time.sleep(0.1)
        assert b"" == said(silent)
        assert time.monotonic() - began_s < 9.0


def test_a_second_request_on_the_same_line_has_its_own_time(app: ServedApp, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(prompt, "HEAD_WITHIN_S", 2.0)
    with httpx.Client(base_url=app.address) as client:
        for _ in range(4):
            time.sleep(0.8)
            assert 200 == client.get("/asset/icon.svg").status_code


def test_a_body_that_does_not_come_is_not_waited_for(app: ServedApp, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(wire, "BODY_WITHIN_S", 0.3)
    with calling(app) as caller:
        caller.sendall(
            b"POST /light HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-length: 100\r\n"
            b"content-type: application/x-www-form-urlencoded\r\n\r\ntoken="
        )
        heard = said(caller)
    assert heard.startswith(b"HTTP/1.1 408")
    assert b"content-security-policy" in heard


def test_a_body_said_to_be_small_that_is_large_is_cut_off(app: ServedApp) -> None:
    with calling(app) as caller:
        caller.sendall(
            b"POST /light HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ntransfer-encoding: chunked\r\n"
            b"content-type: application/x-www-form-urlencoded\r\n\r\n"
        )
        chunk = b"x" * 50_000
        heard = b""
        try:
            for _ in range(20):
                caller.sendall(b"%x\r\n%s\r\n" % (len(chunk), chunk))
            heard = said(caller)
        except ConnectionError:
            pass
    assert not heard or heard.startswith(b"HTTP/1.1 413")
    assert 200 == httpx.get(f"{app.address}/").status_code


def test_a_head_too_large_or_no_head_at_all_is_refused(app: ServedApp) -> None:
    for nonsense in (
        b"GET / HTTP/1.1\r\nhost: localhost\r\nx-long: " + b"x" * 40_000,
        b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03\r\n\r\n",
        b"GET / HTTP/1.1\r\n\r\n",
        b"GET / HTTP/1.1\r\nhost: localhost\r\nhost: roof.example\r\n\r\n",
        b"GET / HTTP/1.1\r\nhost: localhost\r\ncontent-length: 5\r\ncontent-length: 6\r\n\r\n",
    ):
        with calling(app) as caller:
            caller.sendall(nonsense)
            assert said(caller).startswith(b"HTTP/1.1 400"), nonsense[:40]


@pytest.mark.parametrize(
    "path",
    [
        "/asset/../serve.py",
        "/asset/%2e%2e/serve.py",
        "/asset/..%2fserve.py",
        "/asset/app.css/../../serve.py",
        "/jobs/../../etc/passwd",
        "/jobs/..%2f..%2fetc%2fpasswd/keep",
        "/shared/..%2f..%2fsession.key",
        "/shared/x/files/..%2f..%2fsession.key",
        "//etc/passwd",
        "/asset/app.css%00.html",
    ],
)
def test_no_name_leads_out_of_the_app(app: ServedApp, path: str) -> None:
    with calling(app) as caller:
        caller.sendall(f"GET {path} HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n".encode())
        heard = said(caller)
    assert heard.startswith(b"HTTP/1.1 404")
    assert b"root:" not in heard


@pytest.mark.parametrize("file", ["..%2f..%2fjobs.sqlite", "%2e%2e%2fsession.key", "rear-sheet.pdf%00", "C:%5Cjobs"])
def test_no_name_of_a_sheet_leads_to_another_file(app: ServedApp, file: str) -> None:
    assert 404 == httpx.get(f"{app.address}/jobs/{app.demo}/sheets/{file}").status_code


def test_many_that_hold_the_line_leave_room_for_the_rest(app: ServedApp, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(prompt, "HEAD_WITHIN_S", 5.0)
    holding = [calling(app) for _ in range(220)]
    try:
        for caller in holding:
            caller.sendall(b"GET / HTTP/1.1\r\n")
        assert 503 == httpx.get(f"{app.address}/").status_code, "full for the moment"
        until = time.monotonic() + 30.0
        while (answered := httpx.get(f"{app.address}/").status_code) != 200 and time.monotonic() < until:
            time.sleep(0.2)
        assert 200 == answered, "those that held the line are gone"
    finally:
        for caller in holding:
            caller.close()
