"""The shape of the parts of the result document that tell of whole roofs: every unit laid, roofs, offcuts."""

from typing import Annotated, TypedDict

from gaugerod.basis.citation import Basis
from gaugerod.geometry.roof_faces import RoofEdge, Upright
from gaugerod.laying.cut_unit import Remedy


class RunDocument(TypedDict):
    """Whole units side by side."""

    course: Annotated[int, "counted from the eaves, from 1"]
    first: Annotated[int, "its first unit: 0 is the unit right of the first perp, those left of it count down"]
    count: Annotated[int, "how many"]


class SawCutDocument(TypedDict):
    """One straight cut, seen as laid."""

    edge: Annotated[str, "the edge of the slope that it follows"]
    from_mm: Annotated[list[float], "from the left corner of the tail of the unit: along, up"]
    to_mm: Annotated[list[float], "its other end"]
    length_mm: Annotated[float, "of the cut"]
    angle_deg: Annotated[float, "from the course line counter-clockwise up to the cut; 90: square across the course"]


class CutUnitDocument(TypedDict):
    """One piece to saw."""

    number: Annotated[int, "on the sheets, through the whole job"]
    course: Annotated[int, "counted from the eaves, from 1"]
    unit: Annotated[int, "its place in the course: 0 is the unit right of the first perp"]
    outline_mm: Annotated[list[list[float]], "on the slope, laps and all: along the eaves, up the slope"]
    holes_mm: Annotated[list[list[list[float]]], "holes through it, on the slope"]
    unit_outline_mm: Annotated[list[list[float]], "the same outline from the left corner of the tail of the unit"]
    edges: Annotated[list[str], "the edges that cut it, each once"]
    cuts: Annotated[list[SawCutDocument], "every cut"]
    length_mm: Annotated[float, "of its longest cut"]
    angle_deg: Annotated[float, "of its longest cut, as the cuts are told"]
    area_mm2: Annotated[float, "of the piece"]
    shows_mm2: Annotated[float, "what of it shows once laid"]
    whole_shows_mm2: Annotated[float, "what a whole unit shows there"]
    nibs_kept: Annotated[int, "nibs left on it"]
    nail_holes_kept: Annotated[int, "nail holes left in it, clear of the cuts"]
    remedy: Annotated[str, "how it is laid", Remedy]
    remark: Annotated[str, "the same in a sentence"]
    source: Annotated[str, "where that comes from"]
    basis: Annotated[str, "how sure that source is", Basis]


class LayingDocument(TypedDict):
    """Every unit of one slope."""

    whole: Annotated[int, "units laid as they are made"]
    cut: Annotated[int, "pieces to saw: a unit that an opening parts in two is two"]
    runs: Annotated[list[RunDocument], "units that show whole, course by course"]
    cuts: Annotated[list[CutUnitDocument], "every piece to saw"]
    slivers: Annotated[int, "pieces that would show less than 1 mm²: not laid"]
    bare_mm2: Annotated[float, "what no course reaches"]


class RoofSlopeDocument(TypedDict):
    """One slope of a building."""

    name: Annotated[str, "as among the slopes"]
    walls: Annotated[list[int], "the walls it rises from, counted from 1"]
    pitch_deg: Annotated[float, "from the level"]
    azimuth_deg: Annotated[float, "the way it faces, clockwise on plan from +y"]
    area_m2: Annotated[float, "in its plane, out to eaves and verge lines"]
    plan_area_m2: Annotated[float, "the same seen from above"]
    corners_mm: Annotated[list[list[float]], "in the building, counter-clockwise from outside: x, y on plan, height"]
    edges: Annotated[list[str], "what stands at each side, from its first corner on; any of: " + ", ".join(RoofEdge)]


class UprightDocument(TypedDict):
    """A gable, a cheek, or the wall under a higher eaves."""

    kind: Annotated[str, "what it is", Upright]
    walls: Annotated[list[int], "the walls it stands on, counted from 1; none for a cheek"]
    area_m2: Annotated[float, "of the face"]
    corners_mm: Annotated[list[list[float]], "in the building: x, y on plan, height"]


class RoofLineDocument(TypedDict):
    """A hip, valley, ridge or change of pitch."""

    kind: Annotated[str, "what it is", RoofEdge]
    foot_mm: Annotated[list[float], "its lower end: x, y on plan, height"]
    head_mm: Annotated[list[float], "its upper end"]
    left: Annotated[str, "the slope on its left, walked from foot to head"]
    right: Annotated[str, "the slope on its right"]
    plan_length_mm: Annotated[float, "seen from above"]
    length_mm: Annotated[float, "true length"]
    slope_deg: Annotated[float, "its rise from the level"]
    dihedral_deg: Annotated[float, "between the two slopes: under the roof at a hip or ridge, over it at a valley"]
    backing_left_deg: Annotated[float, "bevel of the hip rafter's top, or valley board's side, to the left slope"]
    backing_right_deg: Annotated[float, "the same to the right slope"]
    cut_left_deg: Annotated[float, "between the line and the courses of the left slope"]
    cut_right_deg: Annotated[float, "between the line and the courses of the right slope"]


class RoofDocument(TypedDict):
    """The roof over one building."""

    name: Annotated[str, "of the building"]
    area_m2: Annotated[float, "all its slopes, in their planes"]
    eaves_line_mm: Annotated[list[list[list[float]]], "on plan, overhangs included: the outer ring, then the holes"]
    slopes: Annotated[list[RoofSlopeDocument], "every slope"]
    uprights: Annotated[list[UprightDocument], "gables, cheeks and walls under a higher eaves"]
    lines: Annotated[list[RoofLineDocument], "hips, valleys, ridges and changes of pitch"]
    corners_say: Annotated[list[str], "how its slopes are coursed together"]


class OffcutUseDocument(TypedDict):
    """Two pieces from one unit."""

    first: Annotated[int, "number of the piece the unit is cut for"]
    second: Annotated[int, "number of the piece its offcut serves"]
    first_shift_mm: Annotated[float, "how far the first is moved sideways in the unit"]
    second_shift_mm: Annotated[float, "how far the second is"]


class EdgePairDocument(TypedDict):
    """How many pairs serve the same two edges."""

    edges: Annotated[list[str], "the two edges"]
    pairs: Annotated[int, "units shared between them"]


class OffcutsDocument(TypedDict):
    """Which offcut serves which other cut, over all slopes."""

    pieces: Annotated[int, "pieces to saw from whole units"]
    units: Annotated[int, "whole units they take"]
    saved: Annotated[int, "units saved against one for each piece"]
    kerf_mm: Annotated[float, "allowed for the blade between two pieces"]
    by_edges: Annotated[list[EdgePairDocument], "the pairs by their edges"]
    uses: Annotated[list[OffcutUseDocument], "every pair"]
