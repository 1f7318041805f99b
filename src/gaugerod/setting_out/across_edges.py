"""The lines where the courses of a slope end: both sides at the eaves or at the top, upper edges, sides of openings."""

from collections.abc import Iterator

from gaugerod.setting_out.across import AcrossAsk, CourseEnd, Side, SideKind, UpperEdge
from gaugerod.setting_out.end_pieces import Edge, Stop
from gaugerod.setting_out.stretches import stretches

_STOPS = {
    SideKind.VERGE: Stop.VERGE,
    SideKind.ABUTMENT: Stop.ABUTMENT,
    SideKind.HIP: Stop.FREE,
    SideKind.VALLEY: Stop.FREE,
}


def edges_at_eaves(ask: AcrossAsk) -> tuple[Edge, ...]:
    """Left side, right side, the upper edges, then the openings from the left."""
    upper = (_upper(ask, edge) for edge in ask.upper)
    return (*side_edges(ask, left_mm=0.0, right_mm=ask.eaves_width_mm), *upper, *_openings(ask))


def side_edges(ask: AcrossAsk, *, left_mm: float, right_mm: float) -> tuple[Edge, Edge]:
    """Left and right side, where the line from ``left_mm`` to ``right_mm`` meets them."""
    width_mm = right_mm - left_mm + ask.left.reach.least_mm + ask.right.reach.least_mm
    roomy = width_mm >= ask.unit_width_mm + 2 * ask.cover_open_mm
    left_most_mm = _greatest_reach_mm(ask, CourseEnd.LEFT)
    right_most_mm = _greatest_reach_mm(ask, CourseEnd.RIGHT)
    return (
        Edge(
            name="left",
            end=CourseEnd.LEFT,
            stop=_STOPS[ask.left.kind],
            least_mm=left_mm - left_most_mm,
            greatest_mm=left_mm - ask.left.reach.least_mm,
            aim_mm=left_mm - min(ask.left.reach.aim_mm, left_most_mm),
            crowns_mm=ask.high_points_mm if _wants_crown(ask.left) else (),
            roomy=roomy,
        ),
        Edge(
            name="right",
            end=CourseEnd.RIGHT,
            stop=_STOPS[ask.right.kind],
            least_mm=right_mm + ask.right.reach.least_mm,
            greatest_mm=right_mm + right_most_mm,
            aim_mm=right_mm + min(ask.right.reach.aim_mm, right_most_mm),
            crowns_mm=_from_the_right_mm(ask) if _wants_crown(ask.right) else (),
            roomy=roomy,
        ),
    )


def _upper(ask: AcrossAsk, edge: UpperEdge) -> Edge:
    reach, out = edge.side.reach, -1 if edge.end is CourseEnd.LEFT else 1
    ends_mm = sorted((edge.at_mm + out * reach.least_mm, edge.at_mm + out * reach.greatest_mm))
    crowns_mm = ask.high_points_mm if edge.end is CourseEnd.LEFT else _from_the_right_mm(ask)
    return Edge(
        name=edge.name,
        end=edge.end,
        stop=_STOPS[edge.side.kind],
        least_mm=ends_mm[0],
        greatest_mm=ends_mm[1],
        aim_mm=edge.at_mm + out * reach.aim_mm,
        crowns_mm=crowns_mm if _wants_crown(edge.side) else (),
        roomy=edge.run_mm + reach.least_mm >= ask.unit_width_mm + 2 * ask.cover_open_mm,
    )


def _greatest_reach_mm(ask: AcrossAsk, end: CourseEnd) -> float:
    """The band's end at the side where courses have this end, or less: one unit alone must span to an opening there."""
    side, opening_stops = (ask.left, CourseEnd.RIGHT) if end is CourseEnd.LEFT else (ask.right, CourseEnd.LEFT)
    alone_mm = [
        ask.unit_width_mm - stretch.run_mm
        for stretch in stretches(ask)
        if stretch.end is opening_stops and stretch.beside is side and stretch.one_unit(ask.unit_width_mm)
    ]
    return min([side.reach.greatest_mm, *alone_mm])


def _wants_crown(side: Side) -> bool:
    return side.high_point and side.kind is SideKind.VERGE


def _from_the_right_mm(ask: AcrossAsk) -> tuple[float, ...]:
    return tuple(ask.unit_width_mm - crown_mm for crown_mm in ask.high_points_mm)


def _openings(ask: AcrossAsk) -> Iterator[Edge]:
    for stretch in stretches(ask):
        if stretch.one_unit(ask.unit_width_mm) and stretch.beside_all_of_it:
            continue
        yield Edge(
            name=stretch.at,
            end=stretch.end,
            stop=Stop.OPENING,
            least_mm=stretch.at_mm,
            greatest_mm=stretch.at_mm,
            aim_mm=stretch.at_mm,
            roomy=stretch.roomy(unit_width_mm=ask.unit_width_mm, cover_open_mm=ask.cover_open_mm),
        )
