"""Where the battens run between the stations: straight from rod to rod, and on past the outermost two."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.courses import Rod


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenLines:
    """The battens of a slope, by the top edges on its rods. ``width_mm`` is the batten's, along the slope."""

    rods: tuple[Rod, ...]
    width_mm: float

    @property
    def count(self) -> int:
        """How many battens; none where the courses are not set out."""
        return len(self.rods[0].marks_mm) if self.rods else 0

    def top_edge_mm(self, batten: int, x_mm: float) -> float:
        """The top edge of batten ``batten`` (0 the first) at x."""
        if len(self.rods) == 1:
            return self.rods[0].marks_mm[batten]
        places = [rod.at_mm for rod in self.rods]
        right = min(max(bisect_right(places, x_mm), 1), len(places) - 1)
        a, b = self.rods[right - 1], self.rods[right]
        share = (x_mm - a.at_mm) / (b.at_mm - a.at_mm)
        return a.marks_mm[batten] + (b.marks_mm[batten] - a.marks_mm[batten]) * share

    def bounds_mm(self, batten: int, *, from_mm: float, to_mm: float) -> tuple[float, float]:
        """The lowest the batten's lower edge comes, and the highest its top edge, between two places along the eaves."""
        places = [from_mm, to_mm, *(rod.at_mm for rod in self.rods if from_mm < rod.at_mm < to_mm)]
        tops = [self.top_edge_mm(batten, x_mm) for x_mm in places]
        return min(tops) - self.width_mm, max(tops)

    def on_lap(self, *, low_mm: float, high_mm: float, from_mm: float, to_mm: float) -> int | None:
        """The highest batten that lies wholly on a lap from low to high, all along it; None when there is none."""
        below = self.highest_under(high_mm, from_mm=from_mm, to_mm=to_mm)
        if below is None or self.bounds_mm(below, from_mm=from_mm, to_mm=to_mm)[0] < low_mm - TOUCH:
            return None
        return below

    def highest_under(self, high_mm: float, *, from_mm: float, to_mm: float) -> int | None:
        """The highest batten whose top edge stays at or below a height, all along; None when there is none."""
        under = [
            batten
            for batten in range(self.count)
            if self.bounds_mm(batten, from_mm=from_mm, to_mm=to_mm)[1] <= high_mm + TOUCH
        ]
        return max(under, default=None)

    def clear_mm(self, *, low_mm: float, high_mm: float, from_mm: float, to_mm: float) -> tuple[float, float]:
        """What the battens that reach into a lap from below and from above leave of it. Nothing is left when it runs backwards."""
        below = self.highest_under(high_mm, from_mm=from_mm, to_mm=to_mm)
        above = 0 if below is None else below + 1
        if below is not None:
            low_mm = max(low_mm, self.bounds_mm(below, from_mm=from_mm, to_mm=to_mm)[1])
        if above < self.count:
            high_mm = min(high_mm, self.bounds_mm(above, from_mm=from_mm, to_mm=to_mm)[0])
        return low_mm, high_mm


def greatest_gap_mm(rods: Sequence[Rod]) -> float | None:
    """The greatest gap between battens on any rod; None where there is none."""
    gaps = [gap for rod in rods for gap in rod.gaps_mm]
    return max(gaps, default=None)
