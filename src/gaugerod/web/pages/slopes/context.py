"""What the list of slopes shows."""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """A slope or a building of the job: what it is called, its figures as typed, and where it is changed."""

    name: str
    figures: str
    href: str
    faults_count: int
    drawing: Markup
    """As far as it was taped, or the roof over the outline; empty when there is nothing to draw."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopesContext:
    """Slopes by tape or outline, and buildings on plan."""

    slopes: tuple[PartRow, ...]
    buildings: tuple[PartRow, ...]
