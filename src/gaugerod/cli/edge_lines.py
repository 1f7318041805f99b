"""The edges for the terminal: how each kind is made, its length, its units, its lead."""

from collections.abc import Iterator

from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.cli.lines import wrapped
from gaugerod.edges.answer import MadeEdge, RoofEdges
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted

_COLUMN_COUNT = 17


def edge_lines(result: Result) -> Iterator[str]:
    """The edges that are made, kind by kind; and where to read what is to order."""
    unit = result.job.show_lengths_in
    lines = [] if result.edges is None else list(_made(result.edges, unit))
    if lines:
        yield from ("", "Edges")
        yield from lines
    if result.take_off is not None and result.take_off.lines:
        yield ""
        yield "What to order: gaugerod take-off, or gaugerod order, with the same job file."


def _made(edges: RoofEdges, unit: LengthUnit) -> Iterator[str]:
    """Edges alike in kind and in how they are made, together; then openings; then all lead."""
    gathered: dict[tuple[str, str], list[MadeEdge]] = {}
    for edge in edges.edges:
        if edge.line is not None and edge.made:
            gathered.setdefault((edge.line.kind.value, edge.made), []).append(edge)
    for (kind, made), alike in gathered.items():
        laid_mm = sum(edge.line.laid_mm for edge in alike if edge.line is not None)
        yield from wrapped(
            "; ".join([f"{write_length(laid_mm, unit)}, {made}", *_takes(alike)]), first=_column(kind.replace("-", " "))
        )
    for edge in edges.edges:
        if edge.opening is not None and edge.made:
            yield from wrapped(
                "; ".join([f"{edge.opening.slope}, {edge.opening.name}: {edge.made}", *_takes([edge])]),
                first=_column("opening"),
            )
    if edges.lead_kg:
        yield f"{_column('lead')}{edges.lead_kg:.1f} kg in all"


def _column(kind: str) -> str:
    return f"  {kind:14} ".ljust(_COLUMN_COUNT)


def _takes(edges: list[MadeEdge]) -> Iterator[str]:
    units_count = sum(edge.run.units_count for edge in edges if edge.run is not None)
    if units_count:
        yield counted(units_count, "unit")
    lead_kg = sum(pieces.mass_kg for edge in edges for pieces in edge.lead)
    if lead_kg:
        yield f"{lead_kg:.1f} kg of lead"
