"""What the edges are made from: the lines, slopes and openings of a job as they were set out."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from gaugerod.basis.finding import Finding
from gaugerod.edges.ask import EdgeLine, EdgeOpening, EdgesAsk, EdgeSlope, LineKind
from gaugerod.edges.wished import EdgesWished
from gaugerod.job.edge_lines import edge_lines, perhaps_one, tails_mm
from gaugerod.job.model import Job
from gaugerod.job.result import Beneath, RoofResult, SlopeResult
from gaugerod.laying.cells import LINE_PLAY_MM


def edges_ask(
    job: Job, slopes: Sequence[SlopeResult], roofs: Sequence[RoofResult], under: Beneath
) -> tuple[EdgesAsk, tuple[Finding, ...]]:
    """The whole roof, and what could not be told of its lines. Scope: slopes that were set out."""
    lines, found = edge_lines(slopes, roofs, job.edges.shared)
    ask = EdgesAsk(
        lines=tuple(_with_reach(line, job.wishes.ridge_cover_mm) for line in lines),
        slopes=tuple(_slope(slope) for slope in slopes),
        openings=tuple(opening for slope in slopes for opening in _openings(slope)),
        covering=job.covering,
        wished=job.edges,
        edition=job.edition,
        air=under.air,
    )
    return ask, (*found, *perhaps_one(lines, _counted(job.edges)))


def _with_reach(line: EdgeLine, reach_mm: float | None) -> EdgeLine:
    """A wall along the top with how far its flashing is to reach; every other line as it is."""
    return replace(line, reach_mm=reach_mm) if line.kind is LineKind.TOP_ABUTMENT else line


def _counted(wished: EdgesWished) -> frozenset[LineKind]:
    """The kinds of line whose units are counted, so that to count one twice would matter."""
    kinds: set[LineKind] = set()
    if wished.ridge is not None:
        kinds |= {LineKind.RIDGE, LineKind.HIP}
    if wished.valley is not None:
        kinds.add(LineKind.VALLEY)
    if wished.air.high is not None:
        kinds.add(LineKind.RIDGE)
    return frozenset(kinds)


def _slope(slope: SlopeResult) -> EdgeSlope:
    return EdgeSlope(
        name=slope.slope.name,
        pitch_deg=slope.slope.pitch_deg,
        gauge_mm=_greatest_gauge_mm(slope),
        headlap_mm=_greatest_headlap_mm(slope),
        courses_count=slope.courses.count,
    )


def _greatest_gauge_mm(slope: SlopeResult) -> float:
    gaps = [gap for rod in slope.courses.rods for gap in rod.gaps_mm]
    return max((*gaps, *(rod.gauge_mm for rod in slope.courses.rods)))


def _greatest_headlap_mm(slope: SlopeResult) -> float:
    """In single lap where the courses lie closest: as much more than the least lap as the gauges differ."""
    if slope.double_lap is not None:
        return slope.double_lap.greatest_headlap_mm
    if slope.diminishing is not None:
        return max((slope.courses.headlap_mm, *(lap for rod in slope.diminishing.rods for lap in rod.laps_mm[:-1])))
    gauges = [gauge for rod in slope.courses.rods for gauge in (*rod.gaps_mm, rod.gauge_mm)]
    return slope.courses.headlap_mm + max(gauges) - min(gauges)


def _openings(slope: SlopeResult) -> Iterator[EdgeOpening]:
    made = dict(slope.slope.openings_made)
    for opening in slope.slope.openings:
        yield EdgeOpening(
            name=opening.name,
            slope=slope.slope.name,
            width_mm=opening.width_mm,
            height_mm=opening.height_mm,
            made=made.get(opening.name),
            courses_count=sum(
                1
                for tail_mm, next_mm in pairwise(tails_mm(slope))
                if min(next_mm, opening.head_mm) - max(tail_mm, opening.up_slope_mm) > LINE_PLAY_MM
            ),
        )
