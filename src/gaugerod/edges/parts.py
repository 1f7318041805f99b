"""The parts that edges are counted in: so many pieces, so many metres, so much mortar."""

from collections.abc import Iterable

from gaugerod.basis.citation import Citation, house
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.edges.answer import EdgePart, PartUnit
from gaugerod.edges.ask import EdgeSlope
from gaugerod.setting_out.said import counted, said
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

AS_LONG = house("as long as the line it lies along; its own laps and what is cut off are left to the allowance")


def mm(length_mm: float) -> str:
    """A length in a sentence, to a tenth.

    >>> mm(345.27), mm(450.0)
    ('345.3 mm', '450 mm')
    """
    return said(length_mm, Division.MILLIMETRE)


def pieces(*, item: str, what: str, count: int, how: str, citation: Citation, mass_kg: float | None = None) -> EdgePart:
    """So many of a thing. ``mass_kg`` of one; None: not known.

    >>> pieces(item="ridge-unit", what="ridge unit", count=20, how="", citation=AS_LONG, mass_kg=4.5).mass_kg
    90.0
    """
    return EdgePart(
        item=item,
        what=what,
        net=float(count),
        unit=PartUnit.PIECES,
        how=how,
        citation=citation,
        mass_kg=None if mass_kg is None else count * mass_kg,
    )


def along(*, item: str, what: str, length_mm: float, citation: Citation = AS_LONG) -> EdgePart:
    """A thing that lies along a line, in metres.

    >>> along(item="ridge-batten", what="batten at the apex", length_mm=9000.0).net
    9.0
    """
    return EdgePart(
        item=item,
        what=what,
        net=length_mm / 1000.0,
        unit=PartUnit.METRES,
        how=f"along {mm(length_mm)}",
        citation=citation,
    )


def mortar(*, beds_count: int, width_mm: float, thickness: Limit, length_mm: float, edition: Edition) -> EdgePart:
    """What beds of this section take, in litres laid. Arithmetic; the thickness is the table's own choice.

    >>> bed = edge_figure(Edition.GB, EdgeFigure.LINE_BED_THICKNESS)
    >>> mortar(beds_count=2, width_mm=50.0, thickness=bed, length_mm=10000.0, edition=Edition.GB).net
    25.0
    """
    beds = "a bed" if beds_count == 1 else f"{beds_count} beds"
    sand = edge_figure(edition, EdgeFigure.MORTAR_SAND_PARTS)
    return EdgePart(
        item="mortar",
        what=f"mortar, 1 cement to {sand.value:g} sand",
        net=beds_count * width_mm * thickness.value * length_mm / 1e6,
        unit=PartUnit.LITRES,
        how=f"{beds} of {width_mm:g} × {thickness.value:g} mm along {mm(length_mm)}",
        citation=thickness.citation,
    )


def mortar_says(edition: Edition) -> str:
    """What the mortar is mixed of, with its source."""
    sand = edge_figure(edition, EdgeFigure.MORTAR_SAND_PARTS)
    return (
        f"Mortar: 1 cement to {sand.value:g} sand with plasticiser, a third or more of the sand sharp "
        f"({sand.citation.basis.value}). Wet cement burns: gloves, and wash it off."
    )


def courses_said(count: int, slopes: Iterable[EdgeSlope]) -> str:
    """So many courses; where there is one more than the sheet of the slope counts, it is the short one at the top.

    >>> rear = EdgeSlope(name="rear", pitch_deg=35.0, gauge_mm=100.0, headlap_mm=65.0, courses_count=19)
    >>> courses_said(19, [rear]), courses_said(20, [rear])
    ('19 courses', '20 courses, the short one at the top among them')
    """
    short = ", the short one at the top among them" if count > max(slope.courses_count for slope in slopes) else ""
    return f"{counted(count, 'course')}{short}"
