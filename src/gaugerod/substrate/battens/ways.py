"""The ways one stretch of a batten can be made up of pieces that each keep the rules of length and support.

The places it can end or be joined are numbered from the left: 0 is its left end, then every rafter that crosses it, then
its right end. A piece runs from one place to a later one.
"""

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass
from math import ceil, inf

from gaugerod.basis.finding import TOUCH
from gaugerod.substrate.battens.lines import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceRules:
    """What every piece must keep, mm in whole millimetres: least and greatest length, and the supports under it."""

    least_mm: int
    greatest_mm: int
    supports_count: int
    same_support_mm: float


@dataclass(frozen=True, slots=True)
class Ways:
    """One stretch with its places. (Made by the hundred: positional.)

    ``rafters``  the number of the rafter at each place, from 0; −1 at the two ends
    ``steps``    for each place, the places a piece from there may run to, each with the piece's length
    """

    rafters: tuple[int, ...]
    steps: tuple[tuple[tuple[int, int], ...], ...]

    @property
    def last(self) -> int:
        """The number of the right end."""
        return len(self.rafters) - 1

    def pieces_mm(self, joints: Sequence[int]) -> tuple[int, ...]:
        """The lengths of the pieces, left to right, when it is joined at these places."""
        starts, ends = (0, *joints), (*joints, self.last)
        return tuple(dict(self.steps[start])[end] for start, end in zip(starts, ends, strict=True))


def ways_of(span: Span, rafters_mm: Sequence[float], rules: PieceRules) -> Ways:
    """The places of a stretch, and the pieces between them.

    A stretch that is itself too short for the rules may be one piece from end to end: no longer one fits there.
    Lengths are whole millimetres, up.
    """
    crossed = [
        number for number, at_mm in enumerate(rafters_mm) if span.left.at_mm + TOUCH < at_mm < span.right.at_mm - TOUCH
    ]
    places_mm = [span.left.at_mm, *(rafters_mm[number] for number in crossed), span.right.at_mm]
    last = len(places_mm) - 1
    under = supports_up_to(span, places_mm, rafters_mm, rules)
    steps: list[tuple[tuple[int, int], ...]] = []
    for start in range(last):
        here: list[tuple[int, int]] = []
        for end in range(start + 1, last + 1):
            exact_mm = (places_mm[end] - places_mm[start]) * span.along_ratio
            length_mm = ceil(exact_mm - TOUCH)
            if length_mm > rules.greatest_mm:
                break
            supports_count = under[end] - (under[start - 1] if start else 0)
            whole = start == 0 and end == last
            if whole or (exact_mm >= rules.least_mm - TOUCH and supports_count >= rules.supports_count):
                here.append((end, length_mm))
        steps.append(tuple(here))
    return Ways((-1, *crossed, -1), (*steps, ()))


def supports_up_to(span: Span, places_mm: Sequence[float], rafters_mm: Sequence[float], rules: PieceRules) -> list[int]:
    """How many supports stand at or left of each place.

    A rafter right under an end holds it up. One on top of a hip rafter, board or trimmer is one with it.
    """
    last = len(places_mm) - 1
    held_left, held_right = (end.held or _stands_at(end.at_mm, rafters_mm) for end in (span.left, span.right))
    under: list[int] = []
    for place, at_mm in enumerate(places_mm):
        if place == 0:
            holds = held_left
        elif place == last:
            holds = held_right
        else:
            on_left = span.left.held and at_mm - places_mm[0] < rules.same_support_mm
            on_right = span.right.held and places_mm[last] - at_mm < rules.same_support_mm
            holds = not (on_left or on_right)
        under.append((under[-1] if under else 0) + holds)
    return under


def _stands_at(at_mm: float, rafters_mm: Sequence[float]) -> bool:
    return any(at_mm - TOUCH <= rafter_mm <= at_mm + TOUCH for rafter_mm in rafters_mm)


def fewest_pieces_count(ways: Ways) -> int | None:
    """The fewest pieces that make up the stretch; None where no pieces do."""
    fewest: list[int | None] = [0, *[None] * ways.last]
    for start, steps in enumerate(ways.steps):
        so_far = fewest[start]
        if so_far is None:
            continue
        for end, _ in steps:
            there = fewest[end]
            if there is None or so_far + 1 < there:
                fewest[end] = so_far + 1
    return fewest[-1]


def every_way(ways: Ways, *, most_pieces: int, limit_count: int) -> list[tuple[int, ...]] | None:
    """The joints of every way of at most so many pieces; None when there are more ways than the limit."""
    found: list[tuple[int, ...]] = []
    waiting: list[tuple[int, ...]] = [(0,)]
    while waiting:
        so_far = waiting.pop()
        for end, _ in ways.steps[so_far[-1]]:
            if end == ways.last:
                found.append(so_far[1:])
            elif len(so_far) < most_pieces:
                waiting.append((*so_far, end))
        if len(found) > limit_count or len(waiting) > limit_count:
            return None
    return sorted(found)


def cheapest_way(
    ways: Ways, *, closed: Collection[int], price: Callable[[int], float], toll: Callable[[int], float]
) -> tuple[int, ...] | None:
    """The joints of the way with the least price, no joint on a ``closed`` rafter; None where there is none.

    ``price`` is that of a piece of a length (mm), ``toll`` that of a joint on a rafter.
    """
    cost = [0.0, *[inf] * ways.last]
    came_from = [0] * len(cost)
    for start, steps in enumerate(ways.steps):
        so_far = cost[start]
        if so_far == inf:
            continue
        for end, length_mm in steps:
            there = so_far + price(length_mm)
            if end < ways.last:
                if ways.rafters[end] in closed:
                    continue
                there += toll(ways.rafters[end])
            if there < cost[end]:
                cost[end], came_from[end] = there, start
    if cost[-1] == inf:
        return None
    joints: list[int] = []
    place = came_from[-1]
    while place:
        joints.append(place)
        place = came_from[place]
    return tuple(reversed(joints))
