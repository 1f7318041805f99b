"""What is uneven, said: run-out, courses forced in or stretched, lines that open, and a top line off the ridge.

The tolerances are this program's own (house), and each finding says so: no published one for course lines was found.
So what is outside one of them is advice: it shows, it does not leak, and it puts nothing outside a rule.
"""

from collections.abc import Iterator, Sequence

from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.evenness import UNLIKE, CourseLine, GapAsBuilt, Spacing
from gaugerod.as_built.needed import Needed
from gaugerod.as_built.roof_check import RodAsBuilt
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.rules.misfit import misfit
from gaugerod.setting_out.said import said
from gaugerod.setting_out.section_laid import LapOver
from gaugerod.standards.defaults import Tolerance, tolerance

HOUSE = "A house tolerance, not a standard: it shows, it does not leak."


def evenness_findings(
    ask: RoofAsk, *, needed: Needed, rods: Sequence[RodAsBuilt], lines: Sequence[CourseLine]
) -> Iterator[Finding]:
    """Run-out at the worst place, every gap unlike its neighbours, and how parallel the lines are."""
    yield _run_out(ask, rods)
    yield from _unlike_gaps(ask, needed, rods)
    if lines:
        yield _opening_lines(ask, rods, lines)
        if ask.finished:
            yield _top_line(ask, rods)


def _run_out(ask: RoofAsk, rods: Sequence[RodAsBuilt]) -> Finding:
    limit = tolerance(ask.edition, Tolerance.RUN_OUT_OVER_SLOPE)

    def size_mm(rod: RodAsBuilt) -> float:
        worst_mm = rod.even.worst_run_out.run_out_mm
        return max(worst_mm, -worst_mm)

    rod = max(rods, key=size_mm)
    gap, out_mm = rod.even.worst_run_out, size_mm(rod)
    place = f"batten {gap.upper}, {said(rod.at_mm, ask.division)} from the left"
    side = "above" if gap.run_out_mm > 0 else "below"
    inside = out_mm <= limit.value + TOUCH
    return Finding(
        rule="gauge run-out",
        where=f"{ask.where}, {place}",
        proposed=out_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says=(
            f"No course is further than {misfit(out_mm)} from its place in equal gauges of "
            f"{said(rod.even.equal_gauge_mm, ask.division)}."
            if inside
            else f"The courses have run out: this one lies {misfit(out_mm)} {side} its place in equal gauges of "
            f"{said(rod.even.equal_gauge_mm, ask.division)}. {HOUSE}"
        ),
    )


def _unlike_gaps(ask: RoofAsk, needed: Needed, rods: Sequence[RodAsBuilt]) -> Iterator[Finding]:
    """One finding for each pair of battens with a gap unlike its neighbours, at the place where it is most so."""
    for index in range(len(rods[0].even.gaps)):
        unlike = [(rod, rod.even.gaps[index]) for rod in rods if _is_told(rod.even.gaps[index], needed)]
        if unlike:
            rod, gap = max(unlike, key=lambda each: _unlikeness_mm(*each))
            yield _unlike(ask, needed, rod, gap)


def _is_told(gap: GapAsBuilt, needed: Needed) -> bool:
    """Even gaps are not told; in single lap a gap over the greatest gauge is told already, as a short lap."""
    short_lap = needed.lapping is LapOver.NEXT_BELOW and gap.gap_mm > needed.afresh.gauge_max_mm + TOUCH
    return gap.spacing is not Spacing.EVEN and not short_lap


def _unlikeness_mm(rod: RodAsBuilt, gap: GapAsBuilt) -> float:
    off_mm = gap.gap_mm - rod.even.usual_gauge_mm
    return max(off_mm, -off_mm)


def _unlike(ask: RoofAsk, needed: Needed, rod: RodAsBuilt, gap: GapAsBuilt) -> Finding:
    where = f"{ask.where}, battens {gap.lower} to {gap.upper}, {said(rod.at_mm, ask.division)} from the left"
    gap_said, usual_said = (said(each, ask.division) for each in (gap.gap_mm, rod.even.usual_gauge_mm))
    if gap.spacing is Spacing.TOP:
        return not_covered(
            rule="top gap",
            where=where,
            proposed=gap.gap_mm,
            unit="mm",
            citation=UNLIKE.citation,
            says=f"The top gap is {gap_said} where {usual_said} is usual here. That is right if the heads of the top course "
            "were cut; with whole units a course was forced in. Lift a ridge unit and look.",
        )
    least_mm = needed.afresh.gauge_min_mm
    if least_mm is not None and gap.gap_mm < least_mm - TOUCH:
        return Finding(
            rule="course forced in",
            where=where,
            proposed=gap.gap_mm,
            limit=least_mm,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=needed.afresh.gauge_citation,
            says=f"A course was forced in: {gap_said} where {usual_said} is usual here, {misfit(least_mm - gap.gap_mm)} "
            "under the least gauge. Heads foul and the units above may not seat; the lap is not short.",
        )
    forced = gap.spacing is Spacing.FORCED_IN
    share = 1 - UNLIKE.value if forced else 1 + UNLIKE.value
    greatest_mm = needed.afresh.gauge_max_mm
    over = gap.gap_mm > greatest_mm + TOUCH
    does = "It is over the greatest gauge: its laps hold only where the next gap is closer." if over else HOUSE
    return Finding(
        rule="course forced in" if forced else "course stretched",
        where=where,
        proposed=gap.gap_mm,
        limit=greatest_mm if over else rod.even.usual_gauge_mm * share,
        unit="mm",
        sense=Sense.AT_LEAST if forced else Sense.AT_MOST,
        citation=needed.afresh.gauge_citation if over else UNLIKE.citation,
        says=f"A course was {'forced in' if forced else 'stretched'}: {gap_said} where {usual_said} is usual here. {does}",
    )


def _opening_lines(ask: RoofAsk, rods: Sequence[RodAsBuilt], lines: Sequence[CourseLine]) -> Finding:
    """The course that opens most against the one below, beside its fair share of what the roof is out of parallel."""
    limit = tolerance(ask.edition, Tolerance.GAUGE_FROM_SET_OUT)
    lengths_mm = [rod.length_mm for rod in rods]
    fair_mm = (max(lengths_mm) - min(lengths_mm)) / (len(lines) - 1)
    worst = max(lines, key=lambda line: line.opens_mm)
    allowed_mm = fair_mm + limit.value
    inside = worst.opens_mm <= allowed_mm + TOUCH
    return Finding(
        rule="courses parallel",
        where=f"{ask.where}, course {worst.course}",
        proposed=worst.opens_mm,
        limit=allowed_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says=(
            f"No course opens by more than {worst.opens_mm:.1f} mm against the one below, from place to place."
            if inside
            else f"This course opens by {misfit(worst.opens_mm)} against the one below, from place to place; its fair share "
            f"of a roof this much out of parallel is {fair_mm:.1f} mm. {HOUSE}"
        ),
    )


def _top_line(ask: RoofAsk, rods: Sequence[RodAsBuilt]) -> Finding:
    """The top batten against the ridge."""
    limit = tolerance(ask.edition, Tolerance.RUN_OUT_OVER_SLOPE)
    below_mm = [rod.below_apex_mm for rod in rods]
    out_mm = max(below_mm) - min(below_mm)
    inside = out_mm <= limit.value + TOUCH
    return Finding(
        rule="top batten parallel to the ridge",
        where=ask.where,
        proposed=out_mm,
        limit=limit.value,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=limit.citation,
        says=(
            f"The top batten is parallel to the ridge to {misfit(out_mm)}."
            if inside
            else f"The top batten is {misfit(out_mm)} out of parallel with the ridge. {HOUSE}"
        ),
    )
