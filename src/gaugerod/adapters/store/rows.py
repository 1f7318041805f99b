"""Revisions in and out of their tables."""

import sqlite3
import zlib
from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

from gaugerod.adapters.store.file import damaged
from gaugerod.adapters.store.packed import packed, storable, unpacked, written_time
from gaugerod.adapters.store.records import JobLine, Revision, RevisionLine
from gaugerod.basis.errors import NotKept

_LINES = "SELECT job, rev, at, by, edition, version, title, draft FROM revision WHERE job = ? ORDER BY rev"
_ONE = "SELECT * FROM revision WHERE job = ? AND rev = ?"
_ALL = "SELECT * FROM revision WHERE job = ? ORDER BY rev"
_JOBS = """
    SELECT revision.job, revision.rev, at, by, edition, version, title, draft, archived, created_at, created_by
    FROM job JOIN revision ON revision.job = job.id AND revision.rev = job.rev
    WHERE archived = ? ORDER BY at DESC, job.rowid DESC
"""


def newest_rev(connection: sqlite3.Connection, job: str) -> int:
    """The number of the newest revision. Raises NotKept."""
    row = connection.execute("SELECT rev FROM job WHERE id = ?", (storable(job),)).fetchone()
    if row is None:
        raise NotKept(f"job {storable(job)}")
    return int(row["rev"])


def insert_job(
    connection: sqlite3.Connection, revisions: Sequence[Revision], *, by: str, at: datetime, archived: bool
) -> None:
    """A new job with these revisions, numbered from 1."""
    job, newest = revisions[-1].job, revisions[-1].rev
    connection.execute(
        "INSERT INTO job (id, rev, archived, created_at, created_by) VALUES (?, ?, ?, ?, ?)",
        (job, newest, archived, written_time(at), storable(by)),
    )
    _insert_revisions(connection, revisions)


def append(connection: sqlite3.Connection, revision: Revision) -> None:
    """The next revision of a job that is there."""
    connection.execute("UPDATE job SET rev = ? WHERE id = ?", (revision.rev, revision.job))
    _insert_revisions(connection, [revision])


def read_revision(connection: sqlite3.Connection, job: str, rev: int, *, path: Path) -> Revision:
    """One revision, whole. Raises NotKept; StoreUnusable when its document is damaged."""
    if not 1 <= rev <= newest_rev(connection, job):
        raise NotKept(f"revision {rev} of job {storable(job)}")
    row = connection.execute(_ONE, (storable(job), rev)).fetchone()
    if row is None:
        raise damaged(path, why=f"revision {rev} of job {job} is missing")
    return _whole(row, path=path)


def read_revisions(connection: sqlite3.Connection, job: str, *, path: Path) -> tuple[Revision, ...]:
    """Every revision of a job, whole, first to last."""
    return tuple(_whole(row, path=path) for row in connection.execute(_ALL, (storable(job),)))


def read_lines(connection: sqlite3.Connection, job: str) -> tuple[RevisionLine, ...]:
    """Every revision of a job without its document, first to last."""
    return tuple(RevisionLine(**_line(row)) for row in connection.execute(_LINES, (storable(job),)))


def read_jobs(connection: sqlite3.Connection, *, archived: bool) -> Iterator[JobLine]:
    """The jobs at hand, or those put away; last saved first."""
    for row in connection.execute(_JOBS, (archived,)):
        created_at = datetime.fromisoformat(row["created_at"])
        yield JobLine(**_line(row), archived=archived, created_at=created_at, created_by=row["created_by"])


def _insert_revisions(connection: sqlite3.Connection, revisions: Iterable[Revision]) -> None:
    connection.executemany(
        "INSERT INTO revision (job, rev, at, by, edition, version, title, draft, document) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        (
            (each.job, each.rev, written_time(each.at), storable(each.by), storable(each.edition), each.version,
             storable(each.title), each.draft, packed(each.document))
            for each in revisions
        ),
    )  # fmt: skip


def _whole(row: sqlite3.Row, *, path: Path) -> Revision:
    try:
        document = unpacked(row["document"])
    except (ValueError, TypeError, zlib.error) as error:
        raise damaged(path, why=f"revision {row['rev']} of job {row['job']}: {error}") from None
    return Revision(**_line(row), document=document)


def _line(row: sqlite3.Row) -> dict[str, Any]:
    return {
        **{name: row[name] for name in ("job", "rev", "by", "edition", "version", "title")},
        "at": datetime.fromisoformat(row["at"]),
        "draft": bool(row["draft"]),
    }
