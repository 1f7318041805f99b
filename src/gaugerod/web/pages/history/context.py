"""What the history of a job shows."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class SaveRow:
    """One save."""

    rev: int
    at: datetime
    by: str
    version: str
    draft: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class HistoryContext:
    """Every save, the last first."""

    saves: tuple[SaveRow, ...]
