"""Tables of the edges: every edge with its units, its parts, its lead piece by piece, and the figures of the details."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import LeadPieces, MadeEdge, RoofEdges
from gaugerod.setting_out.said import counted
from gaugerod.sheets.edge_detail import Detail
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.quantity_said import mass_said, quantity_said
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, Prose, Table

_FIGURES = ColumnKind.FIGURES


def edge_table(edges: Sequence[MadeEdge], unit: LengthUnit) -> Table:
    """Every edge and opening: its length, how it is made, its units, its clear width."""
    return Table(
        columns=(
            Column(heading="Edge", share_ratio=1.6),
            Column(heading="How it is made", share_ratio=2.2),
            Column(heading="length laid", kind=_FIGURES),
            Column(heading="units", kind=_FIGURES),
            Column(heading="cut long", kind=_FIGURES),
            Column(heading="clear", kind=_FIGURES),
        ),
        rows=tuple(_edge_row(edge, unit) for edge in edges),
    )


def _edge_row(edge: MadeEdge, unit: LengthUnit) -> tuple[str, ...]:
    run = edge.run
    if edge.line is not None:
        length = write_length(edge.line.laid_mm, unit)
    else:
        length = (
            "" if edge.opening is None else write_length(2 * (edge.opening.width_mm + edge.opening.height_mm), unit)
        )
    cut = "–" if run is None or not run.cut_mm else f"{len(run.cut_mm)} × {fine_length(run.cut_long_mm[0], unit)}"
    return (
        edge.name,
        edge.made or "◇ not said: its length only",
        length,
        "–" if run is None else str(run.units_count),
        cut,
        "–" if edge.clear_mm is None else write_length(edge.clear_mm, unit),
    )


def detail_figures(details: Sequence[tuple[Detail, tuple[str, ...]]]) -> Table:
    """Where the figures of the details come from: each source once, with all it gives."""
    by_source: dict[str, list[str]] = {}
    for detail, _ in details:
        for each in detail.measures:
            if each.source:
                by_source.setdefault(each.source, []).append(f"{each.name} {each.value}".strip())
    return Table(
        columns=(
            Column(heading="Figures of the details", share_ratio=1.4),
            Column(heading="Where they come from (how sure)", share_ratio=1.0),
        ),
        rows=tuple(("; ".join(dict.fromkeys(figures)), source) for source, figures in by_source.items()),
    )


def parts_by_edge(edges: Sequence[MadeEdge], unit: LengthUnit) -> Iterator[Block]:
    """What each edge takes."""
    rows = tuple(
        (
            edge.name,
            f"{part.what}: {part.how}\nSource: {part.citation}",
            quantity_said(part.net, part.unit.value, unit),
        )
        for edge in edges
        for part in edge.parts
    )
    if rows:
        yield Heading(text="Parts, edge by edge", kept_mm=40.0)
        yield Prose(text="Net, before any allowance. The order gathers them.")
        yield Table(
            columns=(
                Column(heading="Edge", share_ratio=1.2),
                Column(heading="What, how it was come by, and source (how sure)", share_ratio=3.2),
                Column(heading="net", kind=_FIGURES),
            ),
            rows=rows,
        )


def lead_by_piece(edges: RoofEdges, unit: LengthUnit) -> Iterator[Block]:
    """Every piece of lead, its sources numbered beneath, and what it comes to by code and width."""
    if not edges.lead:
        return
    yield Heading(text="Lead, piece by piece", kept_mm=40.0)
    yield Prose(
        text=f"{mass_said(edges.lead_kg)} in all. Lengths with their laps; widths flat, before they are dressed. "
        "The numbers of the sources stand beneath."
    )
    sources = tuple(dict.fromkeys(str(each) for pieces in edges.lead for each in pieces.citations))
    yield Table(
        columns=(
            Column(heading="Edge", share_ratio=1.0),
            Column(heading="What for, how it was come by, and sources", share_ratio=2.8),
            Column(heading="code", kind=_FIGURES),
            Column(heading="pieces", kind=_FIGURES),
            Column(heading="each", kind=_FIGURES),
            Column(heading="lap", kind=_FIGURES),
            Column(heading="kg", kind=_FIGURES),
        ),
        rows=tuple(_lead_row(edge.name, pieces, sources, unit) for edge in edges.edges for pieces in edge.lead),
    )
    yield Bullets(lines=tuple(_totals(edges.lead, unit)))
    yield Table(
        columns=(Column(heading="Source", kind=_FIGURES), Column(heading="of the lead (how sure)", share_ratio=1.0)),
        rows=tuple((str(at), source) for at, source in enumerate(sources, 1)),
    )


def _lead_row(name: str, pieces: LeadPieces, sources: Sequence[str], unit: LengthUnit) -> tuple[str, ...]:
    numbers = sorted({sources.index(str(each)) + 1 for each in pieces.citations})
    return (
        name,
        f"{pieces.use.value.replace('-', ' ')}: {pieces.how}\nSources: {', '.join(str(each) for each in numbers)}",
        f"{pieces.code}\n{pieces.thickness_mm:g} mm",
        str(pieces.count),
        f"{write_length(pieces.length_mm, unit)}\n× {write_length(pieces.width_mm, unit)}",
        write_length(pieces.lap_mm, unit) if pieces.lap_mm else "–",
        f"{pieces.mass_kg:.1f}",
    )


def _totals(lead: Sequence[LeadPieces], unit: LengthUnit) -> Iterator[str]:
    totals: dict[tuple[int, float], list[LeadPieces]] = {}
    for pieces in lead:
        totals.setdefault((pieces.code, pieces.width_mm), []).append(pieces)
    for (code, width_mm), same in sorted(totals.items()):
        long_m = sum(each.count * each.length_mm for each in same) / 1000
        yield (
            f"Code {code}, {write_length(width_mm, unit)} wide: {counted(sum(each.count for each in same), 'piece')}, "
            f"{quantity_said(long_m, 'm', unit, up=True)}, {mass_said(sum(each.mass_kg for each in same))}"
        )
