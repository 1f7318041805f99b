"""A valley in section, square to it and seen from its foot: boards, lining, and the cut units either side of the line."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from gaugerod.basis.lengths import write_length
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.wished import ValleyMade, ValleyWished
from gaugerod.geometry.roof_faces import RoofLine
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.edge_detail import GIVEN, SET_OUT, Detail, Leaf, Measure, closed, line, pointing
from gaugerod.sheets.hip_detail import roof_line
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.edition import Edition
from gaugerod.standards.valleys import ValleyFigure, valley_figure

_PAST_MM, _RAFTER_MM, _BATTEN_MM, _THICK_MM = 70.0, 60.0, 25.0, 16.0
_RISE_MM = 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Valley:
    """Lengths along each slope from plumb over the line, each in the plane of what it is measured on: lining or covering.

    ``board_mm`` high; nothing where it has none.
    """

    made: ValleyMade
    left: Leaf
    right: Leaf
    half_mm: float
    welt_mm: float
    batten_mm: float
    board_end_mm: float
    board_mm: float

    @property
    def under_covering_mm(self) -> float:
        """The underside of the covering."""
        return self.board_mm + _BATTEN_MM

    @property
    def shown_mm(self) -> float:
        """How far up each slope is shown."""
        return max(self.board_end_mm, self.half_mm) + _PAST_MM


def valley_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One valley. None where the angle between its slopes, or its clear width, is not known."""
    found, wished = roof_line(result, edge), result.job.edges.valley
    if found is None or wished is None or edge.clear_mm is None:
        return None
    lining = next((pieces for pieces in edge.lead if pieces.use is LeadUse.VALLEY_LINING), None)
    valley = _valley(found, wished, clear_mm=edge.clear_mm, lining=lining, edition=result.job.edition)
    measures = [
        *_across_said(valley, result, edge),
        pointing((0.0, -_RAFTER_MM), "between the slopes", f"{found.dihedral_deg:.1f}°", source=SET_OUT),
        *_lined_said(valley, result, lining),
    ]
    drawn = "rafters, battens, thickness of the covering"
    match wished.made:
        case ValleyMade.LEAD:
            if lining is None:
                drawn += ", the lining, of which none was counted"
        case ValleyMade.LINER:
            drawn += ", shape of the liner, what it lies on, where the battens end"
        case ValleyMade.VALLEY_TILES:
            drawn += ", shape of the valley tile, where the battens end"
        case _ as unreachable:
            assert_never(unreachable)
    return Detail(
        title=f"{edge.name} in section, square to the valley",
        paths=tuple(_paths(valley)),
        measures=tuple(measures),
        only_drawn=drawn,
    )


def _valley(
    found: RoofLine, wished: ValleyWished, *, clear_mm: float, lining: LeadPieces | None, edition: Edition
) -> _Valley:
    """The lining reaches as far up each side as its own width flat gives, its welts turned back."""
    welt_mm = batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE).value
    turned_mm = valley_figure(edition, ValleyFigure.WELT).value
    if lining is not None:
        welt_mm = lining.width_mm / 2 - turned_mm
    elif wished.girth_mm is not None:
        welt_mm = wished.girth_mm / 2
    on_boards = wished.made is ValleyMade.LEAD
    batten_mm = welt_mm + batten_figure(edition, BattenFigure.VALLEY_STOP_FROM_WELT).value
    if wished.made is ValleyMade.VALLEY_TILES:
        welt_mm, batten_mm = clear_mm / 2 + 60.0, clear_mm / 2 + 70.0
    return _Valley(
        made=wished.made,
        left=Leaf(rise_deg=found.backing_left_deg, left=True),
        right=Leaf(rise_deg=found.backing_right_deg),
        half_mm=clear_mm / 2,
        welt_mm=welt_mm,
        batten_mm=batten_mm,
        board_end_mm=batten_mm + valley_figure(edition, ValleyFigure.BOARD_UNDER_BATTENS).value,
        board_mm=valley_figure(edition, ValleyFigure.BOARD_THICKNESS).value if on_boards else 0.0,
    )


def _paths(valley: _Valley) -> Iterator[Path]:
    for leaf in (valley.left, valley.right):
        yield closed(Pen.TIMBER, leaf.plumb_cut(to_mm=valley.shown_mm, low_mm=-_RAFTER_MM, high_mm=0.0))
        if valley.board_mm:
            yield closed(Pen.TIMBER, _boards(leaf, valley))
        top_mm = valley.under_covering_mm
        yield closed(Pen.SECTION_BATTEN, _layer(leaf, valley.batten_mm, valley.shown_mm, valley.board_mm, top_mm))
        yield closed(Pen.UNIT, _layer(leaf, valley.half_mm, valley.shown_mm, top_mm, top_mm + _THICK_MM))
    yield _lining(valley)


def _boards(leaf: Leaf, valley: _Valley) -> tuple[Point, ...]:
    """A board to the line, cut plumb at both its ends."""
    return (
        (0.0, 0.0),
        leaf.from_line(valley.board_end_mm, 0.0),
        leaf.from_line(valley.board_end_mm, valley.board_mm),
        (0.0, leaf.plumb_mm(valley.board_mm)),
    )


def _layer(leaf: Leaf, from_mm: float, to_mm: float, low_mm: float, high_mm: float) -> tuple[Point, ...]:
    """A layer whose lower face begins so far from the line; its end is square."""
    start = leaf.from_line(from_mm, low_mm)
    square_x_mm, square_y_mm = leaf.at(0.0, high_mm - low_mm)
    up = (start[0] + square_x_mm, start[1] + square_y_mm)
    return (start, leaf.from_line(to_mm, low_mm), leaf.from_line(to_mm, high_mm), up)


def _lining(valley: _Valley) -> Path:
    """From welt to welt through the line; a liner upturned, a valley tile as thick as the covering."""
    left, right, welt_mm, over_mm = valley.left, valley.right, valley.welt_mm, valley.board_mm + 2.0
    if valley.made is ValleyMade.VALLEY_TILES:
        low_mm, high_mm = valley.under_covering_mm - _THICK_MM, valley.under_covering_mm
        return closed(
            Pen.UNIT,
            (
                left.from_line(welt_mm, high_mm),
                left.from_line(welt_mm, low_mm),
                (0.0, max(left.plumb_mm(low_mm), right.plumb_mm(low_mm))),
                right.from_line(welt_mm, low_mm),
                right.from_line(welt_mm, high_mm),
                (0.0, max(left.plumb_mm(high_mm), right.plumb_mm(high_mm))),
            ),
        )
    middle = (0.0, max(left.plumb_mm(over_mm), right.plumb_mm(over_mm)))
    back_mm = 25.0 if valley.made is ValleyMade.LEAD else 0.0
    ends = [
        (
            leaf.from_line(welt_mm - back_mm, over_mm + _RISE_MM + 4.0),
            leaf.from_line(welt_mm, over_mm + _RISE_MM),
            leaf.from_line(welt_mm, over_mm),
        )
        for leaf in (left, right)
    ]
    return line(Pen.CUT, (*ends[0], middle, *reversed(ends[1])))


def _across_said(valley: _Valley, result: Result, edge: MadeEdge) -> Iterator[Measure]:
    """The line to the cut edge, on the slope, as it is chalked; both sides together are the clear width."""
    unit, edition, wished = result.job.show_lengths_in, result.job.edition, result.job.edges.valley
    if edge.clear_mm is None or wished is None:
        return
    usual = valley_figure(edition, ValleyFigure.CLEAR_USUAL)
    source = GIVEN
    if wished.clear_mm is None:
        by_rule = "the least by rule: see the findings"
        source = str(usual.citation) if edge.clear_mm == usual.value else by_rule
    high_mm = valley.under_covering_mm + _THICK_MM
    yield Measure(
        from_mm=valley.right.from_line(0.0, high_mm + 18.0),
        to_mm=valley.right.from_line(valley.half_mm, high_mm + 18.0),
        name="line to cut edge, on the slope",
        value=fine_length(valley.half_mm, unit),
        source=source,
    )
    at = (0.0, max(leaf.plumb_mm(valley.board_mm) for leaf in (valley.left, valley.right)))
    yield pointing(at, "clear, both sides together", write_length(edge.clear_mm, unit), source=source, left=True)


def _lined_said(valley: _Valley, result: Result, lining: LeadPieces | None) -> Iterator[Measure]:
    edition, unit = result.job.edition, result.job.show_lengths_in
    on = valley.left.from_line((valley.half_mm + valley.welt_mm) / 2, valley.board_mm)
    match valley.made:
        case ValleyMade.LEAD:
            board, under = (
                valley_figure(edition, which)
                for which in (ValleyFigure.BOARD_THICKNESS, ValleyFigure.BOARD_UNDER_BATTENS)
            )
            welt = batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE)
            yield Measure(
                from_mm=valley.right.from_line(0.0, -12.0),
                to_mm=valley.right.from_line(valley.welt_mm, -12.0),
                name="line to welt",
                value=fine_length(valley.welt_mm, unit),
                source=str(welt.citation) if valley.welt_mm == welt.value else GIVEN,
            )
            yield Measure(
                from_mm=valley.left.from_line(valley.batten_mm, -12.0),
                to_mm=valley.left.from_line(valley.board_end_mm, -12.0),
                name="board under batten ends",
                value=f"{fine_length(under.value, unit)} or more",
                source=str(under.citation),
                left=True,
            )
            thick = fine_length(board.value, unit)
            yield pointing(
                valley.left.from_line(30.0, valley.board_mm / 2), "boards", thick, source=str(board.citation), left=True
            )
            if lining is not None:
                said = f"code {lining.code}, {fine_length(lining.width_mm, unit)}"
                yield pointing(on, "lead lining, flat", said, source=SET_OUT, left=True)
        case ValleyMade.LINER:
            yield pointing(on, "preformed liner", left=True)
        case ValleyMade.VALLEY_TILES:
            yield pointing(
                valley.left.from_line(30.0, valley.under_covering_mm), "valley tile", "one to a course", left=True
            )
        case _ as unreachable:
            assert_never(unreachable)
