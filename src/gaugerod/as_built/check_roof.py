"""One call checks a roof as built: every lap, how even it is, what leaks first, and the least strip-back that cures it."""

from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.check_findings import check_findings
from gaugerod.as_built.check_working import check_working
from gaugerod.as_built.evenness import course_lines, evenness
from gaugerod.as_built.laps import laps_as_built
from gaugerod.as_built.leaks import leaks_first
from gaugerod.as_built.needed import Needed, measured_rods, needed_by
from gaugerod.as_built.roof_check import RodAsBuilt, RoofCheck
from gaugerod.as_built.strip_back import strip_back
from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.stations import NailedRod


def check_roof(ask: RoofAsk) -> RoofCheck:
    """The roof as it was measured, held against what its covering needs.

    Raises InputRefused with every fault of the ask, NothingToSetOut where a size of the unit is not known.

    Source: laps are geometry; limits are the record's and the edition's; evenness is judged by house tolerances.
    Scope: courses of one length hung or nailed in lines; laps at the places measured, straight between them.
    """
    needed = needed_by(ask)
    measured = measured_rods(ask)
    rods = tuple(
        _rod(ask, rod, needed=needed, length_mm=each.length_mm) for rod, each in zip(measured, ask.rods, strict=True)
    )
    laps = tuple(lap for rod in rods for lap in rod.laps)
    lines = course_lines(measured)
    leaks = leaks_first(laps, least_mm=needed.least_lap.value, lengths_mm={rod.at_mm: rod.length_mm for rod in rods})
    cure = strip_back(measured, laps, needed=needed, cover_short=_cover_is_short(rods, needed), finished=ask.finished)
    return RoofCheck(
        ask=ask,
        needed=needed,
        rods=rods,
        lines=lines,
        leaks=leaks,
        strip_back=cure,
        findings=tuple(check_findings(ask, needed=needed, rods=rods, lines=lines)),
        working=check_working(ask, needed=needed, rods=rods, leaks=leaks),
    )


def _rod(ask: RoofAsk, rod: NailedRod, *, needed: Needed, length_mm: float) -> RodAsBuilt:
    cover_mm = None
    if ask.finished and ask.ridge_cover_mm is not None:
        cover_mm = ask.ridge_cover_mm - (length_mm - rod.marks_mm[-1]) + needed.head_to_mark_mm
    return RodAsBuilt(
        at_mm=rod.at_mm,
        length_mm=length_mm,
        marks_mm=rod.marks_mm,
        tails_mm=tuple(mark_mm - needed.afresh.hanging_length_mm for mark_mm in rod.marks_mm),
        laps=laps_as_built(rod, needed=needed),
        even=evenness(rod, needed=needed, finished=ask.finished),
        cover_mm=cover_mm,
    )


def _cover_is_short(rods: tuple[RodAsBuilt, ...], needed: Needed) -> bool:
    return any(rod.cover_mm is not None and rod.cover_mm < needed.cover_least.value - TOUCH for rod in rods)
