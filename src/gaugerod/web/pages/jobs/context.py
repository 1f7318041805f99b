"""What the list of jobs shows."""

from dataclasses import dataclass
from datetime import datetime

from gaugerod.web.form import FaultShown


@dataclass(frozen=True, slots=True, kw_only=True)
class JobRow:
    """One job of the list."""

    id: str
    title: str
    rev: int
    at: datetime
    by: str
    """Empty where the browser had no name."""
    draft: bool
    example: bool
    """Is it the example of the very first start, as it came?"""
    namesake: bool
    """Does another job of this list have the same title?"""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobsContext:
    """The jobs at hand, and how many are put away."""

    jobs: tuple[JobRow, ...]
    archived: bool
    """Are these the jobs put away?"""
    put_away_count: int
    faults: tuple[FaultShown, ...] = ()
