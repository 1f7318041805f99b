"""What the page of the site shows."""

from dataclasses import dataclass

from gaugerod.web.form import FaultShown, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteContext:
    """Title, exposure and units, and the revision they stand in."""

    fields: tuple[Field, ...]
    faults: tuple[FaultShown, ...]
    rev: int
