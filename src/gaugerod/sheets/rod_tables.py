"""The rod tables: every batten of every station, to read, mark and tick off."""

from collections.abc import Iterator
from itertools import pairwise

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult
from gaugerod.job.rod_marks import UNDER_EAVES, rod_marks
from gaugerod.setting_out.courses import Courses, Rod, Strategy
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.mark_words import mark_word
from gaugerod.sheets.shared_rods import different_rods, rod_name, rod_stands
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table
from gaugerod.sheets.slate_cells import slate_cells

TICK = "☐"
OUTSIDE = "▲"
_ROW_MM = 6.4
_SET_COUNT = 10


def rod_tables(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Block, ...]:
    """A heading and a table for every rod that differs, then the readings in sets of ten."""
    blocks: list[Block] = []
    for numbers in different_rods(slope):
        index = numbers[0] - 1
        rod = slope.courses.rods[index]
        name = rod_name(numbers)
        beside = _beside_count(slope, len(rod.marks_mm), unit)
        lines = -(-(len(rod.marks_mm) + 2) // beside)
        blocks += [
            Heading(
                text=f"{name[:1].upper()}{name[1:]}: {rod_stands(slope, numbers, unit=unit)}, "
                f"{write_length(rod.length_mm, unit)} to the apex",
                kept_mm=min(26.0 + lines * _ROW_MM, 200.0),
            ),
            Prose(text=" ".join(_reading(slope, index, unit))),
            _rod_table(slope, index, beside_count=beside, unit=unit),
        ]
    if any(len(rod.marks_mm) > _SET_COUNT for rod in slope.courses.rods):
        blocks += [
            Heading(text="Check in sets of ten", kept_mm=60.0),
            Prose(text=f"Ten gauges measured in one go, {_FROM_TO[mark_word(slope)]}."),
            _sets_of_ten(slope, unit=unit),
        ]
    return tuple(blocks)


_FROM_TO: dict[str, str] = {
    "batten": "batten to batten, top edge to top edge",
    "nail line": "nail line to nail line",
}


def _beside_count(slope: SlopeResult, count: int, unit: LengthUnit) -> int:
    """How many tables side by side: as many as their columns leave room for."""
    if slope.diminishing is not None:
        return 1 if unit is LengthUnit.FT_IN else 2
    return 2 if unit is LengthUnit.FT_IN or count <= 24 else 3


def _reading(slope: SlopeResult, index: int, unit: LengthUnit) -> Iterator[str]:
    """What a mark is, how it is read, and what the rows beside the full courses are."""
    yield (
        f"{_marks_are(slope)}, up the slope from the outer face of the fascia. Hook on once and read every mark "
        "from there; the gap is for checking only."
    )
    if len(slope.courses.rods) == 1:
        yield (
            "Read it on any rafter that starts at the fascia; one beside a hip takes as many of the marks as it is long. "
            "The lines run level."
        )
    kept_count = slope.courses.rods[index].kept_count
    if kept_count:
        yield f"Battens 1 to {kept_count} are nailed already and stay."
    if any(OUTSIDE in gap for gap in _gaps(slope, index, unit)):
        yield f"A gap with {OUTSIDE} is outside the gauge range: the findings say what to do."
    if slope.diminishing is not None:
        under = write_length(slope.diminishing.under_eaves_length_mm, unit)
        yield f"Eaves is the course under the first one, slates cut to {under}. The lap is over the slate two below."
    if slope.double_lap is not None:
        under = write_length(slope.double_lap.under_eaves_length_mm, unit)
        yield f"Eaves is the course under the first one, units {under} long."
        short = slope.double_lap.rods[index].short
        if short is not None:
            yield f"Top is the short course below the ridge, units {write_length(short.length_mm, unit)} long."


def _marks_are(slope: SlopeResult) -> str:
    """What a mark is: the top edge of a batten, or the line of the nails."""
    if slope.diminishing is not None:
        return "Peg or nail line of every course"
    if mark_word(slope) == "nail line":
        return "Nail line of every course"
    return "Top edge of every batten"


def _gaps(slope: SlopeResult, index: int, unit: LengthUnit) -> tuple[str, ...]:
    """The gap below each mark of the rod, with its sign where it is outside the gauge range."""
    courses, rod, marks = slope.courses, slope.courses.rods[index], rod_marks(slope, index)
    signs = {f"{gap + 2}": f"{OUTSIDE} " for gap in range(len(rod.gaps_mm)) if _outside(courses, rod, gap)}
    return (
        "",
        *(
            f"{signs.get(upper.name, '')}{bare_length(upper.mark_mm - lower.mark_mm, unit)}"
            for lower, upper in pairwise(marks)
        ),
    )


def _outside(courses: Courses, rod: Rod, gap: int) -> bool:
    """Is this gap, counted from 0 at the eaves, wider or closer than the covering allows?

    The last may be as close as it likes where the top course is cut at its head. Diminishing courses have no one range.
    """
    gap_mm, cut_there = rod.gaps_mm[gap], courses.strategy is Strategy.PARALLEL and gap == len(rod.gaps_mm) - 1
    too_close = courses.gauge_min_mm is not None and not cut_there and gap_mm < courses.gauge_min_mm - TOUCH
    return too_close or gap_mm > courses.gauge_max_mm + TOUCH


def _rod_table(slope: SlopeResult, index: int, *, beside_count: int, unit: LengthUnit) -> Table:
    marks = rod_marks(slope, index)
    figures = ColumnKind.FIGURES
    # A table by itself is no wider than its words, so that number, mark and box stay together.
    share_ratio = 1.0 if beside_count > 1 else 0.0
    columns = [
        Column(heading="Course" if marks[0].name == UNDER_EAVES else "Batten", kind=figures),
        Column(heading=f"Mark, {unit_heading(unit)}", kind=ColumnKind.MARK, share_ratio=share_ratio),
        Column(heading="Gap", kind=figures),
    ]
    cells = [
        (mark.name, bare_length(mark.mark_mm, unit), gap)
        for mark, gap in zip(marks, _gaps(slope, index, unit), strict=True)
    ]
    if slope.diminishing is None:
        slates: tuple[tuple[str, ...], ...] = ((),) * len(marks)
    else:
        slates = slate_cells(slope.diminishing, index, unit=unit)
        columns += [Column(heading=heading, kind=figures) for heading in ("Slate", "Shows", "Lap")]
    ticks = ["kept" if mark.kept else TICK for mark in marks]
    return Table(
        columns=(*columns, Column(heading="Done", kind=ColumnKind.TICK)),
        rows=tuple((*cell, *slate, tick) for cell, slate, tick in zip(cells, slates, ticks, strict=True)),
        beside_count=beside_count,
        set_count=5,
        before_sets_count=int(marks[0].name == UNDER_EAVES),
    )


def _sets_of_ten(slope: SlopeResult, *, unit: LengthUnit) -> Table:
    rods = slope.courses.rods
    most = max(len(rod.marks_mm) for rod in rods)
    starts = range(0, most - 1, _SET_COUNT)
    return Table(
        columns=(
            Column(heading=f"{mark_word(slope).capitalize()}s"),
            *(
                Column(heading=f"Rod {number}, {unit_heading(unit)}", kind=ColumnKind.MARK)
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
