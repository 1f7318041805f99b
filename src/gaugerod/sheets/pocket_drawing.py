"""The slope for a narrow screen: as wide as the screen, each mark of the rod beside its batten."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Words
from gaugerod.sheets.edge_names import edge_names
from gaugerod.sheets.key_figures import ENDS_SQUARE
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.lettering import words_width_mm
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_labels import opening_letter
from gaugerod.sheets.slope_lines import slope_extent_mm, slope_paths

_SIZE_MM = 3.2
_EDGE_MM = 2.0
_HEAD_MM = 7.0
_FOOT_MM = 13.0
_TALLEST_RATIO = 1.9
"""Of its width; a taller slope is drawn narrower, so that eaves and ridge are seen together."""


def pocket_drawing(slope: SlopeResult, *, unit: LengthUnit, room_width_mm: float) -> Placed:
    """The slope across the whole room but for the marks of its left rod beside it."""
    rod = slope.courses.rods[0]
    low, high = slope_extent_mm(slope)
    labels = {number: _mark_said(number, rod, unit) for number in range(1, len(rod.marks_mm) + 1)}
    left_mm = max(words_width_mm(text, _SIZE_MM) for text in labels.values()) + 2 * _EDGE_MM
    room_mm = room_width_mm - left_mm - _EDGE_MM
    ratio = max((high[0] - low[0]) / room_mm, (high[1] - low[1]) / (_TALLEST_RATIO * room_width_mm))
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=(high[1] - low[1]) / ratio + _HEAD_MM + _FOOT_MM,
        scale_ratio=ratio,
        origin_paper_mm=(left_mm - low[0] / ratio, _FOOT_MM - low[1] / ratio),
    )
    return Placed(
        drawing=Drawing(
            title=f"Slope {slope.slope.name}, marks of its left rod",
            says=f"{len(rod.marks_mm)} battens, gauge {fine_length(rod.gauge_mm, unit)}; "
            f"first at {bare_length(rod.marks_mm[0], unit)}, top at {bare_length(rod.marks_mm[-1], unit)}.",
            paths=(*slope_paths(slope), Path(pen=Pen.DIMENSION, runs_mm=tuple(_ticks(rod, labels, low[0], ratio)))),
            words=(
                *_marks(rod, labels, low[0], ratio),
                *_lengths(slope, low, high, unit),
                *_openings(slope),
                *edge_names(slope, paper=paper),
            ),
        ),
        paper=paper,
    )


def _mark_said(number: int, rod: Rod, unit: LengthUnit) -> str:
    return f"{number:>2}  {bare_length(rod.marks_mm[number - 1], unit)}"


def _lettered(rod: Rod, count: int, ratio: float) -> list[int]:
    """The battens whose mark is written: all, or every so many where they would touch, the first and the top always."""
    step_mm = 1.15 * _SIZE_MM * ratio
    last = len(rod.marks_mm)
    every = next((step for step in (1, 2, 5, 10, 20, 50) if step * rod.gauge_mm >= step_mm), count)
    kept = [
        number
        for number in range(every, last, every)
        if number == 1
        or (
            rod.marks_mm[number - 1] - rod.marks_mm[0] >= step_mm
            and rod.marks_mm[-1] - rod.marks_mm[number - 1] >= step_mm
        )
    ]
    return sorted({1, *kept, last})


def _ticks(
    rod: Rod, labels: dict[int, str], left_x_mm: float, ratio: float
) -> Iterator[tuple[tuple[float, float], tuple[float, float]]]:
    for number in _lettered(rod, len(labels), ratio):
        y_mm = rod.marks_mm[number - 1]
        yield (left_x_mm - _EDGE_MM * 0.8 * ratio, y_mm), (left_x_mm, y_mm)


def _marks(rod: Rod, labels: dict[int, str], left_x_mm: float, ratio: float) -> Iterator[Words]:
    for number in _lettered(rod, len(labels), ratio):
        yield Words(
            at_mm=(left_x_mm, rod.marks_mm[number - 1]),
            text=labels[number],
            letter=Letter.VALUE if number % 5 == 0 or number in {1, len(labels)} else Letter.NAME,
            size_paper_mm=_SIZE_MM,
            anchor=Anchor.END,
            shift_paper_mm=(-_EDGE_MM, -0.36 * _SIZE_MM),
        )


def _lengths(
    slope: SlopeResult, low: tuple[float, float], high: tuple[float, float], unit: LengthUnit
) -> Iterator[Words]:
    """Past the fascia, along the eaves and past the sides below; the longest and shortest rafter above."""
    across = slope.across
    middle_mm = (low[0] + high[0]) / 2
    below = [f"eaves {bare_length(slope.slope.taped.eaves_mm, unit)}"]
    if across is not None:
        below.append(f"cover {fine_length(across.cover_mm, unit).removesuffix(f' {unit.value}')}")
    yield _line(" · ".join(below), (middle_mm, low[1]), shift_mm=-5.0)
    reaches = [f"past fascia {bare_length(slope.courses.overhang_mm, unit)}"]
    if across is not None:
        sides = (
            ("left", slope.slope.left, across.left_overhang_mm),
            ("right", slope.slope.right, across.right_overhang_mm),
        )
        reaches += [
            f"{hand} {bare_length(reach_mm, unit)}" if reach_mm >= 0 else f"{bare_length(-reach_mm, unit)} off {hand}"
            for hand, kind, reach_mm in sides
            if kind in ENDS_SQUARE
        ]
    yield _line(" · ".join(reaches), (middle_mm, low[1]), shift_mm=-10.0)
    rafters = [rod.length_mm for rod in slope.courses.rods]
    ends = dict.fromkeys((bare_length(rafters[0], unit), bare_length(rafters[-1], unit)))
    yield _line(f"to apex {' / '.join(ends)}", (middle_mm, high[1]), shift_mm=2.6)


def _line(text: str, at_mm: tuple[float, float], *, shift_mm: float) -> Words:
    return Words(
        at_mm=at_mm, text=text, letter=Letter.DIMENSION, size_paper_mm=_SIZE_MM, anchor=Anchor.MIDDLE,
        shift_paper_mm=(0.0, shift_mm),
    )  # fmt: skip


def _openings(slope: SlopeResult) -> Iterator[Words]:
    for index, opening in enumerate(slope.slope.openings):
        yield Words(
            at_mm=(opening.from_left_mm + opening.width_mm / 2, opening.up_slope_mm + opening.height_mm / 2),
            text=opening_letter(index),
            letter=Letter.KEY,
            size_paper_mm=1.2 * _SIZE_MM,
            anchor=Anchor.MIDDLE,
            shift_paper_mm=(0.0, -0.43 * _SIZE_MM),
        )
