"""A hip under bonnets: one to each course, nailed to the hip rafter, bedded where the job beds its ridges."""

from collections.abc import Iterator

from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.edges.answer import EdgePart, MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgesAsk
from gaugerod.edges.line_parts import hip_irons, hip_irons_say, line_mortar, unit_fixings_part
from gaugerod.edges.parts import courses_said, mortar_says, pieces
from gaugerod.edges.untold import laid_length
from gaugerod.edges.wished import RidgeMade, RidgeWished
from gaugerod.rules.ridge_units import unit_fixings
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure


def bonnets_edge(ask: EdgesAsk, line: EdgeLine, wished: RidgeWished) -> MadeEdge:
    """The hip, its bonnets by the courses of the slope that has more of them. Scope: plain tiles; else a finding says so."""
    bedded = wished.made is RidgeMade.BEDDED
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made=f"bonnets, {'bedded and fixed' if bedded else 'dry'}",
        run=None,
        clear_mm=None,
        parts=tuple(_parts(ask, line, wished)),
        lead=(),
        says=tuple(_says(ask, line, wished)),
        findings=tuple(_findings(ask, line, wished)),
        working=_working(ask, line),
    )


def _bonnets_count(ask: EdgesAsk, line: EdgeLine) -> int:
    each = round(edge_figure(ask.edition, EdgeFigure.BONNETS_EACH_COURSE).value)
    return max(line.courses_count) * each


def _fixings_count(ask: EdgesAsk, wished: RidgeWished) -> int:
    """Those of the hip unit the job gives; else the edition's."""
    if wished.hip is not None:
        return wished.hip.fixings_count
    return round(edge_figure(ask.edition, EdgeFigure.BONNET_FIXINGS).value)


def _parts(ask: EdgesAsk, line: EdgeLine, wished: RidgeWished) -> Iterator[EdgePart]:
    count = _bonnets_count(ask, line)
    yield pieces(
        item="bonnet",
        what="bonnet",
        count=count,
        how=_courses_said(ask, line),
        citation=edge_figure(ask.edition, EdgeFigure.BONNETS_EACH_COURSE).citation,
        mass_kg=None if wished.hip is None else wished.hip.mass_kg,
    )
    yield from unit_fixings_part(
        units_count=count,
        fixings_count=_fixings_count(ask, wished),
        each="bonnet",
        citation=edge_figure(ask.edition, EdgeFigure.BONNET_FIXINGS).citation,
    )
    if wished.made is RidgeMade.BEDDED:
        yield line_mortar(ask, line)
    yield from hip_irons(ask, line, wished.made)


def _courses_said(ask: EdgesAsk, line: EdgeLine) -> str:
    courses = courses_said(max(line.courses_count), [ask.slope(name) for name in line.slopes])
    if len(set(line.courses_count)) > 1:
        fewer = min(line.courses_count)
        return f"one to each of {courses}: {fewer} end here on the other slope, and the greater is counted"
    return f"one to each of {courses}"


def _says(ask: EdgesAsk, line: EdgeLine, wished: RidgeWished) -> Iterator[str]:
    yield from hip_irons_say(ask, line, wished.made)
    yield f"{counted(_bonnets_count(ask, line), 'bonnet')}: {_courses_said(ask, line)}."
    fixings = _fixings_count(ask, wished)
    if fixings:
        yield f"Nail each bonnet at its head to the hip rafter, with {counted(fixings, 'fixing')}."
    if wished.made is RidgeMade.BEDDED:
        yield "Bed the tail of each bonnet on the courses below."
        yield mortar_says(ask.edition)


def _findings(ask: EdgesAsk, line: EdgeLine, wished: RidgeWished) -> Iterator[Finding]:
    yield unit_fixings(where=line.name, fixings_count=_fixings_count(ask, wished), edition=ask.edition)
    if not isinstance(ask.covering, PlainTile):
        yield not_covered(
            rule="bonnets",
            where=line.name,
            proposed=None,
            unit="count",
            citation=edge_figure(ask.edition, EdgeFigure.BONNETS_EACH_COURSE).citation,
            says="Bonnets are made to course with plain tiles, and this covering is another. One to each course is counted; ask "
            "the maker whether they fit.",
        )
    if not line.of_two:
        yield not_covered(
            rule="bonnets",
            where=line.name,
            proposed=float(_bonnets_count(ask, line)),
            unit="count",
            citation=edge_figure(ask.edition, EdgeFigure.BONNETS_EACH_COURSE).citation,
            says="Only one slope of this hip is known, and the bonnets are counted by its courses. Say in [[edges.shared]] which "
            "slope it meets.",
        )


def _working(ask: EdgesAsk, line: EdgeLine) -> Step:
    each = edge_figure(ask.edition, EdgeFigure.BONNETS_EACH_COURSE)
    return Step(
        name=f"{line.name}: bonnets",
        formula="bonnets to each course × the greater number of courses that end at the hip",
        inputs={"to each course": each.value, "courses": ", ".join(str(count) for count in line.courses_count)},
        value=float(_bonnets_count(ask, line)),
        unit="count",
        citation=each.citation,
        parts=(laid_length(line),),
    )
