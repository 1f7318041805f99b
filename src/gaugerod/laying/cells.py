"""One course parted into whole units, cut units and nothing: only cells that an edge touches are looked at."""

from collections.abc import Sequence

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.laying.ask import LapSide, Unit
from gaugerod.laying.clip import part_beside_edge, parts_between, parts_in_cell
from gaugerod.laying.crossings import INSIDE, LEFT, RIGHT, Crossing
from gaugerod.laying.laid import CutCell, Rings
from gaugerod.laying.rows import Row

SLIVER_MM2 = 1.0
"""A piece that would show less is not laid; a unit that would lose less is laid whole (house choice)."""
LINE_PLAY_MM = 3.0
"""A unit is set to the line of a side rather than sawn for so little. See ``LINE_PLAY_CITATION``."""
LINE_PLAY_CITATION = house("about the play of one joint: a unit moves that much sooner than a saw follows it")


class RowLaid:
    """What the sweep of one row collects. ``whole`` holds first unit and count, in order, never two that adjoin."""

    __slots__ = ("course", "cuts", "ends_mm", "lapped", "nicks_mm2", "rings", "row", "slivers_mm2", "strip", "whole")

    def __init__(self, course: int, row: Row, rings: Sequence[Sequence[Point]], ends_mm: tuple[float, float]) -> None:
        self.course = course
        self.row = row
        self.rings = rings
        self.ends_mm = ends_mm
        self.strip: list[list[Point]] | None = None
        self.whole: list[tuple[int, int]] = []
        self.cuts: list[CutCell] = []
        self.lapped: list[CutCell] = []
        self.slivers_mm2: list[float] = []
        self.nicks_mm2: list[float] = []

    def sweep(self, found: Sequence[Crossing]) -> None:
        """Go along the row from left to right: groups of touched units, and between them whole units or nothing."""
        inside = False
        free = at = 0
        while at < len(found):
            group = [found[at]]
            low, high, turns = found[at].low, found[at].high, found[at].turns
            at += 1
            while at < len(found) and found[at].low <= high:
                group.append(found[at])
                high = max(high, found[at].high)
                turns ^= found[at].turns
                at += 1
            if inside and free < low:
                self._whole(free, low - free)
            if len(group) == 1:
                for index in range(low, high + 1):
                    self._cut_clean(index, group[0])
            else:
                self._cut_by_several(group, low, high)
            inside ^= turns
            free = high + 1

    def _whole(self, first: int, count: int) -> None:
        if self.whole and sum(self.whole[-1]) == first:
            first, count = self.whole[-1][0], self.whole[-1][1] + count
            self.whole.pop()
        self.whole.append((first, count))

    def _cut_by_several(self, group: Sequence[Crossing], low: int, high: int) -> None:
        for index in range(low, high + 1):
            here = [crossing for crossing in group if crossing.low <= index <= crossing.high]
            if len(here) == 1:
                self._cut_clean(index, here[0])
            else:
                self._cut_by_outline(index, here)

    def _cut_clean(self, index: int, crossing: Crossing) -> None:
        """A unit with one edge through it; when that edge ends inside, the whole outline is asked."""
        low, high, start, end, joints0, joints1, start_on, end_on, covering_above, _, side = crossing
        row = self.row
        if index > low:
            start, start_on = row.at_joint(index, start, end, joints0, joints1), LEFT
        if index < high:
            end, end_on = row.at_joint(index + 1, crossing.start, end, joints0, joints1), RIGHT
        if INSIDE in (start_on, end_on):
            self._cut_by_outline(index, [crossing])
            return
        corners = row.corners(index, index + 1)
        ring = part_beside_edge(corners, start, end, start_on=start_on, end_on=end_on, covering_above=covering_above)
        self._keep(index, (ring,), signed_area_mm2(ring), (side,))

    def _cut_by_outline(self, index: int, here: Sequence[Crossing]) -> None:
        corners = self.row.corners(index, index + 1)
        if self.strip is None:
            self.strip = parts_between(self.rings, *self.row.lines(*self.ends_mm))
        rings = parts_in_cell(self.strip, corners)
        if len(rings) > 1:
            rings = self._without_slivers(rings)
        self._keep(index, rings, sum(map(signed_area_mm2, rings)), tuple({crossing.side for crossing in here}))

    def _without_slivers(self, rings: Rings) -> Rings:
        """The parts of one cell that are large enough to lay, and the holes in them."""
        areas_mm2 = [signed_area_mm2(ring) for ring in rings]
        self.slivers_mm2 += [area for area in areas_mm2 if 0.0 < area < SLIVER_MM2]
        return tuple(ring for ring, area in zip(rings, areas_mm2, strict=True) if not 0.0 < area < SLIVER_MM2)

    def _keep(self, index: int, rings: Rings, area_mm2: float, sides: tuple[int, ...]) -> None:
        lost_mm2 = self.row.cell_area_mm2(index) - area_mm2
        if lost_mm2 < SLIVER_MM2:
            self._whole(index, 1)
            if lost_mm2 > 0.0:
                self.nicks_mm2.append(lost_mm2)
        elif area_mm2 >= SLIVER_MM2:
            self.cuts.append(CutCell(self.course, index, rings, area_mm2, sides))
        elif area_mm2 > 0.0:
            self.slivers_mm2.append(area_mm2)

    @property
    def mean_gauge_mm(self) -> float:
        """Gauge half-way between the ends of the slope."""
        tail, head = self.row.lines(*self.ends_mm)
        return (head[0][1] + head[1][1] - tail[0][1] - tail[1][1]) / 2

    def leave_to_side_lap(self, unit: Unit) -> None:
        """Set aside strips past the last unit of a course that its own side lap covers: no unit is laid for them.

        A side that runs a hair out of the perps leaves a strip a hair wider: the last unit is set to the line.
        """
        lap_mm = unit.width_mm - self.row.cover_mm
        if lap_mm <= TOUCH:
            return
        beside = 1 if unit.lap_side is LapSide.LEFT else -1
        laid = {cut.index for cut in self.cuts}
        kept: list[CutCell] = []
        for cut in self.cuts:
            neighbour = cut.index + beside
            has_neighbour = neighbour in laid or any(first <= neighbour < first + many for first, many in self.whole)
            covered = has_neighbour and self.row.reach_mm(cut.rings, cut.index, beside) <= lap_mm + LINE_PLAY_MM
            (self.lapped if covered else kept).append(cut)
        self.cuts = kept
