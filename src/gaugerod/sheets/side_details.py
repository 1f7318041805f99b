"""Verges and walls in section: a verge and a side wall square to the slope, a wall along the top up the slope."""

from gaugerod.basis.lengths import write_length
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.edges.walls import side_made, top_cover, water_line
from gaugerod.edges.wished import SideMade, VergeMade
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen
from gaugerod.sheets.edge_detail import Detail, Measure, box, closed, falling, line
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.lead import LeadFigure, lead_figure

_WALL_MM, _SHOWN_MM, _BATTEN_MM, _THICK_MM, _RAFTER_MM = 102.5, 330.0, 25.0, 16.0, 75.0


def verge_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """The verge seen up the slope, the roof to its right."""
    wished = result.job.edges.verge
    over_mm = _past_mm(result, edge)
    if wished is None or over_mm is None:
        return None
    unit, edition = result.job.show_lengths_in, result.job.edition
    bedded = wished.made is VergeMade.BEDDED
    cloak = edge_figure(edition, EdgeFigure.UNDERCLOAK_WIDTH)
    low_mm = 6.0 if bedded else 0.0
    paths: list[Path] = [
        closed(Pen.TIMBER, box(0.0, -160.0, _WALL_MM, 160.0)),
        closed(Pen.SECTION_BATTEN, box(40.0, low_mm, _SHOWN_MM - 40.0, _BATTEN_MM)),
        closed(Pen.UNIT, box(-over_mm, low_mm + _BATTEN_MM, _SHOWN_MM + over_mm, _THICK_MM)),
    ]
    top_mm = low_mm + _BATTEN_MM + _THICK_MM + 14.0
    measures = [
        Measure(
            from_mm=(-over_mm, top_mm), to_mm=(0.0, top_mm), name="past the wall", value=write_length(over_mm, unit)
        )
    ]
    if bedded:
        bed_mm = wished.bed_mm or 100.0
        paths.insert(1, closed(Pen.UNIT, box(-over_mm, 0.0, cloak.value, 6.0)))
        paths.append(closed(Pen.CUT_UNIT, box(-over_mm, 6.0, bed_mm, _BATTEN_MM)))
        measures += [
            Measure(
                from_mm=(-over_mm, -10.0),
                to_mm=(cloak.value - over_mm, -10.0),
                name="undercloak",
                value=fine_length(cloak.value, unit),
            ),
            Measure(
                from_mm=(-over_mm, 18.0),
                to_mm=(bed_mm - over_mm, 18.0),
                name="mortar bed",
                value=fine_length(bed_mm, unit),
                left=True,
            ),
        ]
    else:
        at = (-over_mm, low_mm + 20.0)
        paths.append(line(Pen.CUT, ((-over_mm - 4.0, -40.0), (-over_mm - 4.0, top_mm - 8.0), (40.0, top_mm - 8.0))))
        measures.append(
            Measure(from_mm=at, to_mm=at, name=f"{wished.made.value} verge", value="one to a course", left=True)
        )
    return Detail(
        title=f"{edge.name} in section",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn="the wall, the batten's end, thickness of the covering",
    )


def _past_mm(result: Result, edge: MadeEdge) -> float | None:
    """How far the covering passes the end of the roof structure here."""
    if edge.line is None:
        return None
    slope = next(each for each in result.slopes if each.slope.name == edge.line.slopes[0])
    across = slope.across
    if across is None:
        return None
    on_left = edge.name.endswith(_left_name(slope.slope.left.value, slope.slope.right.value, "verge"))
    past_mm = across.left_overhang_mm if on_left else across.right_overhang_mm
    return past_mm if past_mm > 0 else None


def _left_name(left: str, right: str, kind: str) -> str:
    """What the edge on the left is called: the second of two alike, counter-clockwise from the eaves."""
    return f"{kind} 2" if left == right else kind if left == kind else "\n"


def side_wall_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """A wall up the side of a slope, seen up the slope, the wall on the left."""
    wished = result.job.edges.wall
    if wished is None or not edge.lead:
        return None
    unit, edition = result.job.show_lengths_in, result.job.edition
    figure = {which: lead_figure(edition, which).value for which in LeadFigure}
    base_mm = _BATTEN_MM + _THICK_MM
    water_mm, brick_mm = water_line(wished, edition).value, figure[LeadFigure.BRICK_COURSE]
    joint_mm, gap_mm = figure[LeadFigure.INTO_JOINT_LEAST], 10.0
    paths: list[Path] = [
        closed(Pen.TIMBER, box(-_WALL_MM, -80.0, _WALL_MM, 80.0 + base_mm + water_mm + brick_mm + 60.0)),
        closed(Pen.SECTION_BATTEN, box(gap_mm, 0.0, _SHOWN_MM - gap_mm, _BATTEN_MM)),
        closed(Pen.UNIT, box(gap_mm, _BATTEN_MM, _SHOWN_MM - gap_mm, _THICK_MM)),
    ]
    top_mm = base_mm + water_mm + brick_mm
    measures = [
        Measure(
            from_mm=(-joint_mm, top_mm),
            to_mm=(0.0, top_mm),
            name="into the joint",
            value=fine_length(joint_mm, unit),
            left=True,
        ),
        Measure(
            from_mm=(18.0, base_mm),
            to_mm=(18.0, base_mm + water_mm),
            name="water line above covering",
            value=fine_length(water_mm, unit),
        ),
    ]
    if side_made(result.job.covering, wished) is SideMade.STEP_AND_COVER:
        cover_mm = wished.side_cover_mm or figure[LeadFigure.SIDE_COVER_LEAST]
        run = ((-joint_mm, top_mm), (2.0, top_mm), (2.0, base_mm + 3.0), (gap_mm + cover_mm, base_mm + 3.0))
        paths.append(line(Pen.CUT, run))
        measures.append(
            Measure(
                from_mm=(gap_mm, base_mm + 10.0),
                to_mm=(gap_mm + cover_mm, base_mm + 10.0),
                name="on the covering",
                value=fine_length(cover_mm, unit),
            )
        )
    else:
        under_mm = figure[LeadFigure.SOAKER_UNDER]
        up_mm = figure[LeadFigure.UPSTAND_SPLASH if wished.splash else LeadFigure.UPSTAND_LEAST]
        paths += [
            line(Pen.CUT, ((2.0, _BATTEN_MM + up_mm), (2.0, _BATTEN_MM - 2.0), (2.0 + under_mm, _BATTEN_MM - 2.0))),
            line(Pen.CUT, ((-joint_mm, top_mm), (6.0, top_mm), (6.0, base_mm + water_mm - 20.0))),
        ]
        measures += [
            Measure(
                from_mm=(2.0, -12.0),
                to_mm=(2.0 + under_mm, -12.0),
                name="soaker under covering",
                value=fine_length(under_mm, unit),
            ),
            Measure(
                from_mm=(-8.0, _BATTEN_MM),
                to_mm=(-8.0, _BATTEN_MM + up_mm),
                name="soaker up the wall",
                value=fine_length(up_mm, unit),
                left=True,
            ),
        ]
    return Detail(
        title=f"{edge.name} in section",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn="the wall, the batten, thickness of the covering",
    )


def top_wall_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """A wall along the top: the slope falls to the right of it."""
    wished = result.job.edges.wall
    pieces = next((each for each in edge.lead if each.use is LeadUse.COVER_FLASHING), None)
    if wished is None or pieces is None or edge.line is None:
        return None
    unit, edition = result.job.show_lengths_in, result.job.edition
    slope = next(each for each in result.slopes if each.slope.name == edge.line.slopes[0])
    pitch_deg, below_mm = slope.slope.pitch_deg, slope.courses.rods[0].below_apex_mm
    up_mm = lead_figure(edition, LeadFigure.UPSTAND_SPLASH if wished.splash else LeadFigure.UPSTAND_LEAST).value
    joint_mm = lead_figure(edition, LeadFigure.INTO_JOINT_LEAST).value
    down_mm = top_cover(result.job.covering, edition).value
    head_mm = _BATTEN_MM + _THICK_MM + 4.0

    def block(from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[tuple[float, float], ...]:
        return falling(pitch_deg=pitch_deg, from_mm=from_mm, to_mm=to_mm, low_mm=low_mm, high_mm=high_mm)

    top = block(max(below_mm - 20.0, 5.0), _SHOWN_MM, head_mm, head_mm)
    start, end = top[0], block(max(below_mm - 20.0, 5.0) + down_mm, _SHOWN_MM, head_mm, head_mm)[0]
    flashing = ((-joint_mm, start[1] + up_mm), (2.0, start[1] + up_mm), (2.0, start[1]), start, end)
    return Detail(
        title=f"{edge.name} in section, up the slope",
        paths=(
            closed(Pen.TIMBER, box(-_WALL_MM, -220.0, _WALL_MM, 220.0 + start[1] + up_mm + 50.0)),
            closed(Pen.TIMBER, block(0.0, _SHOWN_MM, -_RAFTER_MM, 0.0)),
            closed(Pen.SECTION_BATTEN, block(below_mm, below_mm + 38.0, 0.0, _BATTEN_MM)),
            closed(Pen.UNIT, block(max(below_mm - 20.0, 5.0), _SHOWN_MM, _BATTEN_MM, _BATTEN_MM + _THICK_MM)),
            line(Pen.CUT, flashing),
        ),
        measures=(
            Measure(
                from_mm=(-joint_mm, flashing[0][1]),
                to_mm=(0.0, flashing[0][1]),
                name="into the joint",
                value=fine_length(joint_mm, unit),
                left=True,
            ),
            Measure(
                from_mm=(-10.0, start[1]),
                to_mm=(-10.0, start[1] + up_mm),
                name="up the wall",
                value=fine_length(up_mm, unit),
                left=True,
            ),
            Measure(
                from_mm=(start[0], start[1] + 10.0),
                to_mm=(end[0], end[1] + 10.0),
                name="over the top course",
                value=fine_length(down_mm, unit),
            ),
        ),
        only_drawn="the wall, the rafter, thickness of the covering",
    )
