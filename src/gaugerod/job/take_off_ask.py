"""What the take-off is measured from: the slopes as they were laid, and all that was worked out with them."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import ceil
from statistics import fmean

from gaugerod.coverings.double_lap import PlainTile, RandomSlates
from gaugerod.edges.answer import RoofEdges
from gaugerod.fixing.ask import Units
from gaugerod.fixing.extra_courses import SHORT, extra_units
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.job.laid_out import laid_cover_mm
from gaugerod.job.model import Job
from gaugerod.job.result import Beneath, Laid, NotSetOut, SlopeResult
from gaugerod.laying.ask import CourseLine, LayingAsk
from gaugerod.laying.offcuts import OffcutPlan
from gaugerod.take_off.ask import ExtraCourse, LaidSlope, TakeOffAsk
from gaugerod.take_off.covering import main_item


def take_off_ask(
    job: Job,
    *,
    slopes: Sequence[SlopeResult],
    not_set_out: Sequence[NotSetOut],
    offcuts: OffcutPlan | None,
    under: Beneath,
    edges: RoofEdges | None,
) -> TakeOffAsk:
    """The whole job. Slopes not set out, or not laid unit by unit, are named and left out."""
    laid = [(slope, slope.laid) for slope in slopes if slope.laid is not None]
    return TakeOffAsk(
        slopes=tuple(_slope(job, slope, each) for slope, each in laid),
        not_laid=tuple(slope.slope.name for slope in slopes if slope.laid is None),
        not_set_out=tuple(short.slope.name for short in not_set_out),
        covering=job.covering,
        offcuts=offcuts,
        edition=job.edition,
        wished=job.order,
        battens=under.battens,
        underlay=under.underlay,
        rolls=under.rolls,
        fixings=under.fixings,
        loads=under.loads,
        edges=edges,
    )


def _slope(job: Job, slope: SlopeResult, laid: Laid) -> LaidSlope:
    openings_mm2 = sum(opening.width_mm * opening.height_mm for opening in slope.slope.openings)
    return LaidSlope(
        name=slope.slope.name,
        area_mm2=signed_area_mm2(laid.ask.outline.points_mm) - openings_mm2,
        whole_count=laid.whole_units_count,
        half_count=laid.half_units_count,
        pieces=laid.pieces,
        unit=laid.ask.unit,
        gauge_mm=fmean(rod.gauge_mm for rod in slope.courses.rods),
        cover_mm=laid_cover_mm(job.covering, slope.across),
        extra=tuple(_extra(job, slope, laid)),
        course_runs_mm=tuple(_course_runs_mm(laid.ask)) if isinstance(job.covering, RandomSlates) else (),
        diminishing=slope.diminishing,
    )


def _extra(job: Job, slope: SlopeResult, laid: Laid) -> Iterator[ExtraCourse]:
    """The courses under the eaves and at the top: of tiles made so, or cut from whole units."""
    if slope.double_lap is None:
        return
    made_short = isinstance(job.covering, PlainTile) and job.covering.eaves_length_mm is not None
    item = "eaves-tile" if made_short else main_item(job.covering)
    found = tuple(extra_units(laid.ask, extras=slope.double_lap))
    for units in found:
        cover_mm = units.ask.courses[0].perps.cover_mm
        run_counts = [_end_to_end_count(run_mm, cover_mm) for run_mm in _course_runs_mm(units.ask)]
        count = max(_laid_count(units), *run_counts)
        if count:
            yield ExtraCourse(
                name=units.name, item=item, units_count=count, length_mm=units.ask.courses[0].unit_length_mm
            )
    lengths_mm = [rod.short.length_mm for rod in slope.double_lap.rods if rod.short is not None]
    if lengths_mm and SHORT not in {units.name for units in found}:
        # It runs out on its way across, where the ridge laps without it: units for the whole width, so that none is short.
        top = laid.ask.courses[-1]
        count = _end_to_end_count(_along_mm(laid.ask, top.tail), top.perps.cover_mm)
        yield ExtraCourse(name=SHORT, item=item, units_count=count, length_mm=max(lengths_mm))


def _laid_count(units: Units) -> int:
    return sum(run.count for run in units.laying.runs) + len(units.pieces)


def _end_to_end_count(run_mm: float, cover_mm: float) -> int:
    """Units for a course that begins with half a one at either end: so none is short whichever way it is begun."""
    return ceil(run_mm / cover_mm + 0.5 - 1e-9)


def _course_runs_mm(ask: LayingAsk) -> Iterator[float]:
    """How far each course runs, at the middle of what it shows; openings left out."""
    xs = [x for x, _ in ask.outline.points_mm]
    middle_mm = (min(xs) + max(xs)) / 2
    for lower, upper in pairwise(ask.lines):
        at_mm = (lower.height_mm(middle_mm) + upper.height_mm(middle_mm)) / 2
        run_mm = _width_mm(ask.outline.points_mm, at_mm)
        yield run_mm - sum(_width_mm(opening.points_mm, at_mm) for opening in ask.openings)


def _along_mm(ask: LayingAsk, line: CourseLine) -> float:
    """How far the slope runs along a course line, taken where it is widest."""
    xs = [x for x, _ in ask.outline.points_mm]
    places_mm = (min(xs), (min(xs) + max(xs)) / 2, max(xs))
    return max(_width_mm(ask.outline.points_mm, line.height_mm(x_mm)) for x_mm in places_mm)


def _width_mm(ring: Sequence[Point], at_mm: float) -> float:
    """How wide a ring is at this height, all its parts together."""
    crossings = sorted(
        x0 + (at_mm - y0) * (x1 - x0) / (y1 - y0)
        for (x0, y0), (x1, y1) in pairwise((*ring, ring[0]))
        if (y0 > at_mm) != (y1 > at_mm)
    )
    return sum(right - left for left, right in zip(crossings[::2], crossings[1::2], strict=True))
