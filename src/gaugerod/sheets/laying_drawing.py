"""A slope with every unit on it: whole ones as a net of lines, cut ones shaded and numbered, the edges named."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.polygon import Point, bounding_box_mm
from gaugerod.job.result import Laid, SlopeResult
from gaugerod.job.slope_called import slope_heading
from gaugerod.laying.ask import Course, CourseLine
from gaugerod.laying.laid import CutCell
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Words, largest_scale_ratio
from gaugerod.sheets.edge_names import edge_names
from gaugerod.sheets.lengths_shown import bare_length
from gaugerod.sheets.lettering import Box, words_box, words_width_mm
from gaugerod.sheets.placed import Placed

NUMBER_SIZES_MM = (2.2, 1.9, 1.6)
"""A piece's number is set in the largest of these that its unit has room for; below the last it is left to the list."""
_NEIGHBOURS_COUNT = 400
"""Numbers that can be near: those of the last courses. Cells come course by course."""
_MARGIN_MM = 11.0
_COURSE_SIZE_MM = 2.1


def laying_drawing(
    slope: SlopeResult, laid: Laid, *, unit: LengthUnit, room_width_mm: float, room_height_mm: float
) -> Placed:
    """The slope as large as the room allows at a standard scale."""
    low, high = bounding_box_mm(laid.ask.outline.points_mm)
    ratio = largest_scale_ratio(
        model_width_mm=high[0] - low[0],
        model_height_mm=high[1] - low[1],
        width_mm=room_width_mm - 2 * _MARGIN_MM,
        height_mm=room_height_mm - 2 * _MARGIN_MM,
    )
    spare_mm = room_width_mm - (high[0] - low[0]) / ratio
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=(high[1] - low[1]) / ratio + 2 * _MARGIN_MM,
        scale_ratio=ratio,
        origin_paper_mm=(spare_mm / 2 - low[0] / ratio, _MARGIN_MM - low[1] / ratio),
    )
    return Placed(
        drawing=Drawing(
            title=f"{slope_heading(slope.slope.name)}, every unit",
            says=_said(slope, laid, unit),
            paths=tuple(_paths(slope, laid)),
            words=(
                *_piece_numbers(laid, paper),
                *_course_numbers(laid, low, ratio),
                *_key_lengths(slope, low, high, unit),
                *edge_names(slope, paper=paper),
            ),
        ),
        paper=paper,
    )


def _said(slope: SlopeResult, laid: Laid, unit: LengthUnit) -> str:
    laying = laid.laying
    return (
        f"{slope_heading(slope.slope.name)}: {len(laying.courses)} courses, {laid.whole_units_count} whole units, "
        f"{len(laid.pieces)} pieces to saw, numbered; {bare_length(slope.slope.taped.eaves_mm, unit)} along the eaves."
    )


def _paths(slope: SlopeResult, laid: Laid) -> Iterator[Path]:
    net = tuple(_net(laid))
    if net:
        yield Path(pen=Pen.BATTEN, runs_mm=net)
    cut = tuple(ring for cell in _all_cut(laid) for ring in cell.rings)
    if cut:
        yield Path(pen=Pen.CUT_UNIT, runs_mm=cut, closed=True)
    for opening in laid.ask.openings:
        yield Path(pen=Pen.OPENING, runs_mm=(opening.points_mm,), closed=True)
    yield Path(pen=Pen.OVERHANG, runs_mm=(laid.ask.outline.points_mm,), closed=True)
    yield Path(pen=Pen.OUTLINE, runs_mm=(slope.shape.outline_mm,), closed=True)


def _all_cut(laid: Laid) -> tuple[CutCell, ...]:
    return (*laid.laying.cuts, *laid.laying.lapped)


def _net(laid: Laid) -> Iterator[tuple[Point, ...]]:
    """Whole units: the tail and head line of each run, and the joints across it."""
    lines = laid.ask.lines
    for run in laid.laying.runs:
        course = laid.ask.courses[run.course]
        below, above = lines[run.course], lines[run.course + 1]
        for line in (below, above):
            yield _corner(course, run.first, line), _corner(course, run.first + run.count, line)
        for index in range(run.first, run.first + run.count + 1):
            yield _corner(course, index, below), _corner(course, index, above)


def _corner(course: Course, index: int, line: CourseLine) -> Point:
    """Where joint ``index`` crosses a line across the slope."""
    perps = course.perps
    foot_mm = perps.first_mm + index * perps.cover_mm
    lean = perps.first_lean_ratio + index * perps.cover_lean_ratio
    y_mm = (line.at_mm + line.rise_ratio * foot_mm) / (1.0 - line.rise_ratio * lean)
    return (foot_mm + lean * y_mm, y_mm)


def _piece_numbers(laid: Laid, paper: Paper) -> Iterator[Words]:
    """Each number in its own cell, clear of the others; a piece with no room for one is left to the list."""
    numbers = {(piece.course, piece.index): piece.number for piece in laid.pieces}
    taken: list[Box] = []
    for cell in laid.laying.cuts:
        number = numbers.get((cell.course, cell.index))
        if number is None:
            continue
        for words in _numbered(number, max(cell.rings, key=_size_mm2), paper.scale_ratio):
            box = words_box(words, paper)
            if not any(box.overlaps(other) for other in taken[-_NEIGHBOURS_COUNT:]):
                taken.append(box)
                yield words
                break


def _numbered(number: int, ring: tuple[Point, ...], ratio: float) -> Iterator[Words]:
    """The number in the middle of its piece, in every size there is room for, the largest first."""
    low, high = bounding_box_mm(ring)
    for size_mm in NUMBER_SIZES_MM:
        if (
            words_width_mm(str(number), size_mm) * ratio <= 0.9 * (high[0] - low[0])
            and size_mm * ratio <= high[1] - low[1]
        ):
            yield Words(
                at_mm=_middle(ring),
                text=str(number),
                letter=Letter.NAME,
                size_paper_mm=size_mm,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, -0.36 * size_mm),
            )


def _size_mm2(ring: tuple[Point, ...]) -> float:
    low, high = bounding_box_mm(ring)
    return (high[0] - low[0]) * (high[1] - low[1])


def _middle(ring: tuple[Point, ...]) -> Point:
    return (sum(x for x, _ in ring) / len(ring), sum(y for _, y in ring) / len(ring))


def _course_numbers(laid: Laid, low: Point, ratio: float) -> Iterator[Words]:
    """Courses numbered on the left, every fifth where they are close."""
    lines = laid.ask.lines
    gauge_mm = (lines[-1].at_mm - lines[0].at_mm) / len(laid.ask.courses)
    every = next(step for step in (1, 5, 10, 20, 50) if step * gauge_mm >= 1.2 * _COURSE_SIZE_MM * ratio)
    for number in sorted({1, len(laid.ask.courses), *range(every, len(laid.ask.courses) + 1, every)}):
        if number not in {1, len(laid.ask.courses)} and len(laid.ask.courses) - number < every / 2:
            continue
        middle_mm = (lines[number - 1].at_mm + lines[number].at_mm) / 2
        yield Words(
            at_mm=(low[0], middle_mm),
            text=str(number),
            letter=Letter.NAME,
            size_paper_mm=_COURSE_SIZE_MM,
            anchor=Anchor.END,
            shift_paper_mm=(-2.0, -0.36 * _COURSE_SIZE_MM),
        )


def _key_lengths(slope: SlopeResult, low: Point, high: Point, unit: LengthUnit) -> Iterator[Words]:
    middle_mm = (low[0] + high[0]) / 2
    yield Words(
        at_mm=(middle_mm, low[1]),
        text=f"eaves {bare_length(slope.slope.taped.eaves_mm, unit)}",
        letter=Letter.VALUE,
        size_paper_mm=3.0,
        anchor=Anchor.MIDDLE,
        shift_paper_mm=(0.0, -5.0),
    )
    yield Words(
        at_mm=(high[0], (low[1] + high[1]) / 2),
        text=f"up the slope {bare_length(slope.courses.rods[0].length_mm, unit)}",
        letter=Letter.VALUE,
        size_paper_mm=3.0,
        anchor=Anchor.MIDDLE,
        shift_paper_mm=(6.0, 0.0),
        turned_deg=90.0,
    )
