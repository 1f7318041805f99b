"""Pieces of many lengths out of stock lengths: the longest first, each with the pieces that best fill what is left.

Work: near to a sort, so that a whole roof is cut in a few milliseconds. It is no proof of the least; the answer says so.
"""

from bisect import bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from gaugerod.substrate.battens.exact_cutting import Cut

FULL_MM = 2
"""A length with no more than this left over is full: looking further would not pay."""
WORTH_A_SECOND_MM = 10
"""With one piece more and no more than this left over, no pair of pieces is looked for."""


class _Filling(NamedTuple):
    """What a stock length would take besides its longest piece: waste over length, the length, places in the list."""

    waste_ratio: float
    stock_mm: int
    places: tuple[int, ...]


def cut_longest_first(pieces_mm: Sequence[int], *, stock_mm: Sequence[int], kerf_mm: float) -> tuple[Cut, ...]:
    """Every piece cut from some stock length. mm.

    >>> cut_longest_first([2400, 3000, 1800, 4800], stock_mm=(4200, 4800), kerf_mm=0.0)
    (Cut(stock_mm=4800, pieces_mm=(4800,)), Cut(stock_mm=4800, pieces_mm=(3000, 1800)), Cut(stock_mm=4200, pieces_mm=(2400,)))
    """
    left = sorted(pieces_mm)
    cuts = []
    while left:
        longest_mm = left.pop()
        best = min(
            _filling(longest_mm, left, stock_mm=length_mm, kerf_mm=kerf_mm)
            for length_mm in stock_mm
            if length_mm >= longest_mm
        )
        others = [left.pop(place) for place in sorted(best.places, reverse=True)]
        cuts.append(Cut(best.stock_mm, (longest_mm, *others)))
    return tuple(cuts)


def _filling(longest_mm: int, left: Sequence[int], *, stock_mm: int, kerf_mm: float) -> _Filling:
    """The best one or two pieces beside the longest."""
    waste_mm, places = float(stock_mm - longest_mm), tuple[int, ...]()
    room_mm = waste_mm - kerf_mm
    if left and room_mm >= left[0]:
        one = bisect_right(left, room_mm) - 1
        waste_mm, places = room_mm - left[one], (one,)
        if waste_mm > WORTH_A_SECOND_MM:
            waste_mm, places = _two(left, room_mm - kerf_mm, (waste_mm, places))
    return _Filling(waste_mm / stock_mm, stock_mm, places)


def _two(left: Sequence[int], room_mm: float, best: tuple[float, tuple[int, ...]]) -> tuple[float, tuple[int, ...]]:
    """The best pair for the room, where it is better than what is had; ``room_mm`` is less the kerf between them."""
    tried = None
    for first, length_mm in enumerate(left):
        if 2 * length_mm > room_mm or best[0] <= FULL_MM:
            break
        if length_mm != tried:
            tried = length_mm
            second = bisect_right(left, room_mm - length_mm) - 1
            if second > first:
                best = min(best, (room_mm - length_mm - left[second], (first, second)))
    return best
