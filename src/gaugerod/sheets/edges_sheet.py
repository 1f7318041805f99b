"""The edges of the whole job: lengths, units, parts, lead piece by piece, and a section of each detail that is used."""

from collections.abc import Callable, Iterator, Mapping, Sequence

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import LeadPieces, MadeEdge, RoofEdges
from gaugerod.edges.ask import LineKind
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.chimney_detail import chimney_detail
from gaugerod.sheets.edge_detail import Detail, detail_placed
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.hip_detail import hip_detail
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.quantity_said import mass_said, quantity_said
from gaugerod.sheets.ridge_detail import ridge_detail
from gaugerod.sheets.sheet import Block, Bullets, Column, ColumnKind, Heading, PaperSize, Pictures, Prose, Sheet, Table
from gaugerod.sheets.side_wall_detail import side_wall_detail
from gaugerod.sheets.top_wall_detail import top_wall_detail
from gaugerod.sheets.valley_detail import valley_detail
from gaugerod.sheets.verge_detail import verge_detail

CAUTIONS = (
    "Edges are where people fall: guard rails all round, a fixed way up to ridge and hips; never stand on a hip or verge unit.",
    "Lead is poisonous: gloves, clean hands before food.",
    "Cut tile, slate and mortar make silica dust: wet or with extraction, masked.",
    "Old undercloak, flashings and flues may hold asbestos: have them looked at first. Mind overhead cables at every gable.",
    "What is asked for here is the least by rule. The makers' instructions, the local code and a licensed designer go before it.",
)


def edges_sheet(result: Result, *, size: PaperSize) -> Sheet:
    """The sheet; its sections are of the first edge of each kind that is made."""
    return Sheet(
        title=result.job.title,
        subtitle="Edges: ridges, hips, verges, valleys, walls, eaves and openings of the whole job.",
        size=size,
        foot=job_foot(result),
        region=result.job.edition.value,
        blocks=() if result.edges is None else tuple(_blocks(result, result.edges)),
    )


def _blocks(result: Result, edges: RoofEdges) -> Iterator[Block]:
    unit = result.job.show_lengths_in
    alarm = finding_alarm(edges.findings, name="", unit=unit)
    yield Heading(text="Edges", level=1)
    if alarm is not None:
        yield alarm
    yield _edge_table(edges.edges, unit)
    pictures = [(detail, same) for detail, same in details(result)]
    if pictures:
        yield Heading(text="Details in section", kept_mm=90.0)
        yield Prose(
            text="To scale where figures stand. One for each way an edge is made; the caption says which edges it is for."
        )
        for detail, same in pictures:
            placed = detail_placed(detail)
            yield Pictures(
                pictures=((placed, f"{'; '.join(same)}, {placed.scale_said}. Only drawn: {detail.only_drawn}."),)
            )
    yield from _how(edges.edges)
    yield from _parts(edges.edges, unit)
    yield from _lead(edges, unit)
    yield Heading(text="Before you start", kept_mm=30.0)
    yield Bullets(lines=CAUTIONS)
    if edges.findings:
        yield Heading(text="Findings", kept_mm=50.0)
        yield verdicts_counted(edges.findings, name="", unit=unit)
        yield finding_table(edges.findings, name="", unit=unit)


def details(result: Result) -> Iterator[tuple[Detail, tuple[str, ...]]]:
    """A section of the first edge of each kind that is made and can be drawn, and the names of all it is for."""
    if result.edges is None:
        return
    alike: dict[tuple[str, str, float], list[MadeEdge]] = {}
    for edge in result.edges.edges:
        if edge.made:
            alike.setdefault((_kind(edge), edge.made, round(_steep_deg(result, edge), 1)), []).append(edge)
    for edges in alike.values():
        detail = next((found for each in edges if (found := _detail(result, each)) is not None), None)
        if detail is not None:
            yield detail, tuple(each.name for each in edges)


def _kind(edge: MadeEdge) -> str:
    return "opening" if edge.line is None else edge.line.kind.value


def _steep_deg(result: Result, edge: MadeEdge) -> float:
    """What makes two details look different: the pitch of the first slope, or the rise of a hip or valley."""
    names = edge.line.slopes if edge.line is not None else (edge.opening.slope,) if edge.opening is not None else ()
    return next((slope.slope.pitch_deg for slope in result.slopes if slope.slope.name in names), 0.0)


_DETAILS: Mapping[LineKind, Callable[[Result, MadeEdge], Detail | None]] = {
    LineKind.RIDGE: ridge_detail,
    LineKind.MONO_RIDGE: ridge_detail,
    LineKind.HIP: hip_detail,
    LineKind.VALLEY: valley_detail,
    LineKind.VERGE: verge_detail,
    LineKind.SIDE_ABUTMENT: side_wall_detail,
    LineKind.TOP_ABUTMENT: top_wall_detail,
}
"""Eaves have their section on the setting-out sheet."""


def _detail(result: Result, edge: MadeEdge) -> Detail | None:
    if edge.line is None:
        return chimney_detail(result, edge)
    drawn = _DETAILS.get(edge.line.kind)
    return None if drawn is None else drawn(result, edge)


def _edge_table(edges: Sequence[MadeEdge], unit: LengthUnit) -> Table:
    figures = ColumnKind.FIGURES
    return Table(
        columns=(
            Column(heading="Edge", share_ratio=1.6),
            Column(heading="How it is made", share_ratio=2.2),
            Column(heading="length laid", kind=figures),
            Column(heading="units", kind=figures),
            Column(heading="cut to cover", kind=figures),
            Column(heading="clear", kind=figures),
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
    cut = "–" if run is None or not run.cut_mm else f"{len(run.cut_mm)} × {fine_length(run.cut_mm[0], unit)}"
    return (
        edge.name,
        edge.made or "◇ not said: its length only",
        length,
        "–" if run is None else str(run.units_count),
        cut,
        "–" if edge.clear_mm is None else write_length(edge.clear_mm, unit),
    )


def _how(edges: Sequence[MadeEdge]) -> Iterator[Block]:
    """The steps of every edge that is made, each sentence once under the edges it is said of."""
    told: dict[tuple[str, ...], list[str]] = {}
    for edge in edges:
        if edge.made:
            told.setdefault(edge.says, []).append(edge.name)
    for says, names in told.items():
        yield Heading(text="; ".join(names), kept_mm=20.0)
        yield Bullets(lines=says)


def _parts(edges: Sequence[MadeEdge], unit: LengthUnit) -> Iterator[Block]:
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
                Column(heading="net", kind=ColumnKind.FIGURES),
            ),
            rows=rows,
        )


def _lead(edges: RoofEdges, unit: LengthUnit) -> Iterator[Block]:
    if not edges.lead:
        return
    figures = ColumnKind.FIGURES
    yield Heading(text="Lead, piece by piece", kept_mm=40.0)
    yield Prose(
        text=f"{mass_said(edges.lead_kg)} in all. Lengths with their laps; widths flat, before they are dressed."
    )
    yield Table(
        columns=(
            Column(heading="Edge", share_ratio=1.0),
            Column(heading="What for, how it was come by, and sources (how sure)", share_ratio=2.8),
            Column(heading="code", kind=figures),
            Column(heading="pieces", kind=figures),
            Column(heading="each", kind=figures),
            Column(heading="lap", kind=figures),
            Column(heading="kg", kind=figures),
        ),
        rows=tuple(_lead_row(edge.name, pieces, unit) for edge in edges.edges for pieces in edge.lead),
    )
    totals: dict[tuple[int, float], list[LeadPieces]] = {}
    for pieces in edges.lead:
        totals.setdefault((pieces.code, pieces.width_mm), []).append(pieces)
    yield Bullets(
        lines=tuple(
            f"Code {code}, {write_length(width_mm, unit)} wide: {counted(sum(each.count for each in same), 'piece')}, "
            f"{sum(each.count * each.length_mm for each in same) / 1000:.2f} m, {mass_said(sum(each.mass_kg for each in same))}"
            for (code, width_mm), same in sorted(totals.items())
        )
    )


def _lead_row(name: str, pieces: LeadPieces, unit: LengthUnit) -> tuple[str, ...]:
    sources = "; ".join(dict.fromkeys(str(each) for each in pieces.citations))
    return (
        name,
        f"{pieces.use.value.replace('-', ' ')}: {pieces.how}\nSources: {sources}",
        f"{pieces.code}\n{pieces.thickness_mm:g} mm",
        str(pieces.count),
        f"{write_length(pieces.length_mm, unit)}\n× {write_length(pieces.width_mm, unit)}",
        write_length(pieces.lap_mm, unit) if pieces.lap_mm else "–",
        f"{pieces.mass_kg:.1f}",
    )
