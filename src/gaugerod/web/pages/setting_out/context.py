"""What the setting-out page shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.sheets.sheet import Figure
from gaugerod.web.blocks import PartShown
from gaugerod.web.form import Choice, FaultShown, Field
from gaugerod.web.job_answer import Lack


@dataclass(frozen=True, slots=True, kw_only=True)
class Slider:
    """One wish that can be moved: where it stands now, how far it goes, and whether it is held there.

    ``at_mm`` is what the answer has now; ``free_says`` how it is found while it is not held.
    """

    name: str
    label: str
    at_mm: float
    least_mm: float
    greatest_mm: float
    shown: str
    held: bool
    free_says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeLink:
    """Another slope of the job."""

    name: str
    href: str
    here: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Outside:
    """Something outside a rule, in words."""

    rule: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What could change, what it costs, and whether every limit is kept."""

    change: str
    costs: str
    keeps_limits: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeShown:
    """One slope set out: figures, drawings and tables."""

    name: str
    line: str
    figures: tuple[Figure, ...]
    why: str
    wide: Markup
    pocket: Markup
    every_unit: Markup
    """The slope with every unit on it; empty where the cover width is not known."""
    parts: tuple[PartShown, ...]
    method: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofAround:
    """The roof that the slope is a part of: its plan with every slope numbered, and how they are coursed together."""

    name: str
    wide: Markup
    pocket: Markup
    corners: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingOutContext:
    """The answer, or what is still to be done for it."""

    slopes: tuple[SlopeLink, ...]
    slope: SlopeShown | None
    roof: RoofAround | None
    """None for a slope that stands by itself."""
    not_set_out: str
    """Why this slope could not be set out; empty when it was."""
    sliders: tuple[Slider, ...]
    stated: tuple[Field, ...]
    """Wishes in figures; none before there is a covering and something to cover."""
    bonds: tuple[Choice, ...]
    bond: str
    outside: tuple[Outside, ...]
    open_count: int
    """How many findings no rule covers."""
    changes: tuple[Change, ...]
    lacks: tuple[Lack, ...]
    faults: tuple[FaultShown, ...]
    moved: bool
    """Does the page show wishes that are not saved?"""
    more_asked: bool
    """Is something asked that follows the marks? It is answered on its own page, and not counted here."""
    rev: int
