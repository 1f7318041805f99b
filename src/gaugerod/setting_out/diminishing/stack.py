"""The stack on the ground: for each length, its gauge at the lap and how many courses it makes.

Everything is counted in whole divisions of the rod (millimetres or sixteenths): lengths rounded down, the lap
rounded up. So whatever is planned in whole divisions keeps the lap as marked, with no rounding left to do.
"""

from dataclasses import dataclass
from math import floor

from gaugerod.basis.rounding import Division, count_above, count_below
from gaugerod.coverings.double_lap import Heap, RandomSlates


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """One heap, ready for planning.

    ``length_divisions``  head to tail; ``usable_divisions`` to the hole when head-fixed
    ``gauge_divisions``   greatest margin at the lap: half of usable length − headlap, rounded down
    ``run_mm``            run of sound slates, joints counted; None of it has been laid yet
    ``courses_count``     whole courses that run makes
    """

    heap: Heap
    length_divisions: int
    usable_divisions: int
    gauge_divisions: int
    run_mm: float
    courses_count: int


def sound_run_mm(heap: Heap, *, slates: RandomSlates) -> float:
    """The run of a heap after its broken allowance: slates laid side by side, each with its joint.

    A heap measured by the run has no joints counted: on the roof it goes a little further than this.

    >>> from gaugerod.basis.citation import house
    >>> from gaugerod.coverings.double_lap import Nailing
    >>> from gaugerod.coverings.single_lap import Material
    >>> heap = Heap(length_mm=400.0, slates_count=200, average_width_mm=245.0)
    >>> stack = RandomSlates(name="stack", title="Stack", material=Material.NATURAL_SLATE, nailing=Nailing.HEAD,
    ...     hole_below_mm=25.0, heaps=(heap,), broken_ratio=0.05, joint_mm=5.0, citation=house("example"))
    >>> sound_run_mm(heap, slates=stack)
    47500.0
    """
    sound_ratio = 1.0 - slates.broken_ratio
    if heap.run_mm is not None:
        return heap.run_mm * sound_ratio
    if heap.slates_count is None or heap.average_width_mm is None:
        raise ValueError("a heap is counted with its average width, or measured by the run")
    return floor(heap.slates_count * sound_ratio + 1e-9) * (heap.average_width_mm + slates.joint_mm)


def supplies_of(
    *, slates: RandomSlates, course_run_mm: float, headlap_mm: float, division: Division
) -> tuple[Supply, ...]:
    """The stack in divisions, longest first. Lengths too short for any margin at this lap are left out."""
    lap_divisions = count_above(headlap_mm, division)
    supplies = []
    for heap in sorted(slates.heaps, key=lambda one: -one.length_mm):
        length = count_below(heap.length_mm, division)
        usable = length - count_above(slates.lost_at_head_mm, division)
        gauge = (usable - lap_divisions) // 2
        if gauge < 1:
            continue
        run_mm = sound_run_mm(heap, slates=slates)
        supplies.append(
            Supply(
                heap=heap,
                length_divisions=length,
                usable_divisions=usable,
                gauge_divisions=gauge,
                run_mm=run_mm,
                courses_count=floor(run_mm / course_run_mm + 1e-9),
            )
        )
    return tuple(supplies)
