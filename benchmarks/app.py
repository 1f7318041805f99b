"""The app recalculating the demo job, beside a bare Starlette route that sends the same bytes: one run, one connection each.

Both are served by the app's own server with its own limits, each in a process of its own.
"""

import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.client import HTTPConnection
from multiprocessing import get_context
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from gaugerod.web.serve import LOOPBACK, Served, app_over, server_over
from gaugerod.wiring import open_store, store_path

ROUNDS, WARM = 60, 5
PARTIAL = {"hx-request": "true", "hx-request-type": "partial"}


def rows() -> Iterator[tuple[str, str, str]]:
    """Requests in a second and milliseconds each, for the page, its answer alone, and its JSON twin."""
    with TemporaryDirectory() as folder:
        with open_store(store_path(folder)) as store:
            app_over(store, folder=Path(folder), lan=False, secure=False)
            page = f"/jobs/{store.jobs()[0].job}/set-out"
        for what, query, headers in (
            ("the page of setting out", "", {}),
            ("its answer while a slider moves", "?moved=yes&hold_overhang=yes&overhang=", PARTIAL),
            ("its JSON twin", ".json?moved=yes&hold_overhang=yes&overhang=", {}),
        ):
            yield _compared(Path(folder), what, f"{page}{query}", headers)


def _compared(folder: Path, what: str, path: str, headers: dict[str, str]) -> tuple[str, str, str]:
    moving = path.endswith("=")
    with _in_a_process(_app, folder) as app:
        content = _asked(app, f"{path}50" if moving else path, headers)
        with _in_a_process(_bare, content) as bare:
            app_s = bare_s = 0.0
            for number in range(ROUNDS + WARM):
                one_s = _timed_s(app, f"{path}{45 + number % 10}" if moving else path, headers)
                other_s = _timed_s(bare, "/", {})
                if number >= WARM:
                    app_s, bare_s = app_s + one_s, bare_s + other_s
    note = (
        f"{ROUNDS / app_s:.0f} a second against {ROUNDS / bare_s:.0f}, {app_s / ROUNDS * 1e3:.1f} ms each, "
        f"{len(content) / 1e3:.0f} kB"
    )
    return f"{what} / the same bytes from a bare route", f"{app_s / bare_s:.0f}×", note


def _timed_s(line: HTTPConnection, path: str, headers: dict[str, str]) -> float:
    start = perf_counter()
    _asked(line, path, headers)
    return perf_counter() - start


def _asked(line: HTTPConnection, path: str, headers: dict[str, str]) -> bytes:
    line.request("GET", path, headers=headers)
    answer = line.getresponse()
    content = answer.read()
    if answer.status != 200:
        raise RuntimeError(f"{path}: {answer.status}")
    return content


@contextmanager
def _in_a_process(serve: Callable[[socket.socket, Any], None], given: object) -> Iterator[HTTPConnection]:
    """A connection to what is served in a process of its own."""
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP) as door:
        door.bind((LOOPBACK, 0))
        door.listen()
        port = door.getsockname()[1]
        process = get_context("spawn").Process(target=serve, args=(door, given), daemon=True)
        process.start()
        line = HTTPConnection(LOOPBACK, port, timeout=30)
        try:
            yield line
        finally:
            line.close()
            process.terminate()
            process.join()


def _app(door: socket.socket, folder: Path) -> None:
    with open_store(store_path(str(folder))) as store:
        _serve(door, app_over(store, folder=folder, lan=False, secure=False))


def _bare(door: socket.socket, content: bytes) -> None:
    async def same(_: Request) -> Response:
        return Response(content, media_type="text/html")

    _serve(door, Starlette(routes=[Route("/", same)]))


def _serve(door: socket.socket, app: Starlette) -> None:
    served = Served(port=door.getsockname()[1], data=None, lan=False, cert=None, key=None)
    server_over(app, served).run(sockets=[door])


if __name__ == "__main__":
    for name, figure, note in rows():
        print(name, figure, note)
