"""Every mark of a rod, eaves to top: the course under the eaves, the full courses, the short course below the ridge."""

from dataclasses import dataclass

from gaugerod.job.result import SlopeResult

UNDER_EAVES, SHORT = "eaves", "top"


@dataclass(frozen=True, slots=True, kw_only=True)
class RodMark:
    """One mark: ``eaves``, the number of its course, or ``top``. ``kept``: nailed already."""

    name: str
    mark_mm: float
    kept: bool = False


def rod_marks(slope: SlopeResult, index: int) -> tuple[RodMark, ...]:
    """The marks of the rod at one station, from the eaves up."""
    rod = slope.courses.rods[index]
    marks = [
        RodMark(name=f"{number}", mark_mm=mark_mm, kept=number <= rod.kept_count)
        for number, mark_mm in enumerate(rod.marks_mm, start=1)
    ]
    if slope.diminishing is not None:
        marks.insert(0, RodMark(name=UNDER_EAVES, mark_mm=slope.diminishing.rods[index].under_eaves_mark_mm))
    if slope.double_lap is not None:
        extra = slope.double_lap.rods[index]
        marks.insert(0, RodMark(name=UNDER_EAVES, mark_mm=extra.under_eaves_mark_mm))
        if extra.short is not None:
            marks.append(RodMark(name=SHORT, mark_mm=extra.short.mark_mm))
    return tuple(marks)
