"""The cut through every unit that an edge runs through, over its whole length and width.

What a unit shows says whether it is whole; the saw sees more: at a hip the cut goes on through the head under the
course above, so a unit that shows whole may still lose a corner. Those are listed too.
"""

from collections.abc import Iterator, Sequence
from functools import cached_property
from itertools import pairwise
from math import ceil, hypot

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point, part_left_of_line, signed_area_mm2
from gaugerod.laying.ask import CourseLine, Edge, LapSide, LayingAsk
from gaugerod.laying.cells import SLIVER_MM2
from gaugerod.laying.clip import parts_between
from gaugerod.laying.crossings import Side, crossings, sides_by_row, sides_of
from gaugerod.laying.cut_unit import HOLE_CLEAR_MM, CutUnit
from gaugerod.laying.laid import Laying, Rings
from gaugerod.laying.placed import Placed, placed
from gaugerod.laying.remedy import Kept, remedy_for
from gaugerod.laying.rows import Row
from gaugerod.laying.through_unit import Through, as_cut, bounds, clear_mm, edges_through, holds, pieces_left


def cut_units(ask: LayingAsk, laying: Laying) -> tuple[CutUnit, ...]:
    """Every piece to saw on one slope, numbered from 1, course by course from the left.

    Scope: units that are laid, so those that show something; a unit split by an opening gives a piece for each part
    that shows.
    """
    xs = [x for x, _ in ask.outline.points_mm]
    lines = [(course.tail, _head_line(course.tail, course.unit_length_mm)) for course in ask.courses]
    shown, edges = _shown_by_course(laying), ask.edges
    gauges = tuple(pairwise(ask.lines))
    pieces: list[CutUnit] = []
    for number, sides in enumerate(sides_by_row(sides_of(ask), lines, ends_mm=(min(xs), max(xs)))):
        perps = ask.courses[number].perps
        row = Row(tail=gauges[number][0], head=gauges[number][1], perps=perps)
        whole_row = Row(tail=lines[number][0], head=lines[number][1], perps=perps)
        course = _Course(ask, edges, number, shown[number], row=row, whole_row=whole_row)
        for index, near in course.touched(sides):
            pieces += course.pieces(index, near, first_number=len(pieces) + 1)
    return tuple(pieces)


def _head_line(tail: CourseLine, unit_length_mm: float) -> CourseLine:
    """The line of the heads of a course: a unit's length up from its tails, square to them."""
    return CourseLine(at_mm=tail.at_mm + unit_length_mm * hypot(1.0, tail.rise_ratio), rise_ratio=tail.rise_ratio)


class _Shown:
    """What one course shows: its runs of whole units, and the area of each cut one."""

    def __init__(self) -> None:
        self.runs: list[tuple[int, int]] = []
        self.cuts_mm2: dict[int, float] = {}

    def __contains__(self, index: int) -> bool:
        return index in self.cuts_mm2 or any(first <= index < past for first, past in self.runs)


def _shown_by_course(laying: Laying) -> list[_Shown]:
    shown = [_Shown() for _ in laying.courses]
    for run in laying.runs:
        shown[run.course].runs.append((run.first, run.first + run.count))
    for cut in laying.cuts:
        shown[cut.course].cuts_mm2[cut.index] = cut.area_mm2
    return shown


class _Course:
    """One course while its units are cut: ``row`` is what it shows, ``whole_row`` the strip its whole units fill."""

    def __init__(
        self, ask: LayingAsk, edges: Sequence[Edge], number: int, shown: _Shown, *, row: Row, whole_row: Row
    ) -> None:
        self.ask = ask
        self.edges = edges
        self.number = number
        self.shown = shown
        self.row = row
        self.whole_row = whole_row

    @cached_property
    def strip(self) -> list[list[Point]]:
        """The slope's outline beside the whole length of the course's units."""
        xs = [x for x, _ in self.ask.outline.points_mm]
        rings = [ring.points_mm for ring in (self.ask.outline, *self.ask.openings)]
        return parts_between(rings, *self.whole_row.lines(min(xs), max(xs)))

    def touched(self, sides: Sequence[Side]) -> Iterator[tuple[int, list[Side]]]:
        """Units that an edge may run through, each with those edges: the units counted off, those that lap under
        them, and one more to each side where joints or course lines lean.
        """
        lap_count = max(0, ceil(self.ask.unit.width_mm / self.row.cover_mm - 1.0 - self.row.touch_count))
        spare = 0 if self.whole_row.square else 1
        before, after = (0, lap_count) if self.ask.unit.lap_side is LapSide.LEFT else (lap_count, 0)
        numbered = {side.number: side for side in sides}
        near: dict[int, list[Side]] = {}
        for crossing in crossings(self.whole_row, sides):
            for index in range(crossing.low - before - spare, crossing.high + after + spare + 1):
                near.setdefault(index, []).append(numbered[crossing.side])
        return ((index, near[index]) for index in sorted(near) if index in self.shown)

    def pieces(self, index: int, near: Sequence[Side], *, first_number: int) -> list[CutUnit]:
        """The pieces of one unit; none when no edge takes anything worth a saw off it."""
        here = placed(self.ask.courses[self.number], self.row, index, self.ask.unit)
        through = edges_through(here, near)
        if not through:
            return []
        left = pieces_left(here, through, lambda: self.strip)
        areas_mm2 = [sum(map(signed_area_mm2, piece)) for piece in left]
        if here.width_mm * here.length_mm - sum(areas_mm2) < SLIVER_MM2:
            return []
        units: list[CutUnit] = []
        for piece, area_mm2 in zip(left, areas_mm2, strict=True):
            shows_mm2 = self._shows_mm2(index, here, piece, alone=len(left) == 1)
            if shows_mm2 >= SLIVER_MM2:
                own = through if len(left) == 1 else [cut for cut in through if bounds(piece, cut)]
                number = first_number + len(units)
                units.append(self._unit(here, piece, own, index=index, number=number, area_mm2=area_mm2,
                                        shows_mm2=shows_mm2))  # fmt: skip
        return units

    def _shows_mm2(self, index: int, here: Placed, piece: Rings, *, alone: bool) -> float:
        if alone:
            return self.shown.cuts_mm2.get(index) or self.row.cell_area_mm2(index)
        on_unit = [here.on_unit(corner) for corner in self.row.corners(index, index + 1)]
        inside: list[Sequence[Point]] = list(piece)
        for start, end in pairwise((*on_unit, on_unit[0])):
            inside = [kept for ring in inside if (kept := part_left_of_line(ring, start, end))]
        return sum(map(signed_area_mm2, inside))

    def _unit(
        self,
        here: Placed,
        piece: Rings,
        through: Sequence[Through],
        *,
        index: int,
        number: int,
        area_mm2: float,
        shows_mm2: float,
    ) -> CutUnit:
        unit, length_mm = self.ask.unit, here.length_mm
        nibs = [(spot.from_left_mm, length_mm - spot.from_head_mm) for spot in unit.nibs]
        holes = [(spot.from_left_mm, length_mm - spot.from_head_mm) for spot in unit.holes]
        nibs_kept = sum(holds(piece, spot) for spot in nibs)
        holes_kept = sum(holds(piece, spot) and clear_mm(spot, through) >= HOLE_CLEAR_MM - TOUCH for spot in holes)
        whole_mm2 = self.row.cell_area_mm2(index)
        neighbour, reach_count = self._neighbour(index, here, piece)
        shows_ratio = shows_mm2 / whole_mm2
        if reach_count is not None:
            shows_ratio += _joint_lost_ratio(here, cut_on_right=neighbour < index)
        remedy, remark, citation = remedy_for(Kept(shows_ratio, reach_count, nibs_kept, holes_kept), unit)
        return CutUnit(
            number=number,
            course=self.number,
            index=index,
            rings_mm=tuple(tuple([here.on_slope(x, y) for x, y in ring]) for ring in piece),
            own_rings_mm=piece,
            length_mm=length_mm,
            area_mm2=area_mm2,
            shows_mm2=shows_mm2,
            whole_shows_mm2=whole_mm2,
            cuts=tuple([as_cut(cut, self.edges[cut.number]) for cut in through]),
            nibs_kept_count=nibs_kept,
            holes_kept_count=holes_kept,
            remedy=remedy,
            neighbour=neighbour,
            remark=remark,
            citation=citation,
        )

    def _neighbour(self, index: int, here: Placed, piece: Rings) -> tuple[int, float | None]:
        """The one unit beside it, and how far the piece reaches from the joint between them, in covers."""
        left, right = index - 1 in self.shown, index + 1 in self.shown
        cover_mm = here.right_joint_mm - here.left_joint_mm
        if left and not right:
            return index - 1, (max(x for x, _ in piece[0]) - here.left_joint_mm) / cover_mm
        if right and not left:
            return index + 1, (here.right_joint_mm - min(x for x, _ in piece[0])) / cover_mm
        return (index - 1 if left else index), None


def _joint_lost_ratio(here: Placed, *, cut_on_right: bool) -> float:
    """The open joint as a part of the cover, where the cut took it: the piece is no narrower for that than one cut as far
    on the other side, which has its joint still.
    """
    cover_mm = here.right_joint_mm - here.left_joint_mm
    on_right = here.left_joint_mm >= 0.0
    return (cover_mm - here.width_mm) / cover_mm if cover_mm > here.width_mm and cut_on_right == on_right else 0.0
