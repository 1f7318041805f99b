"""The edges of the whole job: lengths, units, parts, lead piece by piece, and a section of each detail that is used."""

from collections.abc import Callable, Iterator, Mapping, Sequence

from gaugerod.basis.lengths import LengthUnit
from gaugerod.edges.answer import MadeEdge, RoofEdges
from gaugerod.edges.ask import LineKind
from gaugerod.job.result import Result
from gaugerod.sheets.chimney_detail import chimney_detail
from gaugerod.sheets.edge_detail import Detail, detail_placed
from gaugerod.sheets.edges_steps import steps_by_kind
from gaugerod.sheets.edges_tables import detail_figures, edge_table, lead_by_piece, parts_by_edge
from gaugerod.sheets.finding_table import finding_alarm, finding_table, verdicts_counted
from gaugerod.sheets.hip_detail import hip_detail
from gaugerod.sheets.job_sheet_foot import job_foot
from gaugerod.sheets.ridge_detail import ridge_detail
from gaugerod.sheets.sheet import Block, Bullets, Heading, PaperSize, Pictures, Prose, Sheet
from gaugerod.sheets.side_wall_detail import side_wall_detail
from gaugerod.sheets.top_wall_detail import top_wall_detail
from gaugerod.sheets.unit_run_strip import alike_runs, run_said, run_strip
from gaugerod.sheets.valley_detail import valley_detail
from gaugerod.sheets.verge_detail import verge_detail

CAUTIONS = (
    "Edges are where people fall: guard rails all round, a fixed way up to ridge and hips; never stand on a hip or verge unit.",
    "No work on edges in high wind, rain, frost or thunder; tie down what is loose before you leave it.",
    "Lead, mortar and ridge units are heavy: hoist them, spread them out, and never stack them on one rafter or on the ridge.",
    "Lead is poisonous: gloves, clean hands before food. Its fumes too: no torch, and no burning off.",
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
    yield edge_table(edges.edges, unit)
    drawn = tuple(details(result))
    yield from _sections(result, drawn)
    yield from _runs(edges.edges, unit)
    yield Heading(text="Before you start", kept_mm=30.0)
    yield Bullets(lines=CAUTIONS)
    yield from steps_by_kind(edges.edges)
    yield from parts_by_edge(edges.edges, unit)
    yield from lead_by_piece(edges, unit)
    if drawn:
        yield Heading(text="Sources of the details", kept_mm=40.0)
        yield detail_figures(drawn)
    if edges.findings:
        yield Heading(text="Findings", kept_mm=50.0)
        yield verdicts_counted(edges.findings, name="", unit=unit)
        yield finding_table(edges.findings, name="", unit=unit)


def _sections(result: Result, drawn: Sequence[tuple[Detail, tuple[str, ...]]]) -> Iterator[Block]:
    """A picture of each detail, and the edges that are made but have none."""
    if not drawn:
        return
    yield Heading(text="Details in section", kept_mm=90.0)
    yield Prose(
        text="To scale where figures stand. One for each way an edge is made; the caption says which edges it is for. "
        "Where each figure comes from stands at the end."
    )
    for detail, same in drawn:
        placed = detail_placed(detail)
        yield Pictures(
            pictures=((placed, f"{'; '.join(same)}, {placed.scale_said}. Only drawn: {detail.only_drawn}."),)
        )
    missing = _without_detail(result, {name for _, same in drawn for name in same})
    if missing:
        yield Prose(
            text=f"No section of {'; '.join(missing)}: a figure it would be drawn from is not known here. The angle between two "
            "slopes is known from a building's plan only."
        )


def _without_detail(result: Result, drawn: set[str]) -> tuple[str, ...]:
    """Lines that are made and have no section. Eaves have theirs elsewhere, and an opening's kit is its maker's."""
    return tuple(
        edge.name
        for edge in (() if result.edges is None else result.edges.edges)
        if edge.made and edge.line is not None and edge.line.kind in _DETAILS and edge.name not in drawn
    )


def _runs(edges: Sequence[MadeEdge], unit: LengthUnit) -> Iterator[Block]:
    """Where each unit of a ridge or hip goes; a line under one unit is told in words alone."""
    runs = alike_runs(edges, unit=unit)
    if not runs:
        return
    yield Heading(text="Where the units go", kept_mm=60.0)
    yield Prose(text="Cut units are the dark ones. Mark the joints before the first unit is fixed.")
    for edge, run, names in runs:
        said = f"{'; '.join(names)}. {run_said(edge, run, unit=unit)}"
        if run.units_count > 1:
            placed = run_strip(edge, run, unit=unit)
            yield Pictures(pictures=((placed, f"{said} {placed.scale_said} along."),))
        else:
            yield Prose(text=said)


def details(result: Result) -> Iterator[tuple[Detail, tuple[str, ...]]]:
    """A section of the first edge of each kind that is made and can be drawn, and the names of all it is for: those whose
    own section would show the same, figure for figure.
    """
    if result.edges is None:
        return
    alike: dict[tuple[str, ...], tuple[Detail, list[str]]] = {}
    for edge in result.edges.edges:
        detail = _detail(result, edge) if edge.made else None
        if detail is not None:
            alike.setdefault(_likeness(edge, detail), (detail, []))[1].append(edge.name)
    for detail, names in alike.values():
        yield detail, tuple(names)


def _likeness(edge: MadeEdge, detail: Detail) -> tuple[str, ...]:
    """What a section shows, but for the names of the slopes in it."""
    kind = "opening" if edge.line is None else edge.line.kind.value
    slopes = edge.line.slopes if edge.line is not None else (edge.opening.slope,) if edge.opening is not None else ()
    said = (("" if each.name in slopes else each.name, each.value) for each in detail.measures)
    return (kind, edge.made, *(word for both in said for word in both))


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
