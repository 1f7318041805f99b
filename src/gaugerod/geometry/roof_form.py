"""From a plan outline to the whole roof: every slope in its own plane, with its edges named."""

from collections.abc import Sequence
from typing import Literal

from gaugerod.basis.citation import house
from gaugerod.basis.errors import RoofWillNotClose
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.geometry.eaves_line import eaves_line_mm
from gaugerod.geometry.plan_outline import PlanOutline, Wall
from gaugerod.geometry.polygon import Point, bounding_box_mm, signed_area_mm2
from gaugerod.geometry.roof_assembly import lines_of, placed_faces, slopes_of, uprights_of
from gaugerod.geometry.roof_faces import RoofForm
from gaugerod.geometry.roof_skin import skin_of
from gaugerod.geometry.wavefront.sweep import Sweep
from gaugerod.geometry.wavefront.wall_fronts import fronts_of_walls

TOLERANCE_LADDER = (1e-8, 1e-7, 1e-6, 1e-9, 1e-5)
"""Parts of the plan's size within which two points are one, tried in turn until a roof is proved closed (house choice)."""

Cheeks = Literal["ask", "allow"]
"""Where eaves in one line part: ask the roofer, or put in an upright cheek."""


def roof_form(plan: PlanOutline, *, cheeks: Cheeks = "ask") -> RoofForm:
    r"""The roof that closes over a plan when every wall's slope rises from its eaves at its own pitch. mm, degrees.

    Raises InputRefused with every fault of the plan; RoofWillNotClose with the place where it stays open; RoofAsks where
    eaves in one line rise at different pitches or from different heights, unless cheeks are allowed: then an upright
    cheek is put in and a finding says where. A form is returned only when its faces are proved to cover the plan once.
    Source: the wavefront construction of roofs over polygons; plane geometry.
    Scope: pitches from 1° to 89°; walls in straight lines; no dormers.

    >>> from gaugerod.geometry.plan_outline import GableWall, PitchedWall
    >>> hipped = PlanOutline(outer_mm=((0, 0), (10000, 0), (10000, 8000), (0, 8000)), walls=(PitchedWall(pitch_deg=40.0),) * 4)
    >>> form = roof_form(hipped)
    >>> round(form.area_mm2 / 1e6, 3), len(form.hips), round(form.ridges[0].length_mm, 3)
    (104.433, 4, 2000.0)
    >>> gables = PlanOutline(outer_mm=hipped.outer_mm, walls=(PitchedWall(pitch_deg=40.0), GableWall()) * 2)
    >>> [side.kind.value for side in roof_form(gables).slopes[0].sides]
    ['eaves', 'verge', 'ridge', 'verge']
    """
    rings_mm = eaves_line_mm(plan)
    (least_x, least_y), (most_x, most_y) = bounding_box_mm(rings_mm[0])
    middle_mm = ((least_x + most_x) / 2, (least_y + most_y) / 2)
    centred = [tuple((x - middle_mm[0], y - middle_mm[1]) for x, y in ring) for ring in rings_mm]
    size_mm = max(most_x - least_x, most_y - least_y)
    refused: list[RoofWillNotClose] = []
    for share in TOLERANCE_LADDER:
        try:
            return _form_at(plan.walls, rings_mm, centred, middle_mm, tolerance_mm=share * size_mm, cheeks=cheeks)
        except RoofWillNotClose as fault:
            refused.append(fault)
    x_mm, y_mm = refused[0].where_mm
    raise RoofWillNotClose(where_mm=(x_mm + middle_mm[0], y_mm + middle_mm[1]), why=refused[0].why)


def _form_at(
    walls: Sequence[Wall],
    rings_mm: tuple[tuple[Point, ...], ...],
    centred: Sequence[Sequence[Point]],
    middle_mm: Point,
    *,
    tolerance_mm: float,
    cheeks: Cheeks,
) -> RoofForm:
    """The form at one tolerance. The sweep works round the middle of the plan, where coordinates are finest."""
    start = fronts_of_walls(centred, walls, tolerance_mm=tolerance_mm)
    sweep = Sweep(start.fronts, tolerance_mm=tolerance_mm, cheeks_allowed=cheeks == "allow", origin_mm=middle_mm)
    trace = sweep.run(centred, start.front_of_wall, from_mm=start.lowest_mm)
    skin = skin_of(trace, footprint_mm2=sum(map(signed_area_mm2, centred)), tolerance_mm=tolerance_mm)
    placed = placed_faces(skin, shift_mm=middle_mm)
    lines = lines_of(skin, placed)
    return RoofForm(
        eaves_line_mm=rings_mm,
        slopes=slopes_of(skin, placed, lines),
        uprights=uprights_of(skin, placed, cheeks=frozenset(front for front, _ in sweep.cheeks)),
        lines=tuple(lines.values()),
        findings=tuple(_cheek_finding(where_mm) for _, where_mm in sweep.cheeks),
    )


def _cheek_finding(where_mm: Point) -> Finding:
    x_mm, y_mm = where_mm
    return not_covered(
        rule="eaves in line",
        where=f"near ({x_mm:.0f}, {y_mm:.0f}) on plan",
        proposed=None,
        unit="mm",
        citation=house("geometry does not say how eaves in one line part: a person must"),
        says="Two eaves in one line part here, and an upright cheek stands between the slopes. It was allowed, not "
        "worked out: check that the building has it there, and how it is weathered.",
    )
