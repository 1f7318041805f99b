"""The tables, as numbered steps: a file of any earlier version is brought up to the newest, or left as it was.

A step is never changed once released; what changes is added as a new one.
"""

import sqlite3
from datetime import datetime

from gaugerod.basis.errors import StoreUnusable

STEPS: tuple[tuple[str, ...], ...] = (
    (
        """CREATE TABLE job (
            id TEXT PRIMARY KEY, rev INTEGER NOT NULL, archived INTEGER NOT NULL DEFAULT 0,
            created_at TEXT NOT NULL, created_by TEXT NOT NULL
        )""",
        """CREATE TABLE revision (
            job TEXT NOT NULL REFERENCES job (id), rev INTEGER NOT NULL, at TEXT NOT NULL, by TEXT NOT NULL,
            edition TEXT NOT NULL, version TEXT NOT NULL, title TEXT NOT NULL, document BLOB NOT NULL,
            PRIMARY KEY (job, rev)
        )""",
    ),
    (
        """CREATE TABLE share (
            token_sha256 TEXT PRIMARY KEY, job TEXT NOT NULL REFERENCES job (id),
            created_at TEXT NOT NULL, revoked_at TEXT
        )""",
        "CREATE INDEX share_of_job ON share (job)",
    ),
    ("ALTER TABLE revision ADD COLUMN draft INTEGER NOT NULL DEFAULT 0",),
)
"""Step n − 1 brings version n − 1 to version n: 1 jobs and revisions, 2 share links, 3 drafts."""

NEWEST = len(STEPS)


def version_of(connection: sqlite3.Connection, *, file: str) -> int:
    """The version of the tables; 0 for a new file. Raises StoreUnusable for a file that is not ours, or newer than we are."""
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    if not tables:
        return 0
    if "schema_version" not in tables:
        raise StoreUnusable(
            file=file,
            why="This is a database of another program; it was left as it is.",
            do="Name another folder for the kept jobs with --data.",
        )
    (version,) = connection.execute("SELECT max(version) FROM schema_version").fetchone()
    if version > NEWEST:
        raise StoreUnusable(
            file=file,
            why=f"It was written by a newer gaugerod (tables {version}; this one knows {NEWEST}); it was left as it is.",
            do="Install the newer gaugerod again.",
        )
    return int(version)


def upgrade(connection: sqlite3.Connection, *, file: str, now: datetime) -> None:
    """Run the steps that are missing, inside the transaction already begun: all of them or none."""
    version = version_of(connection, file=file)
    if version == 0:
        connection.execute("CREATE TABLE schema_version (version INTEGER PRIMARY KEY, at TEXT NOT NULL)")
    for number, step in enumerate(STEPS[version:], start=version + 1):
        for statement in step:
            connection.execute(statement)
        connection.execute("INSERT INTO schema_version VALUES (?, ?)", (number, now.isoformat()))
