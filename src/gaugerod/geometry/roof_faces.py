"""The form of a roof: its slopes, its upright faces, and the hips, valleys and ridges between slopes."""

from dataclasses import dataclass
from enum import StrEnum

from gaugerod.basis.finding import Finding
from gaugerod.geometry.polygon import Point
from gaugerod.geometry.slope_plane import SlopePlane, SpacePoint


class RoofEdge(StrEnum):
    """What a side of a slope is. A level valley cannot form: every slope rises from its own eaves."""

    EAVES = "eaves"
    VERGE = "verge"
    ABUTMENT = "abutment"
    HIP = "hip"
    VALLEY = "valley"
    RIDGE = "ridge"
    MONO_RIDGE = "mono-ridge"
    CHANGE_OF_PITCH = "change-of-pitch"


class Upright(StrEnum):
    """What an upright face is."""

    GABLE = "gable"
    WALL_BELOW_EAVES = "wall-below-eaves"
    CHEEK = "cheek"


@dataclass(frozen=True, slots=True, kw_only=True)
class SlopeSide:
    """One side of a slope, from a corner to the next, and what is on the other side of it.

    ``slope`` is the number of the slope there, ``upright`` that of the upright face; at eaves on the level of the lowest
    eaves there is neither, and ``wall`` is the number of the wall.
    """

    kind: RoofEdge
    slope: int | None = None
    upright: int | None = None
    wall: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofSlope:
    """One plane slope of the roof, out to its eaves and verge lines.

    Corners run counter-clockwise seen from outside, from the left end of the eaves (of the lowest edge, above a change
    of pitch); ``sides[i]`` goes from corner i to corner i+1. ``plan_mm`` and ``space_mm`` are the same corners in the
    building, ``outline_mm`` on the slope's own axes: x along the eaves, y up the slope.
    ``azimuth_deg`` is the way the slope faces, clockwise on plan from +y (north, if plan y points north).
    ``walls`` are the walls it rises from: more than one where in-line walls share a pitch.
    """

    number: int
    walls: tuple[int, ...]
    pitch_deg: float
    azimuth_deg: float
    plane: SlopePlane
    plan_mm: tuple[Point, ...]
    space_mm: tuple[SpacePoint, ...]
    outline_mm: tuple[Point, ...]
    sides: tuple[SlopeSide, ...]
    area_mm2: float
    plan_area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class UprightFace:
    """A gable, the wall between the lowest eaves and a higher one, or a cheek.

    Corners counter-clockwise seen from outside; ``outline_mm`` has x along the wall from its left end and y up from the
    foot. ``walls`` are the walls it stands on; none for a cheek.
    """

    number: int
    kind: Upright
    walls: tuple[int, ...]
    plane: SlopePlane
    space_mm: tuple[SpacePoint, ...]
    outline_mm: tuple[Point, ...]
    area_mm2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofLine:
    """A line where two slopes meet: hip, valley, ridge or change of pitch.

    ``foot_mm`` is its lower end and ``head_mm`` its upper one. Walked from foot to head, ``left`` is the slope on the left.
    ``slope_deg`` is its rise from the level. ``dihedral_deg`` is the angle between the two slopes, under the roof at a
    hip or ridge and over it at a valley. ``backing_left_deg`` and ``backing_right_deg`` bevel the top of a hip rafter (or
    the sides of a valley board) to each slope: together 180° less the dihedral.
    ``cut_left_deg`` and ``cut_right_deg`` are the angles in each slope between the line and the courses.
    """

    kind: RoofEdge
    foot_mm: SpacePoint
    head_mm: SpacePoint
    left: int
    right: int
    plan_length_mm: float
    length_mm: float
    slope_deg: float
    dihedral_deg: float
    backing_left_deg: float
    backing_right_deg: float
    cut_left_deg: float
    cut_right_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofForm:
    """A whole roof, closed. ``eaves_line_mm`` are the rings it was closed over, the overhangs included."""

    eaves_line_mm: tuple[tuple[Point, ...], ...]
    slopes: tuple[RoofSlope, ...]
    uprights: tuple[UprightFace, ...]
    lines: tuple[RoofLine, ...]
    findings: tuple[Finding, ...]

    @property
    def hips(self) -> tuple[RoofLine, ...]:
        """The hips."""
        return tuple(line for line in self.lines if line.kind is RoofEdge.HIP)

    @property
    def valleys(self) -> tuple[RoofLine, ...]:
        """The valleys."""
        return tuple(line for line in self.lines if line.kind is RoofEdge.VALLEY)

    @property
    def ridges(self) -> tuple[RoofLine, ...]:
        """The ridges between two slopes; those of a mono-pitch roof are sides of its slope."""
        return tuple(line for line in self.lines if line.kind is RoofEdge.RIDGE)

    @property
    def gables(self) -> tuple[UprightFace, ...]:
        """The gables."""
        return tuple(face for face in self.uprights if face.kind is Upright.GABLE)

    @property
    def area_mm2(self) -> float:
        """All slopes together, measured on the slope."""
        return sum(slope.area_mm2 for slope in self.slopes)
