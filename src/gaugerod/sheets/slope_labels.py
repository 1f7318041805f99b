"""What the dimensions of the slope drawing say, and the point each one belongs to."""

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.dimension_lanes import Label, level_lane_fits
from gaugerod.sheets.drawing import Anchor, Letter, Words
from gaugerod.sheets.key_figures import ENDS_SQUARE
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.sheets.mark_words import mark_word


def opening_letter(index: int) -> str:
    """The letter an opening goes by on the drawing: A, B … Z, then A2.

    >>> opening_letter(0), opening_letter(26)
    ('A', 'A2')
    """
    turn, place = divmod(index, 26)
    return chr(ord("A") + place) + (f"{turn + 1}" if turn else "")


def opening_letters(slope: SlopeResult, *, scale_ratio: float) -> tuple[Words, ...]:
    """The letter of every opening, in its middle."""
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


def rod_labels(slope: SlopeResult, rod: Rod, *, unit: LengthUnit) -> list[Label]:
    """First mark, gauge, top mark and apex of one rod, and the tail past the fascia."""
    mark = mark_word(slope)
    gauge_name = "gauge" if slope.diminishing is None else "gauge at most"
    first_mm, last_mm = rod.marks_mm[0], rod.marks_mm[-1]
    labels = [
        Label(at_mm=(rod.at_mm, -rod.overhang_mm), name="past fascia", value=bare_length(rod.overhang_mm, unit)),
        Label(at_mm=(rod.at_mm, first_mm), name=f"first {mark}", value=bare_length(first_mm, unit)),
        Label(at_mm=(rod.at_mm, last_mm), name=f"top {mark}", value=bare_length(last_mm, unit)),
        Label(at_mm=(rod.at_mm, rod.length_mm), name="apex", value=bare_length(rod.length_mm, unit)),
    ]
    if len(rod.marks_mm) > rod.kept_count + 1:
        from_mm = rod.marks_mm[rod.kept_count - 1] if rod.kept_count else first_mm
        gauge = bare_fine_length(rod.gauge_mm, unit)
        labels.append(Label(at_mm=(rod.at_mm, (from_mm + last_mm) / 2), name=gauge_name, value=gauge))
    return labels


def left_rod_labels(slope: SlopeResult, *, unit: LengthUnit) -> list[Label]:
    """The left rod's labels."""
    return rod_labels(slope, slope.courses.rods[0], unit=unit)


def right_labels(slope: SlopeResult, *, unit: LengthUnit) -> list[Label]:
    """The right rod's labels where it differs from the left, and sill and head of every opening."""
    labels: list[Label] = []
    left, right = slope.courses.rods[0], slope.courses.rods[-1]
    if (left.marks_mm, left.length_mm) != (right.marks_mm, right.length_mm):
        labels += rod_labels(slope, right, unit=unit)
    for index, opening in enumerate(slope.slope.openings):
        letter = opening_letter(index)
        labels += [
            Label(
                at_mm=(opening.right_mm, opening.up_slope_mm),
                name=f"{letter} sill",
                value=bare_length(opening.up_slope_mm, unit),
            ),
            Label(
                at_mm=(opening.right_mm, opening.head_mm),
                name=f"{letter} head",
                value=bare_length(opening.head_mm, unit),
            ),
        ]
    return labels


def station_labels(slope: SlopeResult, *, unit: LengthUnit, room_mm: float) -> list[Label]:
    """Every rod by its number and rafter length; by number alone where the lengths would not fit side by side."""
    labels = [
        Label(at_mm=(rod.at_mm, rod.length_mm), name=f"rod {number}", value=bare_length(rod.length_mm, unit))
        for number, rod in enumerate(slope.courses.rods, start=1)
    ]
    if level_lane_fits(labels, room_mm=room_mm):
        return labels
    return [
        Label(at_mm=(rod.at_mm, rod.length_mm), name="rod", value=f"{number}")
        for number, rod in enumerate(slope.courses.rods, start=1)
    ]


def across_labels(slope: SlopeResult, *, unit: LengthUnit) -> list[Label]:
    """Left and right of every opening, from the left end of the eaves, and stations between."""
    labels: list[Label] = []
    for index, opening in enumerate(slope.slope.openings):
        letter = opening_letter(index)
        labels += [
            Label(
                at_mm=(opening.from_left_mm, 0.0), name=f"{letter} left", value=bare_length(opening.from_left_mm, unit)
            ),
            Label(at_mm=(opening.right_mm, 0.0), name=f"{letter} right", value=bare_length(opening.right_mm, unit)),
        ]
    ends_mm = (0.0, slope.slope.taped.eaves_mm)
    labels += [
        Label(at_mm=(rod.at_mm, 0.0), name=f"rod {number}", value=bare_length(rod.at_mm, unit))
        for number, rod in enumerate(slope.courses.rods, start=1)
        if rod.at_mm not in ends_mm
    ]
    return labels


def eaves_labels(slope: SlopeResult, *, unit: LengthUnit) -> list[Label]:
    """The eaves width, how far the covering reaches past each end or stands off it, and the cover width."""
    width_mm = slope.slope.taped.eaves_mm
    eaves = Label(at_mm=(width_mm / 2, 0.0), name="along the eaves", value=bare_length(width_mm, unit))
    across = slope.across
    if across is None:
        return [eaves]
    cover = bare_fine_length(across.cover_mm, unit)
    labels = [eaves, Label(at_mm=(width_mm * 0.8, 0.0), name="cover of one", value=cover)]
    if slope.slope.left in ENDS_SQUARE:
        labels.append(_reach_label(0.0, -1.0, across.left_overhang_mm, unit))
    if slope.slope.right in ENDS_SQUARE:
        labels.append(_reach_label(width_mm, 1.0, across.right_overhang_mm, unit))
    return labels


def _reach_label(end_mm: float, sign: float, reach_mm: float, unit: LengthUnit) -> Label:
    past = reach_mm >= 0
    return Label(
        at_mm=(end_mm + sign * reach_mm, 0.0),
        name="past the end" if past else "clear of wall",
        value=bare_length(reach_mm if past else -reach_mm, unit),
    )
