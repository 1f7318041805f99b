"""How the courses fall at each opening, and what setting out afresh between its lines would take."""

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import SlopeResult
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table
from gaugerod.sheets.slope_labels import opening_letter


def opening_tables(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Block, ...]:
    """Every opening by its letter on the drawing; nothing where there are none."""
    blocks: list[Block] = []
    for index, opening in enumerate(slope.courses.openings):
        blocks += [
            Heading(text=f"Opening {opening_letter(index)}: {opening.name}", kept_mm=60.0),
            Prose(text=f"{opening.says[:1].upper()}{opening.says[1:]}"),
        ]
        if opening.segments:
            blocks += [
                Prose(text=f"Another way. {opening.segments_say}"),
                Table(
                    columns=(
                        Column(heading="From and to", share_ratio=1.4),
                        Column(heading=f"From, {unit_heading(unit)}", kind=ColumnKind.FIGURES, share_ratio=1.0),
                        Column(heading=f"To, {unit_heading(unit)}", kind=ColumnKind.FIGURES, share_ratio=1.0),
                        Column(heading="Gauges", kind=ColumnKind.FIGURES),
                        Column(heading="Gauge", kind=ColumnKind.FIGURES, share_ratio=1.0),
                        Column(heading="Limits"),
                    ),
                    rows=tuple(
                        (
                            segment.name,
                            bare_length(segment.from_mm, unit),
                            bare_length(segment.to_mm, unit),
                            f"{segment.count}",
                            fine_length(segment.gauge_mm, unit),
                            "● would keep" if segment.inside else "▲ would break",
                        )
                        for segment in opening.segments
                    ),
                ),
            ]
    return tuple(blocks)
