"""The eaves and the top of the slope in section, to scale, with this slope's figures.

The covering's lengths, the marks, tails, overhang and pitch are true to scale. Thickness of the covering, sizes of
timber and the shape of fascia and ridge are only drawn: they are not set out here.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.job.model import Covering, TopKind
from gaugerod.job.result import SlopeResult
from gaugerod.job.slope_called import slope_called
from gaugerod.sheets.drawing import Anchor, Leader, Path, Pen, Point
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_placed import Section, said, section_placed
from gaugerod.sheets.section_units import SectionUnit, SectionUnits, hanging_length_mm, section_units
from gaugerod.sheets.slope_frame import SlopeFrame, Span

_RAFTER_MM = 100.0
_FASCIA_THICK_MM, _FASCIA_DEEP_MM = 20.0, 130.0
_PAST_MM = 40.0
_EAVES_WIDTH_MM, _TOP_WIDTH_MM, _ROOM_HEIGHT_MM = 112.0, 69.0, 118.0
_SMALLEST_RATIO = 10
"""Both stand side by side down to 1:10."""
_OWN_ROW_WIDTH_MM, _OWN_ROW_HEIGHT_MM = 181.0, 112.0


def eaves_and_top(
    slope: SlopeResult, covering: Covering, *, ridge_cover_mm: float | None, unit: LengthUnit
) -> tuple[tuple[Placed, ...], ...]:
    """Rows of pictures: both side by side, or each in a row of its own where one would come out too small."""
    eaves = eaves_section(slope, covering, unit=unit)
    top = top_section(slope, covering, ridge_cover_mm=ridge_cover_mm, unit=unit)
    if top.paper.scale_ratio <= eaves.paper.scale_ratio <= _SMALLEST_RATIO:
        return ((eaves, top),)
    wide, high = _OWN_ROW_WIDTH_MM, _OWN_ROW_HEIGHT_MM
    return (
        (eaves_section(slope, covering, unit=unit, width_mm=wide, height_mm=high),),
        (top_section(slope, covering, ridge_cover_mm=ridge_cover_mm, unit=unit, width_mm=wide, height_mm=high),),
    )


def eaves_section(
    slope: SlopeResult,
    covering: Covering,
    *,
    unit: LengthUnit,
    width_mm: float = _EAVES_WIDTH_MM,
    height_mm: float = _ROOM_HEIGHT_MM,
) -> Placed:
    """Fascia, the course under the eaves where there is one, and the first two courses of the left rod."""
    held = section_units(slope, covering)
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    first_two = held.full[:2]
    shown = held.units[: int(held.under_eaves) + 2]
    overhang_mm = slope.courses.rods[0].overhang_mm
    reach_mm = max(each.head_mm for each in shown) + _PAST_MM
    top_mm = _underside_at_fascia_mm(frame, shown[0])
    foot_mm = top_mm - _FASCIA_DEEP_MM
    tail_x = frame.at(-overhang_mm, 0.0)[0]
    level = bare_length(overhang_mm * cos_deg(slope.slope.pitch_deg), unit)
    spans = [
        _span(-overhang_mm, 0.0, "overhang", bare_length(overhang_mm, unit)),
        *_eaves_marks(held, unit),
        *(
            _hanging_spans(slope, covering, held, unit)
            if isinstance(covering, SingleLapTile)
            else _under_eaves_spans(held, unit)
        ),
    ]
    if len(first_two) == 2:
        gap_mm = first_two[1].mark_mm - first_two[0].mark_mm
        spans.append(_span(first_two[0].mark_mm, first_two[1].mark_mm, "gap", bare_length(gap_mm, unit), under=True))
    return section_placed(
        Section(
            title=f"Eaves of {slope_called(slope.slope.name)} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(_plumb_cut_rafter(frame, reach_mm), _fascia(top_mm)), closed=True),
                *held.paths(frame, shown, from_mm=-overhang_mm, to_mm=reach_mm),
            ),
            spans=tuple(spans),
            words=(said((0.0, foot_mm), f"{level} level", anchor=Anchor.END, shift=(0.0, -4.2)),),
            leaders=(_plumb_dimension(foot_mm, tail_x, top_mm),),
            over_mm=held.over_mm,
            under_mm=-_RAFTER_MM,
        ),
        width_mm=width_mm,
        height_mm=height_mm,
    )


def _eaves_marks(held: SectionUnits, unit: LengthUnit) -> Iterator[Span]:
    """The first marks, from the fascia."""
    if held.under_eaves:
        under_mm = held.units[0].mark_mm
        yield _span(0.0, under_mm, "under-eaves", bare_length(under_mm, unit), under=True)
    first_mm = held.full[0].mark_mm
    held_by = "nail line" if held.nailed else "batten"
    yield _span(0.0, first_mm, f"first {held_by}", bare_length(first_mm, unit), short="first", under=True)


def _hanging_spans(slope: SlopeResult, covering: SingleLapTile, held: SectionUnits, unit: LengthUnit) -> Iterator[Span]:
    if len(held.full) > 1:
        lap = bare_fine_length(slope.courses.headlap_mm, unit, towards=Sense.AT_LEAST)
        yield _span(held.full[1].tail_mm, held.full[0].head_mm, "lap at least", lap)
    hanging_mm, mark_mm = hanging_length_mm(covering), held.full[0].mark_mm
    yield _span(mark_mm - hanging_mm, mark_mm, "hanging length", bare_length(hanging_mm, unit), short="hanging")


def _under_eaves_spans(held: SectionUnits, unit: LengthUnit) -> Iterator[Span]:
    """The second course over the one under the eaves, and the lengths of both kinds of unit."""
    under, first = held.units[0], held.full[0]
    if len(held.full) > 1:
        lap_to_mm, tail_mm = under.head_mm - held.lost_mm, held.full[1].tail_mm
        lap = bare_fine_length(lap_to_mm - tail_mm, unit, towards=Sense.AT_LEAST)
        yield _span(tail_mm, lap_to_mm, "headlap", lap, short="lap")
    under_mm, long_mm = under.head_mm - under.tail_mm, first.head_mm - first.tail_mm
    yield _span(under.tail_mm, under.head_mm, "under-eaves length", bare_length(under_mm, unit), short="under-eaves")
    yield _span(first.tail_mm, first.head_mm, "length", bare_length(long_mm, unit))


def top_section(
    slope: SlopeResult,
    covering: Covering,
    *,
    ridge_cover_mm: float | None,
    unit: LengthUnit,
    width_mm: float = _TOP_WIDTH_MM,
    height_mm: float = _ROOM_HEIGHT_MM,
) -> Placed:
    """The last battens and courses of the left rod, the apex, and how far the ridge reaches down where known."""
    held = _from_the_apex(section_units(slope, covering), slope.courses.rods[0].length_mm)
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    lowest = held.full[-held.over_count - 1 :][0]
    from_mm = lowest.mark_mm - 0.35 * (lowest.mark_mm - lowest.tail_mm)
    cut_mm = from_mm - 20.0
    shown = [each for each in held.units if each.head_mm > from_mm]
    ridge: tuple[Path, ...] = ()
    if ridge_cover_mm is not None:
        ridge = (_ridge(frame, held, ridge_cover_mm, both_sides=slope.slope.top is TopKind.RIDGE),)
    rafter = (
        frame.at(from_mm, -_RAFTER_MM),
        frame.at_plumb(0.0, -_RAFTER_MM),
        frame.at_plumb(0.0, 0.0),
        frame.at(from_mm, 0.0),
    )
    apex_line = (frame.at_plumb(0.0, -_RAFTER_MM - 20.0), (0.0, held.over_mm + 20.0))
    return section_placed(
        Section(
            title=f"Top of {slope_called(slope.slope.name)} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(rafter,), closed=True),
                *held.paths(frame, shown, from_mm=cut_mm, to_mm=_PAST_MM),
                *ridge,
                Path(pen=Pen.ROD, runs_mm=(apex_line,)),
            ),
            spans=tuple(_top_spans(held, ridge_cover_mm, unit)),
            words=(said(apex_line[1], "apex", anchor=Anchor.START, shift=(0.8, -1.6)),),
            leaders=(),
            over_mm=held.over_mm,
            under_mm=-_RAFTER_MM,
        ),
        width_mm=width_mm,
        height_mm=height_mm,
    )


def _from_the_apex(held: SectionUnits, rafter_mm: float) -> SectionUnits:
    """The same units, measured from the apex: nothing at the apex, down the slope below nothing."""
    return replace(
        held,
        units=tuple(
            replace(
                each,
                tail_mm=each.tail_mm - rafter_mm,
                head_mm=each.head_mm - rafter_mm,
                mark_mm=each.mark_mm - rafter_mm,
            )
            for each in held.units
        ),
    )


def _top_spans(held: SectionUnits, ridge_cover_mm: float | None, unit: LengthUnit) -> Iterator[Span]:
    top = held.units[-1]
    for lower, upper in pairwise(held.full[-held.over_count - 1 :]):
        gap = bare_length(upper.mark_mm - lower.mark_mm, unit)
        yield _span(lower.mark_mm, upper.mark_mm, "gap", gap, under=True)
    yield _span(top.mark_mm, 0.0, "below apex", bare_length(-top.mark_mm, unit), under=True)
    if held.short:
        last = held.full[-1]
        above_mm = top.mark_mm - last.mark_mm
        yield _span(last.mark_mm, top.mark_mm, "short course", bare_length(above_mm, unit), short="short", under=True)
        yield _span(top.tail_mm, top.head_mm, "short length", bare_length(top.head_mm - top.tail_mm, unit))
    if ridge_cover_mm is None:
        return
    if held.over_count > 1 and len(held.units) > 1:
        lap_to_mm = held.units[-2].head_mm - held.lost_mm
        lap = bare_fine_length(lap_to_mm + ridge_cover_mm, unit, towards=Sense.AT_LEAST)
        yield _span(-ridge_cover_mm, lap_to_mm, "ridge laps", lap)
    yield _span(-ridge_cover_mm, 0.0, "ridge reaches down", bare_length(ridge_cover_mm, unit))


def _span(from_mm: float, to_mm: float, name: str, length: str, *, short: str = "", under: bool = False) -> Span:
    return Span(
        from_mm=from_mm,
        to_mm=to_mm,
        text=f"{name} {length}",
        short=f"{short} {length}" if short else "",
        under=under,
    )


def _underside_at_fascia_mm(frame: SlopeFrame, lowest: SectionUnit) -> float:
    """How high, plumb, the underside of the lowest course passes over the outer face of the fascia."""
    along, off = cos_deg(frame.pitch_deg), sin_deg(frame.pitch_deg)
    at_rafter_mm = lowest.underside_mm(0.0)
    tilt_ratio = at_rafter_mm - lowest.underside_mm(1.0)
    s_mm = at_rafter_mm * off / (along + tilt_ratio * off)
    return frame.at(s_mm, lowest.underside_mm(s_mm))[1]


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


def _ridge(frame: SlopeFrame, held: SectionUnits, ridge_cover_mm: float, *, both_sides: bool) -> Path:
    """The line of the ridge (or flashing) over the covering, up to the apex and over it where there is another side."""
    n_mm = held.over_mm - 0.4 * held.thick_mm
    low, crown = frame.at(-ridge_cover_mm, n_mm), frame.at_plumb(0.0, n_mm)
    return Path(pen=Pen.CUT, runs_mm=((low, crown, (-low[0], low[1])) if both_sides else (low, crown),))
