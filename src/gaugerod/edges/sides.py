"""A verge: dry with a unit to each course, bedded on an undercloak, or with cloaked verge tiles."""

from typing import assert_never

from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.basis.working import Step
from gaugerod.coverings.double_lap import PlainTile
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.edges.answer import EdgePart, MadeEdge
from gaugerod.edges.ask import EdgeLine, EdgesAsk
from gaugerod.edges.bedded_verge import bedded_verge
from gaugerod.edges.parts import courses_said, mm, pieces
from gaugerod.edges.untold import laid_length, untold
from gaugerod.edges.wished import VergeMade
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure

_TABLE = "[edges.verge]"
_HANDED = "They are left-handed or right-handed, by the side of the slope they are on, seen facing it from its eaves."


def verge_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """A verge as the job has it made. How far the covering runs past it is checked where the slope is set out across."""
    wished = ask.wished.verge
    if wished is None:
        return untold(line, table=_TABLE)
    match wished.made:
        case VergeMade.BEDDED:
            return bedded_verge(ask, line, wished)
        case VergeMade.DRY:
            return _dry(ask, line)
        case VergeMade.CLOAKED:
            return _cloaked(ask, line)
        case _ as unreachable:
            assert_never(unreachable)


def _dry(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """One unit to each course. Scope: single-lap tiles; the dry verges of other coverings come by the length."""
    each = edge_figure(ask.edition, EdgeFigure.DRY_VERGE_UNITS_EACH_COURSE)
    if not isinstance(ask.covering, SingleLapTile):
        says = (
            "One dry-verge unit to each course goes with single-lap tiles. For this covering none are counted: order for "
            f"{mm(line.laid_mm)} by the maker's table."
        )
        return _uncounted(line, made="dry", rule="dry verge", says=says, each=each)
    says_then = (
        "Lay them from the eaves up. The starter at the eaves and the end at the ridge are the maker's own: order one of each.",
        _HANDED,
        "Fix each as its maker says, and the end tile under it as the fixings say.",
    )
    return _to_each_course(
        ask, line, made="dry", item="dry-verge-unit", what="dry-verge unit", each=each, says=says_then
    )


def _cloaked(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """One handed tile to each course. Scope: tiles; slates have none."""
    each = edge_figure(ask.edition, EdgeFigure.CLOAKED_VERGE_TILES_EACH_COURSE)
    if not isinstance(ask.covering, SingleLapTile | PlainTile):
        says = "Cloaked verge tiles go with tiles, and this covering is slate. None are counted: make the verge dry or bedded."
        return _uncounted(line, made="cloaked", rule="cloaked verge", says=says, each=each)
    says_then = (
        "Each takes the place of the end tile of its course, so as many fewer of those are laid.",
        "Its cover width, and how far it stands past the wall, are the maker's.",
        _HANDED,
        "Fix each with two fixings at the least, as the tiles round the edge of the roof.",
    )
    return _to_each_course(
        ask, line, made="cloaked", item="cloaked-verge-tile", what="cloaked verge tile", each=each, says=says_then
    )


def _to_each_course(
    ask: EdgesAsk, line: EdgeLine, *, made: str, item: str, what: str, each: Limit, says: tuple[str, ...]
) -> MadeEdge:
    courses_count = sum(line.courses_count)
    count = courses_count * round(each.value)
    working = Step(
        name=f"{line.name}: {made}",
        formula="units to each course × courses that end at the verge",
        inputs={"to each course": each.value, "courses": float(courses_count)},
        value=float(count),
        unit="count",
        citation=each.citation,
        parts=(laid_length(line),),
    )
    how = f"one to each of {courses_said(courses_count, [ask.slope(name) for name in line.slopes])}"
    return _edge(
        line,
        made=made,
        parts=(
            pieces(
                item=item if line.hand is None else f"{item}-{line.hand.value}",
                what=f"{what}, {'handed' if line.hand is None else f'{line.hand.value}-hand'}",
                count=count,
                how=how,
                citation=each.citation,
            ),
        ),
        says=(f"{counted(count, what)}, {how}.", *says),
        findings=(),
        working=working,
    )


def _uncounted(line: EdgeLine, *, made: str, rule: str, says: str, each: Limit) -> MadeEdge:
    finding = not_covered(
        rule=rule,
        where=line.name,
        proposed=line.laid_mm,
        unit="mm",
        citation=each.citation,
        says=says,
        leaves_out=True,
    )
    return _edge(line, made=made, parts=(), says=(says,), findings=(finding,), working=laid_length(line))


def _edge(
    line: EdgeLine,
    *,
    made: str,
    parts: tuple[EdgePart, ...],
    says: tuple[str, ...],
    findings: tuple[Finding, ...],
    working: Step,
) -> MadeEdge:
    return MadeEdge(
        name=line.name,
        line=line,
        opening=None,
        made=made,
        run=None,
        clear_mm=None,
        parts=parts,
        lead=(),
        says=says,
        findings=findings,
        working=working,
    )
