"""Ridges and hips in section, square to the line: both slopes, the unit over them, what holds and seals or beds it."""

from gaugerod.basis.lengths import write_length
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import LineKind
from gaugerod.edges.wished import RidgeMade
from gaugerod.geometry.roof_faces import RoofLine
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.edge_detail import Detail, Measure, closed, falling, line
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.edges import EdgeFigure, edge_figure

_RAFTER_MM, _SHOWN_MM, _BATTEN_DEEP_MM, _THICK_MM, _STAND_OFF_MM = 75.0, 320.0, 25.0, 16.0, 46.0
_REACH_DRAWN_MM = 120.0
_ONLY = "rafters, thickness of the covering, shape of the unit and of its batten"


def ridge_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """A ridge between two slopes, or the ridge of one: then the other side is drawn alike."""
    slopes = [_slope(result, name) for name in (edge.line.slopes if edge.line else ())]
    if not slopes:
        return None
    pitches = (slopes[0].slope.pitch_deg, slopes[-1].slope.pitch_deg)
    mono = edge.line is not None and edge.line.kind is LineKind.MONO_RIDGE
    return _over(
        result,
        edge,
        title=f"{edge.name} in section",
        falls_deg=pitches,
        below_mm=[slope.courses.rods[0].below_apex_mm for slope in slopes],
        one_sided=mono,
    )


def hip_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """A hip, square to it. None where the angle between its slopes is not known: only a building's plan gives it."""
    found = _roof_line(result, edge)
    if found is None:
        return None
    return _over(
        result,
        edge,
        title=f"{edge.name} in section, square to the hip",
        falls_deg=(found.backing_left_deg, found.backing_right_deg),
        below_mm=[],
        dihedral_deg=found.dihedral_deg,
    )


def _slope(result: Result, name: str) -> SlopeResult:
    return next(slope for slope in result.slopes if slope.slope.name == name)


def _roof_line(result: Result, edge: MadeEdge) -> RoofLine | None:
    if edge.line is None:
        return None
    for roof in result.roofs:
        for found in roof.form.lines:
            if (roof.slope_names[found.left], roof.slope_names[found.right]) == edge.line.slopes:
                return found
    return None


def roof_line(result: Result, edge: MadeEdge) -> RoofLine | None:
    """The line of the roof form an edge is made along; None for slopes measured one by one."""
    return _roof_line(result, edge)


def _over(
    result: Result,
    edge: MadeEdge,
    *,
    title: str,
    falls_deg: tuple[float, float],
    below_mm: list[float],
    dihedral_deg: float | None = None,
    one_sided: bool = False,
) -> Detail:
    unit = result.job.show_lengths_in
    reach_mm = result.job.wishes.ridge_cover_mm if dihedral_deg is None else None
    paths: list[Path] = []
    for sign, fall_deg in zip((1.0, -1.0), falls_deg, strict=True):
        if one_sided and sign < 0:
            continue
        paths += _one_side(
            sign, fall_deg, below_mm[0] if sign > 0 and below_mm else (below_mm[-1] if below_mm else 60.0)
        )
    paths += _unit_over(falls_deg, reach_mm or _REACH_DRAWN_MM, one_sided=one_sided)
    measures: list[Measure] = []
    crown = (0.0, _STAND_OFF_MM)
    if reach_mm is not None:
        foot = falling(pitch_deg=falls_deg[0], from_mm=0.0, to_mm=reach_mm, low_mm=_STAND_OFF_MM, high_mm=_STAND_OFF_MM)
        measures.append(
            Measure(from_mm=foot[0], to_mm=foot[1], name="unit reaches down", value=write_length(reach_mm, unit))
        )
    if below_mm:
        mark = falling(pitch_deg=falls_deg[0], from_mm=0.0, to_mm=below_mm[0], low_mm=-12.0, high_mm=-12.0)
        measures.append(
            Measure(from_mm=mark[0], to_mm=mark[1], name="top batten below apex", value=write_length(below_mm[0], unit))
        )
    if dihedral_deg is not None:
        measures.append(
            Measure(from_mm=(0.0, 0.0), to_mm=(0.0, 0.0), name="between the slopes", value=f"{dihedral_deg:.1f}°")
        )
    measures += _made_by(result, edge, crown)
    return Detail(title=title, paths=tuple(paths), measures=tuple(measures), only_drawn=_ONLY)


def _one_side(sign: float, fall_deg: float, below_mm: float) -> list[Path]:
    """Rafter, top batten and top unit of one slope."""

    def placed(from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
        block = falling(pitch_deg=fall_deg, from_mm=from_mm, to_mm=to_mm, low_mm=low_mm, high_mm=high_mm)
        return block if sign > 0 else tuple((-x, y) for x, y in block)

    return [
        closed(Pen.TIMBER, placed(0.0, _SHOWN_MM, -_RAFTER_MM, 0.0)),
        closed(Pen.SECTION_BATTEN, placed(below_mm, below_mm + 38.0, 0.0, _BATTEN_DEEP_MM)),
        closed(
            Pen.UNIT,
            placed(max(below_mm - 20.0, 5.0), _SHOWN_MM, _BATTEN_DEEP_MM, _BATTEN_DEEP_MM + _THICK_MM),
        ),
    ]


def _unit_over(falls_deg: tuple[float, float], reach_mm: float, *, one_sided: bool) -> list[Path]:
    right = falling(pitch_deg=falls_deg[0], from_mm=0.0, to_mm=reach_mm, low_mm=_STAND_OFF_MM, high_mm=_STAND_OFF_MM)[1]
    left = falling(pitch_deg=falls_deg[1], from_mm=0.0, to_mm=reach_mm, low_mm=_STAND_OFF_MM, high_mm=_STAND_OFF_MM)[1]
    crown = (0.0, _STAND_OFF_MM + 20.0)
    run = (
        ((-20.0, _STAND_OFF_MM - 60.0), (-20.0, crown[1]), crown, right)
        if one_sided
        else ((-left[0], left[1]), crown, right)
    )
    return [
        line(Pen.CUT, run),
        closed(Pen.SECTION_BATTEN, ((-19.0, 2.0), (19.0, 2.0), (19.0, 34.0), (-19.0, 34.0))),
    ]


def _made_by(result: Result, edge: MadeEdge, crown: Point) -> list[Measure]:
    """What holds the unit, and what is under it."""
    wished, edition, unit = result.job.edges.ridge, result.job.edition, result.job.show_lengths_in
    if wished is None:
        return []
    at_batten, at_edge = (-19.0, 18.0), (-70.0, -10.0)
    holds = Measure(from_mm=at_batten, to_mm=at_batten, name="batten, and fixings into it", value="", left=True)
    if wished.made is RidgeMade.DRY:
        below = Measure(from_mm=(-40.0, 20.0), to_mm=(-40.0, 20.0), name="roll under the unit", value="dry", left=True)
    else:
        wide = edge_figure(edition, EdgeFigure.LINE_BED_WIDTH)
        below = Measure(
            from_mm=at_edge,
            to_mm=at_edge,
            name="mortar bed each side",
            value=f"{fine_length(wide.value, unit)} wide",
            left=True,
        )
    gained = [] if edge.run is None else [
        Measure(from_mm=crown, to_mm=crown, name="gained by each unit", value=fine_length(edge.run.cover_mm, unit), left=True)
    ]  # fmt: skip
    return [*gained, holds, below]
