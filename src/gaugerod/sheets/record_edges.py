"""The edges in the hand-over record: how each was made, its units, its parts, and its lead with the code."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import EdgePart, LeadPieces, MadeEdge, UnitRun
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.quantity_said import mass_said, quantity_said
from gaugerod.sheets.sheet import Block, Column, ColumnKind, Heading, Prose, Table

NOT_SAID = "◇ how it was made was not said"


def edge_blocks(result: Result) -> Iterator[Block]:
    """Every edge and opening in a table; then the lead by use and code."""
    unit, edges = result.job.show_lengths_in, result.edges
    yield Heading(text="Edges", level=1, kept_mm=50.0)
    if edges is None or not edges.edges:
        yield Prose(text="No edge was worked out: nothing is recorded of ridge, hips, verges, valleys or walls.")
        return
    yield Table(
        columns=(
            Column(heading="Edge", share_ratio=1.3),
            Column(heading="How it is made, and what it takes", share_ratio=3.4),
            Column(heading="length", kind=ColumnKind.FIGURES),
        ),
        rows=tuple((edge.name, "\n".join(_made(edge, unit)), _length(edge, unit)) for edge in edges.edges),
    )
    if edges.lead:
        yield Heading(text="Lead", kept_mm=40.0)
        yield Prose(text=f"{mass_said(edges.lead_kg)} in all. Codes are those of the standard for rolled lead sheet.")
        yield _lead_table(edges.edges, unit)


def _made(edge: MadeEdge, unit: LengthUnit) -> Iterator[str]:
    yield f"{edge.made[:1].upper()}{edge.made[1:]}" if edge.made else NOT_SAID
    if edge.clear_mm is not None:
        yield f"{write_length(edge.clear_mm, unit)} clear"
    if edge.run is not None:
        yield _run(edge.run, unit)
    yield from (_part(part, unit) for part in edge.parts)


def _run(run: UnitRun, unit: LengthUnit) -> str:
    said = (
        f"{counted(run.units_count, 'unit')} of {write_length(run.cover_mm, unit)} cover, {run.whole_count} laid whole"
    )
    if not run.cut_mm:
        return said
    cut = f"{len(run.cut_mm)} cut {' and '.join(write_length(long_mm, unit) for long_mm in run.cut_long_mm)} long"
    return f"{said}, {cut}"


def _part(part: EdgePart, unit: LengthUnit) -> str:
    return f"{part.what}: {quantity_said(part.net, part.unit.value, unit)}. Source: {part.citation}"


def _length(edge: MadeEdge, unit: LengthUnit) -> str:
    if edge.line is not None:
        return write_length(edge.line.laid_mm, unit)
    if edge.opening is not None:
        return f"{write_length(edge.opening.width_mm, unit)}\n× {write_length(edge.opening.height_mm, unit)}"
    return "–"


def _lead_table(edges: tuple[MadeEdge, ...], unit: LengthUnit) -> Table:
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="Where, what for, and source (how sure)", share_ratio=3.0),
            Column(heading="code", kind=figures),
            Column(heading="pieces", kind=figures),
            Column(heading="length × width", kind=figures),
            Column(heading="lap", kind=figures),
            Column(heading="mass", kind=figures),
        ),
        rows=tuple(_lead_row(edge.name, pieces, unit) for edge in edges for pieces in edge.lead),
    )


def _lead_row(name: str, pieces: LeadPieces, unit: LengthUnit) -> tuple[str, ...]:
    sources = "\n".join(f"Source: {each}" for each in dict.fromkeys(map(str, pieces.citations)))
    return (
        f"{name}: {pieces.use.value.replace('-', ' ')}\n{sources}".rstrip("\n"),
        f"{pieces.code}, {pieces.thickness_mm:g} mm",
        str(pieces.count),
        f"{write_length(pieces.length_mm, unit)}\n× {write_length(pieces.width_mm, unit)}",
        write_length(pieces.lap_mm, unit) if pieces.lap_mm else "none",
        mass_said(pieces.mass_kg),
    )
