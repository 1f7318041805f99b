"""A verge bedded in mortar: the strips of the undercloak, the bed on it, what published sources say of its width."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from gaugerod.basis.citation import house
from gaugerod.basis.finding import TOUCH, Verdict
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.edges.answer import EdgePart, MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgesAsk
from gaugerod.edges.parts import mm, mortar, mortar_says, pieces
from gaugerod.edges.untold import laid_length
from gaugerod.edges.wished import VergeWished
from gaugerod.rules.verge_made import plain_tile_undercloak, verge_bed
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure, verge_bed_statements


def bedded_verge(ask: EdgesAsk, line: EdgeLine, wished: VergeWished) -> MadeEdge:
    """The verge with its undercloak, in whole strips butted end to end, and its bed along the whole length."""
    strip, bed_mm = _strip(ask, wished), _bed_mm(ask, wished)
    strips_count = _strips_count(line, strip)
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made="bedded on an undercloak",
        run=None,
        clear_mm=None,
        parts=tuple(_parts(ask, line, strip=strip, strips_count=strips_count, bed_mm=bed_mm)),
        lead=(),
        says=tuple(_says(ask, line, strips_count=strips_count, bed_mm=bed_mm)),
        findings=verge_bed(where=line.name, bed_mm=bed_mm, edition=ask.edition),
        working=Step(
            name=f"{line.name}: undercloak",
            formula="length ÷ strip, up to whole strips",
            inputs={"length (mm)": line.laid_mm, "strip (mm)": strip.value},
            value=float(strips_count),
            unit="count",
            citation=strip.citation,
            parts=(laid_length(line),),
        ),
    )


def _strip(ask: EdgesAsk, wished: VergeWished) -> Limit:
    """The length of one strip: the job's, or the usual one."""
    if wished.undercloak_length_mm is None:
        return edge_figure(ask.edition, EdgeFigure.UNDERCLOAK_LENGTH)
    return Limit(value=wished.undercloak_length_mm, unit="mm", citation=house("the strip the job gives"))


def _bed_mm(ask: EdgesAsk, wished: VergeWished) -> float:
    """The width of the bed: the job's, or the widest that any source asks for."""
    if wished.bed_mm is not None:
        return wished.bed_mm
    leasts = (statement.least_mm for statement in verge_bed_statements(ask.edition))
    return max(least for least in leasts if least is not None)


def _strips_count(line: EdgeLine, strip: Limit) -> int:
    return ceil((Fraction(line.laid_mm) - Fraction(TOUCH)) / Fraction(strip.value))


def _parts(ask: EdgesAsk, line: EdgeLine, *, strip: Limit, strips_count: int, bed_mm: float) -> Iterator[EdgePart]:
    width = edge_figure(ask.edition, EdgeFigure.UNDERCLOAK_WIDTH)
    yield pieces(
        item="undercloak",
        what=f"undercloak strip, {strip.value:g} × {width.value:g} mm",
        count=strips_count,
        how=f"whole strips along {mm(line.laid_mm)}",
        citation=strip.citation,
    )
    yield mortar(
        beds_count=1,
        width_mm=bed_mm,
        thickness=edge_figure(ask.edition, EdgeFigure.VERGE_BED_THICKNESS),
        length_mm=line.laid_mm,
        edition=ask.edition,
    )


def _says(ask: EdgesAsk, line: EdgeLine, *, strips_count: int, bed_mm: float) -> Iterator[str]:
    width = edge_figure(ask.edition, EdgeFigure.UNDERCLOAK_WIDTH)
    under = edge_figure(ask.edition, EdgeFigure.UNDERCLOAK_UNDER_BATTEN_GREATEST)
    yield (
        f"Lay {counted(strips_count, 'strip')} of undercloak {width.value:g} mm wide, of fibre-cement or slate, along "
        f"{mm(line.laid_mm)}, under the batten ends by {under.value:g} mm or less."
    )
    yield _plain_tiles_say(ask, line)
    yield f"Bed the end units on it in mortar {bed_mm:g} mm wide. Mortar does not hold them: nail or clip each one too."
    yield mortar_says(ask.edition)


def _plain_tiles_say(ask: EdgesAsk, line: EdgeLine) -> str:
    """Whether plain tiles would do as the undercloak here, and if not, why not."""
    slope = ask.slope(line.slopes[0])
    found = plain_tile_undercloak(
        where=line.name, gauge_mm=slope.gauge_mm, pitch_deg=slope.pitch_deg, edition=ask.edition
    )
    against = [finding for finding in found if finding.verdict is Verdict.OUTSIDE]
    if against:
        return f"Plain tiles will not do as the undercloak here. {' '.join(finding.says for finding in against)}"
    return "Plain tiles would do as the undercloak here too, instead of the strips."
