"""``gaugerod import FILE``: an export, or a job file, taken in as new kept jobs."""

import argparse
from pathlib import Path

from gaugerod.wiring import store_path, take_into_store


def run(given: argparse.Namespace) -> int:
    """Take it in; faults are raised all together, and then nothing was taken in."""
    imported = take_into_store(store_path(given.data), file=Path(given.file), by=given.by)
    for each in imported:
        state = "; a draft: it does not pass yet, mend it before it is set out" if each.draft else ""
        print(f"Taken in: {each.title or 'no title'} ({each.job}); revisions: {each.revisions_count}{state}")
    if not imported:
        print("There is no job in it.")
    return 0
