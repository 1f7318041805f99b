"""The window of the drawing that is tapped on: which part of the plan it shows, and on which grid."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor

from gaugerod.geometry.polygon import Point, bounding_box_mm
from gaugerod.web.pages.plan.outline_typed import number_typed, number_written

WIDTH = 100.0
"""Units of the drawing from left to right."""
_HIGH_TO_WIDE_RATIO = 0.75
_AROUND_RATIO = 1.3
"""Room about the outline, so that a corner can be tapped outside it (house choice)."""
_LEAST_WIDE_MM = 6_000.0
_SQUARES_MM = (1_000.0, 2_000.0, 5_000.0, 10_000.0, 20_000.0)
_MOST_SQUARES_COUNT = 26
_SNAPS_IN_A_SQUARE = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """Left, foot and width on plan; it is three high where it is four wide."""

    left_mm: float
    foot_mm: float
    wide_mm: float

    @property
    def high_mm(self) -> float:
        """From its foot to its top."""
        return self.wide_mm * _HIGH_TO_WIDE_RATIO

    @property
    def top_mm(self) -> float:
        """Its upper side on plan."""
        return self.foot_mm + self.high_mm

    @property
    def mm_per_unit(self) -> float:
        """How much of the plan one unit of the drawing shows."""
        return self.wide_mm / WIDTH

    @property
    def square_mm(self) -> float:
        """The side of a square of the grid."""
        return next((each for each in _SQUARES_MM if self.wide_mm / each <= _MOST_SQUARES_COUNT), _SQUARES_MM[-1])

    @property
    def snap_mm(self) -> float:
        """Tapped corners stand on every half square."""
        return self.square_mm / _SNAPS_IN_A_SQUARE

    def at(self, point: Sequence[float]) -> Point:
        """A point of the plan in the drawing, y down."""
        x_mm, y_mm = point[0], point[1]
        return (round((x_mm - self.left_mm) / self.mm_per_unit, 2), round((self.top_mm - y_mm) / self.mm_per_unit, 2))

    def holds(self, low: Point, high: Point) -> bool:
        """Does it show everything between these corners?"""
        beyond = (
            low[0] < self.left_mm,
            low[1] < self.foot_mm,
            high[0] > self.left_mm + self.wide_mm,
            high[1] > self.top_mm,
        )
        return not any(beyond)

    def grid(self) -> str:
        """The lines of the grid, as a path."""
        return "".join(map(run, self._grid_lines()))

    def _grid_lines(self) -> Iterator[tuple[Point, Point]]:
        right_mm, square_mm = self.left_mm + self.wide_mm, self.square_mm
        for step in range(ceil(self.left_mm / square_mm), floor(right_mm / square_mm) + 1):
            yield self.at((step * square_mm, self.foot_mm)), self.at((step * square_mm, self.top_mm))
        for step in range(ceil(self.foot_mm / square_mm), floor(self.top_mm / square_mm) + 1):
            yield self.at((self.left_mm, step * square_mm)), self.at((right_mm, step * square_mm))

    def written(self) -> str:
        """For the next drawing to stand in the same place."""
        return " ".join(map(number_written, (self.left_mm, self.foot_mm, self.wide_mm)))


FIRST = Window(left_mm=0.0, foot_mm=0.0, wide_mm=20_000.0)
"""What is seen before anything is drawn: room for a house (house choice)."""


def window_typed(text: str) -> Window | None:
    """The window as the drawing before wrote it; None when it cannot be read."""
    numbers = [number for word in text.split()[:4] if (number := number_typed(word)) is not None]
    if len(numbers) != 3 or numbers[2] < _LEAST_WIDE_MM:
        return None
    return Window(left_mm=numbers[0], foot_mm=numbers[1], wide_mm=numbers[2])


def window_about(corners: Sequence[Point], *, before: Window | None) -> Window:
    """The window before, while it shows everything; otherwise one about the outline with room to tap round it."""
    if not corners:
        return before or FIRST
    low, high = bounding_box_mm(corners)
    if before is not None and before.holds(low, high):
        return before
    middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
    wide_mm = max((high[0] - low[0]) * _AROUND_RATIO, (high[1] - low[1]) * _AROUND_RATIO / _HIGH_TO_WIDE_RATIO)
    wide_mm = max(ceil(wide_mm / 2_000) * 2_000.0, _LEAST_WIDE_MM)
    left_mm = floor((middle[0] - wide_mm / 2) / 500) * 500.0
    foot_mm = floor((middle[1] - wide_mm * _HIGH_TO_WIDE_RATIO / 2) / 500) * 500.0
    return Window(left_mm=left_mm, foot_mm=foot_mm, wide_mm=wide_mm)


def run(points: Sequence[Point]) -> str:
    """A line through points of the drawing, as a path.

    >>> run([(0.0, 1.5), (10.0, 20.0)])
    'M0 1.5L10 20'
    """
    return "M" + "L".join(f"{x:g} {y:g}" for x, y in points)
