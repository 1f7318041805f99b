"""Diminishing courses: what comes back."""

from dataclasses import dataclass

from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.diminishing.ask import Aim


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthGroup:
    """The courses of one length, first to last, counted from the eaves.

    ``gauge_mm``       their margin at most: (usable length − lap)/2
    ``drop_gauge_mm``  batten to batten at the first course of this length: the margin below it less the drop in
                       length. None for the courses that start the slope.
    """

    length_mm: float
    first_course: int
    last_course: int
    gauge_mm: float
    drop_gauge_mm: float | None

    @property
    def courses_count(self) -> int:
        """How many courses."""
        return self.last_course - self.first_course + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class DiminishingRod:
    """The rod for one station: one entry for each course, from the eaves, up from the fascia face.

    ``marks_mm``         the nail or peg line of each course: the marks to strike
    ``tails_mm``         the tail of each course; the first is below the fascia face
    ``margins_mm``       what each course shows; the last one up to the lower edge of the ridge
    ``laps_mm``          the lap of each course over the slate two below; the first is that of the second course over
                         the under-eaves slate, the last that of the ridge over the course below the top one
    ``cut_lengths_mm``   (course, length) of the top courses, cut at the head to stay below the apex
    """

    at_mm: float
    rafter_mm: float
    overhang_mm: float
    under_eaves_mark_mm: float
    marks_mm: tuple[float, ...]
    tails_mm: tuple[float, ...]
    margins_mm: tuple[float, ...]
    laps_mm: tuple[float, ...]
    cut_lengths_mm: tuple[tuple[int, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HeapUse:
    """What one heap gives to the roof, and what stays. Runs after the broken allowance.

    ``left_slates_count`` is None for a heap measured by the run.
    """

    length_mm: float
    courses_there_count: int
    courses_laid_count: int
    under_eaves_run_mm: float
    left_run_mm: float
    left_slates_count: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class DiminishingPlan:
    """How the stack goes on the roof.

    ``under_eaves_length_mm``  length the under-eaves slates are cut to
    ``least_lap_mm``           the smallest lap anywhere, measured on the section as laid
    ``sorting``                what to do with the heaps before carrying up, one step a line
    ``top_notes``              what to do below the apex, where heads are cut; empty where none are
    """

    aim: Aim
    groups: tuple[LengthGroup, ...]
    under_eaves_length_mm: float
    overhang_mm: float
    least_lap_mm: float
    rods: tuple[DiminishingRod, ...]
    heaps: tuple[HeapUse, ...]
    sorting: tuple[str, ...]
    top_notes: tuple[str, ...]

    @property
    def courses_count(self) -> int:
        """How many courses, the under-eaves course not counted."""
        return self.groups[-1].last_course

    @property
    def left_run_mm(self) -> float:
        """Run of sound slates that stay on the ground."""
        return sum(heap.left_run_mm for heap in self.heaps)


@dataclass(frozen=True, slots=True, kw_only=True)
class Diminishing:
    """The answer. ``plan`` is None when no plan keeps every limit: ``why`` says what is short, and by how much."""

    plan: DiminishingPlan | None
    why: str
    findings: tuple[Finding, ...]
    alternatives: tuple[Alternative, ...]
    working: Step
