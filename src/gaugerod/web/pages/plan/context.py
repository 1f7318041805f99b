"""What the page of a building shows."""

from dataclasses import dataclass

from markupsafe import Markup

from gaugerod.web.blocks import TableShown
from gaugerod.web.form import FaultShown, Field


@dataclass(frozen=True, slots=True, kw_only=True)
class WallRow:
    """The fields of one wall. The last one closes the outline, so it has no turn."""

    number: int
    length: Field
    turn: Field | None
    angle: Field | None
    stands: Field
    pitch: Field
    apart: tuple[Field, ...]
    """Overhang and eaves height of this wall alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerShown:
    """A corner to be moved: its number, and its place in the drawing."""

    number: int
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WallShown:
    """A wall to be chosen: from where to where in the drawing, what stands on it, and its words beside it."""

    number: int
    stands: str
    x: float
    y: float
    to_x: float
    to_y: float
    says: str
    words_x: float
    words_y: float
    turned_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanShown:
    """The plan on its grid, in units of the drawing; and how those stand to millimetres.

    A place at (x, y) of the drawing is at ``left_mm + x * mm_per_unit``, ``top_mm - y * mm_per_unit`` on plan.
    """

    says: str
    width: float
    height: float
    grid: str
    eaves: str
    hips: str
    ridges: str
    valleys: str
    corners: tuple[CornerShown, ...]
    walls: tuple[WallShown, ...]
    mm_per_unit: float
    left_mm: float
    top_mm: float
    square_m: str
    snap_mm: float
    window: str
    """Where it stands, for the next one to stand in the same place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A verdict with its sentence; ``short`` where there is room for a few words only."""

    verdict: str
    says: str
    short: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskShown:
    """What the roof leaves to a person: the question, the walls it is about, and what can be chosen."""

    question: str
    walls: tuple[int, ...]
    choices: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofShown:
    """The roof that closes over the outline."""

    line: str
    wide: Markup
    pocket: Markup
    slopes: TableShown
    lines: TableShown
    says: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanContext:
    """The form of a building and what answers it."""

    number: int | None
    """Which building of the job, from 1; None: a new one."""
    rev: int
    named: Field
    pitch: tuple[Field, ...]
    walls: tuple[WallRow, ...]
    around: tuple[Field, ...]
    faults: tuple[FaultShown, ...]
    start: str
    way: str
    corners: str
    courtyards: str
    """What is said of courtyards, which are kept as they were written; empty: there are none."""
    plan: PlanShown
    closes: Said | None
    straight: bool
    notes: tuple[str, ...]
    open_faults: tuple[FaultShown, ...]
    """What keeps the outline from being roofed, while it is still being typed."""
    asks: AskShown | None
    cheeks: bool
    roof: RoofShown | None
