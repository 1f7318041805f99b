"""Every error this package raises on purpose, on one page.

GaugerodError
├── InputRefused      the input cannot be used; carries every fault found, not just the first
├── LengthUnclear     a text is not a length, or could be two; carries the text and what to write instead
├── PitchUnclear      a text is not a pitch, or could be two; carries the text and what to write instead
├── TableDamaged      a shipped table fails its own seal; carries the table and what is wrong
├── StoreUnusable     the kept jobs cannot be read or written; carries the file, why, and what to do
├── NotKept           a job or revision asked for is not among the kept ones; carries which
└── NothingToSetOut   a stage was asked for something it cannot do; carries the reason in plain words
    ├── RoofWillNotClose  no roof closes over this outline; carries the place on plan
    └── RoofAsks          the outline leaves a choice to a person; carries the place and the choices
"""

# ruff: noqa: N818  an error is named for what happened, in words that read well in a report

from collections.abc import Sequence
from dataclasses import dataclass


class GaugerodError(Exception):
    """The root: catch this to catch all of ours and nothing else."""


NOT_GIVEN = frozenset({"nothing", "none", "neither"})
"""What stands for ``given`` where nothing was written."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with an input, said so that a person can mend it.

    ``field`` is the path of the field (``slope[0].pitch``), ``given`` the value as it was written,
    ``allowed`` what would be accepted, ``do`` what to do about it.

    >>> print(Fault("slope[0].pitch", "95°", "under 90°", "Measure it again."))
    slope[0].pitch: '95°' will not do; allowed: under 90°. Measure it again.
    >>> print(Fault("slope[0].pitch", "nothing", "a pitch, like 35°", "This is needed. Add it."))
    slope[0].pitch: not given; wanted: a pitch, like 35°. This is needed. Add it.
    """

    field: str
    given: str
    allowed: str
    do: str

    def __str__(self) -> str:
        allowed = self.allowed.removesuffix(".")
        if self.given in NOT_GIVEN:
            return f"{self.field}: not given; wanted: {allowed}. {self.do}"
        return f"{self.field}: {self.given!r} will not do; allowed: {allowed}. {self.do}"


class InputRefused(GaugerodError):
    """The input cannot be used. ``faults`` holds everything that is wrong with it."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class LengthUnclear(GaugerodError):
    """The text is not a length, or could be two different ones. ``reason`` says what to write instead."""

    def __init__(self, text: str, reason: str) -> None:
        self.text = text
        self.reason = reason
        super().__init__(f"{text!r} {reason}")


class PitchUnclear(GaugerodError):
    """The text is not a pitch, or could be two different ones. ``reason`` says what to write instead."""

    def __init__(self, text: str, reason: str) -> None:
        self.text = text
        self.reason = reason
        super().__init__(f"{text!r} {reason}")


class TableDamaged(GaugerodError):
    """A shipped table does not match its seal, or its description is incomplete."""

    def __init__(self, table: str, wrong: str) -> None:
        self.table = table
        self.wrong = wrong
        super().__init__(f"table {table}: {wrong}")


class StoreUnusable(GaugerodError):
    """The kept jobs cannot be read or written. Nothing kept before is lost by it. ``file``, ``why``, and what to ``do``."""

    def __init__(self, *, file: str, why: str, do: str) -> None:
        self.file = file
        self.why = why
        self.do = do
        super().__init__(f"{file}: {why} {do}")


class NotKept(GaugerodError):
    """There is no such job, or no such revision of it, among the kept ones. ``what`` was asked for."""

    def __init__(self, what: str) -> None:
        self.what = what
        super().__init__(f"There is no {what}.")


class NothingToSetOut(GaugerodError):
    """There is no answer for this input, for the reason given."""

    def __init__(self, reason: str) -> None:
        self.reason = reason
        super().__init__(reason)


class RoofWillNotClose(NothingToSetOut):
    """No roof could be closed over the outline. ``where_mm`` is the place on plan where it stays open, ``why`` the bare cause."""

    def __init__(self, *, where_mm: tuple[float, float], why: str) -> None:
        self.where_mm = where_mm
        self.why = why
        x_mm, y_mm = where_mm
        super().__init__(f"the roof does not close near ({x_mm:.0f}, {y_mm:.0f}) on plan: {why}")


class RoofAsks(NothingToSetOut):
    """The outline can be roofed in more than one way. ``where_mm`` is the place on plan, ``choices`` what to choose from."""

    def __init__(self, *, where_mm: tuple[float, float], question: str, choices: tuple[str, ...]) -> None:
        self.where_mm = where_mm
        self.question = question
        self.choices = choices
        x_mm, y_mm = where_mm
        super().__init__(f"near ({x_mm:.0f}, {y_mm:.0f}) on plan: {question} Choose: {'; or '.join(choices)}.")
