"""Corners of the moving lines."""

from dataclasses import dataclass


@dataclass(slots=True)
class Corner:
    """The meeting of two fronts, moving from a node. Made by the thousand, so neither frozen nor keyword-only.

    ``before`` and ``after`` are the fronts of the sides that end and start here; ``run_x_ratio`` and ``run_y_ratio``
    how far it moves on plan for each unit of rise.
    """

    node: int
    x_mm: float
    y_mm: float
    height_mm: float
    before: int
    after: int
    run_x_ratio: float
    run_y_ratio: float


Loop = list[Corner]
"""One closed line; side k runs from corner k to corner k+1 along the front ``after`` of corner k."""
