"""The perps across one slope: bond, cover inside the shunt, ends inside their bands, and no sliver that can be helped.

The search itself is in ``cover_search``: exact, over the break points where a piece becomes whole, half or nothing.
Where the top line differs from the eaves, the same units are first spread over it with a cover of its own inside
the shunt (fanned); where that cannot be, the perps stay parallel and the raking side is cut.
"""

from dataclasses import dataclass

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.across import Across, AcrossAsk, EndPiece, Fit
from gaugerod.setting_out.across_alternatives import across_alternatives
from gaugerod.setting_out.across_edges import edges_at_eaves, edges_at_top
from gaugerod.setting_out.across_faults import refuse_faults
from gaugerod.setting_out.across_findings import across_findings
from gaugerod.setting_out.across_working import across_why, across_working
from gaugerod.setting_out.cover_search import Layout, Placed, Shunt, best_layout, room_with, settled
from gaugerod.setting_out.end_pieces import Stop, end_pieces, endings_of
from gaugerod.setting_out.perp_room import Room
from gaugerod.setting_out.perps import perp_line, units_count


def set_out_across(ask: AcrossAsk) -> Across:
    """The perps, with every end piece, and how they came about.

    Raises InputRefused with every fault of the ask, and NothingToSetOut where the slope is narrower than one unit.

    Source: work width with both overhangs, open or close the shunt, then cut, never under half a unit (published: a
    trade article by a warranty author); mid-shunt as the aim (published: an independent consultant's trade article).
    Scope: units of one cover width in courses parallel to the eaves.
    """
    refuse_faults(ask)
    _refuse_too_narrow(ask)
    return _answer(ask, eaves_layout(ask))


def eaves_layout(ask: AcrossAsk) -> Layout:
    """The best layout along the eaves."""
    edges = edges_at_eaves(ask)
    endings = [
        endings_of(edge, bond=ask.bond, half_unit=ask.half_unit, unit_and_a_half=ask.unit_and_a_half) for edge in edges
    ]
    return best_layout(edges, endings=endings, shunt=_shunt(ask))[1]


def _shunt(ask: AcrossAsk) -> Shunt:
    return Shunt(
        closed_mm=ask.cover_closed_mm,
        open_mm=ask.cover_open_mm,
        wished_mm=(ask.cover_closed_mm + ask.cover_open_mm) / 2,
        unit_width_mm=ask.unit_width_mm,
    )


def _refuse_too_narrow(ask: AcrossAsk) -> None:
    for line, width_mm in (("eaves", ask.eaves_width_mm), ("top line", ask.top_right_mm - ask.top_left_mm)):
        reached_mm = width_mm + ask.left.reach.greatest_mm + ask.right.reach.greatest_mm
        if reached_mm < ask.unit_width_mm:
            raise NothingToSetOut(
                f"{ask.where}: the {line} with both overhangs is {reached_mm:.0f} mm, narrower than one unit of "
                f"{ask.unit_width_mm:.0f} mm. There are no perps to set out: cut each unit to the width."
            )


@dataclass(frozen=True, slots=True)
class _TopLine:
    """The perps along the top: the layout there, and whether the same units fan out over it."""

    layout: Layout
    fanned: bool


def _top_line(ask: AcrossAsk, eaves: Layout) -> _TopLine | None:
    """None when the top is as wide as the eaves and above it: one line serves both."""
    left_mm, right_mm = ask.top_left_mm, ask.top_right_mm
    if -TOUCH <= left_mm <= TOUCH and -TOUCH <= right_mm - ask.eaves_width_mm <= TOUCH:
        return None
    room: Room | None = Room(ask.cover_closed_mm, ask.cover_open_mm)
    placed = tuple(
        Placed(edge=edge, ending=at_eaves.ending, perp_count=at_eaves.perp_count)
        for edge, at_eaves in zip(edges_at_top(ask), eaves.placed[:2], strict=True)
    )
    for step in placed:
        room = None if room is None else room_with(room, step, unit_width_mm=ask.unit_width_mm)
    if room is not None:
        return _TopLine(settled(placed, room=room, shunt=_shunt(ask), narrow_mm=eaves.narrow_mm), fanned=True)
    raked = Layout(
        placed=placed,
        first_perp_mm=eaves.first_perp_mm,
        cover_mm=eaves.cover_mm,
        ends_mm=tuple(step.edge.aim_mm for step in placed),
        narrow_mm=None,
    )
    return _TopLine(raked, fanned=False)


def _answer(ask: AcrossAsk, eaves: Layout) -> Across:
    top = _top_line(ask, eaves)
    lines = [perp_line(ask, eaves, line="eaves", left_mm=0.0, right_mm=ask.eaves_width_mm)]
    if top is not None:
        lines.append(perp_line(ask, top.layout, line="top", left_mm=ask.top_left_mm, right_mm=ask.top_right_mm))
    pieces = pieces_of(ask, eaves)
    cut_mm = [piece.cover_mm for piece in pieces if piece.fit in {Fit.CUT, Fit.HIGH_POINT}]
    least_piece_mm = min(cut_mm, default=None)
    fanned = top is not None and top.fanned
    raked = top is not None and not top.fanned
    return Across(
        units_count=units_count(eaves),
        bond=ask.bond,
        cover_mm=eaves.cover_mm,
        left_overhang_mm=lines[0].left_reach_mm,
        right_overhang_mm=lines[0].right_reach_mm,
        perps_every_count=ask.perps_every_count,
        perp_lines=tuple(lines),
        pieces=pieces,
        least_piece_mm=least_piece_mm,
        fanned=fanned,
        why=across_why(ask, eaves, pieces, fanned=fanned, raked=raked),
        findings=tuple(across_findings(ask, lines, pieces, least_piece_mm=least_piece_mm, raked=raked)),
        alternatives=across_alternatives(ask, least_piece_mm=least_piece_mm, pieces=pieces, again=_least_piece_mm),
        working=across_working(ask, eaves),
    )


def pieces_of(ask: AcrossAsk, layout: Layout) -> tuple[EndPiece, ...]:
    """The end pieces of every kind of course, at both sides and beside the openings; hips and valleys have none."""
    pieces: list[EndPiece] = []
    for step, row_0_mm in zip(layout.placed, layout.pieces_mm(ask.unit_width_mm), strict=True):
        if step.edge.stop is Stop.FREE:
            continue
        pieces.extend(
            end_pieces(
                step.edge,
                row_0_mm=row_0_mm,
                cover_mm=layout.cover_mm,
                unit_width_mm=ask.unit_width_mm,
                bond=ask.bond,
                half_unit=ask.half_unit,
                large=ask.unit_and_a_half and step.edge.roomy,
            )
        )
    return tuple(pieces)


def _least_piece_mm(ask: AcrossAsk) -> float | None:
    """The least cut piece another ask would leave: for weighing alternatives."""
    pieces = pieces_of(ask, eaves_layout(ask))
    return min((piece.cover_mm for piece in pieces if piece.fit in {Fit.CUT, Fit.HIGH_POINT}), default=None)
