"""Pieces of a few lengths out of stock lengths: the least stock bought, then the fewest lengths, by exact search.

Cost is one number: the millimetres of stock first, then how many lengths. Each piece has a *value* such that no stock
length can hold more value than it costs; so the values of what is still to be cut never exceed what it will cost. The
search takes a piece of the longest sort left, tries every content of the length it comes from, least waste of value
first, and gives up a branch as soon as the cost must pass what is allowed. What failed once is not tried again with less.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from gaugerod.substrate.battens.piece_values import Contents, Demand, Values, best_values, own_values

OF_A_MM = 10_000
"""The cost of one millimetre more, in that of one length more. No roof has ten thousand lengths."""
NOISE = 1e-3
"""Of a cost: costs are whole numbers, values of pieces are not."""


PRICED_A_STEP = 4
"""Pricing the contents so many times is one step of the search; finding the best values prices them all for each sort."""


class Cut(NamedTuple):
    """One stock length and the pieces cut from it, longest first. mm."""

    stock_mm: int
    pieces_mm: tuple[int, ...]


def cost_of(cuts: Sequence[Cut]) -> int:
    """What these stock lengths cost: their millimetres first, then their number."""
    return sum(cut.stock_mm * OF_A_MM + 1 for cut in cuts)


class _Content(NamedTuple):
    """What may be cut from one stock length, longest piece first.

    ``pieces``     (sort, number) of each
    ``room_from``  the first sort, longest first, of which one more would still fit
    """

    stock_mm: int
    pieces: tuple[tuple[int, int], ...]
    room_from: int


@dataclass(slots=True)
class ExactCutting:
    """The search over one set of piece lengths, which remembers what it has learnt from one demand to the next.

    ``lengths_mm``  longest first, each once
    ``steps_left``  how many steps of the search are still allowed; when there are none the answers are no proof
    ``values``      the values found so far: the pieces' own, then the best ones for demands that were hard to refuse
    """

    lengths_mm: tuple[int, ...]
    stock_mm: tuple[int, ...]
    kerf_mm: float
    steps_left: int
    values: list[Values] = field(init=False)
    _contents: list[_Content] = field(init=False)
    _priced: Contents = field(init=False)
    _failed: dict[Demand, int] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        """Every content of every stock length, and the pieces' own values."""
        self._contents = _contents(self.lengths_mm, sorted(self.stock_mm), self.kerf_mm)
        self._priced = [(content.stock_mm * OF_A_MM + 1, content.pieces) for content in self._contents]
        self.values = [own_values([float(length_mm * OF_A_MM) for length_mm in self.lengths_mm], self._priced)]

    def cuts_within(self, demand: Demand, cost: int) -> list[Cut] | None:
        """A way to cut the demand at no more than this cost; None where there is none, or no steps are left."""
        for values in self.values:
            if _value(values, demand) > cost + NOISE:
                return None
        values = best_values(demand, self._priced)
        self.steps_left -= len(demand) * len(self._priced) // PRICED_A_STEP
        self.values.append(values)
        if _value(values, demand) > cost + NOISE:
            return None
        return self._search(demand, cost, values, self._by_waste(values))

    def _by_waste(self, values: Sequence[float]) -> list[list[tuple[float, int, _Content]]]:
        """For each sort, the contents of which it is the longest piece: waste of value, cost, content; least waste first."""
        found: list[list[tuple[float, int, _Content]]] = [[] for _ in self.lengths_mm]
        for (cost, pieces), content in zip(self._priced, self._contents, strict=True):
            waste = cost - sum(values[sort] * number for sort, number in pieces)
            found[pieces[0][0]].append((waste, cost, content))
        for contents in found:
            contents.sort()
        return found

    def _search(
        self,
        demand: Demand,
        cost: int,
        values: Sequence[float],
        by_waste: Sequence[Sequence[tuple[float, int, _Content]]],
    ) -> list[Cut] | None:
        longest = next((sort for sort, number in enumerate(demand) if number), None)
        if longest is None:
            return []
        self.steps_left -= 1
        if self.steps_left <= 0 or self._failed.get(demand, -1) >= cost:
            return None
        allowed = cost + NOISE - _value(values, demand)
        for waste, of_this, (stock_mm, pieces, room_from) in by_waste[longest]:
            if waste > allowed:
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
                cuts = self._search(tuple(left), cost - of_this, values, by_waste)
                if cuts is not None:
                    lengths_mm = tuple(self.lengths_mm[sort] for sort, number in pieces for _ in range(number))
                    cuts.append(Cut(stock_mm, lengths_mm))
                    return cuts
        if self.steps_left > 0:
            self._failed[demand] = cost
        return None


def _value(values: Sequence[float], demand: Demand) -> float:
    return sum([value * number for value, number in zip(values, demand, strict=True) if number])


def _contents(lengths_mm: Sequence[int], stock_mm: Sequence[int], kerf_mm: float) -> list[_Content]:
    """Everything that can be cut from one stock length, the shortest that will do; the saw takes its kerf between pieces."""
    found: list[_Content] = []
    waiting: list[tuple[float, tuple[int, ...]]] = [
        (float(length_mm), (sort,)) for sort, length_mm in enumerate(lengths_mm) if length_mm <= stock_mm[-1]
    ]
    while waiting:
        used_mm, sorts = waiting.pop()
        shortest_mm = next(length_mm for length_mm in stock_mm if length_mm >= used_mm)
        spare_mm = shortest_mm - used_mm - kerf_mm
        room = next((sort for sort, more_mm in enumerate(lengths_mm) if more_mm <= spare_mm), len(lengths_mm))
        pieces = tuple((sort, sorts.count(sort)) for sort in dict.fromkeys(sorts))
        found.append(_Content(shortest_mm, pieces, room))
        for sort in range(sorts[-1], len(lengths_mm)):
            more_mm = used_mm + kerf_mm + lengths_mm[sort]
            if more_mm <= stock_mm[-1]:
                waiting.append((more_mm, (*sorts, sort)))
    return found
