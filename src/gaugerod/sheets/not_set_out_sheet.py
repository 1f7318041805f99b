"""The sheet of a slope that could not be set out: why, what was checked, and what would mend it. It has no marks."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import NotSetOut, Result
from gaugerod.job.slope_called import slope_heading
from gaugerod.sheets.finding_table import finding_table
from gaugerod.sheets.setting_out_sheet import alternatives_table, foot
from gaugerod.sheets.sheet import Alarm, Block, Bullets, Heading, PaperSize, Prose, Sheet


def not_set_out_sheet(result: Result, short: NotSetOut, *, size: PaperSize) -> Sheet:
    """What to read before this slope can be set out, on paper."""
    return Sheet(
        title=result.job.title,
        subtitle=f"{slope_heading(short.slope.name)} could not be set out. Rules: edition {result.job.edition.value}, "
        f"exposure {result.job.exposure.value.replace('-', ' ')}.",
        size=size,
        foot=foot(result, short),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, short, unit=result.job.show_lengths_in)),
    )


def _blocks(result: Result, short: NotSetOut, *, unit: LengthUnit) -> Iterator[Block]:
    yield Heading(text=slope_heading(short.slope.name), level=1)
    yield Alarm(title="▲ NOT SET OUT. There are no marks to use for this slope", lines=(short.why,))
    yield Prose(text=f"{result.job.covering.title}, at {short.slope.pitch_deg:.4g}° pitch.")
    if short.alternatives:
        yield Heading(text="What could change", kept_mm=50.0)
        yield Prose(text="Nearest to what was asked first.")
        yield alternatives_table(short.alternatives, counted="Gauges", measured="Gauge", unit=unit)
    if short.findings:
        yield Heading(text="Findings", kept_mm=50.0)
        yield finding_table(short.findings, name=short.slope.name, unit=unit)
    yield Heading(text="Cautions", kept_mm=60.0)
    yield Bullets(lines=result.cautions)
