"""The kept jobs. Every save is a revision; a stale save changes nothing; undo copies an old revision forward."""

import secrets
import sqlite3
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Self

from gaugerod import __version__
from gaugerod.adapters.store.backup import back_up
from gaugerod.adapters.store.file import StoreFile, open_file
from gaugerod.adapters.store.packed import edition_of, title_of
from gaugerod.adapters.store.portable import PortableJob, portable_document, read_portable
from gaugerod.adapters.store.records import BackedUp, Document, Imported, JobLine, Revision, RevisionLine, Saved, Stale
from gaugerod.adapters.store.rows import (
    append,
    insert_job,
    newest_rev,
    read_jobs,
    read_lines,
    read_revision,
    read_revisions,
)
from gaugerod.adapters.store.shares import revoke_shares, share_job, shared_job


def utc_now() -> datetime:
    """The clock of this machine, in UTC."""
    return datetime.now(UTC)


class JobStore:
    """All kept jobs in one file. Safe for many threads and many programs at once.

    Raises StoreUnusable when the file cannot be used (with what to do), NotKept for a job or revision that is not there,
    InputRefused for a document that JSON cannot hold. ``by`` is whoever saves, in any words.
    """

    def __init__(self, file: StoreFile, *, now: Callable[[], datetime]) -> None:
        self._file = file
        self._now = now

    @classmethod
    def open(cls, path: Path, *, now: Callable[[], datetime] = utc_now) -> Self:
        """Open the file, or make it; an older one is brought up to date. A damaged one is refused and left untouched."""
        return cls(open_file(path, now=now), now=now)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def close(self) -> None:
        """Let go of the file."""
        self._file.close()

    def create(self, document: Document, *, by: str, draft: bool = False) -> Saved:
        """Keep a new job. When this returns, it is on the disk."""
        first = self._fresh(document, job=_new_id(), rev=1, by=by, draft=draft)
        with self._file.writing() as connection:
            insert_job(connection, [first], by=by, at=first.at, archived=False)
        return Saved(job=first.job, rev=1)

    def save(self, job: str, document: Document, *, by: str, base_rev: int, draft: bool = False) -> Saved | Stale:
        """Keep the next revision, if ``base_rev`` is still the newest. When Saved returns, it is on the disk."""
        with self._file.writing() as connection:
            newest = newest_rev(connection, job)
            if newest != base_rev:
                return Stale(base_rev=base_rev, theirs=self._read(connection, job, newest))
            append(connection, self._fresh(document, job=job, rev=newest + 1, by=by, draft=draft))
        return Saved(job=job, rev=newest + 1)

    def restore(self, job: str, rev: int, *, by: str) -> Saved:
        """Undo: the old revision is copied forward as the newest one. Nothing between is lost."""
        with self._file.writing() as connection:
            old = self._read(connection, job, rev)
            newest = newest_rev(connection, job)
            append(connection, self._fresh(old.document, job=job, rev=newest + 1, by=by, draft=old.draft))
        return Saved(job=job, rev=newest + 1)

    def duplicate(self, job: str, *, by: str) -> Saved:
        """A new job from the newest revision. Its title says that it is a copy, so that two sheets are not mixed up."""
        newest = self.load(job)
        document = newest.document
        if newest.title:
            document = {**document, "job": {**document["job"], "title": f"{document['job']['title']} (copy)"}}
        return self.create(document, by=by, draft=newest.draft)

    def load(self, job: str, rev: int | None = None) -> Revision:
        """The newest revision, or the one asked for."""
        with self._file.reading() as connection:
            return self._read(connection, job, newest_rev(connection, job) if rev is None else rev)

    def revisions(self, job: str) -> tuple[RevisionLine, ...]:
        """Every save of the job, first to last."""
        with self._file.reading() as connection:
            newest_rev(connection, job)
            return read_lines(connection, job)

    def jobs(self, *, archived: bool = False) -> tuple[JobLine, ...]:
        """The jobs at hand, or those put away; last saved first."""
        with self._file.reading() as connection:
            return tuple(read_jobs(connection, archived=archived))

    def archive(self, job: str) -> None:
        """Put the job away: it leaves the list, nothing is lost."""
        self._set_archived(job, archived=True)

    def unarchive(self, job: str) -> None:
        """Take the job back into the list."""
        self._set_archived(job, archived=False)

    def share(self, job: str) -> str:
        """A new unguessable token for reading this job. It cannot be shown again: only its SHA-256 is kept."""
        with self._file.writing() as connection:
            newest_rev(connection, job)
            return share_job(connection, job, now=self._now())

    def shared(self, token: str) -> str | None:
        """The job this token opens for reading; None for a token unknown or revoked."""
        with self._file.reading() as connection:
            return shared_job(connection, token)

    def revoke(self, job: str) -> int:
        """Every share link of the job stops working at once. Gives how many there were."""
        with self._file.writing() as connection:
            newest_rev(connection, job)
            return revoke_shares(connection, job, now=self._now())

    def export_job(self, job: str) -> Document:
        """The job with all its revisions, sealed, as JSON that any store takes in. Ids and share links stay behind."""
        with self._file.reading() as connection:
            newest_rev(connection, job)
            return portable_document([self._portable(connection, job)])

    def export_all(self) -> Document:
        """Every job, those put away too, as ``export_job`` does, in the order they were made."""
        with self._file.reading() as connection:
            ids = [str(job) for (job,) in connection.execute("SELECT id FROM job ORDER BY rowid")]
            return portable_document([self._portable(connection, job) for job in ids])

    def import_document(self, document: Document, *, by: str) -> tuple[Imported, ...]:
        """Take in what ``export_job`` or ``export_all`` gave: all of it, each job under a new id, or nothing.

        Raises InputRefused with every fault of a damaged document.
        """
        imported = []
        jobs = read_portable(document)
        with self._file.writing() as connection:
            for each in jobs:
                job = _new_id()
                revisions = [replace(revision, job=job) for revision in each.revisions]
                insert_job(connection, revisions, by=by, at=self._now(), archived=each.archived)
                newest = revisions[-1]
                imported.append(Imported(job=job, title=newest.title, draft=newest.draft, revisions_count=newest.rev))
        return tuple(imported)

    def backup(self, to: Path) -> BackedUp:
        """Copy everything to a new file while others go on saving; it is read back before this returns."""
        return back_up(self._file.path, to)

    def _fresh(self, document: Document, *, job: str, rev: int, by: str, draft: bool) -> Revision:
        return Revision(
            job=job,
            rev=rev,
            at=self._now(),
            by=by,
            edition=edition_of(document),
            version=__version__,
            title=title_of(document),
            draft=draft,
            document=document,
        )

    def _read(self, connection: sqlite3.Connection, job: str, rev: int) -> Revision:
        return read_revision(connection, job, rev, path=self._file.path)

    def _portable(self, connection: sqlite3.Connection, job: str) -> PortableJob:
        ((archived,),) = connection.execute("SELECT archived FROM job WHERE id = ?", (job,))
        return PortableJob(archived=bool(archived), revisions=read_revisions(connection, job, path=self._file.path))

    def _set_archived(self, job: str, *, archived: bool) -> None:
        with self._file.writing() as connection:
            newest_rev(connection, job)
            connection.execute("UPDATE job SET archived = ? WHERE id = ?", (archived, job))


def _new_id() -> str:
    """128 random bits: a job's address cannot be guessed."""
    return secrets.token_hex(16)
