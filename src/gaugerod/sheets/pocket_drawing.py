"""The slope for a narrow screen: as wide as the screen, each mark of the rod beside its batten."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.job.slope_called import slope_heading
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
_OVER_MM = 2.6
_LINE_MM = 5.0
_FOOT_MM = 3.0
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
    below = _below(slope, unit, room_mm=room_width_mm - 2 * _EDGE_MM)
    foot_mm = _FOOT_MM + _LINE_MM * len(below)
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=(high[1] - low[1]) / ratio + _HEAD_MM + foot_mm,
        scale_ratio=ratio,
        origin_paper_mm=(left_mm - low[0] / ratio, foot_mm - low[1] / ratio),
    )
    apex = _to_apex(slope, unit)
    middle_mm = (low[0] + high[0]) / 2
    middle_paper_mm = left_mm + (middle_mm - low[0]) / ratio
    return Placed(
        drawing=Drawing(
            title=f"{slope_heading(slope.slope.name)}, marks of its left rod",
            says=f"{len(rod.marks_mm)} battens, gauge {fine_length(rod.gauge_mm, unit)}; "
            f"first at {bare_length(rod.marks_mm[0], unit)}, top at {bare_length(rod.marks_mm[-1], unit)}.",
            paths=(*slope_paths(slope), Path(pen=Pen.DIMENSION, runs_mm=tuple(_ticks(rod, labels, low[0], ratio)))),
            words=(
                *_marks(rod, labels, low[0], ratio),
                *(
                    _line(
                        text,
                        (middle_mm, low[1]),
                        shift_mm=(_inwards_mm(text, middle_paper_mm, room_width_mm), -_LINE_MM * (index + 1)),
                    )
                    for index, text in enumerate(below)
                ),
                _line(
                    apex,
                    (middle_mm, high[1]),
                    shift_mm=(_inwards_mm(apex, middle_paper_mm, room_width_mm), _OVER_MM),
                ),
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


def _below(slope: SlopeResult, unit: LengthUnit, *, room_mm: float) -> tuple[str, ...]:
    """Along the eaves and one cover, then past the fascia and past the sides: in as many lines as they need."""
    across = slope.across
    eaves = [f"eaves {bare_length(slope.slope.taped.eaves_mm, unit)}"]
    reaches = [f"past fascia {bare_length(slope.courses.overhang_mm, unit)}"]
    if across is not None:
        eaves.append(f"cover {fine_length(across.cover_mm, unit).removesuffix(f' {unit.value}')}")
        sides = (
            ("left", slope.slope.left, across.left_overhang_mm),
            ("right", slope.slope.right, across.right_overhang_mm),
        )
        reaches += [
            f"{hand} {bare_length(reach_mm, unit)}" if reach_mm >= 0 else f"{bare_length(-reach_mm, unit)} off {hand}"
            for hand, kind, reach_mm in sides
            if kind in ENDS_SQUARE
        ]
    return (*_lines(eaves, room_mm), *_lines(reaches, room_mm))


def _lines(parts: list[str], room_mm: float) -> Iterator[str]:
    """The parts on one line as long as they fit in the room."""
    line = parts[0]
    for part in parts[1:]:
        longer = f"{line} · {part}"
        if words_width_mm(longer, _SIZE_MM) > room_mm:
            yield line
            longer = part
        line = longer
    yield line


def _inwards_mm(text: str, middle_mm: float, room_mm: float) -> float:
    """How far a line about this middle must move so as not to run out of the room; to the left is less than nothing."""
    half_mm = words_width_mm(text, _SIZE_MM) / 2 + _EDGE_MM
    return max(half_mm, min(room_mm - half_mm, middle_mm)) - middle_mm


def _to_apex(slope: SlopeResult, unit: LengthUnit) -> str:
    """The first and the last rod."""
    rods = slope.courses.rods
    ends = dict.fromkeys((bare_length(rods[0].length_mm, unit), bare_length(rods[-1].length_mm, unit)))
    return f"to apex {' / '.join(ends)}"


def _line(text: str, at_mm: tuple[float, float], *, shift_mm: tuple[float, float]) -> Words:
    return Words(
        at_mm=at_mm, text=text, letter=Letter.DIMENSION, size_paper_mm=_SIZE_MM, anchor=Anchor.MIDDLE,
        shift_paper_mm=shift_mm,
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
