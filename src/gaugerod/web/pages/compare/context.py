"""What the comparison of two saves shows."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkRow:
    """One mark before and after; a dash where there is none."""

    mark: str
    before: str
    after: str
    moved: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RodRows:
    """The marks of one rod that moved."""

    title: str
    rows: tuple[MarkRow, ...]
    still_count: int
    """How many marks of it did not move."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CompareContext:
    """Two saves side by side: what was typed differently, and which marks moved by it."""

    before: int
    after: int
    typed: tuple[MarkRow, ...]
    rods: tuple[RodRows, ...]
    says: str
    """Why marks cannot be compared, or that none moved; empty when some did."""
