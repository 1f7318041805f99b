"""A pattern of courses that repeats, A B C D A B …: the one that buys the least stock, then the fewest lengths.

Scope: every batten of the slope alike, from the same left end to the same right end. With no two of the repeated courses
joined on the same rafter, no window of so many consecutive battens has two joints on one rafter: the rule for gauges over
200 mm, and within the rule for closer ones.

The search is exact over every choice of ways for the repeated courses with no more pieces to a course than
``most_pieces``: it takes the ways in order of the value of their pieces, leaves a branch when the least it can cost
passes the best, and asks the exact cutting for the rest. The allowance for waste grows step by step from nothing, so the
first answer found is near the best, and failure with all of it is proof.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import reduce
from math import gcd
from typing import NamedTuple

from gaugerod.substrate.battens.exact_cutting import NOISE, OF_A_MM, Cut, ExactCutting, cost_of
from gaugerod.substrate.battens.piece_values import Demand
from gaugerod.substrate.battens.ways import Ways, every_way, fewest_pieces_count

MOST_WAYS_COUNT = 2_000
MOST_LENGTHS_COUNT = 24
STEPS_COUNT = 80_000
"""How large a search is begun, and how long it is carried on. Counts, not a clock: the same roof, the same answer."""
PAIRS_A_STEP = 50
"""So many pairs of ways held against each other are one step of the search."""
VALUES_A_STEP = 8
"""So many sets of values a pattern is held against are one step more."""
EXTRA_PIECES_COUNT = 1
"""A course may have so many pieces more than it needs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeating:
    """The joints of each course of the pattern, in order, and the cuts that make every course.

    ``most_pieces``  of a course, in the patterns looked through; ``proved``: no pattern among them costs less
    """

    courses: tuple[tuple[int, ...], ...]
    cuts: tuple[Cut, ...]
    most_pieces: int
    proved: bool


def best_repeating(
    ways: Ways, *, courses_count: int, repeat_count: int, stock_mm: Sequence[int], kerf_mm: float
) -> Repeating | None:
    """The best pattern that repeats after so many courses; None where none was found, or the search would be too large."""
    fewest = fewest_pieces_count(ways)
    if fewest is None:
        return None
    most_pieces = fewest + EXTRA_PIECES_COUNT
    joined = every_way(ways, most_pieces=most_pieces, limit_count=MOST_WAYS_COUNT)
    if joined is None:
        return None
    pieces = [ways.pieces_mm(joints) for joints in joined]
    lengths_mm = sorted({length_mm for lengths in pieces for length_mm in lengths}, reverse=True)
    if len(lengths_mm) > MOST_LENGTHS_COUNT:
        return None
    cutting = ExactCutting(tuple(lengths_mm), tuple(stock_mm), kerf_mm, STEPS_COUNT)
    search = _Search(
        cutting=cutting,
        sorts=_sorts(cutting, joined, pieces),
        times=tuple(
            len(range(course, courses_count, repeat_count)) for course in range(min(repeat_count, courses_count))
        ),
    )
    chosen = search.run(step_mm=reduce(gcd, stock_mm))
    if chosen is None:
        return None
    courses, cuts = _unjoined_if_as_good(ways, chosen, courses_count=courses_count, stock_mm=stock_mm)
    return Repeating(courses=courses, cuts=tuple(cuts), most_pieces=most_pieces, proved=cutting.steps_left > 0)


class _Chosen(NamedTuple):
    """The best so far: the joints of each course of the pattern, and the cuts of the whole slope."""

    courses: tuple[tuple[int, ...], ...]
    cuts: list[Cut]


def _unjoined_if_as_good(ways: Ways, chosen: _Chosen, *, courses_count: int, stock_mm: Sequence[int]) -> _Chosen:
    """One piece from end to end, where that costs no more: no joint is better than a staggered one."""
    whole_mm = dict(ways.steps[0]).get(ways.last)
    if whole_mm is None:
        return chosen
    shortest_mm = min(length_mm for length_mm in stock_mm if length_mm >= whole_mm)
    cuts = [Cut(shortest_mm, (whole_mm,))] * courses_count
    return _Chosen(tuple(() for _ in chosen.courses), cuts) if cost_of(cuts) <= cost_of(chosen.cuts) else chosen


class _Sort(NamedTuple):
    """All ways with the same pieces in whatever order: their value, how many of each length, and their joints."""

    value: float
    pieces: Demand
    joints: tuple[tuple[int, tuple[int, ...]], ...]
    """The rafters joined, as the bits of a number; and the same as places."""


def _sorts(cutting: ExactCutting, joined: Sequence[tuple[int, ...]], pieces: Sequence[tuple[int, ...]]) -> list[_Sort]:
    by_pieces: dict[Demand, list[tuple[int, tuple[int, ...]]]] = {}
    for joints, lengths in zip(joined, pieces, strict=True):
        number = Counter(lengths)
        demand = tuple(number[length_mm] for length_mm in cutting.lengths_mm)
        by_pieces.setdefault(demand, []).append((sum(1 << place for place in joints), joints))
    own = cutting.values[0]
    return sorted(
        _Sort(sum(map(float.__mul__, own, map(float, demand))), demand, tuple(joints))
        for demand, joints in by_pieces.items()
    )


Taken = dict[int, tuple[tuple[int, ...], ...]]
"""Rafters joined in the courses so far, as bits, with one choice of joints for each course that gives them."""


@dataclass(slots=True)
class _Search:
    """Chooses the sort of ways of each repeated course. ``times``: how often each of them is laid, most often first."""

    cutting: ExactCutting
    sorts: list[_Sort]
    times: tuple[int, ...]
    limit: int = 0
    best: _Chosen | None = None
    taken: dict[tuple[int, ...], Taken] = field(default_factory=lambda: {(): {0: ()}})
    worth: list[tuple[list[float], float]] = field(default_factory=list)
    """For each set of values the cutting has found: the value of each sort, and the least of them."""

    def run(self, *, step_mm: int) -> _Chosen | None:
        """Search with more and more stock allowed, until a pattern is found or the steps are used up."""
        if not self._any_pattern():
            return None
        least_mm = sum(self.times) * self.sorts[0].value / OF_A_MM
        allowed_mm, more_mm = (int(least_mm - NOISE) // step_mm + 1) * step_mm, step_mm
        while self.best is None and self.cutting.steps_left > 0:
            self.limit = (allowed_mm + 1) * OF_A_MM
            self._choose((), first=0, demand=tuple(0 for _ in self.cutting.lengths_mm))
            allowed_mm, more_mm = allowed_mm + more_mm, 2 * more_mm
        return self.best

    def _any_pattern(self) -> bool:
        """Is there a pattern at all, whatever it costs? Each course takes rafters none before it took."""
        every = [bits for sort in self.sorts for bits, _ in sort.joints]
        reached = {0}
        for _ in self.times:
            reached = {so_far | bits for so_far in reached for bits in every if not so_far & bits}
            if 0 in reached or len(reached) > MOST_WAYS_COUNT:
                return True
        return bool(reached)

    def _choose(self, chosen: tuple[int, ...], *, first: int, demand: Demand) -> None:
        at = len(chosen)
        if at == len(self.times):
            self._cut(chosen, demand)
            return
        times = self.times[at]
        alike = self.times[at + 1 :].count(times)
        for number in range(first, len(self.sorts)):
            self.cutting.steps_left -= 1 + len(self.worth) // VALUES_A_STEP
            if self.cutting.steps_left <= 0:
                return
            if not self._can_be(chosen, number) or not self._joints(chosen, number):
                continue
            more = self.sorts[number].pieces
            self._choose(
                (*chosen, number),
                first=number if alike else 0,
                demand=tuple([had + times * new for had, new in zip(demand, more, strict=True)]),
            )

    def _can_be(self, chosen: tuple[int, ...], number: int) -> bool:
        """Can these courses, with this one more, still cost less than the limit, by every set of values?"""
        for values in self.cutting.values[len(self.worth) :]:
            each = [
                sum([value * many for value, many in zip(values, sort.pieces, strict=True) if many])
                for sort in self.sorts
            ]
            self.worth.append((each, min(each)))
        at = len(chosen)
        later = sum(self.times[at + 1 :])
        for each, least in self.worth:
            cost = self.times[at] * each[number] + later * least
            for earlier, times in zip(chosen, self.times, strict=False):
                cost += times * each[earlier]
            if cost > self.limit - 1 + NOISE:
                return False
        return True

    def _joints(self, chosen: tuple[int, ...], number: int) -> Taken:
        """The ways to joint one course more, none of its rafters joined in the courses before it."""
        key = (*chosen, number)
        if key not in self.taken:
            self.cutting.steps_left -= len(self.taken[chosen]) * len(self.sorts[number].joints) // PAIRS_A_STEP
            self.taken[key] = {
                so_far | bits: (*courses, joints)
                for so_far, courses in self.taken[chosen].items()
                for bits, joints in self.sorts[number].joints
                if not so_far & bits
            }
        return self.taken[key]

    def _cut(self, chosen: tuple[int, ...], demand: Demand) -> None:
        """Cut what these courses need, better and better, until it cannot be better than the limit."""
        while (cuts := self.cutting.cuts_within(demand, self.limit - 1)) is not None:
            self.limit = cost_of(cuts)
            self.best = _Chosen(next(iter(self.taken[chosen].values())), cuts)
