"""What the laying of one slope depends on.

Axes: x along the eaves from the left, y up the slope, both in the slope's own plane, mm.

The outline is where the *covering* ends: out to the tail line at the eaves and the overhang at a verge, back to the
cut line at a hip or valley. Moving an edge out or back from the roof structure is done before, by whoever names it.
"""

from dataclasses import dataclass
from enum import StrEnum
from math import isfinite

from gaugerod.basis.errors import Fault, InputRefused
from gaugerod.basis.finding import TOUCH
from gaugerod.geometry.outline_faults import outline_faults
from gaugerod.geometry.polygon import Point


class EdgeKind(StrEnum):
    """What an edge of the slope is."""

    EAVES = "eaves"
    VERGE = "verge"
    RIDGE = "ridge"
    HIP = "hip"
    VALLEY = "valley"
    ABUTMENT = "abutment"
    OPENING = "opening"


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """The name and kind of one edge of the outline: ``left hip``, ``rooflight``."""

    name: str
    kind: EdgeKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """A closed outline, the covering on the left: counter-clockwise for the slope, clockwise for an opening.

    ``edges[i]`` runs from point i to point i + 1.
    """

    points_mm: tuple[Point, ...]
    edges: tuple[Edge, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseLine:
    """A straight line across the slope: y = at_mm + rise_ratio · x. Level when the battens are parallel to the eaves."""

    at_mm: float
    rise_ratio: float = 0.0

    def height_mm(self, x_mm: float) -> float:
        """Height of the line at x."""
        return self.at_mm + self.rise_ratio * x_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Perps:
    """The joints of one kind of course. Joint i is the left side of unit i and stands at

    x = (first_mm + i · cover_mm) + (first_lean_ratio + i · cover_lean_ratio) · y.

    Both leans are nothing when the perps are square to the eaves. A bond row has its own ``first_mm``.
    """

    first_mm: float
    cover_mm: float
    first_lean_ratio: float = 0.0
    cover_lean_ratio: float = 0.0


def fanned_perps(
    *, eaves_first_mm: float, eaves_cover_mm: float, top_first_mm: float, top_cover_mm: float, top_mm: float
) -> Perps:
    """Perps struck between marks at the eaves (y = 0) and marks at a line ``top_mm`` up the slope.

    >>> perps = fanned_perps(eaves_first_mm=0.0, eaves_cover_mm=300.0, top_first_mm=10.0,
    ...                      top_cover_mm=303.0, top_mm=5000.0)
    >>> perps.first_lean_ratio, perps.cover_lean_ratio
    (0.002, 0.0006)
    """
    return Perps(
        first_mm=eaves_first_mm,
        cover_mm=eaves_cover_mm,
        first_lean_ratio=(top_first_mm - eaves_first_mm) / top_mm,
        cover_lean_ratio=(top_cover_mm - eaves_cover_mm) / top_mm,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One course: the line of its tails, its joints, and the length of its units (diminishing courses differ)."""

    tail: CourseLine
    perps: Perps
    unit_length_mm: float


class LapSide(StrEnum):
    """The side of a unit that lies under its neighbour. A unit narrower than its cover (open joint) laps nowhere."""

    LEFT = "left"
    RIGHT = "right"


class OffcutRule(StrEnum):
    """Where in a unit a piece may be taken from.

    ``in-place``  only where it sits in its own unit: nibs, holes and side locks stay where they are needed
    ``along``     anywhere along the width at its own height: a slate, holed on site
    """

    IN_PLACE = "in-place"
    ALONG = "along"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A nib or nail hole: from the head and from the left side of the unit, seen as laid."""

    from_head_mm: float
    from_left_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """The unit that is laid. ``random`` slates have an average width: they are counted by metres run, and a narrow
    end is a narrower slate from the stack.
    """

    width_mm: float
    lap_side: LapSide
    offcut_rule: OffcutRule
    nibs: tuple[Spot, ...] = ()
    holes: tuple[Spot, ...] = ()
    unit_and_a_half: bool = False
    double: bool = False
    random: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class LayingAsk:
    """One slope to lay: its outline, its openings, its courses from the eaves up, and the unit.

    ``head`` is the line where the top course ends: what it shows reaches from its tail line to there.
    """

    where: str
    outline: Ring
    openings: tuple[Ring, ...]
    courses: tuple[Course, ...]
    head: CourseLine
    unit: Unit

    def __post_init__(self) -> None:
        faults = [*_ring_faults(self), *_course_faults(self)]
        if faults:
            raise InputRefused(faults)

    @property
    def lines(self) -> tuple[CourseLine, ...]:
        """The tail line of every course, then the head line of the last."""
        return (*(course.tail for course in self.courses), self.head)

    @property
    def edges(self) -> tuple[Edge, ...]:
        """Every edge in the order of its number: the outline's, then those of each opening."""
        return tuple(edge for ring in (self.outline, *self.openings) for edge in ring.edges)


def _ring_faults(ask: LayingAsk) -> list[Fault]:
    rings = [opening.points_mm for opening in ask.openings]
    faults = list(outline_faults(ask.outline.points_mm, holes=rings, field=f"{ask.where}.outline"))
    for ring in (ask.outline, *ask.openings):
        if len(ring.edges) != len(ring.points_mm):
            given = f"{len(ring.points_mm)} points, {len(ring.edges)} edges"
            faults.append(Fault(f"{ask.where}.edges", given, "one edge for each point", "Name every edge."))
    return faults


def _course_faults(ask: LayingAsk) -> list[Fault]:
    faults = []
    if not ask.courses:
        faults.append(Fault(f"{ask.where}.courses", "none", "one course or more", "Set out the courses first."))
    if not (isfinite(ask.unit.width_mm) and ask.unit.width_mm > 0):
        faults.append(Fault(f"{ask.where}.unit.width_mm", str(ask.unit.width_mm), "above nothing", "Measure the unit."))
    ends = [x for x, _ in ask.outline.points_mm] or [0.0]
    heights = [y for _, y in ask.outline.points_mm] or [0.0]
    for number, (course, above) in enumerate(zip(ask.courses, ask.lines[1:], strict=True)):
        field = f"{ask.where}.courses[{number}]"
        rises = [above.height_mm(x) - course.tail.height_mm(x) for x in (min(ends), max(ends))]
        if not all(isfinite(rise) and rise > 2 * TOUCH for rise in rises):
            faults.append(Fault(field, f"gauge {rises} mm", "a gauge above nothing at both ends", "Check the rods."))
        covers = [course.perps.cover_mm + course.perps.cover_lean_ratio * y for y in (min(heights), max(heights))]
        if not all(isfinite(cover) and cover > 2 * TOUCH for cover in covers):
            faults.append(Fault(field, f"cover {covers} mm", "a cover above nothing up the slope", "Check the perps."))
        if not (isfinite(course.unit_length_mm) and course.unit_length_mm > 0):
            faults.append(
                Fault(field, f"{course.unit_length_mm} mm long", "a length above nothing", "Measure the unit.")
            )
    return faults
