"""The batten joint plan: every batten of a slope on its numbered rafters, every joint marked, every piece with its length."""

from collections.abc import Iterator
from itertools import pairwise

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.said import counted
from gaugerod.sheets.dimension_lanes import Label
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Point, Words
from gaugerod.sheets.edge_names import named_edges, opening_box, words_along
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.sheets.lettering import Box, words_box, words_width_mm
from gaugerod.sheets.numbers_beside import LEAST_SIZE_MM, beside, shown_of, size_between_mm
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.plan_frame import Beside, lanes_below, plan_frame
from gaugerod.sheets.slope_labels import opening_letters
from gaugerod.sheets.slope_lines import Line, inside_parts, opening_rings
from gaugerod.substrate.battens.answer import SlopeBattens

_NUMBER_SIZE_MM = 2.3
_NUMBERS_MM = 4 * words_width_mm("0", _NUMBER_SIZE_MM) + 4.0
"""Paper for the batten's number and its letter."""
_RAFTER_NUMBERS_MM = 4.5
JOINT_HALF_MM = 0.9
"""A joint is a lozenge so far from its middle to each corner, on paper."""


def joint_drawing(
    slope: SlopeResult, battens: SlopeBattens, *, unit: LengthUnit, room_width_mm: float, room_height_mm: float
) -> Placed:
    """The slope as large as the room allows at a standard scale."""
    low_mm, high_mm = bounding_box_mm(slope.shape.outline_mm)
    sides = Beside(
        below=lanes_below(_eaves_labels(slope, battens, unit), room_width_mm=room_width_mm),
        numbers_mm=_NUMBERS_MM,
        under_mm=_RAFTER_NUMBERS_MM,
    )
    frame = plan_frame(
        low_mm=low_mm, high_mm=high_mm, beside=sides, room_width_mm=room_width_mm, room_height_mm=room_height_mm
    )
    paper, lanes = frame.paper, frame.lanes()
    lengths = tuple(_piece_lengths(battens, paper, unit))
    taken = [opening_box(opening, paper) for opening in slope.slope.openings]
    taken += [words_box(words, paper) for words in lengths]
    return Placed(
        drawing=Drawing(
            title=f"Slope {slope.slope.name}, batten joints",
            says=_said(slope, battens),
            paths=tuple(_paths(slope, battens, paper)),
            words=(
                *lengths,
                *_letters(battens, paper),
                *_numbers(battens, low_mm, paper),
                *_rafter_numbers(slope, battens, paper),
                *opening_letters(slope, scale_ratio=paper.scale_ratio),
                *words_along(named_edges(slope), paper=paper, taken=taken),
                *(words for lane in lanes for words in lane.words),
            ),
            leaders=tuple(leader for lane in lanes for leader in lane.leaders),
        ),
        paper=paper,
    )


def _eaves_labels(slope: SlopeResult, battens: SlopeBattens, unit: LengthUnit) -> tuple[Label, ...]:
    """Rafter 1 from the left end, the widest spacing, and the whole of the eaves."""
    width_mm = slope.slope.taped.eaves_mm
    rafters_mm = battens.rafters_mm
    labels = [Label(at_mm=(width_mm, 0.0), name="along the eaves", value=bare_length(width_mm, unit))]
    if rafters_mm:
        labels.append(Label(at_mm=(rafters_mm[0], 0.0), name="rafter 1", value=bare_length(rafters_mm[0], unit)))
    gaps = [(right - left, (left + right) / 2) for left, right in pairwise(rafters_mm)]
    if gaps:
        widest_mm, at_mm = max(gaps)
        labels.append(Label(at_mm=(at_mm, 0.0), name="rafters apart, at most", value=bare_fine_length(widest_mm, unit)))
    return tuple(labels)


def _paths(slope: SlopeResult, battens: SlopeBattens, paper: Paper) -> Iterator[Path]:
    outline = slope.shape.outline_mm
    yield Path(pen=Pen.SURFACE, runs_mm=(outline,), closed=True)
    rafters = tuple(part for at_mm in battens.rafters_mm for part in _rafter_lines(slope, at_mm))
    lines = tuple(stretch.ends_mm for line in battens.lines for stretch in line.stretches)
    half_mm = JOINT_HALF_MM * paper.scale_ratio
    joints = tuple(
        lozenge_mm(joint, half_mm)
        for line in battens.lines
        for stretch in line.stretches
        for joint in stretch.joints_mm
    )
    openings = opening_rings(slope)
    paths = (
        Path(pen=Pen.RAFTER, runs_mm=rafters),
        Path(pen=Pen.BATTEN, runs_mm=lines),
        Path(pen=Pen.OPENING, runs_mm=openings, closed=True),
        Path(pen=Pen.JOINT, runs_mm=joints, closed=True),
    )
    yield from (path for path in paths if path.runs_mm)
    yield Path(pen=Pen.OUTLINE, runs_mm=(outline,), closed=True)


def lozenge_mm(at_mm: Point, half_mm: float) -> tuple[Point, ...]:
    """The four corners of a lozenge."""
    x, y = at_mm
    return ((x - half_mm, y), (x, y - half_mm), (x + half_mm, y), (x, y + half_mm))


def _gap_mm(battens: SlopeBattens) -> float:
    """The mean distance of the battens."""
    heights_mm = _heights_mm(battens)
    return (heights_mm[-1] - heights_mm[0]) / max(1, len(heights_mm) - 1) if heights_mm else 0.0


def _heights_mm(battens: SlopeBattens) -> list[float]:
    return [line.stretches[0].ends_mm[0][1] for line in battens.lines if line.stretches]


def _piece_lengths(battens: SlopeBattens, paper: Paper, unit: LengthUnit) -> Iterator[Words]:
    """Each piece's length on it, above its line, where there is room; the table has every one."""
    ratio = paper.scale_ratio
    size_mm = min(2.4, 0.62 * _gap_mm(battens) / ratio)
    if size_mm < LEAST_SIZE_MM:
        return
    taken: list[Box] = []
    for line in battens.lines:
        # Over the line; under it on the top batten, which lies close to the ridge.
        off_mm = -size_mm if line is battens.lines[-1] else 0.45
        for stretch in line.stretches:
            places = (stretch.ends_mm[0], *stretch.joints_mm, stretch.ends_mm[1])
            for (left, right), piece_mm in zip(pairwise(places), stretch.pieces_mm, strict=False):
                text = bare_fine_length(piece_mm, unit, towards=Sense.AT_MOST)
                words = Words(
                    at_mm=((left[0] + right[0]) / 2, (left[1] + right[1]) / 2),
                    text=text,
                    letter=Letter.EDGE,
                    size_paper_mm=size_mm,
                    anchor=Anchor.MIDDLE,
                    shift_paper_mm=(0.0, off_mm),
                )
                box = words_box(words, paper)
                fits = words_width_mm(text, size_mm) + 2 * JOINT_HALF_MM < (right[0] - left[0]) / ratio
                if fits and not any(box.overlaps(other) for other in taken[-20:]):
                    taken.append(box)
                    yield words


def _letters(battens: SlopeBattens, paper: Paper) -> Iterator[Words]:
    """The letter of each batten's joints, at its left end."""
    size_mm = size_between_mm(_gap_mm(battens), scale_ratio=paper.scale_ratio, greatest_mm=2.8)
    drawn = [line for line in battens.lines if line.stretches]
    for index in shown_of(_heights_mm(battens), size_mm=size_mm, scale_ratio=paper.scale_ratio):
        line = drawn[index]
        if line.letter:
            yield beside(line.stretches[0].ends_mm[0], line.letter, size_mm=size_mm, letter=Letter.KEY)


def _numbers(battens: SlopeBattens, low_mm: Point, paper: Paper) -> Iterator[Words]:
    """The battens' own numbers, in a column at the left."""
    drawn = [line for line in battens.lines if line.stretches]
    for index in shown_of(_heights_mm(battens), size_mm=_NUMBER_SIZE_MM, scale_ratio=paper.scale_ratio):
        at_mm = (low_mm[0], drawn[index].stretches[0].ends_mm[0][1])
        yield beside(at_mm, drawn[index].name, size_mm=_NUMBER_SIZE_MM, off_mm=5.5)


def _rafter_numbers(slope: SlopeResult, battens: SlopeBattens, paper: Paper) -> Iterator[Words]:
    """Rafters numbered from the left, each under its foot; every second, fifth or tenth where they stand close."""
    size_mm, ratio = 2.2, paper.scale_ratio
    rafters_mm = battens.rafters_mm
    room_mm = (words_width_mm("00", size_mm) + 0.6) * ratio
    gap_mm = (rafters_mm[-1] - rafters_mm[0]) / max(1, len(rafters_mm) - 1) if rafters_mm else 0.0
    every = next((step for step in (1, 2, 5, 10, 20) if step * gap_mm >= room_mm), 50)
    last_mm = None
    for number, at_mm in enumerate(rafters_mm, start=1):
        if (number != 1 and number % every) or (last_mm is not None and at_mm - last_mm < room_mm):
            continue
        foot = min((start[1] for start, _ in _rafter_lines(slope, at_mm)), default=None)
        if foot is not None:
            last_mm = at_mm
            yield Words(
                at_mm=(at_mm, foot),
                text=str(number),
                letter=Letter.NAME,
                size_paper_mm=size_mm,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, -3.2),
            )


def _rafter_lines(slope: SlopeResult, at_mm: float) -> list[Line]:
    """The parts of a rafter on the slope, from below."""
    (_, low_mm), (_, high_mm) = bounding_box_mm(slope.shape.outline_mm)
    return inside_parts((at_mm, low_mm), (at_mm, high_mm), slope.shape.outline_mm)


def _said(slope: SlopeResult, battens: SlopeBattens) -> str:
    return (
        f"Slope {slope.slope.name}: {counted(len(battens.lines), 'batten')} on {counted(len(battens.rafters_mm), 'rafter')}, "
        f"{counted(battens.joints_count, 'joint')}, each on its rafter; the table tells the pieces of every batten."
    )
