"""What is cut from the rolls: stretches to cover, and the pieces a stretch may be made of.

Everything here is in whole millimetres, rounded up, so that no piece is short.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
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
    """Every piece of the part that fits the room with no more new joints than given: whole first, then longest first."""
    stretch, first, last = part
    if stretch.length_mm(first, last) <= room_mm:
        yield Taken((stretch, first, last), (), 0)
    if joints_count == 0:
        return
    found = []
    for start in range(first, last):
        for end in range(start + 1, last + 1):
            joints = (start != first) + (end != last)
            if not 0 < joints <= joints_count or stretch.length_mm(start, end) > room_mm:
                continue
            left = tuple((stretch, a, b) for a, b in ((first, start), (end, last)) if a != b)
            if all(stretch.allows(a, b) for _, a, b in ((stretch, start, end), *left)):
                found.append(Taken((stretch, start, end), left, joints))
    yield from sorted(found, key=lambda taken: (taken.joints_count, -part_length_mm(taken.piece)))


def total_length_mm(parts: Sequence[Part]) -> int:
    """The length of all parts, each in one piece."""
    return sum(map(part_length_mm, parts))
