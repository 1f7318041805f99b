"""Every edge and opening of the roof as it is made: one after the other, with its air, its findings and its working."""

from collections.abc import Iterable
from dataclasses import replace
from typing import assert_never

from gaugerod.basis.citation import house
from gaugerod.basis.errors import InputRefused
from gaugerod.basis.finding import TOUCH, Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.edges.air_units import AirAtLine, air_units
from gaugerod.edges.answer import MadeEdge, RoofEdges
from gaugerod.edges.ask import EdgeLine, EdgesAsk, LineKind
from gaugerod.edges.ask_faults import ask_faults
from gaugerod.edges.eaves import eaves_edge
from gaugerod.edges.openings import opening_edge
from gaugerod.edges.over_lines import hip_edge, ridge_edge
from gaugerod.edges.parts import mm
from gaugerod.edges.sides import verge_edge
from gaugerod.edges.untold import laid_length
from gaugerod.edges.valleys import valley_edge
from gaugerod.edges.walls import side_abutment_edge, top_abutment_edge
from gaugerod.setting_out.said import counted


def make_edges(ask: EdgesAsk) -> RoofEdges:
    """How every edge is made and what it takes: the lines in their order, then the openings.

    Raises InputRefused with everything in the ask that cannot be. Source and scope: those of each edge.
    """
    faults = tuple(ask_faults(ask))
    if faults:
        raise InputRefused(faults)
    air, of_air = air_units(ask)
    lines = [_with_air(_line_edge(ask, line), air.get(line.name)) for line in ask.lines]
    edges = (*lines, *(opening_edge(ask, opening) for opening in ask.openings))
    return RoofEdges(
        edges=edges,
        findings=_once((*(finding for edge in edges for finding in edge.findings), *of_air)),
        working=Step(
            name="edges",
            formula="each edge and opening by itself",
            inputs={"lines": counted(len(ask.lines), "line"), "openings": counted(len(ask.openings), "opening")},
            value=float(len(edges)),
            unit="count",
            parts=tuple(edge.working for edge in edges),
        ),
    )


def _line_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    if line.laid_mm <= TOUCH:
        return _not_reached(line)
    match line.kind:
        case LineKind.RIDGE | LineKind.MONO_RIDGE:
            edge = ridge_edge(ask, line)
        case LineKind.HIP:
            edge = hip_edge(ask, line)
        case LineKind.VALLEY:
            edge = valley_edge(ask, line)
        case LineKind.VERGE:
            edge = verge_edge(ask, line)
        case LineKind.EAVES:
            edge = eaves_edge(ask, line)
        case LineKind.SIDE_ABUTMENT:
            edge = side_abutment_edge(ask, line)
        case LineKind.TOP_ABUTMENT:
            edge = top_abutment_edge(ask, line)
        case _ as unreachable:
            assert_never(unreachable)
    return edge


def _not_reached(line: EdgeLine) -> MadeEdge:
    """A line so short that the covering, held back at both its ends, leaves none of it."""
    says = f"The line is {mm(line.length_mm)} long and the covering stops short of both its ends: nothing is laid along it."
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made="",
        run=None,
        clear_mm=None,
        parts=(),
        lead=(),
        says=(says,),
        findings=(
            not_covered(
                rule="edges",
                where=line.name,
                proposed=line.laid_mm,
                unit="mm",
                citation=house("an edge is made only where some of it is left to lay"),
                says=says,
            ),
        ),
        working=laid_length(line),
    )


def _with_air(edge: MadeEdge, air: AirAtLine | None) -> MadeEdge:
    """The edge with the air units that go along it."""
    if air is None:
        return edge
    return replace(
        edge,
        parts=(*edge.parts, *air.parts),
        says=(*edge.says, *air.says),
        findings=(*edge.findings, *air.findings),
        working=replace(edge.working, parts=(*edge.working.parts, *air.working)),
    )


def _once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    return tuple(dict.fromkeys(findings))
