"""What lies beneath the covering and what holds it, as the result document tells it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from gaugerod.adapters.result_document.rounded import fine, fine_points
from gaugerod.fixing.held import Held
from gaugerod.fixing.plan import FixingPlan
from gaugerod.standards.roof_masses import MassBand
from gaugerod.substrate.battens.answer import BattenLine, Battens, SlopeBattens
from gaugerod.substrate.load.weigh import Load
from gaugerod.substrate.underlay.answer import LapBetween, LapOnBatten, RunLap, UnderlayPlan
from gaugerod.substrate.underlay.ask import LapRemedy
from gaugerod.substrate.underlay.cut_rolls import RollCuts
from gaugerod.substrate.ventilation.openings import Ventilation, VentOpening

if TYPE_CHECKING:  # the shapes are for the schema: no document needs them made
    from gaugerod.adapters.result_document.beneath_shape import (
        BattenLineDocument,
        BattensDocument,
        FixingsDocument,
        HeldDocument,
        LoadDocument,
        MassDocument,
        SlopeBattensDocument,
        SlopeUnderlayDocument,
        UnderlayDocument,
        UnderlayLapDocument,
        VentilationDocument,
        VentOpeningDocument,
    )


def battens_document(battens: Battens) -> BattensDocument:
    """Battens of all slopes."""
    cutting = battens.cutting
    return {
        "slopes": [_slope_battens(slope) for slope in battens.slopes],
        "buy": [{"stock_mm": each.stock_mm, "count": each.count} for each in cutting.buy],
        "cuts": [
            {
                "count": group.count,
                "stock_mm": group.stock_mm,
                "pieces_mm": list(group.pieces_mm),
                "left_mm": fine(group.left_mm),
            }
            for group in cutting.groups
        ],
        "net_mm": cutting.net_mm,
        "bought_mm": cutting.bought_mm,
        "proof": cutting.proof.value,
        "proof_says": cutting.proof_says,
        "nails": [
            {
                "what": nails.what,
                "length_mm": fine(nails.length_mm),
                "shank_mm": fine(nails.shank_mm),
                "count": nails.count,
                "mass_kg": fine(nails.mass_kg),
                "source": nails.length_citation.source,
                "basis": nails.length_citation.basis.value,
            }
            for nails in battens.nails
        ],
        "method": list(battens.method),
    }


def _slope_battens(slope: SlopeBattens) -> SlopeBattensDocument:
    section, counter = slope.section, slope.counter_battens
    return {
        "slope": slope.where,
        "rafters_mm": [fine(at) for at in slope.rafters_mm],
        "section_mm": None if section is None else [fine(section.width_mm), fine(section.depth_mm)],
        "arrangement": slope.arrangement.value,
        "repeats_every": slope.repeats_every,
        "why": slope.why,
        "lines": [_line(line) for line in slope.lines],
        "relaxed": [
            {
                "change": each.change,
                "breaks": each.breaks,
                "keeps_rules": each.keeps_rules,
                "bought_mm": each.bought_mm,
                "lengths": each.lengths_count,
            }
            for each in slope.relaxed
        ],
        "net_mm": slope.net_mm,
        "counter_battens_mm": None if counter is None else fine(counter.length_mm),
    }


def _line(line: BattenLine) -> BattenLineDocument:
    return {
        "name": line.name,
        "letter": line.letter,
        "stretches": [
            {
                "ends_mm": fine_points(stretch.ends_mm),
                "joints": list(stretch.joints),
                "pieces_mm": list(stretch.pieces_mm),
            }
            for stretch in line.stretches
        ],
    }


def underlay_document(plans: Sequence[UnderlayPlan], rolls: RollCuts | None) -> UnderlayDocument:
    """Underlay of all slopes."""
    return {
        "slopes": [_slope_underlay(plan) for plan in plans],
        "roll_length_mm": None if rolls is None else fine(rolls.roll_length_mm),
        "rolls": []
        if rolls is None
        else [
            {
                "number": roll.number,
                "pieces": [
                    {
                        "name": piece.name,
                        "from_mm": fine(piece.from_mm),
                        "to_mm": fine(piece.to_mm),
                        "side_lap_mm": fine(piece.side_lap_mm),
                    }
                    for piece in roll.pieces
                ],
                "left_mm": fine(roll.left_mm),
            }
            for roll in rolls.rolls
        ],
        "rolls_say": [] if rolls is None else list(rolls.says),
    }


def _slope_underlay(plan: UnderlayPlan) -> SlopeUnderlayDocument:
    return {
        "slope": plan.where,
        "edges": [
            {
                "edge": reach.edge.name,
                "past_mm": fine(reach.past_mm),
                "does": reach.does,
                "source": reach.citation.source,
                "basis": reach.citation.basis.value,
            }
            for reach in plan.edges
        ],
        "strips": [
            {
                "kind": strip.kind.value,
                "edge": strip.edge.name,
                "length_mm": fine(strip.length_mm),
                "width_mm": None if strip.width_mm is None else fine(strip.width_mm),
                "elsewhere": strip.elsewhere,
            }
            for strip in plan.strips
        ],
        "runs": [
            {
                "number": run.number,
                "low_mm": fine(run.low_mm),
                "high_mm": fine(run.high_mm),
                "spans_mm": fine_points(run.spans_mm),
            }
            for run in plan.runs
        ],
        "laps": [_lap(lap) for lap in plan.laps],
        "laid_area_m2": fine(plan.laid_area_mm2 / 1e6),
        "says": list(plan.says),
    }


def _lap(lap: RunLap) -> UnderlayLapDocument:
    place = lap.place
    added = isinstance(place, LapBetween) and place.remedy is not LapRemedy.WIDEN
    return {
        "upper": lap.upper,
        "lap_mm": fine(lap.lap_mm),
        "least_mm": fine(lap.least_mm),
        "batten": place.batten if isinstance(place, LapOnBatten) else None,
        "remedy": place.remedy.value if isinstance(place, LapBetween) else None,
        "length_mm": fine(place.length_mm) if added and isinstance(place, LapBetween) else None,
    }


def ventilation_document(air: Ventilation) -> VentilationDocument:
    """Openings for air of one slope."""
    return {
        "slope": air.where,
        "low": [_opening(each) for each in air.low],
        "high": [_opening(each) for each in air.high],
        "instead": [_opening(each) for each in air.instead],
        "says": list(air.says),
    }


def _opening(opening: VentOpening) -> VentOpeningDocument:
    return {
        "edge": opening.edge.name,
        "serves": opening.serves,
        "slot_mm": fine(opening.slot_mm),
        "per_metre_mm2": fine(opening.per_metre_mm2_per_m),
        "total_mm2": fine(opening.total_mm2),
        "source": opening.citation.source,
        "basis": opening.citation.basis.value,
    }


def fixings_document(plan: FixingPlan) -> FixingsDocument:
    """The least fixing of one slope."""
    nail = plan.nail
    return {
        "slope": plan.where,
        "field_rule": plan.field_rule.name,
        "nailed_courses": list(plan.nailed_courses),
        "field_mm": [fine_points(ring) for ring in plan.field_mm],
        "kinds": [
            {
                "region": kind.region.value,
                "why": [edge.value for edge in kind.why],
                "units": kind.units_count,
                "each": _held(kind.held),
            }
            for kind in plan.kinds
        ],
        "total": _held(plan.total),
        "nail": None
        if nail is None
        else {
            "metal": nail.metal.value,
            "shank_mm": fine(nail.shank_mm),
            "length_mm": None if nail.length_mm is None else fine(nail.length_mm),
            "count": nail.count,
            "total_kg": None if nail.total_kg is None else fine(nail.total_kg),
        },
        "method": list(plan.method),
    }


def _held(held: Held) -> HeldDocument:
    return {
        "nails": held.nails_count,
        "tail_clips": held.tail_clips_count,
        "eaves_clips": held.eaves_clips_count,
        "verge_clips": held.verge_clips_count,
        "hooks": held.hooks_count,
        "bonds": held.bonds_count,
        "either": held.either_count,
    }


def load_document(load: Load) -> LoadDocument:
    """What one slope weighs."""
    return {
        "slope": load.where,
        "area_m2": fine(load.area_mm2 / 1e6),
        "parts": [_mass(part.name, part.mass) for part in load.parts],
        "total": None if load.total is None else _mass("together", load.total),
        "old": None if load.old is None else _mass("taken off", load.old),
        "least_kg": None if load.least_kg is None else fine(load.least_kg),
        "greatest_kg": None if load.greatest_kg is None else fine(load.greatest_kg),
        "says": list(load.says),
    }


def _mass(name: str, mass: MassBand) -> MassDocument:
    return {
        "name": name,
        "least_kg_m2": fine(mass.least_kg_m2),
        "greatest_kg_m2": fine(mass.greatest_kg_m2),
        "source": mass.citation.source,
        "basis": mass.citation.basis.value,
    }
