"""A section through three courses, to scale: what laps what, by how much, and where it is held.

Lengths, marks, tails and laps are true to scale and this slope's own; thickness and timber are only drawn.
"""

from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.coverings.double_lap import PlainTile, RandomSlates, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.job.model import Covering
from gaugerod.job.result import Laid, SlopeResult
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_placed import Section, section_placed
from gaugerod.sheets.slope_frame import SlopeFrame, Span

WIDTH_MM, HEIGHT_MM = 181.0, 120.0
_BATTEN_WIDTH_MM, _BATTEN_HIGH_MM, _RAFTER_MM = 50.0, 25.0, 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Held:
    """How this covering is drawn: units under a tail, thickness, what its lap loses at the head, and what holds it."""

    under_count: int
    thick_mm: float
    lost_mm: float
    nailed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Course:
    tail_mm: float
    head_mm: float
    mark_mm: float


def three_courses(slope: SlopeResult, laid: Laid, covering: Covering, *, unit: LengthUnit) -> Placed | None:
    """Three courses of the left rod; at the first drop course of random slates. None where there are fewer than three."""
    rod = slope.courses.rods[0]
    if slope.courses.count < 3:
        return None
    start = _start(slope)
    courses = [
        _Course(
            tail_mm=course.tail.height_mm(rod.at_mm),
            head_mm=course.tail.height_mm(rod.at_mm) + course.unit_length_mm,
            mark_mm=rod.marks_mm[start + number],
        )
        for number, course in enumerate(laid.ask.courses[start : start + 3])
    ]
    held = _held(covering)
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    from_mm, to_mm = courses[0].tail_mm - 30.0, courses[2].head_mm + 30.0
    rafter = frame.block(from_mm=from_mm, to_mm=to_mm, low_mm=-_RAFTER_MM, high_mm=0.0)
    return section_placed(
        Section(
            title=f"Courses {start + 1} to {start + 3} of slope {slope.slope.name} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(rafter,), closed=True),
                Path(
                    pen=Pen.SECTION_BATTEN, runs_mm=tuple(_batten(frame, each, held) for each in courses), closed=True
                ),
                Path(pen=Pen.UNIT, runs_mm=tuple(_unit(frame, each, held) for each in courses), closed=True),
                *_nails(frame, courses, held),
            ),
            spans=tuple(_spans(courses, held, unit)),
            words=(),
            leaders=(),
            over_mm=_BATTEN_HIGH_MM + (held.under_count + 2) * held.thick_mm,
            under_mm=-_RAFTER_MM,
        ),
        width_mm=WIDTH_MM,
        height_mm=HEIGHT_MM,
    )


def _start(slope: SlopeResult) -> int:
    """The lowest of the three courses: where lengths first change, else in the middle of the slope."""
    count = slope.courses.count
    if slope.diminishing is not None and len(slope.diminishing.groups) > 1:
        return min(max(slope.diminishing.groups[1].first_course - 3, 0), count - 3)
    return (count - 3) // 2


def _held(covering: Covering) -> _Held:
    match covering:
        case SingleLapTile():
            return _Held(under_count=1, thick_mm=12.0, lost_mm=0.0, nailed=False)
        case PlainTile():
            return _Held(under_count=2, thick_mm=12.0, lost_mm=0.0, nailed=False)
        case SizedSlate() | RandomSlates():
            return _Held(under_count=2, thick_mm=7.0, lost_mm=covering.lost_at_head_mm, nailed=True)
        case _ as unreachable:
            assert_never(unreachable)


def _spans(courses: list[_Course], held: _Held, unit: LengthUnit) -> list[Span]:
    low, middle, high = courses
    lapping = high if held.under_count == 2 else middle
    lap_to_mm = low.head_mm - held.lost_mm
    lap = fine_length(lap_to_mm - lapping.tail_mm, unit, towards=Sense.AT_LEAST).removesuffix(f" {unit.value}")
    spans = [
        _span(low.tail_mm, middle.tail_mm, "margin", bare_length(middle.tail_mm - low.tail_mm, unit)),
        _span(lapping.tail_mm, lap_to_mm, "headlap", lap),
        _span(low.tail_mm, low.head_mm, "length", bare_length(low.head_mm - low.tail_mm, unit)),
        _span(low.mark_mm, middle.mark_mm, "gauge", bare_length(middle.mark_mm - low.mark_mm, unit), under=True),
        _span(middle.mark_mm, high.mark_mm, "gauge", bare_length(high.mark_mm - middle.mark_mm, unit), under=True),
    ]
    if held.nailed:
        spans.append(_span(high.tail_mm, high.mark_mm, "tail to hole", bare_length(high.mark_mm - high.tail_mm, unit)))
    if held.lost_mm:
        spans.append(_span(lap_to_mm, low.head_mm, "hole to head", bare_length(held.lost_mm, unit)))
    return spans


def _span(from_mm: float, to_mm: float, name: str, length: str, *, under: bool = False) -> Span:
    return Span(from_mm=from_mm, to_mm=to_mm, text=f"{name} {length}", short="", under=under)


def _unit(frame: SlopeFrame, course: _Course, held: _Held) -> tuple[Point, ...]:
    """A unit from its head on the batten down to its tail, raised by the units it lies on."""
    low_tail_mm = _BATTEN_HIGH_MM + held.under_count * held.thick_mm
    return (
        frame.at(course.tail_mm, low_tail_mm),
        frame.at(course.head_mm, _BATTEN_HIGH_MM),
        frame.at(course.head_mm, _BATTEN_HIGH_MM + held.thick_mm),
        frame.at(course.tail_mm, low_tail_mm + held.thick_mm),
    )


def _batten(frame: SlopeFrame, course: _Course, held: _Held) -> tuple[Point, ...]:
    """Under the mark: the mark is its top edge for tiles, the line of the nails, in its middle, for slates."""
    top_mm = course.mark_mm + (_BATTEN_WIDTH_MM / 2 if held.nailed else 0.0)
    return frame.block(from_mm=top_mm - _BATTEN_WIDTH_MM, to_mm=top_mm, low_mm=0.0, high_mm=_BATTEN_HIGH_MM)


def _nails(frame: SlopeFrame, courses: list[_Course], held: _Held) -> tuple[Path, ...]:
    if not held.nailed:
        return ()
    high_mm = _BATTEN_HIGH_MM + (held.under_count + 1) * held.thick_mm
    return (
        Path(
            pen=Pen.CUT,
            runs_mm=tuple(
                (frame.at(course.mark_mm, high_mm), frame.at(course.mark_mm, _BATTEN_HIGH_MM / 3)) for course in courses
            ),
        ),
    )
