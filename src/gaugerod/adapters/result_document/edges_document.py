"""How the edges are made and what they take, as the result document tells it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine
from gaugerod.edges.answer import EdgePart, LeadPieces, MadeEdge, RoofEdges, UnitRun

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.edges_shape import (
        EdgePartDocument,
        EdgesDocument,
        LeadPiecesDocument,
        MadeEdgeDocument,
        UnitRunDocument,
    )


def edges_document(edges: RoofEdges) -> EdgesDocument:
    """Every edge and opening."""
    return {"edges": [_edge(edge) for edge in edges.edges], "lead_kg": fine(edges.lead_kg)}


def _edge(edge: MadeEdge) -> MadeEdgeDocument:
    line, opening = edge.line, edge.opening
    slopes = [] if opening is None else [opening.slope]
    courses = [] if opening is None else [opening.courses_count]
    return {
        "name": edge.name,
        "kind": None if line is None else line.kind.value,
        "slopes": slopes if line is None else list(line.slopes),
        "length_mm": None if line is None else fine(line.length_mm),
        "laid_mm": None if line is None else fine(line.laid_mm),
        "slope_deg": None if line is None else fine(line.slope_deg),
        "courses": courses if line is None else list(line.courses_count),
        "width_mm": None if opening is None else fine(opening.width_mm),
        "height_mm": None if opening is None else fine(opening.height_mm),
        "made": edge.made,
        "clear_mm": None if edge.clear_mm is None else fine(edge.clear_mm),
        "run": None if edge.run is None else _run(edge.run),
        "parts": [_part(part) for part in edge.parts],
        "lead": [_lead(pieces) for pieces in edge.lead],
        "says": list(edge.says),
    }


def _run(run: UnitRun) -> UnitRunDocument:
    return {
        "units": run.units_count,
        "whole": run.whole_count,
        "cut_mm": [fine(cut_mm) for cut_mm in run.cut_mm],
        "cut_long_mm": [fine(long_mm) for long_mm in run.cut_long_mm],
        "cover_mm": fine(run.cover_mm),
        "lap_mm": fine(run.lap_mm),
        "length_mm": fine(run.length_mm),
    }


def _part(part: EdgePart) -> EdgePartDocument:
    return {
        "item": part.item,
        "what": part.what,
        "net": fine(part.net),
        "unit": part.unit.value,
        "how": part.how,
        "mass_kg": None if part.mass_kg is None else fine(part.mass_kg),
        "source": part.citation.source,
        "basis": part.citation.basis.value,
    }


def _lead(pieces: LeadPieces) -> LeadPiecesDocument:
    return {
        "use": pieces.use.value,
        "code": pieces.code,
        "thickness_mm": fine(pieces.thickness_mm),
        "kg_m2": fine(pieces.kg_m2),
        "count": pieces.count,
        "length_mm": fine(pieces.length_mm),
        "width_mm": fine(pieces.width_mm),
        "run_mm": fine(pieces.run_mm),
        "lap_mm": fine(pieces.lap_mm),
        "mass_kg": fine(pieces.mass_kg),
        "how": pieces.how,
        "sources": [{"source": each.source, "basis": each.basis.value} for each in pieces.citations],
    }
