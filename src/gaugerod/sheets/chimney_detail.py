"""A chimney in section, up the slope: the apron in front of it, the gutter behind it."""

from collections.abc import Iterator
from dataclasses import dataclass

from gaugerod.basis.lengths import LengthUnit
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.geometry.pitch import tan_deg
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.edge_detail import GIVEN, Detail, Leaf, Measure, closed, line, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure

_DEEP_MM, _RAFTER_MM, _BATTEN_MM, _THICK_MM, _LOW_MM = 230.0, 75.0, 25.0, 16.0, 250.0
"""How deep the chimney is drawn, whatever it is; the rafter; the batten; the covering; how far the slope below is shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shape:
    """The chimney from its front, x to the right and up the slope. ``gutter``: was a back gutter counted?"""

    edition: Edition
    unit: LengthUnit
    pitch_deg: float
    splash: bool
    gutter: bool

    def mm(self, which: LeadFigure) -> float:
        """A figure of the lead."""
        return lead_figure(self.edition, which).value

    @property
    def up_figure(self) -> LeadFigure:
        """How far the apron goes up the front."""
        return LeadFigure.UPSTAND_SPLASH if self.splash else LeadFigure.UPSTAND_LEAST

    @property
    def below(self) -> Leaf:
        """The slope below, falling to the left from the front."""
        return Leaf(rise_deg=-self.pitch_deg, left=True)

    @property
    def front_mm(self) -> float:
        """The foot of the front: where the top of the covering meets it."""
        return self.below.plumb_mm(_BATTEN_MM + _THICK_MM) + 3.0

    @property
    def sole_y_mm(self) -> float:
        """The gutter lies level, as high as the slope where its sole ends."""
        return (_DEEP_MM + self.mm(LeadFigure.BACK_GUTTER_SOLE)) * tan_deg(self.pitch_deg) + 4.0

    @property
    def sole_end(self) -> Point:
        """Where the sole turns up the slope."""
        return (_DEEP_MM + self.mm(LeadFigure.BACK_GUTTER_SOLE), self.sole_y_mm)

    def above(self, s_mm: float, n_mm: float) -> Point:
        """A point on the slope above, from where the sole ends."""
        x_mm, y_mm = Leaf(rise_deg=self.pitch_deg).at(s_mm, n_mm)
        return (self.sole_end[0] + x_mm, self.sole_end[1] + y_mm)


def chimney_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """The slope rises to the right; the chimney is drawn no deeper than it need be."""
    if edge.opening is None or not any(pieces.use is LeadUse.APRON for pieces in edge.lead):
        return None
    slope = next(each for each in result.slopes if each.slope.name == edge.opening.slope)
    wall = result.job.edges.wall
    shape = _Shape(
        edition=result.job.edition,
        unit=result.job.show_lengths_in,
        pitch_deg=slope.slope.pitch_deg,
        splash=wall is not None and wall.splash,
        gutter=any(pieces.use is LeadUse.BACK_GUTTER for pieces in edge.lead),
    )
    drawn = "the chimney, its depth, rafters, battens, thickness of covering and lead"
    return Detail(
        title=f"{edge.name} in section, up the slope",
        paths=tuple(_paths(shape)),
        measures=(
            *_front_said(shape),
            *(_back_said(shape) if shape.gutter else ()),
            _slope_said(shape, slope.slope.name),
        ),
        only_drawn=f"{drawn}, board and fillet under the gutter" if shape.gutter else drawn,
    )


def _slope_said(shape: _Shape, name: str) -> Measure:
    at = shape.below.at(0.9 * _LOW_MM, -_RAFTER_MM / 2)
    return pointing(at, name, f"{shape.pitch_deg:.1f}°", source=GIVEN, left=True)


def _paths(shape: _Shape) -> Iterator[Path]:
    slope, below = Leaf(rise_deg=shape.pitch_deg), shape.below
    high_mm = shape.sole_y_mm + shape.mm(LeadFigure.BACK_GUTTER_UP) + 90.0
    yield closed(Pen.TIMBER, below.plumb_cut(to_mm=_LOW_MM, low_mm=-_RAFTER_MM, high_mm=0.0))
    if shape.gutter:
        yield from _slope_above(shape, slope)
    foot_mm = below.plumb_mm(-_RAFTER_MM) - 20.0
    yield closed(Pen.TIMBER, ((0.0, foot_mm), (_DEEP_MM, foot_mm), (_DEEP_MM, high_mm), (0.0, high_mm)))
    covering = below.block(from_mm=20.0, to_mm=_LOW_MM, low_mm=_BATTEN_MM, high_mm=_BATTEN_MM + _THICK_MM)
    batten = below.block(from_mm=40.0, to_mm=90.0, low_mm=0.0, high_mm=_BATTEN_MM)
    yield closed(Pen.SECTION_BATTEN, batten)
    yield closed(Pen.UNIT, covering)
    yield line(Pen.CUT, _apron(shape))
    if shape.gutter:
        yield line(Pen.CUT, *_gutter(shape))


def _slope_above(shape: _Shape, slope: Leaf) -> Iterator[Path]:
    """The rafter behind the chimney, the board and fillet under the gutter, and the covering over its end."""
    under_mm = shape.mm(LeadFigure.BACK_GUTTER_UNDER)
    back_y_mm = slope.at(0.0, 0.0)[1] + _DEEP_MM * tan_deg(shape.pitch_deg)
    long_mm = under_mm + 60.0
    drop_mm = slope.plumb_mm(_RAFTER_MM)
    yield closed(
        Pen.TIMBER,
        (
            (_DEEP_MM, back_y_mm - drop_mm),
            shape.above(long_mm, -4.0 - _RAFTER_MM),
            shape.above(long_mm, -4.0),
            (_DEEP_MM, back_y_mm),
        ),
    )
    sole_x_mm, sole_y_mm = shape.sole_end
    yield closed(Pen.TIMBER, ((_DEEP_MM, back_y_mm), (sole_x_mm, sole_y_mm - 4.0), (_DEEP_MM, sole_y_mm - 4.0)))
    low_mm = _BATTEN_MM
    yield closed(
        Pen.SECTION_BATTEN,
        (
            shape.above(under_mm + 10.0, 0.0),
            shape.above(long_mm, 0.0),
            shape.above(long_mm, low_mm),
            shape.above(under_mm + 10.0, low_mm),
        ),
    )
    yield closed(
        Pen.UNIT,
        (
            shape.above(0.0, low_mm),
            shape.above(long_mm, low_mm),
            shape.above(long_mm, low_mm + _THICK_MM),
            shape.above(0.0, low_mm + _THICK_MM),
        ),
    )


def _apron(shape: _Shape) -> tuple[Point, ...]:
    up_mm, joint_mm = shape.mm(shape.up_figure), shape.mm(LeadFigure.INTO_JOINT_LEAST)
    x_mm, y_mm = shape.below.at(shape.mm(LeadFigure.CHIMNEY_APRON_DOWN), 0.0)
    front_mm = shape.front_mm
    return ((joint_mm, front_mm + up_mm), (0.0, front_mm + up_mm), (0.0, front_mm), (x_mm, front_mm + y_mm))


def _gutter(shape: _Shape) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """The gutter, and the cover flashing over its upstand."""
    up_mm, over_mm = shape.mm(LeadFigure.BACK_GUTTER_UP), shape.mm(LeadFigure.COVER_FLASHING_DOWN)
    joint_y_mm = shape.sole_y_mm + up_mm + 12.0
    back = (_DEEP_MM, shape.sole_y_mm)
    return (
        (
            (_DEEP_MM, shape.sole_y_mm + up_mm),
            back,
            shape.sole_end,
            shape.above(shape.mm(LeadFigure.BACK_GUTTER_UNDER), 0.0),
        ),
        (
            (_DEEP_MM - shape.mm(LeadFigure.INTO_JOINT_LEAST), joint_y_mm),
            (_DEEP_MM + 5.0, joint_y_mm),
            (_DEEP_MM + 5.0, joint_y_mm - over_mm),
        ),
    )


def _measure(shape: _Shape, which: LeadFigure, name: str, start: Point, end: Point, *, left: bool = False) -> Measure:
    figure = lead_figure(shape.edition, which)
    return Measure(
        from_mm=start,
        to_mm=end,
        name=name,
        value=fine_length(figure.value, shape.unit),
        source=str(figure.citation),
        left=left,
    )


def _front_said(shape: _Shape) -> Iterator[Measure]:
    joint, _, foot, end = _apron(shape)
    yield _measure(
        shape,
        LeadFigure.INTO_JOINT_LEAST,
        "into the joint",
        (0.0, joint[1] + 10.0),
        (joint[0], joint[1] + 10.0),
        left=True,
    )
    yield _measure(shape, shape.up_figure, "apron up the front", (-16.0, foot[1]), (-16.0, joint[1]), left=True)
    yield _measure(
        shape,
        LeadFigure.CHIMNEY_APRON_DOWN,
        "apron over the covering",
        (foot[0], foot[1] + 18.0),
        (end[0], end[1] + 18.0),
        left=True,
    )


def _back_said(shape: _Shape) -> Iterator[Measure]:
    sole, up_mm = shape.sole_end, shape.mm(LeadFigure.BACK_GUTTER_UP)
    yield _measure(
        shape,
        LeadFigure.BACK_GUTTER_UP,
        "gutter up the back",
        (_DEEP_MM + 26.0, shape.sole_y_mm),
        (_DEEP_MM + 26.0, shape.sole_y_mm + up_mm),
    )
    yield _measure(
        shape,
        LeadFigure.COVER_FLASHING_DOWN,
        "cover flashing down",
        (_DEEP_MM + 14.0, shape.sole_y_mm + up_mm + 12.0 - shape.mm(LeadFigure.COVER_FLASHING_DOWN)),
        (_DEEP_MM + 14.0, shape.sole_y_mm + up_mm + 12.0),
    )
    yield _measure(shape, LeadFigure.BACK_GUTTER_SOLE, "sole", (_DEEP_MM, sole[1] - 14.0), (sole[0], sole[1] - 14.0))
    yield _measure(
        shape,
        LeadFigure.BACK_GUTTER_UNDER,
        "under the covering",
        shape.above(0.0, -18.0),
        shape.above(shape.mm(LeadFigure.BACK_GUTTER_UNDER), -18.0),
    )
