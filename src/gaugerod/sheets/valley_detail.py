"""A valley in section, square to it: boards, lining to its welts, and the cut units either side of the clear width."""

from gaugerod.basis.lengths import write_length
from gaugerod.edges.answer import LeadUse, MadeEdge
from gaugerod.edges.wished import ValleyMade
from gaugerod.geometry.pitch import cos_deg, sin_deg
from gaugerod.job.result import Result
from gaugerod.sheets.drawing import Path, Pen, Point
from gaugerod.sheets.edge_detail import Detail, Measure, closed, line
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.line_details import roof_line
from gaugerod.standards.battens import BattenFigure, batten_figure
from gaugerod.standards.valleys import ValleyFigure, valley_figure

_SHOWN_MM, _RAFTER_MM, _BATTEN_DEEP_MM, _THICK_MM = 330.0, 60.0, 25.0, 16.0


def valley_detail(result: Result, edge: MadeEdge) -> Detail | None:
    """One valley. None where the angle between its slopes, or its clear width, is not known."""
    found, wished = roof_line(result, edge), result.job.edges.valley
    if found is None or wished is None or edge.clear_mm is None:
        return None
    edition, unit = result.job.edition, result.job.show_lengths_in
    welt_mm = batten_figure(edition, BattenFigure.VALLEY_WELT_FROM_LINE).value
    board = valley_figure(edition, ValleyFigure.BOARD_THICKNESS)
    half_mm = edge.clear_mm / 2
    paths: list[Path] = []
    for sign, rise_deg in ((1.0, found.backing_left_deg), (-1.0, found.backing_right_deg)):
        paths += _one_side(sign, rise_deg, half_mm=half_mm, welt_mm=welt_mm, board_mm=board.value)
    paths += _lining(found.backing_left_deg, found.backing_right_deg, welt_mm=welt_mm, board_mm=board.value)
    across_mm = board.value + _BATTEN_DEEP_MM + _THICK_MM + 18.0
    left = _at(-1.0, found.backing_right_deg, half_mm, across_mm)
    right = _at(1.0, found.backing_left_deg, half_mm, across_mm)
    lining = next((pieces for pieces in edge.lead if pieces.use is LeadUse.VALLEY_LINING), None)
    measures = [
        Measure(from_mm=left, to_mm=right, name="clear", value=write_length(edge.clear_mm, unit)),
        Measure(
            from_mm=_at(1.0, found.backing_left_deg, 0.0, board.value + 4.0),
            to_mm=_at(1.0, found.backing_left_deg, welt_mm, board.value + 4.0),
            name="line to welt",
            value=fine_length(welt_mm, unit),
        ),
        Measure(
            from_mm=(0.0, -_RAFTER_MM),
            to_mm=(0.0, -_RAFTER_MM),
            name="between the slopes",
            value=f"{found.dihedral_deg:.1f}°",
        ),
    ]
    if lining is not None:
        at = _at(-1.0, found.backing_right_deg, 60.0, board.value)
        measures.append(
            Measure(
                from_mm=at,
                to_mm=at,
                name="lead lining, flat",
                value=f"code {lining.code}, {fine_length(lining.width_mm, unit)}",
                left=True,
            )
        )
    elif wished.made is ValleyMade.LINER:
        at = _at(-1.0, found.backing_right_deg, 60.0, board.value)
        measures.append(Measure(from_mm=at, to_mm=at, name="preformed liner", value="", left=True))
    at = _at(-1.0, found.backing_right_deg, 200.0, board.value / 2)
    measures.append(Measure(from_mm=at, to_mm=at, name="boards", value=fine_length(board.value, unit), left=True))
    return Detail(
        title=f"{edge.name} in section, square to the valley",
        paths=tuple(paths),
        measures=tuple(measures),
        only_drawn="rafters, battens, thickness of the covering",
    )


def _at(sign: float, rise_deg: float, s_mm: float, n_mm: float) -> Point:
    """A point on a slope that rises away from the valley: along it, and square off it."""
    x, y = s_mm * cos_deg(rise_deg) - n_mm * sin_deg(rise_deg), s_mm * sin_deg(rise_deg) + n_mm * cos_deg(rise_deg)
    return (sign * x, y)


def _block(sign: float, rise_deg: float, s_mm: tuple[float, float], n_mm: tuple[float, float]) -> tuple[Point, ...]:
    (from_mm, to_mm), (low_mm, high_mm) = s_mm, n_mm
    return tuple(
        _at(sign, rise_deg, s, n) for s, n in ((from_mm, low_mm), (to_mm, low_mm), (to_mm, high_mm), (from_mm, high_mm))
    )


def _one_side(sign: float, rise_deg: float, *, half_mm: float, welt_mm: float, board_mm: float) -> list[Path]:
    top_mm = board_mm + _BATTEN_DEEP_MM
    return [
        closed(Pen.TIMBER, _block(sign, rise_deg, (0.0, _SHOWN_MM), (-_RAFTER_MM, 0.0))),
        closed(Pen.TIMBER, _block(sign, rise_deg, (0.0, welt_mm + 60.0), (0.0, board_mm))),
        closed(Pen.SECTION_BATTEN, _block(sign, rise_deg, (welt_mm + 10.0, _SHOWN_MM), (board_mm, top_mm))),
        closed(Pen.UNIT, _block(sign, rise_deg, (half_mm, _SHOWN_MM), (top_mm, top_mm + _THICK_MM))),
    ]


def _lining(left_deg: float, right_deg: float, *, welt_mm: float, board_mm: float) -> list[Path]:
    """From welt to welt through the line, each welt turned back."""
    over_mm = board_mm + 2.0
    run = (
        _at(-1.0, right_deg, welt_mm - 25.0, over_mm + 10.0),
        _at(-1.0, right_deg, welt_mm, over_mm + 6.0),
        _at(-1.0, right_deg, welt_mm, over_mm),
        (0.0, over_mm),
        _at(1.0, left_deg, welt_mm, over_mm),
        _at(1.0, left_deg, welt_mm, over_mm + 6.0),
        _at(1.0, left_deg, welt_mm - 25.0, over_mm + 10.0),
    )
    return [line(Pen.CUT, run)]
