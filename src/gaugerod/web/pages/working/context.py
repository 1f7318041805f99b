"""What the page of the working shows."""

from dataclasses import dataclass

from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class StepShown:
    """One number, how it was come by, and the steps it stands on."""

    name: str
    value: str
    formula: str
    inputs: tuple[str, ...]
    source: str
    parts: "tuple[StepShown, ...]"


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingContext:
    """The tree; None while the job lacks something."""

    working: StepShown | None
    lacks: tuple[Lack, ...]
