"""What the page of the test lay shows."""

from dataclasses import dataclass

from gaugerod.web.form import FaultShown, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class LayStep:
    """One step of the test lay: what to do, and the figures it gives."""

    title: str
    says: str
    fields: tuple[Field, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One figure that follows from the lay."""

    label: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TestLayContext:
    """The steps, what was found so far, and what each missing figure prevents."""

    steps: tuple[LayStep, ...]
    found: tuple[Found, ...]
    says: tuple[str, ...]
    missing: tuple[str, ...]
    faults: tuple[FaultShown, ...]
    rev: int
