"""Each slope in the hand-over record: its numbers, its rods, its perps, and every drawing of it."""

from collections.abc import Iterator

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import write_length
from gaugerod.job.result import Result, SlopeResult
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.said import counted
from gaugerod.sheets.diminishing_tables import diminishing_blocks
from gaugerod.sheets.fixing_drawing import fixing_drawing
from gaugerod.sheets.key_figures import key_figures
from gaugerod.sheets.laying_drawing import laying_drawing
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length, fine_length, unit_heading
from gaugerod.sheets.mark_words import mark_word
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.section_details import eaves_and_top
from gaugerod.sheets.sheet import (
    Block,
    Column,
    ColumnKind,
    Figures,
    Heading,
    NewPage,
    PaperSize,
    Pictures,
    Prose,
    Table,
)
from gaugerod.sheets.slope_drawing import slope_drawing

_FRONT_MM = 54.0
"""Heading, sentences and caption of a slope's first page, with air."""
_FIGURES_ROW_MM = 25.0
_ROD_ROW_MM = 6.0
_LEAST_DRAWN_MM = 100.0
_HALF_PAGE_MM = 22.0
"""Heading and caption of a drawing that shares its page with another, with air."""


def slope_blocks(result: Result, slope: SlopeResult, *, size: PaperSize) -> Iterator[Block]:
    """One slope, from a page of its own."""
    unit = result.job.show_lengths_in
    figures = key_figures(slope, covering=result.job.covering, unit=unit)
    yield NewPage()
    yield Heading(text=slope_heading(slope.slope.name), level=1)
    yield Prose(text=_said(result, slope))
    yield Figures(figures=figures)
    yield _rods(slope, result)
    taken_mm = _FRONT_MM + _FIGURES_ROW_MM * -(-len(figures) // 4) + _ROD_ROW_MM * len(slope.courses.rods)
    placed = slope_drawing(
        slope,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=max(size.text_height_mm - taken_mm, _LEAST_DRAWN_MM),
    )
    yield _picture(
        placed, f"Square on, {placed.scale_said}. Lengths in {unit_heading(unit)}; {mark_word(slope)}s numbered up."
    )
    if slope.diminishing is not None:
        yield from diminishing_blocks(slope.diminishing, unit=unit)
    yield from _drawings(result, slope, size)


def _said(result: Result, slope: SlopeResult) -> str:
    unit, across = result.job.show_lengths_in, slope.across
    said = f"{slope.slope.pitch_deg:.4g}° pitch, {slope.shape.area_mm2 / 1e6:.2f} m². {slope.courses.why}"
    if across is None:
        return f"{said} No perps were set out."
    lines = [
        f"at the {line.line} from {write_length(line.marks_mm[0], unit)} to {write_length(line.marks_mm[-1], unit)}"
        for line in across.perp_lines
        if line.marks_mm
    ]
    perps = f" Perps every {counted(across.perps_every_count, 'unit')}, {' and '.join(lines)}." if lines else ""
    return f"{said} {counted(across.units_count, 'unit')} in a course, {across.bond.value} bond.{perps}"


def _rods(slope: SlopeResult, result: Result) -> Table:
    """Gauge and marks at each station, and the least lap there."""
    unit, courses = result.job.show_lengths_in, slope.courses
    figures = ColumnKind.FIGURES
    double = {} if slope.double_lap is None else {rod.at_mm: rod for rod in slope.double_lap.rods}
    rows = []
    for rod in courses.rods:
        extra = double.get(rod.at_mm)
        least_mm = courses.headlap_mm if extra is None or not extra.laps_mm else min(extra.laps_mm)
        rows.append(
            (
                bare_length(rod.at_mm, unit),
                bare_length(rod.length_mm, unit),
                str(len(rod.marks_mm)),
                bare_length(rod.marks_mm[0], unit),
                bare_fine_length(rod.gauge_mm, unit),
                bare_length(rod.marks_mm[-1], unit),
                fine_length(least_mm, unit, towards=Sense.AT_LEAST),
                str(rod.kept_count) if rod.kept_count else "–",
            )
        )
    mark = mark_word(slope)
    return Table(
        columns=(
            Column(heading=f"Rod at, {unit_heading(unit)}", kind=figures, share_ratio=1.0),
            Column(heading="to the apex", kind=figures, share_ratio=1.0),
            Column(heading=f"{mark}s", kind=figures, share_ratio=0.7),
            Column(heading=f"first {mark}", kind=figures, share_ratio=1.0),
            Column(heading="gauge" if slope.diminishing is None else "greatest gauge", kind=figures, share_ratio=0.9),
            Column(heading=f"top {mark}", kind=figures, share_ratio=1.0),
            Column(heading="least lap", kind=figures, share_ratio=1.0),
            Column(heading="kept as nailed", kind=figures, share_ratio=1.0),
        ),
        rows=tuple(rows),
    )


def _drawings(result: Result, slope: SlopeResult, size: PaperSize) -> Iterator[Block]:
    """Every unit, how it is held, and the eaves and top; two to a page where they are two."""
    unit, laid, name = result.job.show_lengths_in, slope.laid, slope.slope.name
    plan = next((each for each in result.beneath.fixings if each.where == name), None)
    half_mm = size.text_height_mm / 2 - _HALF_PAGE_MM
    if laid is not None:
        placed = laying_drawing(slope, laid, unit=unit, room_width_mm=size.text_width_mm, room_height_mm=half_mm)
        yield Heading(text="Every unit", kept_mm=placed.paper.height_mm + 20.0)
        yield _picture(
            placed,
            f"{placed.scale_said.capitalize()}. Shaded: {counted(len(laid.pieces), 'piece')} cut, by their numbers.",
        )
    if laid is not None and plan is not None:
        placed = fixing_drawing(slope, laid, plan, unit=unit, room_width_mm=size.text_width_mm, room_height_mm=half_mm)
        yield Heading(text="How it is held", kept_mm=placed.paper.height_mm + 20.0)
        hatched = " Hatched: courses nailed throughout." if plan.field_rule.every_count > 1 else ""
        yield _picture(placed, f"{placed.scale_said.capitalize()}. Shaded: the perimeter. White: the field.{hatched}")
    rows = eaves_and_top(slope, result.job.covering, ridge_cover_mm=result.job.wishes.ridge_cover_mm, unit=unit)
    yield Heading(text="Eaves and top in section", kept_mm=max(each.paper.height_mm for each in rows[0]) + 26.0)
    yield Prose(text="On the left rod. Thickness, timber, fascia and ridge are only drawn; the lengths are to scale.")
    for row in rows:
        yield Pictures(pictures=tuple((each, f"{each.drawing.title}, {each.scale_said}.") for each in row))


def _picture(placed: Placed, caption: str) -> Pictures:
    return Pictures(pictures=((placed, caption),))
