"""The sides of a face chained into rings."""

from collections import defaultdict
from collections.abc import Callable
from math import atan2, tau

from gaugerod.basis.errors import RoofWillNotClose
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.wavefront.trace import Side, Trace


def rings_of_face(trace: Trace, front: int) -> list[list[int]]:
    """The face a front drew as rings of nodes, counter-clockwise seen from outside. Raises RoofWillNotClose when torn."""
    onward: dict[int, list[int]] = defaultdict(list)
    for start, end in sorted(trace.face_sides(front)):
        onward[start].append(end)
    in_face = _view_of_face(trace, front)
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


def _view_of_face(trace: Trace, front: int) -> Callable[[int], Point]:
    """Nodes as seen from outside: along the wall to the right, and up (the height, or the run of a slope)."""
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
    x, y = in_face(here)

    def heading(node: int) -> float:
        to_x, to_y = in_face(node)
        return atan2(to_y - y, to_x - x)

    if came_from == here:
        return ways.pop()
    back = heading(came_from)
    best = min(ways, key=lambda node: (back - heading(node) - 1e-9) % tau)
    ways.remove(best)
    return best
