"""Joining the lines anew at an event: corners that came together, sides they lie on, fronts that met head-on.

Everything here happens at one height. A *spot* is a place where one or more corners stand; spots are numbered in the
order found. A *piece* is part of a front's line from spot to spot.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, tau

from gaugerod.geometry.wavefront.corner import Corner, Loop
from gaugerod.geometry.wavefront.front import Front

Piece = tuple[int, int, int]
"""From spot, to spot, front."""
FULL_TURN_SLACK = 1e-9
"""Radians: a way straight back is a full turn, not none."""


@dataclass(slots=True)
class Spots:
    """The places where corners stand at one height, those within the tolerance taken as one."""

    places: list[tuple[float, float]]
    corners: list[list[Corner]]
    of_loop: list[list[int]]

    def near(self, x_mm: float, y_mm: float, tolerance_mm: float) -> int | None:
        """The spot within the tolerance of a place, if there is one."""
        for spot, (at_x_mm, at_y_mm) in enumerate(self.places):
            if -tolerance_mm <= at_x_mm - x_mm <= tolerance_mm and -tolerance_mm <= at_y_mm - y_mm <= tolerance_mm:
                return spot
        return None

    def on_line(self, front: Front, *, height_mm: float, tolerance_mm: float) -> list[tuple[float, int]]:
        """The spots that lie on a front's line, each with its place along it, in walking order."""
        (nx, ny), place_mm = front.inward, front.place_mm(height_mm)
        return sorted(
            (x_mm * ny - y_mm * nx, spot)
            for spot, (x_mm, y_mm) in enumerate(self.places)
            if -2 * tolerance_mm <= nx * x_mm + ny * y_mm - place_mm <= 2 * tolerance_mm
        )


def gather_spots(loops: Sequence[Loop], *, height_mm: float, tolerance_mm: float) -> Spots:
    """Where every corner stands at this height."""
    spots = Spots(places=[], corners=[], of_loop=[])
    for loop in loops:
        own: list[int] = []
        for corner in loop:
            rise_mm = height_mm - corner.height_mm
            x_mm, y_mm = corner.x_mm + corner.run_x_ratio * rise_mm, corner.y_mm + corner.run_y_ratio * rise_mm
            spot = spots.near(x_mm, y_mm, tolerance_mm)
            if spot is None:
                spot = len(spots.places)
                spots.places.append((x_mm, y_mm))
                spots.corners.append([])
            spots.corners[spot].append(corner)
            own.append(spot)
        spots.of_loop.append(own)
    return spots


def pieces_of(
    loops: Sequence[Loop], spots: Spots, fronts: Sequence[Front], *, height_mm: float, tolerance_mm: float
) -> Iterator[Piece]:
    """Every side that is left, cut where a spot lies on it."""
    for loop, own in zip(loops, spots.of_loop, strict=True):
        for at, corner in enumerate(loop):
            start, end = own[at], own[(at + 1) % len(own)]
            if start == end:
                continue
            front = fronts[corner.after]
            nx, ny = front.inward
            from_mm, to_mm = (spots.places[spot][0] * ny - spots.places[spot][1] * nx for spot in (start, end))
            on_line = spots.on_line(front, height_mm=height_mm, tolerance_mm=tolerance_mm)
            between = [spot for along_mm, spot in on_line if from_mm < along_mm < to_mm and spot not in {start, end}]
            for here, there in pairwise((start, *between, end)):
                yield here, there, corner.after


def part_meetings(pieces: Iterator[Piece]) -> tuple[list[Piece], list[tuple[int, int, int, int]]]:
    """Pieces walked both ways are fronts that met: ``(from, to, front, front met)``. The rest go on."""
    fronts_on: dict[tuple[int, int], list[int]] = defaultdict(list)
    for start, end, front in pieces:
        fronts_on[start, end].append(front)
    meetings: list[tuple[int, int, int, int]] = []
    going_on: list[Piece] = []
    for (start, end), fronts in fronts_on.items():
        against = fronts_on.get((end, start), [])
        while fronts and against:
            meetings.append((start, end, fronts.pop(), against.pop()))
        going_on += [(start, end, front) for front in fronts]
    return going_on, meetings


def walk_loops(pieces: Sequence[Piece], fronts: Sequence[Front]) -> Iterator[list[Piece]]:
    """The pieces joined into closed lines again. A line that does not close is yielded open, ending where it stops.

    Where several pieces leave one spot, the line turns as sharply left as it can: the two sides of a pinched
    place part.
    """
    leaving: dict[int, list[int]] = defaultdict(list)
    for at, (start, _, _) in enumerate(pieces):
        leaving[start].append(at)
    unused = dict.fromkeys(range(len(pieces)))
    while unused:
        first = next(iter(unused))
        at = first
        line: list[Piece] = []
        while True:
            unused.pop(at, None)
            line.append(pieces[at])
            onward = [other for other in leaving[pieces[at][1]] if other in unused or other == first]
            if not onward:
                break
            at = onward[0] if len(onward) == 1 else _sharpest_left(pieces[at], onward, pieces, fronts)
            if at == first:
                break
        yield line


def _sharpest_left(arriving: Piece, onward: Sequence[int], pieces: Sequence[Piece], fronts: Sequence[Front]) -> int:
    nx, ny = fronts[arriving[2]].inward
    back = atan2(nx, -ny)

    def turn(at: int) -> float:
        ox, oy = fronts[pieces[at][2]].inward
        return (back - atan2(-ox, oy) - FULL_TURN_SLACK) % tau

    return min(onward, key=turn)
