"""The roof sheet of a building: the plan, every hip, valley and ridge with how it is cut, and the courses round corners."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.geometry.roof_faces import RoofForm
from gaugerod.job.result import Result, RoofResult
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.roof_plan_drawing import roof_plan_drawing
from gaugerod.sheets.setting_out_sheet import DISCLAIMER
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Pictures, Prose, Sheet, Table

_FRONT_MM = 60.0


def roof_sheet(result: Result, roof: RoofResult, *, size: PaperSize) -> Sheet:
    """The whole roof of a building, on paper."""
    unit = result.job.show_lengths_in
    named = f"{result.job.title[:48]} · {roof.name[:40]}"
    return Sheet(
        title=result.job.title,
        subtitle=f"Roof sheet of {roof.name}: the plan, its lines and how the slopes are coursed together.",
        size=size,
        foot=f"{named} · edition {result.job.edition.value} · gaugerod {result.version}\n{DISCLAIMER}",
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, roof, unit, size)),
    )


def _blocks(result: Result, roof: RoofResult, unit: LengthUnit, size: PaperSize) -> Iterator[Block]:
    yield Heading(text=f"Roof of {roof.name}", level=1)
    yield Prose(text=f"{len(roof.form.slopes)} slopes, {roof.form.area_mm2 / 1e6:.2f} m² measured on the slope.")
    placed = roof_plan_drawing(
        roof.form,
        name=roof.name,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=size.text_height_mm - _FRONT_MM,
    )
    yield Pictures(
        pictures=((placed, f"On plan, {placed.scale_said}. Lengths of hips, valleys and ridges are true lengths."),)
    )
    yield Heading(text="Slopes")
    yield _slope_table(result, roof, unit)
    if roof.corners:
        yield Heading(text="Courses round the corners")
        yield Bullets(lines=roof.corners)
    if roof.form.lines:
        yield Heading(text="Hips, valleys and ridges")
        yield line_table(roof.form, unit)
        yield Prose(
            text=(
                "Backing: the bevel on top of a hip rafter, or of a valley board, to the slope on each side, walked from the foot "
                "up. Cut: the angle in each slope between the line and the courses, for marking units."
            )
        )


def _slope_table(result: Result, roof: RoofResult, unit: LengthUnit) -> Table:
    figures = ColumnKind.FIGURES
    by_name = {slope.slope.name: slope for slope in result.slopes}
    rows = []
    for form, name in zip(roof.form.slopes, roof.slope_names, strict=True):
        shape = (str(form.number + 1), f"{form.pitch_deg:z.1f}°", f"{form.area_mm2 / 1e6:.2f}")
        slope = by_name.get(name)
        if slope is None:
            rows.append((*shape, "not set out", *[""] * 5))
            continue
        rod = slope.courses.rods[0]
        rows.append(
            (
                *shape,
                str(slope.courses.count),
                fine_length(rod.gauge_mm, unit),
                bare_length(rod.marks_mm[0], unit),
                bare_length(rod.marks_mm[-1], unit),
                "" if slope.laid is None else str(slope.laid.whole_units_count),
                "" if slope.laid is None else str(len(slope.laid.pieces)),
            )
        )
    return Table(
        columns=(
            Column(heading="slope", kind=figures),
            Column(heading="pitch", kind=figures),
            Column(heading="m²", kind=figures),
            Column(heading="courses", kind=figures),
            Column(heading="gauge", kind=figures),
            Column(heading=f"first batten, {unit_heading(unit)}", kind=figures),
            Column(heading=f"top batten, {unit_heading(unit)}", kind=figures),
            Column(heading="whole units", kind=figures),
            Column(heading="to saw", kind=figures),
        ),
        rows=tuple(rows),
    )


def line_table(form: RoofForm, unit: LengthUnit) -> Table:
    """Every hip, valley and ridge: its true length, and how it is cut and backed."""
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="line"),
            Column(heading="slopes", kind=figures),
            Column(heading=f"true length, {unit_heading(unit)}", kind=figures),
            Column(heading=f"on plan, {unit_heading(unit)}", kind=figures),
            Column(heading="rise", kind=figures),
            Column(heading="between slopes", kind=figures),
            Column(heading="backing", kind=figures),
            Column(heading="cut", kind=figures),
        ),
        rows=tuple(
            (
                line.kind.value.replace("-", " "),
                f"{line.left + 1}, {line.right + 1}",
                bare_length(line.length_mm, unit),
                bare_length(line.plan_length_mm, unit),
                f"{line.slope_deg:z.1f}°",
                f"{line.dihedral_deg:z.1f}°",
                f"{line.backing_left_deg:z.1f}°, {line.backing_right_deg:z.1f}°",
                f"{line.cut_left_deg:z.1f}°, {line.cut_right_deg:z.1f}°",
            )
            for line in form.lines
        ),
    )
