"""What the hand-over record says besides what was worked out: who, where, and what was accepted. Free text."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Deviation:
    """Something that was accepted though a rule asks for more, or reaches no further; by whom.

    ``rule`` and ``where`` as the finding names them; empty: of no one finding. ``on`` the day, as it is written.
    """

    what: str
    accepted_by: str
    rule: str = ""
    where: str = ""
    on: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordWished:
    """What is written into the record. Empty: a line to fill in by hand."""

    site: str = ""
    laid_by: str = ""
    measured_by: str = ""
    handed_to: str = ""
    deviations: tuple[Deviation, ...] = ()
