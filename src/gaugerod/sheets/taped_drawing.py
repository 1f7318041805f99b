"""A slope as the tape has it so far: its true shape, each length beside the line it was measured along."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope
from gaugerod.setting_out.stations import Opening
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Point, Words
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_labels import opening_letter

_MARGIN_MM = 10.0
_SIZE_MM = 3.6
_OFF_MM = 1.4
"""From a line to the foot of the letters on it."""


def taped_drawing(
    taped: TapedSlope,
    shape: SlopeShape,
    *,
    openings: Sequence[Opening],
    unit: LengthUnit,
    room_width_mm: float,
    room_height_mm: float,
) -> Placed:
    """The slope as large as the room allows, at whatever scale that is: it is read for its numbers, not measured."""
    low, high = bounding_box_mm((*shape.outline_mm, *_corners(openings)))
    wide_mm, high_mm = high[0] - low[0], high[1] - low[1]
    ratio = max(wide_mm / (room_width_mm - 2 * _MARGIN_MM), high_mm / (room_height_mm - 2 * _MARGIN_MM))
    spare_mm = room_width_mm - wide_mm / ratio
    return Placed(
        drawing=Drawing(
            title="The slope as measured, looking square on to it",
            says=_said(taped, openings, unit),
            paths=tuple(_paths(taped, shape, openings)),
            words=(*_tape_words(taped, shape, unit), *_opening_words(openings)),
        ),
        paper=Paper(
            width_mm=room_width_mm,
            height_mm=high_mm / ratio + 2 * _MARGIN_MM,
            scale_ratio=ratio,
            origin_paper_mm=(spare_mm / 2 - low[0] / ratio, _MARGIN_MM - low[1] / ratio),
        ),
    )


def _said(taped: TapedSlope, openings: Sequence[Opening], unit: LengthUnit) -> str:
    parts = [f"In {unit_heading(unit)}: {bare_length(taped.eaves_mm, unit)} along the eaves"]
    parts += [
        f"rafter {bare_length(long, unit)} at {bare_length(at, unit)} from the left" for at, long in taped.rafters
    ]
    named = (
        ("ridge", taped.ridge_mm),
        ("diagonal from the left", taped.diagonal_from_left_mm),
        ("diagonal from the right", taped.diagonal_from_right_mm),
    )
    parts += [f"{name} {bare_length(long, unit)}" for name, long in named if long is not None]
    parts += [f"opening {opening_letter(index)}, {opening.name}" for index, opening in enumerate(openings)]
    return ", ".join(parts) + "."


def _paths(taped: TapedSlope, shape: SlopeShape, openings: Sequence[Opening]) -> Iterator[Path]:
    left, right, top_right, top_left = shape.outline_mm
    yield Path(pen=Pen.SURFACE, runs_mm=(shape.outline_mm,), closed=True)
    diagonals = ((taped.diagonal_from_left_mm, left, top_right), (taped.diagonal_from_right_mm, right, top_left))
    runs = tuple((foot, head) for long, foot, head in diagonals if long is not None)
    if runs:
        yield Path(pen=Pen.DIMENSION, runs_mm=runs)
    between = tuple(_rafter_line(at, long, shape) for at, long in taped.rafters if 0 < at < taped.eaves_mm)
    if between:
        yield Path(pen=Pen.ROD, runs_mm=between)
    if openings:
        yield Path(pen=Pen.OPENING, runs_mm=tuple(_ring(opening) for opening in openings), closed=True)
    yield Path(pen=Pen.OUTLINE, runs_mm=(shape.outline_mm,), closed=True)


def _rafter_line(at_mm: float, long_mm: float, shape: SlopeShape) -> tuple[Point, Point]:
    """From the eaves up, leaning as the left side leans."""
    lean = shape.out_of_square_mm / shape.outline_mm[3][1]
    return (at_mm, 0.0), (at_mm + lean * long_mm, long_mm)


def _tape_words(taped: TapedSlope, shape: SlopeShape, unit: LengthUnit) -> Iterator[Words]:
    left, right, top_right, top_left = shape.outline_mm
    yield _along(left, right, bare_length(taped.eaves_mm, unit), off_mm=-_OFF_MM - 0.8 * _SIZE_MM)
    for number, (at_mm, long_mm) in enumerate(taped.rafters):
        foot, head = _rafter_line(at_mm, long_mm, shape)
        last = number == len(taped.rafters) - 1 and number > 0
        yield _along(foot, head, bare_length(long_mm, unit), off_mm=-_OFF_MM - 0.8 * _SIZE_MM if last else _OFF_MM)
    if taped.ridge_mm is not None:
        yield _along(top_left, top_right, bare_length(taped.ridge_mm, unit), off_mm=_OFF_MM)
    # Diagonals are lettered at a third of their length: in the middle the two would cross.
    if taped.diagonal_from_left_mm is not None:
        yield _along(left, top_right, bare_length(taped.diagonal_from_left_mm, unit), off_mm=_OFF_MM, at_ratio=0.7)
    if taped.diagonal_from_right_mm is not None:
        yield _along(top_left, right, bare_length(taped.diagonal_from_right_mm, unit), off_mm=_OFF_MM, at_ratio=0.3)


def _along(start: Point, end: Point, text: str, *, off_mm: float, at_ratio: float = 0.5) -> Words:
    dx, dy = end[0] - start[0], end[1] - start[1]
    long_mm = (dx * dx + dy * dy) ** 0.5
    return Words(
        at_mm=(start[0] + at_ratio * dx, start[1] + at_ratio * dy),
        text=text,
        letter=Letter.EDGE,
        size_paper_mm=_SIZE_MM,
        anchor=Anchor.MIDDLE,
        shift_paper_mm=(-off_mm * dy / long_mm, off_mm * dx / long_mm),
        turned_deg=atan2_deg(dy, dx),
    )


def _opening_words(openings: Sequence[Opening]) -> Iterator[Words]:
    for index, opening in enumerate(openings):
        yield Words(
            at_mm=(opening.from_left_mm + opening.width_mm / 2, opening.up_slope_mm + opening.height_mm / 2),
            text=opening_letter(index),
            letter=Letter.KEY,
            size_paper_mm=_SIZE_MM,
            anchor=Anchor.MIDDLE,
            shift_paper_mm=(0.0, -0.36 * _SIZE_MM),
        )


def _ring(opening: Opening) -> tuple[Point, ...]:
    left, right, low, high = opening.from_left_mm, opening.right_mm, opening.up_slope_mm, opening.head_mm
    return ((left, low), (right, low), (right, high), (left, high))


def _corners(openings: Sequence[Opening]) -> Iterator[Point]:
    for opening in openings:
        yield from _ring(opening)
