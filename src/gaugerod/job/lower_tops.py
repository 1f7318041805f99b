"""Tops of a slope by outline that the courses are not set out to: each is told, with where the courses stand there."""

from collections.abc import Iterator

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.job.model import SlopeOutline
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.courses import Rod

_SOURCE = Citation("courses are set out to the highest top; at a lower one they fall where they fall", Basis.HOUSE)
_APART_MM = 1.0


def lower_top_findings(outline: SlopeOutline, rods: tuple[Rod, ...], *, where: str) -> Iterator[Finding]:
    """One for each ridge or wall along the top that lies below the line the rods go up to, mm up from the fascia face."""
    count = len(outline.points_mm)
    tops = []
    for index, kind in enumerate(outline.kinds):
        (x_mm, y_mm), (next_x_mm, next_y_mm) = outline.points_mm[index], outline.points_mm[(index + 1) % count]
        along_the_top = x_mm - next_x_mm > abs(next_y_mm - y_mm)
        if kind is EdgeKind.RIDGE or (kind is EdgeKind.ABUTMENT and along_the_top):
            tops.append(((x_mm + next_x_mm) / 2, (y_mm + next_y_mm) / 2, kind))
    for at_mm, up_mm, kind in tops:
        if _height_mm(rods, [rod.length_mm for rod in rods], at_mm) - up_mm <= _APART_MM:
            continue
        heads_mm = [
            _height_mm(rods, [rod.marks_mm[course] for rod in rods], at_mm) for course in range(len(rods[0].marks_mm))
        ]
        below = [head_mm for head_mm in heads_mm if head_mm <= up_mm]
        stand = (
            f"Course {len(below)} has its head {up_mm - below[-1]:.0f} mm below it" if below else "No head is below it"
        )
        yield not_covered(
            rule=f"lower {kind.value}",
            where=where,
            proposed=up_mm - below[-1] if below else None,
            unit="mm",
            citation=_SOURCE,
            says=f"This {kind.value}, {up_mm:.0f} mm up, is lower than the top the courses are set out to. {stand}; the "
            f"course above is cut at its head. Check that what is left of it holds and that the cover there reaches the "
            f"heads, or set this part out as a slope of its own.",
        )


def _height_mm(rods: tuple[Rod, ...], heights_mm: list[float], at_mm: float) -> float:
    """The height at a place, on the straight line through the outermost rods."""
    first, last = rods[0], rods[-1]
    if first.at_mm == last.at_mm:
        return heights_mm[0]
    return heights_mm[0] + (heights_mm[-1] - heights_mm[0]) * (at_mm - first.at_mm) / (last.at_mm - first.at_mm)
