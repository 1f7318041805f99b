"""The setting-out sheet: for each slope the numbers read first and its drawing, then everything behind them."""

from collections.abc import Sequence

from gaugerod.basis.finding import Finding
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import NotSetOut, Result, SlopeResult
from gaugerod.job.slope_called import slope_called, slope_heading
from gaugerod.setting_out.courses import Alternative
from gaugerod.sheets.across_tables import across_tables
from gaugerod.sheets.diminishing_tables import diminishing_blocks
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.key_figures import key_figures
from gaugerod.sheets.lengths_shown import fine_length, unit_heading
from gaugerod.sheets.mark_words import mark_word
from gaugerod.sheets.opening_tables import opening_tables
from gaugerod.sheets.rod_tables import rod_tables
from gaugerod.sheets.section_details import eaves_and_top
from gaugerod.sheets.sheet import (
    Block,
    Bullets,
    Column,
    ColumnKind,
    Figures,
    Heading,
    NewPage,
    PaperSize,
    Pictures,
    Prose,
    Sheet,
    Steps,
    Table,
)
from gaugerod.sheets.slope_drawing import slope_drawing
from gaugerod.sheets.three_courses import three_courses
from gaugerod.sheets.working_table import working_table

DISCLAIMER = "Not a substitute for the maker's instructions, the local code or a licensed designer."
_FIGURES_ROW_MM = 25.0
_FRONT_MM = 46.0
"""Title, slope line, sentences and caption of a first page, with air."""


def setting_out_sheet(result: Result, slope: SlopeResult, *, size: PaperSize) -> Sheet:
    """Everything one slope needs on paper, in the order it is read."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Setting-out sheet of {slope_called(slope.slope.name)}. Rules: edition {result.job.edition.value}, "
        f"exposure {result.job.exposure.value.replace('-', ' ')}.",
        size=size,
        foot=foot(result, slope),
        region=result.job.edition.value,
        blocks=(*_front(result, slope, size=size), *_behind(result, slope), *_of_the_job(result, slope)),
    )


def foot(result: Result, slope: SlopeResult | NotSetOut) -> str:
    """The lines along the bottom: the job, the slope, the edition, the version, and what a sheet is not."""
    title, name = _shortened(result.job.title, 48), _shortened(slope.slope.name, 40)
    return (
        f"{title} · {slope_called(name)} · edition {result.job.edition.value} · gaugerod {result.version}\n{DISCLAIMER}"
    )


def _shortened(text: str, most_count: int) -> str:
    return text if len(text) <= most_count else f"{text[: most_count - 1]}…"


def _front(result: Result, slope: SlopeResult, *, size: PaperSize) -> list[Block]:
    """The page that is pinned up."""
    unit = result.job.show_lengths_in
    figures = key_figures(slope, covering=result.job.covering, unit=unit)
    alarm = finding_alarm(_said_first(result, slope), name=slope.slope.name, unit=unit)
    reasons = slope.courses.why if slope.across is None else f"{slope.courses.why} {slope.across.why}"
    taken_mm = _FRONT_MM + _FIGURES_ROW_MM * -(-len(figures) // 4) + 5.0 * -(-len(reasons) // 110)
    if alarm is not None:
        taken_mm += 9.0 + sum(5.0 * -(-len(line) // 95) for line in alarm.lines)
    placed = slope_drawing(
        slope,
        unit=unit,
        room_width_mm=size.text_width_mm,
        room_height_mm=max(size.text_height_mm - taken_mm, 110.0),
    )
    blocks: list[Block] = [
        Heading(text=slope_heading(slope.slope.name), level=1),
        Prose(
            text=f"{result.job.covering.title}, at {slope.slope.pitch_deg:.4g}° pitch. "
            f"{write_length(slope.slope.taped.eaves_mm, unit)} along the eaves, rafters "
            f"{_rafters_said(slope, unit)}, {slope.shape.area_mm2 / 1e6:.2f} m²."
        ),
    ]
    if alarm is not None:
        blocks.append(alarm)
    blocks += [
        Figures(figures=figures),
        Prose(text=reasons),
        Pictures(
            pictures=(
                (
                    placed,
                    (
                        f"{slope_heading(slope.slope.name)} square on, {placed.scale_said}. Lengths in {unit_heading(unit)}; "
                        f"{mark_word(slope)}s numbered up from the eaves."
                    ),
                ),
            )
        ),
    ]
    return blocks


def _said_first(result: Result, slope: SlopeResult) -> list[Finding]:
    """The findings of the job as a whole, then the slope's."""
    of_slopes = {finding for each in result.slopes for finding in each.findings}
    of_slopes |= {finding for each in result.not_set_out for finding in each.findings}
    elsewhere = {*of_slopes, *result.beneath.findings}
    return [*(finding for finding in result.findings if finding not in elsewhere), *slope.findings]


def _rafters_said(slope: SlopeResult, unit: LengthUnit) -> str:
    lengths_mm = [length_mm for _, length_mm in slope.slope.taped.rafters]
    if write_length(min(lengths_mm), unit) == write_length(max(lengths_mm), unit):
        return write_length(lengths_mm[0], unit)
    return f"{write_length(min(lengths_mm), unit)} to {write_length(max(lengths_mm), unit)}"


def _behind(result: Result, slope: SlopeResult) -> list[Block]:
    unit = result.job.show_lengths_in
    blocks: list[Block] = [
        NewPage(),
        *rod_tables(slope, unit=unit),
        *([] if slope.diminishing is None else diminishing_blocks(slope.diminishing, unit=unit)),
        *across_tables(slope, unit=unit),
        *opening_tables(slope, unit=unit),
        *_sections(result, slope),
        Heading(text="Method", kept_mm=50.0),
        Steps(lines=slope.method),
        Heading(text="Findings", kept_mm=50.0),
        verdicts_counted(_said_first(result, slope), name=slope.slope.name, unit=unit),
        finding_table(_said_first(result, slope), name=slope.slope.name, unit=unit),
    ]
    up = [each for where, each in result.alternatives if where == slope.slope.name]
    across = [each for where, each in result.alternatives if where == f"{slope.slope.name}, across"]
    if up or across:
        blocks += [
            Heading(text="What could change", kept_mm=50.0),
            Prose(
                text="Nearest to what was asked first. Gauges and marks above do not hold if one of these is chosen."
            ),
        ]
    if up:
        blocks.append(alternatives_table(up, counted="Gauges", measured="Gauge", unit=unit))
    if across:
        blocks.append(alternatives_table(across, counted="Units", measured="Cover", unit=unit))
    return blocks


def _sections(result: Result, slope: SlopeResult) -> list[Block]:
    """Three courses, the eaves and the top, in section, for every covering."""
    covering, unit = result.job.covering, result.job.show_lengths_in
    blocks: list[Block] = []
    courses = three_courses(slope, covering, unit=unit)
    if courses is not None:
        blocks += [
            Heading(text="Three courses in section", kept_mm=courses.paper.height_mm + 26.0),
            Prose(text="Thickness and timber are only drawn; lengths, marks and laps are to scale."),
            Pictures(
                pictures=(
                    (courses, f"{courses.drawing.title}, {courses.scale_said}. Lengths in {unit_heading(unit)}."),
                )
            ),
        ]
    rows = eaves_and_top(slope, covering, ridge_cover_mm=result.job.wishes.ridge_cover_mm, unit=unit)
    return [
        *blocks,
        Heading(text="Eaves and top in section", kept_mm=max(each.paper.height_mm for each in rows[0]) + 26.0),
        Prose(text="On the left rod. Thickness, timber, fascia and ridge are only drawn; the lengths are to scale."),
        *(
            Pictures(
                pictures=tuple(
                    (each, f"{each.drawing.title}, {each.scale_said}. Lengths in {unit_heading(unit)}.") for each in row
                )
            )
            for row in rows
        ),
    ]


def alternatives_table(alternatives: Sequence[Alternative], *, counted: str, measured: str, unit: LengthUnit) -> Table:
    """What could change, nearest first, with what it costs and whether every limit is kept."""
    return Table(
        columns=(
            Column(heading="Rank", kind=ColumnKind.FIGURES),
            Column(heading="Change", share_ratio=1.2),
            Column(heading="What it does to the roof", share_ratio=1.4),
            Column(heading=counted, kind=ColumnKind.FIGURES),
            Column(heading=measured, kind=ColumnKind.FIGURES),
            Column(heading="Limits"),
        ),
        rows=tuple(
            (
                f"{each.rank}",
                each.change,
                each.costs,
                f"{each.gauges}" if each.gauges else "–",
                fine_length(each.gauge_mm, unit) if each.gauges else "–",
                "● kept" if each.keeps_limits else "▲ BROKEN",
            )
            for each in alternatives
        ),
    )


def _of_the_job(result: Result, slope: SlopeResult) -> list[Block]:
    own = result.slopes.index(slope)
    working = result.working.parts[own]  # the slopes come first, in their order
    return [
        Heading(text="Cautions", kept_mm=60.0),
        Bullets(lines=result.cautions),
        Heading(text="Working", kept_mm=50.0),
        working_table(working),
    ]
