"""Which offcut serves which other cut: two pieces from one unit wherever a saw can part them.

A piece is never turned over nor upside down. Two pieces come from one unit when some straight line parts them with
the width of the blade to spare. As many pairs as there can be are found, so the saving is the greatest for two pieces
to a unit.
"""

from bisect import bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from gaugerod.basis.citation import Citation, house
from gaugerod.laying.ask import OffcutRule, Unit
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.laying.matching import most_pairs

KERF_MM = 5.0
"""Taken by the saw between two pieces. See ``KERF_CITATION``."""
KERF_CITATION: Citation = house("the blade takes 3 mm and wanders 2 mm")

FROM_A_WIDER_UNIT = (Remedy.UNIT_AND_A_HALF, Remedy.DOUBLE)
"""Pieces with these remedies are not cut from a whole unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OffcutUse:
    """Two pieces from one unit, by their place in the list given: the unit is cut for ``first``, its offcut serves
    ``second``. Each is moved sideways in the unit by its shift (nothing when pieces are cut in place).
    """

    first: int
    second: int
    first_shift_mm: float
    second_shift_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OffcutPlan:
    """The saving. ``by_edges`` counts the pairs by the edges their pieces belong to: left hip with right hip.

    Without the plan every piece takes a unit of its own: ``pieces_count`` units; with it ``units_count``.
    """

    uses: tuple[OffcutUse, ...]
    pieces_count: int
    by_edges: tuple[tuple[tuple[str, str], int], ...]
    kerf_mm: float

    @property
    def saved_count(self) -> int:
        """Whole units saved."""
        return len(self.uses)

    @property
    def units_count(self) -> int:
        """Whole units to cut."""
        return self.pieces_count - self.saved_count


def wider_units(pieces: Sequence[CutUnit]) -> tuple[CutUnit, ...]:
    """Of one slope's pieces those for which a wider unit is had, one for each: the neighbour cut with it needs none."""
    taken: set[tuple[int, int]] = set()
    found: list[CutUnit] = []
    for piece in sorted(pieces, key=lambda piece: (piece.course, piece.index)):
        if piece.remedy in FROM_A_WIDER_UNIT and (piece.course, piece.index) not in taken:
            taken.add((piece.course, piece.neighbour))
            found.append(piece)
    return tuple(found)


def from_wider_units(pieces: Sequence[CutUnit]) -> frozenset[int]:
    """The places in the list of one slope's pieces that come from a wider unit: small cuts, and the neighbours they are
    cut with where those are sawn too.
    """
    taken = {(piece.course, piece.neighbour) for piece in wider_units(pieces)}
    return frozenset(
        at
        for at, piece in enumerate(pieces)
        if piece.remedy in FROM_A_WIDER_UNIT or (piece.course, piece.index) in taken
    )


def plan_offcuts(slopes: Sequence[Sequence[CutUnit]], *, unit: Unit, kerf_mm: float = KERF_MM) -> OffcutPlan:
    """The most pieces cut two from a unit: the pieces of each slope, planned together.

    A use names its pieces by their place in all the slopes' lists, one after the other. Scope: pieces from units of one
    length only; a unit is used twice at most; the offcut is what lies beyond one straight saw line. Pieces cut from wider
    units are left out, the neighbours they are cut with too.
    """
    pieces = [piece for each in slopes for piece in each]
    chosen: list[int] = []
    begins = 0
    for each in slopes:
        wider = from_wider_units(each)
        chosen.extend(begins + at for at in range(len(each)) if at not in wider)
        begins += len(each)
    reaches = _Reaches([pieces[at] for at in chosen], unit, kerf_mm)
    uses = tuple(reaches.use(one, other, chosen) for one, other in most_pairs(reaches.partners()))
    named = Counter(tuple(sorted((_edge_name(pieces[use.first]), _edge_name(pieces[use.second])))) for use in uses)
    by_edges = tuple(((names[0], names[1]), count) for names, count in sorted(named.items()))
    return OffcutPlan(uses=uses, pieces_count=len(chosen), by_edges=by_edges, kerf_mm=kerf_mm)


def _edge_name(piece: CutUnit) -> str:
    """The edge with the longest cut through the piece."""
    return max(piece.cuts, key=lambda cut: cut.length_mm).edge.name


class _Reaches:
    """How far every piece reaches in every direction a saw might part two of them.

    A line square to (nx, ny) parts two pieces when the least reach of one is a kerf beyond the greatest of the other.
    That one is enough to look at: the directions square to the cuts, and along and up the unit. Where pieces may be
    taken from anywhere along the width, one is pushed to one side of the unit and the other to the other side.
    """

    def __init__(self, pieces: Sequence[CutUnit], unit: Unit, kerf_mm: float) -> None:
        self.pieces = pieces
        self.directions = _directions(pieces)
        along = unit.offcut_rule is OffcutRule.ALONG
        widths = [
            (min(x for x, _ in piece.own_rings_mm[0]), max(x for x, _ in piece.own_rings_mm[0])) for piece in pieces
        ]
        self.room = [(-low, unit.width_mm - high) if along else (0.0, 0.0) for low, high in widths]
        self.begins, self.ends = [], []
        """Per direction: where each piece begins, a kerf short of its least reach, and where it ends."""
        for nx, ny in self.directions:
            reaches = [[nx * x + ny * y for x, y in piece.own_rings_mm[0]] for piece in pieces]
            shifts = [(min(nx * left, nx * right), max(nx * left, nx * right)) for left, right in self.room]
            self.begins.append([min(reach) + most - kerf_mm for reach, (_, most) in zip(reaches, shifts, strict=True)])
            self.ends.append([max(reach) + fewest for reach, (fewest, _) in zip(reaches, shifts, strict=True)])

    def partners(self) -> list[int]:
        """For each piece the set of pieces that can come from the same unit, as bits."""
        found = [0] * len(self.pieces)
        for length_mm in {round(piece.length_mm, 3) for piece in self.pieces}:
            alike = [at for at, piece in enumerate(self.pieces) if round(piece.length_mm, 3) == length_mm]
            for begins, ends in zip(self.begins, self.ends, strict=True):
                _add_partners(found, alike, begins, ends)
        return [mask & ~(1 << at) for at, mask in enumerate(found)]

    def use(self, one: int, other: int, chosen: Sequence[int]) -> OffcutUse:
        """The pair with its places in the list first given; the larger piece is the one the unit is cut for."""
        if self.pieces[other].area_mm2 > self.pieces[one].area_mm2:
            one, other = other, one
        shift = next(self._shifts(one, other))
        return OffcutUse(
            first=chosen[one], second=chosen[other], first_shift_mm=shift[one], second_shift_mm=shift[other]
        )

    def _shifts(self, one: int, other: int) -> Iterator[dict[int, float]]:
        """The shift of each, for every line that parts them."""
        for (nx, _), begins, ends in zip(self.directions, self.begins, self.ends, strict=True):
            for beyond, before in ((one, other), (other, one)):
                if ends[before] <= begins[beyond]:
                    yield {
                        beyond: max(self.room[beyond], key=lambda shift_mm: nx * shift_mm),
                        before: min(self.room[before], key=lambda shift_mm: nx * shift_mm),
                    }


def _add_partners(found: list[int], alike: Sequence[int], begins: Sequence[float], ends: Sequence[float]) -> None:
    """In one direction: all pieces that end before a piece begins go with it, and it with them."""
    by_end = sorted(alike, key=lambda at: ends[at])
    by_begin = sorted(alike, key=lambda at: -begins[at])
    end_values, begin_values = [ends[at] for at in by_end], [-begins[at] for at in by_begin]
    before, beyond = _running_sets(by_end), _running_sets(by_begin)
    for at in alike:
        found[at] |= before[bisect_right(end_values, begins[at])]
        found[at] |= beyond[bisect_right(begin_values, -ends[at])]


def _directions(pieces: Sequence[CutUnit]) -> list[tuple[float, float]]:
    """Unit steps square to every cut, each direction once (cuts within a ten-thousandth are taken as parallel), and
    along and up the unit. Any direction is sound; these are the ones that can part two pieces.
    """
    found = {(1.0, 0.0): (1.0, 0.0), (0.0, 1.0): (0.0, 1.0)}
    for piece in pieces:
        for cut in piece.cuts:
            dx, dy = cut.end_mm[0] - cut.start_mm[0], cut.end_mm[1] - cut.start_mm[1]
            size = hypot(dx, dy) if (dy, dx) > (0.0, 0.0) else -hypot(dx, dy)
            square = (-dy / size, dx / size)
            found.setdefault((round(square[0], 4) + 0.0, round(square[1], 4) + 0.0), square)
    return list(found.values())


def _running_sets(order: Sequence[int]) -> list[int]:
    """The set of the first none, one, two, … of them, as bits."""
    sets = [0]
    for at in order:
        sets.append(sets[-1] | 1 << at)
    return sets
