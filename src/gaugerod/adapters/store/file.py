"""The SQLite file itself: opened with care, one caller at a time, its troubles said plainly.

Why these settings. WAL: readers never wait for a writer, and a crash leaves whole revisions. ``synchronous=FULL``: in WAL
the usual NORMAL does not wait for the disk at each commit, so a power cut could take back a save already acknowledged; FULL
waits, a few milliseconds a save, which nobody notices. ``fullfsync``: on a Mac only this reaches the disk itself.
"""

import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path
from threading import RLock

from gaugerod.adapters.store.migrations import NEWEST, upgrade, version_of
from gaugerod.basis.errors import StoreUnusable

BUSY_S = 15
"""How long a save waits for another program's save (house choice)."""
_READ_ONLY_CANNOT = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_BUSY}

_MEANS = {
    sqlite3.SQLITE_BUSY: (
        f"Another program has been writing to it for {BUSY_S} seconds; nothing was saved.",
        "Close what else is open on it and save again.",
    ),
    sqlite3.SQLITE_FULL: (
        "The disk is full; nothing was saved, and nothing saved before is lost.",
        "Free some space and save again.",
    ),
    sqlite3.SQLITE_READONLY: (
        "It may not be written to; nothing was saved.",
        "Change the rights of the file and its folder, or name another folder with --data.",
    ),
    sqlite3.SQLITE_CANTOPEN: (
        "It cannot be opened.",
        "Look whether the folder is there and yours to write in, or name another with --data.",
    ),
    sqlite3.SQLITE_IOERR: (
        "The disk did not take or give what was asked; nothing was saved.",
        "Look to the disk and its free space, then try again.",
    ),
    sqlite3.SQLITE_TOOBIG: ("The document is larger than a database row can be; nothing was saved.", "Split the job."),
}
_MEANS[sqlite3.SQLITE_LOCKED] = _MEANS[sqlite3.SQLITE_BUSY]
_MEANS[sqlite3.SQLITE_PERM] = _MEANS[sqlite3.SQLITE_READONLY]


class StoreFile:
    """An open store. Threads take turns; other programs wait for each other in SQLite."""

    def __init__(self, path: Path, connection: sqlite3.Connection) -> None:
        self.path = path
        self._connection = connection
        self._turn = RLock()

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """Everything read inside is of one moment."""
        with self._transaction("BEGIN") as connection:
            yield connection

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """All that is written inside is kept, or none of it. When this ends without an error, it is on the disk."""
        with self._transaction("BEGIN IMMEDIATE") as connection:
            yield connection

    @contextmanager
    def _transaction(self, begin: str) -> Iterator[sqlite3.Connection]:
        with self._turn, plainly(self.path):
            self._connection.execute(begin)
            try:
                yield self._connection
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:  # SQLite may have undone it already
                    self._connection.execute("ROLLBACK")
                raise

    def close(self) -> None:
        """Let go of the file."""
        with self._turn:
            self._connection.close()


def open_file(path: Path, *, now: Callable[[], datetime]) -> StoreFile:
    """Open the store, or make it. Raises StoreUnusable with what to do; a file that cannot be used is left as it is."""
    with plainly(path):
        try:
            path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            _look_before_writing(path)
            if not path.exists():
                path.touch(mode=0o600)  # for its owner's eyes only; SQLite would let everyone read it
        except OSError as error:
            do = "Name another folder for the kept jobs with --data."
            raise StoreUnusable(file=str(path), why=f"It cannot be reached: {error.strerror}.", do=do) from None
        connection = connect(path, mode="rwc")
        try:
            _set_up(connection)
            if version_of(connection, file=str(path)) < NEWEST:
                connection.execute("BEGIN IMMEDIATE")
                upgrade(connection, file=str(path), now=now())
                connection.execute("COMMIT")
        except BaseException:
            connection.close()
            raise
        return StoreFile(path, connection)


def connect(path: Path, *, mode: str) -> sqlite3.Connection:
    """A bare connection: transactions are begun and ended by name only."""
    connection = sqlite3.connect(
        f"{path.absolute().as_uri()}?mode={mode}",
        uri=True,
        timeout=BUSY_S,
        isolation_level=None,
        check_same_thread=False,
    )
    connection.row_factory = sqlite3.Row
    return connection


@contextmanager
def plainly(path: Path) -> Iterator[None]:
    """SQLite's troubles as StoreUnusable, in words that say what to do; a fault of ours stays what it is."""
    try:
        yield
    except sqlite3.Error as error:
        code = getattr(error, "sqlite_errorcode", 0) & 0xFF
        if code in {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB}:
            raise damaged(path, why=str(error)) from error
        if code not in _MEANS:
            raise
        why, do = _MEANS[code]
        raise StoreUnusable(file=str(path), why=why, do=do) from error


def damaged(path: Path, *, why: str) -> StoreUnusable:
    """The file is not what was written to it."""
    return StoreUnusable(
        file=str(path),
        why=f"It is damaged ({why.strip()}); it was left as it is.",
        do="Put it aside, with the files of the same name ending in -wal and -shm, and put your last backup in its place.",
    )


def check_whole(connection: sqlite3.Connection, *, path: Path, how: str = "quick_check") -> None:
    """Raises StoreUnusable when SQLite finds the file damaged."""
    ((said, *_), *_) = connection.execute(f"PRAGMA {how}(1)").fetchall()
    if said != "ok":
        raise damaged(path, why=str(said))


def _look_before_writing(path: Path) -> None:
    """Look at the file without writing: SQLite tidies up as it closes, which would touch a damaged file."""
    if path.is_dir():
        raise StoreUnusable(file=str(path), why="This is a folder.", do="Name another folder with --data.")
    if not path.exists() or path.stat().st_size == 0:
        _refuse_orphan_log(path)
        return
    with closing(connect(path, mode="ro")) as connection:
        try:
            check_whole(connection, path=path)
        except sqlite3.OperationalError as error:
            # After a crash the file may need its tidying before it can be read at all.
            if error.sqlite_errorcode & 0xFF not in _READ_ONLY_CANNOT:
                raise
        else:
            version_of(connection, file=str(path))


def _refuse_orphan_log(path: Path) -> None:
    """SQLite throws the log away when its file is gone; the newest saves may be in it."""
    log = path.with_name(f"{path.name}-wal")
    if log.exists() and log.stat().st_size > 0:
        raise StoreUnusable(
            file=str(path),
            why=f"It is gone or empty, but {log.name} with the newest saves is there.",
            do=f"Put {path.name} back beside it, or move {log.name} away to begin afresh.",
        )


def _set_up(connection: sqlite3.Connection) -> None:
    for setting in ("foreign_keys = ON", "synchronous = FULL", "fullfsync = ON", "checkpoint_fullfsync = ON"):
        connection.execute(f"PRAGMA {setting}")
    _to_write_ahead(connection)


def _to_write_ahead(connection: sqlite3.Connection) -> None:
    """Several programs may make the file at the same moment; for this one change SQLite does not wait by itself."""
    until = time.monotonic() + BUSY_S
    while True:
        try:
            connection.execute("PRAGMA journal_mode = WAL").fetchone()
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or time.monotonic() > until:
                raise
            time.sleep(0.02)
        else:
            return
