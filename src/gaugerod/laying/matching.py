"""The most pairs: of things that may go two by two, as many pairs as there can be.

Maximum matching in a general graph by growing alternating trees and closing odd rings of pairs and non-pairs into one
(Edmonds, "Paths, trees, and flowers", Canadian Journal of Mathematics 17, 1965). Who may go with whom is a set of
bits for each, so a dense graph costs no more than a thin one.
"""

from collections import deque
from collections.abc import Iterator, Sequence


def most_pairs(partners: Sequence[int]) -> tuple[tuple[int, int], ...]:
    """As many pairs as there can be; ``partners[i]`` has bit j set when i may go with j, and the other way round.

    >>> most_pairs([0b0110, 0b0101, 0b1011, 0b0100])
    ((0, 1), (2, 3))
    """
    search = _Search(partners)
    for one in sorted(range(len(partners)), key=lambda at: partners[at].bit_count()):
        search.pair_at_once(one)
    for one in range(len(partners)):
        if search.mate[one] < 0 and partners[one]:
            search.grow_from(one)
    return tuple((one, other) for one, other in enumerate(search.mate) if other > one)


def bits(mask: int) -> Iterator[int]:
    """The numbers of the bits that are set, lowest first."""
    while mask:
        lowest = mask & -mask
        yield lowest.bit_length() - 1
        mask ^= lowest


class _Search:
    """One search after another for a path that starts and ends at someone alone and turns pairs about on its way."""

    def __init__(self, partners: Sequence[int]) -> None:
        self.partners = list(partners)
        self.mate = [-1] * len(partners)
        self.left = (1 << len(partners)) - 1
        """Those not yet known to be beyond help: a tree that found no path never will."""

    def pair_at_once(self, one: int) -> None:
        """Pair one with whoever still alone has the fewest choices."""
        if self.mate[one] >= 0:
            return
        alone = [other for other in bits(self.partners[one]) if self.mate[other] < 0]
        if alone:
            other = min(alone, key=lambda at: self.partners[at].bit_count())
            self.mate[one], self.mate[other] = other, one

    def grow_from(self, root: int) -> None:
        """Grow the tree of alternating paths from someone alone; at someone else alone, turn the path about."""
        self.root = root
        self.base = list(range(len(self.mate)))
        self.before = [-1] * len(self.mate)
        self.seen = self.outer = 1 << root
        self.waiting = deque([root])
        while self.waiting:
            here = self.waiting.popleft()
            for to in bits(self.partners[here] & self.left & ~self.seen):
                if self.seen >> to & 1:
                    continue
                self.before[to] = here
                self.seen |= 1 << to
                mate = self.mate[to]
                if mate < 0:
                    self._turn_about(to)
                    return
                self.seen |= 1 << mate
                self._make_outer(mate)
            for to in bits(self.partners[here] & self.outer):
                if self.base[to] != self.base[here]:
                    self._close_ring(here, to)
        self.left &= ~self.seen

    def _make_outer(self, at: int) -> None:
        if not self.outer >> at & 1:
            self.outer |= 1 << at
            self.waiting.append(at)

    def _turn_about(self, end: int) -> None:
        while end >= 0:
            before = self.before[end]
            following = self.mate[before]
            self.mate[end], self.mate[before] = before, end
            end = following

    def _close_ring(self, one: int, other: int) -> None:
        """An edge between two outer ones closes an odd ring: all of it becomes outer, with one base."""
        base = self._shared_base(one, other)
        ring: set[int] = set()
        self._mark_path(one, base, other, ring)
        self._mark_path(other, base, one, ring)
        for at in bits(self.seen):
            if self.base[at] in ring:
                self.base[at] = base
                self._make_outer(at)

    def _shared_base(self, one: int, other: int) -> int:
        passed = set()
        while True:
            one = self.base[one]
            passed.add(one)
            if one == self.root:
                break
            one = self.before[self.mate[one]]
        while self.base[other] not in passed:
            other = self.before[self.mate[self.base[other]]]
        return self.base[other]

    def _mark_path(self, at: int, base: int, child: int, ring: set[int]) -> None:
        while self.base[at] != base:
            mate = self.mate[at]
            ring |= {self.base[at], self.base[mate]}
            self.before[at] = child
            child = mate
            at = self.before[mate]
