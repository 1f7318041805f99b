"""An outline with each edge moved out or back by its own distance: out to the overhangs, back from a wall."""

from collections.abc import Sequence
from math import hypot

from gaugerod.geometry.outline_faults import SHORTEST_SIDE_MM
from gaugerod.geometry.polygon import Point

PARALLEL = 1e-9
"""Sine of the angle below which two edges are in one line."""
_LEAST_SIDES_COUNT = 3
Line = tuple[Point, Point]
"""A point and the unit step along the line."""


def moved_outline_mm(
    points_mm: Sequence[Point], moves_mm: Sequence[float]
) -> tuple[tuple[Point, ...], tuple[int, ...]]:
    """The outline with edge i (point i to point i+1) moved outwards by ``moves_mm[i]``, and which edge each side came from.

    Corners counter-clockwise. Neighbouring edges are drawn out, or back, to where they meet; two in one line that move by
    different amounts are joined by a short square step, which belongs to the second of them. An edge that its neighbours
    meet in front of is cut away whole, and so is one of which less than 1 mm is left.

    >>> moved_outline_mm([(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)], [1.0, 0.0, 0.0, 0.5])
    (((-0.5, -1.0), (4.0, -1.0), (4.0, 3.0), (-0.5, 3.0)), (0, 1, 2, 3))
    """
    lines = [
        _moved(start, end, out_mm)
        for start, end, out_mm in zip(points_mm, (*points_mm[1:], points_mm[0]), moves_mm, strict=True)
    ]
    kept = list(range(len(points_mm)))
    while True:
        corners, edges = _joined(points_mm, lines, kept)
        # Of a step and its edge, both of one index, the edge comes last and stands.
        left_mm = {index: _left_mm(lines[index], corners, at) for at, index in enumerate(edges)}
        shortest = min(left_mm, key=lambda index: left_mm[index])
        if len(kept) == _LEAST_SIDES_COUNT or left_mm[shortest] >= SHORTEST_SIDE_MM:
            return tuple(corners), tuple(edges)
        kept.remove(shortest)


def _joined(points_mm: Sequence[Point], lines: Sequence[Line], kept: Sequence[int]) -> tuple[list[Point], list[int]]:
    """The corners where the moved edges meet, and the edge that each side from there belongs to."""
    corners: list[Point] = []
    edges: list[int] = []
    for at, index in enumerate(kept):
        before, here = lines[kept[at - 1]], lines[index]
        meeting = _meeting(before, here)
        if meeting is not None:
            corners.append(meeting)
        else:
            end, start = _ended_at(before, points_mm[index]), _ended_at(here, points_mm[index])
            corners.append(end)
            if hypot(end[0] - start[0], end[1] - start[1]) > PARALLEL:
                edges.append(index)
                corners.append(start)
        edges.append(index)
    return corners, edges


def _left_mm(line: Line, corners: Sequence[Point], at: int) -> float:
    """How long the moved edge is, the way it ran; below nothing where its neighbours meet before they reach it."""
    (ux, uy), (ax, ay), (bx, by) = line[1], corners[at], corners[(at + 1) % len(corners)]
    return (bx - ax) * ux + (by - ay) * uy


def _moved(start: Point, end: Point, out_mm: float) -> Line:
    dx, dy = end[0] - start[0], end[1] - start[1]
    long = hypot(dx, dy)
    step = (dx / long, dy / long)
    return (start[0] + step[1] * out_mm, start[1] - step[0] * out_mm), step


def _meeting(before: Line, here: Line) -> Point | None:
    (ax, ay), (ux, uy) = before
    (bx, by), (vx, vy) = here
    cross = ux * vy - uy * vx
    if -PARALLEL < cross < PARALLEL:
        return None
    along = ((bx - ax) * vy - (by - ay) * vx) / cross
    return (ax + along * ux, ay + along * uy)


def _ended_at(line: Line, corner: Point) -> Point:
    """The corner brought square onto the line."""
    (ax, ay), (ux, uy) = line
    along = (corner[0] - ax) * ux + (corner[1] - ay) * uy
    return (ax + along * ux, ay + along * uy)
