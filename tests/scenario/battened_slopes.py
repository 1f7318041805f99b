"""Slopes to batten: gables, hips, valleys and openings of our own, as the tests, the properties and the bench ask for them."""

from math import cos, radians

from gaugerod.basis.citation import house
from gaugerod.basis.limit import Limit
from gaugerod.geometry.polygon import Point
from gaugerod.laying.ask import Edge, EdgeKind, Ring
from gaugerod.rules.battens import BattenedCovering
from gaugerod.standards.edition import Edition
from gaugerod.substrate.battens.ask import BattenedSlope, BattenMark, BattensAsk, EvenRafters, Rafters, usual_battens

EDGES = {kind: Edge(name=kind.value, kind=kind) for kind in EdgeKind}


def limit_mm(value_mm: float) -> Limit:
    return Limit(value=value_mm, unit="mm", citation=house("chosen by the test"))


def level_marks(*, gauge_mm: float, height_mm: float, first_mm: float = 0.0) -> tuple[BattenMark, ...]:
    """Level battens from the first, one gauge apart, as far as they stay below the height."""
    start = first_mm or gauge_mm
    count = int((height_mm - start) / gauge_mm) + 1
    return tuple(BattenMark(name=str(row + 1), at_mm=((0.0, start + row * gauge_mm),)) for row in range(count))


def ring(points: tuple[Point, ...], *kinds: EdgeKind) -> Ring:
    return Ring(points_mm=points, edges=tuple(EDGES[kind] for kind in kinds))


def slope(
    points: tuple[Point, ...],
    *kinds: EdgeKind,
    gauge_mm: float = 100.0,
    rafters: Rafters | None = None,
    openings: tuple[Ring, ...] = (),
    where: str = "rear",
) -> BattenedSlope:
    height_mm = max(y for _, y in points)
    return BattenedSlope(
        where=where,
        outline=ring(points, *kinds),
        openings=openings,
        marks=level_marks(gauge_mm=gauge_mm, height_mm=height_mm - 30.0),
        rafters=rafters or EvenRafters(first_mm=225.0, spacing_mm=600.0),
    )


def gable(*, width_mm: float, courses: int, gauge_mm: float, rafters: Rafters | None = None) -> BattenedSlope:
    height_mm = gauge_mm * courses + 60.0
    points = ((0.0, 0.0), (width_mm, 0.0), (width_mm, height_mm), (0.0, height_mm))
    return slope(
        points, EdgeKind.EAVES, EdgeKind.VERGE, EdgeKind.RIDGE, EdgeKind.VERGE, gauge_mm=gauge_mm, rafters=rafters
    )


def rooflight(*, left_mm: float, sill_mm: float, width_mm: float, height_mm: float) -> Ring:
    right_mm, head_mm = left_mm + width_mm, sill_mm + height_mm
    points = ((left_mm, sill_mm), (left_mm, head_mm), (right_mm, head_mm), (right_mm, sill_mm))
    return ring(points, *[EdgeKind.OPENING] * 4)


def hipped_house(*, length_mm: float, width_mm: float, pitch_deg: float, gauge_mm: float) -> tuple[BattenedSlope, ...]:
    """The four slopes of a hipped house of equal pitch."""
    rafter_mm = width_mm / 2 / cos(radians(pitch_deg))
    slopes = []
    for name, eaves_mm in (("front", length_mm), ("right", width_mm), ("rear", length_mm), ("left", width_mm)):
        points: tuple[Point, ...] = ((0.0, 0.0), (eaves_mm, 0.0), (eaves_mm - width_mm / 2, rafter_mm))
        kinds = [EdgeKind.EAVES, EdgeKind.HIP, EdgeKind.HIP]
        if eaves_mm > width_mm:
            points = (*points, (width_mm / 2, rafter_mm))
            kinds.insert(2, EdgeKind.RIDGE)
        slopes.append(slope(points, *kinds, gauge_mm=gauge_mm, where=name))
    return tuple(slopes)


def asked(
    *slopes: BattenedSlope, covering: BattenedCovering = BattenedCovering.TILE_DOUBLE_LAP, edition: Edition = Edition.GB
) -> BattensAsk:
    return usual_battens(slopes=slopes, covering=covering, edition=edition)
