"""A drawing is data: paths, words and dimensions in model millimetres, y up. Paper (size, scale) is separate.

Sizes that belong to the paper and not to the roof (letters, tick marks, how far a label stands off) are in
paper millimetres and say so: ``_paper_mm``.
"""

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]
"""x to the right, y up, in model mm."""


class Pen(StrEnum):
    """What a line stands for. Writers choose weight and colour by it."""

    SURFACE = "surface"
    OUTLINE = "outline"
    OVERHANG = "overhang"
    BATTEN = "batten"
    FIFTH_BATTEN = "fifth-batten"
    PERP = "perp"
    OPENING = "opening"
    ROD = "rod"
    UNIT = "unit"
    SECTION_BATTEN = "section-batten"
    RULER = "ruler"
    MARK = "mark"
    TIMBER = "timber"
    DIMENSION = "dimension"
    LEADER = "leader"
    CUT = "cut"
    CUT_UNIT = "cut-unit"
    HIP = "hip"
    VALLEY = "valley"
    RIDGE = "ridge"
    RAFTER = "rafter"
    JOINT = "joint"
    STRIP = "strip"
    HATCH = "hatch"
    FIELD = "field"
    PERIMETER = "perimeter"
    NAILED = "nailed"


class Letter(StrEnum):
    """What words stand for. Writers choose face and weight by it; the size goes with the words."""

    NAME = "name"
    EDGE = "edge"
    VALUE = "value"
    KEY = "key"
    DIMENSION = "words"


class Anchor(StrEnum):
    """Which part of the words stands on the point."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """One or many rings or lines drawn with one pen; ``closed`` joins each last point to its first."""

    pen: Pen
    runs_mm: tuple[tuple[Point, ...], ...]
    closed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Words at a model point, moved off it by ``shift_paper_mm`` (right, up).

    ``size_paper_mm`` is the height of the letters' em; ``turned_deg`` is counter-clockwise.
    """

    at_mm: Point
    text: str
    letter: Letter
    size_paper_mm: float
    anchor: Anchor = Anchor.START
    shift_paper_mm: tuple[float, float] = (0.0, 0.0)
    turned_deg: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Leader:
    """A thin line from one model point to another, each moved off by a shift in paper mm."""

    pen: Pen
    points_mm: tuple[Point, ...]
    shifts_paper_mm: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Everything drawn. ``says`` tells in words what the picture shows, for a reader who cannot see it."""

    title: str
    says: str
    paths: tuple[Path, ...]
    words: tuple[Words, ...]
    leaders: tuple[Leader, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """The piece of paper a drawing goes on.

    ``scale_ratio``  1 over how many: 50 for 1:50
    ``origin_paper_mm``  where the model's (0, 0) stands, from the paper's lower left corner
    """

    width_mm: float
    height_mm: float
    scale_ratio: float
    origin_paper_mm: Point


STANDARD_SCALES = (1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 500, 1000, 2000)
"""The scales a drawing may be at; 1:75, 1:125 and 1:150 fill a sheet where the usual ones would waste it."""


def largest_scale_ratio(*, model_width_mm: float, model_height_mm: float, width_mm: float, height_mm: float) -> int:
    """The largest standard scale at which the model fits the room on the paper.

    >>> largest_scale_ratio(model_width_mm=7460, model_height_mm=4905, width_mm=160, height_mm=110)
    50
    """
    for ratio in STANDARD_SCALES:
        if model_width_mm <= ratio * width_mm and model_height_mm <= ratio * height_mm:
            return ratio
    return STANDARD_SCALES[-1]
