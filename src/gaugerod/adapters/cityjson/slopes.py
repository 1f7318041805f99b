"""From the planes of a measured roof to slopes by their outline, each side named from what it meets."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from gaugerod.adapters.cityjson.planes import Plane, Side
from gaugerod.adapters.cityjson.surfaces import Corner, Surface, in_space
from gaugerod.adapters.job_draft.draft import DraftSlope
from gaugerod.adapters.job_file.outline_contradictions import LEVEL_WITHIN_MM
from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.polygon import Point, distance_to_side_mm, signed_area_mm2
from gaugerod.geometry.roof_faces import RoofEdge
from gaugerod.geometry.roof_lines import line_between
from gaugerod.geometry.slope_plane import SlopePlane, slope_plane

NEAR_LEVEL_DEG = 5.0
"""A side that rises no more than this is meant to be level: eaves or a ridge out of true (house limit)."""
FACE_AWAY = -0.9
"""Two slopes that face within 25° of opposite ways, as the product of their unit steps along (house limit)."""
SHORTEST_EAVES_MM = 300.0
"""A shorter side is not taken for the eaves where there is a longer one (house limit)."""
WALL_ABOVE_MM = 10.0
"""A wall that rises more than this over a side is an abutment (house limit)."""
IN_LINE_MM = 2.0
"""A corner nearer than this to the line of its neighbours is left out (house limit)."""

_WAYS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")


@dataclass(frozen=True, slots=True, kw_only=True)
class Neighbours:
    """What lies across every side: another plane of the roof, or a wall."""

    planes: Sequence[Plane]
    plane_at: dict[Side, int]
    walls_at: dict[Side, Surface]


def neighbours_of(planes: Sequence[Plane], others: Sequence[Surface]) -> Neighbours:
    """The sides of all planes, and of the walls and whatever else is no slope."""
    return Neighbours(
        planes=planes,
        plane_at={side: number for number, plane in enumerate(planes) for ring in plane.rings for side in _sides(ring)},
        walls_at={side: surface for surface in others for ring in surface.rings for side in _sides(ring)},
    )


def _sides(ring: Sequence[Corner]) -> list[Side]:
    return list(zip(ring, (*ring[1:], ring[0]), strict=True))


def drafted_slope(number: int, around: Neighbours) -> DraftSlope | str:
    """The slope of one plane; or, where its eaves cannot be told, a remark that says so."""
    plane = around.planes[number]
    name = f"slope {number + 1} {_WAYS[round(plane.azimuth_deg / 45) % 8]}"
    sides = _sides(plane.rings[0])
    axes = _own_axes(plane)
    level = [axes.from_building(in_space(start)) for start, _ in sides]
    edges = [_meeting(side, number, around) for side in sides]
    main = _main_eaves(level, edges)
    if main is None:
        return f"{name}: left out, as no side of it can be its eaves. Measure it by tape."
    remarks: list[str] = []
    if edges[main] not in (None, RoofEdge.EAVES.value):
        remarks.append(f"Its lowest side meets another slope ({edges[main]}) and is taken as eaves: check.")
    out_of_level_mm = in_space(sides[main][1])[2] - in_space(sides[main][0])[2]
    if not -LEVEL_WITHIN_MM <= out_of_level_mm <= LEVEL_WITHIN_MM:
        remarks.append(
            f"The eaves rise {out_of_level_mm:+.0f} mm from left to right; x runs along them. Check with a level."
        )
    outline = _along_eaves(level, main)
    named = [
        edge if edge is not None and at != main else _outer_edge(at, main, outline, sides[at], around)
        for at, edge in enumerate(edges)
    ]
    for hole in plane.rings[1:]:
        hole_mm2 = -signed_area_mm2([axes.from_building(in_space(corner)) for corner in hole])
        remarks.append(f"A hole of {hole_mm2 / 1e6:.2f} m² in it is NOT taken out: give it as an opening.")
    corners, kept = _without_corners_in_line(outline, named)
    return DraftSlope(
        name=name, pitch_deg=plane.pitch_deg, outline_mm=tuple(corners), edges=tuple(kept), remarks=tuple(remarks)
    )


def _own_axes(plane: Plane) -> SlopePlane:
    nx, ny, _ = plane.normal
    size = hypot(nx, ny)
    return slope_plane(in_space(plane.rings[0][0]), along=(-ny / size, nx / size), pitch_deg=plane.pitch_deg)


def _meeting(side: Side, number: int, around: Neighbours) -> str | None:
    """What the side is where another slope lies across it; None where none does."""
    start, end = side
    other = around.plane_at.get((end, start))
    if other is None or start[:2] == end[:2]:
        return None
    own_axes, other_axes = _own_axes(around.planes[number]), _own_axes(around.planes[other])
    upward = start[2] <= end[2]
    foot, head = (start, end) if upward else (end, start)
    left, right = (own_axes, other_axes) if upward else (other_axes, own_axes)
    line = line_between(
        left, right, foot_mm=in_space(foot), head_mm=in_space(head), left_number=number, right_number=other
    )
    facing = own_axes.along[0] * other_axes.along[0] + own_axes.along[1] * other_axes.along[1]
    match line.kind:
        case RoofEdge.HIP if line.slope_deg <= NEAR_LEVEL_DEG and facing <= FACE_AWAY:
            return RoofEdge.RIDGE.value
        case RoofEdge.CHANGE_OF_PITCH:
            rightwards = own_axes.from_building(in_space(end))[0] > own_axes.from_building(in_space(start))[0]
            return RoofEdge.EAVES.value if rightwards else RoofEdge.RIDGE.value
        case _:
            return line.kind.value


def _main_eaves(level: Sequence[Point], edges: Sequence[str | None]) -> int | None:
    """The lowest side that runs left to right and is near level: first of those that meet no other slope."""
    count = len(level)
    found = []
    for at, (x, y) in enumerate(level):
        to_x, to_y = level[(at + 1) % count]
        rise_deg = atan2_deg(to_y - y, to_x - x)
        if -NEAR_LEVEL_DEG <= rise_deg <= NEAR_LEVEL_DEG:
            meets = edges[at] not in (None, RoofEdge.EAVES.value)
            found.append((meets, to_x - x < SHORTEST_EAVES_MM, y + to_y, at))
    return min(found)[3] if found else None


def _along_eaves(level: Sequence[Point], main: int) -> list[Point]:
    """The outline turned and moved so that its eaves lie along x from nothing."""
    x0, y0 = level[main]
    to_x, to_y = level[(main + 1) % len(level)]
    size = hypot(to_x - x0, to_y - y0)
    ex, ey = (to_x - x0) / size, (to_y - y0) / size
    return [((x - x0) * ex + (y - y0) * ey, (y - y0) * ex - (x - x0) * ey) for x, y in level]


def _outer_edge(at: int, main: int, outline: Sequence[Point], side: Side, around: Neighbours) -> str:
    """What a side is where no slope lies across it."""
    (x, y), (to_x, to_y) = outline[at], outline[(at + 1) % len(outline)]
    if at == main or (to_x > x and -LEVEL_WITHIN_MM <= to_y - y <= LEVEL_WITHIN_MM):
        return RoofEdge.EAVES.value
    wall = around.walls_at.get((side[1], side[0]))
    if wall is not None and _rises_over(wall, side):
        return RoofEdge.ABUTMENT.value
    leftwards_deg = atan2_deg(y - to_y, x - to_x)
    near_level = -NEAR_LEVEL_DEG <= leftwards_deg <= NEAR_LEVEL_DEG
    return RoofEdge.MONO_RIDGE.value if near_level else RoofEdge.VERGE.value


def _rises_over(wall: Surface, side: Side) -> bool:
    """Does the wall stand higher than the side anywhere along it?"""
    (ax, ay, az), (bx, by, bz) = in_space(side[0]), in_space(side[1])
    dx, dy = bx - ax, by - ay
    long2 = dx * dx + dy * dy
    if long2 == 0:
        return False
    for px, py, pz in (in_space(corner) for ring in wall.rings for corner in ring):
        share = ((px - ax) * dx + (py - ay) * dy) / long2
        if -0.01 <= share <= 1.01 and pz > az + share * (bz - az) + WALL_ABOVE_MM:
            return True
    return False


def _without_corners_in_line(outline: Sequence[Point], edges: Sequence[str]) -> tuple[list[Point], list[str]]:
    """Corners between two sides of one name and line left out."""
    corners, names = list(outline), list(edges)
    at = 0
    while len(corners) > 3 and at < len(corners):
        after = corners[(at + 1) % len(corners)]
        if names[at - 1] == names[at] and distance_to_side_mm(corners[at], corners[at - 1], after) < IN_LINE_MM:
            del corners[at], names[at]
        else:
            at += 1
    return corners, names
