"""The pattern of a slope whose battens repeat: its courses one above the other, each piece with its length."""

from collections.abc import Iterator
from itertools import pairwise

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.polygon import bounding_box_mm
from gaugerod.job.result import SlopeResult
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
from gaugerod.sheets.joint_drawing import JOINT_HALF_MM, lozenge_mm
from gaugerod.sheets.joint_tables import piece_length
from gaugerod.sheets.lettering import words_width_mm
from gaugerod.sheets.numbers_beside import beside
from gaugerod.sheets.placed import Placed
from gaugerod.substrate.battens.answer import BattenLine, SlopeBattens

_ROW_MM = 7.5
_LEFT_MM = 12.0
_RIGHT_MM = 4.0
_FOOT_MM = 6.0
_LENGTH_SIZE_MM = 3.0


def joint_pattern(
    slope: SlopeResult, battens: SlopeBattens, *, unit: LengthUnit, room_width_mm: float
) -> Placed | None:
    """One repeat of the pattern; None where the battens do not repeat, or are all in one piece."""
    if battens.repeats_every is None or not battens.joints_count:
        return None
    lines = battens.lines[: battens.repeats_every]
    (left_mm, _), (right_mm, _) = bounding_box_mm(slope.shape.outline_mm)
    ratio = largest_scale_ratio(
        model_width_mm=right_mm - left_mm,
        model_height_mm=0.0,
        width_mm=room_width_mm - _LEFT_MM - _RIGHT_MM,
        height_mm=1.0,
    )
    spare_mm = room_width_mm - _LEFT_MM - _RIGHT_MM - (right_mm - left_mm) / ratio
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=len(lines) * _ROW_MM + _FOOT_MM,
        scale_ratio=ratio,
        origin_paper_mm=(_LEFT_MM + spare_mm / 2 - left_mm / ratio, _FOOT_MM),
    )
    ups_mm = [(row + 0.35) * _ROW_MM * ratio for row in range(len(lines))]
    rows = list(zip(lines, ups_mm, strict=True))
    return Placed(
        drawing=Drawing(
            title=f"Slope {slope.slope.name}, pattern of the batten joints",
            says=" ".join(_said(line, unit) for line in lines),
            paths=tuple(_paths(rows, ratio)),
            words=(*_words(rows, unit, left_mm=left_mm, ratio=ratio), *_rafter_numbers(battens, ratio)),
            leaders=tuple(_rafters(battens, len(lines) * _ROW_MM)),
        ),
        paper=paper,
    )


Row = tuple[BattenLine, float]
"""A batten of the pattern, and how high it is drawn."""


def _said(line: BattenLine, unit: LengthUnit) -> str:
    pieces = ", ".join(piece_length(piece_mm, unit) for piece_mm in line.stretches[0].pieces_mm)
    joints = " and ".join(map(str, line.stretches[0].joints)) or "none"
    return f"Course {line.letter or 'without a joint'}: {pieces} from the left; joints on rafters {joints}."


def _places(line: BattenLine, up_mm: float) -> tuple[Point, ...]:
    (stretch,) = line.stretches
    return tuple((x, up_mm) for x, _ in (stretch.ends_mm[0], *stretch.joints_mm, stretch.ends_mm[1]))


def _paths(rows: list[Row], ratio: float) -> Iterator[Path]:
    places = [_places(line, up_mm) for line, up_mm in rows]
    yield Path(pen=Pen.FIFTH_BATTEN, runs_mm=tuple((each[0], each[-1]) for each in places))
    half_mm = 1.5 * JOINT_HALF_MM * ratio
    joints = tuple(lozenge_mm(joint, half_mm) for each in places for joint in each[1:-1])
    if joints:
        yield Path(pen=Pen.JOINT, runs_mm=joints, closed=True)


def _rafters(battens: SlopeBattens, high_mm: float) -> Iterator[Leader]:
    for at_mm in battens.rafters_mm:
        yield Leader(
            pen=Pen.RAFTER, points_mm=((at_mm, 0.0), (at_mm, 0.0)), shifts_paper_mm=((0.0, 0.0), (0.0, high_mm))
        )


def _words(rows: list[Row], unit: LengthUnit, *, left_mm: float, ratio: float) -> Iterator[Words]:
    for line, up_mm in rows:
        yield beside((left_mm, up_mm), line.letter or "–", size_mm=4.2, off_mm=2.0, letter=Letter.KEY)
        (stretch,) = line.stretches
        for (start, end), piece_mm in zip(pairwise(_places(line, up_mm)), stretch.pieces_mm, strict=True):
            text = piece_length(piece_mm, unit)
            room_mm = (end[0] - start[0]) / ratio - 2 * JOINT_HALF_MM
            size_mm = min(_LENGTH_SIZE_MM, _LENGTH_SIZE_MM * room_mm / words_width_mm(text, _LENGTH_SIZE_MM))
            yield Words(
                at_mm=((start[0] + end[0]) / 2, up_mm),
                text=text,
                letter=Letter.EDGE,
                size_paper_mm=size_mm,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, 0.9),
            )


def _rafter_numbers(battens: SlopeBattens, ratio: float) -> Iterator[Words]:
    size_mm = 2.4
    room_mm = words_width_mm("00", size_mm) + 0.6
    rafters_mm = battens.rafters_mm
    gap_mm = (rafters_mm[-1] - rafters_mm[0]) / max(1, len(rafters_mm) - 1) / ratio
    every = next((step for step in (1, 2, 5, 10, 20) if step * gap_mm >= room_mm), 50)
    last_mm = None
    for number, at_mm in enumerate(rafters_mm, start=1):
        clear = last_mm is None or (at_mm - last_mm) / ratio >= room_mm
        if clear and (number == 1 or number % every == 0):
            last_mm = at_mm
            yield Words(
                at_mm=(at_mm, 0.0),
                text=str(number),
                letter=Letter.NAME,
                size_paper_mm=size_mm,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, -3.4),
            )
