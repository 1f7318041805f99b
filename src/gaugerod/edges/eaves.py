"""The eaves: trays that carry the underlay into the gutter, and a comb filler under the tails of a profiled tile."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH, Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.coverings.single_lap import Form, SingleLapTile
from gaugerod.edges.answer import EdgePart, MadeEdge
from gaugerod.edges.ask import Covering, EdgeLine, EdgesAsk
from gaugerod.edges.parts import along, mm, pieces
from gaugerod.edges.untold import laid_length, untold
from gaugerod.edges.wished import EavesWished
from gaugerod.rules.eaves_closer import RULE, EavesCloser, eaves_closer
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure
from gaugerod.standards.edition import Edition

_TABLE = "[edges.eaves]"


def eaves_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """An eaves as the job has it made. How far the tails reach past the fascia is checked where the courses are set out."""
    wished = ask.wished.eaves
    if wished is None:
        return untold(line, table=_TABLE)
    closer = _closer(ask, line, wished)
    trays_count = None
    if wished.tray_length_mm is not None:
        trays_count = eaves_trays(
            where=line.name, length_mm=line.laid_mm, tray_length_mm=wished.tray_length_mm, edition=ask.edition
        )
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made=_made(trays=trays_count is not None, filler=closer is not None and closer.needed),
        run=None,
        clear_mm=None,
        parts=tuple(_parts(ask, line, wished, closer, trays_count)),
        lead=(),
        says=tuple(_says(ask, line, wished, closer, trays_count)),
        findings=tuple(_findings(ask, line, closer)),
        working=_working(ask, line, wished, trays_count),
    )


def eaves_trays(*, where: str, length_mm: float, tray_length_mm: float, edition: Edition) -> int:
    """The fewest trays that reach along an eaves, each lapped over the next.

    Source: the lap is common practice; the rest is arithmetic. Raises NothingToSetOut for lengths that are no measurements,
    or a tray no longer than its lap. Scope: trays of one length, whole; the last is cut. Lengths in mm.

    >>> [eaves_trays(where="eaves", length_mm=length_mm, tray_length_mm=1500.0, edition=Edition.GB)
    ...  for length_mm in (1500.0, 2900.0, 2900.1)]
    [1, 2, 3]
    """
    for length in (length_mm, tray_length_mm):
        refuse_unless_above_nothing(rule="eaves trays", where=where, value=length, unit="mm")
    lap_mm = edge_figure(edition, EdgeFigure.EAVES_TRAY_LAP).value
    if tray_length_mm <= lap_mm:
        raise NothingToSetOut(f"eaves trays, {where}: a tray of {tray_length_mm:g} mm is no longer than its lap")
    gains = Fraction(tray_length_mm) - Fraction(lap_mm)
    return max(1, ceil((Fraction(length_mm) - Fraction(lap_mm) - Fraction(TOUCH)) / gains))


def _closer(ask: EdgesAsk, line: EdgeLine, wished: EavesWished) -> EavesCloser | None:
    """What the open gap under a profiled tile needs; None for other coverings, and where it was not measured."""
    if not _leaves_gaps(ask.covering) or wished.gap_mm is None:
        return None
    return eaves_closer(where=line.name, gap_mm=wished.gap_mm, edition=ask.edition)


def _leaves_gaps(covering: Covering) -> bool:
    return isinstance(covering, SingleLapTile) and covering.form is not Form.FLAT


def _made(*, trays: bool, filler: bool) -> str:
    if trays and filler:
        return "trays and comb filler"
    if trays:
        return "trays"
    return "comb filler" if filler else "nothing to fit but the covering"


def _parts(
    ask: EdgesAsk, line: EdgeLine, wished: EavesWished, closer: EavesCloser | None, trays_count: int | None
) -> Iterator[EdgePart]:
    if trays_count is not None and wished.tray_length_mm is not None:
        lap = edge_figure(ask.edition, EdgeFigure.EAVES_TRAY_LAP)
        yield pieces(
            item="eaves-tray",
            what=f"eaves tray, {mm(wished.tray_length_mm)} long",
            count=trays_count,
            how=f"lapped {lap.value:g} mm, along {mm(line.laid_mm)}",
            citation=lap.citation,
        )
    if closer is not None and closer.needed:
        yield along(
            item="comb-filler",
            what="comb filler",
            length_mm=line.laid_mm,
            citation=closer.findings[0].citation,
        )


def _says(
    ask: EdgesAsk, line: EdgeLine, wished: EavesWished, closer: EavesCloser | None, trays_count: int | None
) -> Iterator[str]:
    if trays_count is not None:
        lap = edge_figure(ask.edition, EdgeFigure.EAVES_TRAY_LAP)
        yield (
            f"Fix {counted(trays_count, 'tray')} along {mm(line.laid_mm)} of eaves, lapped {lap.value:g} mm, their lower edge in "
            "the gutter, before the underlay."
        )
    if closer is not None and closer.needed:
        yield f"Fix comb filler along {mm(line.laid_mm)} of eaves, under the tails, so that birds and vermin stay out."
    if wished.gap_mm is not None and not _leaves_gaps(ask.covering):
        yield f"The open height of {wished.gap_mm:g} mm is not used: this covering leaves no openings under its tails."
    if trays_count is None and (closer is None or not closer.needed):
        yield f"{mm(line.laid_mm)} long. Nothing is counted but the covering itself."


def _findings(ask: EdgesAsk, line: EdgeLine, closer: EavesCloser | None) -> Iterator[Finding]:
    if closer is not None:
        yield from closer.findings
    elif _leaves_gaps(ask.covering):
        yield not_covered(
            rule=RULE,
            where=line.name,
            proposed=None,
            unit="mm",
            citation=edge_figure(ask.edition, EdgeFigure.COMB_FILLER_FROM_FIRST).citation,
            says="The open height under the tails of this profiled tile was not measured, so whether it needs a comb filler is "
            f"not known, and none is counted. Measure it, and give it in {_TABLE}.",
            leaves_out=True,
        )


def _working(ask: EdgesAsk, line: EdgeLine, wished: EavesWished, trays_count: int | None) -> Step:
    length = laid_length(line)
    if trays_count is None or wished.tray_length_mm is None:
        return length
    lap: Limit = edge_figure(ask.edition, EdgeFigure.EAVES_TRAY_LAP)
    return Step(
        name=f"{line.name}: trays",
        formula="(length − lap) ÷ (tray − lap), up to whole trays",
        inputs={"length (mm)": line.laid_mm, "lap (mm)": lap.value, "tray (mm)": wished.tray_length_mm},
        value=float(trays_count),
        unit="count",
        citation=lap.citation,
        parts=(length,),
    )
