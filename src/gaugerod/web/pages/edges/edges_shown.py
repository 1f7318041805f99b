"""The edges as the page shows them: lengths, units, parts, lead and sections of the sheet, laid out for a screen."""

from collections.abc import Iterator

from gaugerod.basis.finding import Verdict
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import EdgePart, LeadPieces, MadeEdge, RoofEdges
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.edge_detail import detail_placed
from gaugerod.sheets.edges_sheet import CAUTIONS, details
from gaugerod.sheets.findings_by_part import parted_edges
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.quantity_said import mass_said, quantity_said
from gaugerod.web.drawn import POCKET_MM, markup
from gaugerod.web.pages.edges.context import Answered, EdgeShown, SectionShown, TakesShown
from gaugerod.web.pages.findings.rows import finding_rows

_POCKET_HIGH_MM = 70.0


def answered(result: Result, edges: RoofEdges, *, job: str) -> Answered:
    """The answer of the whole job."""
    unit = result.job.show_lengths_in
    found = parted_edges(result)
    made = any(edge.made for edge in edges.edges)
    return Answered(
        edges=tuple(_edge(edge, unit) for edge in edges.edges),
        drawings=tuple(_drawings(result)),
        lead=f"{mass_said(edges.lead_kg)} of lead in all" if edges.lead else "",
        cautions=CAUTIONS,
        outside=finding_rows(found, Verdict.OUTSIDE, unit=unit),
        not_covered=finding_rows(found, Verdict.NOT_COVERED, unit=unit),
        within=finding_rows(found, Verdict.WITHIN, unit=unit),
        not_set_out=tuple(each.slope.name for each in result.not_set_out),
        sheet=f"/jobs/{job}/sheets/edges.pdf" if made else "",
    )


def _drawings(result: Result) -> Iterator[SectionShown]:
    """A section of each way an edge is made; for a phone with numbers, and what they stand for under it."""
    for detail, same in details(result):
        pocket = detail_placed(detail, width_mm=POCKET_MM, height_mm=_POCKET_HIGH_MM, listed=False)
        yield SectionShown(
            wide=markup(detail_placed(detail)),
            pocket=markup(pocket),
            keys=tuple((each.name, each.value) for each in detail.measures),
            caption=f"{_first_up('; '.join(same))}. Only drawn: {detail.only_drawn}.",
        )


def _edge(edge: MadeEdge, unit: LengthUnit) -> EdgeShown:
    return EdgeShown(
        name=edge.name,
        made=edge.made,
        numbers=tuple(_numbers(edge, unit)),
        says=edge.says,
        parts=tuple(_part(part, unit) for part in edge.parts),
        lead=tuple(_lead(pieces, unit) for pieces in edge.lead),
    )


def _numbers(edge: MadeEdge, unit: LengthUnit) -> Iterator[tuple[str, str]]:
    """Figures with their names, the largest first."""
    if edge.line is not None:
        yield "long, as laid", write_length(edge.line.laid_mm, unit)
    elif edge.opening is not None:
        yield "all round", write_length(2 * (edge.opening.width_mm + edge.opening.height_mm), unit)
    if edge.run is not None:
        yield "units" if edge.run.units_count != 1 else "unit", str(edge.run.units_count)
        if edge.run.cut_mm:
            cut = fine_length(edge.run.cut_long_mm[0], unit)
            yield "cut long", f"{len(edge.run.cut_mm)} × {cut}" if len(edge.run.cut_mm) > 1 else cut
    if edge.clear_mm is not None:
        yield "clear", write_length(edge.clear_mm, unit)


def _part(part: EdgePart, unit: LengthUnit) -> TakesShown:
    return TakesShown(
        what=part.what, amount=quantity_said(part.net, part.unit.value, unit), how=part.how, source=str(part.citation)
    )


def _lead(pieces: LeadPieces, unit: LengthUnit) -> TakesShown:
    size = f"{write_length(pieces.length_mm, unit)} × {write_length(pieces.width_mm, unit)}"
    lap = f", lap {write_length(pieces.lap_mm, unit)}" if pieces.lap_mm else ""
    return TakesShown(
        what=f"{pieces.use.value.replace('-', ' ')}, code {pieces.code}: {counted(pieces.count, 'piece')} of {size}{lap}",
        amount=f"{pieces.mass_kg:.1f} kg",
        how=pieces.how,
        source="; ".join(dict.fromkeys(str(each) for each in pieces.citations)),
    )


def _first_up(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
