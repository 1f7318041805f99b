"""What can be wrong with the measurements of a roof to check, all of it reported at once, by the fields of its file."""

from collections.abc import Iterator
from itertools import pairwise
from math import isfinite

from gaugerod.as_built.ask import BattensMeasured, RodMeasured, RoofAsk, marks_of_mm, tail_to_mark_mm
from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.double_lap import SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile

LONGEST_MM = 100_000.0
"""A slope longer than this is a slip of the unit (house)."""


def refuse_faults(ask: RoofAsk) -> None:
    """Raises InputRefused with every fault of the measurements."""
    faults = list(_rods(ask))
    if not faults:  # where the battens lie is asked once the figures are sound
        faults = [fault for index, rod in enumerate(ask.rods) for fault in _battens(ask, index, rod)]
    if faults:
        raise InputRefused(faults)


def _rods(ask: RoofAsk) -> Iterator[Fault]:
    if ask.headlap is not None and isinstance(ask.covering, SingleLapTile):
        yield Fault(
            "roof.headlap",
            f"{ask.headlap.value:g} mm",
            "nothing, for a single-lap tile",
            "Its least lap belongs to its record: give it as headlap_min of the covering.",
        )
    if not ask.rods:
        yield Fault("rod", "none", "one place or more", "Measure the battens or the visible margins at one place.")
    for index, rod in enumerate(ask.rods):
        yield from _figures(ask, index, rod)
        count, first_count = _courses_count(rod), _courses_count(ask.rods[0])
        if count != first_count:
            yield Fault(
                f"rod[{index}]",
                f"{count} courses",
                f"{first_count} courses, as at the first place",
                "Measure the same courses at every place: one batten gives one course, one margin parts two.",
            )
    for index, (left, right) in enumerate(pairwise(ask.rods), 1):
        if not right.at_mm > left.at_mm:
            yield Fault(
                f"rod[{index}].at",
                f"{right.at_mm:g} mm",
                f"more than the one before it, {left.at_mm:g} mm",
                "Give the places from left to right, each once.",
            )


def _courses_count(rod: RodMeasured) -> int:
    return len(rod.marks_mm) if isinstance(rod, BattensMeasured) else len(rod.margins_mm) + 1


def _figures(ask: RoofAsk, index: int, rod: RodMeasured) -> Iterator[Fault]:
    field, listed_mm = ("marks", rod.marks_mm) if isinstance(rod, BattensMeasured) else ("margins", rod.margins_mm)
    least_count = 2 if isinstance(ask.covering, SingleLapTile) else 3
    if isinstance(rod, BattensMeasured) and isinstance(ask.covering, SizedSlate):
        yield Fault(
            f"rod[{index}].marks",
            f"{len(listed_mm)} battens",
            "overhang and margins",
            "Where slates lie cannot be told from their battens. Measure tail to tail, from the first course up.",
        )
    if _courses_count(rod) < least_count:
        yield Fault(
            f"rod[{index}].{field}",
            f"{_courses_count(rod)} courses",
            f"{least_count} courses or more",
            "No course covers another yet, so there is no lap to check.",
        )
    named = [("rafter", rod.length_mm), *((f"{field}[{at}]", each) for at, each in enumerate(listed_mm))]
    for name, length_mm in named:
        if not (isfinite(length_mm) and 0 < length_mm <= LONGEST_MM):
            yield Fault(
                f"rod[{index}].{name}",
                f"{length_mm:g} mm",
                "above 0, up to 100 m",
                "Measure it again, and check its unit.",
            )
    if not (isfinite(rod.at_mm) and 0 <= rod.at_mm <= LONGEST_MM):
        yield Fault(f"rod[{index}].at", f"{rod.at_mm:g} mm", "0 to 100 m", "Measure from the left end of the roof.")


def _battens(ask: RoofAsk, index: int, rod: RodMeasured) -> Iterator[Fault]:
    marks_mm = marks_of_mm(rod, tail_to_mark_mm=tail_to_mark_mm(ask.covering))
    by_battens = isinstance(rod, BattensMeasured)
    if not marks_mm[0] > 0:
        yield Fault(
            f"rod[{index}].{'marks[0]' if by_battens else 'overhang'}",
            f"a first batten at {marks_mm[0]:.1f} mm",
            "a first batten above the fascia face",
            "Measure the tail of the first course past the fascia face, with the tape laid on the slope.",
        )
    for at, (lower_mm, upper_mm) in enumerate(pairwise(marks_mm), 1):
        if not upper_mm > lower_mm:
            yield Fault(
                f"rod[{index}].marks[{at}]",
                f"{upper_mm:g} mm",
                f"above the batten before it, {lower_mm:g} mm",
                "Give the top edges from the eaves up, each measured from the fascia face.",
            )
    if marks_mm[-1] > rod.length_mm:
        yield Fault(
            f"rod[{index}].{'marks' if by_battens else 'margins'}",
            f"a last batten at {marks_mm[-1]:.1f} mm",
            f"at or below the apex, {rod.length_mm:g} mm",
            "Measure the rafter from the outer face of the fascia to the apex, and the last course again.",
        )
