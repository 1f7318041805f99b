"""A wall up the side of a slope in section, square to the slope and seen up it, the wall on the left."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from gaugerod.basis.finding import TOUCH, Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.walls import water_line
from gaugerod.job.result import Result
from gaugerod.sheets.beside_the_covering import past_edge_mm
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import GIVEN, SET_OUT, Detail, Measure, box, closed, line, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadFigure, lead_figure

_WALL_MM, _BELOW_MM, _ABOVE_MM, _SHOWN_MM, _BATTEN_MM, _THICK_MM = 102.5, 60.0, 40.0, 260.0, 25.0, 16.0
_GAP_DRAWN_MM, _LEAD_MM = 10.0, 2.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wall:
    """Where things stand, x from the wall's face and y from the top of the rafters. ``gap_mm`` None: not known."""

    edition: Edition
    unit: LengthUnit
    gap_mm: float | None
    water_mm: float
    brick_mm: float
    joint_mm: float

    @property
    def clear_mm(self) -> float:
        """How far the covering is drawn from the wall."""
        return _GAP_DRAWN_MM if self.gap_mm is None else self.gap_mm

    @property
    def covering_mm(self) -> float:
        """The top of the covering."""
        return _BATTEN_MM + _THICK_MM

    @property
    def joint_y_mm(self) -> float:
        """The joint a step goes into: one brick course above the water line."""
        return self.covering_mm + self.water_mm + self.brick_mm


def side_wall_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One side wall. None where no lead of it was counted: the findings say why."""
    wished = result.job.edges.wall
    stepped = _of(edge, LeadUse.STEP_AND_COVER) or _of(edge, LeadUse.STEP_FLASHING)
    if wished is None or stepped is None:
        return None
    edition, past_mm = result.job.edition, past_edge_mm(result, edge)
    wall = _Wall(
        edition=edition,
        unit=result.job.show_lengths_in,
        gap_mm=-past_mm if past_mm is not None and past_mm < 0 else None,
        water_mm=water_line(wished, edition).value,
        brick_mm=lead_figure(edition, LeadFigure.BRICK_COURSE).value,
        joint_mm=lead_figure(edition, LeadFigure.INTO_JOINT_LEAST).value,
    )
    out_mm = stepped.width_mm - wall.joint_mm - wall.brick_mm - wall.water_mm
    given = (
        GIVEN if wished.side_cover_mm is not None else str(lead_figure(edition, LeadFigure.SIDE_COVER_LEAST).citation)
    )
    soaker = _of(edge, LeadUse.SOAKER)
    paths = [*_built(wall), *_flashing(wall, out_mm)]
    measures = [*_steps_said(wall, str(water_line(wished, edition).citation)), *_out_said(wall, stepped, out_mm, given)]
    if soaker is not None:
        paths += _soaker(wall, soaker)
        measures += _soaker_said(wall, soaker)
    only = "the wall, the batten and where it ends, thickness of covering and lead"
    return Detail(
        title=f"{edge.name} in section",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn=only if wall.gap_mm is not None else f"{only}, how far the covering stands clear of the wall",
    )


def _of(edge: MadeEdge, use: LeadUse) -> LeadPieces | None:
    return next((pieces for pieces in edge.lead if pieces.use is use), None)


def _built(wall: _Wall) -> Iterator[Path]:
    high_mm = wall.joint_y_mm + _ABOVE_MM
    yield closed(Pen.TIMBER, box(-_WALL_MM, -_BELOW_MM, _WALL_MM, high_mm + _BELOW_MM))
    joints = (wall.joint_y_mm - wall.brick_mm, wall.joint_y_mm)
    yield line(Pen.HATCH, *(((-_WALL_MM, y_mm), (0.0, y_mm)) for y_mm in joints))
    start_mm = max(wall.clear_mm, 0.0)
    yield closed(Pen.SECTION_BATTEN, box(start_mm, 0.0, _SHOWN_MM - start_mm, _BATTEN_MM))
    yield closed(Pen.UNIT, box(start_mm, _BATTEN_MM, _SHOWN_MM - start_mm, _THICK_MM))


def _flashing(wall: _Wall, out_mm: float) -> Iterator[Path]:
    """Into the joint, down the wall to the covering, and out over it where it covers too."""
    run = [(-wall.joint_mm, wall.joint_y_mm), (_LEAD_MM, wall.joint_y_mm), (_LEAD_MM, wall.covering_mm + _LEAD_MM)]
    if out_mm > 0:
        run.append((out_mm, wall.covering_mm + _LEAD_MM))
    yield line(Pen.CUT, run)


def _steps_said(wall: _Wall, water_source: str) -> Iterator[Measure]:
    edition, water_y_mm = wall.edition, wall.covering_mm + wall.water_mm
    joint, brick = (lead_figure(edition, which) for which in (LeadFigure.INTO_JOINT_LEAST, LeadFigure.BRICK_COURSE))
    yield Measure(
        from_mm=(-wall.joint_mm, wall.joint_y_mm + 8.0),
        to_mm=(0.0, wall.joint_y_mm + 8.0),
        name="into the joint",
        value=fine_length(wall.joint_mm, wall.unit),
        source=str(joint.citation),
        left=True,
    )
    yield Measure(
        from_mm=(-45.0, water_y_mm),
        to_mm=(-45.0, wall.joint_y_mm),
        name="one brick course",
        value=fine_length(wall.brick_mm, wall.unit),
        source=str(brick.citation),
        left=True,
    )
    yield Measure(
        from_mm=(-45.0, wall.covering_mm),
        to_mm=(-45.0, water_y_mm),
        name="water line",
        value=fine_length(wall.water_mm, wall.unit),
        source=water_source,
        left=True,
    )


def _out_said(wall: _Wall, stepped: LeadPieces, out_mm: float, cover_source: str) -> Iterator[Measure]:
    at = (_LEAD_MM, wall.covering_mm + wall.water_mm + wall.brick_mm * 0.7)
    said = f"code {stepped.code}, {fine_length(stepped.width_mm, wall.unit)}"
    yield pointing(at, "flashing, flat", said, source=SET_OUT)
    if out_mm > 0:
        y_mm = wall.covering_mm + 16.0
        yield Measure(
            from_mm=(0.0, y_mm),
            to_mm=(out_mm, y_mm),
            name="out from the wall",
            value=fine_length(out_mm, wall.unit),
            source=cover_source,
        )
    if wall.gap_mm is not None and out_mm > wall.gap_mm:
        least_mm = lead_figure(wall.edition, LeadFigure.SIDE_COVER_LEAST).value
        on_mm = out_mm - wall.gap_mm
        short = f", least {fine_length(least_mm, wall.unit)}" if on_mm < least_mm - TOUCH else ""
        yield Measure(
            from_mm=(wall.gap_mm, wall.covering_mm + 32.0),
            to_mm=(out_mm, wall.covering_mm + 32.0),
            name="of it on the covering",
            value=f"{fine_length(on_mm, wall.unit, towards=Sense.AT_LEAST)}{short}",
            source=SET_OUT,
        )
    if wall.gap_mm is not None:
        yield Measure(
            from_mm=(0.0, -30.0),
            to_mm=(wall.gap_mm, -30.0),
            name="covering clear of wall",
            value=fine_length(wall.gap_mm, wall.unit),
            source=SET_OUT,
        )


def _soaker(wall: _Wall, soaker: LeadPieces) -> Iterator[Path]:
    """On the battens, under the covering, and up the wall behind the flashing."""
    under_mm, up_mm = _soaker_parts_mm(wall, soaker)
    yield line(Pen.CUT, ((0.0, _BATTEN_MM + up_mm), (0.0, _BATTEN_MM), (under_mm, _BATTEN_MM)))


def _soaker_parts_mm(wall: _Wall, soaker: LeadPieces) -> tuple[float, float]:
    """How far a soaker reaches out from the wall, over the gap and under the covering, and how far up the wall."""
    under_mm = lead_figure(wall.edition, LeadFigure.SOAKER_UNDER).value
    gap_mm = 0.0 if wall.gap_mm is None else float(ceil(wall.gap_mm - 1e-6))
    return gap_mm + under_mm, soaker.width_mm - gap_mm - under_mm


def _soaker_said(wall: _Wall, soaker: LeadPieces) -> Iterator[Measure]:
    under, up = (lead_figure(wall.edition, which) for which in (LeadFigure.SOAKER_UNDER, LeadFigure.SOAKER_UP))
    out_mm, up_mm = _soaker_parts_mm(wall, soaker)
    high = lead_figure(wall.edition, LeadFigure.UPSTAND_SPLASH)
    yield Measure(
        from_mm=(out_mm - under.value, -14.0),
        to_mm=(out_mm, -14.0),
        name="soaker under covering",
        value=fine_length(under.value, wall.unit),
        source=str(under.citation),
    )
    yield Measure(
        from_mm=(-20.0, _BATTEN_MM),
        to_mm=(-20.0, _BATTEN_MM + up_mm),
        name="soaker up the wall",
        value=fine_length(up_mm, wall.unit),
        source=str(up.citation if up_mm == up.value else high.citation),
        left=True,
    )
