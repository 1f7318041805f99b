"""What ridges and hips take besides their units, however those are shaped: fixings, mortar, hip irons."""

from collections.abc import Iterator

from gaugerod.basis.citation import Citation
from gaugerod.edges.answer import EdgePart
from gaugerod.edges.ask import EdgeLine, EdgesAsk, LineKind
from gaugerod.edges.parts import mortar, pieces
from gaugerod.edges.wished import RidgeMade
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure


def unit_fixings_part(*, units_count: int, fixings_count: int, each: str, citation: Citation) -> Iterator[EdgePart]:
    """The screws, nails or clips of so many units; nothing where a unit has none."""
    if fixings_count:
        yield pieces(
            item="line-unit-fixing",
            what="screw, nail or clip of a ridge or hip unit",
            count=units_count * fixings_count,
            how=f"{fixings_count} to each {each}",
            citation=citation,
        )


def line_mortar(ask: EdgesAsk, line: EdgeLine) -> EdgePart:
    """The beds under both sides of the units along a line."""
    return mortar(
        beds_count=round(edge_figure(ask.edition, EdgeFigure.LINE_BEDS).value),
        width_mm=edge_figure(ask.edition, EdgeFigure.LINE_BED_WIDTH).value,
        thickness=edge_figure(ask.edition, EdgeFigure.LINE_BED_THICKNESS),
        length_mm=line.laid_mm,
        edition=ask.edition,
    )


def hip_irons(ask: EdgesAsk, line: EdgeLine, made: RidgeMade) -> Iterator[EdgePart]:
    """The iron at the foot of a bedded hip."""
    if _has_iron(line, made):
        irons, fixings = _iron_figures(ask)
        yield pieces(
            item="hip-iron",
            what="hip iron, galvanised",
            count=irons,
            how=f"{irons} at the foot of the hip, where it stands over the eaves; {counted(fixings, 'fixing')} go with it",
            citation=edge_figure(ask.edition, EdgeFigure.HIP_IRONS).citation,
        )


def hip_irons_say(ask: EdgesAsk, line: EdgeLine, made: RidgeMade) -> Iterator[str]:
    """Where the iron goes, before the first unit."""
    if _has_iron(line, made):
        _, fixings = _iron_figures(ask)
        yield (
            "First fix the hip iron at the foot of the hip rafter, where it stands over the eaves, with "
            f"{counted(fixings, 'fixing')}."
        )


def _has_iron(line: EdgeLine, made: RidgeMade) -> bool:
    return line.kind is LineKind.HIP and line.from_eaves and made is RidgeMade.BEDDED


def _iron_figures(ask: EdgesAsk) -> tuple[int, int]:
    which = (EdgeFigure.HIP_IRONS, EdgeFigure.HIP_IRON_FIXINGS)
    irons, fixings = (round(edge_figure(ask.edition, each).value) for each in which)
    return irons, fixings
