"""Across one slope, whatever covers it: the perps, and what is laid at the verges."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.taped_slope import SlopeShape
from gaugerod.job.model import Job, Slope
from gaugerod.job.upper_edges import edges_left_to_the_laying, how_it_stands, upper_edges
from gaugerod.job.wished import division_of, side
from gaugerod.rules.plain_tile import plain_tile_sidelap
from gaugerod.rules.slates import slate_joint
from gaugerod.setting_out.across import Across, AcrossAsk, CourseEnd, PerpLine, UpperReach
from gaugerod.setting_out.across_findings import least_piece_findings, reach_findings
from gaugerod.setting_out.across_working import ends_said
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.double_lap_across import (
    DoubleLapAcross,
    MadeOf,
    VergePiece,
    across_ask,
    verge_pieces,
    verge_slate_findings,
)
from gaugerod.setting_out.end_pieces import least_cut_mm
from gaugerod.setting_out.set_across import set_out_across
from gaugerod.standards.defaults import minimum_cut
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure

NO_JOINT = house("units may touch: the least joint is nothing")


@dataclass(frozen=True, slots=True, kw_only=True)
class AcrossSlope:
    """The perps of one slope. ``across`` is None where there are none to set out; a finding then says why."""

    across: Across | None
    findings: tuple[Finding, ...]
    verge_pieces: tuple[VergePiece, ...] = ()


def across_slope(job: Job, slope: Slope, shape: SlopeShape) -> AcrossSlope:
    """The perps. Raises InputRefused and NothingToSetOut as the setting out does."""
    covering = job.covering
    match covering:
        case SingleLapTile():
            return _single_lap(job, slope, shape, covering)
        case PlainTile() | SizedSlate():
            return _double_lap(job, slope, shape, covering)
        case RandomSlates():
            return AcrossSlope(across=None, findings=(_random_widths(slope),))
        case _ as unreachable:
            assert_never(unreachable)


def _top_line_mm(slope: Slope, shape: SlopeShape) -> tuple[float, float]:
    """Left and right end of the top line; a slope by outline is cut to its hips and valleys instead."""
    if slope.outline is not None:
        return 0.0, slope.taped.eaves_mm
    return shape.outline_mm[3][0], shape.outline_mm[2][0]


def _single_lap(job: Job, slope: Slope, shape: SlopeShape, tile: SingleLapTile) -> AcrossSlope:
    if tile.cover_closed_mm is None or tile.cover_open_mm is None:
        return AcrossSlope(across=None, findings=(_cover_not_known(slope, tile),))
    top_left_mm, top_right_mm = _top_line_mm(slope, shape)
    crowns, stands = bool(tile.high_points_mm), how_it_stands(slope)
    across = set_out_across(
        AcrossAsk(
            where=slope.name,
            eaves_width_mm=slope.taped.eaves_mm,
            top_left_mm=top_left_mm,
            top_right_mm=top_right_mm,
            left=side(job, slope.left, high_point=crowns),
            right=side(job, slope.right, high_point=crowns),
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
            upper=upper_edges(job, slope, high_point=crowns),
            left_high_mm=stands.left_high_mm,
            right_high_mm=stands.right_high_mm,
            reaches_mm=stands.reaches_mm,
        )
    )
    return AcrossSlope(across=across, findings=(*across.findings, *edges_left_to_the_laying(slope)))


def joint_band(job: Job, unit: PlainTile | SizedSlate) -> Band:
    """The gap between neighbours: as wished, else from touching to the greatest the edition gives."""
    if job.wishes.joint is not None:
        return job.wishes.joint
    which = (
        DoubleLapFigure.PLAIN_TILE_JOINT_GREATEST
        if isinstance(unit, PlainTile)
        else DoubleLapFigure.SLATE_JOINT_GREATEST
    )
    greatest = double_lap_figure(job.edition, which)
    return Band(least_mm=0.0, greatest_mm=greatest.value, citation=greatest.citation)


def _double_lap(job: Job, slope: Slope, shape: SlopeShape, unit: PlainTile | SizedSlate) -> AcrossSlope:
    top_left_mm, top_right_mm = _top_line_mm(slope, shape)
    stands = how_it_stands(slope)
    asked = DoubleLapAcross(
        where=slope.name,
        eaves_width_mm=slope.taped.eaves_mm,
        top_left_mm=top_left_mm,
        top_right_mm=top_right_mm,
        left=side(job, slope.left, high_point=False),
        right=side(job, slope.right, high_point=False),
        joint=joint_band(job, unit),
        minimum_cut=minimum_cut(job.edition),
        division=division_of(job.show_lengths_in),
        openings=slope.openings,
        perps_every_count=job.wishes.perps_every_count,
        upper=upper_edges(job, slope, high_point=False),
        left_high_mm=stands.left_high_mm,
        right_high_mm=stands.right_high_mm,
        reaches_mm=stands.reaches_mm,
    )
    ask = across_ask(asked, unit=unit)
    across = without_last_joint(set_out_across(ask), asked)
    across = replace(across, alternatives=_for_double_lap(across.alternatives, unit))
    pieces = verge_pieces(asked=asked, across=across, unit=unit, edition=job.edition)
    across = _told_as_laid(across, ask, pieces)
    findings = [*across.findings, *edges_left_to_the_laying(slope)]
    if isinstance(unit, PlainTile):
        sidelap_mm = across.cover_mm / 2
        findings.append(plain_tile_sidelap(where=slope.name, sidelap_mm=sidelap_mm, tile=unit, edition=job.edition))
    else:
        joint_mm = across.cover_mm - unit.width_mm
        findings.append(slate_joint(where=slope.name, joint_mm=joint_mm, edition=job.edition))
        findings.extend(verge_slate_findings(where=slope.name, pieces=pieces, edition=job.edition))
    return AcrossSlope(across=across, findings=tuple(findings), verge_pieces=pieces)


def without_last_joint(across: Across, asked: DoubleLapAcross) -> Across:
    """The perps with the right side read off the last unit itself.

    The perps are set out with each unit standing for itself and the joint at its right; the last joint has nothing beyond it.
    """
    joint_mm = asked.joint.greatest_mm
    lines = tuple(
        replace(
            line,
            right_reach_mm=line.right_reach_mm - joint_mm,
            marks_mm=(*line.marks_mm[:-1], line.marks_mm[-1] - joint_mm),
            exact_mm=(*line.exact_mm[:-1], line.exact_mm[-1] - joint_mm),
        )
        for line in across.perp_lines
    )
    sides = {edge.name: edge for edge in asked.upper}
    upper = tuple(
        UpperReach(
            edge=sides[above.edge.name],
            overhang_mm=above.overhang_mm - (joint_mm if above.edge.end is CourseEnd.RIGHT else 0.0),
        )
        for above in across.upper
    )
    return replace(
        across,
        right_overhang_mm=across.right_overhang_mm - joint_mm,
        perp_lines=lines,
        findings=tuple(_right_side_read(across.findings, asked, lines, upper)),
        upper=upper,
    )


def _told_as_laid(across: Across, ask: AcrossAsk, laid: Sequence[VergePiece]) -> Across:
    """What is laid at a verge with its neighbour as one unit-and-a-half is called that, and is no cut piece any more."""
    wide = {(piece.at, piece.bond_row) for piece in laid if piece.made_of is MadeOf.UNIT_AND_A_HALF}
    cut = [piece for piece in across.pieces if (piece.at, piece.bond_row) not in wide]
    eaves = across.perp_lines[0]
    as_cut = ("least piece", f"{ask.where}, {eaves.line}")
    others = (finding for finding in across.findings if (finding.rule, finding.where) != as_cut)
    ends, ends_as_laid = (ends_said(ask, across.pieces, laid_wide=laid_wide) for laid_wide in ((), wide))
    return replace(
        across,
        why=across.why.replace(ends, ends_as_laid),
        least_piece_mm=least_cut_mm(cut),
        findings=(*others, *least_piece_findings(ask, cut, line=eaves)),
    )


def _for_double_lap(offers: Sequence[Alternative], unit: PlainTile | SizedSlate) -> tuple[Alternative, ...]:
    """What may be offered, ranked anew. Double lap is always laid in broken bond; and there are no half slates, for half
    the width of most is under the least verge slate.
    """
    barred = ("Straight bond", "Half units") if isinstance(unit, SizedSlate) else ("Straight bond",)
    left = (offer for offer in offers if not offer.change.startswith(barred))
    return tuple(replace(offer, rank=rank) for rank, offer in enumerate(left, 1))


def _right_side_read(
    findings: Sequence[Finding], asked: DoubleLapAcross, lines: Sequence[PerpLine], upper: Sequence[UpperReach]
) -> Iterator[Finding]:
    """The findings with those on the reach of right-hand ends judged anew, without the last joint."""
    on_right = [above for above in upper if above.edge.end is CourseEnd.RIGHT]
    places = (f"{asked.where}, right, ", *(f"{asked.where}, {above.edge.name}" for above in on_right))
    for finding in findings:
        if not (finding.rule in {"verge overhang", "abutment set-back"} and finding.where.startswith(places)):
            yield finding
    for line in lines:
        yield from reach_findings(f"{asked.where}, right, {line.line}", asked.right, line.right_reach_mm)
    for above in on_right:
        yield from reach_findings(f"{asked.where}, {above.edge.name}", above.edge.side, above.overhang_mm)


def _cover_not_known(slope: Slope, tile: SingleLapTile) -> Finding:
    return not_covered(
        rule="cover width",
        where=slope.name,
        proposed=None,
        unit="mm",
        citation=house("nothing is guessed"),
        says=(
            f"{tile.title}: the closed and open cover widths are not known, so no perps are set out. Lay ten pushed up and "
            f"ten pulled open, and measure both."
        ),
    )


def _random_widths(slope: Slope) -> Finding:
    return not_covered(
        rule="perps",
        where=slope.name,
        proposed=None,
        unit="mm",
        citation=house("random slates have no one width"),
        says=(
            "Random slates have no perps to strike: choose each slate so that its joint falls near the middle of the one below, "
            "and put the widest by for the verges."
        ),
    )
