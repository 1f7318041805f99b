"""The underlay plan: every run as a band with its lower edge dimensioned, laps hatched, strips and edges told."""

from collections.abc import Iterator

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.pitch import length_mm
from gaugerod.geometry.polygon import Point, bounding_box_mm
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.said import counted
from gaugerod.sheets.dimension_lanes import Label
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Words
from gaugerod.sheets.edge_names import opening_box, words_along
from gaugerod.sheets.hatching import hatched
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.sheets.lettering import Box, words_box
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.plan_frame import Beside, lanes_below, plan_frame
from gaugerod.sheets.slope_labels import opening_letters
from gaugerod.sheets.slope_lines import Line, batten_lines, inside_parts, opening_rings
from gaugerod.sheets.underlay_words import edge_past, lap_place_short, strip_names
from gaugerod.substrate.underlay.answer import LapBetween, RunLap, Strip, StripKind, UnderlayPlan
from gaugerod.substrate.underlay.ask import LapRemedy
from gaugerod.substrate.underlay.cut_rolls import Piece

_RUN_SIZE_MM = 3.2


def underlay_drawing(
    slope: SlopeResult,
    plan: UnderlayPlan,
    *,
    side_laps: tuple[tuple[int, Piece], ...],
    unit: LengthUnit,
    room_width_mm: float,
    room_height_mm: float,
) -> Placed:
    """The slope as large as the room allows. ``side_laps``: pieces that lap the one before them, each with its run."""
    strips = strip_names(plan)
    corners = (*plan.reach_mm, *slope.shape.outline_mm, *(at for strip, _ in strips for at in _strip_ring(strip)))
    low_mm, high_mm = bounding_box_mm(corners)
    beside = Beside(
        left=tuple(_run_label(run.number, run.low_mm, unit) for run in plan.runs),
        right=tuple(_lap_label(lap, unit) for lap in plan.laps),
        below=lanes_below(_across_labels(slope, plan, unit), room_width_mm=room_width_mm),
        numbers_mm=2.0,
    )
    frame = plan_frame(
        low_mm=low_mm, high_mm=high_mm, beside=beside, room_width_mm=room_width_mm, room_height_mm=room_height_mm
    )
    paper, lanes = frame.paper, frame.lanes()
    named = (*_strip_words(strips), *_run_numbers(slope, plan, side_laps, paper))
    taken = [*(opening_box(opening, paper) for opening in slope.slope.openings), *_boxes(named, paper)]
    edges = (
        (edge_past(reach, unit), start, end)
        for reach, start, end in zip(
            plan.edges, slope.shape.outline_mm, (*slope.shape.outline_mm[1:], slope.shape.outline_mm[0]), strict=True
        )
    )
    return Placed(
        drawing=Drawing(
            title=f"Slope {slope.slope.name}, underlay",
            says=_said(slope, plan, unit),
            paths=tuple(_paths(slope, plan, strips, side_laps, paper)),
            words=(
                *named,
                *words_along(edges, paper=paper, taken=taken),
                *opening_letters(slope, scale_ratio=paper.scale_ratio),
                *(words for lane in lanes for words in lane.words),
            ),
            leaders=tuple(leader for lane in lanes for leader in lane.leaders),
        ),
        paper=paper,
    )


def _boxes(words: tuple[Words, ...], paper: Paper) -> Iterator[Box]:
    for each in words:
        yield words_box(each, paper)


def _run_label(number: int, low_mm: float, unit: LengthUnit) -> Label:
    return Label(at_mm=(0.0, low_mm), name=f"run {number} from", value=bare_length(low_mm, unit))


def _lap_label(lap: RunLap, unit: LengthUnit) -> Label:
    """The lap rounded down, so that paper never shows more than there is."""
    return Label(
        at_mm=(0.0, (lap.low_mm + lap.high_mm) / 2),
        name=f"lap {lap.upper} on {lap.upper - 1}, {lap_place_short(lap)}",
        value=bare_fine_length(lap.lap_mm, unit, towards=Sense.AT_LEAST),
    )


def _across_labels(slope: SlopeResult, plan: UnderlayPlan, unit: LengthUnit) -> tuple[Label, ...]:
    """The eaves, and the lowest run from end to end."""
    width_mm = slope.slope.taped.eaves_mm
    labels = [Label(at_mm=(width_mm, 0.0), name="along the eaves", value=bare_length(width_mm, unit))]
    if plan.runs:
        longest_mm = plan.runs[0].length_mm
        labels.append(Label(at_mm=(width_mm / 2, 0.0), name="run 1, end to end", value=bare_length(longest_mm, unit)))
    return tuple(labels)


Named = tuple[tuple[Strip, str], ...]
"""Strips with the names they go by."""


def _paths(
    slope: SlopeResult, plan: UnderlayPlan, strips: Named, side_laps: tuple[tuple[int, Piece], ...], paper: Paper
) -> Iterator[Path]:
    (left_mm, _), (right_mm, top_mm) = bounding_box_mm(plan.reach_mm)
    ratio = paper.scale_ratio

    def across(height_mm: float) -> list[Line]:
        return inside_parts((left_mm - 1.0, height_mm), (right_mm + 1.0, height_mm), plan.reach_mm)

    yield Path(pen=Pen.SURFACE, runs_mm=(plan.reach_mm,), closed=True)
    laps = [_band(left_mm, right_mm, lap.low_mm, min(lap.high_mm, top_mm)) for lap in plan.laps]
    runs = {run.number: run for run in plan.runs}
    sides = [
        _band(piece.from_mm, piece.from_mm + piece.side_lap_mm, runs[number].low_mm, min(runs[number].high_mm, top_mm))
        for number, piece in side_laps
    ]
    hatching = [line for ring in (*laps, *sides) for line in hatched(ring, scale_ratio=ratio, within=plan.reach_mm)]
    # A lower edge that runs along the foot of the slope is the outline's own line.
    edges = [part for run in plan.runs for part in across(run.low_mm)]
    hidden = [part for run in plan.runs if run.high_mm < top_mm for part in across(run.high_mm)]
    extra = [
        part
        for lap in plan.laps
        if isinstance(lap.place, LapBetween)
        and lap.place.remedy is LapRemedy.EXTRA_BATTEN
        and lap.place.extra_batten_mm is not None
        for part in inside_parts(
            (left_mm, lap.place.extra_batten_mm), (right_mm, lap.place.extra_batten_mm), slope.shape.outline_mm
        )
    ]
    paths = (
        Path(pen=Pen.RAFTER, runs_mm=batten_lines(slope)),
        Path(pen=Pen.HATCH, runs_mm=tuple(hatching)),
        Path(pen=Pen.OVERHANG, runs_mm=tuple(hidden)),
        Path(pen=Pen.HATCH, runs_mm=tuple(sides), closed=True),
        Path(pen=Pen.CUT, runs_mm=tuple(edges)),
        Path(pen=Pen.FIFTH_BATTEN, runs_mm=tuple(extra)),
        Path(pen=Pen.STRIP, runs_mm=tuple(_strip_ring(strip) for strip, _ in strips), closed=True),
        Path(pen=Pen.OPENING, runs_mm=opening_rings(slope), closed=True),
        Path(pen=Pen.OVERHANG, runs_mm=(plan.reach_mm,), closed=True),
    )
    yield from (path for path in paths if path.runs_mm)
    yield Path(pen=Pen.OUTLINE, runs_mm=(slope.shape.outline_mm,), closed=True)


def _band(left_mm: float, right_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
    return ((left_mm, low_mm), (right_mm, low_mm), (right_mm, high_mm), (left_mm, high_mm))


_THIN_STRIP_MM = 60.0
"""A tray of no known width is drawn this wide."""


def _strip_ring(strip: Strip) -> tuple[Point, ...]:
    """A tray lies up the slope from its edge; a valley strip half on either side of it."""
    (x0, y0), (x1, y1) = strip.start_mm, strip.end_mm
    long_mm = length_mm(x1 - x0, y1 - y0)
    in_x, in_y = -(y1 - y0) / long_mm, (x1 - x0) / long_mm
    wide_mm = _THIN_STRIP_MM if strip.width_mm is None else strip.width_mm
    if strip.kind is StripKind.VALLEY:
        near_mm, far_mm = -wide_mm / 2, wide_mm / 2
    else:
        near_mm, far_mm = 0.0, wide_mm
    return (
        (x0 + near_mm * in_x, y0 + near_mm * in_y),
        (x1 + near_mm * in_x, y1 + near_mm * in_y),
        (x1 + far_mm * in_x, y1 + far_mm * in_y),
        (x0 + far_mm * in_x, y0 + far_mm * in_y),
    )


def _strip_words(strips: Named) -> Iterator[Words]:
    """The name of each strip, towards its far end, where edges are not named first."""
    for strip, name in strips:
        ring = _strip_ring(strip)
        middle = (sum(x for x, _ in ring) / 4, sum(y for _, y in ring) / 4)
        (x0, y0), (x1, y1) = strip.start_mm, strip.end_mm
        yield Words(
            at_mm=(middle[0] + 0.33 * (x1 - x0), middle[1] + 0.33 * (y1 - y0)),
            text=name,
            letter=Letter.EDGE,
            size_paper_mm=2.8,
            anchor=Anchor.MIDDLE,
            shift_paper_mm=(0.0, -1.0),
        )


def _run_numbers(
    slope: SlopeResult, plan: UnderlayPlan, side_laps: tuple[tuple[int, Piece], ...], paper: Paper
) -> Iterator[Words]:
    """Each run's number in the part of it that no other run covers, clear of openings; and a name on each side lap."""
    (_, _), (_, top_mm) = bounding_box_mm(plan.reach_mm)
    openings = [opening_box(opening, paper) for opening in slope.slope.openings]
    aways = {lap.upper - 1: lap.low_mm for lap in plan.laps}
    hidden = {lap.upper: lap.high_mm for lap in plan.laps}
    middles = {
        run.number: (hidden.get(run.number, run.low_mm) + min(aways.get(run.number, run.high_mm), top_mm)) / 2
        for run in plan.runs
    }
    for run in plan.runs:
        for left_mm, right_mm in run.spans_mm:
            places = [
                Words(
                    at_mm=(left_mm + share * (right_mm - left_mm), middles[run.number]),
                    text=f"run {run.number}",
                    letter=Letter.EDGE,
                    size_paper_mm=_RUN_SIZE_MM,
                    anchor=Anchor.MIDDLE,
                    shift_paper_mm=(0.0, -0.36 * _RUN_SIZE_MM),
                )
                for share in (0.35, 0.65, 0.15, 0.85)
            ]
            clear = (each for each in places if not any(words_box(each, paper).overlaps(box) for box in openings))
            yield next(clear, places[0])
    for number, piece in side_laps:
        yield Words(
            at_mm=(piece.from_mm + piece.side_lap_mm, middles[number]),
            text="side lap",
            letter=Letter.EDGE,
            size_paper_mm=2.2,
            anchor=Anchor.START,
            shift_paper_mm=(0.8, -0.8),
        )


def _said(slope: SlopeResult, plan: UnderlayPlan, unit: LengthUnit) -> str:
    lows = ", ".join(bare_length(run.low_mm, unit) for run in plan.runs)
    strips = ", ".join(strip.edge.name for strip in plan.strips)
    return (
        f"Slope {slope.slope.name}: {counted(len(plan.runs), 'run')} of underlay"
        + (f", lower edges at {lows} from the fascia face" if lows else "")
        + (f"; strips first at: {strips}" if strips else "")
        + "."
    )
