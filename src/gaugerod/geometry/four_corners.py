"""Four corners tied by six tapes: what each tape should read, given the other five.

The corners are A and B at the eaves (left, right), C and D at the top (right, left). The six lengths
are the sides AB, BC, CD, DA and the diagonals AC, BD. Any five fix the shape, so the sixth can be checked.
"""

from collections.abc import Mapping
from math import hypot, inf, sqrt
from typing import Final

SixLengths = Mapping[str, float]
"""Lengths in mm by their two corners in alphabetical order."""

SIDES: Final = ("AB", "BC", "CD", "AD")
DIAGONALS: Final = ("AC", "BD")


def third_corner_mm(*, base_mm: float, from_start_mm: float, from_end_mm: float) -> tuple[float, float] | None:
    """Where the third corner of a triangle stands over its base, which runs from (0, 0) along x.

    None when the three lengths cannot make a triangle.

    >>> third_corner_mm(base_mm=4.0, from_start_mm=3.0, from_end_mm=5.0)
    (0.0, 3.0)
    >>> third_corner_mm(base_mm=9.0, from_start_mm=3.0, from_end_mm=5.0) is None
    True
    """
    along_mm = (base_mm**2 + from_start_mm**2 - from_end_mm**2) / (2 * base_mm)
    height_squared = from_start_mm**2 - along_mm**2
    if not 0 < height_squared < inf:
        return None
    return along_mm, sqrt(height_squared)


def implied_mm(missing: str, lengths_mm: SixLengths) -> float | None:
    """What the ``missing`` one of the six lengths must be, given the other five; None when they do not close.

    Two corners of the missing length are hung on the line between the other two: on the same side of it
    when a side is missing, on opposite sides when a diagonal is.

    >>> square = {"AB": 3.0, "BC": 4.0, "CD": 3.0, "AD": 4.0, "AC": 5.0, "BD": 5.0}
    >>> [round(implied_mm(missing, square) or 0, 6) for missing in square]
    [3.0, 4.0, 3.0, 4.0, 5.0, 5.0]
    """
    one, other = missing[0], missing[1]
    start, end = (corner for corner in "ABCD" if corner not in missing)
    base_mm = _between_mm(start, end, lengths_mm)
    corners = [
        third_corner_mm(
            base_mm=base_mm,
            from_start_mm=_between_mm(start, corner, lengths_mm),
            from_end_mm=_between_mm(end, corner, lengths_mm),
        )
        for corner in (one, other)
    ]
    first, second = corners
    if first is None or second is None:
        return None
    turn = -1 if missing in DIAGONALS else 1
    return hypot(first[0] - second[0], first[1] - turn * second[1])


def _between_mm(one: str, other: str, lengths_mm: SixLengths) -> float:
    return lengths_mm["".join(sorted(one + other))]


def out_of_rectangle_mm(lengths_mm: SixLengths) -> float:
    """How far six lengths are from those of a rectangle: opposite sides and the diagonals should agree."""
    return (
        abs(lengths_mm["AB"] - lengths_mm["CD"])
        + abs(lengths_mm["BC"] - lengths_mm["AD"])
        + abs(lengths_mm["AC"] - lengths_mm["BD"])
    )
