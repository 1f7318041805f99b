"""The least strip-back: as many battens kept from the eaves up as can be, the rest set out again so that every lap holds.

Battens are kept below the first that makes a lap short, then one fewer at a time, until the courses above can be set
out within every limit. Each answer is proved on the section as laid before it is given.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from gaugerod.as_built.laps import LapAsBuilt, battens_kept, gaps_between_mm, section
from gaugerod.as_built.needed import Needed
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Verdict
from gaugerod.setting_out.courses import Courses, Rod, Strategy
from gaugerod.setting_out.said import counted, said
from gaugerod.setting_out.section_laid import laps_as_laid
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import NailedRod

SMALLEST_GAUGE_MM = 10.0
"""Under this the shared courses take a gauge for a slip of the unit."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StripBack:
    """What to take off and what to nail in its place.

    ``keep_count``   battens kept from the eaves up; ``strip_count`` those above, taken off
    ``cures``        does every lap hold then? False: nothing keeps every limit, see ``courses.alternatives``
    ``courses``      kept battens and new ones, at every place; None when there is no room for courses at all
    """

    keep_count: int
    strip_count: int
    cures: bool
    courses: Courses | None
    says: str


def strip_back(
    rods: Sequence[NailedRod], laps: Sequence[LapAsBuilt], *, needed: Needed, cover_short: bool, finished: bool
) -> StripBack | None:
    """The least strip-back that cures the short laps; None where nothing is short and the roof is finished.

    ``cover_short``: the ridge covers the top course by too little. Of a roof in hand the courses up to the ridge come
    with it, even where nothing is stripped.
    """
    battens = len(rods[0].marks_mm)
    sound = battens_kept(laps, lapping=needed.lapping, battens=battens)
    if finished and sound == battens and not cover_short:
        return None
    refused = "the courses above it cannot be set out"
    for keep in range(sound, -1, -1):
        try:
            courses = _set_out_above(rods, keep, needed=needed)
        except NothingToSetOut as nothing:
            refused = nothing.reason
            continue
        if courses is not None and every_lap_holds(courses, needed=needed):
            return _cured(courses, rods, keep=keep, needed=needed)
    return _not_cured(battens, needed=needed, refused=refused)


def _set_out_above(rods: Sequence[NailedRod], keep: int, *, needed: Needed) -> Courses | None:
    """The courses with so many battens kept; None when the last gap kept leaves no gauge for the first new one."""
    if not keep:
        return set_out_courses(needed.afresh)
    nailed = tuple(NailedRod(at_mm=rod.at_mm, marks_mm=rod.marks_mm[:keep]) for rod in rods)
    greatest_mm = min([needed.afresh.gauge_max_mm, *_left_by_kept_mm(nailed, needed=needed)])
    if greatest_mm < max(needed.afresh.gauge_min_mm or 0.0, SMALLEST_GAUGE_MM):
        return None
    return set_out_courses(replace(needed.afresh, gauge_max_mm=greatest_mm, nailed=nailed))


def _left_by_kept_mm(nailed: Sequence[NailedRod], *, needed: Needed) -> Iterator[float]:
    """In double lap the last gap kept and the first new one share a lap: what the kept gap leaves for the new."""
    kept_gaps = needed.lapping - 1
    for rod in nailed:
        gaps_mm = gaps_between_mm(rod.marks_mm)
        if kept_gaps and gaps_mm:
            yield needed.usable_mm - needed.least_lap.value - gaps_mm[-1]


def every_lap_holds(courses: Courses, *, needed: Needed) -> bool:
    """Does everything keep its limits: the new gauges, the top batten, and every lap read off the section as laid?

    What is kept is judged by its laps alone: it may stand closer than the least gauge, and in double lap wider than the
    greatest where its neighbour is closer. Both have their own finding.
    """
    if courses.strategy is Strategy.NONE:
        return False
    broken = {finding.rule for finding in courses.findings if finding.verdict is Verdict.OUTSIDE}
    if broken & {"greatest gauge", "top batten"}:
        return False
    least_mm = needed.least_lap.value
    return all(
        lap.lap_mm >= least_mm - TOUCH
        for rod in courses.rods
        for lap in laps_as_laid(section(_hung_at_mm(rod, courses), needed=needed), lap_over=needed.lapping)
    )


def _hung_at_mm(rod: Rod, courses: Courses) -> tuple[float, ...]:
    """Where each course hangs; a top course cut at its head keeps its tail on the line of the gauges below."""
    if courses.strategy is Strategy.PARALLEL:
        return (*rod.marks_mm[:-1], rod.marks_mm[-2] + rod.gauge_mm)
    return rod.marks_mm


def _cured(courses: Courses, rods: Sequence[NailedRod], *, keep: int, needed: Needed) -> StripBack:
    battens = len(rods[0].marks_mm)
    strip, new = battens - keep, len(courses.rods[0].marks_mm) - keep
    division = needed.afresh.division
    kept = f"Keep the first {counted(keep, 'course')} from the eaves" if keep else "Nothing can be kept"
    stripped = f"strip the {counted(strip, 'course')} above" if keep else f"strip all {counted(strip, 'course')}"
    if not strip:
        stripped = "strip nothing"
    gauges = sorted({said(rod.gauge_mm, division) for rod in courses.rods})
    relaid = f"set out {counted(new, 'course')} at {' and '.join(gauges)} gauge" if new else "nothing more is nailed"
    return StripBack(
        keep_count=keep,
        strip_count=strip,
        cures=True,
        courses=courses,
        says=(
            f"{kept}, {stripped}, and {relaid}: every lap is then at least {said(needed.least_lap.value, division)}."
            f"{_staying(courses, rods, keep=keep)}"
        ),
    )


def _staying(courses: Courses, rods: Sequence[NailedRod], *, keep: int) -> str:
    """Battens above that stand on a new mark at every place: the units come off them, the battens stay nailed."""
    new = list(zip(*(rod.marks_mm[keep:] for rod in courses.rods), strict=True))
    old = list(enumerate(zip(*(rod.marks_mm[keep:] for rod in rods), strict=True), start=keep + 1))
    stay = [
        str(number)
        for number, marks_mm in old
        if any(all(-TOUCH <= a - b <= TOUCH for a, b in zip(marks_mm, there, strict=True)) for there in new)
    ]
    if not stay:
        return ""
    which = f"batten {stay[0]}" if len(stay) == 1 else f"battens {', '.join(stay)}"
    return f" The units come off, but {which} may stay nailed: on a new mark already."


def _not_cured(battens: int, *, needed: Needed, refused: str) -> StripBack:
    """Stripped bare the slope still keeps no limits: the courses as they would be, with what could change."""
    try:
        courses = set_out_courses(needed.afresh)
    except NothingToSetOut:
        courses = None
    why = refused if courses is None else courses.why
    return StripBack(
        keep_count=0,
        strip_count=battens,
        cures=False,
        courses=courses,
        says=f"No strip-back cures it with this unit and these ends, not even to the eaves. {why}",
    )
