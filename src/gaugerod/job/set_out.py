"""The one call: ``set_out(job) -> Result``. Everything that is shown anywhere comes from here."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count

from gaugerod import __version__
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.edges.answer import RoofEdges
from gaugerod.edges.make_edges import make_edges
from gaugerod.geometry.true_shape import true_shape
from gaugerod.job.across_slope import across_slope
from gaugerod.job.beneath import beneath, beneath_working
from gaugerod.job.buildings import formed, set_round_corners
from gaugerod.job.cautions import CAUTIONS
from gaugerod.job.edges_asks import edges_ask
from gaugerod.job.in_words import in_unit
from gaugerod.job.laid_out import laid_out
from gaugerod.job.lower_tops import lower_top_findings
from gaugerod.job.method import method_steps
from gaugerod.job.model import Job, Slope
from gaugerod.job.outlined import outline_shape
from gaugerod.job.result import Beneath, NotSetOut, Result, RoofResult, SlopeResult
from gaugerod.job.rules_met import job_findings
from gaugerod.job.slope_called import slope_called
from gaugerod.job.stack_share import stack_shares
from gaugerod.job.take_off_ask import take_off_ask
from gaugerod.job.up_slope import corner_ask, up_slope
from gaugerod.job.upper_eaves import upper_eaves_findings
from gaugerod.job.wished import overhang_on_slope
from gaugerod.laying.offcuts import OffcutPlan, plan_offcuts
from gaugerod.setting_out.courses import Alternative, CoursesAsk
from gaugerod.setting_out.round_corners import Shared
from gaugerod.setting_out.set_courses import no_room_for_courses
from gaugerod.take_off.take_off import take_off


def set_out(job: Job) -> Result:
    """Set the whole job out.

    Raises InputRefused with every fault when figures cannot be used, NothingToSetOut when no slope can be set out at all,
    RoofWillNotClose or RoofAsks where a building's roof stays open or needs a choice.
    """
    buildings = [formed(each) for each in job.buildings]
    stack = stack_shares(job, [*job.slopes, *(slope for building in buildings for slope in building.slopes)])
    done = [(slope, _slope_or_why(stack.jobs[slope.name], slope, shared=None)) for slope in job.slopes]
    roofs: list[RoofResult] = []
    corner_findings: list[Finding] = []
    for building in buildings:
        corners = set_round_corners(
            building,
            [_ask_to_share(job, slope) for slope in building.slopes],
            diminishing=isinstance(job.covering, RandomSlates),
        )
        done.extend(
            (slope, _slope_or_why(stack.jobs[slope.name], slope, shared=corners.shared.get(slope.name)))
            for slope in building.slopes
        )
        names = tuple(slope.name for slope in building.slopes)
        roofs.append(
            RoofResult(name=building.building.name, form=building.form, slope_names=names, corners=corners.says)
        )
        corner_findings.extend((*building.form.findings, *corners.findings))
    nothing = [found for _, found in done if isinstance(found, NothingToSetOut)]
    if nothing and len(nothing) == len(done):
        raise nothing[0]
    slopes = tuple(_numbered_through([found for _, found in done if isinstance(found, SlopeResult)]))
    not_set_out = tuple(_not_set_out(done))
    under = beneath(job, slopes, roofs)
    edges, found_of_edges = _edges(job, slopes, roofs, under)
    offcuts = _offcuts(slopes)
    taken = take_off(
        take_off_ask(job, slopes=slopes, not_set_out=not_set_out, offcuts=offcuts, under=under, edges=edges)
    )
    result = Result(
        job=job,
        slopes=slopes,
        findings=_once_each(
            (
                *job_findings(job),
                *stack.findings,
                *corner_findings,
                *(finding for slope in slopes for finding in slope.findings),
                *(finding for short in not_set_out for finding in short.findings),
                *under.findings,
                *found_of_edges,
                *taken.findings,
            )
        ),
        alternatives=tuple(_alternatives(slopes, not_set_out)),
        not_set_out=not_set_out,
        roofs=tuple(roofs),
        offcuts=offcuts,
        beneath=under,
        edges=edges,
        take_off=taken,
        version=__version__,
        cautions=CAUTIONS,
        working=Step(
            name=job.title,
            formula="each slope set out, those that meet at hips and valleys together",
            inputs={"covering": job.covering.title, "edition": job.edition.value},
            value=float(len(slopes)),
            unit="slopes",
            parts=(
                *(_slope_working(slope) for slope in slopes),
                *beneath_working(under),
                edges.working,
                taken.working,
            ),
        ),
    )
    return in_unit(result, job.show_lengths_in)


def _edges(
    job: Job, slopes: Sequence[SlopeResult], roofs: Sequence[RoofResult], under: Beneath
) -> tuple[RoofEdges, tuple[Finding, ...]]:
    """Every edge made, with all that was found of them and of their lines: two that may be one are counted twice."""
    ask, found = edges_ask(job, slopes, roofs, under)
    edges = make_edges(ask)
    edges = replace(edges, findings=(*found, *edges.findings))
    return edges, edges.findings


def _alternatives(
    slopes: tuple[SlopeResult, ...], not_set_out: tuple[NotSetOut, ...]
) -> Iterator[tuple[str, Alternative]]:
    for short in not_set_out:
        yield from ((short.slope.name, alternative) for alternative in short.alternatives)
    for slope in slopes:
        yield from ((slope.slope.name, alternative) for alternative in slope.courses.alternatives)
        if slope.across is not None:
            yield from ((f"{slope.slope.name}, across", alternative) for alternative in slope.across.alternatives)


def _offcuts(slopes: tuple[SlopeResult, ...]) -> OffcutPlan | None:
    """One plan over all slopes: a left-hand hip's offcuts serve a right-hand one."""
    laid = [slope.laid for slope in slopes if slope.laid is not None]
    if not any(each.pieces for each in laid):
        return None
    return plan_offcuts([each.pieces for each in laid], unit=laid[0].ask.unit)


def _numbered_through(slopes: Sequence[SlopeResult]) -> Iterator[SlopeResult]:
    """Pieces to saw numbered through the whole job, so that a number on a sheet means one piece only."""
    numbers = count(1)
    for slope in slopes:
        if slope.laid is None:
            yield slope
            continue
        pieces = tuple(replace(piece, number=next(numbers)) for piece in slope.laid.pieces)
        yield replace(slope, laid=replace(slope.laid, pieces=pieces))


def _ask_to_share(job: Job, slope: Slope) -> CoursesAsk | None:
    """What is shared round the corners; None for a slope without courses to share, which then says why for itself."""
    try:
        ask = corner_ask(job, slope)
    except NothingToSetOut:
        return None
    return None if ask is None or no_room_for_courses(ask) else ask


def _slope_or_why(
    job: Job, slope: Slope, *, shared: tuple[Shared, str] | None
) -> SlopeResult | NotSetOut | NothingToSetOut:
    """The slope set out; or why there is nothing to set out on it, so that it holds no other slope up."""
    try:
        return _slope(job, slope, shared=shared)
    except NothingToSetOut as nothing:
        return nothing


def _not_set_out(done: Sequence[tuple[Slope, SlopeResult | NotSetOut | NothingToSetOut]]) -> Iterator[NotSetOut]:
    for slope, found in done:
        if isinstance(found, NotSetOut):
            yield found
        elif isinstance(found, NothingToSetOut):
            why = found.reason.removeprefix(f"{slope.name}: ")
            why = f"{why[:1].upper()}{why[1:]}{'' if why.endswith('.') else '.'}"
            yield NotSetOut(slope=slope, why=why, findings=(), alternatives=())


def _slope(job: Job, slope: Slope, *, shared: tuple[Shared, str] | None) -> SlopeResult | NotSetOut:
    shape = true_shape(slope.taped, where=slope.name) if slope.outline is None else outline_shape(slope.outline)
    up = up_slope(job, slope, shared=shared)
    if isinstance(up, NotSetOut):
        return up
    over = across_slope(job, slope, shape)
    ends: tuple[Finding, ...] = ()
    if slope.outline is not None:
        band = overhang_on_slope(job, slope)
        ends = (
            *upper_eaves_findings(slope.outline, up.courses.rods, up.tails_mm, band=band, where=slope.name),
            *lower_top_findings(slope.outline, up.courses.rods, where=slope.name),
        )
    return SlopeResult(
        slope=slope,
        shape=shape,
        courses=up.courses,
        across=over.across,
        findings=_once_each((*shape.findings, *up.findings, *over.findings, *ends)),
        method=method_steps(job, slope, up, over),
        laid=laid_out(job, slope, shape, up, over),
        double_lap=up.double_lap,
        verge_pieces=over.verge_pieces,
        diminishing=up.diminishing,
    )


def _once_each(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The same finding can come from two stages; it is told once."""
    return tuple(dict.fromkeys(findings))


def _slope_working(slope: SlopeResult) -> Step:
    parts = (slope.courses.working,) if slope.across is None else (slope.courses.working, slope.across.working)
    return Step(
        name=f"{slope_called(slope.slope.name)}",
        formula="area inside the corners",
        inputs={f"corner {index} (mm)": f"{x:.0f}, {y:.0f}" for index, (x, y) in enumerate(slope.shape.outline_mm, 1)},
        value=slope.shape.area_mm2 / 1e6,
        unit="m²",
        parts=parts,
    )
