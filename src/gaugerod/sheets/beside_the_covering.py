"""How far the covering passes an edge of the roof structure as it was laid: past a verge, or short of a wall."""

from gaugerod.edges.answer import MadeEdge
from gaugerod.geometry.pitch import length_mm
from gaugerod.job.laid_out import structure_ring
from gaugerod.job.result import Result
from gaugerod.laying.ask import Ring
from gaugerod.sheets.drawing import Point

_Side = tuple[Point, Point]


def past_edge_mm(result: Result, edge: MadeEdge) -> float | None:
    """The covering past the middle of this edge, square to it; below nothing where it stays short.

    None where the slope was not laid, or the edge is not a whole side of what was laid.
    """
    if edge.line is None:
        return None
    slope = next((each for each in result.slopes if each.slope.name == edge.line.slopes[0]), None)
    if slope is None or slope.laid is None:
        return None
    name = edge.name.removeprefix(f"{slope.slope.name}, ")
    built = _sides(structure_ring(slope.slope, slope.shape), name)
    laid = _sides(slope.laid.ask.outline, name)
    if len(built) != 1 or len(laid) != 1:
        return None
    return _off_mm(built[0], laid[0])


def _sides(ring: Ring, name: str) -> list[_Side]:
    corners = (*ring.points_mm, ring.points_mm[0])
    return [(corners[at], corners[at + 1]) for at, edge in enumerate(ring.edges) if edge.name == name]


def _off_mm(built: _Side, laid: _Side) -> float:
    """From the middle of the one, to its right, square to it, to the other. Rings run counter-clockwise: right is outwards."""
    (x0, y0), (x1, y1) = built
    run_mm = length_mm(x1 - x0, y1 - y0)
    right = ((y1 - y0) / run_mm, -(x1 - x0) / run_mm)
    along = (laid[1][0] - laid[0][0], laid[1][1] - laid[0][1])
    from_middle = (laid[0][0] - (x0 + x1) / 2, laid[0][1] - (y0 + y1) / 2)
    turned = right[0] * along[1] - right[1] * along[0]
    return (from_middle[0] * along[1] - from_middle[1] * along[0]) / turned
