"""The perps on paper: unit count and mark along each line, and the pieces the courses end with."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.result import SlopeResult
from gaugerod.setting_out.across import Across, EndPiece, Fit
from gaugerod.setting_out.double_lap_across import MadeOf, VergePiece
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.rod_tables import TICK
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table


def across_tables(slope: SlopeResult, *, unit: LengthUnit) -> tuple[Block, ...]:
    """The perp table and the end pieces; a sentence where no perps could be set out."""
    heading = Heading(text="Perps across", kept_mm=60.0)
    if slope.across is None:
        return (heading, Prose(text="No perps are set out for this covering: the findings say why."))
    across = slope.across
    blocks: list[Block] = [
        heading,
        Prose(
            text=f"{across.why} Marks are from the left end of the roof structure, along each line; strike each perp "
            f"from its mark at the eaves to its mark at the top. A minus is to the left of that end."
        ),
    ]
    if across.perp_lines:
        blocks.append(_perp_table(across, unit=unit))
        blocks += [Prose(text=text) for text in _past_the_eaves(slope, across, unit=unit)]
    if across.pieces:
        blocks.append(Heading(text="How the courses end"))
        blocks.append(_pieces_table(slope, across, unit=unit))
    return tuple(blocks)


def _past_the_eaves(slope: SlopeResult, across: Across, *, unit: LengthUnit) -> Iterator[str]:
    """What to do where the slope reaches out past its eaves by more than a unit: no perp has a mark there."""
    along_mm = [point[0] for point in slope.shape.outline_mm]
    step_mm = across.perps_every_count * across.cover_mm
    reaches = (("left", -min(along_mm), "first"), ("right", max(along_mm) - slope.slope.taped.eaves_mm, "last whole"))
    for end, past_mm, perp in reaches:
        if past_mm > across.cover_mm:
            yield (
                f"Higher up, this slope reaches {write_length(past_mm, unit)} past the {end} end of its eaves, where no perp has a "
                f"mark at the eaves. Carry on there from the {perp} perp, {fine_length(step_mm, unit)} for every "
                f"{across.perps_every_count} units, measured along a course."
            )


def _perp_table(across: Across, *, unit: LengthUnit) -> Table:
    lines = across.perp_lines
    rows = [
        (
            f"{number}",
            f"{min(number * across.perps_every_count, across.units_count)}",
            *(bare_length(line.marks_mm[number - 1], unit) if number <= len(line.marks_mm) else "" for line in lines),
            TICK,
        )
        for number in range(1, max(len(line.marks_mm) for line in lines) + 1)
    ]
    beside_count = _beside_count(len(rows), len(lines), unit)
    # A table by itself is no wider than its words, so that number, mark and box stay together.
    share_ratio = 1.0 if beside_count > 1 else 0.0
    return Table(
        columns=(
            Column(heading="Perp", kind=ColumnKind.FIGURES),
            Column(heading="Units", kind=ColumnKind.FIGURES),
            *(
                Column(
                    heading=f"At the {line.line}, {unit_heading(unit)}", kind=ColumnKind.MARK, share_ratio=share_ratio
                )
                for line in lines
            ),
            Column(heading="Done", kind=ColumnKind.TICK),
        ),
        rows=tuple(rows),
        beside_count=beside_count,
        set_count=5,
    )


def _beside_count(rows_count: int, lines_count: int, unit: LengthUnit) -> int:
    """As many tables side by side as their columns leave room for, none of a row or two."""
    if unit is LengthUnit.FT_IN or lines_count > 1:
        room_count = 2 if lines_count == 1 or unit is not LengthUnit.FT_IN else 1
    else:
        room_count = 3
    return max(1, min(room_count, rows_count // 4))


def _pieces_table(slope: SlopeResult, across: Across, *, unit: LengthUnit) -> Table:
    """Every end of a course; at the verges of double lap, the unit that is laid there."""
    laid = {(piece.at, piece.bond_row): piece for piece in slope.verge_pieces}
    heading = unit_heading(unit)
    return Table(
        columns=(
            Column(heading="At"),
            Column(heading="Courses"),
            Column(heading="Piece"),
            Column(heading=f"Covers, {heading}", kind=ColumnKind.FIGURES),
            Column(heading=f"Its width, {heading}", kind=ColumnKind.FIGURES),
        ),
        rows=tuple(
            (
                piece.at,
                _courses_said(piece, across),
                *_piece_said(piece, laid.get((piece.at, piece.bond_row)), unit),
            )
            for piece in across.pieces
        ),
    )


def _piece_said(piece: EndPiece, laid: VergePiece | None, unit: LengthUnit) -> tuple[str, str, str]:
    """What it is, what it covers, how wide it is. A unit-and-a-half stands for two, so it covers what it is wide."""
    if laid is None:
        return _FIT_SAID[piece.fit], bare_length(piece.cover_mm, unit), bare_length(piece.width_mm, unit)
    width = bare_length(laid.width_mm, unit)
    return _MADE_OF_SAID[laid.made_of], width, width


_FIT_SAID = {
    Fit.WHOLE: "whole unit",
    Fit.HALF: "half unit",
    Fit.HIGH_POINT: "cut on a high point",
    Fit.CUT: "cut unit",
}
_MADE_OF_SAID = {
    MadeOf.WHOLE: "one unit",
    MadeOf.UNIT_AND_A_HALF: "a unit-and-a-half",
    MadeOf.HALF: "a half unit",
}


def _courses_said(piece: EndPiece, across: Across) -> str:
    if len({each.bond_row for each in across.pieces}) == 1:
        return "every course"
    return "1, 3, 5 …" if piece.bond_row == 0 else "2, 4, 6 …"
