"""Colours and weights of drawings. Weights are in paper mm."""

from collections.abc import Mapping
from dataclasses import dataclass

from gaugerod.sheets.drawing import Pen


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """How a pen draws: colour, weight and dashes in paper mm, and what it fills with."""

    colour: str
    weight_mm: float
    dashes_mm: tuple[float, ...] = ()
    fill: str = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """One look of a drawing. ``ink`` letters on ``paper``; every pen its stroke."""

    ink: str
    paper: str
    strokes: Mapping[Pen, Stroke]


INK = "#111"
GREY = "#555"
PAPER = "#fff"

INK_ON_PAPER = Theme(
    ink=INK,
    paper=PAPER,
    strokes={
        Pen.SURFACE: Stroke(colour="none", weight_mm=0.0, fill="#f3f3f1"),
        Pen.OUTLINE: Stroke(colour=INK, weight_mm=0.55),
        Pen.OVERHANG: Stroke(colour=INK, weight_mm=0.2, dashes_mm=(1.6, 0.8)),
        Pen.BATTEN: Stroke(colour=INK, weight_mm=0.16),
        Pen.FIFTH_BATTEN: Stroke(colour=INK, weight_mm=0.4),
        Pen.PERP: Stroke(colour="#888", weight_mm=0.12),
        Pen.OPENING: Stroke(colour=INK, weight_mm=0.5, fill=PAPER),
        Pen.ROD: Stroke(colour=INK, weight_mm=0.25, dashes_mm=(3.0, 0.7, 0.5, 0.7)),
        Pen.UNIT: Stroke(colour=INK, weight_mm=0.3, fill="#e4e4e0"),
        Pen.SECTION_BATTEN: Stroke(colour=INK, weight_mm=0.3, fill="#999"),
        Pen.RULER: Stroke(colour=INK, weight_mm=0.2),
        Pen.MARK: Stroke(colour=INK, weight_mm=0.3),
        Pen.TIMBER: Stroke(colour=INK, weight_mm=0.3, fill=PAPER),
        Pen.DIMENSION: Stroke(colour=GREY, weight_mm=0.14),
        Pen.LEADER: Stroke(colour=GREY, weight_mm=0.14),
        Pen.CUT: Stroke(colour=INK, weight_mm=0.7),
        Pen.CUT_UNIT: Stroke(colour=INK, weight_mm=0.14, fill="#d2d2cd"),
        Pen.HIP: Stroke(colour=INK, weight_mm=0.5),
        Pen.VALLEY: Stroke(colour=INK, weight_mm=0.5, dashes_mm=(2.4, 1.0)),
        Pen.RIDGE: Stroke(colour=INK, weight_mm=0.9),
        Pen.RAFTER: Stroke(colour="#888", weight_mm=0.12),
        Pen.JOINT: Stroke(colour=INK, weight_mm=0.2, fill=INK),
        Pen.STRIP: Stroke(colour=INK, weight_mm=0.3, dashes_mm=(0.9, 0.6)),
        Pen.HATCH: Stroke(colour=INK, weight_mm=0.1),
        Pen.FIELD: Stroke(colour=INK, weight_mm=0.5, fill=PAPER),
        Pen.PERIMETER: Stroke(colour=INK, weight_mm=0.2, fill="#dcdcd7"),
        Pen.NAILED: Stroke(colour=INK, weight_mm=0.3, fill="#c9c9c4"),
    },
)
"""For print: black, greys that survive a photocopier, and weights that tell the lines apart without colour."""

CHALK = "#f1f0e6"
FAINT_CHALK = "#aeb6b4"
SLATE = "#1d2427"
LINE_BLUE = "#8cc8f2"
LINE_YELLOW = "#f4c95d"

CHALK_ON_SLATE = Theme(
    ink=CHALK,
    paper=SLATE,
    strokes={
        Pen.SURFACE: Stroke(colour="none", weight_mm=0.0, fill="#283135"),
        Pen.OUTLINE: Stroke(colour=CHALK, weight_mm=0.6),
        Pen.OVERHANG: Stroke(colour=CHALK, weight_mm=0.22, dashes_mm=(1.6, 0.8)),
        Pen.BATTEN: Stroke(colour=CHALK, weight_mm=0.18),
        Pen.FIFTH_BATTEN: Stroke(colour=LINE_YELLOW, weight_mm=0.45),
        Pen.PERP: Stroke(colour=LINE_BLUE, weight_mm=0.16),
        Pen.OPENING: Stroke(colour=CHALK, weight_mm=0.5, fill=SLATE),
        Pen.ROD: Stroke(colour=LINE_YELLOW, weight_mm=0.28, dashes_mm=(3.0, 0.7, 0.5, 0.7)),
        Pen.UNIT: Stroke(colour=CHALK, weight_mm=0.3, fill="#3a464b"),
        Pen.SECTION_BATTEN: Stroke(colour=CHALK, weight_mm=0.3, fill="#7d8a8e"),
        Pen.RULER: Stroke(colour=CHALK, weight_mm=0.2),
        Pen.MARK: Stroke(colour=CHALK, weight_mm=0.3),
        Pen.TIMBER: Stroke(colour=CHALK, weight_mm=0.3, fill=SLATE),
        Pen.DIMENSION: Stroke(colour=FAINT_CHALK, weight_mm=0.16),
        Pen.LEADER: Stroke(colour=FAINT_CHALK, weight_mm=0.16),
        Pen.CUT: Stroke(colour=CHALK, weight_mm=0.7),
        Pen.CUT_UNIT: Stroke(colour=CHALK, weight_mm=0.16, fill="#4d5b61"),
        Pen.HIP: Stroke(colour=CHALK, weight_mm=0.5),
        Pen.VALLEY: Stroke(colour=LINE_BLUE, weight_mm=0.5, dashes_mm=(2.4, 1.0)),
        Pen.RIDGE: Stroke(colour=LINE_YELLOW, weight_mm=0.9),
        Pen.RAFTER: Stroke(colour=LINE_BLUE, weight_mm=0.14),
        Pen.JOINT: Stroke(colour=LINE_YELLOW, weight_mm=0.2, fill=LINE_YELLOW),
        Pen.STRIP: Stroke(colour=LINE_BLUE, weight_mm=0.3, dashes_mm=(0.9, 0.6)),
        Pen.HATCH: Stroke(colour=CHALK, weight_mm=0.12),
        Pen.FIELD: Stroke(colour=CHALK, weight_mm=0.5, fill=SLATE),
        Pen.PERIMETER: Stroke(colour=CHALK, weight_mm=0.2, fill="#3f4c52"),
        Pen.NAILED: Stroke(colour=LINE_YELLOW, weight_mm=0.3, fill="#4d5b61"),
    },
)
"""For the screen by night. Yellow and blue stay apart for every kind of colour sight, and weight and dashes say the same again."""
