"""From the skin of a roof to its slopes, upright faces and lines, with every side named."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import hypot
from typing import TypeVar

from gaugerod.geometry.pitch import atan2_deg
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.geometry.roof_faces import RoofEdge, RoofLine, RoofSlope, SlopeSide, Upright, UprightFace
from gaugerod.geometry.roof_lines import RIDGE_UNTIL_DEG, line_between
from gaugerod.geometry.roof_skin import Skin
from gaugerod.geometry.slope_plane import SlopePlane, SpacePoint, slope_plane
from gaugerod.geometry.wavefront.trace import Side

_Part = TypeVar("_Part")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Placed:
    """One face with its place in the building: ``sides`` and ``space_mm`` start at the left end of its foot."""

    number: int
    is_slope: bool
    front: int
    sides: tuple[Side, ...]
    space_mm: tuple[SpacePoint, ...]
    plane: SlopePlane
    seen_area_mm2: float


def placed_faces(skin: Skin, *, shift_mm: Point) -> tuple[_Placed, ...]:
    """Every face placed in the building; ``shift_mm`` moves the sweep's origin back to the plan's."""
    shift_x_mm, shift_y_mm = shift_mm
    space_mm = [(x + shift_x_mm, y + shift_y_mm, height) for x, y, height in skin.trace.nodes]
    counts = {True: 0, False: 0}
    placed: list[_Placed] = []
    for face in skin.faces:
        front = skin.trace.fronts[face.front]
        is_slope = front.run_ratio > 0
        feet = [at for at, side in enumerate(face.sides) if _is_foot(skin, side)]
        if feet:
            first = min(feet, key=lambda at: face.seen_mm[at][0])
        else:  # a cheek stands on a point
            first = min(range(len(face.nodes)), key=lambda at: (face.seen_mm[at][1], face.seen_mm[at][0]))
        corners_mm = tuple(space_mm[node] for node in _from(face.nodes, first))
        nx, ny = front.inward
        placed.append(
            _Placed(
                number=counts[is_slope],
                is_slope=is_slope,
                front=face.front,
                sides=_from(face.sides, first),
                space_mm=corners_mm,
                plane=slope_plane(
                    corners_mm[0], along=(ny, -nx), pitch_deg=atan2_deg(1.0, front.run_ratio) if is_slope else 90.0
                ),
                seen_area_mm2=signed_area_mm2(face.seen_mm),
            )
        )
        counts[is_slope] += 1
    return tuple(placed)


def lines_of(skin: Skin, placed: Sequence[_Placed]) -> dict[Side, RoofLine]:
    """The lines between slopes, each by its side walked up from the foot."""
    lines: dict[Side, RoofLine] = {}
    for at, face in enumerate(placed):
        if not face.is_slope:
            continue
        for corner, (start, end) in enumerate(face.sides):
            other_at = skin.face_of_side.get((end, start))
            if other_at is None or not placed[other_at].is_slope:
                continue
            foot_mm, head_mm = face.space_mm[corner], face.space_mm[(corner + 1) % len(face.sides)]
            if foot_mm[2] < head_mm[2] or (foot_mm[2] == head_mm[2] and at < other_at):
                other = placed[other_at]
                lines[start, end] = line_between(
                    face.plane,
                    other.plane,
                    foot_mm=foot_mm,
                    head_mm=head_mm,
                    left_number=face.number,
                    right_number=other.number,
                )
    return lines


def slopes_of(skin: Skin, placed: Sequence[_Placed], lines: Mapping[Side, RoofLine]) -> tuple[RoofSlope, ...]:
    """The slopes, in the order of their walls."""
    return tuple(_slope(skin, placed, lines, face) for face in placed if face.is_slope)


def _slope(skin: Skin, placed: Sequence[_Placed], lines: Mapping[Side, RoofLine], face: _Placed) -> RoofSlope:
    plane = face.plane
    tx, ty = plane.along
    return RoofSlope(
        number=face.number,
        walls=_walls_below(skin, face.sides),
        pitch_deg=atan2_deg(plane.rise_ratio, plane.run_ratio),
        azimuth_deg=atan2_deg(ty, -tx) % 360.0,
        plane=plane,
        plan_mm=tuple((x, y) for x, y, _ in face.space_mm),
        space_mm=face.space_mm,
        outline_mm=tuple(plane.from_building(point) for point in face.space_mm),
        sides=tuple(_slope_side(skin, placed, lines, face, at) for at in range(len(face.sides))),
        area_mm2=face.seen_area_mm2 / plane.run_ratio,
        plan_area_mm2=face.seen_area_mm2,
    )


def _slope_side(
    skin: Skin, placed: Sequence[_Placed], lines: Mapping[Side, RoofLine], face: _Placed, at: int
) -> SlopeSide:
    start, end = face.sides[at]
    wall = skin.trace.wall_of_side.get((start, end))
    if wall is not None:
        return SlopeSide(kind=RoofEdge.EAVES, wall=wall)
    other = placed[skin.face_of_side[end, start]]
    if other.is_slope:
        line = lines.get((start, end)) or lines[end, start]
        return SlopeSide(kind=line.kind, slope=other.number)
    if _is_foot(skin, (start, end)):
        return SlopeSide(kind=RoofEdge.EAVES, upright=other.number)
    here, there = face.space_mm[at], face.space_mm[(at + 1) % len(face.sides)]
    return SlopeSide(kind=_edge_at_upright(other.plane, here, there), upright=other.number)


def _edge_at_upright(upright: SlopePlane, start: SpacePoint, end: SpacePoint) -> RoofEdge:
    """What the side of a slope is where an upright face stands on the other side of it.

    Seen from outside the upright, a side that runs to the right has the upright below it; to the left, above it.
    """
    dx, dy, rise_mm = (end[at] - start[at] for at in range(3))
    if dx * upright.along[0] + dy * upright.along[1] < 0:
        return RoofEdge.ABUTMENT
    lean_deg = atan2_deg(rise_mm, hypot(dx, dy))
    return RoofEdge.MONO_RIDGE if -RIDGE_UNTIL_DEG <= lean_deg <= RIDGE_UNTIL_DEG else RoofEdge.VERGE


def uprights_of(skin: Skin, placed: Sequence[_Placed], *, cheeks: frozenset[int]) -> tuple[UprightFace, ...]:
    """The upright faces, in the order of their walls; those drawn by the fronts named are cheeks."""
    return tuple(
        UprightFace(
            number=face.number,
            kind=_upright_kind(skin, face.front, cheeks),
            walls=_walls_below(skin, face.sides),
            plane=face.plane,
            space_mm=face.space_mm,
            outline_mm=tuple(face.plane.from_building(point) for point in face.space_mm),
            area_mm2=face.seen_area_mm2,
        )
        for face in placed
        if not face.is_slope
    )


def _upright_kind(skin: Skin, front: int, cheeks: frozenset[int]) -> Upright:
    if front in cheeks:
        return Upright.CHEEK
    return Upright.GABLE if skin.trace.fronts[front].then is None else Upright.WALL_BELOW_EAVES


def _is_foot(skin: Skin, side: Side) -> bool:
    """Does a face rise from this side: from its wall, or from the face below where the wall changes its pitch?"""
    if side in skin.trace.wall_of_side:
        return True
    own, below = skin.face_of_side[side], skin.face_of_side[side[1], side[0]]
    return skin.trace.fronts[skin.faces[below].front].then == skin.faces[own].front


def _walls_below(skin: Skin, sides: Sequence[Side]) -> tuple[int, ...]:
    """The walls a face rises from, by way of the faces under it where the wall changes its pitch."""
    walls: set[int] = set()
    for start, end in sides:
        wall = skin.trace.wall_of_side.get((start, end))
        if wall is not None:
            walls.add(wall)
        elif _is_foot(skin, (start, end)):
            below = skin.faces[skin.face_of_side[end, start]]
            walls.update(_walls_below(skin, below.sides))
    return tuple(sorted(walls))


def _from(parts: Sequence[_Part], first: int) -> tuple[_Part, ...]:
    """The same ring, started at another part."""
    return (*parts[first:], *parts[:first])
