"""A roof whose edges are to be made, sound as it stands; a test changes what it is about."""

from dataclasses import replace
from typing import Any

from gaugerod.basis.citation import house
from gaugerod.basis.finding import Finding
from gaugerod.coverings.catalogue import covering as generic
from gaugerod.edges.answer import EdgePart, MadeEdge
from gaugerod.edges.ask import Covering, EdgeLine, EdgesAsk, EdgeSlope, LineKind
from gaugerod.edges.wished import EdgesWished
from gaugerod.standards.edition import Edition
from gaugerod.substrate.ventilation.openings import VentedEdge, Ventilation, VentOpening

FLAT = generic("flat-interlocking-420x330")
PROFILED = generic("profiled-two-roll-420x330")
_COURSES = {LineKind.VERGE: 14, LineKind.HIP: 14, LineKind.VALLEY: 14, LineKind.SIDE_ABUTMENT: 14}
_OF_TWO = {LineKind.RIDGE, LineKind.HIP, LineKind.VALLEY}


def slope(name: str, **changes: Any) -> EdgeSlope:  # noqa: ANN401  any field of the slope
    """A slope of 14 courses at 345 mm, at 35 degrees."""
    made = EdgeSlope(name=name, pitch_deg=35.0, gauge_mm=345.0, headlap_mm=75.0, courses_count=14)
    return replace(made, **changes)


def line(kind: LineKind, **changes: Any) -> EdgeLine:  # noqa: ANN401  any field of the line
    """A line 9000 mm long, nothing past its ends; between front and rear where two slopes meet in such a line."""
    slopes = ("front", "rear") if kind in _OF_TWO else ("rear",)
    made = EdgeLine(
        name=f"{' and '.join(slopes)}, {kind.value}",
        kind=kind,
        slopes=slopes,
        length_mm=9000.0,
        past_ends_mm=0.0,
        slope_deg=0.0,
        courses_count=(_COURSES.get(kind, 0),) * len(slopes),
    )
    return replace(made, **changes)


def edges_ask(
    *lines: EdgeLine, wished: EdgesWished, covering: Covering = FLAT, air: tuple[Ventilation, ...] = ()
) -> EdgesAsk:
    """A roof of two slopes, front and rear, with these lines."""
    return EdgesAsk(
        lines=lines,
        slopes=(slope("front"), slope("rear")),
        openings=(),
        covering=covering,
        wished=wished,
        edition=Edition.GB,
        air=air,
    )


def part(edge: MadeEdge, item: str) -> EdgePart:
    """The one part of this item. Fails when there is none, or more."""
    (found,) = [each for each in edge.parts if each.item == item]
    return found


def items(edge: MadeEdge) -> list[str]:
    """What the edge takes, by name."""
    return [each.item for each in edge.parts]


def finding(findings: tuple[Finding, ...], rule: str) -> Finding:
    """The one finding of this rule."""
    (found,) = [each for each in findings if each.rule == rule]
    return found


def vent(name: str, *, slot_mm: float, length_mm: float = 9000.0, serves: str = "the roof space") -> VentOpening:
    """An opening along an edge."""
    return VentOpening(
        edge=VentedEdge(name=name, length_mm=length_mm), slot_mm=slot_mm, serves=serves, citation=house("example")
    )
