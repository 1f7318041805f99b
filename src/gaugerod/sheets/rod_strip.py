"""The rod at full size: true-scale batten marks over pages to join, with a ruler on each page to prove the printer."""

from collections.abc import Iterator
from math import ceil

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.rod_marks import SHORT, UNDER_EAVES, RodMark, rod_marks
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Point, Words
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.mark_words import mark_word, marks_read
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.setting_out_sheet import foot
from gaugerod.sheets.shared_rods import rod_name
from gaugerod.sheets.sheet import Block, Heading, NewPage, PaperSize, Pictures, Sheet, Steps

OVERLAP_MM = 12.0
"""Paper above the join line, to lay under the next page."""
RULER_MM = 100.0
_HEAD_MM = 15.0
_AIR_MM = 3.0
_NEAR_MM = 4.5
"""Words of two lines nearer than this would touch."""
_TAPE_MM, _STRIP_MM, _RULER_X_MM, _SAID_X_MM = 8.0, 62.0, 158.0, 108.0


def strip_span_mm(size: PaperSize) -> float:
    """How much of the rod one page carries, in whole centimetres.

    >>> strip_span_mm(PaperSize.A4), strip_span_mm(PaperSize.LETTER)
    (230.0, 210.0)
    """
    return float(10 * int((size.text_height_mm - _HEAD_MM - OVERLAP_MM - 2 * _AIR_MM) // 10))


def rod_strip(result: Result, slope: SlopeResult, *, numbers: tuple[int, ...], size: PaperSize) -> Sheet:
    """One rod of the slope at full size; ``numbers`` are those of the stations it serves, the first being drawn."""
    name = rod_name(numbers)
    return Sheet(
        title=f"{result.job.title}: {name} at full size",
        subtitle=f"{slope_heading(slope.slope.name)}, {name}. Every mark at true size, to join into a rod.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=(
            Heading(text="How to use the strip", level=1),
            Steps(lines=(*_STEPS, _MARKS_ARE[mark_word(slope)])),
            *_rod_pages(slope, numbers[0] - 1, name, size=size, unit=result.job.show_lengths_in),
        ),
    )


_STEPS = (
    "Print at 100 %, never fit to page.",
    (
        "Measure the ruler on every page: exactly 100 mm between its end lines. If it is not, that page cannot be "
        "used: mend the printer's scale and print again."
    ),
    "Cut each page along its lower line. Lay that edge on the upper line of the page before, and glue.",
    "Glue the strip to a straight batten, lower end flush: that end goes to the outer face of the fascia.",
    "Check the last mark on the finished rod against the tape. If they differ, trust the tape and the rod table.",
)
_MARKS_ARE: dict[str, str] = {
    "batten": "Each mark is the top edge of a batten.",
    "nail line": "Each mark is a line of nails or pegs, the middle of its batten, not the batten's edge.",
}
_COURSES: dict[str, str] = {UNDER_EAVES: "under-eaves course", SHORT: "short course"}


def _rod_pages(slope: SlopeResult, index: int, name: str, *, size: PaperSize, unit: LengthUnit) -> list[Block]:
    span_mm = strip_span_mm(size)
    pages = ceil(slope.courses.rods[index].length_mm / span_mm)
    blocks: list[Block] = []
    for page in range(pages):
        title = f"{slope_heading(slope.slope.name)}, {name}: strip {page + 1} of {pages}"
        placed = strip_page(slope, index, page=page, title=title, size=size, unit=unit)
        blocks += [NewPage(), Heading(text=title, kept_mm=0.0), Pictures(pictures=((placed, ""),))]
    return blocks


def strip_page(slope: SlopeResult, index: int, *, page: int, title: str, size: PaperSize, unit: LengthUnit) -> Placed:
    """One page of the rod of one station at full size; ``page`` counts from 0."""
    rod = slope.courses.rods[index]
    span_mm = strip_span_mm(size)
    from_mm, to_mm = page * span_mm, (page + 1) * span_mm
    shown_to_mm = min(to_mm + OVERLAP_MM, rod.length_mm)
    last = to_mm >= rod.length_mm
    shown = [mark for mark in rod_marks(slope, index) if from_mm <= mark.mark_mm <= shown_to_mm]
    marks = [mark.mark_mm for mark in shown]
    words = [words for mark in shown for words in _mark_words(mark, marks_read(slope), unit)]
    words += _tape_words(from_mm, shown_to_mm, marks_mm=marks, unit=unit)
    words += _end_words(rod, from_mm=from_mm, to_mm=to_mm, last=last, marks_mm=marks, unit=unit)
    words += _ruler_words(from_mm)
    paths = [
        Path(pen=Pen.RULER, runs_mm=_tape(from_mm, shown_to_mm, unit=unit)),
        Path(pen=Pen.RULER, runs_mm=(_box(from_mm, shown_to_mm),), closed=True),
        Path(pen=Pen.OVERHANG, runs_mm=_join_lines(from_mm, to_mm, last=last)),
        Path(pen=Pen.RULER, runs_mm=_ruler(from_mm)),
    ]
    if marks:
        paths.append(Path(pen=Pen.MARK, runs_mm=tuple(((_TAPE_MM, mark), (_STRIP_MM, mark)) for mark in marks)))
    if page == 0:
        paths.append(Path(pen=Pen.CUT, runs_mm=(((0.0, 0.0), (_STRIP_MM + 8.0, 0.0)),)))
    if shown_to_mm == rod.length_mm:
        paths.append(Path(pen=Pen.CUT, runs_mm=(((0.0, rod.length_mm), (_STRIP_MM + 8.0, rod.length_mm)),)))
    said = "; ".join(f"{_course(mark)} at {bare_length(mark.mark_mm, unit)}" for mark in shown) or "no mark"
    return Placed(
        drawing=Drawing(
            title=title,
            says=f"{title}, full size, {bare_length(from_mm, unit)} to {bare_length(shown_to_mm, unit)} up from the "
            f"fascia: {said}. A ruler of 100 mm stands beside it.",
            paths=tuple(paths),
            words=tuple(words),
        ),
        paper=Paper(
            width_mm=size.text_width_mm,
            height_mm=span_mm + OVERLAP_MM + 2 * _AIR_MM,
            scale_ratio=1.0,
            origin_paper_mm=(2.0, _AIR_MM - from_mm),
        ),
    )


def _box(from_mm: float, to_mm: float) -> tuple[Point, ...]:
    return ((0.0, from_mm), (_STRIP_MM, from_mm), (_STRIP_MM, to_mm), (0.0, to_mm))


def _join_lines(from_mm: float, to_mm: float, *, last: bool) -> tuple[tuple[Point, ...], ...]:
    """The lower line to cut, and the upper line the next page is laid on."""
    lines_mm = [from_mm] if last else [from_mm, to_mm]
    return tuple(((-2.0, y_mm), (_STRIP_MM + 8.0, y_mm)) for y_mm in lines_mm)


def _tape(from_mm: float, to_mm: float, *, unit: LengthUnit) -> tuple[tuple[Point, ...], ...]:
    """A tape's divisions up the left edge: centimetres, or inches."""
    step_mm = 25.4 if unit is LengthUnit.FT_IN else 10.0
    ticks = range(ceil(from_mm / step_mm), int(to_mm // step_mm) + 1)
    return tuple(
        ((0.0, tick * step_mm), (_TAPE_MM * (0.75 if tick % 5 == 0 else 0.4), tick * step_mm)) for tick in ticks
    )


def _tape_words(from_mm: float, to_mm: float, *, marks_mm: list[float], unit: LengthUnit) -> list[Words]:
    """The tape's readings, every 50 mm or 3 inches, where no mark's line would run through them."""
    step_mm = 76.2 if unit is LengthUnit.FT_IN else 50.0
    readings = range(ceil(from_mm / step_mm), int(to_mm // step_mm) + 1)
    return [
        _said((_TAPE_MM + 0.6, reading * step_mm), bare_length(reading * step_mm, unit), 2.6, shift=(0.0, -0.9))
        for reading in readings
        if from_mm + 2.0 <= reading * step_mm <= to_mm - 2.0
        and all(not -2.0 < mark_mm - reading * step_mm < 2.0 for mark_mm in marks_mm)
    ]


def _course(mark: RodMark) -> str:
    return _COURSES.get(mark.name, f"course {mark.name}")


def _mark_words(mark: RodMark, read: str, unit: LengthUnit) -> Iterator[Words]:
    """The number and reading of a course, large; of the courses under the eaves and below the ridge, beside the strip."""
    reading = bare_length(mark.mark_mm, unit)
    at_mm = (_STRIP_MM, mark.mark_mm)
    if mark.name in _COURSES:
        yield _said(at_mm, f"{read}, {_course(mark)}, {reading}", 2.6, shift=(1.5, -0.9))
        return
    end = Anchor.END
    value = Letter.VALUE
    yield Words(at_mm=at_mm, text=mark.name, letter=value, size_paper_mm=9.0, anchor=end, shift_paper_mm=(-2.0, 1.4))
    yield Words(at_mm=at_mm, text=reading, letter=value, size_paper_mm=6.0, anchor=end, shift_paper_mm=(-2.0, -5.6))
    yield _said(at_mm, f"{read}, {_course(mark)}", 2.6, shift=(1.5, -0.9))


def _end_words(
    rod: Rod, *, from_mm: float, to_mm: float, last: bool, marks_mm: list[float], unit: LengthUnit
) -> list[Words]:
    """What the lower line, the line of the next page and the apex are, each clear of the words of a mark near it."""
    lower = "0: outer face of the fascia" if from_mm == 0 else f"cut here: {write_length(from_mm, unit)}"
    ends = [(from_mm, lower, 0.6 if from_mm else -0.9)]
    if not last:
        ends.append((to_mm, f"↑ lay the next page on this line: {write_length(to_mm, unit)}", -0.9))
    if rod.length_mm <= to_mm + OVERLAP_MM:
        ends.append((rod.length_mm, f"apex {write_length(rod.length_mm, unit)}", -0.9))
    return [
        _said((_STRIP_MM + 9.0, y_mm), text, 2.8, shift=(0.0, _lift_mm(y_mm, lift_mm, marks_mm)))
        for y_mm, text, lift_mm in ends
    ]


def _lift_mm(y_mm: float, lift_mm: float, marks_mm: list[float]) -> float:
    """Words at a line, raised above those of a mark that is near it."""
    near = [mark_mm - y_mm for mark_mm in marks_mm if -_NEAR_MM < mark_mm - y_mm < _NEAR_MM]
    return max(near) + 2.4 if near else lift_mm


def _ruler(from_mm: float) -> tuple[tuple[Point, ...], ...]:
    """A hundred millimetres upright, every ten marked; the end lines are the longest."""
    foot_mm = from_mm + 40.0
    ticks: list[tuple[Point, ...]] = [((_RULER_X_MM, foot_mm), (_RULER_X_MM, foot_mm + RULER_MM))]
    for tick in range(11):
        long_mm = 14.0 if tick in {0, 10} else 8.0 if tick == 5 else 5.0
        y_mm = foot_mm + 10.0 * tick
        ticks.append(((_RULER_X_MM, y_mm), (_RULER_X_MM + long_mm, y_mm)))
    return tuple(ticks)


def _ruler_words(from_mm: float) -> list[Words]:
    lines = (
        "Print at 100 %.",
        "Measure this ruler:",
        "exactly 100 mm end",
        "to end. If it is not,",
        "do not use this page.",
    )
    top_mm = from_mm + 100.0
    return [
        _said((_SAID_X_MM, top_mm - 5.0 * line), text, 3.4, letter=Letter.VALUE if line == 2 else Letter.NAME)
        for line, text in enumerate(lines)
    ] + [
        _said((_RULER_X_MM + 14.0, from_mm + 40.0), "0", 3.4, shift=(1.0, -1.2)),
        _said((_RULER_X_MM + 14.0, from_mm + 40.0 + RULER_MM), "100 mm", 3.4, shift=(-9.0, 1.6)),
    ]


def _said(
    at_mm: Point,
    text: str,
    size_paper_mm: float,
    *,
    letter: Letter = Letter.NAME,
    shift: tuple[float, float] = (0.0, -0.9),
) -> Words:
    return Words(at_mm=at_mm, text=text, letter=letter, size_paper_mm=size_paper_mm, shift_paper_mm=shift)
