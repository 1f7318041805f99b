"""What the sweep leaves behind: nodes in space, and for each front the directed sides of the face it drew."""

from collections.abc import Sequence

from gaugerod.geometry.wavefront.front import Front

Node = tuple[float, float, float]
"""x, y on plan and height, mm."""
Side = tuple[int, int]
"""From one node to another, the face on the left (on plan; seen from outside for an upright face)."""


class Trace:
    """Nodes and sides, gathered while the fronts move."""

    def __init__(self, fronts: Sequence[Front]) -> None:
        self.fronts = list(fronts)
        self.nodes: list[Node] = []
        self.sides: list[list[Side]] = [[] for _ in fronts]
        self.wall_of_side: dict[Side, int] = {}
        """The sides that lie along the outline, each with the number of its wall."""
        self._same_as: dict[int, int] = {}

    def add_node(self, x_mm: float, y_mm: float, height_mm: float) -> int:
        """A new node; its number."""
        self.nodes.append((x_mm, y_mm, height_mm))
        return len(self.nodes) - 1

    def add_front(self, front: Front) -> int:
        """A front that arises on the way; its number."""
        self.fronts.append(front)
        self.sides.append([])
        return len(self.fronts) - 1

    def add_wall_side(self, front: int, start: int, end: int, *, wall: int) -> None:
        """The side of a face that lies along a wall."""
        self.sides[front].append((start, end))
        self.wall_of_side[start, end] = wall

    def add_shared_side(self, *, left: int, right: int, start: int, end: int) -> None:
        """A side between two faces, walked with the first on the left."""
        self.sides[left].append((start, end))
        self.sides[right].append((end, start))

    def merge_nodes(self, node: int, into: int) -> None:
        """Two nodes that turned out to be one point."""
        merged, kept = self.settled(node), self.settled(into)
        if merged != kept:
            self._same_as[merged] = kept

    def settled(self, node: int) -> int:
        """The number a node goes by after merging."""
        while node in self._same_as:
            node = self._same_as[node]
        return node

    def face_sides(self, front: int) -> set[Side]:
        """The sides of a front's face, after merging; a side walked there and back is none."""
        settled = self.settled if self._same_as else None
        net: set[Side] = set()
        for start, end in self.sides[front]:
            if settled:
                start, end = settled(start), settled(end)  # noqa: PLW2901 - the merged number replaces the first one
            if start == end:
                continue
            if (end, start) in net:
                net.remove((end, start))
            else:
                net.add((start, end))
        return net
