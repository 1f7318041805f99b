"""How far the covering passes the edge that is drawn: past a verge, or short of a wall."""

from gaugerod.edges.answer import MadeEdge
from gaugerod.job import past_edges
from gaugerod.job.result import Result


def past_edge_mm(result: Result, edge: MadeEdge) -> float | None:
    """The covering past the middle of this edge, square to it; below nothing where it stays short. None: not known."""
    if edge.line is None:
        return None
    slope = next((each for each in result.slopes if each.slope.name == edge.line.slopes[0]), None)
    return None if slope is None else past_edges.past_edge_mm(slope, edge.name.removeprefix(f"{slope.slope.name}, "))
