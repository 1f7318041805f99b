"""A ridge in section, square to it: the courses of both slopes as they were set out, the unit over them, what holds it."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.edges.answer import MadeEdge
from gaugerod.edges.ask import LineKind
from gaugerod.edges.wished import RidgeMade
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import GIVEN, SET_OUT, Detail, Leaf, Measure, box, closed, line, pointing
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.section_units import BATTEN_HIGH_MM
from gaugerod.sheets.top_courses import RAFTER_MM, TopCourses, top_courses
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

_SHOWN_MM, _REACH_DRAWN_MM, _OVER_MM, UNIT_THICK_MM, _BATTEN_MM = 230.0, 120.0, 6.0, 14.0, 25.0


def ridge_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """A ridge; where only one of its slopes is known the other is drawn alike, and beyond a mono-ridge an upright face."""
    slopes = [each for name in _names(edge) for each in result.slopes if each.slope.name == name]
    wished = result.job.edges.ridge
    if not slopes or wished is None:
        return None
    unit, reach_mm = result.job.show_lengths_in, result.job.wishes.ridge_cover_mm
    mono = edge.line is not None and edge.line.kind is LineKind.MONO_RIDGE
    known = [top_courses(slope, result.job.covering, left=at == 0) for at, slope in enumerate(slopes[:2])]
    beyond = [] if mono or len(known) > 1 else [top_courses(slopes[0], result.job.covering, left=False)]
    sides = [*known, *beyond]
    high_mm = max(side.clear_mm(reach_mm or _REACH_DRAWN_MM) for side in sides) + _OVER_MM
    drawn = ["rafters", "thickness of the covering", "shape of the unit and of its batten"]
    if reach_mm is None:
        drawn.append("how far the unit reaches down")
    if len(known) == 1:
        drawn.append("what lies beyond the ridge")
    paths: list[Path] = []
    if mono:
        paths.append(closed(Pen.TIMBER, box(0.0, -_SHOWN_MM * 0.6, 20.0, _SHOWN_MM * 0.6)))
    leaves = [side.leaf for side in sides]
    if wished.made is RidgeMade.BEDDED:
        paths.append(beds(leaves, edition=result.job.edition, reach_mm=reach_mm or _REACH_DRAWN_MM, high_mm=high_mm))
    for side in sides:
        paths += side.paths(shown_mm=_SHOWN_MM)
    paths += over_the_line(leaves, made=wished.made, reach_mm=reach_mm or _REACH_DRAWN_MM, high_mm=high_mm)
    measures = [
        *_named(slopes_said=[(each.slope.name, each.slope.pitch_deg) for each in slopes[:2]], sides=known),
        *_measured(known[-1], reach_mm, high_mm + UNIT_THICK_MM, unit),
        *unit_said(edge, result, leaf=sides[0].leaf, high_mm=high_mm, reach_mm=reach_mm or _REACH_DRAWN_MM),
    ]
    return Detail(
        title=f"{edge.name} in section",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn=", ".join(drawn),
    )


def _names(edge: MadeEdge) -> tuple[str, ...]:
    if edge.line is None or edge.line.kind not in {LineKind.RIDGE, LineKind.MONO_RIDGE}:
        return ()
    return edge.line.slopes


def _named(*, slopes_said: Sequence[tuple[str, float]], sides: Sequence[TopCourses]) -> Iterator[Measure]:
    for (name, pitch_deg), side in zip(slopes_said, sides, strict=True):
        at = side.leaf.at(0.85 * _SHOWN_MM, -RAFTER_MM / 2)
        yield pointing(at, name, f"{pitch_deg:.1f}°", source=GIVEN, left=side.left)


def _measured(side: TopCourses, reach_mm: float | None, clear_mm: float, unit: LengthUnit) -> Iterator[Measure]:
    """The lengths along the slope of one side."""
    leaf = side.leaf
    mark = "top nail line below apex" if side.held.nailed else "top batten below apex"
    yield Measure(
        from_mm=leaf.at(0.0, -14.0),
        to_mm=leaf.at(side.mark_mm, -14.0),
        name=mark,
        value=write_length(side.mark_mm, unit),
        source=SET_OUT,
        left=side.left,
    )
    if reach_mm is None:
        return
    yield Measure(
        from_mm=leaf.at(0.0, clear_mm + 26.0),
        to_mm=leaf.at(reach_mm, clear_mm + 26.0),
        name="unit reaches down",
        value=write_length(reach_mm, unit),
        source=GIVEN,
        left=side.left,
    )
    if side.lapped_mm is not None and side.lapped_mm < reach_mm:
        yield Measure(
            from_mm=leaf.at(side.lapped_mm, clear_mm + 10.0),
            to_mm=leaf.at(reach_mm, clear_mm + 10.0),
            name="over the top course" if side.held.over_count == 1 else "over the course below the top",
            value=fine_length(reach_mm - side.lapped_mm, unit, towards=Sense.AT_LEAST),
            source=SET_OUT,
            left=side.left,
        )


def beds(leaves: Sequence[Leaf], *, edition: Edition, reach_mm: float, high_mm: float) -> Path:
    """Mortar under the edge of the unit on each side, down to the battens: drawn before the courses that lie in it."""
    wide_mm = edge_figure(edition, EdgeFigure.LINE_BED_WIDTH).value
    from_mm = max(0.0, reach_mm - wide_mm)
    return closed(
        Pen.CUT_UNIT,
        *(leaf.block(from_mm=from_mm, to_mm=reach_mm, low_mm=BATTEN_HIGH_MM, high_mm=high_mm) for leaf in leaves),
    )


def over_the_line(leaves: Sequence[Leaf], *, made: RidgeMade, reach_mm: float, high_mm: float) -> Iterator[Path]:
    """The unit, ``high_mm`` off each slope and so far down it, the batten it is fixed to, and the roll that seals it."""
    crown_mm = max(leaf.plumb_mm(high_mm) for leaf in leaves)
    foot_mm = -_BATTEN_MM / 2
    yield closed(Pen.SECTION_BATTEN, box(foot_mm, foot_mm, _BATTEN_MM, crown_mm - 4.0 - foot_mm))
    if made is RidgeMade.DRY:
        yield line(
            Pen.STRIP,
            *(((0.0, crown_mm - 3.0), leaf.at(reach_mm - 12.0, high_mm - 3.0)) for leaf in leaves),
        )
    right = leaves[-1]
    over = [right.at(reach_mm, high_mm), (0.0, crown_mm)]
    under = [right.at(reach_mm, high_mm + UNIT_THICK_MM), (0.0, crown_mm + UNIT_THICK_MM * 1.2)]
    if len(leaves) > 1:
        left = leaves[0]
        over.append(left.at(reach_mm, high_mm))
        under.append(left.at(reach_mm, high_mm + UNIT_THICK_MM))
    else:
        out_mm = 22.0 if right.left else -22.0
        leg_mm = (out_mm, crown_mm - reach_mm * 0.8)
        thick_mm = UNIT_THICK_MM if right.left else -UNIT_THICK_MM
        over += [(out_mm, crown_mm), leg_mm]
        under += [(out_mm + thick_mm, under[-1][1]), (leg_mm[0] + thick_mm, leg_mm[1])]
    yield closed(Pen.UNIT, (*over, *reversed(under)))


def unit_said(edge: MadeEdge, result: Result, *, leaf: Leaf, high_mm: float, reach_mm: float) -> Iterator[Measure]:
    """What holds the unit, what is under it, and what each gains along the line; told on the left."""
    wished, edition, unit = result.job.edges.ridge, result.job.edition, result.job.show_lengths_in
    if wished is None:
        return
    crown_mm = leaf.plumb_mm(high_mm) + UNIT_THICK_MM
    fixings = [part for part in edge.parts if part.item == "line-unit-fixing"]
    if edge.run is not None:
        gained = fine_length(edge.run.cover_mm, unit)
        yield pointing((0.0, crown_mm), "gained by each unit", gained, source=GIVEN, left=True)
    each = counted(round(sum(part.net for part in fixings) / edge.run.units_count), "fixing") if edge.run else ""
    batten_source = str(
        edge_figure(
            edition,
            EdgeFigure.HIP_BATTENS if edge.line and edge.line.kind is LineKind.HIP else EdgeFigure.RIDGE_BATTENS,
        ).citation
    )
    yield pointing(
        (0.0, crown_mm * 0.4), "batten under the units", f"{each} each" if each else "", source=batten_source, left=True
    )
    at = leaf.at(reach_mm - 25.0, high_mm - 4.0)
    match wished.made:
        case RidgeMade.DRY:
            roll = edge_figure(edition, EdgeFigure.DRY_LINE_ROLLS)
            yield pointing(at, "roll under the units", "dry", source=str(roll.citation), left=True)
        case RidgeMade.BEDDED:
            wide = edge_figure(edition, EdgeFigure.LINE_BED_WIDTH)
            said = f"{fine_length(wide.value, unit)} wide"
            yield pointing(at, "mortar bed each side", said, source=str(wide.citation), left=True)
        case _ as unreachable:
            assert_never(unreachable)
