"""The eaves and the top of the slope in section, to scale, with this slope's figures.

The covering's lengths, the battens' top edges, overhang and pitch are true to scale. Thickness of the covering, sizes
of timber and the shape of fascia and ridge are only drawn: they are not set out here.
"""

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.job.model import TopKind
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.drawing import Anchor, Leader, Path, Pen, Point
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_placed import Section, said, section_placed
from gaugerod.sheets.slope_frame import SlopeFrame, Span

_THICK_MM, _BATTEN_WIDTH_MM, _BATTEN_HIGH_MM, _RAFTER_MM = 12.0, 50.0, 25.0, 100.0
_FASCIA_THICK_MM, _FASCIA_DEEP_MM = 20.0, 130.0
_OVER_MM = _BATTEN_HIGH_MM + 3 * _THICK_MM
EAVES_WIDTH_MM, TOP_WIDTH_MM, ROOM_HEIGHT_MM = 112.0, 69.0, 118.0


def eaves_section(slope: SlopeResult, covering: SingleLapTile, *, unit: LengthUnit) -> Placed:
    """Fascia, first two battens and the first two courses of the left rod."""
    rod = slope.courses.rods[0]
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    battens_mm = rod.marks_mm[:2]
    hanging_mm = _hanging_mm(covering)
    head_mm = covering.length_mm - hanging_mm
    reach_mm = battens_mm[-1] + head_mm + 40.0
    spans = [
        _span(-rod.overhang_mm, 0.0, "overhang", bare_length(rod.overhang_mm, unit)),
        _span(0.0, battens_mm[0], "first batten", bare_length(battens_mm[0], unit), short="first", under=True),
    ]
    if len(battens_mm) == 2:
        lap = fine_length(slope.courses.headlap_mm, unit, towards=Sense.AT_LEAST).removesuffix(f" {unit.value}")
        gap = bare_length(battens_mm[1] - battens_mm[0], unit)
        spans += [
            _span(battens_mm[1] - hanging_mm, battens_mm[0] + head_mm, "lap at least", lap),
            _span(battens_mm[0], battens_mm[1], "gap", gap, under=True),
        ]
    spans.append(
        _span(
            battens_mm[0] - hanging_mm, battens_mm[0], "hanging length", bare_length(hanging_mm, unit), short="hanging"
        )
    )
    units = [_unit(frame, covering, mark_mm, gauge_mm=rod.gauge_mm) for mark_mm in battens_mm]
    top_mm = _underside_at_fascia_mm(frame, battens_mm[0], gauge_mm=rod.gauge_mm)
    foot_mm = top_mm - _FASCIA_DEEP_MM
    tail_x = frame.at(-rod.overhang_mm, 0.0)[0]
    level = bare_length(rod.overhang_mm * cos_deg(slope.slope.pitch_deg), unit)
    return section_placed(
        Section(
            title=f"Eaves of slope {slope.slope.name} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(_plumb_cut_rafter(frame, reach_mm), _fascia(top_mm)), closed=True),
                Path(pen=Pen.SECTION_BATTEN, runs_mm=tuple(_batten(frame, mark) for mark in battens_mm), closed=True),
                Path(pen=Pen.UNIT, runs_mm=tuple(units), closed=True),
            ),
            spans=tuple(spans),
            words=(said((tail_x, foot_mm), f"{level} level", anchor=Anchor.END, shift=(-1.0, 0.6)),),
            leaders=(_plumb_dimension(foot_mm, tail_x, top_mm),),
            over_mm=_OVER_MM,
            under_mm=-_RAFTER_MM,
        ),
        width_mm=EAVES_WIDTH_MM,
        height_mm=ROOM_HEIGHT_MM,
    )


def top_section(
    slope: SlopeResult, covering: SingleLapTile, *, ridge_cover_mm: float | None, unit: LengthUnit
) -> Placed:
    """The last two battens and courses of the left rod, the apex, and how far the ridge reaches down where known."""
    rod = slope.courses.rods[0]
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    battens_mm = tuple(mark_mm - rod.length_mm for mark_mm in rod.marks_mm[-2:])
    from_mm = battens_mm[0] - 0.35 * _hanging_mm(covering)
    spans = []
    if len(battens_mm) == 2:
        gap = bare_length(battens_mm[1] - battens_mm[0], unit)
        spans.append(_span(battens_mm[0], battens_mm[1], "gap", gap, under=True))
    spans.append(_span(battens_mm[-1], 0.0, "below apex", bare_length(-battens_mm[-1], unit), under=True))
    ridge: tuple[Path, ...] = ()
    if ridge_cover_mm is not None:
        spans.append(_span(-ridge_cover_mm, 0.0, "ridge reaches down", bare_length(ridge_cover_mm, unit)))
        ridge = (_ridge(frame, ridge_cover_mm, both_sides=slope.slope.top is TopKind.RIDGE),)
    units = [_unit(frame, covering, mark_mm, gauge_mm=rod.gauge_mm, cut_at_mm=from_mm - 20.0) for mark_mm in battens_mm]
    rafter = (
        frame.at(from_mm, -_RAFTER_MM),
        frame.at_plumb(0.0, -_RAFTER_MM),
        frame.at_plumb(0.0, 0.0),
        frame.at(from_mm, 0.0),
    )
    apex_line = (frame.at_plumb(0.0, -_RAFTER_MM - 20.0), (0.0, _OVER_MM + 20.0))
    return section_placed(
        Section(
            title=f"Top of slope {slope.slope.name} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(rafter,), closed=True),
                Path(pen=Pen.SECTION_BATTEN, runs_mm=tuple(_batten(frame, mark) for mark in battens_mm), closed=True),
                Path(pen=Pen.UNIT, runs_mm=tuple(units), closed=True),
                *ridge,
                Path(pen=Pen.ROD, runs_mm=(apex_line,)),
            ),
            spans=tuple(spans),
            words=(said(apex_line[1], "apex", anchor=Anchor.START, shift=(0.8, -1.6)),),
            leaders=(),
            over_mm=_OVER_MM,
            under_mm=-_RAFTER_MM,
        ),
        width_mm=TOP_WIDTH_MM,
        height_mm=ROOM_HEIGHT_MM,
    )


def _span(from_mm: float, to_mm: float, name: str, length: str, *, short: str = "", under: bool = False) -> Span:
    return Span(
        from_mm=from_mm,
        to_mm=to_mm,
        text=f"{name} {length}",
        short=f"{short} {length}" if short else "",
        under=under,
    )


def _hanging_mm(covering: SingleLapTile) -> float:
    """The hanging length; with none known there is no nib to draw and the whole length hangs."""
    return covering.length_mm if covering.hanging_length_mm is None else covering.hanging_length_mm


def _unit(
    frame: SlopeFrame, covering: SingleLapTile, mark_mm: float, *, gauge_mm: float, cut_at_mm: float | None = None
) -> tuple[Point, ...]:
    """A unit hung on its batten, tilted so that its tail rests on the one below; broken off at ``cut_at_mm``."""
    hanging_mm = _hanging_mm(covering)
    tail_mm, head_mm = mark_mm - hanging_mm, mark_mm + covering.length_mm - hanging_mm
    if cut_at_mm is not None:
        tail_mm = max(tail_mm, cut_at_mm)
    low_tail_mm, low_head_mm = (_underside_mm(mark_mm, s_mm, gauge_mm=gauge_mm) for s_mm in (tail_mm, head_mm))
    return (
        frame.at(tail_mm, low_tail_mm),
        frame.at(head_mm, low_head_mm),
        frame.at(head_mm, low_head_mm + _THICK_MM),
        frame.at(tail_mm, low_tail_mm + _THICK_MM),
    )


def _underside_mm(mark_mm: float, s_mm: float, *, gauge_mm: float) -> float:
    """The underside of the unit hung at the mark, off the rafter, at s: one thickness up for each gauge down."""
    return _BATTEN_HIGH_MM + _THICK_MM / gauge_mm * (mark_mm - s_mm)


def _underside_at_fascia_mm(frame: SlopeFrame, first_mm: float, *, gauge_mm: float) -> float:
    """How high, plumb, the underside of the first course passes over the outer face of the fascia."""
    along, off = cos_deg(frame.pitch_deg), sin_deg(frame.pitch_deg)
    tilt_ratio = _THICK_MM / gauge_mm
    s_mm = (_BATTEN_HIGH_MM + tilt_ratio * first_mm) * off / (along + tilt_ratio * off)
    return frame.at(s_mm, _underside_mm(first_mm, s_mm, gauge_mm=gauge_mm))[1]


def _batten(frame: SlopeFrame, mark_mm: float) -> tuple[Point, ...]:
    return frame.block(from_mm=mark_mm - _BATTEN_WIDTH_MM, to_mm=mark_mm, low_mm=0.0, high_mm=_BATTEN_HIGH_MM)


def _plumb_cut_rafter(frame: SlopeFrame, reach_mm: float) -> tuple[Point, ...]:
    return (
        frame.at_plumb(_FASCIA_THICK_MM, -_RAFTER_MM),
        frame.at(reach_mm, -_RAFTER_MM),
        frame.at(reach_mm, 0.0),
        frame.at_plumb(_FASCIA_THICK_MM, 0.0),
    )


def _fascia(top_mm: float) -> tuple[Point, ...]:
    """A plumb board, its outer face at nothing, its top under the first course."""
    foot_mm = top_mm - _FASCIA_DEEP_MM
    return ((0.0, foot_mm), (_FASCIA_THICK_MM, foot_mm), (_FASCIA_THICK_MM, top_mm), (0.0, top_mm))


def _plumb_dimension(foot_mm: float, tail_x_mm: float, tail_y_mm: float) -> Leader:
    """From the fascia's outer face, down and across, up to the tail."""
    return Leader(
        pen=Pen.DIMENSION,
        points_mm=((0.0, foot_mm), (0.0, foot_mm), (tail_x_mm, foot_mm), (tail_x_mm, tail_y_mm - 10.0)),
        shifts_paper_mm=((0.0, 0.0), (0.0, -1.4), (0.0, -1.4), (0.0, 0.0)),
    )


def _ridge(frame: SlopeFrame, ridge_cover_mm: float, *, both_sides: bool) -> Path:
    """The line of the ridge (or flashing) over the covering, up to the apex and over it where there is another side."""
    n_mm = _BATTEN_HIGH_MM + 2.6 * _THICK_MM
    low, crown = frame.at(-ridge_cover_mm, n_mm), frame.at_plumb(0.0, n_mm)
    return Path(pen=Pen.CUT, runs_mm=((low, crown, (-low[0], low[1])) if both_sides else (low, crown),))
