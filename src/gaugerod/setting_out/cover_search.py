"""The exact search for the perps: cover and first perp together.

With the cover c and the first perp f, every perp is at f + j × c. Fix, for each edge, which perp j is next to it and
how the course ends there, and every condition is a straight line in f and c; the reach of a verge only widens the
line into a strip. What such conditions leave is found exactly (see ``perp_room``): no grid and no step width. The
choices of j and ending form a tree, edge by edge. The branch that could still come to most is always grown next; so
the search ends when none could come to more than what has been found.

What is best, each before the next: crowns where they are wanted, on pieces of half a unit or more; no piece under half
a unit, or else the widest least piece; fewest cut pieces at verges, then at abutments; fewest units-and-a-half; cover
nearest mid-shunt; reaches nearest the middle of their bands; then the two end pieces as equal as can be.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush
from math import ceil, floor, inf

from gaugerod.setting_out.across import CourseEnd
from gaugerod.setting_out.end_pieces import Edge, Ending, Stop
from gaugerod.setting_out.perp_room import NOISE_MM, Line, Room

Rank = tuple[int, bool, float, int, int, int, float]
"""Crowns missed, is a narrow piece left, minus its width, cuts at verges, at abutments, units-and-a-half, off mid."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """An edge with its ending and the perp next to it: the ``perp_count``-th after the first."""

    edge: Edge
    ending: Ending
    perp_count: int

    def bounds(self, unit_width_mm: float) -> tuple[list[Line], list[Line], list[tuple[float, float]]]:
        """The conditions on first perp, cover and least piece that this ending makes."""
        edge, ending, perps = self.edge, self.ending, self.perp_count
        from_mm, to_mm = edge.least_mm - unit_width_mm, edge.greatest_mm - unit_width_mm
        if edge.end is CourseEnd.LEFT:  # p = f + j c − edge
            lower = [Line(least.plus_mm + edge.least_mm, least.cover_ratio - perps) for least in ending.at_least]
            upper = [Line(most.plus_mm + edge.greatest_mm, most.cover_ratio - perps) for most in ending.at_most]
        else:  # p = edge − (unit width − c) − f − j c
            lower = [Line(from_mm - most.plus_mm, 1 - perps - most.cover_ratio) for most in ending.at_most]
            upper = [Line(to_mm - least.plus_mm, 1 - perps - least.cover_ratio) for least in ending.at_least]
        if ending.narrow_ratio is None:
            return lower, upper, []
        if edge.end is CourseEnd.LEFT:
            lower.append(Line(edge.least_mm, ending.narrow_ratio - perps, 1.0))
        else:
            upper.append(Line(to_mm, 1 - perps - ending.narrow_ratio, 1.0))
        return lower, upper, [(most.plus_mm, most.cover_ratio - ending.narrow_ratio) for most in ending.at_most]

    def covers_mm(self) -> tuple[float, float]:
        """The covers at which this ending can be at all: its own widths must not contradict each other."""
        least_mm, greatest_mm = 0.0, inf
        for least in self.ending.at_least:
            for most in self.ending.at_most:
                slope, gap_mm = most.cover_ratio - least.cover_ratio, most.plus_mm - least.plus_mm
                if slope > 0:
                    least_mm = max(least_mm, -gap_mm / slope)
                elif slope < 0:
                    greatest_mm = min(greatest_mm, -gap_mm / slope)
                elif gap_mm < -NOISE_MM:
                    return inf, 0.0
        return least_mm, greatest_mm

    def piece_mm(self, *, edge_mm: float, first_perp_mm: float, cover_mm: float, unit_width_mm: float) -> float:
        """The cover of the piece of bond row 0 when the covering ends at ``edge_mm``."""
        perp_mm = first_perp_mm + self.perp_count * cover_mm
        if self.edge.end is CourseEnd.LEFT:
            return perp_mm - edge_mm
        return edge_mm - (unit_width_mm - cover_mm) - perp_mm

    def edge_mm(self, *, piece_mm: float, first_perp_mm: float, cover_mm: float, unit_width_mm: float) -> float:
        """Where the covering ends when the piece of bond row 0 covers ``piece_mm``."""
        perp_mm = first_perp_mm + self.perp_count * cover_mm
        if self.edge.end is CourseEnd.LEFT:
            return perp_mm - piece_mm
        return perp_mm + piece_mm + unit_width_mm - cover_mm

    def piece_range_mm(self, *, cover_mm: float, least_piece_mm: float) -> tuple[float, float]:
        """From how much to how much the piece of bond row 0 may cover."""
        least = max(width.at_mm(cover_mm) for width in self.ending.at_least)
        most = min(width.at_mm(cover_mm) for width in self.ending.at_most)
        if self.ending.narrow_ratio is not None:
            least = max(least, least_piece_mm + self.ending.narrow_ratio * cover_mm)
        return min(least, most), most


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """Perps settled: first perp, cover, and where each edge came to lie (``ends_mm``, in the order of ``placed``).

    ``narrow_mm``  the widest least piece, when one under half a unit could not be avoided
    """

    placed: tuple[Placed, ...]
    first_perp_mm: float
    cover_mm: float
    ends_mm: tuple[float, ...]
    narrow_mm: float | None

    def pieces_mm(self, unit_width_mm: float) -> tuple[float, ...]:
        """The cover of the piece of bond row 0 at each edge."""
        return tuple(
            placed.piece_mm(
                edge_mm=end_mm,
                first_perp_mm=self.first_perp_mm,
                cover_mm=self.cover_mm,
                unit_width_mm=unit_width_mm,
            )
            for placed, end_mm in zip(self.placed, self.ends_mm, strict=True)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Shunt:
    """The cover width: closed, open and wished for; and the full width of a unit."""

    closed_mm: float
    open_mm: float
    wished_mm: float
    unit_width_mm: float


def best_layout(edges: Sequence[Edge], *, endings: Sequence[Sequence[Ending]], shunt: Shunt) -> Layout:
    """The best perps there are. The left and right sides come first; each edge has its ending among ``endings``."""
    best: Layout | None = None
    best_order: tuple[Rank, float, float] | None = None
    start = Room(shunt.closed_mm, shunt.open_mm)
    branches: list[_Branch] = [((0, False, 0.0, 0, 0, 0, 0.0), 0, 0, (), start)]
    grown = 0
    while branches:
        rank, _, _, placed, room = heappop(branches)
        if best_order is not None and rank > best_order[0]:
            break
        if len(placed) == len(edges):
            layout = settled(placed, room=room, shunt=shunt)
            order = ((*rank[:-1], _off_mm(layout.cover_mm, shunt.wished_mm)), *_off_aim(layout))
            if best_order is None or order < best_order:
                best, best_order = layout, order
            continue
        at = len(placed)
        for step, left, step_rank in _steps(edges[at], endings[at], room=room, placed=placed, shunt=shunt):
            grown += 1
            heappush(branches, (step_rank, -at, grown, (*placed, step), left))
    if best is None:
        raise AssertionError("a course always ends somewhere: whole, cut or narrow")
    return best


_Branch = tuple[Rank, int, int, tuple[Placed, ...], Room]
"""What it can still come to, fewest edges left first, in the order grown; then its edges and the room they leave."""


def _steps(
    edge: Edge, endings: Sequence[Ending], *, room: Room, placed: tuple[Placed, ...], shunt: Shunt
) -> Iterator[tuple[Placed, Room, Rank]]:
    perps = _perps_beside(edge, room=room, unit_width_mm=shunt.unit_width_mm) if placed else range(1)
    for ending in endings:
        for perp_count in perps:
            step = Placed(edge=edge, ending=ending, perp_count=perp_count)
            left = room_with(room, step, unit_width_mm=shunt.unit_width_mm)
            if left is not None:
                yield step, left, _rank((*placed, step), room=left, wished_mm=shunt.wished_mm)


def _perps_beside(edge: Edge, *, room: Room, unit_width_mm: float) -> range:
    """Which perps could be the one next to this edge: 0 ≤ p ≤ c."""
    first_mm, last_mm = room.first_perp_reach_mm()
    outer_mm = 0.0 if edge.end is CourseEnd.LEFT else unit_width_mm
    covers = (room.closed_mm, room.open_mm)
    least = min((edge.least_mm - outer_mm - last_mm) / cover for cover in covers)
    most = max((edge.greatest_mm - outer_mm - first_mm) / cover for cover in covers) + 1
    return range(ceil(least - NOISE_MM), floor(most + NOISE_MM) + 1)


def room_with(room: Room, placed: Placed, *, unit_width_mm: float) -> Room | None:
    """What is left of the room when this edge ends this way; None when it cannot."""
    least_mm, greatest_mm = placed.covers_mm()
    closed_mm, open_mm = max(room.closed_mm, least_mm), min(room.open_mm, greatest_mm)
    if closed_mm > open_mm + NOISE_MM:
        return None
    narrower = Room(min(closed_mm, open_mm), open_mm, room.lower, room.upper, room.ceilings)
    lower, upper, ceilings = placed.bounds(unit_width_mm)
    return narrower.narrowed(lower=lower, upper=upper, ceilings=ceilings)


def _rank(placed: Sequence[Placed], *, room: Room, wished_mm: float) -> Rank:
    """The best this branch can still come to."""
    narrow = any(step.ending.narrow_ratio is not None for step in placed)
    return (
        sum(step.ending.missed_count for step in placed),
        narrow,
        -round(room.least_piece_mm(), 6) if narrow else 0.0,
        sum(step.ending.cut_count for step in placed if step.edge.stop is Stop.VERGE),
        sum(step.ending.cut_count for step in placed if step.edge.stop is Stop.ABUTMENT),
        sum(step.ending.large_count for step in placed),
        _off_mm(room.cover_nearest_mm(wished_mm), wished_mm),
    )


def _off_mm(cover_mm: float, wished_mm: float) -> float:
    return round(max(cover_mm - wished_mm, wished_mm - cover_mm), 6)


def settled(
    placed: tuple[Placed, ...],
    *,
    room: Room,
    shunt: Shunt,
    narrow_mm: float | None = None,
    first_perp_wished_mm: float | None = None,
) -> Layout:
    """The one layout to lay in a room: widest least piece, then cover, reaches, equal ends.

    ``narrow_mm`` is enough for the least piece, when given; ``first_perp_wished_mm`` goes before equal ends.
    """
    narrow = any(step.ending.narrow_ratio is not None for step in placed)
    least_mm = room.least_piece_mm() if narrow else 0.0
    if narrow and narrow_mm is not None:
        least_mm = min(least_mm, narrow_mm)
    room = room.holding(least_mm) if narrow else room
    cover_mm = room.cover_nearest_mm(shunt.wished_mm)
    ranges = [step.piece_range_mm(cover_mm=cover_mm, least_piece_mm=least_mm) for step in placed]
    first_perp_mm = _first_perp_mm(
        placed,
        ranges,
        within=room.first_perp_mm(cover_mm),
        cover_mm=cover_mm,
        unit_width_mm=shunt.unit_width_mm,
        wished_mm=first_perp_wished_mm,
    )
    ends_mm: list[float] = []
    for step, (least, most) in zip(placed, ranges, strict=True):
        reachable = sorted(
            step.edge_mm(
                piece_mm=piece, first_perp_mm=first_perp_mm, cover_mm=cover_mm, unit_width_mm=shunt.unit_width_mm
            )
            for piece in (least, most)
        )
        end_mm = min(max(step.edge.aim_mm, reachable[0]), reachable[1])
        ends_mm.append(min(max(end_mm, step.edge.least_mm), step.edge.greatest_mm))
    return Layout(
        placed=placed,
        first_perp_mm=first_perp_mm,
        cover_mm=cover_mm,
        ends_mm=tuple(ends_mm),
        narrow_mm=least_mm if narrow else None,
    )


def _first_perp_mm(
    placed: Sequence[Placed],
    ranges: Sequence[tuple[float, float]],
    *,
    within: tuple[float, float],
    cover_mm: float,
    unit_width_mm: float,
    wished_mm: float | None,
) -> float:
    """Both reaches as near their aims as can be, the larger miss first; then the end pieces equal."""

    def perp_mm(step: Placed, piece_mm: float) -> float:
        last_mm = step.perp_count * cover_mm
        if step.edge.end is CourseEnd.LEFT:
            return step.edge.aim_mm + piece_mm - last_mm
        return step.edge.aim_mm - unit_width_mm + cover_mm - piece_mm - last_mm

    (left, left_range), (right, right_range) = list(zip(placed, ranges, strict=True))[:2]
    wishes = [sorted(perp_mm(left, piece) for piece in left_range)]
    wishes.append(sorted(perp_mm(right, piece) for piece in right_range))
    start, stop = max(wish[0] for wish in wishes), min(wish[1] for wish in wishes)
    if wished_mm is None:
        wished_mm = (perp_mm(left, 0.0) + perp_mm(right, 0.0)) / 2
    best_mm = min(max(wished_mm, start), stop) if start <= stop else (start + stop) / 2
    return min(max(best_mm, within[0]), within[1])


def _off_aim(layout: Layout) -> tuple[float, float]:
    off = [
        max(end - step.edge.aim_mm, step.edge.aim_mm - end)
        for step, end in zip(layout.placed, layout.ends_mm, strict=True)
    ]
    return round(max(off), 6), round(sum(off), 6)
