"""The shape of the parts of the result document that tell what lies beneath the covering and what holds it."""

from typing import Annotated, TypedDict

from gaugerod.basis.citation import Basis
from gaugerod.fixing.plan import Region
from gaugerod.rules.nails import NailMetal
from gaugerod.substrate.battens.answer import Arrangement, Proof
from gaugerod.substrate.underlay.answer import StripKind
from gaugerod.substrate.underlay.ask import LapRemedy


class StretchDocument(TypedDict):
    """One unbroken batten line."""

    ends_mm: Annotated[list[list[float]], "left and right end on the line of its top edge: along, up"]
    joints: Annotated[list[int], "the rafters it is joined on, 1 the first from the left"]
    pieces_mm: Annotated[list[int], "the length of each piece, left to right"]


class BattenLineDocument(TypedDict):
    """One batten of the slope."""

    name: Annotated[str, "its course; eaves and top for those of the short courses"]
    letter: Annotated[str, "lines with the same letter are joined on the same rafters; empty: not planned"]
    stretches: Annotated[list[StretchDocument], "from left to right; openings part them"]


class RelaxedDocument(TypedDict):
    """A plan on offer where none keeps every rule."""

    change: Annotated[str, "what changes"]
    breaks: Annotated[str, "which rule it breaks, and by how much; empty: none"]
    keeps_rules: Annotated[bool, "does it keep every rule?"]
    bought_mm: Annotated[int, "batten to buy"]
    lengths: Annotated[int, "how many lengths that is"]


class SlopeBattensDocument(TypedDict):
    """The battens of one slope."""

    slope: Annotated[str, "its name"]
    rafters_mm: Annotated[list[float], "the middle of every rafter, along the eaves"]
    section_mm: Annotated[list[float] | None, "least width and depth; null where no table reaches"]
    arrangement: Annotated[str, "how the joints are arranged", Arrangement]
    repeats_every: Annotated[int | None, "courses after which the pattern repeats; null where it does not"]
    why: Annotated[str, "why so, in a sentence"]
    lines: Annotated[list[BattenLineDocument], "from the eaves up"]
    relaxed: Annotated[list[RelaxedDocument], "what is on offer where no plan keeps every rule"]
    net_mm: Annotated[int, "batten laid, end to end"]
    counter_battens_mm: Annotated[float | None, "counter-batten, end to end; null where there is none"]


class StockDocument(TypedDict):
    """So many of one length to buy."""

    stock_mm: Annotated[int, "the length"]
    count: Annotated[int, "how many"]


class CutGroupDocument(TypedDict):
    """So many lengths, all cut alike."""

    count: Annotated[int, "how many"]
    stock_mm: Annotated[int, "the length each is cut from"]
    pieces_mm: Annotated[list[int], "its pieces, the longest first"]
    left_mm: Annotated[float, "what is left of each"]


class NailsDocument(TypedDict):
    """Nails of one kind."""

    what: Annotated[str, "what they hold"]
    length_mm: Annotated[float, "of the nail"]
    shank_mm: Annotated[float, "its thickness"]
    count: Annotated[int, "how many"]
    mass_kg: Annotated[float, "of their shanks"]
    source: Annotated[str, "of the least length"]
    basis: Annotated[str, "how sure that source is", Basis]


class BattensDocument(TypedDict):
    """Battens of all slopes, cut together."""

    slopes: Annotated[list[SlopeBattensDocument], "those whose rafters are known"]
    buy: Annotated[list[StockDocument], "the order"]
    cuts: Annotated[list[CutGroupDocument], "how each length is cut"]
    net_mm: Annotated[int, "laid"]
    bought_mm: Annotated[int, "bought"]
    proof: Annotated[str, "what is known of this plan", Proof]
    proof_says: Annotated[str, "the same in a sentence"]
    nails: Annotated[list[NailsDocument], "to nail them"]
    method: Annotated[list[str], "the work in steps"]


class UnderlayRunDocument(TypedDict):
    """One run of underlay."""

    number: Annotated[int, "from the eaves, 1 the lowest"]
    low_mm: Annotated[float, "its lower edge, up from the fascia face: the line to strike"]
    high_mm: Annotated[float, "its upper edge"]
    spans_mm: Annotated[list[list[float]], "left and right end of every stretch"]


class UnderlayLapDocument(TypedDict):
    """One run over the run below it."""

    upper: Annotated[int, "the run on top"]
    lap_mm: Annotated[float, "as laid"]
    least_mm: Annotated[float, "by rule"]
    batten: Annotated[int | None, "the batten it lies under, from the eaves; null where it lies between"]
    remedy: Annotated[str | None, "what is done where it lies between battens", LapRemedy]
    length_mm: Annotated[float | None, "of the added batten or the tape; null where there is none"]


class UnderlayStripDocument(TypedDict):
    """A strip laid before the runs."""

    kind: Annotated[str, "what it is", StripKind]
    edge: Annotated[str, "along which edge"]
    length_mm: Annotated[float, "its length"]
    width_mm: Annotated[float | None, "its width; null: not known"]
    elsewhere: Annotated[bool, "is it counted with the slope on the other side?"]


class UnderlayEdgeDocument(TypedDict):
    """What the underlay does at one edge."""

    edge: Annotated[str, "which"]
    past_mm: Annotated[float, "past the edge, square to it; negative: short of it"]
    does: Annotated[str, "what to do there"]
    source: Annotated[str, "where that comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class SlopeUnderlayDocument(TypedDict):
    """The underlay of one slope."""

    slope: Annotated[str, "its name"]
    edges: Annotated[list[UnderlayEdgeDocument], "every edge"]
    strips: Annotated[list[UnderlayStripDocument], "laid first"]
    runs: Annotated[list[UnderlayRunDocument], "from the eaves up"]
    laps: Annotated[list[UnderlayLapDocument], "from the eaves up"]
    laid_area_m2: Annotated[float, "sheet laid, laps counted"]
    says: Annotated[list[str], "the work in steps"]


class RollPieceDocument(TypedDict):
    """One piece off a roll."""

    name: Annotated[str, "where it goes"]
    from_mm: Annotated[float, "its left end along the eaves"]
    to_mm: Annotated[float, "its right end"]
    side_lap_mm: Annotated[float, "how much of its left end lies over the piece before"]


class RollDocument(TypedDict):
    """One roll."""

    number: Annotated[int, "from 1"]
    pieces: Annotated[list[RollPieceDocument], "in the order to cut them"]
    left_mm: Annotated[float, "what is left on it"]


class UnderlayDocument(TypedDict):
    """Underlay of all slopes, cut from the rolls together."""

    slopes: Annotated[list[SlopeUnderlayDocument], "in the order of the job"]
    roll_length_mm: Annotated[float | None, "of one roll; null where nothing could be cut"]
    rolls: Annotated[list[RollDocument], "every roll"]
    rolls_say: Annotated[list[str], "how sure the number of rolls is, in sentences"]


class VentOpeningDocument(TypedDict):
    """An opening along one edge."""

    edge: Annotated[str, "along which edge"]
    serves: Annotated[str, "what it lets air into"]
    slot_mm: Annotated[float, "as a continuous slot"]
    per_metre_mm2: Annotated[float, "net free area in each metre"]
    total_mm2: Annotated[float, "net free area in all"]
    source: Annotated[str, "where that comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class VentilationDocument(TypedDict):
    """Openings for air of one slope."""

    slope: Annotated[str, "its name"]
    low: Annotated[list[VentOpeningDocument], "at the eaves"]
    high: Annotated[list[VentOpeningDocument], "at the ridge or top edge"]
    instead: Annotated[list[VentOpeningDocument], "at high level, where they may stand in place of those at the eaves"]
    says: Annotated[list[str], "the same in sentences"]


class HeldDocument(TypedDict):
    """What holds units."""

    nails: Annotated[int, "nails"]
    tail_clips: Annotated[int, "tail clips"]
    eaves_clips: Annotated[int, "eaves clips"]
    verge_clips: Annotated[int, "verge clips"]
    hooks: Annotated[int, "hooks"]
    bonds: Annotated[int, "bonds to the neighbour"]
    either: Annotated[int, "fixings of any kind, as the maker says"]


class KindDocument(TypedDict):
    """Units held alike for one reason."""

    region: Annotated[str, "where they lie", Region]
    why: Annotated[list[str], "the edges they lie at; empty in the field"]
    units: Annotated[int, "how many"]
    each: Annotated[HeldDocument, "what holds one of them"]


class FixingNailDocument(TypedDict):
    """The nail of the units."""

    metal: Annotated[str, "what it is made of", NailMetal]
    shank_mm: Annotated[float, "its thickness"]
    length_mm: Annotated[float | None, "null while the thickness of the unit is not known"]
    count: Annotated[int, "how many"]
    total_kg: Annotated[float | None, "of all of them; null with the length"]


class FixingsDocument(TypedDict):
    """The least fixing of one slope."""

    slope: Annotated[str, "its name"]
    field_rule: Annotated[str, "what the field asks for"]
    nailed_courses: Annotated[list[int], "courses nailed throughout, from the eaves"]
    field_mm: Annotated[list[list[list[float]]], "outlines of the field; all else is perimeter"]
    kinds: Annotated[list[KindDocument], "every unit"]
    total: Annotated[HeldDocument, "every fixing of the slope"]
    nail: Annotated[FixingNailDocument | None, "null where none is driven"]
    method: Annotated[list[str], "the work in steps"]


class MassDocument(TypedDict):
    """A mass on the slope, from least to greatest."""

    name: Annotated[str, "of what"]
    least_kg_m2: Annotated[float, "at least"]
    greatest_kg_m2: Annotated[float, "at most"]
    source: Annotated[str, "where it comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class LoadDocument(TypedDict):
    """What one slope weighs."""

    slope: Annotated[str, "its name"]
    area_m2: Annotated[float, "of the covering"]
    parts: Annotated[list[MassDocument], "layer by layer"]
    total: Annotated[MassDocument | None, "together; null where the covering's mass is not known"]
    old: Annotated[MassDocument | None, "what is taken off; null for a new roof"]
    least_kg: Annotated[float | None, "the whole slope, at least"]
    greatest_kg: Annotated[float | None, "the whole slope, at most"]
    says: Annotated[list[str], "what to mind when loading out"]
