"""Slopes of our own for laying: rectangles, hips and any outline, in plain tiles unless said otherwise."""

from collections.abc import Sequence
from math import ceil

from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.laying.ask import (
    Course,
    CourseLine,
    Edge,
    EdgeKind,
    LapSide,
    LayingAsk,
    OffcutRule,
    Perps,
    Ring,
    Spot,
    Unit,
)

PLAIN_TILE = Unit(
    width_mm=165.0,
    lap_side=LapSide.LEFT,
    offcut_rule=OffcutRule.IN_PLACE,
    nibs=(Spot(from_head_mm=6.0, from_left_mm=50.0), Spot(from_head_mm=6.0, from_left_mm=115.0)),
    holes=(Spot(from_head_mm=25.0, from_left_mm=40.0), Spot(from_head_mm=25.0, from_left_mm=125.0)),
    unit_and_a_half=True,
)


def ring(points: Sequence[Point], names: Sequence[str] = (), kinds: Sequence[EdgeKind] = ()) -> Ring:
    """A ring with named edges; hips called a, b, c … where nothing is said."""
    names = names or [chr(ord("a") + at) for at in range(len(points))]
    kinds = kinds or [EdgeKind.HIP] * len(points)
    edges = tuple(Edge(name=name, kind=kind) for name, kind in zip(names, kinds, strict=True))
    return Ring(points_mm=tuple(points), edges=edges)


def slope(
    outline: Sequence[Point] | Ring,
    *,
    openings: Sequence[Sequence[Point]] = (),
    unit: Unit = PLAIN_TILE,
    cover_mm: float = 165.0,
    gauge_mm: float = 100.0,
    unit_length_mm: float = 265.0,
    first_mm: float | None = None,
    first_tail_mm: float | None = None,
    bond_mm: float | None = None,
    rise_ratio: float = 0.0,
    first_lean_ratio: float = 0.0,
    cover_lean_ratio: float = 0.0,
    spare_courses: int = 0,
) -> LayingAsk:
    """A slope of equal courses from its lowest point up, joints from its left end, half bond unless said otherwise."""
    outer = outline if isinstance(outline, Ring) else ring(outline)
    lowest = min(y for _, y in outer.points_mm) if first_tail_mm is None else first_tail_mm
    left = min(x for x, _ in outer.points_mm) if first_mm is None else first_mm
    count = ceil((max(y for _, y in outer.points_mm) - lowest) / gauge_mm - 1e-9) + spare_courses
    shift_mm = cover_mm / 2 if bond_mm is None else bond_mm
    courses = tuple(
        Course(
            tail=CourseLine(at_mm=lowest + number * gauge_mm, rise_ratio=rise_ratio),
            perps=Perps(
                first_mm=left - (number % 2) * shift_mm,
                cover_mm=cover_mm,
                first_lean_ratio=first_lean_ratio,
                cover_lean_ratio=cover_lean_ratio,
            ),
            unit_length_mm=unit_length_mm,
        )
        for number in range(count)
    )
    return LayingAsk(
        where="rear",
        outline=outer,
        openings=tuple(ring(hole[::-1] if signed_area_mm2(hole) > 0 else hole, [f"opening {at}"] * len(hole),
                            [EdgeKind.OPENING] * len(hole)) for at, hole in enumerate(openings)),
        courses=courses,
        head=CourseLine(at_mm=lowest + count * gauge_mm, rise_ratio=rise_ratio),
        unit=unit,
    )  # fmt: skip


HIPPED = ring(
    [(0.0, 0.0), (6600.0, 0.0), (4400.0, 2800.0), (2200.0, 2800.0)],
    ["eaves", "right hip", "ridge", "left hip"],
    [EdgeKind.EAVES, EdgeKind.HIP, EdgeKind.RIDGE, EdgeKind.HIP],
)
"""A front slope between two equal hips, 28 courses at 100 mm."""


def mirrored(ask: LayingAsk) -> LayingAsk:
    """The same slope seen in a mirror: x to the right becomes x to the left, laps and spots with it."""
    unit = ask.unit

    def turned(it: Ring) -> Ring:
        points = tuple((-x, y) for x, y in it.points_mm[::-1])
        edges = it.edges[::-1]
        return Ring(points_mm=points, edges=edges[1:] + edges[:1])

    def line(it: CourseLine) -> CourseLine:
        return CourseLine(at_mm=it.at_mm, rise_ratio=-it.rise_ratio)

    def perps(it: Perps) -> Perps:
        return Perps(
            first_mm=-it.first_mm,
            cover_mm=it.cover_mm,
            first_lean_ratio=-it.first_lean_ratio,
            cover_lean_ratio=it.cover_lean_ratio,
        )

    def spots(them: tuple[Spot, ...]) -> tuple[Spot, ...]:
        return tuple(Spot(from_head_mm=it.from_head_mm, from_left_mm=unit.width_mm - it.from_left_mm) for it in them)

    return LayingAsk(
        where=ask.where,
        outline=turned(ask.outline),
        openings=tuple(turned(opening) for opening in ask.openings),
        courses=tuple(
            Course(tail=line(it.tail), perps=perps(it.perps), unit_length_mm=it.unit_length_mm) for it in ask.courses
        ),
        head=line(ask.head),
        unit=Unit(
            width_mm=unit.width_mm,
            lap_side=LapSide.LEFT if unit.lap_side is LapSide.RIGHT else LapSide.RIGHT,
            offcut_rule=unit.offcut_rule,
            nibs=spots(unit.nibs),
            holes=spots(unit.holes),
            unit_and_a_half=unit.unit_and_a_half,
            double=unit.double,
            random=unit.random,
        ),
    )
