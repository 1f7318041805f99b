"""Starting the app: the folder of the jobs, the passphrase where other machines may come in, and the server."""

import os
import socket
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from getpass import getpass
from pathlib import Path

import uvicorn
from starlette.applications import Starlette

from gaugerod.adapters.store.store import JobStore
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.web.access import Access
from gaugerod.web.app import make_app
from gaugerod.web.asked import THE_PROGRAM
from gaugerod.web.gate.hosts import LOOPBACK_NAMES, Hosts
from gaugerod.web.gate.passphrase import LEAST_LETTERS_COUNT, PassphraseUnfit, keep_passphrase, kept_hash
from gaugerod.web.gate.prompt import PromptProtocol
from gaugerod.web.gate.session import Sessions, kept_key
from gaugerod.web.services import Services
from gaugerod.wiring import demo_document, open_store, store_path

PASSPHRASE_VARIABLE = "GAUGEROD_PASSPHRASE"  # noqa: S105 - where it is looked for
LOOPBACK, EVERYWHERE = "127.0.0.1", "0.0.0.0"  # noqa: S104 - only with --lan, and behind the passphrase
Say = Callable[[str], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """What was asked for: the port, the data folder, and who may come in."""

    port: int
    data: str | None
    lan: bool
    cert: Path | None
    key: Path | None


def serve(served: Served, *, say: Say) -> None:
    """Serve until stopped. Raises InputRefused when it cannot be done as asked, StoreUnusable for the kept jobs."""
    path = store_path(served.data)
    folder = path.parent
    _refuse_missing(served)
    if served.lan:
        _passphrase(folder, say=say)
    with open_store(path) as store:
        app = app_over(store, folder=folder, lan=served.lan, secure=served.cert is not None)
        _refuse_busy(served)
        _say_where(served, folder, say=say)
        server_over(app, served).run()


def server_over(app: Starlette, served: Served) -> uvicorn.Server:
    """The server with its limits: how many at once, how large a head, and how long all may take."""
    config = uvicorn.Config(
        app,
        host=EVERYWHERE if served.lan else LOOPBACK,
        port=served.port,
        ssl_certfile=served.cert,
        ssl_keyfile=None if served.key is None else str(served.key),
        http=PromptProtocol,
        ws="none",
        lifespan="off",
        log_level="warning",
        access_log=False,
        server_header=False,
        date_header=True,
        proxy_headers=False,
        limit_concurrency=200,
        timeout_keep_alive=15,
        h11_max_incomplete_event_size=32_768,
    )
    return uvicorn.Server(config)


def app_over(store: JobStore, *, folder: Path, lan: bool, secure: bool) -> Starlette:
    """The app over the jobs in this folder. At the very first start the demo job stands in the list."""
    if not store.jobs() and not store.jobs(archived=True):
        store.create(demo_document(), by=THE_PROGRAM)
    passphrase_hash = kept_hash(folder) if lan else None
    access = Access(
        hosts=Hosts(reached=lan, names=LOOPBACK_NAMES | (_own_names() if lan else frozenset())),
        sessions=Sessions(key=kept_key(folder, passphrase_hash=passphrase_hash)),
        passphrase_hash=passphrase_hash,
        secure=secure,
        clock_s=time.time,
    )
    return make_app(Services(store=store, now=lambda: datetime.now().astimezone()), access)


def _own_names() -> frozenset[str]:
    name = socket.gethostname().lower()
    return frozenset({name, f"{name}.local"})


def _own_number() -> str:
    """The number under which the network knows this machine; empty where it has no network.

    Nothing is sent: the way to an address that stands in examples only is looked up.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return ""
        number: str = probe.getsockname()[0]
        return number


def _passphrase(folder: Path, *, say: Say) -> None:
    """From the environment, or as kept, or asked for: never from the command line, where others could read it."""
    given = os.environ.get(PASSPHRASE_VARIABLE)
    if given is None:
        if kept_hash(folder) is not None:
            return
        if not sys.stdin.isatty():
            raise InputRefused(
                [Fault(PASSPHRASE_VARIABLE, "nothing", "a passphrase", "Set it: --lan lets other machines in.")]
            )
        say(
            f"Other machines may come in with a passphrase of at least {LEAST_LETTERS_COUNT} letters. It is asked once."
        )
        given = getpass("Passphrase: ")
        if getpass("Once more: ") != given:
            raise InputRefused([Fault("passphrase", "two that differ", "the same twice", "Start again.")])
    try:
        keep_passphrase(given, folder=folder)
    except PassphraseUnfit as unfit:
        raise InputRefused([Fault("passphrase", f"{len(given)} letters", str(unfit), "Choose another.")]) from None


def _refuse_missing(served: Served) -> None:
    faults = [
        Fault(name, str(path), "a file that is there", "Look up its name.")
        for name, path in (("--cert", served.cert), ("--key", served.key))
        if path is not None and not path.is_file()
    ]
    if not 0 <= served.port <= 65_535:
        faults.append(Fault("--port", str(served.port), "a port, 1 to 65535", "Leave it out for the usual one."))
    if faults:
        raise InputRefused(faults)


def _refuse_busy(served: Served) -> None:
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((EVERYWHERE if served.lan else LOOPBACK, served.port))
        except OSError:
            do = "Another program, perhaps this one, has it. Stop that, or choose another with --port."
            raise InputRefused([Fault("--port", str(served.port), "a free port", do)]) from None


def _say_where(served: Served, folder: Path, *, say: Say) -> None:
    scheme = "http" if served.cert is None else "https"
    say(f"Open {scheme}://localhost:{served.port}/ in a browser. Jobs are kept in {folder}. Ctrl+C stops.")
    if served.lan:
        names = [name for name in (_own_number(), socket.gethostname()) if name]
        say(f"On a phone in the same network: {' or '.join(f'{scheme}://{name}:{served.port}/' for name in names)}")
    if served.lan and served.cert is None:
        say("Without --cert and --key others in the network could read along, the passphrase included.")
