"""The slope to scale: every batten line, the perps, the openings, and each dimension beside what it measures."""

from dataclasses import dataclass

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.said import counted
from gaugerod.sheets.dimension_lanes import (
    LABEL_HEIGHT_MM,
    LEVEL_LANE_MM,
    Label,
    Lane,
    level_lane,
    split_to_fit,
    upright_lane,
    upright_lane_width_mm,
)
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Words, largest_scale_ratio
from gaugerod.sheets.edge_names import edge_names
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.lettering import words_width_mm
from gaugerod.sheets.mark_words import mark_word
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.slope_labels import (
    across_labels,
    eaves_labels,
    left_rod_labels,
    opening_letter,
    right_labels,
    station_labels,
)
from gaugerod.sheets.slope_lines import slope_extent_mm, slope_paths

NUMBER_SIZE_MM = 2.6
_NUMBER_LANE_MM = 2 * words_width_mm("0", NUMBER_SIZE_MM) + 3.0


_RIGHT_LINE_MM = 3.0
_AIR_MM = 4.0
"""Between the slope and the lanes above and below it; the end labels of the upright lanes may use it."""
_LANE_STEP_MM = LEVEL_LANE_MM + 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Margins:
    """Paper kept for the lanes on each side."""

    left_mm: float
    right_mm: float
    top_mm: float
    bottom_mm: float


def slope_drawing(slope: SlopeResult, *, unit: LengthUnit, room_width_mm: float, room_height_mm: float) -> Placed:
    """The slope drawn as large as the room on the paper allows, at a standard scale."""
    left, right = left_rod_labels(slope, unit=unit), right_labels(slope, unit=unit)
    below = [
        lane
        for labels in (across_labels(slope, unit=unit), eaves_labels(slope, unit=unit))
        for lane in split_to_fit(labels, room_mm=room_width_mm)
    ]
    margins = Margins(
        left_mm=_NUMBER_LANE_MM + upright_lane_width_mm(left),
        right_mm=_RIGHT_LINE_MM + upright_lane_width_mm(right),
        top_mm=_AIR_MM + LEVEL_LANE_MM,
        bottom_mm=_AIR_MM + len(below) * _LANE_STEP_MM,
    )
    paper, slack_mm = _paper(
        slope,
        margins=margins,
        upright_mm=max(len(left), len(right)) * LABEL_HEIGHT_MM,
        room_width_mm=room_width_mm,
        room_height_mm=room_height_mm,
    )
    low, _ = slope_extent_mm(slope)
    stations = station_labels(slope, unit=unit, room_mm=room_width_mm)
    lanes = (
        *_upright_lanes(slope, left, right, paper=paper, slack_mm=slack_mm),
        *_level_lanes(slope, stations, below, paper=paper, slack_mm=slack_mm),
    )
    own_words = (
        *_batten_numbers(slope, left_x_mm=low[0], scale_ratio=paper.scale_ratio),
        *_opening_letters(slope, scale_ratio=paper.scale_ratio),
        *edge_names(slope, paper=paper),
    )
    drawing = Drawing(
        title=f"{slope_heading(slope.slope.name)}, looking square on to it",
        says=_said(slope, unit=unit),
        paths=slope_paths(slope),
        words=own_words + tuple(words for lane in lanes for words in lane.words),
        leaders=tuple(leader for lane in lanes for leader in lane.leaders),
    )
    return Placed(drawing=drawing, paper=paper)


def _upright_lanes(
    slope: SlopeResult, left: list[Label], right: list[Label], *, paper: Paper, slack_mm: float
) -> tuple[Lane, Lane]:
    """The lanes beside the slope, kept clear of those above and below it."""
    low, high = slope_extent_mm(slope)
    ratio = paper.scale_ratio
    between_mm = (low[1] / ratio - _AIR_MM - slack_mm, high[1] / ratio + _AIR_MM + slack_mm)
    return (
        upright_lane(
            left,
            side="left",
            line_x_mm=low[0],
            off_paper_mm=_NUMBER_LANE_MM,
            between_paper_mm=between_mm,
            scale_ratio=ratio,
        ),
        upright_lane(
            right,
            side="right",
            line_x_mm=high[0],
            off_paper_mm=_RIGHT_LINE_MM,
            between_paper_mm=between_mm,
            scale_ratio=ratio,
        ),
    )


def _level_lanes(
    slope: SlopeResult, stations: list[Label], below: list[list[Label]], *, paper: Paper, slack_mm: float
) -> list[Lane]:
    """The stations above the slope; lengths along the eaves below it, lane under lane."""
    low, high = slope_extent_mm(slope)
    between_mm = (-paper.origin_paper_mm[0], paper.width_mm - paper.origin_paper_mm[0])
    off_mm = _AIR_MM + slack_mm
    above = level_lane(
        stations,
        side="above",
        line_y_mm=high[1],
        line_from_mm=None,
        off_paper_mm=off_mm,
        between_paper_mm=between_mm,
        scale_ratio=paper.scale_ratio,
    )
    return [above] + [
        level_lane(
            labels,
            side="below",
            line_y_mm=low[1],
            line_from_mm=0.0,
            off_paper_mm=off_mm + number * _LANE_STEP_MM,
            between_paper_mm=between_mm,
            scale_ratio=paper.scale_ratio,
        )
        for number, labels in enumerate(below)
    ]


def _paper(
    slope: SlopeResult, *, margins: Margins, upright_mm: float, room_width_mm: float, room_height_mm: float
) -> tuple[Paper, float]:
    """The paper, and how much it was stretched above and below so that the upright lanes have room."""
    low, high = slope_extent_mm(slope)
    across_mm = room_width_mm - margins.left_mm - margins.right_mm
    ratio = largest_scale_ratio(
        model_width_mm=high[0] - low[0],
        model_height_mm=high[1] - low[1],
        width_mm=across_mm,
        height_mm=room_height_mm - margins.top_mm - margins.bottom_mm,
    )
    high_mm = (high[1] - low[1]) / ratio
    slack_mm = max(0.0, upright_mm - high_mm - 2 * _AIR_MM) / 2
    spare_mm = across_mm - (high[0] - low[0]) / ratio
    paper = Paper(
        width_mm=room_width_mm,
        height_mm=high_mm + margins.top_mm + margins.bottom_mm + 2 * slack_mm,
        scale_ratio=ratio,
        origin_paper_mm=(
            margins.left_mm + spare_mm / 2 - low[0] / ratio,
            margins.bottom_mm + slack_mm - low[1] / ratio,
        ),
    )
    return paper, slack_mm


def _batten_numbers(slope: SlopeResult, *, left_x_mm: float, scale_ratio: float) -> tuple[Words, ...]:
    """Every fifth batten's number, tenth where fifths would touch, and the first and last, beside the left side."""
    marks_mm = slope.courses.rods[0].marks_mm
    room_mm = 1.1 * NUMBER_SIZE_MM * scale_ratio
    gauge_mm = slope.courses.rods[0].gauge_mm
    every = next((step for step in (1, 5, 10, 20, 50) if step * gauge_mm >= room_mm), len(marks_mm))
    last = len(marks_mm)
    kept = [number for number in range(every, last, every) if marks_mm[last - 1] - marks_mm[number - 1] >= room_mm]
    if kept and kept[0] != 1 and marks_mm[kept[0] - 1] - marks_mm[0] < room_mm:
        kept = kept[1:]
    first = [1] if marks_mm[-1] - marks_mm[0] >= room_mm else []
    numbers = sorted({last, *first, *kept})
    return tuple(
        Words(
            at_mm=(left_x_mm, marks_mm[number - 1]),
            text=f"{number}",
            letter=Letter.NAME,
            size_paper_mm=NUMBER_SIZE_MM,
            anchor=Anchor.END,
            shift_paper_mm=(-1.0, -0.34 * NUMBER_SIZE_MM),
        )
        for number in numbers
    )


def _opening_letters(slope: SlopeResult, *, scale_ratio: float) -> tuple[Words, ...]:
    words: list[Words] = []
    for index, opening in enumerate(slope.slope.openings):
        least_side_mm = min(opening.width_mm, opening.height_mm) / scale_ratio
        size_mm = max(2.0, min(6.0, 0.7 * least_side_mm))
        words.append(
            Words(
                at_mm=(opening.from_left_mm + opening.width_mm / 2, opening.up_slope_mm + opening.height_mm / 2),
                text=opening_letter(index),
                letter=Letter.KEY,
                size_paper_mm=size_mm,
                anchor=Anchor.MIDDLE,
                shift_paper_mm=(0.0, -0.36 * size_mm),
            )
        )
    return tuple(words)


def _said(slope: SlopeResult, *, unit: LengthUnit) -> str:
    """The picture in words."""
    rods = slope.courses.rods
    count = max(len(rod.marks_mm) for rod in rods)
    parts = [
        f"{slope_heading(slope.slope.name)} drawn to scale, square on.",
        f"{bare_length(slope.slope.taped.eaves_mm, unit)} along the eaves.",
        (
            f"{counted(count, mark_word(slope))}, the first at {bare_length(rods[0].marks_mm[0], unit)} and the top one at "
            f"{bare_length(rods[0].marks_mm[-1], unit)} on the left rod, gauge {fine_length(rods[0].gauge_mm, unit)}."
        ),
    ]
    parts += [
        f"Opening {opening_letter(index)}, {opening.name}: {bare_length(opening.width_mm, unit)} wide, "
        f"{bare_length(opening.height_mm, unit)} high, {bare_length(opening.from_left_mm, unit)} from the left end, "
        f"sill at {bare_length(opening.up_slope_mm, unit)}."
        for index, opening in enumerate(slope.slope.openings)
    ]
    return " ".join(parts)
