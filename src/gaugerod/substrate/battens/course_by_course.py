"""The joints of every batten chosen from the eaves up, each as cheap as the ones below it leave room for.

For slopes whose battens differ: hips, valleys, openings. On equal battens it comes to a repeating pattern by itself. A
batten left without any way makes its rafters dearer for the battens just below it, and the whole is tried again.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from gaugerod.rules.batten_joints import Stagger
from gaugerod.substrate.battens.ways import Ways, cheapest_way

TRIES_COUNT = 12
TOLL = 1.0
"""A joint costs as much as a millimetre of batten: of two ways that buy the same, the one with fewer joints."""
DEARER = 400.0
"""What a rafter costs more, for each time a batten found it closed, to the battens below that one."""
OFTEN = 100.0
"""What a rafter costs more, from try to try, for each joint it has lately: so that the joints are spread over the rafters."""
TASTES_COUNT, TASTE_RATIO = 17, 0.06
"""How many tastes there are, and how much dearer the least liked length is than the most liked."""
MIXED_RATIO, MIXED_MM = 1.01, 5.0
"""What a piece that must share its stock length costs over its own length: about what is left over when many are mixed."""


@dataclass(frozen=True, slots=True)
class CourseWays:
    """One batten: its number from the eaves, the ways of each of its stretches, and every rafter that crosses it."""

    number: int
    stretches: tuple[Ways, ...]
    crossed: frozenset[int]


@dataclass(frozen=True, slots=True)
class Stuck:
    """No way was found for this batten (its place in the list) with the joints that the ones below it have.

    ``impossible``  it has no way even with every rafter free
    """

    course: int
    impossible: bool


CourseJoints = tuple[tuple[int, ...], ...]
"""For each stretch of one batten, the places it is joined at."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePrice:
    """About what a piece costs: itself, where a stock length is just so long; else what shares its length with it decides.

    ``taste``  another number likes other lengths a little better: to try several mixtures and keep the best
    """

    stock_mm: tuple[int, ...]
    least_piece_mm: int
    kerf_mm: float
    taste: int = 0

    def price_mm(self, length_mm: int) -> float:
        """The price of a piece, in mm of stock."""
        shortest_mm = min(stock_mm for stock_mm in self.stock_mm if stock_mm >= length_mm)
        if shortest_mm == length_mm or length_mm + self.kerf_mm + self.least_piece_mm > max(self.stock_mm):
            return float(shortest_mm)
        liked = length_mm * self.taste % TASTES_COUNT / TASTES_COUNT
        return length_mm * (MIXED_RATIO + TASTE_RATIO * liked) + MIXED_MM


def joints_course_by_course(
    courses: Sequence[CourseWays], *, stagger: Stagger, price: PiecePrice
) -> tuple[CourseJoints, ...] | Stuck:
    """The joints of every batten, no window of consecutive battens breaking the stagger; or where it got stuck."""
    prices: dict[int, float] = {}

    def price_mm(length_mm: int) -> float:
        if length_mm not in prices:
            prices[length_mm] = price.price_mm(length_mm)
        return prices[length_mm]

    for at, course in enumerate(courses):
        for ways in course.stretches:
            if cheapest_way(ways, closed=(), price=price_mm, toll=lambda _: TOLL) is None:
                return Stuck(at, impossible=True)
    dearer: dict[tuple[int, int], float] = {}
    found: tuple[CourseJoints, ...] | Stuck = ()
    for tries in range(TRIES_COUNT):
        found = _once(courses, stagger, price_mm, dearer, often_mm=tries * OFTEN)
        if not isinstance(found, Stuck):
            return found
        wanted = {rafter for ways in courses[found.course].stretches for rafter in ways.rafters}
        for below in range(max(0, found.course - stagger.window_count), found.course):
            for rafter in wanted:
                dearer[below, rafter] = dearer.get((below, rafter), 0.0) + DEARER
    return found


def _once(
    courses: Sequence[CourseWays],
    stagger: Stagger,
    price: Callable[[int], float],
    dearer: dict[tuple[int, int], float],
    *,
    often_mm: float,
) -> tuple[CourseJoints, ...] | Stuck:
    history: dict[int, list[bool]] = {}
    found = []
    for at, course in enumerate(courses):
        lately = {rafter: history.get(rafter, [])[1 - stagger.window_count :] for rafter in course.crossed}
        closed = {rafter for rafter, joined in lately.items() if not stagger.allows([*joined, True])}
        joints = []
        tolls = {
            rafter: TOLL + dearer.get((at, rafter), 0.0) + often_mm * sum(joined) for rafter, joined in lately.items()
        }
        for ways in course.stretches:
            way = cheapest_way(ways, closed=closed, price=price, toll=tolls.__getitem__)
            if way is None:
                return Stuck(at, impossible=False)
            joints.append(way)
        joined = {ways.rafters[place] for ways, way in zip(course.stretches, joints, strict=True) for place in way}
        for rafter in course.crossed:
            history.setdefault(rafter, []).append(rafter in joined)
        found.append(tuple(joints))
    return tuple(found)
