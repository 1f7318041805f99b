"""The repeating pattern of battens as an integer programme for another solver: the oracle of the search.

It lists the ways of a course and the contents of a stock length by itself, so that nothing of the engine is in it.
"""

from collections.abc import Iterator
from itertools import pairwise
from math import ceil
from typing import NamedTuple

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

OF_A_MM = 10
"""One millimetre of stock over one length, scaled so that the solver sees no huge figures: fewer than ten thousand lengths
on a batten of a thousandth of a millimetre.
"""


class Course(NamedTuple):
    """One batten alike for all: its ends, the rafters, and the rules."""

    left_mm: float
    right_mm: float
    rafters_mm: tuple[float, ...]
    least_mm: int
    stock_mm: tuple[int, ...]
    kerf_mm: float


def ways(course: Course, *, most_pieces: int) -> list[tuple[tuple[float, ...], tuple[int, ...]]]:
    """Every way of at most so many pieces: the rafters joined, the lengths."""
    inner = [at for at in course.rafters_mm if course.left_mm < at < course.right_mm]

    def pieces(joints: tuple[float, ...]) -> tuple[int, ...] | None:
        ends = (course.left_mm, *joints, course.right_mm)
        lengths = tuple(ceil(b - a - 1e-6) for a, b in pairwise(ends))
        rests = [sum(1 for at in course.rafters_mm if a - 1e-6 <= at <= b + 1e-6) for a, b in pairwise(ends)]
        fits = max(lengths) <= max(course.stock_mm)
        keeps = min(lengths) >= course.least_mm and min(rests) >= 3
        return lengths if fits and (keeps or not joints) else None

    def grow(joints: tuple[float, ...]) -> Iterator[tuple[float, ...]]:
        yield joints
        if len(joints) + 1 < most_pieces:
            for at in inner:
                if (not joints or at > joints[-1]) and at - (joints[-1] if joints else course.left_mm) <= max(
                    course.stock_mm
                ):
                    yield from grow((*joints, at))

    return [(joints, lengths) for joints in grow(()) if (lengths := pieces(joints)) is not None]


def contents(lengths: list[int], course: Course) -> list[tuple[int, tuple[int, ...]]]:
    """For each stock length, every collection of pieces that can be cut from it."""
    found: list[tuple[int, tuple[int, ...]]] = []

    def grow(stock_mm: int, first: int, used_mm: float, taken: tuple[int, ...]) -> None:
        for at in range(first, len(lengths)):
            more_mm = used_mm + lengths[at] + (course.kerf_mm if taken else 0.0)
            if more_mm <= stock_mm:
                found.append((stock_mm, (*taken, lengths[at])))
                grow(stock_mm, at, more_mm, (*taken, lengths[at]))

    for stock_mm in course.stock_mm:
        grow(stock_mm, 0, 0.0, ())
    return found


class Programme(NamedTuple):
    """The integer programme: what each unknown costs, its rows, and how many of the first unknowns are yes or no."""

    costs: np.ndarray
    rows: LinearConstraint
    upper: np.ndarray
    stock_mm: np.ndarray


def programme(course: Course, *, courses_count: int, repeat_count: int, most_pieces: int) -> Programme:
    """One way to each repeated course, no rafter joined in two of them, every piece cut; least metres, then lengths."""
    joined = ways(course, most_pieces=most_pieces)
    lengths = sorted({length for _, pieces in joined for length in pieces})
    cuts = contents(lengths, course)
    times = [len(range(at, courses_count, repeat_count)) for at in range(min(repeat_count, courses_count))]
    chosen, unknowns = len(times) * len(joined), len(times) * len(joined) + len(cuts)
    rows: list[tuple[np.ndarray, float, float]] = []
    for at in range(len(times)):
        row = np.zeros(unknowns)
        row[at * len(joined) : (at + 1) * len(joined)] = 1
        rows.append((row, 1.0, 1.0))
    for rafter in sorted({rafter for joints, _ in joined for rafter in joints}):
        row = np.zeros(unknowns)
        for number, (joints, _) in enumerate(joined):
            if rafter in joints:
                row[[at * len(joined) + number for at in range(len(times))]] = 1
        rows.append((row, -np.inf, 1.0))
    for length in lengths:
        row = np.zeros(unknowns)
        for number, (_, pieces) in enumerate(joined):
            for at, often in enumerate(times):
                row[at * len(joined) + number] = -often * pieces.count(length)
        row[chosen:] = [taken.count(length) for _, taken in cuts]
        rows.append((row, 0.0, np.inf))
    stock = np.array([stock_mm for stock_mm, _ in cuts], dtype=float)
    costs = np.concatenate([np.zeros(chosen), stock * OF_A_MM / 100 + 0.01 * OF_A_MM])
    upper = np.concatenate([np.ones(chosen), np.full(len(cuts), np.inf)])
    return Programme(
        costs,
        LinearConstraint(
            np.array([row for row, _, _ in rows]), [low for _, low, _ in rows], [high for _, _, high in rows]
        ),
        upper,
        stock,
    )


def solved(model: Programme, *, seconds: float = 60.0) -> tuple[int, int] | None:
    """Metres of stock (in mm) and lengths of the optimum; None where no pattern exists."""
    answer = milp(
        model.costs,
        constraints=model.rows,
        integrality=np.ones(len(model.costs), dtype=int),
        bounds=Bounds(0, model.upper),
        options={"mip_rel_gap": 0.0, "time_limit": seconds},
    )
    if answer.x is None:
        return None
    taken = np.round(answer.x[-len(model.stock_mm) :]).astype(int)
    return int(taken @ model.stock_mm), int(taken.sum())
