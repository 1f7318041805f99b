"""The room for the perps: which first perps, covers and least pieces a set of conditions leaves.

Every condition is a straight line in the first perp f, the cover c and the least piece t. Each lower bound on f with
each upper bound on f leaves a straight condition on c and t alone; so the covers that are possible, and the widest
least piece at the best of them, follow exactly.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import inf
from typing import NamedTuple


class Line(NamedTuple):
    """A bound on the first perp: ``mm + cover_ratio × c``, tightened by ``piece_ratio`` × the least piece."""

    mm: float
    cover_ratio: float
    piece_ratio: float = 0.0


NOISE_MM = 1e-9
"""Conditions may miss by this much: the noise of floats, a thousandth of what counts as touching."""


@dataclass(frozen=True, slots=True)
class Room:
    """What the conditions so far leave of first perp and cover.

    ``lower`` and ``upper`` bound the first perp, ``closed_mm`` to ``open_mm`` the cover; ``ceilings`` are the lines
    (mm, ratio) under which the least piece must stay: least piece ≤ mm + ratio × c.
    """

    closed_mm: float
    open_mm: float
    lower: tuple[Line, ...] = ()
    upper: tuple[Line, ...] = ()
    ceilings: tuple[tuple[float, float], ...] = ()

    def narrowed(
        self, *, lower: Sequence[Line], upper: Sequence[Line], ceilings: Sequence[tuple[float, float]]
    ) -> "Room | None":
        """The room that is left with more bounds on the first perp; None when nothing is left."""
        closed_mm, open_mm = self.closed_mm, self.open_mm
        over = [*self.ceilings, *ceilings]
        for low, high in _pairs(old_lower=self.lower, old_upper=self.upper, lower=lower, upper=upper):
            gap_mm, slope = high.mm - low.mm, high.cover_ratio - low.cover_ratio
            pieces = low.piece_ratio + high.piece_ratio
            if pieces:
                over.append((gap_mm / pieces, slope / pieces))
            elif slope > 0:
                closed_mm = max(closed_mm, -gap_mm / slope)
            elif slope < 0:
                open_mm = min(open_mm, -gap_mm / slope)
            elif gap_mm < -NOISE_MM:
                return None
            if closed_mm > open_mm + NOISE_MM:
                return None
        if closed_mm > open_mm:
            closed_mm = open_mm = min(max((closed_mm + open_mm) / 2, self.closed_mm), self.open_mm)
        return Room(closed_mm, open_mm, (*self.lower, *lower), (*self.upper, *upper), tuple(over))

    def first_perp_reach_mm(self) -> tuple[float, float]:
        """Least and greatest first perp that any one bound allows."""
        covers = (self.closed_mm, self.open_mm)
        return (
            max((min(line.mm + line.cover_ratio * cover for cover in covers) for line in self.lower), default=-inf),
            min((max(line.mm + line.cover_ratio * cover for cover in covers) for line in self.upper), default=inf),
        )

    def least_piece_mm(self) -> float:
        """The widest the least piece can be: the top of the lower envelope of the ceilings."""
        left, right = self.closed_mm, self.open_mm
        while True:
            at_left = min((mm + ratio * left, ratio, mm) for mm, ratio in self.ceilings)
            at_right = min((mm + ratio * right, -ratio, mm) for mm, ratio in self.ceilings)
            if at_left[1] <= 0:
                return at_left[0]
            if at_right[1] <= 0:
                return at_right[0]
            between = (at_right[2] - at_left[2]) / (at_left[1] + at_right[1])
            height_mm = at_left[2] + at_left[1] * between
            lowest, ratio = min((mm + ratio * between, ratio) for mm, ratio in self.ceilings)
            if lowest >= height_mm - NOISE_MM:
                return lowest
            left, right = (between, right) if ratio > 0 else (left, between)

    def holding(self, least_piece_mm: float) -> "Room":
        """The same room with the least piece settled; it must not be more than the widest."""
        closed_mm, open_mm = self.closed_mm, self.open_mm
        for mm, ratio in self.ceilings:
            if ratio > 0:
                closed_mm = max(closed_mm, (least_piece_mm - mm) / ratio)
            elif ratio < 0:
                open_mm = min(open_mm, (least_piece_mm - mm) / ratio)
        return Room(
            min(closed_mm, self.open_mm),
            max(open_mm, min(closed_mm, self.open_mm)),
            tuple(Line(line.mm + line.piece_ratio * least_piece_mm, line.cover_ratio) for line in self.lower),
            tuple(Line(line.mm - line.piece_ratio * least_piece_mm, line.cover_ratio) for line in self.upper),
        )

    def cover_nearest_mm(self, wished_mm: float) -> float:
        """The cover in this room nearest to the one wished."""
        return min(max(wished_mm, self.closed_mm), self.open_mm)

    def first_perp_mm(self, cover_mm: float) -> tuple[float, float]:
        """From where to where the first perp may be at this cover."""
        least = max(line.mm + line.cover_ratio * cover_mm for line in self.lower)
        most = min(line.mm + line.cover_ratio * cover_mm for line in self.upper)
        return (least, most) if least <= most else ((least + most) / 2, (least + most) / 2)


def _pairs(
    *, old_lower: Sequence[Line], old_upper: Sequence[Line], lower: Sequence[Line], upper: Sequence[Line]
) -> Iterator[tuple[Line, Line]]:
    for low in lower:
        for high in old_upper:
            yield low, high
        for high in upper:
            yield low, high
    for high in upper:
        for low in old_lower:
            yield low, high
