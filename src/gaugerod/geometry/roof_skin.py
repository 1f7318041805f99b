"""The skin of a roof as the sweep left it: faces made of nodes, who lies beside whom, and the proof that it is closed."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from gaugerod.basis.errors import RoofWillNotClose
from gaugerod.geometry.polygon import Point, signed_area_mm2
from gaugerod.geometry.wavefront.rings import rings_of_face, view_of_face
from gaugerod.geometry.wavefront.trace import Side, Trace


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One face: the front that drew it and its nodes, counter-clockwise seen from outside.

    ``seen_mm`` are the corners as seen: x along the wall to the right; y the run in from the origin (a slope) or the
    height (an upright face).
    """

    front: int
    nodes: tuple[int, ...]
    seen_mm: tuple[Point, ...]

    @property
    def sides(self) -> list[Side]:
        """From node to node; the last ends at the first node."""
        return list(zip(self.nodes, (*self.nodes[1:], self.nodes[0]), strict=True))


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin:
    """Every face, and for every directed side the face it belongs to."""

    trace: Trace
    faces: tuple[Face, ...]
    face_of_side: dict[Side, int]


def skin_of(trace: Trace, *, footprint_mm2: float, tolerance_mm: float) -> Skin:
    """The faces of a finished sweep. Raises RoofWillNotClose unless they are proved to make one whole roof.

    The proof: every inner side is shared by exactly two faces that walk it in opposite directions, every other side is
    a wall's; no face crosses itself and all run counter-clockwise; every corner lies in its face's plane; and the plan
    areas sum to the footprint. Then the faces cover the plan once, and once only.
    """
    faces: list[Face] = []
    face_of_side: dict[Side, int] = {}
    for front in range(len(trace.fronts)):
        seen_from_outside = view_of_face(trace, front)
        for nodes in rings_of_face(trace, front):
            face = Face(front=front, nodes=tuple(nodes), seen_mm=tuple(map(seen_from_outside, nodes)))
            for side in face.sides:
                if side in face_of_side:
                    raise _torn(trace, side[0], "two slopes claim one edge here")
                face_of_side[side] = len(faces)
            _check_shape(trace, face, tolerance_mm)
            faces.append(face)
    _check_shared(trace, face_of_side)
    _check_area(trace, faces, footprint_mm2=footprint_mm2, tolerance_mm=tolerance_mm)
    return Skin(trace=trace, faces=tuple(faces), face_of_side=face_of_side)


def _torn(trace: Trace, node: int, reason: str) -> RoofWillNotClose:
    x_mm, y_mm, _ = trace.nodes[node]
    return RoofWillNotClose(where_mm=(x_mm, y_mm), why=reason)


def _check_shape(trace: Trace, face: Face, tolerance_mm: float) -> None:
    if len(face.nodes) < 3 or signed_area_mm2(face.seen_mm) <= 0:
        raise _torn(trace, face.nodes[0], "a slope comes out inside out here")
    front = trace.fronts[face.front]
    nx, ny = front.inward
    for node in face.nodes:
        x, y, height = trace.nodes[node]
        if not -4 * tolerance_mm <= nx * x + ny * y - front.place_mm(height) <= 4 * tolerance_mm:
            raise _torn(trace, node, "a corner leaves the plane of its slope here")
    seen = face.seen_mm
    count = len(seen)
    for at in range(count - 2):
        for other in range(at + 2, count - (at == 0)):
            if _cross_deeply(seen[at], seen[at + 1], seen[other], seen[(other + 1) % count], tolerance_mm):
                raise _torn(trace, face.nodes[at], "the edges of a slope cross here")


def _cross_deeply(a: Point, b: Point, c: Point, d: Point, tolerance_mm: float) -> bool:
    """Do two sides cross, each reaching past the other by more than the tolerance?"""
    return _parts(a, b, c, d, tolerance_mm) and _parts(c, d, a, b, tolerance_mm)


def _parts(a: Point, b: Point, c: Point, d: Point, tolerance_mm: float) -> bool:
    """Does the line a–b pass between c and d, well clear of both?"""
    dx, dy = b[0] - a[0], b[1] - a[1]
    c_turn = dx * (c[1] - a[1]) - dy * (c[0] - a[0])
    d_turn = dx * (d[1] - a[1]) - dy * (d[0] - a[0])
    if c_turn * d_turn >= 0:
        return False
    slack = tolerance_mm * hypot(dx, dy)
    return not (-slack <= c_turn <= slack or -slack <= d_turn <= slack)


def _check_shared(trace: Trace, face_of_side: dict[Side, int]) -> None:
    for start, end in face_of_side:
        on_wall = (start, end) in trace.wall_of_side
        if ((end, start) in face_of_side) == on_wall:
            raise _torn(trace, start, "an edge has a slope on one side only here")
    for start, end in trace.wall_of_side:
        if (start, end) not in face_of_side:
            raise _torn(trace, start, "no slope rises from this wall")


def _check_area(trace: Trace, faces: Sequence[Face], *, footprint_mm2: float, tolerance_mm: float) -> None:
    total_mm2 = sum(signed_area_mm2(face.seen_mm) for face in faces if trace.fronts[face.front].run_ratio > 0)
    around_mm = sum(
        hypot(trace.nodes[end][0] - trace.nodes[start][0], trace.nodes[end][1] - trace.nodes[start][1])
        for start, end in trace.wall_of_side
    )
    off_mm2 = total_mm2 - footprint_mm2
    if not -tolerance_mm * around_mm <= off_mm2 <= tolerance_mm * around_mm:
        raise _torn(
            trace, faces[0].nodes[0], f"the slopes cover {total_mm2:.0f} mm² of {footprint_mm2:.0f} mm² on plan"
        )
