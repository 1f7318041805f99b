"""A chimney in section, up the slope: the apron in front of it, the gutter behind it."""

from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Pen, Point
from gaugerod.sheets.edge_detail import Detail, Measure, closed, line
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.lead import LeadFigure, lead_figure

_DEEP_MM, _RAFTER_MM, _SHOWN_MM, _OVER_MM = 260.0, 75.0, 420.0, 45.0
"""How deep the chimney is drawn, whatever it is; the rafter; how far the slope is shown; the covering over the rafter."""


def chimney_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """The slope rises to the right; the chimney is drawn shorter than it is."""
    if edge.opening is None or not any(pieces.use is LeadUse.APRON for pieces in edge.lead):
        return None
    slope = next(each for each in result.slopes if each.slope.name == edge.opening.slope)
    pitch_deg, unit = slope.slope.pitch_deg, result.job.show_lengths_in
    figure = {which: lead_figure(result.job.edition, which).value for which in LeadFigure}
    joint_mm, up_mm, down_mm = (
        figure[which]
        for which in (LeadFigure.INTO_JOINT_LEAST, LeadFigure.UPSTAND_LEAST, LeadFigure.CHIMNEY_APRON_DOWN)
    )
    back_up_mm, sole_mm, under_mm = (
        figure[which]
        for which in (LeadFigure.BACK_GUTTER_UP, LeadFigure.BACK_GUTTER_SOLE, LeadFigure.BACK_GUTTER_UNDER)
    )
    back_x = _DEEP_MM * cos_deg(pitch_deg)

    def at(s_mm: float, n_mm: float) -> Point:
        return (
            s_mm * cos_deg(pitch_deg) - n_mm * sin_deg(pitch_deg),
            s_mm * sin_deg(pitch_deg) + n_mm * cos_deg(pitch_deg),
        )

    front_y = at(0.0, _OVER_MM)[1] + _OVER_MM * sin_deg(pitch_deg) * sin_deg(pitch_deg) / cos_deg(pitch_deg)
    apron_foot = (-down_mm * cos_deg(pitch_deg), front_y - down_mm * sin_deg(pitch_deg))
    sole_y = _DEEP_MM * sin_deg(pitch_deg) + _OVER_MM
    sole_x = back_x + sole_mm
    under = (sole_x + under_mm * cos_deg(pitch_deg), sole_y + under_mm * sin_deg(pitch_deg))
    high_y = sole_y + back_up_mm + 140.0
    return Detail(
        title=f"{edge.name} in section, up the slope",
        paths=(
            closed(Pen.TIMBER, (at(-_SHOWN_MM, -_RAFTER_MM), at(0.0, -_RAFTER_MM), at(0.0, 0.0), at(-_SHOWN_MM, 0.0))),
            closed(
                Pen.TIMBER,
                (
                    at(_DEEP_MM, -_RAFTER_MM),
                    at(_DEEP_MM + _SHOWN_MM, -_RAFTER_MM),
                    at(_DEEP_MM + _SHOWN_MM, 0.0),
                    at(_DEEP_MM, 0.0),
                ),
            ),
            closed(Pen.TIMBER, ((0.0, -90.0), (back_x, -90.0), (back_x, high_y), (0.0, high_y))),
            closed(Pen.UNIT, (at(-_SHOWN_MM, 25.0), at(-20.0, 25.0), at(-20.0, 41.0), at(-_SHOWN_MM, 41.0))),
            line(Pen.CUT, ((joint_mm, front_y + up_mm), (0.0, front_y + up_mm), (0.0, front_y), apron_foot)),
            line(
                Pen.CUT,
                ((back_x, sole_y + back_up_mm), (back_x, sole_y), (sole_x, sole_y), under),
            ),
            line(
                Pen.CUT,
                (
                    (back_x - joint_mm, sole_y + back_up_mm + 20.0),
                    (back_x + 4.0, sole_y + back_up_mm + 20.0),
                    (back_x + 4.0, sole_y + back_up_mm + 20.0 - figure[LeadFigure.COVER_FLASHING_DOWN]),
                ),
            ),
        ),
        measures=(
            Measure(
                from_mm=(-14.0, front_y),
                to_mm=(-14.0, front_y + up_mm),
                name="apron up the front",
                value=fine_length(up_mm, unit),
                left=True,
            ),
            Measure(
                from_mm=(apron_foot[0], apron_foot[1] + 16.0),
                to_mm=(0.0, front_y + 16.0),
                name="apron over the covering",
                value=fine_length(down_mm, unit),
                left=True,
            ),
            Measure(
                from_mm=(back_x + 16.0, sole_y),
                to_mm=(back_x + 16.0, sole_y + back_up_mm),
                name="gutter up the back",
                value=fine_length(back_up_mm, unit),
            ),
            Measure(
                from_mm=(back_x, sole_y - 14.0),
                to_mm=(sole_x, sole_y - 14.0),
                name="sole",
                value=fine_length(sole_mm, unit),
            ),
            Measure(
                from_mm=(sole_x, sole_y + 12.0),
                to_mm=(under[0], under[1] + 12.0),
                name="under the covering",
                value=fine_length(under_mm, unit),
            ),
        ),
        only_drawn="the chimney, its depth, the fillet under the gutter, rafters, thickness of the covering",
    )
