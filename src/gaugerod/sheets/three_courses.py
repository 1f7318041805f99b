"""A section through three courses, to scale: what laps what, by how much, and where it is held.

Lengths, marks, tails and laps are true to scale and this slope's own; thickness and timber are only drawn.
"""

from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.model import Covering
from gaugerod.job.result import SlopeResult
from gaugerod.job.slope_called import slope_called
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_placed import Section, section_placed
from gaugerod.sheets.section_units import SectionUnit, SectionUnits, section_units
from gaugerod.sheets.slope_frame import SlopeFrame, Span

WIDTH_MM, HEIGHT_MM = 181.0, 120.0
_RAFTER_MM, _PAST_MM = 60.0, 30.0


def three_courses(slope: SlopeResult, covering: Covering, *, unit: LengthUnit) -> Placed | None:
    """Three courses of the left rod; at the first drop course of random slates. None where there are fewer than three."""
    held = section_units(slope, covering)
    if len(held.full) < 3:
        return None
    start = _start(slope)
    three = held.full[start : start + 3]
    frame = SlopeFrame(pitch_deg=slope.slope.pitch_deg)
    from_mm, to_mm = three[0].tail_mm - _PAST_MM, three[2].head_mm + _PAST_MM
    rafter = frame.block(from_mm=from_mm, to_mm=to_mm, low_mm=-_RAFTER_MM, high_mm=0.0)
    shown = [each for each in held.units if each.head_mm > from_mm and each.tail_mm < three[2].tail_mm + 1.0]
    return section_placed(
        Section(
            title=f"Courses {start + 1} to {start + 3} of {slope_called(slope.slope.name)} in section",
            frame=frame,
            paths=(
                Path(pen=Pen.TIMBER, runs_mm=(rafter,), closed=True),
                *held.paths(frame, shown, from_mm=from_mm, to_mm=to_mm),
            ),
            spans=tuple(_spans(three, held, unit)),
            words=(),
            leaders=(),
            over_mm=held.over_mm,
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


def _spans(three: Sequence[SectionUnit], held: SectionUnits, unit: LengthUnit) -> Iterator[Span]:
    low, middle, high = three
    lapping = three[held.over_count]
    lap_to_mm = low.head_mm - held.lost_mm
    lap = bare_fine_length(lap_to_mm - lapping.tail_mm, unit, towards=Sense.AT_LEAST)
    yield _span(low.tail_mm, middle.tail_mm, "margin", bare_length(middle.tail_mm - low.tail_mm, unit))
    yield _span(lapping.tail_mm, lap_to_mm, "headlap", lap)
    yield _span(low.tail_mm, low.head_mm, "length", bare_length(low.head_mm - low.tail_mm, unit))
    for lower, upper in ((low, middle), (middle, high)):
        yield _span(lower.mark_mm, upper.mark_mm, "gauge", bare_length(upper.mark_mm - lower.mark_mm, unit), under=True)
    if held.nailed:
        yield _span(high.tail_mm, high.mark_mm, "tail to hole", bare_length(high.mark_mm - high.tail_mm, unit))
    if held.lost_mm:
        yield _span(lap_to_mm, low.head_mm, "hole to head", bare_length(held.lost_mm, unit))


def _span(from_mm: float, to_mm: float, name: str, length: str, *, under: bool = False) -> Span:
    return Span(from_mm=from_mm, to_mm=to_mm, text=f"{name} {length}", short="", under=under)
