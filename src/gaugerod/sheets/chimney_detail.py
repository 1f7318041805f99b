"""A chimney in section, up the slope: the apron in front of it, the gutter behind it."""

from collections.abc import Mapping
from dataclasses import dataclass

from gaugerod.basis.lengths import LengthUnit
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen, Point
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
    shape = _shape(slope.slope.pitch_deg, {which: lead_figure(result.job.edition, which).value for which in LeadFigure})
    return Detail(
        title=f"{edge.name} in section, up the slope",
        paths=_paths(shape),
        measures=_measures(shape, result.job.show_lengths_in),
        only_drawn="the chimney, its depth, the fillet under the gutter, rafters, thickness of the covering",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shape:
    """Where things stand: x to the right from the front of the chimney, y up. mm."""

    pitch_deg: float
    joint_mm: float
    up_mm: float
    down_mm: float
    back_up_mm: float
    sole_mm: float
    under_mm: float
    over_mm: float
    front_y_mm: float
    apron_foot: Point
    back_x_mm: float
    sole_y_mm: float
    under_end: Point

    def at(self, s_mm: float, n_mm: float) -> Point:
        """A point on the slope: along it from the front of the chimney, and square off it."""
        along, off = cos_deg(self.pitch_deg), sin_deg(self.pitch_deg)
        return (s_mm * along - n_mm * off, s_mm * off + n_mm * along)


def _shape(pitch_deg: float, figure: Mapping[LeadFigure, float]) -> _Shape:
    along, off = cos_deg(pitch_deg), sin_deg(pitch_deg)
    down_mm, sole_mm, under_mm = (
        figure[which]
        for which in (LeadFigure.CHIMNEY_APRON_DOWN, LeadFigure.BACK_GUTTER_SOLE, LeadFigure.BACK_GUTTER_UNDER)
    )
    front_y_mm = _OVER_MM / along
    back_x_mm, sole_y_mm = _DEEP_MM * along, _DEEP_MM * off + _OVER_MM
    return _Shape(
        pitch_deg=pitch_deg,
        joint_mm=figure[LeadFigure.INTO_JOINT_LEAST],
        up_mm=figure[LeadFigure.UPSTAND_LEAST],
        down_mm=down_mm,
        back_up_mm=figure[LeadFigure.BACK_GUTTER_UP],
        sole_mm=sole_mm,
        under_mm=under_mm,
        over_mm=figure[LeadFigure.COVER_FLASHING_DOWN],
        front_y_mm=front_y_mm,
        apron_foot=(-down_mm * along, front_y_mm - down_mm * off),
        back_x_mm=back_x_mm,
        sole_y_mm=sole_y_mm,
        under_end=(back_x_mm + sole_mm + under_mm * along, sole_y_mm + under_mm * off),
    )


def _paths(shape: _Shape) -> tuple[Path, ...]:
    at, back_x, sole_y = shape.at, shape.back_x_mm, shape.sole_y_mm
    high_y = sole_y + shape.back_up_mm + 140.0
    flashing_y = sole_y + shape.back_up_mm + 20.0
    return (
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
        line(
            Pen.CUT,
            (
                (shape.joint_mm, shape.front_y_mm + shape.up_mm),
                (0.0, shape.front_y_mm + shape.up_mm),
                (0.0, shape.front_y_mm),
                shape.apron_foot,
            ),
            (
                (back_x, sole_y + shape.back_up_mm),
                (back_x, sole_y),
                (back_x + shape.sole_mm, sole_y),
                shape.under_end,
            ),
            (
                (back_x - shape.joint_mm, flashing_y),
                (back_x + 4.0, flashing_y),
                (back_x + 4.0, flashing_y - shape.over_mm),
            ),
        ),
    )


def _measures(shape: _Shape, unit: LengthUnit) -> tuple[Measure, ...]:
    front_y, back_x, sole_y = shape.front_y_mm, shape.back_x_mm, shape.sole_y_mm
    sole_x, foot, end = back_x + shape.sole_mm, shape.apron_foot, shape.under_end
    told = (
        ((-14.0, front_y), (-14.0, front_y + shape.up_mm), "apron up the front", shape.up_mm, True),
        ((foot[0], foot[1] + 16.0), (0.0, front_y + 16.0), "apron over the covering", shape.down_mm, True),
        (
            (back_x + 16.0, sole_y),
            (back_x + 16.0, sole_y + shape.back_up_mm),
            "gutter up the back",
            shape.back_up_mm,
            False,
        ),
        ((back_x, sole_y - 14.0), (sole_x, sole_y - 14.0), "sole", shape.sole_mm, False),
        ((sole_x, sole_y + 12.0), (end[0], end[1] + 12.0), "under the covering", shape.under_mm, False),
    )
    return tuple(
        Measure(from_mm=start, to_mm=stop, name=name, value=fine_length(mm, unit), left=left)
        for start, stop, name, mm, left in told
    )
