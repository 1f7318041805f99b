"""A program that saves without end and says each save once it is acknowledged; the tests kill it at any moment.

Its words: the file, and how many pages the log may hold before SQLite clears it (few, so that kills fall into that too).
"""

import random
import sys
from pathlib import Path

from gaugerod.adapters.store.records import Saved
from gaugerod.adapters.store.store import JobStore


def content_of(job: str, rev: int) -> str:
    """What this revision must hold: too random to press, from a few bytes to many pages."""
    chance = random.Random(f"{job} {rev}")  # noqa: S311 - no secret, the same at each run
    return chance.randbytes(chance.choice([10, 1_000, 30_000])).hex()


def main() -> None:
    """Go on until killed."""
    path, pages = Path(sys.argv[1]), int(sys.argv[2])
    with JobStore.open(path) as store:
        with store._file.reading() as connection:
            connection.execute(f"PRAGMA wal_autocheckpoint = {pages}")
        while True:
            job = store.create({"job": {"title": "kept"}}, by="writer").job
            print(job, 1, flush=True)  # noqa: T201 - its only voice
            for rev in range(2, 12):
                outcome = store.save(job, {"content": content_of(job, rev)}, by="writer", base_rev=rev - 1)
                assert isinstance(outcome, Saved)
                print(job, rev, flush=True)  # noqa: T201


if __name__ == "__main__":
    main()
