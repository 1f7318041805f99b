"""What lies over a ridge or a hip. Units end to end: how many, what holds them, what seals or beds them."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.working import Step
from gaugerod.edges.answer import EdgePart, MadeEdge, UnitRun
from gaugerod.edges.ask import EdgeLine, EdgesAsk, LineKind
from gaugerod.edges.bonnets import bonnets_edge
from gaugerod.edges.line_parts import hip_irons, hip_irons_say, line_mortar, unit_fixings_part
from gaugerod.edges.mitred import mitred_edge
from gaugerod.edges.parts import along, mm, mortar_says, pieces
from gaugerod.edges.unit_run import unit_run
from gaugerod.edges.untold import laid_length, untold
from gaugerod.edges.wished import HipMade, LineUnit, RidgeMade
from gaugerod.rules.ridge_units import cuts_off_the_gable, unit_cut, unit_fixings
from gaugerod.setting_out.said import counted
from gaugerod.standards.edges import EdgeFigure, edge_figure

_TABLE = "[edges.ridge]"
_BOTH_ENDS = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class _Over:
    """One line under units. ``table`` of the job file gives the unit; ``unit``, ``run`` None: not known, so not counted."""

    ask: EdgesAsk
    line: EdgeLine
    made: RidgeMade
    item: str
    called: str
    table: str
    unit: LineUnit | None
    run: UnitRun | None


def ridge_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """A ridge or mono-ridge under units end to end."""
    wished = ask.wished.ridge
    if wished is None:
        return untold(line, table=_TABLE)
    mono = line.kind is LineKind.MONO_RIDGE
    return _made(
        _over(
            ask,
            line,
            wished.made,
            item="mono-ridge-unit" if mono else "ridge-unit",
            called="mono-ridge unit" if mono else "ridge unit",
            table="[edges.ridge.mono_unit]" if mono else "[edges.ridge.unit]",
            unit=wished.mono_ridge if mono else wished.ridge,
        )
    )


def hip_edge(ask: EdgesAsk, line: EdgeLine) -> MadeEdge:
    """A hip under units end to end, with one bonnet to each course, or mitred with a soaker to each course."""
    wished = ask.wished.ridge
    if wished is None:
        return untold(line, table=_TABLE)
    match wished.hips:
        case HipMade.UNITS:
            return _made(
                _over(
                    ask,
                    line,
                    wished.made,
                    item="hip-unit",
                    called="hip unit",
                    table="[edges.ridge.hip_unit]",
                    unit=wished.hip,
                )
            )
        case HipMade.BONNET:
            return bonnets_edge(ask, line, wished)
        case HipMade.MITRED:
            return mitred_edge(ask, line)
        case _ as unreachable:
            assert_never(unreachable)


def _over(
    ask: EdgesAsk, line: EdgeLine, made: RidgeMade, *, item: str, called: str, table: str, unit: LineUnit | None
) -> _Over:
    run = None
    if unit is not None:
        run = unit_run(where=line.name, length_mm=line.laid_mm, unit=unit, edition=ask.edition)
    return _Over(ask=ask, line=line, made=made, item=item, called=called, table=table, unit=unit, run=run)


def _made(over: _Over) -> MadeEdge:
    return MadeEdge(
        name=over.line.name,
        line=over.line,
        opening=None,
        made=f"{over.called}s, {'bedded and fixed' if over.made is RidgeMade.BEDDED else 'dry'}",
        run=over.run,
        clear_mm=None,
        parts=tuple(_parts(over)),
        lead=(),
        says=tuple(_says(over)),
        findings=tuple(_findings(over)),
        working=_working(over),
    )


def _parts(over: _Over) -> Iterator[EdgePart]:
    ask, line = over.ask, over.line
    if over.unit is not None and over.run is not None:
        yield pieces(
            item=over.item,
            what=f"{over.called}, {mm(over.unit.length_mm)} long",
            count=over.run.units_count,
            how=f"{_run_said(over.run)} along {mm(line.laid_mm)}",
            citation=edge_figure(ask.edition, EdgeFigure.LINE_UNIT_CUT_LEAST).citation,
            mass_kg=over.unit.mass_kg,
        )
        yield from unit_fixings_part(
            units_count=over.run.units_count,
            fixings_count=over.unit.fixings_count,
            each="unit, cut ones too" if over.run.cut_mm else "unit",
            citation=edge_figure(ask.edition, EdgeFigure.LINE_UNIT_FIXINGS_LEAST).citation,
        )
    batten = edge_figure(ask.edition, EdgeFigure.HIP_BATTENS if line.kind is LineKind.HIP else EdgeFigure.RIDGE_BATTENS)
    yield along(
        item="ridge-batten",
        what="batten under ridge and hip units, to fix them to",
        length_mm=line.length_mm * batten.value,
        citation=batten.citation,
    )
    match over.made:
        case RidgeMade.DRY:
            roll = edge_figure(ask.edition, EdgeFigure.DRY_LINE_ROLLS)
            yield along(
                item="dry-line-roll",
                what="roll that seals a dry ridge or hip",
                length_mm=line.laid_mm * roll.value,
                citation=roll.citation,
            )
        case RidgeMade.BEDDED:
            yield line_mortar(ask, line)
        case _ as unreachable:
            assert_never(unreachable)
    yield from hip_irons(ask, line, over.made)


def _says(over: _Over) -> Iterator[str]:
    line = over.line
    yield from hip_irons_say(over.ask, line, over.made)
    yield f"Run a batten along under the {over.called}s, high enough for their fixings to reach it by their full length."
    match over.made:
        case RidgeMade.DRY:
            yield "Roll the seal out along the line and press it down into every trough, as its maker says."
        case RidgeMade.BEDDED:
            yield "Bed the units on both sides, and solid at each joint."
            yield mortar_says(over.ask.edition)
        case _ as unreachable:
            assert_never(unreachable)
    yield from _units_say(over)
    if over.made is RidgeMade.DRY:
        yield "Dry kits are tested to BS 8612: keep the parts of one kit together."


def _units_say(over: _Over) -> Iterator[str]:
    if over.unit is None or over.run is None:
        yield f"{mm(over.line.laid_mm)} long. How many {over.called}s it takes is not counted: the unit is not given."
        return
    yield f"Lay {_run_said(over.run)} along {mm(over.line.laid_mm)}."
    if over.run.cut_mm:
        yield _where_cut_ones_go(over.line, over.run)
        yield "Cut with water or extraction, and wear a mask: the dust is silica."
    if over.run.lap_mm and over.line.kind is not LineKind.HIP:
        yield f"The last one reaches {mm(over.run.lap_mm)} past the end, where none laps on it: trim it to the line."
    if over.unit.fixings_count:
        cut_too = ", cut ones too," if over.run.cut_mm else ""
        yield f"Fix each unit{cut_too} with {counted(over.unit.fixings_count, 'fixing')}."


def _where_cut_ones_go(line: EdgeLine, run: UnitRun) -> str:
    """Up a hip the cut ones come last but one; along a ridge between whole ones, where there is one for each end."""
    if line.kind is LineKind.HIP:
        if run.whole_count == 0:
            return "There is no whole one: lay what there is with its cut end up, under what covers the top of the hip."
        return "Start with a whole one at the foot; the cut ones come below the last at the top."
    if run.whole_count < _BOTH_ENDS:
        return "There is no whole one for each end: let a cut one end away from a gable, if there is such an end."
    return "Keep the cut ones away from the ends, and never at a gable."


def _run_said(run: UnitRun) -> str:
    whole = counted(run.whole_count, "whole unit")
    if not run.cut_mm:
        return whole
    each = " each" if len(run.cut_mm) > 1 else ""
    cut = f"{len(run.cut_mm)} cut {mm(run.cut_long_mm[0])} long{each}"
    if run.lap_mm:
        cut += f", to cover {mm(run.cut_mm[0])} and lap {mm(run.lap_mm)}"
    return f"{whole} and {cut}" if run.whole_count else f"no whole unit and {cut}"


def _findings(over: _Over) -> Iterator[Finding]:
    where, edition = over.line.name, over.ask.edition
    if over.unit is None or over.run is None:
        yield not_covered(
            rule=f"{over.called}s",
            where=where,
            proposed=None,
            unit="mm",
            citation=edge_figure(edition, EdgeFigure.LINE_UNIT_CUT_LEAST).citation,
            says=f"The {over.called} is not known, so none are counted over {mm(over.line.laid_mm)}. Measure one, its length "
            f"and what it gains along the line, and give it in {over.table}.",
            leaves_out=True,
        )
        return
    if over.run.cut_mm:
        yield unit_cut(where=where, cut_mm=min(over.run.cut_mm), cover_mm=over.run.cover_mm, edition=edition)
        if over.line.kind is not LineKind.HIP:
            yield cuts_off_the_gable(where=where, whole_count=over.run.whole_count, edition=edition)
    yield unit_fixings(where=where, fixings_count=over.unit.fixings_count, edition=edition)


def _working(over: _Over) -> Step:
    length = laid_length(over.line)
    if over.run is None:
        return length
    return Step(
        name=f"{over.line.name}: {over.called}s",
        formula="length ÷ cover, whole units, and what is left over as one cut unit or two, none under half a unit",
        inputs={
            "length (mm)": over.run.length_mm,
            "cover (mm)": over.run.cover_mm,
            "whole": counted(over.run.whole_count, "unit"),
            "cut": ", ".join(mm(cut) for cut in over.run.cut_mm) or "none",
        },
        value=float(over.run.units_count),
        unit="count",
        citation=edge_figure(over.ask.edition, EdgeFigure.LINE_UNIT_CUT_LEAST).citation,
        parts=(length,),
    )
