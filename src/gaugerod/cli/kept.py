"""The kept jobs as commands reach them: a command that only reads makes no empty store."""

import argparse
from pathlib import Path

from gaugerod.basis.errors import StoreUnusable
from gaugerod.wiring import store_path


def kept_file(given: argparse.Namespace) -> Path:
    """The file of the kept jobs. Raises StoreUnusable when there is none yet."""
    path = store_path(given.data)
    if not path.exists():
        raise StoreUnusable(
            file=str(path),
            why="There are no kept jobs here yet.",
            do="Name their folder with --data, or take a job in with: gaugerod import FILE",
        )
    return path
