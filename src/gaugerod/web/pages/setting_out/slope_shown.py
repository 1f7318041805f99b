"""One slope of the answer, as the page shows it."""

from markupsafe import Markup

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.across_tables import across_tables
from gaugerod.sheets.key_figures import key_figures
from gaugerod.sheets.laying_drawing import laying_drawing
from gaugerod.sheets.opening_tables import opening_tables
from gaugerod.sheets.pocket_drawing import pocket_drawing
from gaugerod.sheets.rod_tables import rod_tables
from gaugerod.sheets.roof_plan_drawing import roof_plan_drawing
from gaugerod.sheets.slope_drawing import slope_drawing
from gaugerod.web.blocks import parts_shown
from gaugerod.web.drawn import POCKET_MM, WIDE_MM, markup
from gaugerod.web.pages.setting_out.context import RoofAround, SlopeShown


def slope_shown(result: Result, slope: SlopeResult, *, every_unit: bool) -> SlopeShown:
    """Figures first, then the drawing, then every mark. ``every_unit`` draws the units too."""
    unit = result.job.show_lengths_in
    wide = slope_drawing(slope, unit=unit, room_width_mm=WIDE_MM[0], room_height_mm=WIDE_MM[1])
    return SlopeShown(
        name=slope.slope.name,
        line=_line(result, slope, unit),
        figures=key_figures(slope, covering=result.job.covering, unit=unit),
        why=slope.courses.why if slope.across is None else f"{slope.courses.why} {slope.across.why}",
        wide=markup(wide),
        pocket=markup(pocket_drawing(slope, unit=unit, room_width_mm=POCKET_MM)),
        every_unit=_every_unit(slope, unit) if every_unit else Markup(),
        parts=parts_shown(
            (*rod_tables(slope, unit=unit), *across_tables(slope, unit=unit), *opening_tables(slope, unit=unit))
        ),
        method=slope.method,
    )


def roof_around(result: Result, name: str) -> RoofAround | None:
    """The roof of the building that the slope of this name is a part of."""
    roof = next((roof for roof in result.roofs if name in roof.slope_names), None)
    if roof is None:
        return None
    unit = result.job.show_lengths_in
    wide, pocket = (
        markup(roof_plan_drawing(roof.form, name=roof.name, unit=unit, room_width_mm=wide_mm, room_height_mm=high_mm))
        for wide_mm, high_mm in (WIDE_MM, (POCKET_MM, POCKET_MM))
    )
    return RoofAround(name=roof.name, wide=wide, pocket=pocket, corners=roof.corners)


def _line(result: Result, slope: SlopeResult, unit: LengthUnit) -> str:
    return (
        f"{result.job.covering.title}, {slope.slope.pitch_deg:.4g}° pitch, "
        f"{write_length(slope.slope.taped.eaves_mm, unit)} along the eaves, {slope.shape.area_mm2 / 1e6:.2f} m²."
    )


def _every_unit(slope: SlopeResult, unit: LengthUnit) -> Markup:
    if slope.laid is None:
        return Markup()
    placed = laying_drawing(slope, slope.laid, unit=unit, room_width_mm=WIDE_MM[0], room_height_mm=WIDE_MM[1])
    return markup(placed)
