"""The sheets of what lies beneath as the page shows them: the same figures, sentences and tables, drawn for a screen."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.beneath_sheet import beneath_sheet
from gaugerod.sheets.cutting_list_sheet import cutting_list_sheet
from gaugerod.sheets.findings_by_part import parted_beneath, parted_setting_out
from gaugerod.sheets.fixing_drawing import fixing_drawing
from gaugerod.sheets.fixing_sheet import fixing_sheet
from gaugerod.sheets.joint_drawing import joint_drawing
from gaugerod.sheets.joint_pattern import joint_pattern
from gaugerod.sheets.joint_sheet import joint_sheet
from gaugerod.sheets.placed import Placed
from gaugerod.sheets.roll_sheet import roll_sheet
from gaugerod.sheets.sheet import Alarm, Figure, Figures, Heading, PaperSize, Pictures, Prose, Sheet
from gaugerod.sheets.underlay_drawing import underlay_drawing
from gaugerod.sheets.underlay_sheet import side_laps, underlay_sheet
from gaugerod.substrate.battens.answer import Arrangement
from gaugerod.web.blocks import PartShown, parts_shown
from gaugerod.web.drawn import POCKET_MM, markup
from gaugerod.web.pages.beneath.context import AlarmShown, Answered, DrawingShown, PlanShown, RowShown, RowsShown
from gaugerod.web.pages.findings.rows import finding_rows

_POCKET_HIGH_MM = 110.0
_POCKET_WIDE_MM = 112.0
"""For the underlay: its labels stand on both sides, and leave nothing of the slope in a narrower room."""
_ORDER, _CAUTIONS, _FINDINGS = "To order", "Before you start", "Findings"
_SIZE = PaperSize.A4


def answered(result: Result, slope: SlopeResult | None) -> Answered:
    """The answer, with the plans of one slope."""
    unit = result.job.show_lengths_in
    found = parted_beneath(result.beneath)
    whole = _plan_shown(beneath_sheet(result, size=_SIZE), heading="", pockets=())
    of_slope = () if slope is None else tuple(_of_slope(result, slope))
    to_cut = tuple(_to_cut(result))
    cautions = (line for plan in (*of_slope, *to_cut, whole) for part in plan.parts for line in _cautions(part))
    return Answered(
        order=tuple(_order(part) for part in whole.parts if part.heading == _ORDER),
        of_slope=tuple(_without_cautions(plan) for plan in of_slope),
        rows=()
        if slope is None
        else tuple(_rows(part, slope.slope.name) for part in whole.parts if part.heading not in {_ORDER, _CAUTIONS}),
        to_cut=tuple(_without_cautions(plan) for plan in to_cut),
        cautions=tuple(dict.fromkeys(cautions)),
        outside=finding_rows(found, Verdict.OUTSIDE, unit=unit),
        not_covered=finding_rows(found, Verdict.NOT_COVERED, unit=unit),
        within=finding_rows(found, Verdict.WITHIN, unit=unit),
        finding_parts=tuple(name for name, _ in found),
        setting_out_outside_count=len(finding_rows(parted_setting_out(result), Verdict.OUTSIDE, unit=unit)),
        not_set_out=tuple(each.slope.name for each in result.not_set_out),
    )


def _of_slope(result: Result, slope: SlopeResult) -> Iterator[PlanShown]:
    """Joint plan, underlay plan and fixing plan, as far as each was asked for."""
    under, unit, name = result.beneath, result.job.show_lengths_in, slope.slope.name
    if under.battens is not None:
        for battens in under.battens.slopes:
            if battens.where == name:
                pockets = []
                if battens.arrangement is not Arrangement.NONE:
                    pattern = joint_pattern(slope, battens, unit=unit, room_width_mm=POCKET_MM)
                    plan = joint_drawing(
                        slope, battens, unit=unit, room_width_mm=POCKET_MM, room_height_mm=_POCKET_HIGH_MM
                    )
                    pockets = [plan] if pattern is None else [pattern, plan]
                sheet = joint_sheet(result, slope, under.battens, battens, size=_SIZE)
                yield _plan_shown(sheet, heading="Batten joints", pockets=pockets)
    for underlay in under.underlay:
        if underlay.where == name:
            pocket = underlay_drawing(
                slope,
                underlay,
                side_laps=side_laps(under.rolls, underlay),
                unit=unit,
                room_width_mm=_POCKET_WIDE_MM,
                room_height_mm=_POCKET_HIGH_MM,
            )
            sheet = underlay_sheet(result, slope, underlay, size=_SIZE)
            yield _plan_shown(sheet, heading="Underlay", pockets=[pocket])
    for fixings in under.fixings:
        if fixings.where == name and slope.laid is not None:
            pocket = fixing_drawing(
                slope, slope.laid, fixings, unit=unit, room_width_mm=POCKET_MM, room_height_mm=_POCKET_HIGH_MM
            )
            sheet = fixing_sheet(result, slope, slope.laid, fixings, size=_SIZE)
            yield _plan_shown(sheet, heading="Nails and clips", pockets=[pocket])


def _to_cut(result: Result) -> Iterator[PlanShown]:
    """The cutting lists, of all slopes together."""
    under = result.beneath
    if under.battens is not None:
        sheet = cutting_list_sheet(result, under.battens, size=_SIZE)
        yield _plan_shown(sheet, heading="Battens to buy and to saw", pockets=())
    if under.rolls is not None:
        sheet = roll_sheet(result, under.rolls, size=_SIZE)
        yield _plan_shown(sheet, heading="Underlay to buy and to cut", pockets=())


def _plan_shown(sheet: Sheet, *, heading: str, pockets: Sequence[Placed]) -> PlanShown:
    blocks = sheet.blocks
    begins = next(
        (at for at, block in enumerate(blocks) if isinstance(block, Heading) and block.level > 1), len(blocks)
    )
    pictures = [picture for block in blocks if isinstance(block, Pictures) for picture in block.pictures]
    figures: tuple[Figure, ...] = ()
    for block in blocks:
        if isinstance(block, Figures):
            figures += block.figures
    return PlanShown(
        heading=heading,
        alarms=tuple(AlarmShown(title=block.title, lines=block.lines) for block in blocks if isinstance(block, Alarm)),
        figures=figures,
        says=tuple(block.text for block in blocks[:begins] if isinstance(block, Prose)),
        drawings=tuple(
            DrawingShown(wide=markup(wide), pocket=markup(pocket), caption=_without_scale(caption, wide))
            for (wide, caption), pocket in zip(pictures, pockets, strict=True)
        ),
        parts=tuple(part for part in parts_shown(blocks[begins:]) if part.heading != _FINDINGS),
    )


def _without_scale(caption: str, placed: Placed) -> str:
    """On a screen no scale holds."""
    return caption.replace(f"Across {placed.scale_said}, up not", "Up not").replace(f", {placed.scale_said}", "")


def _order(part: PartShown) -> PartShown:
    """What and how much; where more of it stands is plain on the page."""
    tables = (
        replace(table, headings=table.headings[:2], rows=tuple(row[:2] for row in table.rows)) for table in part.tables
    )
    return replace(part, tables=tuple(tables))


def _rows(part: PartShown, name: str) -> RowsShown:
    """The rows of one slope of a table that names the slope first, and what a row is of second."""
    return RowsShown(
        heading=part.heading,
        says=part.says,
        rows=tuple(_row(table.headings[2:], row[1:]) for table in part.tables for row in table.rows if row[0] == name),
    )


def _row(headings: tuple[str, ...], cells: tuple[str, ...]) -> RowShown:
    title, _, source = cells[0].partition("\n")
    numbers = zip(headings, cells[1:], strict=True)
    return RowShown(title=title, numbers=tuple((each, cell) for each, cell in numbers if cell), source=source)


def _without_cautions(plan: PlanShown) -> PlanShown:
    return replace(plan, parts=tuple(part for part in plan.parts if part.heading != _CAUTIONS))


def _cautions(part: PartShown) -> tuple[str, ...]:
    """Said once for the whole page, and not again under each plan."""
    return part.says if part.heading == _CAUTIONS else ()
