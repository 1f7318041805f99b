"""The shape of the result document: every name another program may rely on, with what it means.

Each field is its type and a sentence; where the values are a fixed set, the set stands with them.
The JSON Schema is made from this page (schema.py), and the document is checked against it (document.py).
"""

from typing import Annotated, TypedDict

from gaugerod.adapters.result_document.beneath_shape import (
    BattensDocument,
    FixingsDocument,
    LoadDocument,
    UnderlayDocument,
    VentilationDocument,
)
from gaugerod.adapters.result_document.double_lap_shape import (
    DiminishingDocument,
    DoubleLapDocument,
    VergePieceDocument,
)
from gaugerod.adapters.result_document.edges_shape import EdgesDocument
from gaugerod.adapters.result_document.roof_shape import LayingDocument, OffcutsDocument, RoofDocument
from gaugerod.adapters.result_document.take_off_shape import OrderDocument, OrderLineDocument, RecordDocument
from gaugerod.basis.citation import Basis
from gaugerod.basis.finding import Sense, Verdict
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Fit
from gaugerod.setting_out.courses import Strategy
from gaugerod.standards.edition import Edition


class LimitDocument(TypedDict):
    """What the gauge must keep to."""

    gauge_max_mm: Annotated[float, "greatest gauge: above it the lap is short"]
    gauge_min_mm: Annotated[float | None, "least gauge; null where there is none"]


class RodDocument(TypedDict):
    """The gauge rod of one station."""

    at_mm: Annotated[float, "from the left end of the roof structure, along the eaves"]
    length_mm: Annotated[float, "outer face of the fascia to the apex, up the slope"]
    marks_mm: Annotated[
        list[float],
        "top edge of every batten, or nail line of slates, up from the fascia face, first to last, to the division",
    ]
    exact_mm: Annotated[list[float], "the same before rounding"]
    overhang_mm: Annotated[float, "tail past the fascia face, on the slope"]
    below_apex_mm: Annotated[float, "top edge of the top batten to the apex"]
    kept_count: Annotated[int, "how many of the marks are battens already nailed"]


class SegmentDocument(TypedDict):
    """Courses between two fixed points."""

    name: Annotated[str, "which stretch: eaves to sill, sill to head, head to ridge"]
    from_mm: Annotated[float, "its lower batten, up from the fascia face"]
    to_mm: Annotated[float, "its upper batten"]
    count: Annotated[int, "gauges in it"]
    gauge_mm: Annotated[float, "each of them"]
    inside: Annotated[bool, "does that gauge keep its limits?"]


class OpeningDocument(TypedDict):
    """How the courses fall at an opening, and the setting out in segments as the other choice."""

    name: Annotated[str, "the opening"]
    sill_course: Annotated[int, "the last whole course below the sill, counted from the eaves"]
    sill_head_mm: Annotated[float, "from the head of that course up to the sill"]
    head_course: Annotated[int, "the first course wholly above the head"]
    head_tail_mm: Annotated[float, "from the head line up to the tail of that course"]
    says: Annotated[str, "the same in a sentence"]
    segments: Annotated[list[SegmentDocument], "set out afresh between eaves, sill, head and ridge"]
    segments_say: Annotated[str, "what that choice would do"]


class CoursesDocument(TypedDict):
    """Courses up the slope."""

    count: Annotated[int, "courses: one more than the gauges"]
    gauge_mm: Annotated[list[float], "one for each rod"]
    headlap_mm: Annotated[float, "the smallest anywhere on the slope, as marked"]
    limit: Annotated[LimitDocument, "what the gauge must keep to"]
    strategy: Annotated[str, "how the courses meet a roof that is not true", Strategy]
    why: Annotated[str, "why that way, in a sentence"]
    overhang_mm: Annotated[float, "tail past the fascia face, on the slope"]
    taper_per_course_mm: Annotated[float, "how much wider a gauge is at the right than at the left"]
    top_course_cut_mm: Annotated[list[float] | None, "cut off the top course at left and right; null: none"]
    rods: Annotated[list[RodDocument], "left to right"]
    openings: Annotated[list[OpeningDocument], "how the courses fall at each opening"]


class PerpLineDocument(TypedDict):
    """Perp marks along one line."""

    line: Annotated[str, "eaves or top"]
    cover_mm: Annotated[float, "cover width along this line"]
    left_reach_mm: Annotated[float, "covering past the left end of the roof structure; negative: set back"]
    right_reach_mm: Annotated[float, "covering past the right end; negative: set back"]
    marks_mm: Annotated[list[float], "from the left end of the roof structure at the eaves"]


class CutDocument(TypedDict):
    """The unit at one side of one row of the bond."""

    at: Annotated[str, "left, right, or the opening and its side"]
    bond_row: Annotated[int, "0 or 1: the first course or the next"]
    fit: Annotated[str, "how the course ends there", Fit]
    cover_mm: Annotated[float, "the cover width the piece gives"]
    width_mm: Annotated[float, "its full width as cut"]


class AcrossDocument(TypedDict):
    """Perps across the slope."""

    units: Annotated[int, "units in a course of the first bond row, cut ones counted"]
    cover_mm: Annotated[float, "cover width at the eaves"]
    left_overhang_mm: Annotated[float, "covering past the left end of the roof structure; negative: set back"]
    right_overhang_mm: Annotated[float, "covering past the right end; negative: set back"]
    bond: Annotated[str, "the bond it is laid in", Bond]
    perps_every: Annotated[int, "units from one perp line to the next"]
    perps_mm: Annotated[list[float], "perp marks at the eaves, from the left end of the roof structure"]
    lines: Annotated[list[PerpLineDocument], "at the eaves, and at the top where it differs"]
    cuts: Annotated[list[CutDocument], "the pieces at the sides and at openings"]
    least_piece_mm: Annotated[float | None, "least cover of a cut piece; null: nothing is cut"]
    fanned: Annotated[bool, "do the perps spread from eaves to top?"]
    why: Annotated[str, "why this arrangement, in a sentence"]


class SlopeDocument(TypedDict):
    """One slope set out."""

    name: Annotated[str, "as the job calls it"]
    area_m2: Annotated[float, "of the roof structure, in the plane of the slope, without overhangs"]
    pitch_deg: Annotated[float, "pitch of the rafters"]
    outline_mm: Annotated[list[list[float]], "corners from the left end of the eaves, counter-clockwise: along, up"]
    edges: Annotated[list[str], "what stands at each side of the outline, from its first corner on"]
    courses: Annotated[CoursesDocument, "courses up the slope"]
    across: Annotated[AcrossDocument | None, "perps across it; null where the cover width is not known"]
    laying: Annotated[LayingDocument | None, "every unit; null where the cover width is not known"]
    double_lap: Annotated[DoubleLapDocument | None, "what double lap adds to the courses; null for single lap"]
    verge_pieces: Annotated[list[VergePieceDocument], "what is laid at the verges in double lap"]
    diminishing: Annotated[DiminishingDocument | None, "how a stack of random slates goes on; null for all else"]
    method: Annotated[list[str], "the job in steps, with this slope's own figures"]


class NotSetOutDocument(TypedDict):
    """A slope that could not be set out."""

    name: Annotated[str, "as the job calls it"]
    why: Annotated[str, "what is short, in a sentence; its findings and alternatives stand with the others"]


class FindingDocument(TypedDict):
    """One rule applied to one place."""

    rule: Annotated[str, "the rule"]
    where: Annotated[str, "the place"]
    verdict: Annotated[str, "the answer", Verdict]
    proposed: Annotated[float | None, "the value as set out, in the unit"]
    limit: Annotated[float | None, "what the rule allows, in the unit; null where no rule reaches"]
    unit: Annotated[str, "of proposed and limit"]
    sense: Annotated[str, "which side of the limit is allowed", Sense]
    source: Annotated[str, "where the limit comes from"]
    basis: Annotated[str, "how sure that source is", Basis]
    says: Annotated[str, "what it means for the roof and what to do"]


class AlternativeDocument(TypedDict):
    """Something that could change."""

    where: Annotated[str, "the slope, and the direction, it belongs to"]
    rank: Annotated[int, "1: the smallest change"]
    change: Annotated[str, "what could change, with its numbers"]
    by_mm: Annotated[float, "by how much"]
    costs: Annotated[str, "what it does to the roof"]
    keeps_limits: Annotated[bool, "does every lap and gauge then keep its limit?"]
    gauges: Annotated[int, "gauges there would be"]
    gauge_mm: Annotated[float, "each of them"]


class StepDocument(TypedDict):
    """One number of the working, and the steps it stands on."""

    name: Annotated[str, "what the number is"]
    formula: Annotated[str, "how it was come by, in words"]
    inputs: Annotated[dict[str, float | str], "the words of the formula with their values, each with its unit"]
    value: Annotated[float | str, "the number"]
    unit: Annotated[str, "of the number"]
    source: Annotated[str | None, "where the formula or value comes from"]
    basis: Annotated[str | None, "how sure that source is", Basis]
    parts: Annotated[list["StepDocument"], "the steps below it"]


class CoveringDocument(TypedDict):
    """What is laid."""

    name: Annotated[str, "of its record"]
    title: Annotated[str, "what it is"]


class ResultDocument(TypedDict):
    """The whole answer to a job. Lengths in mm to a ten-thousandth, angles in degrees."""

    title: Annotated[str, "of the job"]
    edition: Annotated[str, "which set of rules answered", Edition]
    version: Annotated[str, "of the program"]
    covering: Annotated[CoveringDocument, "what is laid"]
    slopes: Annotated[list[SlopeDocument], "in the order of the job"]
    not_set_out: Annotated[list[NotSetOutDocument], "slopes that could not be set out"]
    roofs: Annotated[list[RoofDocument], "whole roofs, in the order of the job's buildings"]
    offcuts: Annotated[OffcutsDocument | None, "which offcut serves which other cut; null where nothing is cut"]
    battens: Annotated[BattensDocument | None, "battens and their joints; null where they were not asked for"]
    underlay: Annotated[UnderlayDocument | None, "underlay and its rolls; null where it was not asked for"]
    ventilation: Annotated[list[VentilationDocument], "openings for air, slope by slope; empty where not asked for"]
    fixings: Annotated[list[FixingsDocument], "the least fixing, slope by slope; empty where not asked for"]
    load: Annotated[list[LoadDocument], "what the roof weighs, slope by slope; empty where not asked for"]
    edges: Annotated[EdgesDocument | None, "how the edges are made; null where they were not worked out"]
    take_off: Annotated[list[OrderLineDocument], "what to order, line by line; empty where no slope was laid"]
    order: Annotated[OrderDocument | None, "what is to be known of the order beside; null where no slope was laid"]
    record: Annotated[RecordDocument, "what the hand-over record says besides"]
    findings: Annotated[list[FindingDocument], "every rule that was asked"]
    alternatives: Annotated[list[AlternativeDocument], "where something is outside: what could change"]
    cautions: Annotated[list[str], "to be read before going up"]
    working: Annotated[StepDocument, "the tree behind every number"]
