"""Every error this package raises on purpose, on one page.

GaugerodError
├── InputRefused      the input cannot be used; carries every fault found, not just the first
├── TableDamaged      a shipped table fails its own seal; carries the table and what is wrong
└── NothingToSetOut   a stage was asked for something it cannot do; carries the reason in plain words
"""

from collections.abc import Sequence
from dataclasses import dataclass


class GaugerodError(Exception):
    """The root: catch this to catch all of ours and nothing else."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with an input, said so that a person can mend it.

    ``field`` is the path of the field (``slope[0].pitch``), ``given`` the value as it was written,
    ``allowed`` what would be accepted, ``do`` what to do about it.
    """

    field: str
    given: str
    allowed: str
    do: str

    def __str__(self) -> str:
        return f"{self.field}: {self.given!r} will not do; allowed: {self.allowed}. {self.do}"


class InputRefused(GaugerodError):
    """The input cannot be used. ``faults`` holds everything that is wrong with it."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class TableDamaged(GaugerodError):
    """A shipped table does not match its seal, or its description is incomplete."""

    def __init__(self, table: str, wrong: str) -> None:
        self.table = table
        self.wrong = wrong
        super().__init__(f"table {table}: {wrong}")


class NothingToSetOut(GaugerodError):
    """There is no answer for this input, for the reason given."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        super().__init__(reason)
