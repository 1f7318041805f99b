"""The app served as it is for a person: on a free port of this machine, with its own data folder."""

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from threading import Thread

from starlette.applications import Starlette
from starlette.routing import Route

from gaugerod.adapters.store.store import JobStore
from gaugerod.web.gate.passphrase import keep_passphrase
from gaugerod.web.serve import LOOPBACK, Served, app_over, server_over
from gaugerod.wiring import open_store, store_path

STARTS_WITHIN_S = 30.0


@dataclass(frozen=True)
class ServedApp:
    """Where it is, and its kept jobs; the first job is the demo job."""

    address: str
    port: int
    store: JobStore
    folder: Path
    routes: tuple[str, ...]
    """Every path that can be looked at, with the names of its parts in braces."""

    @property
    def demo(self) -> str:
        """The job that stands in the list at the very first start."""
        return self.store.jobs()[-1].job


@contextmanager
def served_app(folder: Path, *, passphrase: str | None = None) -> Iterator[ServedApp]:
    """Serve until the block ends. With a passphrase the app asks for it, as it does where others may come in.

    It still listens on this machine alone, whoever may come in.
    """
    if passphrase is not None:
        keep_passphrase(passphrase, folder=folder)
    lan = passphrase is not None
    with open_store(store_path(str(folder))) as store, free_door() as door:
        port = door.getsockname()[1]
        app = app_over(store, folder=folder, lan=lan, secure=False)
        server = server_over(app, Served(port=port, data=str(folder), lan=False, cert=None, key=None))
        thread = Thread(target=server.run, kwargs={"sockets": [door]}, daemon=True)
        thread.start()
        _wait_for(port)
        try:
            yield ServedApp(
                address=f"http://{LOOPBACK}:{port}", port=port, store=store, folder=folder, routes=looked_at(app)
            )
        finally:
            server.should_exit = True
            thread.join(timeout=STARTS_WITHIN_S)


def free_door() -> socket.socket:
    """A socket on a free port. It names its protocol: only so are small answers sent at once, as they are when really served."""
    door = socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    door.bind((LOOPBACK, 0))
    door.listen(128)
    return door


def looked_at(app: Starlette) -> tuple[str, ...]:
    """The paths of an app that answer a GET."""
    return tuple(each.path for each in app.routes if isinstance(each, Route) and "GET" in (each.methods or ()))


def _wait_for(port: int) -> None:
    """The door is open from the start: whoever calls waits in it until the server takes the call."""
    with socket.create_connection((LOOPBACK, port), timeout=STARTS_WITHIN_S) as caller:
        caller.sendall(b"GET /asset/icon.svg HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n")
        assert caller.recv(20).startswith(b"HTTP/1.1 200")
