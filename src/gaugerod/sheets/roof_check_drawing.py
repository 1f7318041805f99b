"""The checked roof to scale: every batten where it was measured, short laps flagged by a barred triangle and in words.

Nothing is told by colour: a short lap has its own shape on the rod and its words beside; what is stripped is hatched.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from gaugerod.as_built.evenness import Spacing
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.roof_check import RodAsBuilt, RoofCheck
from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.slope_called import slope_heading
from gaugerod.sheets.dimension_lanes import LABEL_HEIGHT_MM, Label, upright_lane, upright_lane_width_mm
from gaugerod.sheets.drawing import Anchor, Drawing, Letter, Paper, Path, Pen, Point, Words, largest_scale_ratio
from gaugerod.sheets.lengths_shown import bare_length, fine_length
from gaugerod.sheets.placed import Placed

_STUB_MM = 300.0
"""A single place measured is drawn with this much batten to each side of its rod."""
_AIR_MM = 9.0
_SIDE_MM = 4.0
_FLAG_MM = 2.4
_NAME_MM = 2.6


def roof_check_drawing(
    check: RoofCheck, *, unit: LengthUnit, room_width_mm: float, room_height_mm: float, numbers_only: bool = False
) -> Placed:
    """The rods with their marks, at a standard scale, as large as the room on the paper allows.

    ``numbers_only``  on a phone: the short laps are numbered as they leak, for the list beside them to tell the rest
    """
    left, right = _end_labels(check, unit=unit), _short_labels(check, unit=unit)
    if numbers_only:
        left, right = left[3:], [replace(each, name="leak", value=f"{rank}") for rank, each in _ranked(check, right)]
    most = int((room_height_mm - 2.0) // LABEL_HEIGHT_MM)
    shown = right[:most]
    low, high = _extent_mm(check)
    margins_mm = (_SIDE_MM + upright_lane_width_mm(left), _SIDE_MM + upright_lane_width_mm(shown))
    ratio = largest_scale_ratio(
        model_width_mm=high[0] - low[0],
        model_height_mm=high[1] - low[1],
        width_mm=room_width_mm - sum(margins_mm),
        height_mm=room_height_mm - 2 * _AIR_MM,
    )
    roof_mm = (high[1] - low[1]) / ratio
    height_mm = max(roof_mm + 2 * _AIR_MM, max(len(left), len(shown)) * LABEL_HEIGHT_MM + 2.0)
    paper = Paper(
        width_mm=(high[0] - low[0]) / ratio + sum(margins_mm),
        height_mm=height_mm,
        scale_ratio=ratio,
        origin_paper_mm=(margins_mm[0] - low[0] / ratio, (height_mm - roof_mm) / 2 - low[1] / ratio),
    )
    between_mm = (1.0 - paper.origin_paper_mm[1], height_mm - 1.0 - paper.origin_paper_mm[1])
    lanes = (
        upright_lane(
            left, side="left", line_x_mm=low[0], off_paper_mm=_SIDE_MM, between_paper_mm=between_mm, scale_ratio=ratio
        ),
        upright_lane(
            shown,
            side="right",
            line_x_mm=high[0],
            off_paper_mm=_SIDE_MM,
            between_paper_mm=between_mm,
            scale_ratio=ratio,
        ),
    )
    return Placed(
        drawing=Drawing(
            title=f"{slope_heading(check.ask.where)} as built",
            says=_said(check, unit=unit),
            paths=tuple(_paths(check, scale_ratio=ratio)),
            words=(*_rod_words(check, unit=unit), *(words for lane in lanes for words in lane.words)),
            leaders=tuple(leader for lane in lanes for leader in lane.leaders),
        ),
        paper=paper,
    )


def _extent_mm(check: RoofCheck) -> tuple[Point, Point]:
    first, last = check.rods[0], check.rods[-1]
    low_mm = min(rod.tails_mm[0] for rod in check.rods)
    return (
        (first.at_mm - _STUB_MM, min(low_mm, 0.0)),
        (last.at_mm + _STUB_MM, max(rod.length_mm for rod in check.rods)),
    )


def _across_mm(check: RoofCheck, heights_mm: Sequence[float]) -> tuple[Point, ...]:
    """A line through one height at each rod, level for a stub past the outermost."""
    rods = check.rods
    inner = [(rod.at_mm, height) for rod, height in zip(rods, heights_mm, strict=True)]
    return ((rods[0].at_mm - _STUB_MM, heights_mm[0]), *inner, (rods[-1].at_mm + _STUB_MM, heights_mm[-1]))


def _paths(check: RoofCheck, *, scale_ratio: float) -> Iterator[Path]:
    eaves, ridge = ([0.0] * len(check.rods)), [rod.length_mm for rod in check.rods]
    tails = _across_mm(check, [rod.tails_mm[0] for rod in check.rods])
    yield Path(pen=Pen.OVERHANG, runs_mm=(tails,))
    battens = [_across_mm(check, heights) for heights in zip(*(rod.marks_mm for rod in check.rods), strict=True)]
    fifths = tuple(line for number, line in enumerate(battens, 1) if number % 5 == 0)
    yield Path(pen=Pen.BATTEN, runs_mm=tuple(line for number, line in enumerate(battens, 1) if number % 5))
    if fifths:
        yield Path(pen=Pen.FIFTH_BATTEN, runs_mm=fifths)
    yield Path(pen=Pen.ROD, runs_mm=tuple(((rod.at_mm, 0.0), (rod.at_mm, rod.length_mm)) for rod in check.rods))
    yield Path(pen=Pen.OUTLINE, runs_mm=(_across_mm(check, eaves), _across_mm(check, ridge)))
    cure = check.strip_back
    if cure is not None and cure.strip_count:
        yield Path(pen=Pen.OVERHANG, runs_mm=_stripped(check, cure.keep_count, scale_ratio=scale_ratio))
    short = [(rod, lap) for rod in check.rods for lap in rod.laps if lap.is_short]
    if short:
        yield Path(pen=Pen.CUT, runs_mm=tuple(_bar(rod, lap) for rod, lap in short))
        triangles = tuple(_triangle(rod, lap, scale_ratio=scale_ratio) for rod, lap in short)
        yield Path(pen=Pen.OPENING, runs_mm=triangles, closed=True)


def _bar(rod: RodAsBuilt, lap: LapAsBuilt) -> tuple[Point, ...]:
    """Heavy on the rod, from the lower batten of the short lap to the upper."""
    return ((rod.at_mm, rod.marks_mm[lap.over - 1]), (rod.at_mm, rod.marks_mm[lap.course - 1]))


def _triangle(rod: RodAsBuilt, lap: LapAsBuilt, *, scale_ratio: float) -> tuple[Point, ...]:
    """Point up, in the middle of the gap: there the lap is short."""
    middle_mm = (rod.marks_mm[lap.over - 1] + rod.marks_mm[lap.course - 1]) / 2
    half_mm = _FLAG_MM / 2 * scale_ratio
    return (
        (rod.at_mm - half_mm, middle_mm - half_mm),
        (rod.at_mm + half_mm, middle_mm - half_mm),
        (rod.at_mm, middle_mm + half_mm),
    )


def _stripped(check: RoofCheck, keep: int, *, scale_ratio: float) -> tuple[tuple[Point, ...], ...]:
    """Slanting strokes from the last batten kept up to the top one: what comes off."""
    step_mm = 6.0 * scale_ratio
    strokes: list[tuple[Point, ...]] = []
    for left, right in _bays(check):
        low_mm = [0.0 if not keep else rod.marks_mm[keep - 1] for rod in (left[1], right[1])]
        high_mm = [rod.marks_mm[-1] for rod in (left[1], right[1])]
        count = max(1, int((right[0] - left[0]) // step_mm))
        for number in range(count):
            foot, head = number / count, (number + 0.5) / count
            strokes.append(
                (
                    (left[0] + foot * (right[0] - left[0]), low_mm[0] + foot * (low_mm[1] - low_mm[0])),
                    (left[0] + head * (right[0] - left[0]), high_mm[0] + head * (high_mm[1] - high_mm[0])),
                )
            )
    return tuple(strokes)


def _bays(check: RoofCheck) -> Iterator[tuple[tuple[float, RodAsBuilt], tuple[float, RodAsBuilt]]]:
    """From each place along the eaves to the next, the stubs at both ends included, each with the rod it goes by."""
    rods = check.rods
    places = [
        (rods[0].at_mm - _STUB_MM, rods[0]),
        *((rod.at_mm, rod) for rod in rods),
        (rods[-1].at_mm + _STUB_MM, rods[-1]),
    ]
    yield from pairwise(places)


def _end_labels(check: RoofCheck, *, unit: LengthUnit) -> list[Label]:
    """First and top batten, apex, and the batten to strip back to, off the left rod."""
    rod = check.rods[0]
    labels = [
        Label(at_mm=(rod.at_mm, rod.marks_mm[0]), name="first batten", value=bare_length(rod.marks_mm[0], unit)),
        Label(at_mm=(rod.at_mm, rod.marks_mm[-1]), name="last batten", value=bare_length(rod.marks_mm[-1], unit)),
        Label(at_mm=(rod.at_mm, rod.length_mm), name="apex", value=bare_length(rod.length_mm, unit)),
    ]
    cure = check.strip_back
    if cure is not None and cure.strip_count and cure.keep_count > 1:
        mark_mm = rod.marks_mm[cure.keep_count - 1]
        labels.append(
            Label(
                at_mm=(rod.at_mm, mark_mm), name=f"keep to batten {cure.keep_count}", value=bare_length(mark_mm, unit)
            )
        )
    return labels


def _short_labels(check: RoofCheck, *, unit: LengthUnit) -> list[Label]:
    """Each short lap in the order it leaks, then each course forced in or stretched, at their heights on the right rod."""
    rod = check.rods[-1]
    short = [
        Label(
            at_mm=(rod.at_mm, (rod.marks_mm[leak.lap.over - 1] + rod.marks_mm[leak.lap.course - 1]) / 2),
            name=f"leak {leak.rank}: lap {leak.lap.course} over {leak.lap.over}",
            value=f"{'open' if leak.is_open else 'short'} {_out(leak.lap, unit=unit)}",
        )
        for leak in check.leaks
    ]
    named = {leak.lap.course for leak in check.leaks}
    uneven: list[Label] = []
    for index, gap in enumerate(rod.even.gaps):
        kinds = {each.even.gaps[index].spacing for each in check.rods} & {Spacing.FORCED_IN, Spacing.STRETCHED}
        if kinds and gap.upper not in named:
            kind = min(kinds)
            middle_mm = (rod.marks_mm[index] + rod.marks_mm[index + 1]) / 2
            uneven.append(
                Label(at_mm=(rod.at_mm, middle_mm), name=f"battens {gap.lower} to {gap.upper}", value=kind.value)
            )
    return short + uneven


def _ranked(check: RoofCheck, labels: Sequence[Label]) -> Iterator[tuple[int, Label]]:
    """The labels of the short laps with their numbers."""
    return zip((leak.rank for leak in check.leaks), labels, strict=False)


def _out(lap: LapAsBuilt, *, unit: LengthUnit) -> str:
    """How far it is out, said no kinder than it is."""
    out_mm = -lap.lap_mm if lap.lap_mm < 0 else lap.short_by_mm
    return fine_length(out_mm, unit, towards=Sense.AT_MOST)


def _rod_words(check: RoofCheck, *, unit: LengthUnit) -> tuple[Words, ...]:
    """Above each rod where it stands along the eaves."""
    return tuple(
        Words(
            at_mm=(rod.at_mm, rod.length_mm),
            text=f"{bare_length(rod.at_mm, unit)}",
            letter=Letter.NAME,
            size_paper_mm=_NAME_MM,
            anchor=Anchor.MIDDLE,
            shift_paper_mm=(0.0, 2.0),
        )
        for rod in check.rods
    )


def _said(check: RoofCheck, *, unit: LengthUnit) -> str:
    """The picture in words."""
    places = "1 place" if len(check.rods) == 1 else f"{len(check.rods)} places"
    parts = [
        f"{slope_heading(check.ask.where)} drawn to scale, square on: {check.courses_count} courses measured at {places}."
    ]
    parts += [
        f"{'Open' if leak.is_open else 'Short'} lap, course {leak.lap.course} over {leak.lap.over}: "
        f"{_out(leak.lap, unit=unit)}, number {leak.rank} to leak."
        for leak in check.leaks
    ]
    if not check.leaks:
        parts.append("No lap is short.")
    if check.strip_back is not None:
        parts.append(check.strip_back.says)
    return " ".join(parts)
