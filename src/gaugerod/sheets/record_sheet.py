"""The hand-over record: the whole job in one document, for whoever takes the roof over, inspects it or mends it one day."""

from collections.abc import Iterator

from gaugerod.basis.finding import Verdict
from gaugerod.job.result import NotSetOut, Result
from gaugerod.job.slope_called import slope_heading
from gaugerod.setting_out.said import counted
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.record_beneath import beneath_blocks
from gaugerod.sheets.record_care import AS_LAID, CARE, STANDS_FOR
from gaugerod.sheets.record_covering import covering_blocks
from gaugerod.sheets.record_edges import edge_blocks
from gaugerod.sheets.record_findings import deviation_table, outside_alarm, record_counts, verdict_blocks
from gaugerod.sheets.record_measured import measured_blocks
from gaugerod.sheets.record_slopes import slope_blocks
from gaugerod.sheets.roof_plan_drawing import roof_plan_drawing
from gaugerod.sheets.roof_sheet import line_table
from gaugerod.sheets.sheet import (
    Alarm,
    Block,
    Bullets,
    Column,
    Heading,
    NewPage,
    PaperSize,
    Pictures,
    Prose,
    Sheet,
    Table,
)

BLANK = "\n" + "_" * 48
"""A line to write on, below the words beside it."""
_PLAN_HIGH_RATIO = 0.55
"""Of the page's height, left to the plan of a building."""


def record_sheet(result: Result, *, size: PaperSize) -> Sheet:
    """The record, in the order it is read: what is wrong, who and where, what was measured, slopes, parts, rules, care."""
    return Sheet(
        title=result.job.title,
        subtitle=f"Hand-over record. {result.job.covering.title}. Rules: edition {result.job.edition.value}, "
        f"exposure {result.job.exposure.value.replace('-', ' ')}.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, size)),
    )


def _blocks(result: Result, size: PaperSize) -> Iterator[Block]:
    unit = result.job.show_lengths_in
    yield from _front(result)
    yield NewPage()
    yield from covering_blocks(result.job.covering, unit=unit)
    yield from measured_blocks(result)
    yield from _plans(result, size)
    for slope in result.slopes:
        yield from slope_blocks(result, slope, size=size)
    yield NewPage()
    yield from beneath_blocks(result)
    yield from edge_blocks(result)
    yield from verdict_blocks(result, Verdict.OUTSIDE, unit=unit)
    yield from verdict_blocks(result, Verdict.NOT_COVERED, unit=unit)
    yield from verdict_blocks(result, Verdict.WITHIN, unit=unit)
    yield Heading(text="Looking after the roof", level=1, kept_mm=60.0)
    yield Bullets(lines=CARE)
    yield Heading(text="Cautions for whoever works on it", kept_mm=60.0)
    yield Bullets(lines=result.cautions)
    yield Prose(text=STANDS_FOR)


def _front(result: Result) -> Iterator[Block]:
    """What is outside, who and where, what was accepted, and where to sign."""
    record = result.job.record
    yield Heading(text="Hand-over record", level=1)
    alarm = outside_alarm(result, unit=result.job.show_lengths_in)
    if alarm is not None:
        yield alarm
    yield from (_not_set_out(short) for short in result.not_set_out)
    yield Prose(text=f"{STANDS_FOR} {AS_LAID}")
    area_m2 = sum(slope.shape.area_mm2 for slope in result.slopes) / 1e6
    yield Table(
        columns=(Column(heading="", share_ratio=1.0), Column(heading="", share_ratio=3.4)),
        rows=(
            ("Site", record.site or BLANK),
            ("Covering", result.job.covering.title),
            ("Laid on", f"{counted(len(result.slopes), 'slope')}, {area_m2:.2f} m² measured on the slope"),
            ("Handed to", record.handed_to or BLANK),
            ("Laid by", record.laid_by or BLANK),
            ("Measured by", record.measured_by or BLANK),
        ),
    )
    yield record_counts(result)
    yield Heading(text="What was accepted", kept_mm=40.0)
    accepted = deviation_table(result)
    yield Prose(text="No deviation is written down for this job.") if accepted is None else accepted
    yield Heading(text="Signed", kept_mm=50.0)
    yield Table(
        columns=(
            Column(heading="For", share_ratio=1.2),
            Column(heading="Name", share_ratio=1.6),
            Column(heading="Signature", share_ratio=1.6),
            Column(heading="Day", share_ratio=0.9),
        ),
        rows=tuple((who, *("\n" + "_" * count for count in (27, 27, 14))) for who in _SIGNED),
    )


_SIGNED = ("whoever measured", "whoever laid it", "whoever takes it over")


def _not_set_out(short: NotSetOut) -> Alarm:
    return Alarm(
        title=f"▲ {slope_heading(short.slope.name)} is NOT SET OUT, and not in this record", lines=(short.why,)
    )


def _plans(result: Result, size: PaperSize) -> Iterator[Block]:
    """Each building: its plan, and its hips, valleys and ridges."""
    unit = result.job.show_lengths_in
    for roof in result.roofs:
        placed = roof_plan_drawing(
            roof.form,
            name=roof.name,
            unit=unit,
            room_width_mm=size.text_width_mm,
            room_height_mm=size.text_height_mm * _PLAN_HIGH_RATIO,
        )
        yield Heading(text=f"Roof of {roof.name}", level=1, kept_mm=placed.paper.height_mm + 26.0)
        caption = f"On plan, {placed.scale_said}. Lengths of hips, valleys and ridges are true lengths."
        yield Pictures(pictures=((placed, caption),))
        if roof.corners:
            yield Bullets(lines=roof.corners)
        if roof.form.lines:
            yield line_table(roof.form, unit)
