"""What is wrong with an ask for diminishing courses, all of it at once."""

from collections.abc import Iterator
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.coverings.double_lap import Heap
from gaugerod.setting_out.diminishing.ask import DiminishingAsk


def refuse_faults(ask: DiminishingAsk) -> None:
    """Raises InputRefused with every fault of the ask."""
    faults = [*_lengths(ask), *_heaps(ask)]
    if faults:
        raise InputRefused(faults)


def _lengths(ask: DiminishingAsk) -> Iterator[Fault]:
    wanted = {
        "course_width": ask.course_width_mm,
        "headlap": ask.headlap.value,
        "ridge_cover": ask.ridge_cover_mm,
        "least_batten_gauge": ask.least_batten_gauge.value,
        **{f"rafter[{index}]": station.length_mm for index, station in enumerate(ask.stations)},
    }
    for field, length_mm in wanted.items():
        if not (isfinite(length_mm) and length_mm > 0):
            yield _fault(field, length_mm, "a length above nothing")
    may_be_nothing = {
        "side_waste": ask.side_waste_mm,
        "joint": ask.slates.joint_mm,
        "hole_below": ask.slates.hole_below_mm,
        "ridge_lap": ask.ridge_lap.value,
        "apex_clear": ask.apex_clear.value,
        "nail_clear": ask.nail_clear.value,
        "eaves_overhang": ask.overhang.least_mm,
    }
    for field, length_mm in may_be_nothing.items():
        if not (isfinite(length_mm) and length_mm >= 0):
            yield _fault(field, length_mm, "nothing or more")
    if not ask.stations:
        yield _fault("rafters", 0, "one measured rafter or more")
    for index, station in enumerate(ask.stations):
        if station.length_mm <= ask.ridge_cover_mm:
            yield _fault(f"rafter[{index}]", station.length_mm, "longer than the ridge reaches down")
    if not 0 <= ask.slates.broken_ratio < 1:
        yield _fault("broken", ask.slates.broken_ratio, "0 up to, not including, 1")


def _heaps(ask: DiminishingAsk) -> Iterator[Fault]:
    if not ask.slates.heaps:
        yield _fault("heap", "none", "one heap or more")
    seen: set[float] = set()
    for index, heap in enumerate(ask.slates.heaps):
        field = f"heap[{index}]"
        if not (isfinite(heap.length_mm) and heap.length_mm > 0):
            yield _fault(f"{field}.length", heap.length_mm, "a length above nothing")
        if heap.length_mm in seen:
            yield _fault(f"{field}.length", heap.length_mm, "each length once: count the two heaps as one")
        seen.add(heap.length_mm)
        if not _counted(heap):
            yield _fault(field, heap, "a number of slates with their average width, or a run; one of the two")


def _counted(heap: Heap) -> bool:
    by_number = heap.slates_count is not None and heap.average_width_mm is not None
    by_run = heap.run_mm is not None
    if by_number == by_run:
        return False
    numbers = (heap.run_mm,) if by_run else (heap.slates_count, heap.average_width_mm)
    return all(number is not None and isfinite(number) and number >= 0 for number in numbers) and (
        by_run or bool(heap.average_width_mm)
    )


def _fault(field: str, given: object, allowed: str) -> Fault:
    return Fault(field=field, given=str(given), allowed=allowed, do="Measure it again and write it with its unit.")
