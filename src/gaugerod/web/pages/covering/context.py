"""What the page of the covering shows."""

from dataclasses import dataclass

from gaugerod.web.form import FaultShown, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveringChoice:
    """One record to choose."""

    name: str
    title: str
    figures: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveringGroup:
    """Records of one family. ``opened`` when the chosen one is among them."""

    title: str
    choices: tuple[CoveringChoice, ...]
    opened: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CoveringContext:
    """The records, the chosen one, and its figures to be put right."""

    groups: tuple[CoveringGroup, ...]
    chosen: str
    chosen_title: str
    chosen_says: str
    figures: tuple[Field, ...]
    heaps: tuple[tuple[Field, ...], ...]
    faults: tuple[FaultShown, ...]
    rev: int
