"""A wall along the top of a slope in section, up the slope: the wall on the left, the courses of the slope falling from it."""

from collections.abc import Iterator

from gaugerod.basis.finding import TOUCH, Sense
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.walls import top_cover, top_reach_mm
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Pen
from gaugerod.sheets.edge_detail import GIVEN, SET_OUT, Detail, Measure, box, closed, line, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.top_courses import RAFTER_MM, TopCourses, top_courses
from gaugerod.standards.lead import LeadFigure, lead_figure

_WALL_MM, _SHOWN_MM, _ABOVE_MM = 102.5, 250.0, 40.0


def top_wall_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One wall along the top. None where no lead of it was counted: the findings say why."""
    pieces = next((each for each in edge.lead if each.use is LeadUse.COVER_FLASHING), None)
    if result.job.edges.wall is None or pieces is None or edge.line is None:
        return None
    slope = next(each for each in result.slopes if each.slope.name == edge.line.slopes[0])
    top = top_courses(slope, result.job.covering, left=False)
    joint_mm = lead_figure(result.job.edition, LeadFigure.INTO_JOINT_LEAST).value
    down_mm = top_reach_mm(edge.line, result.job.covering, result.job.edition)
    up_mm = pieces.width_mm - joint_mm - down_mm
    over_mm = top.clear_mm(down_mm)
    foot = (0.0, top.leaf.plumb_mm(over_mm))
    joint_y_mm = foot[1] + up_mm
    end = (
        top.leaf.at(down_mm, over_mm)[0] - top.leaf.at(0.0, over_mm)[0],
        foot[1] + top.leaf.at(down_mm, over_mm)[1] - top.leaf.at(0.0, over_mm)[1],
    )
    low_mm = top.leaf.at(_SHOWN_MM, -RAFTER_MM)[1]
    return Detail(
        title=f"{edge.name} in section, up the slope",
        paths=(
            closed(Pen.TIMBER, box(-_WALL_MM, low_mm, _WALL_MM, joint_y_mm + _ABOVE_MM - low_mm)),
            *top.paths(shown_mm=_SHOWN_MM),
            line(Pen.CUT, ((-joint_mm, joint_y_mm), (0.0, joint_y_mm), foot, end)),
        ),
        measures=(
            *_wall_said(result, joint_mm, up_mm, foot[1]),
            *_down_said(result, top, down_mm, over_mm),
            *_lead_said(result, pieces, joint_y_mm, foot[1]),
            pointing(
                top.leaf.at(0.85 * _SHOWN_MM, -RAFTER_MM / 2),
                slope.slope.name,
                f"{slope.slope.pitch_deg:.1f}°",
                source=GIVEN,
            ),
        ),
        only_drawn="the wall, the rafter, thickness of covering and lead",
    )


def _wall_said(result: Result, joint_mm: float, up_mm: float, foot_mm: float) -> Iterator[Measure]:
    edition, unit = result.job.edition, result.job.show_lengths_in
    splash = result.job.edges.wall is not None and result.job.edges.wall.splash
    joint, up = (
        lead_figure(edition, which)
        for which in (LeadFigure.INTO_JOINT_LEAST, LeadFigure.UPSTAND_SPLASH if splash else LeadFigure.UPSTAND_LEAST)
    )
    yield Measure(
        from_mm=(-joint_mm, foot_mm + up_mm + 8.0),
        to_mm=(0.0, foot_mm + up_mm + 8.0),
        name="into the joint",
        value=fine_length(joint_mm, unit),
        source=str(joint.citation),
        left=True,
    )
    yield Measure(
        from_mm=(-20.0, foot_mm),
        to_mm=(-20.0, foot_mm + up_mm),
        name="up the wall",
        value=fine_length(up_mm, unit),
        source=str(up.citation),
        left=True,
    )


def _down_said(result: Result, top: TopCourses, down_mm: float, over_mm: float) -> Iterator[Measure]:
    """How far down from the wall, and where the top batten is."""
    unit = result.job.show_lengths_in
    x_mm, y_mm = top.leaf.at(0.0, over_mm)
    lift_mm = top.leaf.plumb_mm(over_mm) - y_mm + 16.0
    start, end = top.leaf.at(0.0, over_mm), top.leaf.at(down_mm, over_mm)
    yield Measure(
        from_mm=(start[0] - x_mm, start[1] + lift_mm),
        to_mm=(end[0] - x_mm, end[1] + lift_mm),
        name="down the slope from the wall",
        value=fine_length(down_mm, unit),
        source=str(top_cover(result.job.covering, result.job.edition).citation),
    )
    head_mm = max(top.head_mm, 0.0)
    if top.heads_known and head_mm < down_mm:
        least_mm = top_cover(result.job.covering, result.job.edition).value
        on_mm = down_mm - head_mm
        short = f", least {fine_length(least_mm, unit)}" if on_mm < least_mm - TOUCH else ""
        lap_start, lap_end = top.leaf.at(head_mm, over_mm), top.leaf.at(down_mm, over_mm)
        yield Measure(
            from_mm=(lap_start[0] - x_mm, lap_start[1] + lift_mm + 18.0),
            to_mm=(lap_end[0] - x_mm, lap_end[1] + lift_mm + 18.0),
            name="of it over the top course",
            value=f"{fine_length(on_mm, unit, towards=Sense.AT_LEAST)}{short}",
            source=SET_OUT,
        )
    yield Measure(
        from_mm=top.leaf.at(0.0, -14.0),
        to_mm=top.leaf.at(top.mark_mm, -14.0),
        name="top nail line below the top" if top.held.nailed else "top batten below the top",
        value=fine_length(top.mark_mm, unit),
        source=SET_OUT,
    )


def _lead_said(result: Result, pieces: LeadPieces, joint_mm: float, foot_mm: float) -> Iterator[Measure]:
    said = f"code {pieces.code}, {fine_length(pieces.width_mm, result.job.show_lengths_in)}"
    yield pointing((0.0, (joint_mm + foot_mm) / 2), "flashing, flat", said, source=SET_OUT)
