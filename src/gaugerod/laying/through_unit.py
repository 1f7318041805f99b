"""The geometry of the saw: which edges run through one unit, and what they leave of it."""

from collections.abc import Callable, Sequence
from math import hypot
from typing import NamedTuple

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.polygon import Point, distance_to_side_mm, holds_point, part_left_of_line, signed_area_mm2
from gaugerod.laying.ask import Edge
from gaugerod.laying.clip import parts_in_cell
from gaugerod.laying.crossings import Side
from gaugerod.laying.cut_unit import Cut
from gaugerod.laying.laid import Rings
from gaugerod.laying.placed import Placed


class Through(NamedTuple):
    """The length of one edge inside a unit, seen on the unit, in the edge's own direction: the piece is on its left.

    ``clean`` when it goes right through, from one side of the unit to another.
    """

    number: int
    start: Point
    end: Point
    clean: bool


def edges_through(here: Placed, sides: Sequence[Side]) -> list[Through]:
    """The edges that take something off the unit; those that pass by or only run along a side of it do not."""
    found = []
    for side in sides:
        (x0, y0), (x1, y1) = here.on_unit(side.start), here.on_unit(side.end)
        dx, dy = x1 - x0, y1 - y0
        enters, leaves = 0.0, 1.0
        for at, step, greatest in ((x0, dx, here.width_mm), (y0, dy, here.length_mm)):
            if -TOUCH <= step <= TOUCH:
                if not TOUCH < at < greatest - TOUCH:
                    leaves = -1.0
                continue
            low, high = -at / step, (greatest - at) / step
            if low > high:
                low, high = high, low
            enters, leaves = max(enters, low), min(leaves, high)
        if (leaves - enters) * (abs(dx) + abs(dy)) > TOUCH:
            start, end = (x0 + enters * dx, y0 + enters * dy), (x0 + leaves * dx, y0 + leaves * dy)
            found.append(Through(side.number, start, end, enters > 0.0 and leaves < 1.0))
    return found


def pieces_left(
    here: Placed, through: Sequence[Through], strip: Callable[[], Sequence[Sequence[Point]]]
) -> list[Rings]:
    """The pieces of a unit, seen on the unit, each with the holes in it. ``strip`` gives the slope's outline beside
    the course; it is asked only where one clean cut does not tell everything.
    """
    if len(through) == 1 and through[0].clean:
        width_mm, length_mm = here.width_mm, here.length_mm
        whole = ((0.0, 0.0), (width_mm, 0.0), (width_mm, length_mm), (0.0, length_mm))
        return [(tuple(part_left_of_line(whole, through[0].start, through[0].end)),)]
    rings = here.rings_on_unit(parts_in_cell(strip(), here.corners))
    outer = [ring for ring in rings if signed_area_mm2(ring) > 0.0]
    holes = [ring for ring in rings if signed_area_mm2(ring) < 0.0]
    if len(outer) == 1:
        return [(outer[0], *holes)]
    return [(ring, *(hole for hole in holes if holds_point(ring, hole[0]))) for ring in outer]


def as_cut(through: Through, edge: Edge) -> Cut:
    """A cut with its angle to the course line."""
    (x0, y0), (x1, y1) = through.start, through.end
    rise, run = (y1 - y0, x1 - x0) if (y1, x0) > (y0, x1) else (y0 - y1, x0 - x1)
    return Cut(
        edge=edge,
        edge_number=through.number,
        start_mm=through.start,
        end_mm=through.end,
        angle_deg=atan2_deg(rise, run) if rise > TOUCH else 0.0,
    )


def bounds(piece: Rings, through: Through) -> bool:
    """Is this edge one of the piece's own? Told by a point just on the covering's side of it."""
    (x0, y0), (x1, y1) = through.start, through.end
    step = 0.01 / hypot(x1 - x0, y1 - y0)
    return holds_point(piece[0], ((x0 + x1) / 2 - step * (y1 - y0), (y0 + y1) / 2 + step * (x1 - x0)))


def holds(piece: Rings, spot: Point) -> bool:
    """Is the spot on the piece, and not in a hole through it?"""
    return holds_point(piece[0], spot) and not any(holds_point(hole, spot) for hole in piece[1:])


def clear_mm(spot: Point, through: Sequence[Through]) -> float:
    """From a spot to the nearest of the cuts (one at least)."""
    return min(distance_to_side_mm(spot, cut.start, cut.end) for cut in through)
