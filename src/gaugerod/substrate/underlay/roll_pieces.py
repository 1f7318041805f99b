"""What is cut from the rolls: stretches to cover, and the pieces a stretch may be made of.

Everything here is in whole millimetres, rounded up, so that no piece is short.
"""

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations, islice
from math import ceil

from gaugerod.basis.finding import TOUCH
from gaugerod.substrate.underlay.answer import Demand


@dataclass(frozen=True, slots=True, order=True)
class Stretch:
    """A demand's own line of places: its left end, the places a piece may end at, its right end. mm from the left end.

    ``least_mm`` is the shortest piece worth laying; a stretch that is shorter is one piece.
    """

    places_mm: tuple[int, ...]
    side_lap_mm: int
    least_mm: int

    def length_mm(self, first: int, last: int) -> int:
        """The piece from place ``first`` to place ``last``: it reaches back a side lap unless it starts the stretch."""
        back_mm = self.side_lap_mm if first else 0
        return self.places_mm[last] - self.places_mm[first] + back_mm

    def allows(self, first: int, last: int) -> bool:
        """Is this piece, or what is left of the stretch there, the whole of it or long enough to be worth laying?"""
        whole = first == 0 and last == len(self.places_mm) - 1
        return whole or self.length_mm(first, last) >= self.least_mm


Part = tuple[Stretch, int, int]
"""What is still to be covered of a stretch: from one of its places to another."""


@dataclass(frozen=True, slots=True)
class Taken:
    """A piece of a part, what is left of the part, and how many new joints that makes."""

    piece: Part
    left: tuple[Part, ...]
    joints_count: int


def part_of(demand: Demand, *, side_lap_mm: float, piece_least_mm: float) -> Part:
    """The whole of one demand."""
    breaks = [ceil(place - demand.from_mm - TOUCH) for place in demand.breaks_mm]
    places = (0, *breaks, ceil(demand.to_mm - demand.from_mm - TOUCH))
    return Stretch(places, ceil(side_lap_mm), ceil(piece_least_mm)), 0, len(places) - 1


def part_length_mm(part: Part) -> int:
    """The length of a part covered in one piece."""
    stretch, first, last = part
    return stretch.length_mm(first, last)


def pieces_of(part: Part, *, room_mm: int, joints_count: int) -> Iterator[Taken]:
    """Every piece of the part that fits the room with no more new joints than given: whole first, then from its ends,
    then from its middle, longest first.
    """
    if part_length_mm(part) <= room_mm:
        yield Taken(part, (), 0)
    for joints in range(1, min(joints_count, 2) + 1):
        pieces = _from_ends(part) if joints == 1 else _from_middle(part)
        first_to_fit = bisect_left(pieces, -room_mm, key=lambda taken: -part_length_mm(taken.piece))
        yield from islice(pieces, first_to_fit, None)


@lru_cache(maxsize=10_000)
def _from_ends(part: Part) -> tuple[Taken, ...]:
    _, first, last = part
    return _longest_first(
        [(first, end) for end in range(first + 1, last)] + [(start, last) for start in range(first + 1, last)], part
    )


@lru_cache(maxsize=10_000)
def _from_middle(part: Part) -> tuple[Taken, ...]:
    _, first, last = part
    return _longest_first(combinations(range(first + 1, last), 2), part)


def _longest_first(ends: Iterable[tuple[int, int]], part: Part) -> tuple[Taken, ...]:
    pieces = (_taken(part, start, end) for start, end in ends)
    kept = [taken for taken in pieces if taken is not None]
    return tuple(sorted(kept, key=lambda taken: -part_length_mm(taken.piece)))


def _taken(part: Part, start: int, end: int) -> Taken | None:
    """The piece from start to end; None when it, or what is left beside it, is too short to be worth laying."""
    stretch, first, last = part
    left = tuple((stretch, a, b) for a, b in ((first, start), (end, last)) if a != b)
    if all(stretch.allows(a, b) for _, a, b in ((stretch, start, end), *left)):
        return Taken((stretch, start, end), left, len(left))
    return None


def total_length_mm(parts: Sequence[Part]) -> int:
    """The length of all parts, each in one piece."""
    return sum(map(part_length_mm, parts))


@lru_cache(maxsize=10_000)
def joints_needed(part: Part, roll_mm: int) -> int | None:
    """The fewest joints that make the part of pieces no longer than a roll; None when no pieces do."""
    stretch, first, last = part
    pieces_count = {first: 0}
    for end in range(first + 1, last + 1):
        befores = [
            count
            for at, count in pieces_count.items()
            if stretch.length_mm(at, end) <= roll_mm and stretch.allows(at, end)
        ]
        if befores:
            pieces_count[end] = min(befores) + 1
    return pieces_count[last] - 1 if last in pieces_count else None
