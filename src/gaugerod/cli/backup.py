"""``gaugerod backup``: all kept jobs copied to one file."""

import argparse
from datetime import datetime
from pathlib import Path

from gaugerod.cli.kept import kept_file
from gaugerod.wiring import open_store


def run(given: argparse.Namespace) -> int:
    """Copy, read back, say what is in it."""
    path = kept_file(given)
    named = f"gaugerod-{datetime.now().astimezone():%Y-%m-%d-%H%M%S}.sqlite"
    to = path.parent / "backups" / named if given.to is None else Path(given.to)
    with open_store(path) as store:
        done = store.backup(to)
    print(f"Backed up to {done.path}: jobs: {done.jobs_count}; revisions: {done.revisions_count}; read back and whole.")
    print(
        f"To go back to it: close gaugerod, put {path.name} aside (with {path.name}-wal and -shm, where there are any),"
    )
    print(f"and copy the backup in its place: {path}")
    return 0
