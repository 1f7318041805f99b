"""The rod tables: every batten of every station, to read, mark and tick off."""

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.courses import Courses, Rod, Strategy
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.shared_rods import different_rods, rod_name
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table

TICK = "☐"
OUTSIDE = "▲"
_ROW_MM = 6.4
_SET_COUNT = 10


def rod_tables(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Block, ...]:
    """A heading and a table for every rod that differs, then the readings in sets of ten."""
    blocks: list[Block] = []
    for numbers in different_rods(slope):
        rod = slope.courses.rods[numbers[0] - 1]
        places = " and ".join(write_length(slope.courses.rods[number - 1].at_mm, unit) for number in numbers)
        name = rod_name(numbers)
        beside = 2 if unit is LengthUnit.FT_IN or len(rod.marks_mm) <= 24 else 3
        lines = -(-len(rod.marks_mm) // beside)
        blocks += [
            Heading(
                text=f"{name[:1].upper()}{name[1:]}: {places} from the left end, "
                f"{write_length(rod.length_mm, unit)} to the apex",
                kept_mm=min(26.0 + lines * _ROW_MM, 200.0),
            ),
            Prose(text=_reading(slope, rod)),
            _rod_table(slope.courses, rod, beside_count=beside, unit=unit),
        ]
    if any(len(rod.marks_mm) > _SET_COUNT for rod in slope.courses.rods):
        blocks += [
            Heading(text="Check in sets of ten"),
            Prose(text="Ten gauges measured in one go, batten to batten, top edge to top edge."),
            _sets_of_ten(slope, unit=unit),
        ]
    return tuple(blocks)


def _reading(slope: SlopeResult, rod: Rod) -> str:
    reading = (
        f"{_marks_are(slope)}, up the slope from the outer face of the fascia. Hook on once and read every mark "
        "from there; the gap is for checking only."
    )
    if rod.kept_count:
        reading += f" Battens 1 to {rod.kept_count} are nailed already and stay."
    if any(_outside(slope.courses, rod, gap) for gap in range(len(rod.gaps_mm))):
        reading += f" A gap with {OUTSIDE} is outside the gauge range: the findings say what to do."
    return reading


def _outside(courses: Courses, rod: Rod, gap: int) -> bool:
    """Is this gap, counted from 0 at the eaves, wider or closer than the covering allows?

    The last may be as close as it likes where the top course is cut at its head. Diminishing courses have no one range.
    """
    gap_mm, cut_there = rod.gaps_mm[gap], courses.strategy is Strategy.PARALLEL and gap == len(rod.gaps_mm) - 1
    too_close = courses.gauge_min_mm is not None and not cut_there and gap_mm < courses.gauge_min_mm - TOUCH
    return too_close or gap_mm > courses.gauge_max_mm + TOUCH


def _marks_are(slope: SlopeResult) -> str:
    """What a mark is: the top edge of a batten, or the line of the nails."""
    if slope.diminishing is not None:
        return "Peg or nail line of every course"
    if slope.double_lap is not None and slope.double_lap.marks_are == "nail line":
        return "Nail line of every full course"
    return "Top edge of every batten"


def _rod_table(courses: Courses, rod: Rod, *, beside_count: int, unit: LengthUnit) -> Table:
    wrong = [f"{OUTSIDE} " if _outside(courses, rod, gap) else "" for gap in range(len(rod.gaps_mm))]
    gaps = ("", *(f"{mark}{bare_length(gap_mm, unit)}" for mark, gap_mm in zip(wrong, rod.gaps_mm, strict=True)))
    return Table(
        columns=(
            Column(heading="Batten", kind=ColumnKind.FIGURES),
            Column(heading=f"Mark, {unit_heading(unit)}", kind=ColumnKind.MARK, share_ratio=1.0),
            Column(heading="Gap", kind=ColumnKind.FIGURES),
            Column(heading="Done", kind=ColumnKind.TICK),
        ),
        rows=tuple(
            (f"{number}", bare_length(mark_mm, unit), gap, "kept" if number <= rod.kept_count else TICK)
            for number, (mark_mm, gap) in enumerate(zip(rod.marks_mm, gaps, strict=True), start=1)
        ),
        beside_count=beside_count,
        set_count=5,
    )


def _sets_of_ten(slope: SlopeResult, *, unit: LengthUnit) -> Table:
    rods = slope.courses.rods
    most = max(len(rod.marks_mm) for rod in rods)
    starts = range(0, most - 1, _SET_COUNT)
    return Table(
        columns=(
            Column(heading="Battens"),
            *(
                Column(heading=f"Rod {number}, {unit_heading(unit)}", kind=ColumnKind.MARK, share_ratio=1.0)
                for number in range(1, len(rods) + 1)
            ),
        ),
        rows=tuple(
            (
                f"{start + 1} to {min(start + _SET_COUNT, most - 1) + 1}",
                *(_set_length(rod, start, unit) for rod in rods),
            )
            for start in starts
        ),
    )


def _set_length(rod: Rod, start: int, unit: LengthUnit) -> str:
    if start >= len(rod.marks_mm):
        return "none"
    end = min(start + _SET_COUNT, len(rod.marks_mm) - 1)
    return bare_length(rod.marks_mm[end] - rod.marks_mm[start], unit)
