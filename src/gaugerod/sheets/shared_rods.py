"""Stations that share a rod: told, tabled and printed once."""

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult


def different_rods(slope: SlopeResult) -> tuple[tuple[int, ...], ...]:
    """The stations, numbered from 1, gathered by the rod they share."""
    shared: dict[tuple[float, tuple[float, ...], int], list[int]] = {}
    for number, rod in enumerate(slope.courses.rods, start=1):
        shared.setdefault((rod.length_mm, rod.marks_mm, rod.kept_count), []).append(number)
    return tuple(tuple(numbers) for numbers in shared.values())


def rod_name(numbers: tuple[int, ...]) -> str:
    """What a rod that serves these stations is called.

    >>> rod_name((1,)), rod_name((1, 3)), rod_name((1, 2, 3))
    ('rod 1', 'rods 1 and 3', 'rods 1, 2 and 3')
    """
    if len(numbers) == 1:
        return f"rod {numbers[0]}"
    return f"rods {', '.join(str(number) for number in numbers[:-1])} and {numbers[-1]}"


def rod_stands(slope: SlopeResult, numbers: tuple[int, ...], *, unit: LengthUnit) -> str:
    """Where the rod is read; a lone one holds for every rafter that starts at the fascia."""
    rods = slope.courses.rods
    if len(rods) == 1:
        return "one for the whole slope"
    return f"{' and '.join(write_length(rods[number - 1].at_mm, unit) for number in numbers)} from the left end"
