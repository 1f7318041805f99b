"""The order as the page shows it: the blocks of its sheet, every table in lines that a phone can read."""

from collections.abc import Sequence

from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result
from gaugerod.sheets.findings_by_part import parted, parted_order
from gaugerod.sheets.order_sheet import order_sheet
from gaugerod.sheets.order_tables import trade_said
from gaugerod.sheets.sheet import Alarm, Block, Figures, PaperSize
from gaugerod.take_off.answer import OrderLine, TakeOff
from gaugerod.web.blocks import PartShown, parts_shown
from gaugerod.web.pages.beneath.context import AlarmShown
from gaugerod.web.pages.findings.rows import finding_rows
from gaugerod.web.pages.order.context import Answered, LineShown, LinesShown

_COMPARED = "Counted from the cuts, or by a flat percentage"
_MASSES = "Onto the roof, and off it"
_CAUTIONS = "Before it comes"
_NOT_SHOWN = frozenset({"Order", "Findings", "Working"})
"""Findings and working have their own places in the app."""


def answered(result: Result, taken: TakeOff) -> Answered:
    """The order of the whole job."""
    unit = result.job.show_lengths_in
    blocks = order_sheet(result, size=PaperSize.A4).blocks
    parts = {part.heading: part for part in parts_shown(blocks)}
    by_trade = {trade_said(trade): lines for trade, lines in taken.by_trade}
    shown = {*by_trade, _COMPARED, _MASSES, _CAUTIONS, *_NOT_SHOWN}
    found = parted_order(result)
    elsewhere = tuple(part for part in parted(result) if part not in found)
    return Answered(
        alarms=alarms_shown(blocks),
        figures=tuple(figure for block in blocks if isinstance(block, Figures) for figure in block.figures),
        lines=tuple(
            LinesShown(heading=heading, lines=_lines(parts[heading], lines))
            for heading, lines in by_trade.items()
            if heading in parts
        ),
        compared=lines_shown(parts[_COMPARED]) if _COMPARED in parts else None,
        masses=parts.get(_MASSES),
        behind=tuple(part for heading, part in parts.items() if heading not in shown),
        cautions=parts[_CAUTIONS].says if _CAUTIONS in parts else (),
        outside=finding_rows(found, Verdict.OUTSIDE, unit=unit),
        not_covered=finding_rows(found, Verdict.NOT_COVERED, unit=unit),
        within=finding_rows(found, Verdict.WITHIN, unit=unit),
        outside_elsewhere_count=len(finding_rows(elsewhere, Verdict.OUTSIDE, unit=unit)),
    )


def alarms_shown(blocks: Sequence[Block]) -> tuple[AlarmShown, ...]:
    """What is read before anything else."""
    return tuple(AlarmShown(title=block.title, lines=block.lines) for block in blocks if isinstance(block, Alarm))


def lines_shown(part: PartShown) -> LinesShown:
    """The rows of a wide table, each with what it is of in its first cell."""
    return LinesShown(
        heading=part.heading,
        says=part.says,
        lines=tuple(_line(table.headings, row) for table in part.tables for row in table.rows),
    )


def _lines(part: PartShown, lines: Sequence[OrderLine]) -> tuple[LineShown, ...]:
    rows = [(table.headings, row) for table in part.tables for row in table.rows]
    return tuple(
        _line(headings, row, item=line.measured.item) for (headings, row), line in zip(rows, lines, strict=True)
    )


def _line(headings: Sequence[str], row: Sequence[str], *, item: str = "") -> LineShown:
    what, *says = row[0].split("\n")
    numbers = tuple(
        (heading[:1].lower() + heading[1:], cell.replace("\n(", " (").replace("\n", ", "))
        for heading, cell in zip(headings[1:], row[1:], strict=True)
        if cell not in {"", "–"}
    )
    return LineShown(what=what, item=item, numbers=numbers, says=tuple(says))
