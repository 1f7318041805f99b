"""Pieces of a few lengths out of stock lengths: the least stock bought, then the fewest lengths, by exact search.

Cost is one number: the millimetres of stock first, then how many lengths, then how many pieces. Each piece has a *value*
such that no stock length can hold more value than it costs; so the values of what is still to be cut never exceed what it
will cost. The search takes a piece of
the longest sort left, tries every content of the length it comes from, dearest waste last, and gives up a branch as soon
as its waste passes the allowance. What failed once with an allowance is not tried again with less.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

OF_A_LENGTH, OF_A_MM = 10_000, 100_000_000
"""The cost of one length more and of one millimetre more, in that of one piece more. No roof has ten thousand of either."""

Demand = tuple[int, ...]
"""How many pieces of each length, in the order of the lengths."""


class Content(NamedTuple):
    """What may be cut from one stock length: its waste in cost, the stock length, and (sort, number) of each piece.

    ``room_from``  the first sort, longest first, of which one more would still fit
    """

    waste: float
    stock_mm: int
    pieces: tuple[tuple[int, int], ...]
    room_from: int


class Cut(NamedTuple):
    """One stock length and the pieces cut from it, longest first. mm."""

    stock_mm: int
    pieces_mm: tuple[int, ...]


def cost_of(cuts: Sequence[Cut]) -> int:
    """What these stock lengths cost: their millimetres first, then their number, then that of the pieces."""
    return sum(cut.stock_mm * OF_A_MM + OF_A_LENGTH + len(cut.pieces_mm) for cut in cuts)


@dataclass(slots=True)
class ExactCutting:
    """The search over one set of piece lengths, which remembers what it has learnt from one demand to the next.

    ``lengths_mm``     longest first, each once
    ``steps_left``     how many steps of the search are still allowed; when it is nothing the answers are no proof
    """

    lengths_mm: tuple[int, ...]
    stock_mm: tuple[int, ...]
    kerf_mm: float
    steps_left: int
    values: tuple[float, ...] = field(init=False)
    contents: tuple[tuple[Content, ...], ...] = field(init=False)
    failed: dict[Demand, float] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        """Every content of every stock length, and the values."""
        plain = _contents(self.lengths_mm, sorted(self.stock_mm), self.kerf_mm)
        self.values = _values(self.lengths_mm, plain)
        by_longest: list[list[Content]] = [[] for _ in self.lengths_mm]
        for stock_mm, used_mm, pieces in plain:
            waste = _cost(stock_mm, pieces) - sum(self.values[sort] * number for sort, number in pieces)
            room = next(
                (at for at, more in enumerate(self.lengths_mm) if used_mm + self.kerf_mm + more <= stock_mm),
                len(self.lengths_mm),
            )
            by_longest[pieces[0][0]].append(Content(waste, stock_mm, pieces, room))
        self.contents = tuple(tuple(sorted(contents)) for contents in by_longest)

    def value(self, demand: Demand) -> float:
        """The least that the demand can cost, by the values of its pieces."""
        return sum(map(float.__mul__, self.values, map(float, demand)))

    def cuts_within(self, demand: Demand, waste: float) -> list[Cut] | None:
        """A way to cut the demand with no more waste (in cost) than this; None where there is none, or no steps are left."""
        longest = next((sort for sort, number in enumerate(demand) if number), None)
        if longest is None:
            return []
        if self.failed.get(demand, -1.0) >= waste or self.steps_left <= 0:
            return None
        self.steps_left -= 1
        for content_waste, stock_mm, pieces, room_from in self.contents[longest]:
            if content_waste > waste:
                break
            left = list(demand)
            for sort, number in pieces:
                if left[sort] < number:
                    break
                left[sort] -= number
            else:
                # A length with room for a piece still wanted is never better than that length with the piece in it.
                if any(left[room_from:]):
                    continue
                cuts = self.cuts_within(tuple(left), waste - content_waste)
                if cuts is not None:
                    lengths_mm = tuple(self.lengths_mm[sort] for sort, number in pieces for _ in range(number))
                    cuts.append(Cut(stock_mm, lengths_mm))
                    return cuts
        if self.steps_left > 0:
            self.failed[demand] = waste
        return None


PlainContent = tuple[int, float, tuple[tuple[int, int], ...]]
"""The shortest stock length that will do, the millimetres used, and (sort, number) of each piece."""


def _cost(stock_mm: int, pieces: Sequence[tuple[int, int]]) -> int:
    return stock_mm * OF_A_MM + OF_A_LENGTH + sum(number for _, number in pieces)


def _contents(lengths_mm: Sequence[int], stock_mm: Sequence[int], kerf_mm: float) -> list[PlainContent]:
    """Everything that can be cut from one stock length; between two pieces the saw takes its kerf."""
    found: list[PlainContent] = []
    waiting: list[tuple[float, tuple[int, ...]]] = [
        (float(length_mm), (sort,)) for sort, length_mm in enumerate(lengths_mm) if length_mm <= stock_mm[-1]
    ]
    while waiting:
        used_mm, sorts = waiting.pop()
        shortest_mm = next(length_mm for length_mm in stock_mm if length_mm >= used_mm)
        found.append((shortest_mm, used_mm, tuple((sort, sorts.count(sort)) for sort in dict.fromkeys(sorts))))
        for sort in range(sorts[-1], len(lengths_mm)):
            more_mm = used_mm + kerf_mm + lengths_mm[sort]
            if more_mm <= stock_mm[-1]:
                waiting.append((more_mm, (*sorts, sort)))
    return found


def _values(lengths_mm: Sequence[int], contents: Sequence[PlainContent]) -> tuple[float, ...]:
    """Values no stock length holds more of than it costs: the pieces' own length, then each raised as far as it goes."""
    fullest_mm = max(sum(lengths_mm[sort] * number for sort, number in pieces) for _, _, pieces in contents)
    values = [length_mm * OF_A_MM + length_mm / fullest_mm * OF_A_LENGTH + 1 for length_mm in lengths_mm]
    holding: list[list[tuple[int, int, tuple[tuple[int, int], ...]]]] = [[] for _ in lengths_mm]
    for stock_mm, _, pieces in contents:
        for sort, number in pieces:
            holding[sort].append((number, _cost(stock_mm, pieces), pieces))
    for sort, held in enumerate(holding):
        values[sort] += max(
            0.0,
            min((cost - sum(values[at] * many for at, many in pieces)) / number for number, cost, pieces in held),
        )
    return tuple(values)
