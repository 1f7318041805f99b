"""Every unit of a slope, and which offcut serves which cut, as the result document tells it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine, fine_points
from gaugerod.job.result import Laid
from gaugerod.laying.cut_unit import Cut, CutUnit
from gaugerod.laying.offcuts import OffcutPlan

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.roof_shape import (
        CutUnitDocument,
        LayingDocument,
        OffcutsDocument,
        SawCutDocument,
    )


def laying_document(laid: Laid) -> LayingDocument:
    """Every unit of one slope."""
    laying = laid.laying
    return {
        "whole": laid.whole_units_count,
        "cut": len(laid.pieces),
        "runs": [{"course": run.course + 1, "first": run.first, "count": run.count} for run in laying.runs],
        "cuts": [_piece(piece) for piece in laid.pieces],
        "slivers": laying.slivers.count,
        "bare_mm2": fine(laying.bare_mm2),
    }


def _piece(piece: CutUnit) -> CutUnitDocument:
    outline, *holes = piece.rings_mm
    longest = max(piece.cuts, key=lambda cut: cut.length_mm)
    return {
        "number": piece.number,
        "course": piece.course + 1,
        "unit": piece.index,
        "outline_mm": fine_points(outline),
        "holes_mm": [fine_points(hole) for hole in holes],
        "unit_outline_mm": fine_points(piece.own_rings_mm[0]),
        "edges": list(dict.fromkeys(cut.edge.name for cut in piece.cuts)),
        "cuts": [_cut(cut) for cut in piece.cuts],
        "length_mm": fine(longest.length_mm),
        "angle_deg": fine(longest.angle_deg),
        "area_mm2": fine(piece.area_mm2),
        "shows_mm2": fine(piece.shows_mm2),
        "whole_shows_mm2": fine(piece.whole_shows_mm2),
        "nibs_kept": piece.nibs_kept_count,
        "nail_holes_kept": piece.holes_kept_count,
        "remedy": piece.remedy.value,
        "remark": piece.remark,
        "source": piece.citation.source,
        "basis": piece.citation.basis.value,
    }


def _cut(cut: Cut) -> SawCutDocument:
    start, end = fine_points((cut.start_mm, cut.end_mm))
    return {
        "edge": cut.edge.name,
        "from_mm": start,
        "to_mm": end,
        "length_mm": fine(cut.length_mm),
        "angle_deg": fine(cut.angle_deg),
    }


def offcuts_document(plan: OffcutPlan, pieces: Sequence[CutUnit]) -> OffcutsDocument:
    """The plan of offcuts over the pieces of all slopes, in their order."""
    return {
        "pieces": plan.pieces_count,
        "units": plan.units_count,
        "saved": plan.saved_count,
        "kerf_mm": fine(plan.kerf_mm),
        "by_edges": [{"edges": list(edges), "pairs": count} for edges, count in plan.by_edges],
        "uses": [
            {
                "first": pieces[use.first].number,
                "second": pieces[use.second].number,
                "first_shift_mm": fine(use.first_shift_mm),
                "second_shift_mm": fine(use.second_shift_mm),
            }
            for use in plan.uses
        ],
    }
