"""Hatching: slanting lines over a part of a slope, so that it is told from the rest without colour."""

from collections.abc import Iterator, Sequence
from math import ceil, floor

from gaugerod.geometry.polygon import Point, bounding_box_mm
from gaugerod.sheets.slope_lines import Line, inside_sides, sides_between, sides_of

STEP_MM = 1.5
"""Between lines, along the level, on paper."""


def hatched(ring: Sequence[Point], *, scale_ratio: float, within: Sequence[Point] | None = None) -> Iterator[Line]:
    """Lines rising to the right at 45 degrees inside a ring, and inside ``within`` too where that is given.

    They stand on one grid, so that hatching of neighbours runs through.

    >>> [len(list(hatched(((0.0, 0.0), (9.0, 0.0), (9.0, 1.0), (0.0, 1.0)), scale_ratio=ratio))) for ratio in (1.0, 2.0)]
    [6, 3]
    """
    low, high = bounding_box_mm(ring)
    step_mm = STEP_MM * scale_ratio
    up_mm = high[1] - low[1]
    first, last = floor((low[0] - high[1]) / step_mm) + 1, ceil((high[0] - low[1]) / step_mm)
    own = sides_of(ring)
    about = None if within is None else sides_between(within, low[1], high[1])
    for number in range(first, last):
        # On this line x - y stays the same.
        start = (number * step_mm + low[1], low[1])
        for part in inside_sides(start, (start[0] + up_mm, high[1]), own):
            yield from [part] if about is None else inside_sides(*part, about)
