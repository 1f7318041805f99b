"""What the page of one slope shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.web.form import FaultShown, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """What the tape figures say of each other: the verdict and the sentence."""

    verdict: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Taped:
    """The slope as far as it is measured: its drawing, and what can be said of it already."""

    drawing: Markup
    says: tuple[str, ...]
    checks: tuple[Check, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningFields:
    """The fields of one opening, and the letter it goes by."""

    letter: str
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeContext:
    """The form, by groups, and the drawing that answers it."""

    number: int | None
    """Which slope of the job, from 1; None: a new one."""
    rev: int
    named: tuple[Field, ...]
    pitch: tuple[Field, ...]
    edges: tuple[Field, ...]
    tape: tuple[Field, ...]
    rafters: tuple[tuple[Field, Field], ...]
    square: tuple[Field, ...]
    openings: tuple[OpeningFields, ...]
    by_outline: bool
    """Was the slope given by its outline? Then only its name and pitch are changed here."""
    faults: tuple[FaultShown, ...]
    taped: Taped | None
    """None as long as there is nothing to draw."""
    unread: tuple[str, ...] = ()
    """What was typed and cannot be drawn, a sentence each."""
