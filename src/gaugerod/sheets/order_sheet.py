"""The order of the whole job, to print: what to buy part by part, what it weighs, what it leaves out, and why."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.order_cautions import ORDER_CAUTIONS, ORDER_LAST_CAUTION
from gaugerod.sheets.order_left_out import left_out
from gaugerod.sheets.order_tables import by_slope_table, compared_blocks, order_tables, source_table
from gaugerod.sheets.quantity_said import mass_said, masses_between, quantity_said
from gaugerod.sheets.sheet import (
    Alarm,
    Block,
    Bullets,
    Column,
    ColumnKind,
    Figure,
    Figures,
    Heading,
    PaperSize,
    Prose,
    Sheet,
    Table,
)
from gaugerod.sheets.working_table import working_table
from gaugerod.take_off.answer import TakeOff, Trade


def order_sheet(result: Result, *, size: PaperSize) -> Sheet:
    """The order. A result without a take-off has a sheet that says so."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Order for every slope of the job: {result.job.covering.title}. Rules: edition {result.job.edition.value}.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result)),
    )


def _blocks(result: Result) -> Iterator[Block]:
    taken, unit = result.take_off, result.job.show_lengths_in
    yield Heading(text="Order", level=1)
    if taken is None:
        yield Alarm(
            title="◇ Nothing to order", lines=("No slope was laid, so nothing is counted: the findings say why.",)
        )
        return
    missing = left_out(result)
    if missing:
        yield Alarm(title=f"◇ {counted(len(missing), 'thing')} NOT in this order", lines=missing)
    alarm = finding_alarm(taken.findings, name="", unit=unit)
    if alarm is not None:
        yield alarm
    yield Figures(figures=tuple(_figures(taken, unit)))
    yield Prose(
        text="Measured is what lies on the roof. To order is that with what is added, in whole pieces, and never less. Tick off "
        "what has come."
    )
    yield from order_tables(taken, unit=unit)
    yield from compared_blocks(taken)
    yield from _masses(taken)
    yield Heading(text="Before it comes", kept_mm=40.0)
    yield Bullets(lines=(*ORDER_CAUTIONS, ORDER_LAST_CAUTION))
    yield from _behind(taken, unit)


def _figures(taken: TakeOff, unit: LengthUnit) -> Iterator[Figure]:
    for line in [line for line in taken.lines if line.measured.trade is Trade.COVERING][:2]:
        yield Figure(
            label=f"{line.measured.what[:1].upper()}{line.measured.what[1:]}",
            values=(quantity_said(line.order, line.measured.unit, unit, up=True),),
            note=f"{quantity_said(line.measured.net, line.measured.unit, unit)} measured, and what is added",
        )
    unknown_count = sum(line.mass_kg is None for line in taken.lines)
    known_kg = sum(line.mass_kg for line in taken.lines if line.mass_kg is not None)
    yield Figure(
        label="Mass to carry in",
        values=(mass_said(known_kg),),
        note=f"and {counted(unknown_count, 'line')} of unknown mass besides" if unknown_count else "everything ordered",
    )
    lead_kg = sum(line.mass_kg or 0.0 for line in taken.lines if line.measured.trade is Trade.LEAD)
    if lead_kg:
        yield Figure(label="Of it lead", values=(mass_said(lead_kg),), note="see the caution")


def _masses(taken: TakeOff) -> Iterator[Block]:
    masses = taken.masses
    yield Heading(text="Onto the roof, and off it", kept_mm=40.0)
    yield Table(
        columns=(Column(heading="What", share_ratio=3.0), Column(heading="Mass", kind=ColumnKind.FIGURES)),
        rows=(
            ("New: what goes onto the roof", masses_between(masses.new_least_kg, masses.new_greatest_kg)),
            ("Old: what comes off it", masses_between(masses.old_least_kg, masses.old_greatest_kg)),
        ),
    )
    yield Prose(
        text="Load both slopes alike, in small stacks over the rafters; take the old covering off both slopes alike too. More mass "
        "than before, or much less, changes the frame: a licensed designer looks at it before work starts."
    )


def _behind(taken: TakeOff, unit: LengthUnit) -> Iterator[Block]:
    """What stands behind the order."""
    by_slope = by_slope_table(taken, unit=unit)
    if by_slope is not None:
        yield Heading(text="Slope by slope", kept_mm=50.0)
        yield by_slope
    sources = source_table(taken.lines)
    if sources is not None:
        yield Heading(text="Where the allowances and figures come from", kept_mm=40.0)
        yield sources
    if taken.findings:
        yield Heading(text="Findings", kept_mm=50.0)
        yield verdicts_counted(taken.findings, name="", unit=unit)
        yield finding_table(taken.findings, name="", unit=unit)
    yield Heading(text="Working", kept_mm=50.0)
    yield working_table(taken.working)
