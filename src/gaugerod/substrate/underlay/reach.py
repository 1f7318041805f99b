"""How far the underlay reaches at each edge, by how the edge is made."""

from collections.abc import Iterator
from typing import assert_never

from gaugerod.basis.citation import common_practice
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.limit import Limit
from gaugerod.geometry.moved_edges import moved_outline_mm
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Edge, EdgeKind
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import EdgeReach
from gaugerod.substrate.underlay.ask import RidgeMade, UnderlayAsk

_EAVES = common_practice(
    "the underlay starts at the fascia face: only the tray or strip, which bears sunlight, goes on"
)
_VERGE = common_practice("the underlay ends over the outer leaf, under the undercloak, clear of the mortar")


def reaches(ask: UnderlayAsk) -> tuple[EdgeReach, ...]:
    """What the underlay does at each edge of the outline, in its order."""
    return tuple(_reach(ask, edge) for edge in ask.outline.edges)


def reach_outline_mm(ask: UnderlayAsk, edges: tuple[EdgeReach, ...]) -> tuple[Point, ...]:
    """The outline of the underlay. Raises NothingToSetOut where nothing is left between the edges."""
    points, _ = moved_outline_mm(ask.outline.points_mm, [edge.past_mm for edge in edges])
    if any(outline_faults(points)):
        raise NothingToSetOut(
            f"{ask.where}: the slope is too small for its strips and laps of underlay; cover it by hand"
        )
    return points


def valley_strip_width(ask: UnderlayAsk) -> Limit:
    """The width of the strip laid down a valley, both slopes together."""
    default = underlay_figure(ask.edition, UnderlayFigure.VALLEY_STRIP_WIDTH)
    if ask.valley_strip_width_mm is None:
        return default
    return Limit(value=ask.valley_strip_width_mm, unit="mm", citation=common_practice("the strip's width as given"))


def _reach(ask: UnderlayAsk, edge: Edge) -> EdgeReach:
    def of(which: UnderlayFigure, does: str) -> EdgeReach:
        figure = underlay_figure(ask.edition, which)
        past = f"{figure.value:g} mm"
        return EdgeReach(edge=edge, past_mm=figure.value, does=does.format(past), citation=figure.citation)

    match edge.kind:
        case EdgeKind.EAVES:
            does = "start at the fascia face, over the tray or strip that goes on into the gutter"
            return EdgeReach(edge=edge, past_mm=0.0, does=does, citation=_EAVES)
        case EdgeKind.VERGE:
            does = "end over the outer leaf, under the undercloak, clear of the mortar"
            return EdgeReach(edge=edge, past_mm=0.0, does=does, citation=_VERGE)
        case EdgeKind.HIP:
            return of(UnderlayFigure.HIP_PAST_LEAST, "carry {} past the line of the hip, over the next slope's")
        case EdgeKind.ABUTMENT | EdgeKind.OPENING:
            return of(UnderlayFigure.ABUTMENT_TURN_UP_LEAST, "turn up the wall by {}")
        case EdgeKind.VALLEY:
            return _valley(ask, edge)
        case EdgeKind.RIDGE:
            return _ridge(ask, edge)
        case _ as unreachable:
            assert_never(unreachable)


def _valley(ask: UnderlayAsk, edge: Edge) -> EdgeReach:
    over = underlay_figure(ask.edition, UnderlayFigure.VALLEY_OVER_STRIP_LEAST)
    width = valley_strip_width(ask)
    back_mm = width.value / 2 - over.value
    if back_mm < 0:
        raise NothingToSetOut(
            f"{ask.where}, {edge.name}: a strip {width.value:g} mm wide leaves no {over.value:g} mm to lap on each side; "
            f"it takes {2 * over.value:g} mm"
        )
    does = (
        f"lap {over.value:g} mm over the strip laid first down the valley, and stop {back_mm:g} mm from the line of the "
        "valley; no underlay goes under the valley's lining but the strip"
    )
    return EdgeReach(edge=edge, past_mm=-back_mm, does=does, citation=over.citation)


def _ridge(ask: UnderlayAsk, edge: Edge) -> EdgeReach:
    match ask.ridge:
        case RidgeMade.BEDDED:
            steep = ask.pitch_deg >= underlay_figure(ask.edition, UnderlayFigure.RIDGE_STEEP_FROM).value
            which = UnderlayFigure.RIDGE_BEDDED_OVER_LEAST_STEEP if steep else UnderlayFigure.RIDGE_BEDDED_OVER_LEAST
            figure = underlay_figure(ask.edition, which)
            does = f"carry over the apex and lap the other slope's by {figure.value:g} mm"
            return EdgeReach(edge=edge, past_mm=figure.value, does=does, citation=figure.citation)
        case RidgeMade.DRY_VENTILATED:
            figure = underlay_figure(ask.edition, UnderlayFigure.RIDGE_DRY_STOP_SHORT)
            does = f"stop {figure.value:g} mm short of the apex, so that the ridge can breathe, or as the ridge's maker says"
            return EdgeReach(edge=edge, past_mm=-figure.value, does=does, citation=figure.citation)
        case RidgeMade.MONO:
            figure = underlay_figure(ask.edition, UnderlayFigure.MONO_RIDGE_OVER_LEAST)
            does = f"carry {figure.value:g} mm over the top fascia"
            return EdgeReach(edge=edge, past_mm=figure.value, does=does, citation=figure.citation)
        case _ as unreachable:
            assert_never(unreachable)


def other_sources(ask: UnderlayAsk) -> Iterator[tuple[str, Limit]]:
    """What a second source says of this slope's ridge, where one disagrees."""
    if not any(edge.kind is EdgeKind.RIDGE for edge in ask.outline.edges):
        return
    match ask.ridge:
        case RidgeMade.BEDDED:
            return
        case RidgeMade.DRY_VENTILATED:
            yield "short of the apex", underlay_figure(ask.edition, UnderlayFigure.RIDGE_DRY_STOP_SHORT_OTHER)
        case RidgeMade.MONO:
            yield "over the top fascia", underlay_figure(ask.edition, UnderlayFigure.MONO_RIDGE_OVER_LEAST_OTHER)
        case _ as unreachable:
            assert_never(unreachable)
