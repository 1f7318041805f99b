"""The eaves and the top of the slope in section, to scale, with this slope's figures.

The covering's lengths, battens' top edges, overhang and pitch are true to scale. Thickness of the covering, sizes of
timber and the shape of fascia and ridge are only drawn: they are not set out here.
"""

from collections.abc import Sequence

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.pitch import cos_deg
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.drawing import (
    Anchor,
    Drawing,
    Leader,
    Letter,
    Paper,
    Path,
    Pen,
    Point,
    Words,
    largest_scale_ratio,
)
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_frame import SlopeFrame, Span, lanes_height_mm

_THICK_MM, _BATTEN_WIDTH_MM, _BATTEN_HIGH_MM, _RAFTER_MM = 12.0, 50.0, 25.0, 100.0
_FASCIA_THICK_MM, _FASCIA_DEEP_MM = 20.0, 150.0
_EAVES_WIDTH_MM, _TOP_WIDTH_MM, _ROOM_HEIGHT_MM = 98.0, 82.0, 120.0
_TEXT_MM = 2.7


def eaves_section(slope: SlopeResult, covering: SingleLapTile, *, unit: LengthUnit) -> Placed:
    """Fascia, first two battens and the first two courses of the left rod."""
    rod = slope.courses.rods[0]
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    battens_mm = rod.marks_mm[:2]
    hanging_mm = _hanging_mm(covering)
    reach_mm = battens_mm[-1] + covering.length_mm - hanging_mm + 40.0
    spans = [
        Span(from_mm=-rod.overhang_mm, to_mm=0.0, text=f"overhang {bare_length(rod.overhang_mm, unit)}"),
        Span(from_mm=0.0, to_mm=battens_mm[0], text=f"first batten {bare_length(battens_mm[0], unit)}"),
        Span(
            from_mm=battens_mm[0] - hanging_mm,
            to_mm=battens_mm[0],
            text=f"hanging length {bare_length(hanging_mm, unit)}",
        ),
    ]
    if len(battens_mm) == 2:
        lap = fine_length(slope.courses.headlap_mm, unit, towards=Sense.AT_LEAST).removesuffix(f" {unit.value}")
        spans += [
            Span(
                from_mm=battens_mm[0],
                to_mm=battens_mm[1],
                text=f"gap {bare_length(battens_mm[1] - battens_mm[0], unit)}",
            ),
            Span(
                from_mm=battens_mm[1] - hanging_mm,
                to_mm=battens_mm[0] + covering.length_mm - hanging_mm,
                text=f"lap at least {lap}",
            ),
        ]
    level = bare_length(rod.overhang_mm * cos_deg(slope.slope.pitch_deg), unit)
    tail = frame.at(-rod.overhang_mm, 0.0)
    foot_mm = _BATTEN_HIGH_MM - _FASCIA_DEEP_MM
    fascia: tuple[Point, ...] = (
        (0.0, foot_mm),
        (_FASCIA_THICK_MM, foot_mm),
        (_FASCIA_THICK_MM, _BATTEN_HIGH_MM),
        (0.0, _BATTEN_HIGH_MM),
    )
    plumb = Leader(
        pen=Pen.DIMENSION,
        points_mm=((0.0, foot_mm), (0.0, foot_mm), (tail[0], foot_mm), (tail[0], tail[1])),
        shifts_paper_mm=((0.0, 0.0), (0.0, -2.0), (0.0, -2.0), (0.0, 0.0)),
    )
    says = _words((tail[0] / 2, foot_mm), f"{level} level", anchor=Anchor.MIDDLE, shift=(0.0, -5.0))
    return _placed(
        width_mm=_EAVES_WIDTH_MM,
        title=f"Eaves of slope {slope.slope.name} in section",
        frame=frame,
        timber=(frame.block(from_mm=_FASCIA_THICK_MM, to_mm=reach_mm, low_mm=-_RAFTER_MM, high_mm=0.0), fascia),
        battens_mm=battens_mm,
        units=_units(frame, battens_mm, covering=covering, gauge_mm=rod.gauge_mm),
        spans=spans,
        words=(says, _words((_FASCIA_THICK_MM, foot_mm), "fascia", anchor=Anchor.START, shift=(1.2, 0.5))),
        leaders=(plumb,),
    )


def ridge_section(slope: SlopeResult, result: Result, *, unit: LengthUnit) -> Placed:
    """The last two battens and courses of the left rod, the apex, and how far the ridge reaches down where known."""
    covering, rod = result.job.covering, slope.courses.rods[0]
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    apex_mm = rod.length_mm
    hanging_mm = _hanging_mm(covering)
    battens_mm = tuple(mark - apex_mm for mark in rod.marks_mm[-2:])
    from_mm = battens_mm[0] - hanging_mm * 0.4
    below = bare_length(-battens_mm[-1], unit)
    spans = [Span(from_mm=battens_mm[-1], to_mm=0.0, text=f"top batten {below} below apex")]
    if len(battens_mm) == 2:
        gap = bare_length(battens_mm[1] - battens_mm[0], unit)
        spans.append(Span(from_mm=battens_mm[0], to_mm=battens_mm[1], text=f"gap {gap}"))
    cover_mm = result.job.wishes.ridge_cover_mm
    ridge: tuple[Path, ...] = ()
    if cover_mm is not None:
        lift_mm = _BATTEN_HIGH_MM + 2.6 * _THICK_MM
        ridge = (Path(pen=Pen.CUT, runs_mm=((frame.at(-cover_mm, lift_mm), frame.at(0.0, lift_mm)),)),)
        spans.append(Span(from_mm=-cover_mm, to_mm=0.0, text=f"ridge reaches down {bare_length(cover_mm, unit)}"))
    plumb = Path(pen=Pen.ROD, runs_mm=(((0.0, -_RAFTER_MM), (0.0, _BATTEN_HIGH_MM + 5 * _THICK_MM)),))
    return _placed(
        width_mm=_TOP_WIDTH_MM,
        title=f"Top of slope {slope.slope.name} in section",
        frame=frame,
        timber=(frame.block(from_mm=from_mm, to_mm=0.0, low_mm=-_RAFTER_MM, high_mm=0.0),),
        battens_mm=battens_mm,
        units=_units(frame, battens_mm, covering=covering, gauge_mm=rod.gauge_mm),
        spans=spans,
        words=(_words((0.0, -_RAFTER_MM), "apex", anchor=Anchor.START, shift=(1.2, -1.0)),),
        leaders=(),
        more=(*ridge, plumb),
    )


def _hanging_mm(covering: SingleLapTile) -> float:
    """The hanging length; with none known there is no nib to draw and the whole length hangs."""
    return covering.length_mm if covering.hanging_length_mm is None else covering.hanging_length_mm


def _units(
    frame: SlopeFrame, battens_mm: Sequence[float], *, covering: SingleLapTile, gauge_mm: float
) -> tuple[tuple[Point, ...], ...]:
    """One unit on every batten, each tilted so that its tail rests on the one below."""
    hanging_mm = _hanging_mm(covering)
    tilt_ratio = _THICK_MM / gauge_mm
    units: list[tuple[Point, ...]] = []
    for mark_mm in battens_mm:
        tail_mm, head_mm = mark_mm - hanging_mm, mark_mm + covering.length_mm - hanging_mm
        low_tail_mm = _BATTEN_HIGH_MM + tilt_ratio * hanging_mm
        low_head_mm = _BATTEN_HIGH_MM - tilt_ratio * (head_mm - mark_mm)
        units.append(
            (
                frame.at(tail_mm, low_tail_mm),
                frame.at(head_mm, low_head_mm),
                frame.at(head_mm, low_head_mm + _THICK_MM),
                frame.at(tail_mm, low_tail_mm + _THICK_MM),
            )
        )
    return tuple(units)


def _words(at_mm: Point, text: str, *, anchor: Anchor, shift: tuple[float, float]) -> Words:
    return Words(
        at_mm=at_mm,
        text=text,
        letter=Letter.DIMENSION,
        size_paper_mm=_TEXT_MM,
        anchor=anchor,
        shift_paper_mm=shift,
    )


def _placed(
    *,
    width_mm: float,
    title: str,
    frame: SlopeFrame,
    timber: tuple[tuple[Point, ...], ...],
    battens_mm: Sequence[float],
    units: tuple[tuple[Point, ...], ...],
    spans: Sequence[Span],
    words: tuple[Words, ...],
    leaders: tuple[Leader, ...],
    more: tuple[Path, ...] = (),
) -> Placed:
    battens = tuple(
        frame.block(from_mm=mark_mm - _BATTEN_WIDTH_MM, to_mm=mark_mm, low_mm=0.0, high_mm=_BATTEN_HIGH_MM)
        for mark_mm in battens_mm
    )
    paths = (
        Path(pen=Pen.TIMBER, runs_mm=timber, closed=True),
        Path(pen=Pen.SECTION_BATTEN, runs_mm=battens, closed=True),
        Path(pen=Pen.UNIT, runs_mm=units, closed=True),
        *more,
    )
    points = [point for path in paths for run in path.runs_mm for point in run]
    low = (min(x for x, _ in points), min(y for _, y in points))
    high = (max(x for x, _ in points), max(y for _, y in points))
    left_mm, below_mm, lanes_mm = 22.0, 9.0, lanes_height_mm(len(spans))
    ratio = largest_scale_ratio(
        model_width_mm=high[0] - low[0],
        model_height_mm=high[1] - low[1],
        width_mm=width_mm - left_mm - 2.0,
        height_mm=_ROOM_HEIGHT_MM - below_mm - lanes_mm,
    )
    paper = Paper(
        width_mm=width_mm,
        height_mm=(high[1] - low[1]) / ratio + below_mm + lanes_mm,
        scale_ratio=ratio,
        origin_paper_mm=(left_mm - low[0] / ratio, below_mm - low[1] / ratio),
    )
    said, lines = frame.dimensions(spans, off_mm=_BATTEN_HIGH_MM + 3 * _THICK_MM, scale_ratio=ratio)
    drawing = Drawing(
        title=title,
        says=f"{title}: {'; '.join(span.text for span in spans)}. Timber and thickness are only drawn.",
        paths=paths,
        words=(*said, *words),
        leaders=(*lines, *leaders),
    )
    return Placed(drawing=drawing, paper=paper)
