"""The battens of a job: where the rafters stand, which line each batten takes, and the plan of them all together."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import assert_never

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.beneath_wished import BattensWished
from gaugerod.job.double_lap_wished import battened
from gaugerod.job.laid_out import opening_rings, structure_ring
from gaugerod.job.model import Covering, Job, Slope
from gaugerod.job.result import SlopeResult
from gaugerod.job.rod_marks import rod_marks
from gaugerod.rules.battens import BattenedCovering, BattenSection, least_batten_section
from gaugerod.setting_out.courses import Rod
from gaugerod.standards.battens import BattenFigure, batten_figure, batten_stock
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.battens.ask import (
    BattenedSlope,
    BattenMark,
    BattensAsk,
    EvenRafters,
    MeasuredRafters,
    Rafters,
    usual_stops,
)
from gaugerod.substrate.battens.supports import ends_mm, rafters_mm, widest_spacing_mm

EVEN_RAFTERS = house(
    "the outer rafters stand at the ends of the roof structure, the others at the spacing from the left one"
)
ON_THE_NAIL_LINE = house("a slate's nail goes into the middle of its batten")
USUAL_BATTEN_WIDTH_MM = 50.0
"""Where no section can be told (house choice): the widest of the usual ones, so that it is never taken to reach too far."""


def rafters_of(job: Job, slope: Slope, points_mm: Sequence[tuple[float, float]]) -> Rafters | None:
    """Where the rafters stand: as measured, or even; None where neither is known."""
    if slope.rafters_at_mm:
        return MeasuredRafters(at_mm=slope.rafters_at_mm)
    if slope.rafter_spacing_mm is None:
        return None
    left_mm, right_mm = ends_mm(tuple(points_mm))
    half_mm = underlay_figure(job.edition, UnderlayFigure.RAFTER_WIDTH).value / 2
    return EvenRafters(first_mm=left_mm + half_mm, spacing_mm=slope.rafter_spacing_mm, last_mm=right_mm - half_mm)


def rafter_places_mm(job: Job, slope: SlopeResult) -> tuple[float, ...]:
    """The middle of every rafter, left to right; empty where they are not known. mm."""
    rafters = rafters_of(job, slope.slope, slope.shape.outline_mm)
    if rafters is None:
        return ()
    left_mm, right_mm = ends_mm(slope.shape.outline_mm)
    return rafters_mm(rafters, left_mm=left_mm, right_mm=right_mm)


def battened_covering(covering: Covering) -> BattenedCovering:
    """The row of the batten table this covering is in."""
    match covering:
        case SingleLapTile():
            return BattenedCovering.TILE_SINGLE_LAP
        case PlainTile() | SizedSlate():
            return battened(covering)
        case RandomSlates():
            return BattenedCovering.NATURAL_SLATE
        case _ as unreachable:
            assert_never(unreachable)


def batten_width_mm(job: Job, slope: SlopeResult) -> float:
    """The width of the least batten on these rafters, up the slope. mm."""
    spacing_mm = widest_spacing_mm(rafter_places_mm(job, slope))
    if spacing_mm is None:
        return USUAL_BATTEN_WIDTH_MM
    section = least_batten_section(
        covering=battened_covering(job.covering), rafter_spacing_mm=spacing_mm, edition=job.edition
    )
    return section.width_mm if isinstance(section, BattenSection) else USUAL_BATTEN_WIDTH_MM


def batten_rods(job: Job, slope: SlopeResult) -> tuple[Rod, ...]:
    """The rods with the top edge of every full course's batten: nail lines lie in its middle."""
    up_mm = _above_the_mark_mm(job, slope)
    return tuple(
        replace(rod, marks_mm=tuple(mark_mm + up_mm for mark_mm in rod.marks_mm)) for rod in slope.courses.rods
    )


def _above_the_mark_mm(job: Job, slope: SlopeResult) -> float:
    """From the mark up to the top edge of its batten."""
    nail_lines = slope.diminishing is not None or (
        slope.double_lap is not None and slope.double_lap.marks_are == "nail line"
    )
    return batten_width_mm(job, slope) / 2 if nail_lines else 0.0


def batten_marks(job: Job, slope: SlopeResult) -> tuple[BattenMark, ...]:
    """Every batten from the eaves up, those under the eaves course and the short top course too."""
    up_mm = _above_the_mark_mm(job, slope)
    at_mm: dict[str, list[tuple[float, float]]] = {}
    for index, rod in enumerate(slope.courses.rods):
        for mark in rod_marks(slope, index):
            at_mm.setdefault(mark.name, []).append((rod.at_mm, mark.mark_mm + up_mm))
    marks = [BattenMark(name=name, at_mm=tuple(places)) for name, places in at_mm.items()]
    return tuple(sorted(marks, key=lambda mark: mark.at_mm[0][1]))


def batten_ask(job: Job, slopes: Sequence[SlopeResult], wished: BattensWished) -> BattensAsk | None:
    """What the battens of these slopes are asked with; None where the rafters of none are known."""
    known = tuple(_battened_slopes(job, slopes))
    if not known:
        return None
    return BattensAsk(
        slopes=known,
        covering=battened_covering(job.covering),
        edition=job.edition,
        stock=wished.stock or batten_stock(job.edition),
        kerf=wished.kerf or batten_figure(job.edition, BattenFigure.SAW_KERF),
        stops=usual_stops(job.edition),
        close_joints=wished.close_joints,
        nailing=wished.nailing,
    )


def _battened_slopes(job: Job, slopes: Sequence[SlopeResult]) -> Iterator[BattenedSlope]:
    for slope in slopes:
        rafters = rafters_of(job, slope.slope, slope.shape.outline_mm)
        if rafters is not None:
            yield BattenedSlope(
                where=slope.slope.name,
                outline=structure_ring(slope.slope, slope.shape),
                openings=tuple(opening_rings(slope.slope)),
                marks=batten_marks(job, slope),
                rafters=rafters,
            )


def rafters_not_known(job: Job, slopes: Sequence[SlopeResult]) -> Iterator[Finding]:
    """Slopes whose battens cannot be planned."""
    for slope in slopes:
        if rafters_of(job, slope.slope, slope.shape.outline_mm) is None:
            yield not_covered(
                rule="batten joints",
                where=slope.slope.name,
                proposed=None,
                unit="mm",
                citation=house("joints stand on rafters, so their places are needed"),
                says="Where the rafters stand is not known, so no batten joint is placed. "
                "Give rafter_spacing, or rafters_at with the middle of each.",
            )
