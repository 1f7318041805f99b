"""How even the courses are: gauge run-out at each place, courses forced in or stretched, and lines out of parallel.

What is uneven by these marks does not leak by it; it shows, and it tells where the setting out was lost.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import median

from gaugerod.as_built.laps import gaps_between_mm
from gaugerod.as_built.needed import Needed
from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH
from gaugerod.basis.limit import Limit
from gaugerod.setting_out.stations import NailedRod

UNLIKE = Limit(
    value=0.1, unit="ratio", citation=house("a gap a tenth closer or wider than the usual one of its rod shows")
)


class Spacing(StrEnum):
    """How a gap stands to the usual one of its rod, and to the gauge range.

    ``top``  the last gap of a finished roof, closer than usual: right if the top course was cut, forced in if not
    """

    EVEN = "even"
    FORCED_IN = "forced in"
    STRETCHED = "stretched"
    TOP = "top course cut?"


@dataclass(frozen=True, slots=True, kw_only=True)
class GapAsBuilt:
    """From one batten to the next. ``run_out_mm``: the upper batten above (+) or below (−) its place in equal gauges."""

    lower: int
    upper: int
    gap_mm: float
    run_out_mm: float
    spacing: Spacing


@dataclass(frozen=True, slots=True, kw_only=True)
class Evenness:
    """The gaps at one place. ``equal_gauge_mm`` would bring the first batten to the last in equal gauges."""

    equal_gauge_mm: float
    usual_gauge_mm: float
    gaps: tuple[GapAsBuilt, ...]

    @property
    def worst_run_out(self) -> GapAsBuilt:
        """The gap under the batten that is furthest from its place in equal gauges."""
        return max(self.gaps, key=lambda gap: max(gap.run_out_mm, -gap.run_out_mm))


def evenness(rod: NailedRod, *, needed: Needed, finished: bool) -> Evenness:
    """How even the courses are at one place.

    A gap is forced in when it is under the least gauge or a tenth closer than the usual one; stretched when it is over
    the greatest gauge or a tenth wider. Source: the gauge range is the record's; the tenth is a house choice.
    """
    marks_mm = rod.marks_mm
    gaps_mm = gaps_between_mm(marks_mm)
    equal_mm = (marks_mm[-1] - marks_mm[0]) / len(gaps_mm)
    usual_mm = median(gaps_mm)
    gaps = tuple(
        GapAsBuilt(
            lower=number,
            upper=number + 1,
            gap_mm=gap_mm,
            run_out_mm=marks_mm[number] - marks_mm[0] - number * equal_mm,
            spacing=spacing_of(
                gap_mm, usual_mm=usual_mm, needed=needed, at_the_top=finished and number == len(gaps_mm)
            ),
        )
        for number, gap_mm in enumerate(gaps_mm, 1)
    )
    return Evenness(equal_gauge_mm=equal_mm, usual_gauge_mm=usual_mm, gaps=gaps)


def spacing_of(gap_mm: float, *, usual_mm: float, needed: Needed, at_the_top: bool) -> Spacing:
    """Even, forced in, stretched; or the top gap, closer than usual."""
    least_mm, greatest_mm = needed.afresh.gauge_min_mm, needed.afresh.gauge_max_mm
    under_least = least_mm is not None and gap_mm < least_mm - TOUCH
    if under_least or gap_mm < usual_mm * (1 - UNLIKE.value) - TOUCH:
        return Spacing.TOP if at_the_top else Spacing.FORCED_IN
    if gap_mm > greatest_mm + TOUCH or gap_mm > usual_mm * (1 + UNLIKE.value) + TOUCH:
        return Spacing.STRETCHED
    return Spacing.EVEN


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLine:
    """One course across the places measured.

    ``out_of_parallel_mm``  how much higher its highest place stands than its lowest, to the eaves
    ``opens_mm``            how much more it is above the course below at one place than at another; 0 for the first
    """

    course: int
    out_of_parallel_mm: float
    opens_mm: float


def course_lines(rods: Sequence[NailedRod]) -> tuple[CourseLine, ...]:
    """Every course's line across the roof, eaves to ridge. One place measured: none.

    >>> rods = (NailedRod(at_mm=0.0, marks_mm=(350.0, 690.0)), NailedRod(at_mm=6000.0, marks_mm=(352.0, 695.0)))
    >>> [(line.course, line.out_of_parallel_mm, line.opens_mm) for line in course_lines(rods)]
    [(1, 2.0, 0.0), (2, 5.0, 3.0)]
    """
    if len(rods) == 1:
        return ()
    gaps_mm = [(0.0, *gaps_between_mm(rod.marks_mm)) for rod in rods]
    return tuple(
        CourseLine(
            course=index + 1,
            out_of_parallel_mm=_spread_mm([rod.marks_mm[index] for rod in rods]),
            opens_mm=_spread_mm([gaps[index] for gaps in gaps_mm]),
        )
        for index in range(len(rods[0].marks_mm))
    )


def _spread_mm(lengths_mm: Sequence[float]) -> float:
    return max(lengths_mm) - min(lengths_mm)
