"""Open valleys: their clear width, and what lines them.

Source: each figure's own (``standards.valleys``, ``standards.lead``). Scope: open valleys lined with lead, a preformed liner, or
one valley tile to each course; swept and laced valleys, and those mitred in slate, are not covered.
"""

from collections.abc import Iterator
from math import ceil

from gaugerod.basis.citation import Citation, common_practice
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.edges.answer import EdgePart, LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgesAsk
from gaugerod.edges.lead_runs import lead_along, lead_named, lead_of, run_findings, single_pieces
from gaugerod.edges.made_lead import made_with_lead
from gaugerod.edges.parts import along, mm, pieces
from gaugerod.edges.untold import untold
from gaugerod.edges.valley_lining import valley_lining, welt_from_line_mm
from gaugerod.edges.wished import ValleyMade, ValleyWished
from gaugerod.rules.lead import lap_on_slope, lead_lap
from gaugerod.rules.valley_width import valley_clear_least, valley_width
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.standards.lead import LeadPlace
from gaugerod.standards.valleys import ValleyFigure, valley_figure

TABLE = "[edges.valley]"
ONE_A_COURSE = common_practice(
    "one valley tile to each course; where the slopes differ, the slope with more courses counts"
)
LINER_LAPS = common_practice("lengths of a preformed liner lap as their maker says")


def valley_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """One valley; its clear width is as wished, else the usual, or the least where that is more."""
    wished = ask.wished.valley
    if wished is None:
        return untold(line, table=TABLE)
    pitch_deg = min(ask.slope(name).pitch_deg for name in line.slopes)
    clear_mm = _clear_mm(line, wished, pitch_deg, ask.edition)
    findings: list[Finding] = list(
        valley_width(
            where=line.name,
            clear_mm=clear_mm,
            pitch_deg=pitch_deg,
            preformed=wished.made is ValleyMade.LINER,
            edition=ask.edition,
        )
    )
    lead = list(_lead(ask, line, wished, findings)) if wished.made is ValleyMade.LEAD else []
    if wished.made is ValleyMade.LEAD and wished.girth_mm is not None:
        findings.append(
            valley_lining(where=line.name, girth_mm=wished.girth_mm, clear_mm=clear_mm, edition=ask.edition)
        )
    lead.append(_saddle(wished, ask.edition))
    return made_with_lead(
        line,
        made={
            ValleyMade.LEAD: "lined with lead",
            ValleyMade.LINER: "preformed liner",
            ValleyMade.VALLEY_TILES: "valley tiles",
        }[wished.made],
        lead=lead,
        says=tuple(_says(ask, line, wished, clear_mm)),
        findings=findings,
        parts=tuple(_parts(ask, line, wished, findings)),
        clear_mm=clear_mm,
    )


def _clear_mm(line: EdgeLine, wished: ValleyWished, pitch_deg: float, edition: Edition) -> float:
    if wished.clear_mm is not None:
        return wished.clear_mm
    least = valley_clear_least(where=line.name, pitch_deg=pitch_deg, edition=edition)
    return max(least.value, valley_figure(edition, ValleyFigure.CLEAR_USUAL).value)


def lining_girth(wished: ValleyWished, edition: Edition) -> tuple[float, str, tuple[Citation, ...]]:
    """The width of the lining flat, and how and from what it was come by: as stated, else from welt to welt."""
    if wished.girth_mm is not None:
        return wished.girth_mm, f"{wished.girth_mm:g} mm wide as stated", ()
    welt_at, welt = (
        batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE),
        valley_figure(edition, ValleyFigure.WELT),
    )
    girth_mm = 2 * (welt_at.value + welt.value)
    return (
        girth_mm,
        f"width: twice {welt_at.value:g} mm from the line to the welt and {welt.value:g} mm of welt, {girth_mm:g} mm",
        (welt_at.citation, welt.citation),
    )


def _lead(ask: EdgesAsk, line: EdgeLine, wished: ValleyWished, findings: list[Finding]) -> Iterator[LeadPieces]:
    usual = valley_figure(ask.edition, ValleyFigure.LEAD_CODE)
    code = int(usual.value) if wished.lead_code is None else wished.lead_code
    lead, found = lead_of(where=line.name, place=LeadPlace.VALLEY, code=code, edition=ask.edition)
    findings.extend(found)
    lap = lap_on_slope(where=line.name, rise_deg=line.slope_deg, edition=ask.edition)
    if isinstance(lap, Finding):
        findings.append(lap)
        return
    if lead is None:
        return
    girth_mm, girth_how, of_girth = lining_girth(wished, ask.edition)
    lining = lead_along(
        use=LeadUse.VALLEY_LINING,
        lead=lead,
        place=LeadPlace.VALLEY,
        run_mm=line.laid_mm,
        width_mm=girth_mm,
        lap=lap,
        how=f"{mm(line.laid_mm)} in equal pieces, laps by the valley's own rise of {line.slope_deg:.1f}°; {girth_how}",
        citations=(*((usual.citation,) if wished.lead_code is None else ()), *of_girth),
        edition=ask.edition,
    )
    if lining is not None:
        findings.append(lead_lap(where=line.name, lap_mm=lining.lap_mm or lap.value, least=lap))
        findings.extend(run_findings(line.name, lining, place=LeadPlace.VALLEY, edition=ask.edition))
        yield lining


def _saddle(wished: ValleyWished, edition: Edition) -> LeadPieces:
    """One saddle, no narrower than the lining below it."""
    code, long, wide = (
        valley_figure(edition, which)
        for which in (ValleyFigure.SADDLE_CODE, ValleyFigure.SADDLE_LENGTH, ValleyFigure.SADDLE_WIDTH)
    )
    return single_pieces(
        use=LeadUse.VALLEY_SADDLE,
        lead=lead_named(edition, int(code.value)),
        count=1,
        length_mm=long.value,
        width_mm=max(wide.value, wished.girth_mm or 0.0),
        how="one at the head of the valley, no narrower than the lining",
        citations=(code.citation, long.citation),
    )


def _parts(ask: EdgesAsk, line: EdgeLine, wished: ValleyWished, findings: list[Finding]) -> Iterator[EdgePart]:
    boards = valley_figure(ask.edition, ValleyFigure.BOARD_THICKNESS)
    match wished.made:
        case ValleyMade.LEAD:
            welt_at = batten_figure(ask.edition, BattenFigure.VALLEY_WELT_FROM_LINE)
            under = valley_figure(ask.edition, ValleyFigure.BOARD_UNDER_BATTENS)
            welt_mm = welt_at.value
            if wished.girth_mm is not None:
                welt_mm = max(welt_mm, welt_from_line_mm(girth_mm=wished.girth_mm, edition=ask.edition))
            stop = batten_figure(ask.edition, BattenFigure.VALLEY_STOP_FROM_WELT)
            wide_mm = welt_mm + under.value + stop.value
            yield along(
                item="valley-board",
                what=f"valley board, plywood {boards.value:g} mm, {wide_mm:g} mm wide, one each side",
                length_mm=2 * line.length_mm,
                citation=boards.citation,
            )
        case ValleyMade.LINER:
            yield from _liner(line, wished, findings)
        case ValleyMade.VALLEY_TILES:
            count = max(line.courses_count)
            if not isinstance(ask.covering, PlainTile) or not count:
                findings.append(_tiles_not_counted(line))
                return
            yield pieces(
                item="valley-tile",
                what="valley tile",
                count=count,
                how=f"one to each of {count} courses",
                citation=ONE_A_COURSE,
            )


def _tiles_not_counted(line: EdgeLine) -> Finding:
    return not_covered(
        rule="valley tiles",
        where=line.name,
        proposed=None,
        unit="pieces",
        citation=ONE_A_COURSE,
        says="Valley tiles are one to a course with plain tiles only. With other coverings a trough tile has its own length, so "
        "none are counted: ask the tile's maker, or line the valley with lead or a liner.",
        leaves_out=True,
    )


def _liner(line: EdgeLine, wished: ValleyWished, findings: list[Finding]) -> Iterator[EdgePart]:
    long_mm, lap_mm = wished.liner_length_mm, wished.liner_lap_mm
    one_will_do = long_mm is not None and line.laid_mm <= long_mm
    if long_mm is None or (lap_mm is None and not one_will_do):
        missing = "How long a liner is" if long_mm is None else "How far liners lap"
        findings.append(
            not_covered(
                rule="valley liner",
                where=line.name,
                proposed=None,
                unit="mm",
                citation=LINER_LAPS,
                says=f"{missing} was not given, so none are counted: its maker says. Give liner_length and liner_lap in {TABLE}.",
                leaves_out=True,
            )
        )
        return
    lap = lap_mm or 0.0
    count = 1 if one_will_do else ceil((line.laid_mm - lap) / (long_mm - lap) - 1e-9)
    yield pieces(
        item="valley-liner",
        what=f"preformed valley liner {long_mm:g} mm long",
        count=count,
        how=f"{mm(line.laid_mm)} with laps of {lap:g} mm",
        citation=LINER_LAPS,
    )


def _says(ask: EdgesAsk, line: EdgeLine, wished: ValleyWished, clear_mm: float) -> Iterator[str]:
    under = valley_figure(ask.edition, ValleyFigure.BOARD_UNDER_BATTENS)
    clear = valley_figure(ask.edition, ValleyFigure.MORTAR_CLEAR_OF_WELT)
    if wished.made is ValleyMade.LEAD:
        lap = lap_on_slope(where=line.name, rise_deg=line.slope_deg, edition=ask.edition)
        laps = f" Lap each over the one below by {lap.value:g} mm." if isinstance(lap, Limit) else ""
        yield f"Boards both sides, {under.value:g} mm or more under the batten ends. Line from the eaves up.{laps}"
    elif wished.made is ValleyMade.LINER:
        yield "Lay the liner from the eaves up, lapped and fixed as its maker says, on boards or battens as it asks."
    else:
        yield "One valley tile to each course, its tail in line with the course."
    if wished.made is not ValleyMade.VALLEY_TILES:
        yield (
            f"Cut the units {mm(clear_mm / 2)} from the line on each side, so that the valley is {mm(clear_mm)} clear, from wide "
            f"units where one would be small. No mortar on lead: on an undercloak, {clear.value:g} mm clear of the welt."
        )
    yield "Dress the saddle over the head of the valley before the ridge goes on."
