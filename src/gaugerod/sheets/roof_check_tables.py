"""The tables of a roof check: every lap, how even the courses are, their lines across the roof, and the new marks."""

from collections.abc import Iterator, Sequence
from typing import TypeVar

from gaugerod.as_built.evenness import GapAsBuilt, Spacing
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.needed import TOP_EDGE
from gaugerod.as_built.roof_check import RodAsBuilt, RoofCheck
from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.courses import Rod
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length, fine_length, unit_heading
from gaugerod.sheets.sheet import Column, ColumnKind, Table

Place = TypeVar("Place", RodAsBuilt, Rod)

_PLACES_COUNT = 4
"""Places side by side in one table."""


def _side_by_side(rods: Sequence[Place], *, most_count: int = _PLACES_COUNT) -> Iterator[Sequence[Place]]:
    """The places, as many together as a table can hold."""
    for first in range(0, len(rods), most_count):
        yield rods[first : first + most_count]


def new_mark_tables(check: RoofCheck, *, unit: LengthUnit) -> Iterator[Table]:
    """Where every course goes after the strip-back: its mark; of slates its tail, for that is what can be struck."""
    cure = check.strip_back
    if cure is None or cure.courses is None:
        return
    slates = check.needed.marks_are != TOP_EDGE
    down_mm = check.needed.afresh.hanging_length_mm if slates else 0.0
    what = "Tail" if slates else "Top edge of batten"
    for shown in _side_by_side(cure.courses.rods):
        yield Table(
            columns=(
                Column(heading="Course", kind=ColumnKind.FIGURES),
                Column(heading="Kept or new"),
                *(
                    Column(
                        heading=f"{what}, at {bare_length(rod.at_mm, unit)} ({unit_heading(unit)})",
                        kind=ColumnKind.MARK,
                    )
                    for rod in shown
                ),
            ),
            rows=tuple(
                (
                    f"{number}",
                    "kept" if number <= cure.keep_count else "new",
                    *(bare_length(mark_mm - down_mm, unit) for mark_mm in marks_mm),
                )
                for number, marks_mm in enumerate(zip(*(rod.marks_mm for rod in shown), strict=True), 1)
            ),
            set_count=5,
        )


def lap_tables(check: RoofCheck, *, unit: LengthUnit) -> Iterator[Table]:
    """Every lap at every place, with what is short and by how much."""
    for shown in _side_by_side(check.rods):
        yield Table(
            columns=(
                Column(heading="Course"),
                *(Column(heading=f"At {bare_length(rod.at_mm, unit)}", kind=ColumnKind.FIGURES) for rod in shown),
            ),
            rows=tuple(
                (f"{laps[0].course} over {laps[0].over}", *(_lap_said(lap, unit=unit) for lap in laps))
                for laps in zip(*(rod.laps for rod in shown), strict=True)
            ),
            set_count=5,
        )


def _lap_said(lap: LapAsBuilt, *, unit: LengthUnit) -> str:
    if lap.lap_mm < 0:
        return f"▲ open by {fine_length(-lap.lap_mm, unit, towards=Sense.AT_MOST)}"
    shown = fine_length(lap.lap_mm, unit, towards=Sense.AT_LEAST)
    if lap.is_short:
        return f"▲ {shown}, short {fine_length(lap.short_by_mm, unit, towards=Sense.AT_MOST)}"
    if lap.short_of_edition_mm:
        return f"◇ {shown}, {fine_length(lap.short_of_edition_mm, unit, towards=Sense.AT_MOST)} under the edition's"
    return shown


def gap_tables(check: RoofCheck, *, unit: LengthUnit) -> Iterator[Table]:
    """From each course to the next at every place, and how far the upper one is from its place in equal gauges."""
    for shown in _side_by_side(check.rods, most_count=2):
        columns = [Column(heading="Courses")]
        for rod in shown:
            place = f"at {bare_length(rod.at_mm, unit)}"
            columns.append(Column(heading=f"Gap {place}", kind=ColumnKind.FIGURES))
            columns.append(Column(heading=f"Run out {place}", kind=ColumnKind.FIGURES))
        yield Table(
            columns=tuple(columns),
            rows=tuple(
                (
                    f"{gaps[0].lower} to {gaps[0].upper}",
                    *(cell for gap in gaps for cell in (_gap_said(gap, unit=unit), _run_out_said(gap, unit=unit))),
                )
                for gaps in zip(*(rod.even.gaps for rod in shown), strict=True)
            ),
            set_count=5,
        )


def _gap_said(gap: GapAsBuilt, *, unit: LengthUnit) -> str:
    shown = bare_fine_length(gap.gap_mm, unit)
    return shown if gap.spacing is Spacing.EVEN else f"{shown}, {gap.spacing.value}"


def _run_out_said(gap: GapAsBuilt, *, unit: LengthUnit) -> str:
    """Above its place in equal gauges is +."""
    shown = bare_fine_length(gap.run_out_mm, unit)
    return f"+{shown}" if gap.run_out_mm > 0 and shown != "0" else shown.replace("-", "−")


def line_tables(check: RoofCheck, *, unit: LengthUnit) -> Iterator[Table]:
    """Every course across the places measured: how far out of parallel with the eaves, and with the course below."""
    if check.lines:
        yield Table(
            columns=(
                Column(heading="Course"),
                Column(heading="Off the eaves line", kind=ColumnKind.FIGURES),
                Column(heading="Opens against the course below", kind=ColumnKind.FIGURES),
            ),
            rows=tuple(
                (
                    f"{line.course}",
                    bare_fine_length(line.out_of_parallel_mm, unit),
                    bare_fine_length(line.opens_mm, unit),
                )
                for line in check.lines
            ),
            set_count=5,
        )
