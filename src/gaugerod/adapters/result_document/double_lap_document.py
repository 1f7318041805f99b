"""What the result document says of plain tiles, slates and random slates besides courses and perps."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine
from gaugerod.setting_out.diminishing.answer import DiminishingPlan, DiminishingRod
from gaugerod.setting_out.double_lap_across import VergePiece
from gaugerod.setting_out.double_lap_extras import DoubleLapExtras, DoubleLapRod

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.double_lap_shape import (
        DiminishingDocument,
        DiminishingRodDocument,
        DoubleLapDocument,
        DoubleLapRodDocument,
        VergePieceDocument,
    )


def double_lap_document(extras: DoubleLapExtras) -> DoubleLapDocument:
    """Tails, laps, the course under the eaves and the short one at the top."""
    return {
        "marks_are": extras.marks_are,
        "under_eaves_length_mm": fine(extras.under_eaves_length_mm),
        "holing_mm": None if extras.holing_mm is None else fine(extras.holing_mm),
        "greatest_headlap_mm": fine(extras.greatest_headlap_mm),
        "rods": [_rod(rod) for rod in extras.rods],
    }


def _rod(rod: DoubleLapRod) -> DoubleLapRodDocument:
    short = rod.short
    return {
        "at_mm": fine(rod.at_mm),
        "tails_mm": _fine_all(rod.tails_mm),
        "under_eaves_mark_mm": fine(rod.under_eaves_mark_mm),
        "short": None
        if short is None
        else {
            "mark_mm": fine(short.mark_mm),
            "tail_mm": fine(short.tail_mm),
            "length_mm": fine(short.length_mm),
            "above_mm": fine(short.above_mm),
        },
        "laps_mm": _fine_all(rod.laps_mm),
    }


def verge_piece_document(piece: VergePiece) -> VergePieceDocument:
    """The unit at one verge in one kind of course."""
    return {
        "at": piece.at,
        "bond_row": piece.bond_row,
        "made_of": piece.made_of.value,
        "width_mm": fine(piece.width_mm),
    }


def diminishing_document(plan: DiminishingPlan) -> DiminishingDocument:
    """Lengths up the slope, every rod, every heap, and what to do with them."""
    return {
        "aim": plan.aim.value,
        "groups": [
            {
                "length_mm": fine(group.length_mm),
                "first_course": group.first_course,
                "last_course": group.last_course,
                "gauge_mm": fine(group.gauge_mm),
                "drop_gauge_mm": None if group.drop_gauge_mm is None else fine(group.drop_gauge_mm),
            }
            for group in plan.groups
        ],
        "under_eaves_length_mm": fine(plan.under_eaves_length_mm),
        "least_lap_mm": fine(plan.least_lap_mm),
        "rods": [_diminishing_rod(rod) for rod in plan.rods],
        "heaps": [
            {
                "length_mm": fine(heap.length_mm),
                "courses_there": heap.courses_there_count,
                "courses_laid": heap.courses_laid_count,
                "under_eaves_run_mm": fine(heap.under_eaves_run_mm),
                "left_run_mm": fine(heap.left_run_mm),
                "left_slates": heap.left_slates_count,
            }
            for heap in plan.heaps
        ],
        "sorting": list(plan.sorting),
        "top_notes": list(plan.top_notes),
    }


def _diminishing_rod(rod: DiminishingRod) -> DiminishingRodDocument:
    return {
        "at_mm": fine(rod.at_mm),
        "rafter_mm": fine(rod.rafter_mm),
        "under_eaves_mark_mm": fine(rod.under_eaves_mark_mm),
        "marks_mm": _fine_all(rod.marks_mm),
        "tails_mm": _fine_all(rod.tails_mm),
        "margins_mm": _fine_all(rod.margins_mm),
        "laps_mm": _fine_all(rod.laps_mm),
        "cut_lengths_mm": [
            {"course": course, "length_mm": fine(length_mm)} for course, length_mm in rod.cut_lengths_mm
        ],
    }


def _fine_all(lengths_mm: Iterable[float]) -> list[float]:
    return [fine(length_mm) for length_mm in lengths_mm]
