"""The nodes an event leaves in the trace."""

from math import hypot

from gaugerod.geometry.polygon import Point
from gaugerod.geometry.wavefront.corner import Corner
from gaugerod.geometry.wavefront.rejoin import Spots
from gaugerod.geometry.wavefront.trace import Trace


class NodesAtSpots:
    """The nodes of one height, made only for the spots where something changes."""

    def __init__(self, trace: Trace, spots: Spots, *, height_mm: float, tolerance_mm: float) -> None:
        self._trace = trace
        self._spots = spots
        self._height_mm = height_mm
        self._tolerance_mm = tolerance_mm
        self._made: dict[int, int] = {}

    def __getitem__(self, spot: int) -> int:
        """The node at a spot, made when first asked for."""
        if spot not in self._made:
            self._made[spot] = self._make(spot)
        return self._made[spot]

    def place_mm(self, spot: int) -> Point:
        """Where a spot is on plan."""
        return self._spots.places[spot]

    def corner_that_goes_on(self, spot: int, before: int, after: int) -> Corner | None:
        """The one corner at a spot, when nothing there has changed for it."""
        corners = self._spots.corners[spot]
        if len(corners) == 1 and corners[0].before == before and corners[0].after == after:
            return corners[0]
        return None

    def _make(self, spot: int) -> int:
        """A new node, or the one the corners here only just left."""
        x_mm, y_mm = self._spots.places[spot]
        just_left = [
            corner.node
            for corner in self._spots.corners[spot]
            if self._height_mm - corner.height_mm <= self._tolerance_mm
            and hypot(corner.x_mm - x_mm, corner.y_mm - y_mm) <= self._tolerance_mm
        ]
        if not just_left:
            return self._trace.add_node(x_mm, y_mm, self._height_mm)
        for node in just_left[1:]:
            self._trace.merge_nodes(node, just_left[0])
        return just_left[0]
