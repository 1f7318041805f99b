"""Job documents and stores for tests of the kept jobs: a clock that can be read, and files of earlier versions."""

import json
import sqlite3
import zlib
from collections.abc import Callable
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from gaugerod.adapters.store.migrations import STEPS

FIRST = datetime(2026, 3, 2, 7, 30, tzinfo=UTC)


def ticking() -> Callable[[], datetime]:
    """A clock that moves on one minute at each look."""
    moment = FIRST - timedelta(minutes=1)

    def now() -> datetime:
        nonlocal moment
        moment += timedelta(minutes=1)
        return moment

    return now


def a_job(title: str = "Yard Cottage", *, pitch: str = "35°", rafter: str = "4.905 m") -> dict[str, Any]:
    """A document that passes the door."""
    return {
        "job": {"title": title, "edition": "GB", "exposure": "moderate"},
        "covering": {"from": "flat-interlocking-420x330"},
        "slope": [{"name": "rear", "pitch": pitch, "across": "7.460 m", "rafters": [rafter, "4.918 m"],
                   "left": "verge", "right": "abutment", "bottom": "eaves", "top": "ridge"}],
    }  # fmt: skip


def write_version_1(path: Path) -> None:
    """A file as the first version left it: one job with two revisions, one job put away."""
    _write(path, version=1)


def write_version_2(path: Path) -> None:
    """A file as the second version left it: the same jobs, and a share link with the token ``old-token``."""
    _write(path, version=2)


def _write(path: Path, *, version: int) -> None:
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute("CREATE TABLE schema_version (version INTEGER PRIMARY KEY, at TEXT NOT NULL)")
        for number, step in enumerate(STEPS[:version], start=1):
            connection.execute("INSERT INTO schema_version VALUES (?, ?)", (number, FIRST.isoformat()))
            for statement in step:
                connection.execute(statement)
        at = FIRST.isoformat(timespec="microseconds")
        connection.execute("INSERT INTO job VALUES ('a1', 2, 0, ?, 'Ann')", (at,))
        connection.execute("INSERT INTO job VALUES ('b2', 1, 1, ?, 'Ben')", (at,))
        for job, rev, title in (("a1", 1, "Yard"), ("a1", 2, "Yard Cottage"), ("b2", 1, "Long Barn")):
            content = zlib.compress(json.dumps(a_job(title)).encode())
            connection.execute(
                "INSERT INTO revision VALUES (?, ?, ?, 'Ann', 'GB', '0.1.0', ?, ?)", (job, rev, at, title, content)
            )
        if version == 2:
            seal = "9bdf10a691a1cfda89d9ff66629d1609ab176cec9b6a3146a8929f28937a9fce"
            connection.execute("INSERT INTO share VALUES (?, 'a1', ?, NULL)", (seal, at))
