"""A program that is one of many editing the same job: it adds to its own count until it has done so often enough.

Its words: the file, the job, its own name, how often.
"""

import sys
from pathlib import Path

from gaugerod.adapters.store.merge import merged
from gaugerod.adapters.store.records import Saved
from gaugerod.adapters.store.store import JobStore


def edit(store: JobStore, job: str, name: str, times: int) -> list[int]:
    """Add one to this editor's own field, ``times`` times, merging when someone was faster. Gives the revisions made."""
    made = []
    for _ in range(times):
        base = store.load(job)
        mine = {"job": {**base.document["job"], name: base.document["job"].get(name, 0) + 1}}
        outcome = store.save(job, mine, by=name, base_rev=base.rev)
        while not isinstance(outcome, Saved):
            together = merged(base.document, mine, outcome.theirs.document)
            assert together.document is not None
            base, mine = outcome.theirs, together.document
            outcome = store.save(job, mine, by=name, base_rev=base.rev)
        made.append(outcome.rev)
    return made


if __name__ == "__main__":
    with JobStore.open(Path(sys.argv[1])) as opened:
        print(*edit(opened, sys.argv[2], sys.argv[3], int(sys.argv[4])))  # noqa: T201 - its only voice
