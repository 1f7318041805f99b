"""What the page of the sheets shows."""

from dataclasses import dataclass

from gaugerod.web.form import Choice
from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    """One file: what it is, its kind, and where it is."""

    says: str
    kind: str
    href: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsContext:
    """The files, the paper they are made for, and the link to share."""

    downloads: tuple[Download, ...]
    papers: tuple[Choice, ...]
    paper: str
    lacks: tuple[Lack, ...]
    link: str
    """A link just made: it is shown once, only its hash is kept."""
    revoked_count: int | None
    """How many links were just taken back."""
