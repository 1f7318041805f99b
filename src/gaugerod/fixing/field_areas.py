"""The field as areas to chalk on the slope: courses above one another joined into one outline with stepped sides."""

from collections.abc import Sequence
from itertools import pairwise

from gaugerod.fixing.plan import HeldCourse
from gaugerod.laying.ask import LayingAsk
from gaugerod.laying.laid import Rings
from gaugerod.laying.rows import Corners, Row


def field_areas_mm(ask: LayingAsk, courses: Sequence[HeldCourse]) -> Rings:
    """Outlines of the field in the slope's plane, counter-clockwise; the rest of the slope is perimeter.

    A stretch of field goes on into the course above where just one stretch lies over it and under just that one;
    elsewhere, as beside an opening, an outline ends and others begin.
    """
    rings = []
    open_above: list[list[Corners]] = []
    for at, (course, (tail, head)) in enumerate(zip(courses, pairwise(ask.lines), strict=True)):
        row = Row(tail=tail, head=head, perps=ask.courses[at].perps)
        stretches = [row.corners(first, past) for first, past in _stretches(course)]
        below = [[stack for stack in open_above if _touch(stack[-1], cell)] for cell in stretches]
        counts = [sum(_touch(stack[-1], cell) for cell in stretches) for stack in open_above]
        alone = {id(stack) for stack, count in zip(open_above, counts, strict=True) if count == 1}
        carried: list[list[Corners]] = []
        for cell, under in zip(stretches, below, strict=True):
            if len(under) == 1 and id(under[0]) in alone:
                under[0].append(cell)
                carried.append(under[0])
            else:
                carried.append([cell])
        going_on = {id(stack) for stack in carried}
        rings += [_outline(stack) for stack in open_above if id(stack) not in going_on]
        open_above = carried
    return tuple(rings + [_outline(stack) for stack in open_above])


def _stretches(course: HeldCourse) -> list[tuple[int, int]]:
    """Field units of a course side by side: first, and past the last."""
    found: list[tuple[int, int]] = []
    for run in course.runs:
        if run.why:
            continue
        first = run.first
        if found and found[-1][1] == first:
            first = found.pop()[0]
        found.append((first, run.first + run.count))
    return found


def _touch(below: Corners, above: Corners) -> bool:
    """Does the head of one stretch share more than a point with the tail of the one over it?"""
    return below[3][0] < above[1][0] and above[0][0] < below[2][0]


def _outline(stack: Sequence[Corners]) -> tuple[tuple[float, float], ...]:
    """Up the right side and down the left."""
    right = [point for cell in stack for point in (cell[1], cell[2])]
    left = [point for cell in reversed(stack) for point in (cell[3], cell[0])]
    return (*right, *left)
