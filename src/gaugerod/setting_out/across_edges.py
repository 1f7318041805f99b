"""The lines where the courses of a slope end, at the eaves or at the top: both sides, and both sides of every opening."""

from collections.abc import Iterator

from gaugerod.setting_out.across import AcrossAsk, Side, SideKind
from gaugerod.setting_out.end_pieces import CourseEnd, Edge, Stop

_STOPS = {
    SideKind.VERGE: Stop.VERGE,
    SideKind.ABUTMENT: Stop.ABUTMENT,
    SideKind.HIP: Stop.FREE,
    SideKind.VALLEY: Stop.FREE,
}


def edges_at_eaves(ask: AcrossAsk) -> tuple[Edge, ...]:
    """Left side, right side, then the openings from the left."""
    return (*_sides(ask, left_mm=0.0, right_mm=ask.eaves_width_mm), *_openings(ask))


def edges_at_top(ask: AcrossAsk) -> tuple[Edge, ...]:
    """Left and right side where the top line meets them."""
    return tuple(_sides(ask, left_mm=ask.top_left_mm, right_mm=ask.top_right_mm))


def _sides(ask: AcrossAsk, *, left_mm: float, right_mm: float) -> Iterator[Edge]:
    roomy = right_mm - left_mm >= 2 * ask.cover_open_mm
    yield Edge(
        name="left",
        end=CourseEnd.LEFT,
        stop=_STOPS[ask.left.kind],
        least_mm=left_mm - ask.left.reach.greatest_mm,
        greatest_mm=left_mm - ask.left.reach.least_mm,
        aim_mm=left_mm - ask.left.reach.aim_mm,
        crowns_mm=ask.high_points_mm if _wants_crown(ask.left) else (),
        roomy=roomy,
    )
    yield Edge(
        name="right",
        end=CourseEnd.RIGHT,
        stop=_STOPS[ask.right.kind],
        least_mm=right_mm + ask.right.reach.least_mm,
        greatest_mm=right_mm + ask.right.reach.greatest_mm,
        aim_mm=right_mm + ask.right.reach.aim_mm,
        crowns_mm=_from_the_right(ask) if _wants_crown(ask.right) else (),
        roomy=roomy,
    )


def _wants_crown(side: Side) -> bool:
    return side.high_point and side.kind is SideKind.VERGE


def _from_the_right(ask: AcrossAsk) -> tuple[float, ...]:
    return tuple(ask.unit_width_mm - crown_mm for crown_mm in ask.high_points_mm)


def _openings(ask: AcrossAsk) -> Iterator[Edge]:
    for opening in sorted(ask.openings, key=lambda each: each.from_left_mm):
        yield _opening_side(
            f"{opening.name} left", CourseEnd.RIGHT, opening.from_left_mm, opening.from_left_mm, ask.cover_open_mm
        )
        beyond_mm = ask.eaves_width_mm - opening.right_mm
        yield _opening_side(f"{opening.name} right", CourseEnd.LEFT, opening.right_mm, beyond_mm, ask.cover_open_mm)


def _opening_side(name: str, end: CourseEnd, at_mm: float, run_mm: float, cover_open_mm: float) -> Edge:
    return Edge(
        name=name,
        end=end,
        stop=Stop.OPENING,
        least_mm=at_mm,
        greatest_mm=at_mm,
        aim_mm=at_mm,
        roomy=run_mm >= 2 * cover_open_mm,
    )
