"""The one call: ``set_out(job) -> Result``. Everything that is shown anywhere comes from here."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod import __version__
from gaugerod.basis.citation import house
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.lengths import LengthUnit
from gaugerod.basis.rounding import Division
from gaugerod.basis.working import Step
from gaugerod.geometry.taped_slope import SlopeShape
from gaugerod.geometry.true_shape import true_shape
from gaugerod.job.buildings import formed, set_round_corners
from gaugerod.job.cautions import CAUTIONS
from gaugerod.job.in_words import in_unit
from gaugerod.job.laid_out import laid_out
from gaugerod.job.method import method_steps
from gaugerod.job.model import Job, Slope
from gaugerod.job.outlined import outline_shape
from gaugerod.job.result import Result, RoofResult, SlopeResult
from gaugerod.job.rules_met import job_findings, slope_findings
from gaugerod.job.wished import TopWished, overhang_on_slope, side, top_batten
from gaugerod.laying.offcuts import OffcutPlan, plan_offcuts
from gaugerod.rules.gauge import gauge_citation
from gaugerod.setting_out.across import Across, AcrossAsk
from gaugerod.setting_out.courses import Alternative, CoursesAsk
from gaugerod.setting_out.courses_together import courses_together
from gaugerod.setting_out.round_corners import Shared
from gaugerod.setting_out.set_across import set_out_across
from gaugerod.setting_out.set_courses import set_out_courses
from gaugerod.setting_out.stations import Station
from gaugerod.standards.defaults import minimum_cut


def set_out(job: Job) -> Result:
    """Set the whole job out.

    Raises InputRefused with every fault when figures cannot be used, NothingToSetOut when a figure that everything hangs
    on is not known, RoofWillNotClose or RoofAsks where a building's roof stays open or needs a choice.
    """
    taped = [_slope(job, slope, shared=None) for slope in job.slopes]
    roofs: list[RoofResult] = []
    corner_findings: list[Finding] = []
    for building in (formed(each) for each in job.buildings):
        corners = set_round_corners(building, [_courses_ask(job, slope)[0] for slope in building.slopes])
        taped.extend(_slope(job, slope, shared=corners.shared.get(slope.name)) for slope in building.slopes)
        roofs.append(RoofResult(name=building.building.name, form=building.form, corners=corners.says))
        corner_findings.extend((*building.form.findings, *corners.findings))
    slopes = tuple(_numbered_through(taped))
    result = Result(
        job=job,
        slopes=slopes,
        findings=(
            *job_findings(job),
            *corner_findings,
            *(finding for slope in slopes for finding in slope.findings),
        ),
        alternatives=tuple(_alternatives(slopes)),
        roofs=tuple(roofs),
        offcuts=_offcuts(slopes),
        version=__version__,
        cautions=CAUTIONS,
        working=Step(
            name=job.title,
            formula="each slope set out, those that meet at hips and valleys together",
            inputs={"covering": job.covering.title, "edition": job.edition.value},
            value=float(len(slopes)),
            unit="slopes",
            parts=tuple(_slope_working(slope) for slope in slopes),
        ),
    )
    return in_unit(result, job.show_lengths_in)


def division_of(unit: LengthUnit) -> Division:
    """What marks are rounded to: a millimetre, or a sixteenth where lengths are shown in feet and inches."""
    return Division.SIXTEENTH if unit is LengthUnit.FT_IN else Division.MILLIMETRE


def _alternatives(slopes: tuple[SlopeResult, ...]) -> Iterator[tuple[str, Alternative]]:
    for slope in slopes:
        yield from ((slope.slope.name, alternative) for alternative in slope.courses.alternatives)
        if slope.across is not None:
            yield from ((f"{slope.slope.name}, across", alternative) for alternative in slope.across.alternatives)


def _offcuts(slopes: tuple[SlopeResult, ...]) -> OffcutPlan | None:
    """One plan over all slopes: a left-hand hip's offcuts serve a right-hand one."""
    laid = [slope.laid for slope in slopes if slope.laid is not None]
    pieces = [piece for each in laid for piece in each.pieces]
    return plan_offcuts(pieces, unit=laid[0].ask.unit) if pieces else None


def _numbered_through(slopes: Sequence[SlopeResult]) -> Iterator[SlopeResult]:
    """Pieces to saw numbered through the whole job, so that a number on a sheet means one piece only."""
    before = 0
    for slope in slopes:
        if slope.laid is None:
            yield slope
            continue
        pieces = tuple(replace(piece, number=piece.number + before) for piece in slope.laid.pieces)
        before += len(pieces)
        yield replace(slope, laid=replace(slope.laid, pieces=pieces))


def _slope(job: Job, slope: Slope, *, shared: tuple[Shared, str] | None) -> SlopeResult:
    shape = true_shape(slope.taped, where=slope.name) if slope.outline is None else outline_shape(slope.outline)
    ask, top = _courses_ask(job, slope)
    courses = set_out_courses(ask) if shared is None else courses_together(ask, shared[0], says=shared[1])
    across, across_unknown = _across(job, slope, shape)
    findings = (
        *shape.findings,
        *top.findings,
        *courses.findings,
        *(across.findings if across is not None else ()),
        *across_unknown,
        *slope_findings(job, slope, courses=courses),
    )
    return SlopeResult(
        slope=slope,
        shape=shape,
        courses=courses,
        across=across,
        findings=_once_each(findings),
        method=method_steps(slope, job.covering, courses, across, unit=job.show_lengths_in),
        laid=None if across is None else laid_out(slope, shape, job.covering, courses, across),
    )


def _courses_ask(job: Job, slope: Slope) -> tuple[CoursesAsk, TopWished]:
    tile = job.covering
    if tile.hanging_length_mm is None:
        raise NothingToSetOut(
            f"{tile.title}: the hanging length is not known, so the first batten cannot be placed. Measure from the "
            f"bearing face of the nibs to the tail and give it as hanging_length."
        )
    top = top_batten(job, slope, head_to_nib_mm=tile.length_mm - tile.hanging_length_mm)
    ask = CoursesAsk(
        where=slope.name,
        stations=tuple(Station(at_mm=at_mm, length_mm=length_mm) for at_mm, length_mm in slope.taped.rafters),
        unit_length_mm=tile.length_mm,
        hanging_length_mm=tile.hanging_length_mm,
        gauge_min_mm=tile.gauge_min_mm,
        gauge_max_mm=tile.gauge_max_mm,
        gauge_citation=gauge_citation(tile),
        overhang=overhang_on_slope(job, slope),
        top=top.band,
        division=division_of(job.show_lengths_in),
        openings=slope.openings,
        nailed=slope.nailed,
    )
    return ask, top


def _across(job: Job, slope: Slope, shape: SlopeShape) -> tuple[Across | None, tuple[Finding, ...]]:
    tile = job.covering
    if tile.cover_closed_mm is None or tile.cover_open_mm is None:
        return None, (_cover_not_known(job, slope),)
    top_left_mm, top_right_mm = 0.0, slope.taped.eaves_mm
    if slope.outline is None:
        (top_right_mm, _), (top_left_mm, _) = shape.outline_mm[2], shape.outline_mm[3]
    across = set_out_across(
        AcrossAsk(
            where=slope.name,
            eaves_width_mm=slope.taped.eaves_mm,
            top_left_mm=top_left_mm,
            top_right_mm=top_right_mm,
            left=side(job, slope.left, high_point=bool(tile.high_points_mm)),
            right=side(job, slope.right, high_point=bool(tile.high_points_mm)),
            unit_width_mm=tile.width_mm,
            cover_closed_mm=tile.cover_closed_mm,
            cover_open_mm=tile.cover_open_mm,
            cover_citation=tile.citation,
            bond=job.wishes.bond or tile.bonds[0],
            half_unit=tile.half_unit,
            unit_and_a_half=tile.unit_and_a_half,
            high_points_mm=tile.high_points_mm,
            openings=slope.openings,
            division=division_of(job.show_lengths_in),
            minimum_cut=minimum_cut(job.edition),
            perps_every_count=job.wishes.perps_every_count,
        )
    )
    return across, ()


def _cover_not_known(job: Job, slope: Slope) -> Finding:
    return not_covered(
        rule="cover width",
        where=slope.name,
        proposed=None,
        unit="mm",
        citation=house("nothing is guessed"),
        says=(
            f"{job.covering.title}: the closed and open cover widths are not known, so no perps are set out. Lay ten "
            f"pushed up and ten pulled open, and measure both."
        ),
    )


def _once_each(findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """The same finding can come from two stages; it is told once."""
    return tuple(dict.fromkeys(findings))


def _slope_working(slope: SlopeResult) -> Step:
    parts = (slope.courses.working,) if slope.across is None else (slope.courses.working, slope.across.working)
    return Step(
        name=f"slope {slope.slope.name}",
        formula="area inside the corners",
        inputs={f"corner {index} (mm)": f"{x:.0f}, {y:.0f}" for index, (x, y) in enumerate(slope.shape.outline_mm, 1)},
        value=slope.shape.area_mm2 / 1e6,
        unit="m²",
        parts=parts,
    )
