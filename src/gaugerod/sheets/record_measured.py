"""What was measured, in the hand-over record: slopes as taped or drawn, buildings on plan, openings, battens already nailed."""

from collections.abc import Iterator
from itertools import pairwise
from typing import assert_never

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.geometry.plan_outline import GableWall, PitchedWall, Wall
from gaugerod.job.model import Building, Slope
from gaugerod.job.result import Result
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table

_NOT_MEASURED = "not measured"
_FIGURES = ColumnKind.FIGURES


def measured_blocks(result: Result) -> Iterator[Block]:
    """Buildings, then slopes."""
    unit, of_plans = result.job.show_lengths_in, {name for roof in result.roofs for name in roof.slope_names}
    yield Heading(text="What was measured", kept_mm=50.0)
    for building in result.job.buildings:
        yield Prose(
            text=f"{building.name}: on plan, wall by wall, anticlockwise seen from above. Its slopes, hips, valleys and ridges "
            "follow by geometry."
        )
        yield _wall_table(building, unit)
    slopes = [*(each.slope for each in result.slopes), *(each.slope for each in result.not_set_out)]
    rows = [row for slope in slopes if slope.name not in of_plans for row in _slope_rows(slope, unit)]
    if rows:
        yield Table(
            columns=(
                Column(heading="Slope", share_ratio=1.0),
                Column(heading="What", share_ratio=2.4),
                Column(heading="Measured", kind=_FIGURES, share_ratio=1.2),
            ),
            rows=tuple(rows),
        )
    yield from _openings(slopes, unit)
    yield from _nailed(slopes, unit)


def _wall_table(building: Building, unit: LengthUnit) -> Table:
    plan = building.plan
    sides = [side for ring in plan.rings_mm for side in pairwise((*ring, ring[0]))]
    return Table(
        columns=(
            Column(heading="Wall", kind=_FIGURES),
            Column(heading=f"from corner, {unit_heading(unit)}", kind=_FIGURES),
            Column(heading=f"to corner, {unit_heading(unit)}", kind=_FIGURES),
            Column(heading="On it", share_ratio=1.0),
        ),
        rows=tuple(
            (
                str(number),
                ", ".join(bare_length(each_mm, unit) for each_mm in start),
                ", ".join(bare_length(each_mm, unit) for each_mm in end),
                _on_wall(wall, unit),
            )
            for number, ((start, end), wall) in enumerate(zip(sides, plan.walls, strict=True), 1)
        ),
    )


def _on_wall(wall: Wall, unit: LengthUnit) -> str:
    match wall:
        case PitchedWall():
            said = [f"slope of {wall.pitch_deg:g}°", f"{write_length(wall.overhang_mm, unit)} overhang, level"]
            if wall.eaves_height_mm:
                said.append(f"eaves {write_length(wall.eaves_height_mm, unit)} up")
            said += [f"{step.pitch_deg:g}° from {write_length(step.rise_mm, unit)} up" for step in wall.changes]
            return "; ".join(said)
        case GableWall():
            return f"gable; {write_length(wall.overhang_mm, unit)} overhang at the verge, level"
        case _ as unreachable:
            assert_never(unreachable)


def _slope_rows(slope: Slope, unit: LengthUnit) -> Iterator[tuple[str, str, str]]:
    taped = slope.taped
    if slope.outline is not None:
        sides = zip(slope.outline.points_mm, slope.outline.kinds, strict=True)
        yield slope.name, "pitch", f"{slope.pitch_deg:.4g}°"
        for number, ((x_mm, y_mm), kind) in enumerate(sides, 1):
            along = f"corner {number}: along the eaves, up the slope; then {kind.value.replace('-', ' ')}"
            yield "", along, f"{write_length(x_mm, unit)}\n{write_length(y_mm, unit)}"
    else:
        yield slope.name, "pitch", f"{slope.pitch_deg:.4g}°"
        yield "", "along the eaves", write_length(taped.eaves_mm, unit)
        for at_mm, length_mm in taped.rafters:
            yield (
                "",
                f"rafter at {write_length(at_mm, unit)} from the left, fascia face to apex",
                write_length(length_mm, unit),
            )
        for what, tape_mm in (
            ("along the ridge", taped.ridge_mm),
            ("diagonal from the left end of the eaves", taped.diagonal_from_left_mm),
            ("diagonal from the right end of the eaves", taped.diagonal_from_right_mm),
        ):
            yield "", what, _NOT_MEASURED if tape_mm is None else write_length(tape_mm, unit)
    if slope.rafters_at_mm:
        yield "", "rafters, each by its middle", f"{len(slope.rafters_at_mm)} measured"
    elif slope.rafter_spacing_mm is None:
        yield "", "rafters, middle to middle", _NOT_MEASURED
    else:
        yield "", "rafters, middle to middle", write_length(slope.rafter_spacing_mm, unit)


def _openings(slopes: list[Slope], unit: LengthUnit) -> Iterator[Block]:
    rows = [
        (
            slope.name,
            f"{opening.name}{_made(slope, opening.name)}",
            *(
                bare_length(each_mm, unit)
                for each_mm in (opening.from_left_mm, opening.up_slope_mm, opening.width_mm, opening.height_mm)
            ),
        )
        for slope in slopes
        for opening in slope.openings
    ]
    if rows:
        yield Heading(text="Openings", kept_mm=30.0)
        headings = ("from the left", "up the slope", "width", "height up the slope")
        yield Table(
            columns=(
                Column(heading="Slope", share_ratio=1.0),
                Column(heading="Opening", share_ratio=1.4),
                *(Column(heading=f"{each}, {unit_heading(unit)}", kind=_FIGURES) for each in headings),
            ),
            rows=tuple(rows),
        )


def _made(slope: Slope, opening: str) -> str:
    return "".join(f", {made.value}" for name, made in slope.openings_made if name == opening)


def _nailed(slopes: list[Slope], unit: LengthUnit) -> Iterator[Block]:
    rows = [
        (slope.name, write_length(rod.at_mm, unit), ", ".join(bare_length(mark_mm, unit) for mark_mm in rod.marks_mm))
        for slope in slopes
        for rod in slope.nailed
    ]
    if rows:
        yield Heading(text="Battens that were already nailed", kept_mm=30.0)
        yield Table(
            columns=(
                Column(heading="Slope", share_ratio=0.8),
                Column(heading="At, from the left", kind=_FIGURES),
                Column(heading=f"Top edges up from the fascia face, {unit_heading(unit)}", share_ratio=3.0),
            ),
            rows=tuple(rows),
        )
