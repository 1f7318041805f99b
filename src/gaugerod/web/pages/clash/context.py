"""What the page of a clash shows."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ClashField:
    """One field that two people changed differently: where it stands, and both values as written."""

    name: str
    where: str
    mine: str
    theirs: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClashContext:
    """Both changes side by side. ``document`` is the whole of mine, carried along so that nothing typed is lost."""

    theirs_by: str
    fields: tuple[ClashField, ...]
    base_rev: int
    document: str
    go_to: str
    missing: bool = False
    """Was it sent without a choice for every field?"""
