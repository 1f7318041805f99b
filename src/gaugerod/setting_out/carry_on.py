"""Carry on from here: battens already nailed are kept where they are, the rest is set out from the last of them."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.finding import TOUCH, Finding, Sense
from gaugerod.setting_out.between_stations import height_at_mm, measured_lengths
from gaugerod.setting_out.courses import CoursesAsk, Rod
from gaugerod.setting_out.marked_limits import exact_length_mm
from gaugerod.setting_out.rods import Place
from gaugerod.setting_out.said import out_by, said


def places_of(ask: CoursesAsk) -> tuple[Place, ...]:
    """Every place that gets a rod, left to right: the stations, and wherever nailed battens were measured.

    Between measured places both the apex and the kept battens run straight; past the outermost two they run on
    straight. Battens measured at one place only are taken to be parallel to the eaves.
    Raises InputRefused when battens run on so far that they cross or pass the apex.
    """
    lengths = measured_lengths(ask)
    if not ask.nailed:
        return tuple(Place(at_mm=at_mm, length_mm=length_mm) for at_mm, length_mm in lengths)
    nailed = [(exact_length_mm(rod.at_mm), tuple(map(exact_length_mm, rod.marks_mm))) for rod in ask.nailed]
    battens = range(len(nailed[0][1]))
    lines = [[(at_mm, marks_mm[batten]) for at_mm, marks_mm in nailed] for batten in battens]
    places = tuple(
        Place(
            at_mm=at_mm,
            length_mm=height_at_mm(points=lengths, at_mm=at_mm),
            kept_mm=tuple(height_at_mm(points=line, at_mm=at_mm) for line in lines),
        )
        for at_mm in sorted({at_mm for at_mm, _ in (*lengths, *nailed)})
    )
    faults = [fault for place in places for fault in _runs_wild(place)]
    if faults:
        raise InputRefused(faults)
    return places


def _runs_wild(place: Place) -> Iterator[Fault]:
    out_of_order = any(upper <= lower for lower, upper in pairwise((Fraction(0), *place.kept_mm)))
    if out_of_order or place.kept_mm[-1] > place.length_mm:
        yield Fault(
            field="nailed",
            given=f"battens that run on to {float(place.kept_mm[-1]):.1f} mm, {float(place.at_mm):g} mm from the left",
            allowed=f"battens in order, below the apex at {float(place.length_mm):.1f} mm",
            do=f"Measure the nailed battens {float(place.at_mm):g} mm from the left as well.",
        )


def kept_gap_findings(*, ask: CoursesAsk, rods: Sequence[Rod]) -> Iterator[Finding]:
    """Every gap between kept battens that leaves the gauge range, at its worst place."""
    kept = rods[0].kept_count
    for lower in range(kept - 1):
        gaps_mm = [(rod.marks_mm[lower + 1] - rod.marks_mm[lower], rod.at_mm) for rod in rods]
        widest_mm, widest_at_mm = max(gaps_mm, key=lambda gap: gap[0])
        if widest_mm > ask.gauge_max_mm + TOUCH:
            yield _short_lap(ask, lower=lower, gap_mm=widest_mm, at_mm=widest_at_mm)
        narrowest_mm, narrowest_at_mm = min(gaps_mm, key=lambda gap: gap[0])
        if ask.gauge_min_mm is not None and narrowest_mm < ask.gauge_min_mm - TOUCH:
            yield _long_lap(ask, lower=lower, gap_mm=narrowest_mm, gauge_min_mm=ask.gauge_min_mm, at_mm=narrowest_at_mm)


def kept_overhang_findings(*, ask: CoursesAsk, rods: Sequence[Rod]) -> Iterator[Finding]:
    """Where a nailed eaves batten, not parallel to the fascia, takes the overhang out of its band.

    The overhang at the first place is the slope's own and is judged with the rules of the eaves.
    """
    for rod in rods[1:]:
        differs = not -TOUCH <= rod.overhang_mm - rods[0].overhang_mm <= TOUCH
        if rod.kept_count and differs and not ask.overhang.holds(rod.overhang_mm):
            yield _overhang_out(ask, rod)


def _overhang_out(ask: CoursesAsk, rod: Rod) -> Finding:
    short = rod.overhang_mm < ask.overhang.least_mm
    limit_mm = ask.overhang.least_mm if short else ask.overhang.greatest_mm
    out_mm = limit_mm - rod.overhang_mm if short else rod.overhang_mm - limit_mm
    does = "water may run back behind the gutter" if short else "water may shoot over the gutter"
    return Finding(
        rule="eaves overhang",
        where=f"{ask.where}, {said(rod.at_mm, ask.division)} from the left",
        proposed=rod.overhang_mm,
        limit=limit_mm,
        unit="mm",
        sense=Sense.AT_LEAST if short else Sense.AT_MOST,
        citation=ask.overhang.citation,
        says=(
            f"The nailed eaves batten gives an overhang of {said(rod.overhang_mm, ask.division)} here, "
            f"{out_by(out_mm, ask.division)} {'short of' if short else 'past'} its band: {does}. "
            f"Nail it again {out_by(out_mm, ask.division)} {'lower' if short else 'higher'} or more at this end."
        ),
    )


def _short_lap(ask: CoursesAsk, *, lower: int, gap_mm: float, at_mm: float) -> Finding:
    gap, greatest = said(gap_mm, ask.division), said(ask.gauge_max_mm, ask.division)
    over = out_by(gap_mm - ask.gauge_max_mm, ask.division)
    return Finding(
        rule="headlap",
        where=f"{ask.where}, nailed battens {lower + 1} to {lower + 2}, {said(at_mm, ask.division)} from the left",
        proposed=ask.unit_length_mm - gap_mm,
        limit=ask.unit_length_mm - ask.gauge_max_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.gauge_citation,
        says=(
            f"Battens {lower + 1} and {lower + 2} stand {gap} apart, over the greatest gauge of {greatest}: the lap "
            f"there is short by {over}. Take batten {lower + 2} down and nail it {over} lower or more; "
            f"then measure again and carry on."
        ),
    )


def _long_lap(ask: CoursesAsk, *, lower: int, gap_mm: float, gauge_min_mm: float, at_mm: float) -> Finding:
    return Finding(
        rule="least gauge",
        where=f"{ask.where}, nailed battens {lower + 1} to {lower + 2}, {said(at_mm, ask.division)} from the left",
        proposed=gap_mm,
        limit=gauge_min_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.gauge_citation,
        says=(
            f"Battens {lower + 1} and {lower + 2} stand {said(gap_mm, ask.division)} apart, "
            f"{out_by(gauge_min_mm - gap_mm, ask.division)} under the least gauge: units may not lap that far. "
            f"The lap is not short, but lay a unit there to see that it beds before going on."
        ),
    )
