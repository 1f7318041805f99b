"""The shape of the parts of the result document that tell what to order, and what the record says besides."""

from typing import Annotated, TypedDict

from gaugerod.basis.citation import Basis
from gaugerod.take_off.answer import Trade


class PlaceQuantityDocument(TypedDict):
    """The part of a quantity that lies at one place."""

    where: Annotated[str, "the slope, or the edge"]
    net: Annotated[float, "how much, in the unit"]


class AllowanceDocument(TypedDict):
    """What is added to a measured quantity."""

    name: Annotated[str, "what for"]
    amount: Annotated[float, "how much, in the unit"]
    source: Annotated[str, "where the figure comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class PackedDocument(TypedDict):
    """Whole packs that hold the quantity."""

    pack_size: Annotated[float, "what one pack holds, in the unit"]
    packs: Annotated[int, "how many packs"]
    pallet_packs: Annotated[int | None, "packs on a pallet; null where it is not known"]
    pallets: Annotated[int | None, "pallets that hold the packs; null where it is not known"]
    over: Annotated[float, "what the packs hold beyond the order, in the unit"]


class OrderLineDocument(TypedDict):
    """One line of the order: measured, allowed for, packed."""

    item: Annotated[str, "its stable name, as packs and price lists have it"]
    what: Annotated[str, "what it is, in words"]
    trade: Annotated[str, "the part of the job it belongs to", Trade]
    unit: Annotated[str, "of every quantity of the line: pieces, m, m2, kg, litres, rolls"]
    net: Annotated[float, "as it lies on the roof, before any allowance"]
    by_slope: Annotated[list[PlaceQuantityDocument], "where it lies, as far as it can be told apart"]
    how: Annotated[str, "how it was measured"]
    allowances: Annotated[list[AllowanceDocument], "what is added"]
    order: Annotated[float, "measured with its allowances; pieces are whole"]
    packed: Annotated[PackedDocument | None, "null where no pack is known"]
    bought: Annotated[float, "what comes to the site: whole packs, else the order"]
    mass_kg: Annotated[float | None, "of what is ordered; null where it is not known"]
    source: Annotated[str | None, "where the figure it was measured by comes from; null where it is none"]
    basis: Annotated[str | None, "how sure that source is", Basis]


class WasteComparedDocument(TypedDict):
    """One covering ordered two ways: counted from the cuts, and with a flat share."""

    item: Annotated[str, "its stable name"]
    net_by_area: Annotated[float, "net area × units on each m²"]
    flat_ratio: Annotated[float, "the flat share, 0.1 for ten per cent"]
    flat: Annotated[int, "units with the flat share"]
    counted: Annotated[int, "units by the cuts, offcuts used, with breakage"]
    difference: Annotated[int, "flat less counted: below nothing, the flat share would be short"]
    cuts: Annotated[int, "pieces to saw"]
    offcuts_saved: Annotated[int, "units that offcuts save"]
    says: Annotated[str, "the same in a sentence"]
    source: Annotated[str, "where the flat share comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class MassesDocument(TypedDict):
    """What goes onto the roof and what comes off it."""

    new_least_kg: Annotated[float | None, "goes on, at least; null where it is not known"]
    new_greatest_kg: Annotated[float | None, "goes on, at most"]
    old_least_kg: Annotated[float | None, "comes off, at least; null where it is not known"]
    old_greatest_kg: Annotated[float | None, "comes off, at most"]


class OrderDocument(TypedDict):
    """What is to be known of the order beside its lines."""

    compared: Annotated[list[WasteComparedDocument], "counted from the cuts against a flat share"]
    masses: Annotated[MassesDocument, "on and off the roof"]
    not_counted: Annotated[list[str], "what the order leaves out, and why"]


class DeviationDocument(TypedDict):
    """Something that was accepted though a rule asks for more, or reaches no further."""

    what: Annotated[str, "what was accepted"]
    accepted_by: Annotated[str, "who accepted it"]
    rule: Annotated[str, "the rule, as its finding names it; empty: of no one finding"]
    where: Annotated[str, "the place, as the finding names it"]
    on: Annotated[str, "the day, as it was written"]


class RecordDocument(TypedDict):
    """What the hand-over record says besides what was worked out. Empty: to be filled in by hand."""

    site: Annotated[str, "where the roof is"]
    laid_by: Annotated[str, "who laid it"]
    measured_by: Annotated[str, "who measured it"]
    handed_to: Annotated[str, "who it is handed to"]
    deviations: Annotated[list[DeviationDocument], "what was accepted, and by whom"]
