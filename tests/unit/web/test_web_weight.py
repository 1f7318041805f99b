"""What the page of setting out costs a phone at the edge of the network: its own bytes, as they are sent."""

import re
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest

from tests.scenario.served_app import ServedApp, served_app

MOST_BYTES = 60_000
_SVG = re.compile(rb"<svg.*?</svg>", re.DOTALL)
_ASKED = re.compile(rb'(?:src|href)="(/asset/[^"]+)"')


@pytest.fixture
def app(tmp_path: Path) -> Iterator[ServedApp]:
    with served_app(tmp_path) as served:
        yield served


def sent_bytes(client: httpx.Client, path: str) -> int:
    with client.stream("GET", path) as answer:
        answer.read()
        return answer.num_bytes_downloaded


def test_the_page_of_setting_out_weighs_less_than_sixty_kilobytes_but_for_its_drawing(app: ServedApp) -> None:
    with httpx.Client(base_url=app.address, headers={"accept-encoding": "gzip"}) as client:
        page = client.get(f"/jobs/{app.demo}/set-out").content
        own = {"page": len(_SVG.sub(b"", page))}
        own |= {path.decode(): sent_bytes(client, path.decode()) for path in set(_ASKED.findall(page))}
    assert {"/asset/app.css", "/asset/app.js", "/asset/htmx.min.js"} <= set(own)
    assert sum(own.values()) < MOST_BYTES, own


def test_the_answer_to_a_moved_slider_is_light_enough_for_a_slow_line(app: ServedApp) -> None:
    partial = {"hx-request": "true", "hx-request-type": "partial"}
    with httpx.Client(base_url=app.address, headers=partial) as client:
        answer = client.get(f"/jobs/{app.demo}/set-out?moved=yes&overhang=55&hold_overhang=yes").content
    assert not answer.lstrip().startswith(b"<!doctype")
    assert len(answer) < MOST_BYTES
