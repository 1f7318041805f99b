"""The result document: plain JSON, in a fixed order, with the names other programs may rely on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.beneath_document import (
    battens_document,
    fixings_document,
    load_document,
    underlay_document,
    ventilation_document,
)
from gaugerod.adapters.result_document.double_lap_document import (
    diminishing_document,
    double_lap_document,
    verge_piece_document,
)
from gaugerod.adapters.result_document.edges_document import edges_document
from gaugerod.adapters.result_document.laying_document import laying_document, offcuts_document
from gaugerod.adapters.result_document.roof_document import roof_document
from gaugerod.adapters.result_document.rounded import fine, fine_points
from gaugerod.adapters.result_document.take_off_document import (
    order_document,
    record_document,
    take_off_document,
)
from gaugerod.basis.finding import Finding
from gaugerod.basis.working import Step
from gaugerod.job.model import Slope, TopKind
from gaugerod.job.result import Result, SlopeResult
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.across import Across
from gaugerod.setting_out.courses import Alternative, Courses, OpeningCourses, Rod

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.shape import (
        AcrossDocument,
        AlternativeDocument,
        CoursesDocument,
        FindingDocument,
        OpeningDocument,
        ResultDocument,
        RodDocument,
        SlopeDocument,
        StepDocument,
    )


def result_document(result: Result) -> ResultDocument:
    """The whole result. Lengths in mm to a ten-thousandth, angles in degrees."""
    of = {building.name: building for building in result.job.buildings}
    pieces = [piece for slope in result.slopes if slope.laid is not None for piece in slope.laid.pieces]
    under = result.beneath
    return {
        "title": result.job.title,
        "edition": result.job.edition.value,
        "version": result.version,
        "covering": {"name": result.job.covering.name, "title": result.job.covering.title},
        "slopes": [_slope(slope) for slope in result.slopes],
        "not_set_out": [{"name": each.slope.name, "why": each.why} for each in result.not_set_out],
        "roofs": [roof_document(roof, of[roof.name]) for roof in result.roofs],
        "offcuts": None if result.offcuts is None else offcuts_document(result.offcuts, pieces),
        "battens": None if under.battens is None else battens_document(under.battens),
        "underlay": underlay_document(under.underlay, under.rolls) if under.underlay else None,
        "ventilation": [ventilation_document(air) for air in under.air],
        "fixings": [fixings_document(plan) for plan in under.fixings],
        "load": [load_document(load) for load in under.loads],
        "edges": None if result.edges is None else edges_document(result.edges),
        "take_off": [] if result.take_off is None else take_off_document(result.take_off),
        "order": None if result.take_off is None else order_document(result.take_off),
        "record": record_document(result.job.record),
        "findings": [finding_document(finding) for finding in result.findings],
        "alternatives": [_alternative(where, each) for where, each in result.alternatives],
        "cautions": list(result.cautions),
        "working": step_document(result.working),
    }


def _slope(slope: SlopeResult) -> SlopeDocument:
    return {
        "name": slope.slope.name,
        "area_m2": fine(slope.shape.area_mm2 / 1e6),
        "pitch_deg": fine(slope.slope.pitch_deg),
        "outline_mm": fine_points(slope.shape.outline_mm),
        "edges": _edges(slope.slope),
        "courses": _courses(slope.courses),
        "across": None if slope.across is None else _across(slope.across),
        "laying": None if slope.laid is None else laying_document(slope.laid),
        "double_lap": None if slope.double_lap is None else double_lap_document(slope.double_lap),
        "verge_pieces": [verge_piece_document(piece) for piece in slope.verge_pieces],
        "diminishing": None if slope.diminishing is None else diminishing_document(slope.diminishing),
        "method": list(slope.method),
    }


def _edges(slope: Slope) -> list[str]:
    if slope.outline is None:
        return [slope.bottom.value, slope.right.value, slope.top.value, slope.left.value]
    ridge = TopKind.MONO_RIDGE if slope.top is TopKind.MONO_RIDGE else TopKind.RIDGE
    return [ridge.value if kind is EdgeKind.RIDGE else kind.value for kind in slope.outline.kinds]


def _courses(courses: Courses) -> CoursesDocument:
    least_mm = courses.gauge_min_mm
    cut_mm = courses.top_course_cut_mm
    return {
        "count": courses.count,
        "gauge_mm": [fine(rod.gauge_mm) for rod in courses.rods],
        "headlap_mm": fine(courses.headlap_mm),
        "limit": {
            "gauge_max_mm": fine(courses.gauge_max_mm),
            "gauge_min_mm": None if least_mm is None else fine(least_mm),
        },
        "strategy": courses.strategy.value,
        "why": courses.why,
        "overhang_mm": fine(courses.overhang_mm),
        "taper_per_course_mm": fine(courses.taper_per_course_mm),
        "top_course_cut_mm": None if cut_mm is None else [fine(cut) for cut in cut_mm],
        "rods": [_rod(rod) for rod in courses.rods],
        "openings": [_opening(opening) for opening in courses.openings],
    }


def _rod(rod: Rod) -> RodDocument:
    return {
        "at_mm": fine(rod.at_mm),
        "length_mm": fine(rod.length_mm),
        "marks_mm": [fine(mark) for mark in rod.marks_mm],
        "exact_mm": [fine(mark) for mark in rod.exact_mm],
        "overhang_mm": fine(rod.overhang_mm),
        "below_apex_mm": fine(rod.below_apex_mm),
        "kept_count": rod.kept_count,
    }


def _opening(opening: OpeningCourses) -> OpeningDocument:
    return {
        "name": opening.name,
        "sill_course": opening.sill_course,
        "sill_head_mm": fine(opening.sill_head_mm),
        "head_course": opening.head_course,
        "head_tail_mm": fine(opening.head_tail_mm),
        "says": opening.says,
        "segments": [
            {
                "name": segment.name,
                "from_mm": fine(segment.from_mm),
                "to_mm": fine(segment.to_mm),
                "count": segment.count,
                "gauge_mm": fine(segment.gauge_mm),
                "inside": segment.inside,
            }
            for segment in opening.segments
        ],
        "segments_say": opening.segments_say,
    }


def _across(across: Across) -> AcrossDocument:
    return {
        "units": across.units_count,
        "cover_mm": fine(across.cover_mm),
        "left_overhang_mm": fine(across.left_overhang_mm),
        "right_overhang_mm": fine(across.right_overhang_mm),
        "bond": across.bond.value,
        "perps_every": across.perps_every_count,
        "perps_mm": [fine(mark) for mark in across.perp_lines[0].marks_mm],
        "lines": [
            {
                "line": line.line,
                "cover_mm": fine(line.cover_mm),
                "left_reach_mm": fine(line.left_reach_mm),
                "right_reach_mm": fine(line.right_reach_mm),
                "marks_mm": [fine(mark) for mark in line.marks_mm],
            }
            for line in across.perp_lines
        ],
        "cuts": [
            {
                "at": piece.at,
                "bond_row": piece.bond_row,
                "fit": piece.fit.value,
                "cover_mm": fine(piece.cover_mm),
                "width_mm": fine(piece.width_mm),
            }
            for piece in across.pieces
        ],
        "least_piece_mm": None if across.least_piece_mm is None else fine(across.least_piece_mm),
        "fanned": across.fanned,
        "why": across.why,
    }


def finding_document(finding: Finding) -> FindingDocument:
    """One finding, its source and basis with it."""
    return {
        "rule": finding.rule,
        "where": finding.where,
        "verdict": finding.verdict.value,
        "proposed": None if finding.proposed is None else fine(finding.proposed),
        "limit": None if finding.limit is None else fine(finding.limit),
        "unit": finding.unit,
        "sense": finding.sense.value,
        "source": finding.citation.source,
        "basis": finding.citation.basis.value,
        "says": finding.says,
    }


def _alternative(where: str, alternative: Alternative) -> AlternativeDocument:
    return {
        "where": where,
        "rank": alternative.rank,
        "change": alternative.change,
        "by_mm": fine(alternative.by_mm),
        "costs": alternative.costs,
        "keeps_limits": alternative.keeps_limits,
        "gauges": alternative.gauges,
        "gauge_mm": fine(alternative.gauge_mm),
    }


def step_document(step: Step) -> StepDocument:
    """One step of the working, and all below it."""
    return {
        "name": step.name,
        "formula": step.formula,
        "inputs": {word: _value(value) for word, value in step.inputs.items()},
        "value": _value(step.value),
        "unit": step.unit,
        "source": None if step.citation is None else step.citation.source,
        "basis": None if step.citation is None else step.citation.basis.value,
        "parts": [step_document(part) for part in step.parts],
    }


def _value(value: float | str) -> float | str:
    return value if isinstance(value, str) else fine(value)
