"""What is wrong with an outline: everything at once, each fault said so that a person can mend it."""

from collections.abc import Iterator, Sequence
from math import hypot, isfinite

from gaugerod.basis.errors import Fault
from gaugerod.geometry.polygon import (
    Point,
    distance_to_outline_mm,
    distance_to_side_mm,
    holds_point,
    sides_cross,
    signed_area_mm2,
)

SHORTEST_SIDE_MM = 1.0
"""A side shorter than this, or two corners nearer than this, is a slip: nothing on a roof is measured finer.
(House choice.)"""


def outline_faults(
    outer: Sequence[Point], *, holes: Sequence[Sequence[Point]] = (), field: str = "outline"
) -> tuple[Fault, ...]:
    """Every fault of an outline with its holes; empty when it is sound.

    The outer ring runs counter-clockwise and every hole clockwise: walked with the roof on the left.
    Found: corners that are no numbers, too few corners, the same corner twice, sides of no length, sides that cross
    or touch, rings the wrong way round, holes outside the outline or into each other.

    >>> [fault.field for fault in outline_faults([(0, 0), (4000, 3000), (4000, 0), (0, 3000)])]
    ['outline[0]']
    >>> outline_faults([(0, 0), (4000, 0), (4000, 3000), (0, 3000)])
    ()
    """
    names = [field, *(f"{field}.hole[{at}]" for at in range(len(holes)))]
    faults: list[Fault] = []
    sound: list[tuple[str, Sequence[Point]]] = []
    for name, ring in zip(names, (outer, *holes), strict=True):
        own = list(_ring_faults(ring, field=name, clockwise=name != field))
        faults += own
        if not own:
            sound.append((name, ring))
    if sound and sound[0][0] == field:
        for name, hole in sound[1:]:
            faults += _hole_faults(hole, outer, field=name)
    for at, (name, hole) in enumerate(sound):
        faults += [fault for other, ring in sound[at + 1 :] if name != field
                   for fault in _overlap_faults(ring, hole, field=other, other=name)]  # fmt: skip
    return tuple(faults)


def _ring_faults(ring: Sequence[Point], *, field: str, clockwise: bool) -> Iterator[Fault]:
    unread = [at for at, corner in enumerate(ring) if not all(map(isfinite, corner))]
    for at in unread:
        yield Fault(f"{field}[{at}]", str(ring[at]), "two finite lengths, x and y", "Measure this corner again.")
    if len(ring) < 3:
        yield Fault(field, f"{len(ring)} corners", "three corners or more", "Give every corner of the outline once.")
    if unread or len(ring) < 3:
        return
    shape_faults = [*_same_corner_faults(ring, field=field), *_crossing_faults(ring, field=field)]
    yield from shape_faults
    area_mm2 = signed_area_mm2(ring)
    if not shape_faults and (area_mm2 < 0) != clockwise:
        wanted = "clockwise" if clockwise else "counter-clockwise"
        given = "counter-clockwise" if clockwise else "clockwise"
        yield Fault(field, given, f"{wanted}: walked with the roof on the left", "Turn the order of the corners round.")


def _same_corner_faults(ring: Sequence[Point], *, field: str) -> Iterator[Fault]:
    for at, (x, y) in enumerate(ring):
        for other in range(at):
            apart_mm = hypot(x - ring[other][0], y - ring[other][1])
            if apart_mm >= SHORTEST_SIDE_MM:
                continue
            neighbours = at - other in {1, len(ring) - 1}
            yield Fault(
                f"{field}[{at}]",
                f"({x:g}, {y:g})",
                f"{SHORTEST_SIDE_MM:g} mm or more from every other corner",
                f"It repeats corner {other}: "
                + ("a side of no length. Leave one of them out." if neighbours else "the outline touches itself here."),
            )


def _crossing_faults(ring: Sequence[Point], *, field: str) -> Iterator[Fault]:
    count = len(ring)
    for at in range(count):
        start, end = ring[at], ring[(at + 1) % count]
        for other in range(at + 1, count):
            c, d = ring[other], ring[(other + 1) % count]
            if other == at + 1 or (other + 1) % count == at:
                shared, tip_a, tip_b = (end, start, d) if other == at + 1 else (start, end, c)
                if _folds_back(shared, tip_a, tip_b):
                    yield _crossing(field, at, other, "lies back along")
            elif sides_cross(start, end, c, d):
                yield _crossing(field, at, other, "crosses")
            elif _touch(start, end, c, d):
                yield _crossing(field, at, other, "touches")


def _folds_back(shared: Point, tip_a: Point, tip_b: Point) -> bool:
    """Two neighbouring sides that lie on one another."""
    ax, ay = tip_a[0] - shared[0], tip_a[1] - shared[1]
    bx, by = tip_b[0] - shared[0], tip_b[1] - shared[1]
    if ax * bx + ay * by <= 0:
        return False
    return min(distance_to_side_mm(tip_a, shared, tip_b), distance_to_side_mm(tip_b, shared, tip_a)) < SHORTEST_SIDE_MM


def _touch(a: Point, b: Point, c: Point, d: Point) -> bool:
    """A corner of one side on the other side; two corners in one place are already reported as such."""
    if min(hypot(p[0] - q[0], p[1] - q[1]) for p in (a, b) for q in (c, d)) < SHORTEST_SIDE_MM:
        return False
    nearest_mm = min(
        distance_to_side_mm(a, c, d), distance_to_side_mm(b, c, d), distance_to_side_mm(c, a, b), distance_to_side_mm(d, a, b)
    )  # fmt: skip
    return nearest_mm < SHORTEST_SIDE_MM


def _crossing(field: str, at: int, other: int, how: str) -> Fault:
    return Fault(
        f"{field}[{at}]",
        f"the side from corner {at} {how} the side from corner {other}",
        "sides that meet only at their shared corners",
        "Check the order of the corners and the two sides named.",
    )


def _hole_faults(hole: Sequence[Point], outer: Sequence[Point], *, field: str) -> Iterator[Fault]:
    if not holds_point(outer, hole[0]) or _rings_meet(hole, outer):
        yield Fault(field, "reaches the outline or lies outside it", "wholly inside the outline", "Check its corners.")


def _overlap_faults(hole: Sequence[Point], ring: Sequence[Point], *, field: str, other: str) -> Iterator[Fault]:
    if holds_point(ring, hole[0]) or holds_point(hole, ring[0]) or _rings_meet(hole, ring):
        yield Fault(
            field, f"lies over {other}", "holes clear of each other", "Join the two holes, or check their corners."
        )


def _rings_meet(ring: Sequence[Point], other: Sequence[Point]) -> bool:
    near = any(distance_to_outline_mm(other, corner) < SHORTEST_SIDE_MM for corner in ring) or any(
        distance_to_outline_mm(ring, corner) < SHORTEST_SIDE_MM for corner in other
    )
    return near or any(
        sides_cross(ring[at - 1], ring[at], other[on - 1], other[on])
        for at in range(len(ring))
        for on in range(len(other))
    )
