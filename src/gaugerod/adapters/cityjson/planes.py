"""Roof surfaces joined to planes: neighbours that lie in one plane become one slope."""

from bisect import bisect_left, bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from gaugerod.adapters.cityjson.surfaces import Corner, Surface
from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.slope_plane import SpacePoint

ONE_PLANE_WITHIN_DEG = 0.5
ONE_PLANE_WITHIN_MM = 20.0
"""Neighbours whose planes differ by no more than both are one plane (house limits: what a survey from the air can tell)."""

Side = tuple[Corner, Corner]


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """One plane of a roof: its boundary rings, the outer one first, and its upward unit normal."""

    rings: tuple[tuple[Corner, ...], ...]
    normal: SpacePoint

    @property
    def pitch_deg(self) -> float:
        """Its pitch."""
        nx, ny, nz = self.normal
        return atan2_deg(hypot(nx, ny), nz)

    @property
    def azimuth_deg(self) -> float:
        """The way it faces, clockwise on plan from +y."""
        return atan2_deg(self.normal[0], self.normal[1]) % 360


def split_at_corners(surfaces: Sequence[Surface]) -> list[Surface]:
    """Every side parted at each corner of another surface that lies on it, so that neighbours share whole sides."""
    corners = sorted({corner for surface in surfaces for ring in surface.rings for corner in ring})
    return [
        Surface(rings=tuple(tuple(_split(ring, corners)) for ring in surface.rings), roof=surface.roof)
        for surface in surfaces
    ]


def _split(ring: Sequence[Corner], corners: Sequence[Corner]) -> Iterator[Corner]:
    for at, start in enumerate(ring):
        end = ring[(at + 1) % len(ring)]
        yield start
        low, high = sorted((start[0], end[0]))
        near = corners[bisect_left(corners, (low - 2,)) : bisect_right(corners, (high + 3,))]
        on_side = [(share, corner) for corner in near if (share := _share_along(corner, start, end)) is not None]
        yield from (corner for _, corner in sorted(on_side))


def _share_along(corner: Corner, start: Corner, end: Corner) -> float | None:
    """How far along the side the corner lies, from 0 to 1; None where it is an end or lies over 2 mm off."""
    (ax, ay, az), (bx, by, bz), (px, py, pz) = start, end, corner
    if not (min(ax, bx) - 2 <= px <= max(ax, bx) + 2 and min(ay, by) - 2 <= py <= max(ay, by) + 2):
        return None
    dx, dy, dz = bx - ax, by - ay, bz - az
    long2 = dx * dx + dy * dy + dz * dz
    share = ((px - ax) * dx + (py - ay) * dy + (pz - az) * dz) / long2
    if corner in (start, end) or not 0 < share < 1:
        return None
    off_mm = hypot(px - ax - share * dx, py - ay - share * dy, pz - az - share * dz)
    return share if off_mm <= 2 else None


def faces_up(surface: Surface) -> bool:
    """Does the surface face up? One of no area, upright or the wrong way round does not."""
    return _area_vector(surface.rings)[2] > 0


def planes_of(roof: Sequence[Surface]) -> list[Plane]:
    """The planes of a roof. Scope: surfaces that face up; ``faces_up`` tells."""
    facets = [(surface, _area_vector(surface.rings)) for surface in roof]
    owner: dict[Side, int] = {
        side: number for number, (surface, _) in enumerate(facets) for side in _sides_of(surface.rings)
    }
    group = list(range(len(facets)))
    for (start, end), number in owner.items():
        other = owner.get((end, start))
        if other is not None and group[other] != group[number] and _one_plane(facets[number], facets[other]):
            old, new = group[other], group[number]
            group = [new if each == old else each for each in group]
    return [
        _joined([facets[number] for number in range(len(facets)) if group[number] == each])
        for each in dict.fromkeys(group)
    ]


def _sides_of(rings: Sequence[Sequence[Corner]]) -> Iterator[Side]:
    for ring in rings:
        for at, start in enumerate(ring):
            yield start, ring[(at + 1) % len(ring)]


def _area_vector(rings: Sequence[Sequence[Corner]]) -> SpacePoint:
    """Twice the area, as a vector square to the surface. Source: Newell's sum over the sides."""
    x0, y0, z0 = rings[0][0]
    total = (0.0, 0.0, 0.0)
    for (ax, ay, az), (bx, by, bz) in _sides_of(rings):
        ax, ay, az, bx, by, bz = ax - x0, ay - y0, az - z0, bx - x0, by - y0, bz - z0  # noqa: PLW2901
        total = (total[0] + ay * bz - az * by, total[1] + az * bx - ax * bz, total[2] + ax * by - ay * bx)
    return total


def _unit(vector: SpacePoint) -> SpacePoint:
    size = hypot(*vector)
    return vector[0] / size, vector[1] / size, vector[2] / size


def _one_plane(one: tuple[Surface, SpacePoint], other: tuple[Surface, SpacePoint]) -> bool:
    (a, first), (b, second) = (one[0], _unit(one[1])), (other[0], _unit(other[1]))
    across = hypot(
        first[1] * second[2] - first[2] * second[1],
        first[2] * second[0] - first[0] * second[2],
        first[0] * second[1] - first[1] * second[0],
    )
    along = sum(p * q for p, q in zip(first, second, strict=True))
    if atan2_deg(across, along) > ONE_PLANE_WITHIN_DEG:
        return False
    start = a.rings[0][0]
    offs = [sum((corner[at] - start[at]) * first[at] for at in range(3)) for corner in b.rings[0]]
    return max(offs) <= ONE_PLANE_WITHIN_MM and min(offs) >= -ONE_PLANE_WITHIN_MM


def _joined(facets: Sequence[tuple[Surface, SpacePoint]]) -> Plane:
    x, y, z = (sum(vector[at] for _, vector in facets) for at in range(3))
    sides = Counter(side for surface, _ in facets for side in _sides_of(surface.rings))
    outside = [side for side in sides if side[::-1] not in sides]
    return Plane(rings=tuple(_rings_through(outside)), normal=_unit((x, y, z)))


def _rings_through(sides: Sequence[Side]) -> list[tuple[Corner, ...]]:
    """Sides joined end to start, the largest ring first. Where several start at one corner the sharpest turn to the left
    is taken, so that rings which touch in a corner stay apart.
    """
    starting: dict[Corner, list[Corner]] = {}
    for start, end in sides:
        starting.setdefault(start, []).append(end)
    rings = []
    while starting:
        first = next(iter(starting))
        ring, here, before = [first], first, None
        while here in starting:
            after = _leftmost(before, here, starting[here])
            starting[here].remove(after)
            if not starting[here]:
                del starting[here]
            before, here = here, after
            if here == first:
                break
            ring.append(here)
        if here == first and len(ring) > 2:
            rings.append(tuple(ring))
    return sorted(rings, key=lambda ring: -_area_vector([ring])[2])


def _leftmost(before: Corner | None, here: Corner, ends: Sequence[Corner]) -> Corner:
    if before is None or len(ends) == 1:
        return ends[0]
    bx, by = here[0] - before[0], here[1] - before[1]

    def turn_deg(end: Corner) -> float:
        dx, dy = end[0] - here[0], end[1] - here[1]
        return atan2_deg(bx * dy - by * dx, bx * dx + by * dy)

    return max(ends, key=turn_deg)
