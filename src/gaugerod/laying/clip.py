"""The part of the slope inside one cell.

Two ways to one answer. An edge that runs clean through a cell leaves a convex part, written down at once. Where an
edge ends in the cell, or several run through it, the outline is cut by the cell's four sides in turn, and parts that
come back joined by a there-and-back walk along a side are taken apart.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point, part_left_of_line, signed_area_mm2
from gaugerod.laying.laid import Rings
from gaugerod.laying.rows import Corners

Step = tuple[Point, Point]
"""One straight piece of an outline, from and to."""

ON_A_SIDE_MM = 1e-7
"""A corner nearer to a side of the cell than this lies on it."""
SAME_PLACE_DIGITS = 5
"""Two corners on the sides of a cell that agree to this many decimals of a mm are one corner."""

_ROUND_TO = tuple(
    tuple(tuple((side + step + 1) % 4 for step in range((goal - side) % 4)) for goal in range(4)) for side in range(4)
)
"""Corners passed when walking round a cell counter-clockwise from one of its sides to another."""


def part_beside_edge(
    corners: Corners, start: Point, end: Point, *, start_on: int, end_on: int, covering_above: bool
) -> tuple[Point, ...]:
    """The part of a cell on one side of an edge that runs clean through it, from side ``start_on`` to ``end_on``.

    >>> part_beside_edge(((0, 0), (4, 0), (4, 3), (0, 3)), (1, 0), (2, 3), start_on=0, end_on=2, covering_above=False)
    ((2, 3), (1, 0), (4, 0), (4, 3))
    """
    if covering_above:
        first, last, passed = start, end, _ROUND_TO[end_on][start_on]
    else:
        first, last, passed = end, start, _ROUND_TO[start_on][end_on]
    ring = [first, last, *[corners[at] for at in passed]]
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = first, last, ring[2], ring[-1]
    if -TOUCH < x1 - x2 < TOUCH and -TOUCH < y1 - y2 < TOUCH:
        del ring[1]  # the edge goes out by a corner of the cell
    if -TOUCH < x0 - x3 < TOUCH and -TOUCH < y0 - y3 < TOUCH:
        del ring[0]
    return tuple(ring)


def _same_place(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) + abs(one[1] - other[1]) < TOUCH


def parts_between(rings: Iterable[Sequence[Point]], lower: Step, upper: Step
                  ) -> list[list[Point]]:  # fmt: skip
    """The parts of the rings above the line ``lower`` and below the line ``upper``, both given from left to right."""
    return _left_of(_left_of(rings, *lower), upper[1], upper[0])


def parts_in_cell(strip: Iterable[Sequence[Point]], corners: Corners) -> Rings:
    """The part of a strip's outline between the left and right joint of a cell: outer rings and holes, each on its own."""
    tail_left, tail_right, head_right, head_left = corners
    kept = _left_of(_left_of(strip, head_left, tail_left), tail_right, head_right)
    return taken_apart([ring for ring in map(_without_repeats, kept) if len(ring) > 2], corners)


def _without_repeats(ring: Sequence[Point]) -> list[Point]:
    return [point for at, point in enumerate(ring) if not _same_place(ring[at - 1], point)]


def _left_of(rings: Iterable[Sequence[Point]], start: Point, end: Point) -> list[list[Point]]:
    return [part for ring in rings if (part := part_left_of_line(ring, start, end))]


def taken_apart(kept: Sequence[Sequence[Point]], corners: Corners) -> Rings:
    """Rings of the same area without there-and-back walks along the sides of the cell, parted where they only touch.

    What runs along a side one way and back again cancels; what is left is walked round afresh.
    """
    free: list[Step] = []
    along: tuple[list[Step], ...] = ([], [], [], [])
    stops: tuple[list[Point], ...] = ([], [], [], [])
    for ring in kept:
        sides_before = _sides_at(ring[-1], corners)
        for start, end in pairwise((ring[-1], *ring)):
            sides = _sides_at(end, corners)
            for side in sides:
                stops[side].append(end)
            shared = next((side for side in sides if side in sides_before), None)
            (free if shared is None else along[shared]).append((start, end))
            sides_before = sides
    if len(kept) <= 1 and all(len(points) < 3 for points in stops):
        return tuple(tuple(ring) for ring in kept)
    steps = free + [
        step for side in range(4) for step in _net(along[side], stops[side], corners[side], corners[(side + 1) % 4])
    ]
    rings = _walked(steps)
    area_kept_mm2 = sum(map(signed_area_mm2, kept))
    if abs(sum(map(signed_area_mm2, rings)) - area_kept_mm2) > 1e-3:
        return tuple(tuple(ring) for ring in kept)  # joined rings, the area still right
    return rings


def _sides_at(point: Point, corners: Corners) -> list[int]:
    """The sides of the cell on which a point lies: none inside, one on a side, two in a corner."""
    x, y = point
    found = []
    for side in range(4):
        (ax, ay), (bx, by) = corners[side], corners[(side + 1) % 4]
        dx, dy = bx - ax, by - ay
        if abs(dx * (y - ay) - dy * (x - ax)) <= ON_A_SIDE_MM * (abs(dx) + abs(dy)):
            found.append(side)
    return found


def _net(steps: Sequence[Step], stops: Sequence[Point], corner: Point, following: Point) -> list[Step]:
    """Steps along one side, broken at every stop, with what is walked both ways taken out."""
    dx, dy = following[0] - corner[0], following[1] - corner[1]
    at_place = {_place(point): point for point in stops}
    ordered = sorted(at_place, key=lambda place: dx * place[0] + dy * place[1])
    rank = {place: at for at, place in enumerate(ordered)}
    walked = [0] * len(ordered)
    for start, end in steps:
        first, last = rank[_place(start)], rank[_place(end)]
        for at in range(min(first, last), max(first, last)):
            walked[at] += 1 if first < last else -1
    net = []
    for at, times in enumerate(walked[:-1]):
        here, there = at_place[ordered[at]], at_place[ordered[at + 1]]
        net += [(here, there)] * times if times > 0 else [(there, here)] * -times
    return net


def _walked(steps: Iterable[Step]) -> Rings:
    """Closed rings from loose steps; where several leave one corner, the sharpest turn to the left is taken."""
    leaving: dict[Point, list[Step]] = {}
    for start, end in steps:
        if _place(start) != _place(end):
            leaving.setdefault(_place(start), []).append((start, end))
    rings: list[tuple[Point, ...]] = []
    while leaving:
        first = step = leaving[next(iter(leaving))][0]
        ring = []
        while True:
            ring.append(step[0])
            following = _next_step(leaving.get(_place(step[1]), []), step)
            if following is None:
                return ()  # noise broke the walk
            _take(leaving, following)
            if following == first:
                break
            step = following
        if len(trimmed := _without_straight_corners(ring)) > 2:
            rings.append(trimmed)
    return tuple(rings)


def _take(leaving: dict[Point, list[Step]], step: Step) -> None:
    left = leaving[_place(step[0])]
    left.remove(step)
    if not left:
        del leaving[_place(step[0])]


def _next_step(choices: Sequence[Step], step: Step) -> Step | None:
    if len(choices) < 2:
        return choices[0] if choices else None
    dx, dy = step[1][0] - step[0][0], step[1][1] - step[0][1]

    def turn(choice: Step) -> float:
        """Grows with the turn to the left: from −2 (straight back on the right) to 2."""
        ex, ey = choice[1][0] - choice[0][0], choice[1][1] - choice[0][1]
        size = abs(dx * ex + dy * ey) + abs(dx * ey - dy * ex) or 1.0
        ahead, left = (dx * ex + dy * ey) / size, (dx * ey - dy * ex) / size
        return 1.0 - ahead if left >= 0 else ahead - 1.0

    return max(choices, key=turn)


def _without_straight_corners(ring: Sequence[Point]) -> tuple[Point, ...]:
    kept = []
    for at, (x, y) in enumerate(ring):
        (px, py), (nx, ny) = ring[at - 1], ring[(at + 1) % len(ring)]
        if abs((x - px) * (ny - y) - (y - py) * (nx - x)) > ON_A_SIDE_MM * (abs(nx - px) + abs(ny - py)):
            kept.append((x, y))
    return tuple(kept)


def _place(point: Point) -> Point:
    return round(point[0], SAME_PLACE_DIGITS), round(point[1], SAME_PLACE_DIGITS)
