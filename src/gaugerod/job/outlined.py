"""Slopes by their outline: from a roof form or as given, made ready to be set out like any other slope."""

from math import hypot

from gaugerod.geometry.polygon import signed_area_mm2
from gaugerod.geometry.roof_faces import RoofEdge, RoofForm, RoofSlope
from gaugerod.geometry.taped_slope import SlopeShape, TapedSlope
from gaugerod.job.model import BottomKind, Building, Slope, SlopeOutline, TopKind
from gaugerod.laying.ask import EdgeKind
from gaugerod.setting_out.across import SideKind
from gaugerod.setting_out.stations import Opening

_EDGES = {
    RoofEdge.EAVES: EdgeKind.EAVES,
    RoofEdge.VERGE: EdgeKind.VERGE,
    RoofEdge.ABUTMENT: EdgeKind.ABUTMENT,
    RoofEdge.HIP: EdgeKind.HIP,
    RoofEdge.VALLEY: EdgeKind.VALLEY,
    RoofEdge.RIDGE: EdgeKind.RIDGE,
    RoofEdge.MONO_RIDGE: EdgeKind.RIDGE,
    RoofEdge.CHANGE_OF_PITCH: EdgeKind.RIDGE,
}
_SIDES = {
    EdgeKind.VERGE: SideKind.VERGE,
    EdgeKind.ABUTMENT: SideKind.ABUTMENT,
    EdgeKind.HIP: SideKind.HIP,
    EdgeKind.VALLEY: SideKind.VALLEY,
}
_LEVEL_MM = 1.0
"""A ridge this little out of level, eaves end to eaves end, is level: the division of a mark."""


def slopes_of(building: Building, form: RoofForm) -> tuple[Slope, ...]:
    """The slopes of a building, named after it and numbered as the form numbers them."""
    return tuple(_slope_of(building, slope) for slope in form.slopes)


def slope_name(building: Building, number: int) -> str:
    """The name of one slope of a building."""
    return f"{building.name} {number + 1}"


def sides_worth_laying(slope: RoofSlope) -> tuple[int, ...]:
    """The sides of a slope of a form that are a division long or more: where wings are all but alike, a ridge or hip between
    them may be a fraction of a millimetre, and nothing is laid along that. Its two corners are then one.
    """
    corners = slope.outline_mm
    return tuple(
        at
        for at, (start, stop) in enumerate(zip(corners, (*corners[1:], corners[0]), strict=True))
        if hypot(stop[0] - start[0], stop[1] - start[1]) >= _LEVEL_MM
    )


def _slope_of(building: Building, slope: RoofSlope) -> Slope:
    kept = sides_worth_laying(slope)
    kinds = tuple(_EDGES[slope.sides[at].kind] for at in kept)
    mono = any(side.kind is RoofEdge.MONO_RIDGE for side in slope.sides)
    return outlined_slope(
        name=slope_name(building, slope.number),
        pitch_deg=slope.pitch_deg,
        outline=SlopeOutline(points_mm=tuple(slope.outline_mm[at] for at in kept), kinds=kinds),
        top=TopKind.MONO_RIDGE if mono else TopKind.RIDGE,
        rafter_spacing_mm=building.rafter_spacing_mm,
    )


def outlined_slope(
    *,
    name: str,
    pitch_deg: float,
    outline: SlopeOutline,
    top: TopKind,
    rafter_spacing_mm: float | None,
    openings: tuple[Opening, ...] = (),
    rafters_at_mm: tuple[float, ...] = (),
) -> Slope:
    """A slope by its outline, its lowest eaves brought to y = 0 and their left end to x = 0."""
    points, kinds = outline.points_mm, outline.kinds
    count = len(points)
    eaves = [index for index, kind in enumerate(kinds) if kind is EdgeKind.EAVES]
    lowest = min(eaves, key=lambda index: points[index][1] + points[(index + 1) % count][1])
    left_end, right_end = points[lowest], points[(lowest + 1) % count]
    moved = tuple((x - left_end[0], y - left_end[1]) for x, y in points)
    eaves_mm = right_end[0] - left_end[0]
    return Slope(
        name=name,
        pitch_deg=pitch_deg,
        taped=TapedSlope(eaves_mm=eaves_mm, rafters=_rafters(SlopeOutline(points_mm=moved, kinds=kinds), eaves_mm)),
        left=_SIDES.get(kinds[lowest - 1], SideKind.VERGE),
        right=_SIDES.get(kinds[(lowest + 1) % count], SideKind.VERGE),
        bottom=BottomKind.EAVES,
        top=top,
        rafter_spacing_mm=rafter_spacing_mm,
        openings=openings,
        rafters_at_mm=rafters_at_mm,
        outline=SlopeOutline(points_mm=moved, kinds=kinds),
    )


def _rafters(outline: SlopeOutline, eaves_mm: float) -> tuple[tuple[float, float], ...]:
    """Where rods are set out, and how far the top is up the slope there.

    One rod to the highest point; where one ridge out of level is the whole top, a rod at each end of the eaves to its line.
    """
    points = outline.points_mm
    highest_mm = max(y_mm for _, y_mm in points)
    tops = [index for index, kind in enumerate(outline.kinds) if kind is EdgeKind.RIDGE]
    if len(tops) == 1:
        (right_x, right_y), (left_x, left_y) = points[tops[0]], points[(tops[0] + 1) % len(points)]
        rise = (right_y - left_y) / (right_x - left_x) if right_x > left_x else 0.0
        ends_mm = (left_y - rise * left_x, left_y + rise * (eaves_mm - left_x))
        if highest_mm == max(left_y, right_y) and abs(ends_mm[1] - ends_mm[0]) >= _LEVEL_MM and min(ends_mm) > 0:
            return ((0.0, ends_mm[0]), (eaves_mm, ends_mm[1]))
    return ((0.0, highest_mm),)


def outline_shape(outline: SlopeOutline) -> SlopeShape:
    """The shape of a slope given by its outline. It was drawn, not taped, so there is nothing to contradict."""
    return SlopeShape(
        outline_mm=outline.points_mm,
        out_of_square_mm=0.0,
        out_of_parallel_mm=0.0,
        area_mm2=signed_area_mm2(outline.points_mm),
        findings=(),
    )
