"""The true shape of a taped slope, and what is wrong when the tape contradicts itself."""

from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from gaugerod.basis.finding import Verdict
from gaugerod.geometry.four_corners import third_corner_mm
from gaugerod.geometry.tape_contradictions import Point, closing_findings, ridge_straight_findings
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope


def true_shape(taped: TapedSlope, *, where: str) -> SlopeShape:
    """The outline from the tape, with a finding for every contradiction.

    Without diagonals the sides are taken as square to the eaves. One diagonal settles its own side; the other side
    follows from the ridge where that was measured. Where the figures cannot close, the square outline is
    used and the finding says so.

    >>> shape = true_shape(TapedSlope(eaves_mm=6000.0, rafters=((0.0, 4000.0), (6000.0, 4000.0))), where="rear")
    >>> shape.area_mm2, shape.out_of_parallel_mm
    (24000000.0, 0.0)
    """
    left_mm, right_mm = end_rafters_mm(taped)
    square = _Top(left=(0.0, left_mm), right=(taped.eaves_mm, right_mm))
    top = _top_corners(taped, left_mm=left_mm, right_mm=right_mm, square=square)
    closing = closing_findings(
        taped,
        left_mm=left_mm,
        right_mm=right_mm,
        ridge_drawn_mm=None if top is None else top.ridge_mm,
        where=where,
    )
    if top is None or any(finding.verdict is Verdict.OUTSIDE for finding in closing):
        top = square
    outline = ((0.0, 0.0), (taped.eaves_mm, 0.0), top.right, top.left)
    return SlopeShape(
        outline_mm=outline,
        out_of_square_mm=top.left[0],
        out_of_parallel_mm=right_mm - left_mm,
        area_mm2=_area_mm2(outline),
        findings=(*ridge_straight_findings(taped, where=where), *closing),
    )


def end_rafters_mm(taped: TapedSlope) -> tuple[float, float]:
    """Rafter length at the left and right end: as measured, or along the line through the outermost stations."""
    (first_at, first), (last_at, last) = taped.rafters[0], taped.rafters[-1]
    if last_at == first_at:
        return first, first
    rise = (last - first) / (last_at - first_at)
    return first - rise * first_at, last + rise * (taped.eaves_mm - last_at)


@dataclass(frozen=True, slots=True)
class _Top:
    """The two top corners."""

    left: Point
    right: Point

    @property
    def ridge_mm(self) -> float:
        return hypot(self.right[0] - self.left[0], self.right[1] - self.left[1])


def _top_corners(taped: TapedSlope, *, left_mm: float, right_mm: float, square: _Top) -> _Top | None:
    """The top corners from the diagonals; square up where there are none; None when the lengths cannot meet."""
    eaves, from_left, from_right = taped.eaves_mm, taped.diagonal_from_left_mm, taped.diagonal_from_right_mm
    if from_left is None and from_right is None:
        return square
    right = left = None
    if from_left is not None:
        right = third_corner_mm(base_mm=eaves, from_start_mm=from_left, from_end_mm=right_mm)
    if from_right is not None:
        left = third_corner_mm(base_mm=eaves, from_start_mm=left_mm, from_end_mm=from_right)
    if from_right is None and right is not None:
        left = _beside(right, pivot=(0.0, 0.0), length_mm=left_mm, ridge_mm=taped.ridge_mm, square=square.left)
    if from_left is None and left is not None:
        right = _beside(left, pivot=(eaves, 0.0), length_mm=right_mm, ridge_mm=taped.ridge_mm, square=square.right)
    return None if left is None or right is None else _Top(left, right)


def _beside(
    known: Point,
    *,
    pivot: Point,
    length_mm: float,
    ridge_mm: float | None,
    square: Point,
) -> Point | None:
    """The other top corner: at the end of its rafter and of the ridge, or square up where no ridge was measured."""
    if ridge_mm is None:
        return square
    across, up = known[0] - pivot[0], known[1] - pivot[1]
    base_mm = hypot(across, up)
    corner = third_corner_mm(base_mm=base_mm, from_start_mm=length_mm, from_end_mm=ridge_mm)
    if corner is None:
        return None
    along, off = corner
    side = 1.0 if across > 0 else -1.0
    unit = (across / base_mm, up / base_mm)
    return (
        pivot[0] + along * unit[0] - side * off * unit[1],
        pivot[1] + along * unit[1] + side * off * unit[0],
    )


def _area_mm2(outline: tuple[Point, ...]) -> float:
    return sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise((*outline, outline[0]))) / 2
