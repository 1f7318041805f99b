"""The cutting list of the underlay: every roll, its pieces in the order to cut them, and where they go."""

from collections.abc import Iterator

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import Result
from gaugerod.sheets.beneath_cautions import LAST_CAUTION, UNDERLAY_CAUTIONS
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length, unit_heading
from gaugerod.sheets.sheet import (
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
from gaugerod.substrate.underlay.cut_rolls import Piece, RollCuts


def roll_sheet(result: Result, rolls: RollCuts, *, size: PaperSize) -> Sheet:
    """The roll cutting list."""
    return Sheet(
        title=result.job.title,
        subtitle="Cutting list of the underlay, all slopes together: every roll, piece by piece.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=tuple(_blocks(result, rolls, result.job.show_lengths_in)),
    )


def _blocks(result: Result, rolls: RollCuts, unit: LengthUnit) -> Iterator[Block]:
    yield Heading(text="Underlay to buy and to cut", level=1)
    yield Figures(figures=_figures(result, rolls, unit))
    yield Prose(text=" ".join(rolls.says))
    yield Heading(text="Cut in this order", kept_mm=50.0)
    yield Prose(
        text="Cut square across the roll, and write its place on each piece. A piece with a side lap lies with its left end over "
        "the piece before it, over a rafter. The ends of runs are trimmed to hips and valleys in place."
    )
    yield Table(
        columns=(
            Column(heading="roll", kind=ColumnKind.MARK),
            Column(heading="where it goes", share_ratio=1.4),
            Column(heading=f"cut, {unit_heading(unit)}", kind=ColumnKind.MARK),
            Column(heading="lies from the left end", kind=ColumnKind.FIGURES, share_ratio=0.7),
            Column(heading="side lap", kind=ColumnKind.FIGURES, share_ratio=0.5),
            Column(heading="left on the roll", kind=ColumnKind.FIGURES, share_ratio=0.6),
            Column(heading="", kind=ColumnKind.TICK),
        ),
        rows=tuple(_rows(rolls, unit)),
    )
    yield Heading(text="Before you start", kept_mm=40.0)
    yield Bullets(lines=(*UNDERLAY_CAUTIONS, LAST_CAUTION))


def _figures(result: Result, rolls: RollCuts, unit: LengthUnit) -> tuple[Figure, ...]:
    wished = result.job.beneath.underlay
    width = "" if wished is None else f", {write_length(wished.record.roll_width_mm, unit)} wide"
    return (
        Figure(
            label="Rolls",
            values=(str(rolls.rolls_count),),
            note=f"{write_length(rolls.roll_length_mm, unit)} long{width}",
        ),
        Figure(label="Runs and strips", values=(f"{rolls.net_length_mm / 1000:.1f} m",), note="without side laps"),
        Figure(label="Side laps", values=(str(rolls.side_laps_count),), note="each over a rafter"),
        Figure(label="Left", values=(f"{rolls.left_mm / 1000:.1f} m",), note="on all rolls together"),
    )


def _rows(rolls: RollCuts, unit: LengthUnit) -> Iterator[tuple[str, ...]]:
    for roll in rolls.rolls:
        left_mm = rolls.roll_length_mm
        for place, piece in enumerate(roll.pieces):
            left_mm -= piece.length_mm
            yield (
                str(roll.number) if place == 0 else "",
                piece.name,
                bare_fine_length(piece.length_mm, unit, towards=Sense.AT_MOST),
                _from_left(piece, unit),
                bare_length(piece.side_lap_mm, unit) if piece.side_lap_mm else "–",
                bare_length(max(left_mm, 0.0), unit),
                "☐",
            )


def _from_left(piece: Piece, unit: LengthUnit) -> str:
    """Where its left end lies; past the eaves' end where a run reaches over a hip."""
    from_mm = piece.from_mm
    return bare_length(from_mm, unit) if from_mm > -0.5 else f"-{bare_length(-from_mm, unit)}"
