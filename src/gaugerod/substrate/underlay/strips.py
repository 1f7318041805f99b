"""The strips laid before the runs, and everything a slope asks of the rolls."""

from collections.abc import Iterator, Sequence

from gaugerod.geometry.pitch import length_mm
from gaugerod.laying.ask import EdgeKind
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import Demand, Run, Strip, StripKind
from gaugerod.substrate.underlay.ask import UnderlayAsk
from gaugerod.substrate.underlay.reach import valley_strip_width


def strips(ask: UnderlayAsk) -> Iterator[Strip]:
    """The tray or strip along each eaves, and the strip down the full length of each valley."""
    points = ask.outline.points_mm
    for at, edge in enumerate(ask.outline.edges):
        start, end = points[at], points[(at + 1) % len(points)]
        if edge.kind not in {EdgeKind.EAVES, EdgeKind.VALLEY}:
            continue
        valley = edge.kind is EdgeKind.VALLEY
        yield Strip(
            kind=StripKind.VALLEY if valley else StripKind.EAVES_CARRIER,
            edge=edge,
            start_mm=start,
            end_mm=end,
            length_mm=length_mm(end[0] - start[0], end[1] - start[1]),
            width_mm=valley_strip_width(ask).value if valley else ask.carrier_reach_mm,
            elsewhere=edge.name in ask.valley_strips_elsewhere,
        )


def demands(ask: UnderlayAsk, runs: Sequence[Run], laid_first: Sequence[Strip]) -> Iterator[Demand]:
    """Valley strips, each in one piece, then every stretch of every run, which may be joined over the rafters."""
    for strip in laid_first:
        if strip.kind is StripKind.VALLEY and not strip.elsewhere:
            yield Demand(
                name=f"{ask.where}, strip down {strip.edge.name}", from_mm=0.0, to_mm=strip.length_mm, breaks_mm=()
            )
    far_edges = far_edges_mm(ask)
    for run in runs:
        for at, (left, right) in enumerate(run.spans_mm, 1):
            part = f", part {at}" if len(run.spans_mm) > 1 else ""
            yield Demand(
                name=f"{ask.where}, run {run.number}{part}",
                from_mm=left,
                to_mm=right,
                breaks_mm=tuple(edge for edge in far_edges if left < edge < right),
            )


def far_edges_mm(ask: UnderlayAsk) -> tuple[float, ...]:
    """The right-hand edge of every rafter, where a piece laid from the left may end."""
    default = underlay_figure(ask.edition, UnderlayFigure.RAFTER_WIDTH).value
    width_mm = default if ask.rafter_width_mm is None else ask.rafter_width_mm
    return tuple(middle + width_mm / 2 for middle in ask.rafters_mm)
