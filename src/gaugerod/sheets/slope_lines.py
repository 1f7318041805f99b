"""The lines of a slope drawing in model mm: covering, battens, perps, rods and openings, clipped to the slope."""

from collections.abc import Sequence
from itertools import pairwise

from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.drawing import Path, Pen, Point

Line = tuple[Point, Point]


def covered_outline_mm(slope: SlopeResult) -> tuple[Point, ...]:
    """Where the covering ends: out to the tails and overhangs. The roof structure's own outline where no unit is laid."""
    return slope.shape.outline_mm if slope.laid is None else slope.laid.ask.outline.points_mm


def slope_extent_mm(slope: SlopeResult) -> tuple[Point, Point]:
    """Least and greatest corner of all that is drawn of the slope itself, the tail line included."""
    tail: Point = (0.0, -slope.courses.overhang_mm)
    return bounding_box_mm((*covered_outline_mm(slope), *slope.shape.outline_mm, tail))


def slope_paths(slope: SlopeResult) -> tuple[Path, ...]:
    """Every line of the slope, in the order they are drawn over each other."""
    outline, covered = slope.shape.outline_mm, covered_outline_mm(slope)
    battens = [_batten_lines(slope, index) for index in range(max(len(rod.marks_mm) for rod in slope.courses.rods))]
    paths = (
        Path(pen=Pen.SURFACE, runs_mm=(covered,), closed=True),
        Path(pen=Pen.PERP, runs_mm=_perp_lines(slope)),
        Path(pen=Pen.BATTEN, runs_mm=_joined(battens, fifths=False)),
        Path(pen=Pen.FIFTH_BATTEN, runs_mm=_joined(battens, fifths=True)),
        Path(pen=Pen.ROD, runs_mm=tuple(((rod.at_mm, 0.0), (rod.at_mm, rod.length_mm)) for rod in slope.courses.rods)),
        Path(pen=Pen.OPENING, runs_mm=opening_rings(slope), closed=True),
        Path(pen=Pen.OVERHANG, runs_mm=(covered,), closed=True),
        Path(pen=Pen.OUTLINE, runs_mm=(outline,), closed=True),
    )
    return tuple(path for path in paths if path.runs_mm)


def batten_lines(slope: SlopeResult) -> tuple[Line, ...]:
    """Every batten through its marks, from side to side of the roof structure."""
    count = max(len(rod.marks_mm) for rod in slope.courses.rods)
    return tuple(line for index in range(count) for line in _batten_lines(slope, index))


def _joined(battens: list[tuple[Line, ...]], *, fifths: bool) -> tuple[Line, ...]:
    return tuple(line for number, lines in enumerate(battens, start=1) if (number % 5 == 0) is fifths for line in lines)


def _batten_lines(slope: SlopeResult, index: int) -> tuple[Line, ...]:
    """One batten through its mark on every rod, run out straight to the sides of the roof structure."""
    on_rods = [(rod.at_mm, rod.marks_mm[index]) for rod in slope.courses.rods if index < len(rod.marks_mm)]
    (low_x, _), (high_x, _) = bounding_box_mm(slope.shape.outline_mm)
    if len(on_rods) == 1:
        corners = [(low_x, on_rods[0][1]), (high_x, on_rods[0][1])]
    else:
        corners = [
            _run_out(on_rods[0], on_rods[1], min(low_x, on_rods[0][0])),
            *on_rods[1:-1],
            _run_out(on_rods[-1], on_rods[-2], max(high_x, on_rods[-1][0])),
        ]
    return tuple(part for start, end in pairwise(corners) for part in inside_parts(start, end, slope.shape.outline_mm))


def _run_out(near: Point, far: Point, x_mm: float) -> Point:
    """Where the line through two rod marks stands at x."""
    return (x_mm, near[1] + (near[1] - far[1]) / (near[0] - far[0]) * (x_mm - near[0]))


def _perp_lines(slope: SlopeResult) -> tuple[Line, ...]:
    if slope.across is None or not slope.across.perp_lines:
        return ()
    covered = covered_outline_mm(slope)
    eaves, top = slope.across.perp_lines[0], slope.across.perp_lines[-1]
    (_, low_y), _ = bounding_box_mm(covered)
    lines: list[Line] = []
    for foot_mm, head_mm in zip(eaves.marks_mm, top.marks_mm, strict=False):
        apex_mm = _apex_mm(slope.courses.rods, head_mm)
        tail_mm = foot_mm + (head_mm - foot_mm) * low_y / apex_mm
        lines += inside_parts((tail_mm, low_y), (head_mm, apex_mm), covered)
    return tuple(lines)


def _apex_mm(rods: tuple[Rod, ...], x_mm: float) -> float:
    """Fascia to apex at this place along the eaves, straight between the measured stations."""
    for lower, upper in pairwise(rods):
        if x_mm <= upper.at_mm or upper is rods[-1]:
            share = (x_mm - lower.at_mm) / (upper.at_mm - lower.at_mm)
            return lower.length_mm + share * (upper.length_mm - lower.length_mm)
    return rods[0].length_mm


def opening_rings(slope: SlopeResult) -> tuple[tuple[Point, ...], ...]:
    """The outline of every opening."""
    return tuple(
        (
            (opening.from_left_mm, opening.up_slope_mm),
            (opening.right_mm, opening.up_slope_mm),
            (opening.right_mm, opening.head_mm),
            (opening.from_left_mm, opening.head_mm),
        )
        for opening in slope.slope.openings
    )


def inside_parts(start: Point, end: Point, ring: tuple[Point, ...]) -> list[Line]:
    """The parts of a straight line that lie inside a ring, whatever its shape.

    >>> inside_parts((-10.0, 5.0), (30.0, 5.0), ((0.0, 0.0), (20.0, 0.0), (20.0, 10.0), (0.0, 10.0)))
    [((0.0, 5.0), (20.0, 5.0))]
    """
    return inside_sides(start, end, sides_of(ring))


Side = tuple[Point, Point]
"""One side of a ring, from a corner to the next."""


def sides_of(ring: Sequence[Point]) -> list[Side]:
    """Every side of a ring."""
    return list(pairwise((*ring, ring[0])))


def sides_between(ring: Sequence[Point], low_mm: float, high_mm: float) -> list[Side]:
    """The sides that reach between two heights: all that matter to a line which stays between them."""
    return [
        side
        for side in sides_of(ring)
        if min(side[0][1], side[1][1]) <= high_mm and max(side[0][1], side[1][1]) >= low_mm
    ]


def inside_sides(start: Point, end: Point, sides: Sequence[Side]) -> list[Line]:
    """The parts of a straight line that lie inside a ring, given by its sides, or by those at the heights of the line."""
    shares = sorted({0.0, 1.0, *_crossings(start, end, sides)})

    def at(share: float) -> Point:
        return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))

    return [
        (at(lower), at(upper))
        for lower, upper in pairwise(shares)
        if upper - lower > _NOISE and _holds(sides, at((lower + upper) / 2))
    ]


_NOISE = 1e-9


def _holds(sides: Sequence[Side], point: Point) -> bool:
    """Does the ring of these sides hold the point? Counted along the level from it, as ``holds_point`` does."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in sides:
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            inside = not inside
    return inside


def _crossings(start: Point, end: Point, sides: Sequence[Side]) -> list[float]:
    """Where along the line, as a share of it, it crosses the sides of the ring."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    shares: list[float] = []
    for a, b in sides:
        cross = dx * (b[1] - a[1]) - dy * (b[0] - a[0])
        if cross == 0:
            continue
        share = ((a[0] - start[0]) * (b[1] - a[1]) - (a[1] - start[1]) * (b[0] - a[0])) / cross
        t = ((a[0] - start[0]) * dy - (a[1] - start[1]) * dx) / cross
        if 0 <= share <= 1 and -_NOISE <= t <= 1 + _NOISE:
            shares.append(share)
    return shares
