"""How far the covering passes an edge of the roof structure as it was laid: past a verge, or short of a wall."""

from gaugerod.geometry.pitch import length_mm
from gaugerod.geometry.polygon import Point
from gaugerod.job.laid_out import structure_ring
from gaugerod.job.result import SlopeResult
from gaugerod.laying.ask import Ring

_Side = tuple[Point, Point]


def past_edge_mm(slope: SlopeResult, name: str) -> float | None:
    """The covering past the middle of this edge of a slope, square to it; below nothing where it stays short.

    None where the slope was not laid, or the edge is not a whole side of what was laid.
    """
    if slope.laid is None:
        return None
    built = _sides(structure_ring(slope.slope, slope.shape), name)
    laid = _sides(slope.laid.ask.outline, name)
    if len(built) != 1 or len(laid) != 1:
        return None
    return _off_mm(built[0], laid[0])


def heads_below_top_mm(slope: SlopeResult) -> float | None:
    """How far the heads of the top course stay below the top of the slope, at the rod where they stay furthest; nothing where
    they reach it. None where the slope was not laid.
    """
    if slope.laid is None:
        return None
    top = slope.laid.ask.courses[-1]
    short = {} if slope.double_lap is None else {rod.at_mm: rod.short for rod in slope.double_lap.rods}
    gaps = []
    for rod in slope.courses.rods:
        over = short.get(rod.at_mm)
        head_mm = top.tail.height_mm(rod.at_mm) + top.unit_length_mm if over is None else over.tail_mm + over.length_mm
        gaps.append(rod.length_mm - head_mm)
    return max((0.0, *gaps))


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
