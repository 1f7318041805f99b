"""Writes the files of a result, or of a roof check, into a folder."""

from collections.abc import Iterable
from datetime import datetime
from pathlib import Path

from gaugerod.adapters.sheet_files.files import sheet_files
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.result import Result


def write_sheet_files(result: Result, *, folder: Path, paper: str, made_at: datetime) -> list[tuple[Path, str]]:
    """Write them all; gives each path with what it is. Files of the same names are replaced."""
    return write_files(sheet_files(result, paper=paper, made_at=made_at), folder=folder)


def write_files(files: Iterable[SheetFile], *, folder: Path) -> list[tuple[Path, str]]:
    """Write these files; gives each path with what it is. Files of the same names are replaced."""
    folder.mkdir(parents=True, exist_ok=True)
    written: list[tuple[Path, str]] = []
    for file in files:
        path = folder / file.name
        path.write_bytes(file.make())
        written.append((path, file.says))
    return written
