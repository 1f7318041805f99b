"""Jobs with their edges made one way or another: what the sections and the sheet of the edges are tried on."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import dist

from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.edges.wished import (
    EdgesWished,
    HipMade,
    LineUnit,
    OpeningMade,
    RidgeMade,
    RidgeWished,
    ValleyMade,
    ValleyWished,
    VergeMade,
    VergeWished,
    WallWished,
)
from gaugerod.job.model import Job, TopKind
from gaugerod.job.result import Result
from gaugerod.job.set_out import set_out
from gaugerod.setting_out.across import SideKind
from gaugerod.sheets.drawing import Pen, Point
from gaugerod.sheets.edge_detail import Detail
from gaugerod.sheets.edges_sheet import details
from tests.scenario.taken_off import example

UNIT = LineUnit(length_mm=450.0, cover_mm=430.0)


def wished(
    *,
    ridge: RidgeMade = RidgeMade.DRY,
    hips: HipMade = HipMade.UNITS,
    verge: VergeWished | None = None,
    valley: ValleyWished | None = None,
    wall: WallWished | None = None,
) -> EdgesWished:
    """Everything made: dry, lead in the valleys; what is named otherwise."""
    return EdgesWished(
        ridge=RidgeWished(made=ridge, ridge=UNIT, mono_ridge=UNIT, hip=UNIT, hips=hips),
        verge=verge or VergeWished(made=VergeMade.DRY),
        valley=valley or ValleyWished(made=ValleyMade.LEAD),
        wall=wall or WallWished(),
    )


@cache
def edges_made(name: str, edges: EdgesWished, *, top: TopKind | None = None, right: SideKind | None = None) -> Result:
    """An example with its edges made so, a chimney in every opening; ``top`` and ``right`` of its slopes where given."""
    job: Job = example(name).job
    slopes = tuple(
        replace(
            slope,
            top=top or slope.top,
            right=right or slope.right,
            openings_made=tuple((opening.name, OpeningMade.CHIMNEY) for opening in slope.openings),
        )
        for slope in job.slopes
    )
    return set_out(replace(job, edges=edges, slopes=slopes))


def detail_of(result: Result, said: str) -> Detail:
    """The one section with this in its title."""
    (found,) = [detail for detail, _ in details(result) if said in detail.title]
    return found


def edge_named(result: Result, name: str) -> MadeEdge:
    """One edge."""
    assert result.edges is not None
    return next(edge for edge in result.edges.edges if edge.name == name)


def made_where(result: Result, holds: Callable[[MadeEdge], bool]) -> MadeEdge:
    """The first edge of which this holds."""
    assert result.edges is not None
    return next(edge for edge in result.edges.edges if holds(edge))


def lead_width_mm(edge: MadeEdge, use: LeadUse) -> float:
    """How wide the lead for this is, flat."""
    (found,) = [pieces for pieces in edge.lead if pieces.use is use]
    return found.width_mm


def drawn(detail: Detail, pen: Pen) -> list[tuple[Point, ...]]:
    """Every line or ring of one pen."""
    return [run for path in detail.paths if path.pen is pen for run in path.runs_mm]


def long_mm(run: tuple[Point, ...]) -> float:
    """How long a line is, its bends straightened."""
    return sum(dist(start, end) for start, end in pairwise(run))


def measured_mm(detail: Detail, name: str) -> float:
    """How long the measure of this name is drawn."""
    (found,) = [each for each in detail.measures if each.name == name]
    return dist(found.from_mm, found.to_mm)


def said_of(detail: Detail, name: str) -> str:
    """What the measure of this name says."""
    (found,) = [each.value for each in detail.measures if each.name == name]
    return found
