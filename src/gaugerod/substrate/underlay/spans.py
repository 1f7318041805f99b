"""Which stretches along the eaves a strip across the slope must cover."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.polygon import Point
from gaugerod.substrate.underlay.answer import Span


def spans_between_mm(outline: Sequence[Point], *, low_mm: float, high_mm: float) -> tuple[Span, ...]:
    """The stretches of x over which the outline shows anything between two heights, left to right.

    A sheet is a rectangle: wherever any of the slope lies between its edges, it must reach.

    >>> spans_between_mm([(0, 0), (4000, 0), (2000, 2000)], low_mm=0.0, high_mm=1000.0)
    ((0.0, 4000.0),)
    >>> spans_between_mm([(0, 0), (4000, 0), (2000, 2000)], low_mm=1000.0, high_mm=2000.0)
    ((1000.0, 3000.0),)
    """
    joined: list[Span] = []
    for left, right in sorted([*_of_sides(outline, low_mm, high_mm), *_at_height(outline, (low_mm + high_mm) / 2)]):
        if joined and left <= joined[-1][1] + TOUCH:
            joined[-1] = (joined[-1][0], max(joined[-1][1], right))
        else:
            joined.append((left, right))
    return tuple((left, right) for left, right in joined if right - left > TOUCH)


def _of_sides(outline: Sequence[Point], low_mm: float, high_mm: float) -> Iterator[Span]:
    """What each side covers of x while it is between the heights.

    With the level line half-way up that is all: straight down from a point of the slope one meets a side or the level.
    """
    for (x0, y0), (x1, y1) in pairwise((*outline, outline[0])):
        if max(y0, y1) <= low_mm + TOUCH or min(y0, y1) >= high_mm - TOUCH:
            continue
        if y0 == y1:
            yield min(x0, x1), max(x0, x1)
            continue
        shares = sorted(((low_mm - y0) / (y1 - y0), (high_mm - y0) / (y1 - y0)))
        ends = [x0 + (x1 - x0) * share for share in (max(shares[0], 0.0), min(shares[1], 1.0))]
        yield float(min(ends)), float(max(ends))


def _at_height(outline: Sequence[Point], height_mm: float) -> Iterator[Span]:
    """Where a level line runs inside the outline. The height is half-open at corners, so crossings pair up."""
    crossings = sorted(
        x0 + (x1 - x0) * (height_mm - y0) / (y1 - y0)
        for (x0, y0), (x1, y1) in pairwise((*outline, outline[0]))
        if (y0 <= height_mm) != (y1 <= height_mm)
    )
    yield from zip(crossings[::2], crossings[1::2], strict=True)
