"""The cut list: every piece to saw, edge by edge, with what it is cut from and what it serves."""

from collections.abc import Iterator
from itertools import groupby

from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Result, SlopeResult
from gaugerod.laying.ask import Unit
from gaugerod.laying.cut_unit import Cut, CutUnit, Remedy
from gaugerod.setting_out.said import counted
from gaugerod.sheets.lengths_shown import bare_length, unit_heading
from gaugerod.sheets.rod_tables import TICK
from gaugerod.sheets.sheet import Column, ColumnKind, Table

REMEDIES = {
    Remedy.AS_CUT: "as cut",
    Remedy.UNIT_AND_A_HALF: "from a unit-and-a-half, with its neighbour",
    Remedy.DOUBLE: "from a double unit, with its neighbour",
    Remedy.BOND_AND_CLIP: "bond to its neighbour and clip",
    Remedy.CHOOSE_WIDTH: "choose one this wide, or shift the joints",
}


def edges_cut(slope: SlopeResult) -> tuple[str, ...]:
    """The edges that cut something on this slope, in the order of its sides."""
    if slope.laid is None:
        return ()
    named = [edge.name for edge in slope.laid.ask.edges]
    cut = {cut.edge.name for piece in slope.laid.pieces for cut in piece.cuts}
    return tuple(name for name in dict.fromkeys(named) if name in cut)


def cut_table(result: Result, slope: SlopeResult, edge: str) -> Table:
    """Every piece this edge cuts, from the eaves up; neighbours in a course that are sawn alike share a row."""
    unit = result.job.show_lengths_in
    serves = offcut_words(result)
    return Table(
        columns=(
            Column(heading="piece", kind=ColumnKind.MARK),
            Column(heading="course", kind=ColumnKind.FIGURES),
            Column(heading=f"cut, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
            Column(heading="angle to the course", kind=ColumnKind.FIGURES),
            Column(heading=f"from tail, {unit_heading(unit)}", kind=ColumnKind.FIGURES),
            Column(heading="shows", kind=ColumnKind.FIGURES),
            Column(heading="holds by"),
            Column(heading="remedy and offcut", share_ratio=1.0),
            Column(heading="done", kind=ColumnKind.TICK),
        ),
        rows=tuple(_rows(slope, edge, unit, serves)),
        set_count=5,
    )


def _rows(slope: SlopeResult, edge: str, unit: LengthUnit, serves: dict[int, str]) -> Iterator[tuple[str, ...]]:
    if slope.laid is None:
        return
    laid = slope.laid.ask.unit
    cuts = ((piece, cut) for piece in slope.laid.pieces for cut in piece.cuts if cut.edge.name == edge)
    told = ((piece.number, _row(piece, cut, laid, unit, serves.get(piece.number, ""))) for piece, cut in cuts)
    # Pieces are numbered along a course, so those sawn alike have numbers that differ from their places by the same.
    in_order = ((number - place, number, row) for place, (number, row) in enumerate(told))
    for (_, row), alike in groupby(in_order, key=lambda each: (each[0], each[2])):
        numbers = [number for _, number, _ in alike]
        named = f"{numbers[0]}" if len(numbers) == 1 else f"{numbers[0]} to {numbers[-1]}"
        yield (named, *row)


def _row(piece: CutUnit, cut: Cut, laid: Unit, unit: LengthUnit, serves: str) -> tuple[str, ...]:
    return (
        str(piece.course + 1),
        bare_length(cut.length_mm, unit),
        f"{cut.angle_deg:.1f}°",
        f"{bare_length(cut.start_mm[0], unit)} → {bare_length(cut.end_mm[0], unit)}",
        f"{100 * piece.shows_ratio:.0f} %",
        _held_by(piece, laid),
        f"{REMEDIES[piece.remedy]}{serves}",
        TICK,
    )


def _held_by(piece: CutUnit, laid: Unit) -> str:
    """What is left of nibs and holes, of those the unit has."""
    if not (laid.nibs or laid.holes):
        return "holes not known"
    kept = ((piece.nibs_kept_count, laid.nibs, "nib"), (piece.holes_kept_count, laid.holes, "hole"))
    return ", ".join(counted(count, what) if count else f"no {what}" for count, of, what in kept if of)


def offcut_words(result: Result) -> dict[int, str]:
    """For each piece of a pair: which other piece comes from the same unit."""
    if result.offcuts is None:
        return {}
    pieces = [piece for slope in result.slopes if slope.laid is not None for piece in slope.laid.pieces]
    words: dict[int, str] = {}
    for use in result.offcuts.uses:
        first, second = pieces[use.first].number, pieces[use.second].number
        words[first] = f"; its offcut makes piece {second}"
        words[second] = f"; from the offcut of piece {first}"
    return words


def _whole_job(result: Result) -> str:
    return "On all slopes together: " if len(result.slopes) > 1 else ""


def offcut_sentence(result: Result) -> str:
    """The saving, against none."""
    if result.offcuts is None:
        return "Nothing is cut."
    plan = result.offcuts
    pairs = ", ".join(f"{one} with {other}: {count}" for (one, other), count in plan.by_edges)
    joined = f". {pairs[0].upper()}{pairs[1:]}" if pairs else ""
    return (
        f"{_whole_job(result)}{plan.pieces_count} pieces to saw from whole units. With offcuts used, {plan.units_count} units "
        f"are cut instead of {plan.pieces_count}: {plan.saved_count} saved, the most there can be at two pieces to a unit and "
        f"{plan.kerf_mm:g} mm for the saw{joined}."
    )
