"""What leaks first: the short laps in the order a house ranking puts them.

A lap that lies open lets rain straight in, so those come first. The rest are ranked by the part of the lap that is
missing times the part of the slope that drains over it: of two laps as short, the lower one carries more water.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.basis.citation import house

RANKING = house(
    "open laps first; then the part of the lap that is missing × the part of the slope that drains over it, greatest first"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Leak:
    """A course whose lap is short, at the place where it is worst.

    ``missing_ratio``  the part of the least lap that is missing; over 1 when the lap lies open
    ``water_ratio``    the part of the rafter that lies above the lap and drains over it
    """

    rank: int
    lap: LapAsBuilt
    missing_ratio: float
    water_ratio: float

    @property
    def is_open(self) -> bool:
        """Does the course below show between them?"""
        return self.lap.lap_mm < 0


def leaks_first(laps: Sequence[LapAsBuilt], *, least_mm: float, lengths_mm: dict[float, float]) -> tuple[Leak, ...]:
    """The courses with a short lap, what leaks first leading; ``lengths_mm`` is the rafter at each place.

    Source: a house ranking, see the head of this page. Scope: rain that runs down; wind may drive it in elsewhere.
    """
    worst: dict[int, LapAsBuilt] = {}
    for lap in laps:
        if lap.is_short and (lap.course not in worst or lap.short_by_mm > worst[lap.course].short_by_mm):
            worst[lap.course] = lap
    ordered = sorted(_unranked(worst.values(), least_mm=least_mm, lengths_mm=lengths_mm), key=_first)
    return tuple(
        Leak(rank=rank, lap=lap, missing_ratio=missing, water_ratio=water)
        for rank, (lap, missing, water) in enumerate(ordered, 1)
    )


def _unranked(
    laps: Iterable[LapAsBuilt], *, least_mm: float, lengths_mm: dict[float, float]
) -> Iterable[tuple[LapAsBuilt, float, float]]:
    for lap in laps:
        yield lap, lap.short_by_mm / least_mm, water_ratio(tail_mm=lap.tail_mm, length_mm=lengths_mm[lap.at_mm])


def _first(unranked: tuple[LapAsBuilt, float, float]) -> tuple[bool, float, int]:
    lap, missing, water = unranked
    return lap.lap_mm >= 0, -missing * water, lap.course


def water_ratio(*, tail_mm: float, length_mm: float) -> float:
    """The part of the rafter that drains over a tail at this place up the slope.

    >>> water_ratio(tail_mm=1200.0, length_mm=4800.0)
    0.75
    """
    return (length_mm - tail_mm) / length_mm
