"""The shape of the part of the result document that tells how the edges are made and what they take."""

from typing import Annotated, TypedDict

from gaugerod.basis.citation import Basis
from gaugerod.edges.answer import LeadUse, PartUnit
from gaugerod.edges.ask import LineKind


class UnitRunDocument(TypedDict):
    """Units along one line, from one end to the other."""

    units: Annotated[int, "units to have"]
    whole: Annotated[int, "of them laid whole"]
    cut_mm: Annotated[list[float], "what each cut unit covers"]
    cut_long_mm: Annotated[list[float], "how long to cut each, its lap included"]
    cover_mm: Annotated[float, "what a whole unit covers"]
    lap_mm: Annotated[float, "how far each lies under the next"]
    length_mm: Annotated[float, "of the line they cover"]


class EdgePartDocument(TypedDict):
    """Something an edge takes, before any allowance."""

    item: Annotated[str, "its stable name, as the take-off and price lists have it"]
    what: Annotated[str, "what it is, in words"]
    net: Annotated[float, "how much, in the unit"]
    unit: Annotated[str, "of the quantity", PartUnit]
    how: Annotated[str, "how it was come by"]
    mass_kg: Annotated[float | None, "null where it is not known"]
    source: Annotated[str, "where the figure comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class SourceDocument(TypedDict):
    """Where a figure comes from."""

    source: Annotated[str, "the document, and the place in it"]
    basis: Annotated[str, "how sure that source is", Basis]


class LeadPiecesDocument(TypedDict):
    """Pieces of sheet lead, all alike."""

    use: Annotated[str, "what they are for", LeadUse]
    code: Annotated[int, "the code of the sheet"]
    thickness_mm: Annotated[float, "of the sheet"]
    kg_m2: Annotated[float, "its mass"]
    count: Annotated[int, "how many pieces"]
    length_mm: Annotated[float, "of each as it is cut, its lap included"]
    width_mm: Annotated[float, "of each, flat"]
    run_mm: Annotated[float, "what they cover together"]
    lap_mm: Annotated[float, "of one over the next; nothing for pieces that stand alone"]
    mass_kg: Annotated[float, "of all of them"]
    how: Annotated[str, "how they were come by"]
    sources: Annotated[list[SourceDocument], "where the figures come from"]


class MadeEdgeDocument(TypedDict):
    """One edge or one opening: how it is made, and what it takes."""

    name: Annotated[str, "as it is called on every sheet"]
    kind: Annotated[str | None, "what line of the roof it is; null for an opening", LineKind]
    slopes: Annotated[list[str], "the slope it edges, the two that meet in it, or the slope an opening lies in"]
    length_mm: Annotated[float | None, "true length on the roof structure; null for an opening"]
    laid_mm: Annotated[float | None, "the length the covering runs to; null for an opening"]
    slope_deg: Annotated[float | None, "its own rise from the level; null for an opening"]
    courses: Annotated[list[int], "courses that end at it, on each of its slopes"]
    width_mm: Annotated[float | None, "of an opening; null for a line"]
    height_mm: Annotated[float | None, "of an opening, up the slope; null for a line"]
    made: Annotated[str, "how, in a few words; empty where it was not said"]
    clear_mm: Annotated[float | None, "clear width of a valley; null elsewhere"]
    run: Annotated[UnitRunDocument | None, "units along it; null where there are none"]
    parts: Annotated[list[EdgePartDocument], "what it takes"]
    lead: Annotated[list[LeadPiecesDocument], "pieces of sheet lead"]
    says: Annotated[list[str], "how it is made, in steps"]


class EdgesDocument(TypedDict):
    """Every edge and opening of the slopes that were set out."""

    edges: Annotated[list[MadeEdgeDocument], "lines first, then openings"]
    lead_kg: Annotated[float, "all lead together"]
