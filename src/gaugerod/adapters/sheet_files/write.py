"""Writes the files of a result, or of a roof check, into a folder."""

from collections.abc import Iterable
from concurrent.futures import ThreadPoolExecutor
from datetime import datetime
from pathlib import Path

from gaugerod.adapters.sheet_files.files import sheet_files
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.result import Result

AT_A_TIME_COUNT = 2
"""More would hold more sheets in memory at once."""


def write_sheet_files(result: Result, *, folder: Path, paper: str, made_at: datetime) -> list[tuple[Path, str]]:
    """Write them all; gives each path with what it is. Files of the same names are replaced."""
    return write_files(sheet_files(result, paper=paper, made_at=made_at), folder=folder)


def write_files(files: Iterable[SheetFile], *, folder: Path) -> list[tuple[Path, str]]:
    """Write these files; gives each path with what it is. Files of the same names are replaced.

    Two are made at a time: the typesetter works outside the interpreter's lock, while the next sheet is drawn.
    """
    folder.mkdir(parents=True, exist_ok=True)

    def written(file: SheetFile) -> tuple[Path, str]:
        path = folder / file.name
        path.write_bytes(file.make())
        return path, file.says

    with ThreadPoolExecutor(max_workers=AT_A_TIME_COUNT) as makers:
        return list(makers.map(written, files))
