"""Where the covering meets a wall: soakers under step flashing, or one flashing that steps and covers; along the top, a
cover flashing.

Source: each figure's own (``standards.lead``). Scope: flashings chased into the joints of brickwork or stone; a secret gutter,
and a wall with no joints, are not covered.
"""

from collections.abc import Iterator
from math import ceil

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import Covering, EdgeLine, EdgesAsk, EdgeSlope
from gaugerod.edges.lead_runs import lead_along, lead_of, run_findings
from gaugerod.edges.made_lead import made_with_lead
from gaugerod.edges.parts import mm
from gaugerod.edges.soakers import soaker_findings, wall_soakers
from gaugerod.edges.untold import untold
from gaugerod.edges.wished import SideMade, WallWished
from gaugerod.geometry.pitch import sin_deg
from gaugerod.rules.lead import lap_on_slope, lead_lap
from gaugerod.rules.side_cover import side_cover
from gaugerod.standards.defaults import top_flashing_cover_least
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadCode, LeadFigure, LeadPlace, lead_figure

TABLE = "[edges.wall]"
BY_COVERING = Citation(
    source="independent consultant's trade article on side abutments: soakers under step flashing beside slates and plain tiles, "
    "step-and-cover flashing over profiled tiles",
    basis=Basis.PUBLISHED,
)


def side_made(covering: Covering, wished: WallWished) -> SideMade:
    """How a side is made: as wished; else soakers for plain tiles and slates, and one flashing for single-lap tiles.

    Source: soakers under slates and plain tiles, step-and-cover over profiled tiles (published).
    """
    if wished.beside is not None:
        return wished.beside
    return SideMade.STEP_AND_COVER if isinstance(covering, SingleLapTile) else SideMade.SOAKERS


def side_abutment_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """A wall up the side of a slope."""
    wished = ask.wished.wall
    if wished is None:
        return untold(line, table=TABLE)
    lead, findings = lead_of(
        where=line.name, place=LeadPlace.FLASHING, code=flashing_code(wished, ask.edition), edition=ask.edition
    )
    made = side_made(ask.covering, wished)
    pieces, more = side_lead(
        ask,
        line.name,
        slope=line.slopes[0],
        run_mm=line.laid_mm,
        courses_count=line.courses_count[0],
        lead=lead,
        short_mm=line.short_mm,
    )
    return made_with_lead(
        line,
        made="step-and-cover flashing" if made is SideMade.STEP_AND_COVER else "soakers under step flashing",
        lead=pieces,
        says=tuple(_side_says(pieces, made, line, wished, ask.edition)),
        findings=(*findings, *more),
    )


def flashing_code(wished: WallWished, edition: Edition) -> int:
    """The code of flashings: as wished, else the least there is for them."""
    if wished.lead_code is not None:
        return wished.lead_code
    return int(lead_figure(edition, LeadFigure.FLASHING_CODE_LEAST).value)


def side_lead(
    ask: EdgesAsk,
    where: str,
    *,
    slope: str,
    run_mm: float,
    courses_count: int,
    lead: LeadCode | None,
    short_mm: float = 0.0,
) -> tuple[tuple[LeadPieces, ...], tuple[Finding, ...]]:
    """The lead up one side of a wall or chimney. ``lead`` None: flashings of no allowed code, so none are counted.

    ``short_mm``: how far the covering stops short of the wall; the lead reaches over that before it covers anything.
    """
    wished = ask.wished.wall or WallWished()
    edition = ask.edition
    findings: list[Finding] = []
    pieces: list[LeadPieces] = []
    lap = lead_figure(edition, LeadFigure.LAP_LEVEL_LEAST)
    if side_made(ask.covering, wished) is SideMade.STEP_AND_COVER:
        cover_mm = _side_cover_mm(wished, edition)
        findings.extend(side_cover(where=where, cover_mm=cover_mm, edition=edition))
        use = LeadUse.STEP_AND_COVER
        on_slope = lap_on_slope(where=where, rise_deg=ask.slope(slope).pitch_deg, edition=edition)
        if isinstance(on_slope, Finding):
            return (), (*findings, on_slope)
        # It lies on the covering, so it laps by the rise of the slope, as lead in a valley, and no less than any flashing.
        lap = max((lap, on_slope), key=lambda limit: limit.value)
    else:
        cover_mm, use = 0.0, LeadUse.STEP_FLASHING
        soakers, of_soakers = _side_soakers(
            ask, where, ask.slope(slope), courses_count=courses_count, up=_upstand(wished, edition), short_mm=short_mm
        )
        pieces.extend(soakers)
        findings.extend(of_soakers)
    findings.extend(_unusual(ask.covering, wished, where))
    water = water_line(wished, edition)
    flashing = _stepped(
        use, lead, run_mm=run_mm, cover_mm=cover_mm, short_mm=short_mm, water=water, lap=lap, edition=edition
    )
    if flashing is not None:
        pieces.append(flashing)
        findings.append(lead_lap(where=where, lap_mm=flashing.lap_mm or lap.value, least=lap))
        findings.extend(run_findings(where, flashing, place=LeadPlace.FLASHING, edition=edition))
    return tuple(pieces), tuple(findings)


def _side_soakers(
    ask: EdgesAsk, where: str, slope: EdgeSlope, *, courses_count: int, up: Limit, short_mm: float
) -> tuple[tuple[LeadPieces, ...], tuple[Finding, ...]]:
    """The soakers of one side; none, and why, under tiles that lap only once, or where no course ends at the wall."""
    if isinstance(ask.covering, SingleLapTile):
        return (), (
            _not_reached(
                where,
                "Soakers go with slates and plain tiles, which lap twice. Under these tiles none are counted.",
                leaves_out=True,
            ),
        )
    if not courses_count:
        return (), (
            _not_reached(
                where,
                "No course ends at this wall, so no soaker is counted: look at it on the roof.",
                leaves_out=True,
            ),
        )
    soakers = wall_soakers(slope, count=courses_count, up=up, edition=ask.edition, short_mm=short_mm)
    return (soakers,), soaker_findings(where, soakers, ask.edition)


def _unusual(covering: Covering, wished: WallWished, where: str) -> Iterator[Finding]:
    """One flashing over slates or plain tiles: no source read says it will do."""
    if wished.beside is SideMade.STEP_AND_COVER and not isinstance(covering, SingleLapTile):
        says = "Sources have soakers under step flashing beside slates and plain tiles. One flashing over them is counted as asked."
        yield _not_reached(where, says)


def _not_reached(where: str, says: str, *, leaves_out: bool = False) -> Finding:
    return not_covered(
        rule="side of a wall",
        where=where,
        proposed=None,
        unit="mm",
        citation=BY_COVERING,
        says=says,
        leaves_out=leaves_out,
    )


def water_line(wished: WallWished, edition: Edition) -> Limit:
    """How far above the covering a flashing's steps begin: higher where rain splashes up the wall."""
    return lead_figure(edition, LeadFigure.UPSTAND_SPLASH if wished.splash else LeadFigure.WATER_LINE)


def _side_cover_mm(wished: WallWished, edition: Edition) -> float:
    if wished.side_cover_mm is not None:
        return wished.side_cover_mm
    return lead_figure(edition, LeadFigure.SIDE_COVER_LEAST).value


def _upstand(wished: WallWished, edition: Edition) -> Limit:
    return lead_figure(edition, LeadFigure.UPSTAND_SPLASH if wished.splash else LeadFigure.UPSTAND_LEAST)


def _stepped(
    use: LeadUse,
    lead: LeadCode | None,
    *,
    run_mm: float,
    cover_mm: float,
    short_mm: float,
    water: Limit,
    lap: Limit,
    edition: Edition,
) -> LeadPieces | None:
    """A stepped flashing: into the joint, down over one brick course to the water line, and out over the tiles."""
    if lead is None:
        return None
    joint, brick = (lead_figure(edition, which) for which in (LeadFigure.INTO_JOINT_LEAST, LeadFigure.BRICK_COURSE))
    clear_mm = float(ceil(short_mm - 1e-6)) if cover_mm else 0.0
    width_mm = joint.value + brick.value + water.value + clear_mm + cover_mm
    clear = f" + {clear_mm:g} mm to the covering" if clear_mm else ""
    covers = f"{clear} + {cover_mm:g} mm over the covering" if cover_mm else ""
    of_cover = (lead_figure(edition, LeadFigure.SIDE_COVER_LEAST).citation,) if cover_mm else ()
    return lead_along(
        use=use,
        lead=lead,
        place=LeadPlace.FLASHING,
        run_mm=run_mm,
        width_mm=width_mm,
        lap=lap,
        how=(
            f"{mm(run_mm)} in equal pieces; width: {joint.value:g} mm into the joint + {brick.value:g} mm for one brick course + "
            f"{water.value:g} mm to the water line{covers}"
        ),
        citations=(joint.citation, brick.citation, water.citation, *of_cover),
        edition=edition,
    )


def _side_says(
    pieces: tuple[LeadPieces, ...], made: SideMade, line: EdgeLine, wished: WallWished, edition: Edition
) -> Iterator[str]:
    brick, joint = (lead_figure(edition, which) for which in (LeadFigure.BRICK_COURSE, LeadFigure.INTO_JOINT_LEAST))
    water = water_line(wished, edition)
    wedges = lead_figure(edition, LeadFigure.WEDGE_CENTRES_GREATEST)
    clips = [
        lead_figure(edition, which).value for which in (LeadFigure.CLIP_CENTRES_LEAST, LeadFigure.CLIP_CENTRES_GREATEST)
    ]
    rise_mm = line.laid_mm * sin_deg(line.slope_deg)
    steps = max(1, ceil(rise_mm / brick.value - 1e-6))
    if any(each.use is LeadUse.SOAKER for each in pieces):
        yield "Lay a soaker with each course, its head over the batten, its upstand tight to the wall; the next unit covers it."
    flashing = next((each for each in pieces if each.use is not LeadUse.SOAKER), None)
    if flashing is None:
        return
    yield (
        f"About {steps} steps, one to each brick course of {brick.value:g} mm, each turned {joint.value:g} mm into its joint and "
        f"wedged (at {wedges.value:g} mm or closer), the water line {water.value:g} mm above the covering."
    )
    if flashing.count > 1:
        level = lead_figure(edition, LeadFigure.LAP_LEVEL_LEAST)
        why = ", by the rise of the slope: it lies on the covering" if flashing.lap_mm > level.value else ""
        yield f"Lap each piece {flashing.lap_mm:g} mm over the one below{why}."
    if made is SideMade.STEP_AND_COVER:
        yield f"Dress the lower part over the tiles; clip its free edge at {clips[0]:g} to {clips[1]:g} mm."


def top_abutment_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """A wall along the top of a slope: a cover flashing over the top course."""
    wished = ask.wished.wall
    if wished is None:
        return untold(line, table=TABLE)
    edition = ask.edition
    lead, findings = lead_of(
        where=line.name, place=LeadPlace.FLASHING, code=flashing_code(wished, edition), edition=edition
    )
    lap = lead_figure(edition, LeadFigure.LAP_LEVEL_LEAST)
    pieces = () if lead is None else _some(_top_flashing(ask, line, wished, lead, lap))
    down_mm, up = top_reach_mm(line, ask.covering, edition), _upstand(wished, edition)
    return made_with_lead(
        line,
        made="cover flashing",
        lead=pieces,
        says=(
            (
                f"Dress the flashing {down_mm:g} mm down from the wall, over the top course, and {up.value:g} mm up it, its top "
                f"edge into a joint and wedged. Laps of {lap.value:g} mm, the upper piece over the lower where it slopes."
            ),
        ),
        findings=(
            *findings,
            *(lead_lap(where=line.name, lap_mm=each.lap_mm or lap.value, least=lap) for each in pieces),
            *(
                finding
                for each in pieces
                for finding in run_findings(line.name, each, place=LeadPlace.FLASHING, edition=edition)
            ),
        ),
    )


def top_cover(covering: Covering, edition: Edition) -> Limit:
    """How far a flashing comes down over the top course: less where plain tiles have a course of tops tiles under it."""
    if isinstance(covering, PlainTile) and covering.eaves_length_mm is not None:
        return lead_figure(edition, LeadFigure.TOPS_COVER_LEAST)
    return top_flashing_cover_least(edition)


def top_reach_mm(line: EdgeLine, covering: Covering, edition: Edition) -> float:
    """How far down the slope from the wall its flashing is cut to reach: over the heads of the top course by the least cover,
    or as far as the job says where that is more. Whole mm, up.
    """
    least_mm = float(ceil(top_cover(covering, edition).value + line.short_mm - 1e-6))
    return least_mm if line.reach_mm is None else max(least_mm, line.reach_mm)


def _top_flashing(ask: EdgesAsk, line: EdgeLine, wished: WallWished, lead: LeadCode, lap: Limit) -> LeadPieces | None:
    edition = ask.edition
    joint, up, down = (
        lead_figure(edition, LeadFigure.INTO_JOINT_LEAST),
        _upstand(wished, edition),
        top_cover(ask.covering, edition),
    )
    down_mm = top_reach_mm(line, ask.covering, edition)
    return lead_along(
        use=LeadUse.COVER_FLASHING,
        lead=lead,
        place=LeadPlace.FLASHING,
        run_mm=line.laid_mm,
        width_mm=joint.value + up.value + down_mm,
        lap=lap,
        how=(
            f"{mm(line.laid_mm)} in equal pieces; width: {joint.value:g} mm into the joint + {up.value:g} mm up the wall + "
            f"{down_mm:g} mm down the slope, {down.value:g} mm or more of it over the top course"
        ),
        citations=(joint.citation, up.citation, down.citation),
        edition=edition,
    )


def _some(pieces: LeadPieces | None) -> tuple[LeadPieces, ...]:
    return () if pieces is None else (pieces,)
