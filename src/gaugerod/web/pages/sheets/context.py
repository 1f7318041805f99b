"""What the page of the sheets shows."""

from dataclasses import dataclass

from gaugerod.web.form import Choice
from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    """One file: what it is, its kind, where it is, and the slope it is of (empty: the whole job)."""

    says: str
    kind: str
    href: str
    of: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsContext:
    """The files, the paper they are made for, and the link to share."""

    downloads: tuple[Download, ...]
    papers: tuple[Choice, ...]
    paper: str
    lacks: tuple[Lack, ...]
    link: str
    """A link just made: it is shown once, only its hash is kept."""
    only_here: bool
    """Does that link name this machine as only it knows itself? On any other it leads nowhere."""
    revoked_count: int | None
    """How many links were just taken back."""
