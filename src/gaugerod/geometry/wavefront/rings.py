"""The sides of a face chained into rings."""

from collections import defaultdict
from collections.abc import Callable
from math import atan2, tau

from gaugerod.basis.errors import RoofWillNotClose
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.wavefront.rejoin import FULL_TURN_SLACK
from gaugerod.geometry.wavefront.trace import Side, Trace


def rings_of_face(trace: Trace, front: int) -> list[list[int]]:
    """The face a front drew as rings of nodes, counter-clockwise seen from outside. Raises RoofWillNotClose when torn."""
    onward: dict[int, list[int]] = defaultdict(list)
    for start, end in sorted(trace.face_sides(front)):
        onward[start].append(end)
    in_face = view_of_face(trace, front)
    rings: list[list[int]] = []
    while onward:
        first = next(iter(onward))
        ring = [first]
        here = _step((first, first), onward, in_face)
        while here != first:
            if here not in onward:
                raise RoofWillNotClose(where_mm=trace.nodes[here][:2], why="a slope comes out torn here")
            ring.append(here)
            here = _step((ring[-2], here), onward, in_face)
        rings.append(ring)
    return rings


def view_of_face(trace: Trace, front: int) -> Callable[[int], Point]:
    """How the nodes of a front's face look from outside: x along the wall to the right, y up.

    Up is the height on an upright face, the run in from the origin on a slope.
    """
    (nx, ny), upright = trace.fronts[front].inward, trace.fronts[front].run_ratio == 0

    def seen(node: int) -> Point:
        x, y, height = trace.nodes[node]
        return x * ny - y * nx, height if upright else x * nx + y * ny

    return seen


def _step(arriving: Side, onward: dict[int, list[int]], in_face: Callable[[int], Point]) -> int:
    """The next node; where a face is pinched to a point, the way that keeps its two parts apart."""
    came_from, here = arriving
    ways = onward[here]
    if len(ways) == 1:
        del onward[here]
        return ways[0]
    if came_from == here:
        return ways.pop()
    x, y = in_face(here)
    back_x, back_y = in_face(came_from)
    back = atan2(back_y - y, back_x - x)

    def turn(node: int) -> float:
        to_x, to_y = in_face(node)
        return (back - atan2(to_y - y, to_x - x) - FULL_TURN_SLACK) % tau

    onto = min(ways, key=turn)
    ways.remove(onto)
    return onto
