"""The slope to scale: every batten line, the perps, the openings, and each dimension beside what it measures."""

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.said import counted
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Words
from gaugerod.sheets.edge_names import edge_names
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.lettering import words_width_mm
from gaugerod.sheets.mark_words import mark_word
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.plan_frame import Beside, lanes_below, plan_frame
from gaugerod.sheets.slope_labels import (
    across_labels,
    eaves_labels,
    left_rod_labels,
    opening_letter,
    opening_letters,
    right_labels,
    station_labels,
)
from gaugerod.sheets.slope_lines import slope_extent_mm, slope_paths

NUMBER_SIZE_MM = 2.6
_NUMBER_LANE_MM = 2 * words_width_mm("0", NUMBER_SIZE_MM) + 3.0


def slope_drawing(slope: SlopeResult, *, unit: LengthUnit, room_width_mm: float, room_height_mm: float) -> Placed:
    """The slope drawn as large as the room on the paper allows, at a standard scale."""
    low_mm, high_mm = slope_extent_mm(slope)
    beside = Beside(
        left=tuple(left_rod_labels(slope, unit=unit)),
        right=tuple(right_labels(slope, unit=unit)),
        above=tuple(station_labels(slope, unit=unit, room_mm=room_width_mm)),
        below=lanes_below(across_labels(slope, unit=unit), eaves_labels(slope, unit=unit), room_width_mm=room_width_mm),
        numbers_mm=_NUMBER_LANE_MM,
    )
    frame = plan_frame(
        low_mm=low_mm, high_mm=high_mm, beside=beside, room_width_mm=room_width_mm, room_height_mm=room_height_mm
    )
    paper, lanes = frame.paper, frame.lanes()
    own_words = (
        *_batten_numbers(slope, left_x_mm=low_mm[0], scale_ratio=paper.scale_ratio),
        *opening_letters(slope, scale_ratio=paper.scale_ratio),
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
