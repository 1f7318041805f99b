"""The parts of every edge gathered item by item, and its lead by code and width.

Source: the edges themselves. Scope: like parts of all edges together; parts of one item that differ in size stand apart.
"""

from collections.abc import Iterator

from gaugerod.edges.answer import EdgePart, LeadPieces, PartUnit, RoofEdges
from gaugerod.setting_out.said import counted
from gaugerod.take_off.answer import Measured, Trade

_AIR = ("air-unit-low", "air-unit-high")


def edges_measured(edges: RoofEdges | None) -> Iterator[Measured]:
    """Every part of every edge, then the lead."""
    if edges is None:
        return
    parts: dict[tuple[str, str], list[tuple[str, EdgePart]]] = {}
    for edge in edges.edges:
        for part in edge.parts:
            parts.setdefault((part.item, part.what), []).append((edge.name, part))
    for (item, what), each in sorted(parts.items(), key=lambda entry: entry[0]):
        alike = [key for key in sorted(parts) if key[0] == item]
        named = item if len(alike) == 1 else f"{item}-{alike.index((item, what)) + 1}"
        yield _gathered(named, what, each)
    yield from lead_measured(edges)


def _gathered(item: str, what: str, parts: list[tuple[str, EdgePart]]) -> Measured:
    first = parts[0][1]
    masses = [part.mass_kg for _, part in parts]
    net = sum(part.net for _, part in parts)
    known = [mass for mass in masses if mass is not None]
    return Measured(
        item=item,
        what=what,
        trade=Trade.AIR if first.item in _AIR else Trade.EDGES,
        unit=first.unit.value,
        net=net,
        by_slope=tuple((name, part.net) for name, part in parts),
        how=first.how if len(parts) == 1 else "edge by edge, added",
        each_kg=sum(known) / net if net and len(known) == len(masses) else None,
        citation=first.citation,
    )


def lead_measured(edges: RoofEdges) -> Iterator[Measured]:
    """Lead by code and width, as it is bought: kilograms, with the metres said."""
    gathered: dict[tuple[int, float], list[tuple[str, LeadPieces]]] = {}
    for edge in edges.edges:
        for pieces in edge.lead:
            gathered.setdefault((pieces.code, pieces.width_mm), []).append((edge.name, pieces))
    for (code, width_mm), each in sorted(gathered.items()):
        metres = sum(pieces.count * pieces.length_mm for _, pieces in each) / 1000
        uses = ", ".join(dict.fromkeys(pieces.use.value.replace("-", " ") for _, pieces in each))
        yield Measured(
            item=f"lead-code-{code}-{width_mm:g}",
            what=f"sheet lead code {code}, {width_mm:g} mm wide, {metres:.2f} m: {uses}",
            trade=Trade.LEAD,
            unit=PartUnit.KILOGRAMS.value,
            net=sum(pieces.mass_kg for _, pieces in each),
            by_slope=tuple((name, pieces.mass_kg) for name, pieces in each),
            how=f"{counted(sum(pieces.count for _, pieces in each), 'piece')}, laps counted, at {each[0][1].kg_m2:g} kg/m²",
            each_kg=1.0,
            citation=each[0][1].citations[0] if each[0][1].citations else None,
        )
