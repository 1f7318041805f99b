"""A copy of everything in one file, while others go on saving; it is read back before it is called a backup."""

import os
import sqlite3
from contextlib import closing
from pathlib import Path

from gaugerod.adapters.store.file import check_whole, connect, plainly
from gaugerod.adapters.store.records import BackedUp
from gaugerod.basis.errors import StoreUnusable


def back_up(store: Path, to: Path) -> BackedUp:
    """Copy the store to a new file. Raises StoreUnusable; what is at ``to`` already is never written over."""
    part = to.with_name(f"{to.name}.part")
    try:
        to.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        to.touch(exist_ok=False)  # the name is ours from here on
    except FileExistsError:
        raise StoreUnusable(
            file=str(to), why="There is something of that name already.", do="Name another file with --to."
        ) from None
    except OSError as error:
        raise _not_written(to, error) from None
    try:
        with plainly(to):
            done = _copied(store, part=part, to=to)
        part.replace(to)
    except OSError as error:
        to.unlink(missing_ok=True)
        raise _not_written(to, error) from None
    except BaseException:
        to.unlink(missing_ok=True)
        raise
    finally:
        for left in (part, *(part.with_name(part.name + end) for end in ("-wal", "-shm", "-journal"))):
            left.unlink(missing_ok=True)
    return done


def _copied(store: Path, *, part: Path, to: Path) -> BackedUp:
    part.unlink(missing_ok=True)
    part.touch(mode=0o600)  # for its owner's eyes, as the store is
    with closing(connect(store, mode="ro")) as source, closing(connect(part, mode="rwc")) as copy:
        source.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")  # a backup is one file, with nothing beside it
        check_whole(copy, path=to, how="integrity_check")
        done = BackedUp(path=to, jobs_count=_count(copy, "job"), revisions_count=_count(copy, "revision"))
    with part.open("rb+") as file:
        os.fsync(file.fileno())
    return done


def _count(copy: sqlite3.Connection, table: str) -> int:
    ((count,),) = copy.execute(f"SELECT count(*) FROM {table}")  # noqa: S608 - our own two words
    return int(count)


def _not_written(to: Path, error: OSError) -> StoreUnusable:
    return StoreUnusable(
        file=str(to), why=f"It cannot be written: {error.strerror}.", do="Name another file with --to."
    )
