"""What the store hands out: jobs, their revisions, and what became of a save."""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

Document = dict[str, Any]
"""A job document as it was typed; the door checks it before it is set out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RevisionLine:
    """One save of a job, without its document: number from 1, when (UTC), by whom, under which rules and program.

    ``draft``  it did not pass the door when it was saved: kept so that nothing typed is lost, not to be set out
    """

    job: str
    rev: int
    at: datetime
    by: str
    edition: str
    version: str
    title: str
    draft: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision(RevisionLine):
    """One save of a job, whole."""

    document: Document


@dataclass(frozen=True, slots=True, kw_only=True)
class JobLine(RevisionLine):
    """A job in the list: its newest revision, and how the job came here (``created_by`` made, copied or imported it)."""

    archived: bool
    created_at: datetime
    created_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """The save is on the disk: it will still be there after a power cut."""

    job: str
    rev: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Stale:
    """Nothing was saved: since ``base_rev``, which this edit began from, someone saved ``theirs``."""

    base_rev: int
    theirs: Revision


@dataclass(frozen=True, slots=True, kw_only=True)
class Imported:
    """A job taken in under a new id: nothing kept before was touched. ``draft`` as its newest revision."""

    job: str
    title: str
    draft: bool
    revisions_count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BackedUp:
    """A copy of everything, read back and found whole."""

    path: Path
    jobs_count: int
    revisions_count: int
