"""The perps across one slope: bond, cover inside the shunt, ends inside their bands, and no sliver that can be helped.

The search itself is in ``cover_search``: exact, over the break points where a piece becomes whole, half or nothing.
Where the top line differs from the eaves, ``top_line`` fans the perps or has the raking side cut.
"""

from collections.abc import Iterator

from gaugerod.basis.errors import NothingToSetOut
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import Across, AcrossAsk, CourseEnd, EndPiece, UpperReach
from gaugerod.setting_out.across_alternatives import Tried, across_alternatives
from gaugerod.setting_out.across_edges import edges_at_eaves
from gaugerod.setting_out.across_faults import refuse_faults
from gaugerod.setting_out.across_findings import across_findings
from gaugerod.setting_out.across_working import across_why, across_working
from gaugerod.setting_out.cover_search import Layout, Shunt, best_layout
from gaugerod.setting_out.end_pieces import Stop, end_pieces, endings_of, least_cut_mm, piece_alone
from gaugerod.setting_out.perps import perp_line, units_count
from gaugerod.setting_out.stretches import one_unit_stretches
from gaugerod.setting_out.top_line import top_line


def set_out_across(ask: AcrossAsk) -> Across:
    """The perps, with every end piece, and how they came about.

    Raises InputRefused with every fault of the ask, and NothingToSetOut where the slope is narrower than one unit.

    Source: work width with both overhangs, open or close the shunt, then cut, never under half a unit (published: a
    trade article by a warranty author); mid-shunt as the aim (published: an independent consultant's trade article).
    Scope: units of one cover width in courses parallel to the eaves.
    """
    refuse_faults(ask)
    _refuse_too_narrow(ask)
    eaves, shunt = _eaves_layout(ask), _shunt(ask)
    top = top_line(ask, eaves, shunt=shunt)
    lines = [perp_line(ask, eaves, line="eaves", left_mm=0.0, right_mm=ask.eaves_width_mm)]
    if top is not None:
        lines.append(perp_line(ask, top.layout, line="top", left_mm=ask.top_left_mm, right_mm=ask.top_right_mm))
    pieces = _pieces(ask, eaves)
    reaches = tuple(_upper_reaches(ask, eaves))
    fanned_pieces = tuple(_pieces_by_perps(ask, top.layout)) if top is not None and top.fanned else ()
    return Across(
        units_count=units_count(eaves),
        bond=ask.bond,
        cover_mm=eaves.cover_mm,
        left_overhang_mm=lines[0].left_reach_mm,
        right_overhang_mm=lines[0].right_reach_mm,
        perps_every_count=ask.perps_every_count,
        perp_lines=tuple(lines),
        pieces=pieces,
        least_piece_mm=least_cut_mm(pieces),
        fanned=top is not None and top.fanned,
        why=across_why(ask, eaves, pieces, top=top),
        findings=tuple(across_findings(ask, lines, upper=reaches, pieces=pieces, pieces_at_top=fanned_pieces, top=top)),
        alternatives=across_alternatives(ask, now=_tried(ask, eaves), pieces=pieces, again=_try),
        working=across_working(ask, eaves),
        upper=reaches,
    )


def _eaves_layout(ask: AcrossAsk) -> Layout:
    """The best layout along the eaves."""
    edges = edges_at_eaves(ask)
    endings = [
        endings_of(edge, bond=ask.bond, half_unit=ask.half_unit, unit_and_a_half=ask.unit_and_a_half) for edge in edges
    ]
    return best_layout(edges, endings=endings, shunt=_shunt(ask))


def _shunt(ask: AcrossAsk) -> Shunt:
    return Shunt(
        closed_mm=ask.cover_closed_mm,
        open_mm=ask.cover_open_mm,
        wished_mm=(ask.cover_closed_mm + ask.cover_open_mm) / 2,
        unit_width_mm=ask.unit_width_mm,
    )


def _refuse_too_narrow(ask: AcrossAsk) -> None:
    reached_mm = ask.eaves_width_mm + ask.left.reach.greatest_mm + ask.right.reach.greatest_mm
    if reached_mm < ask.unit_width_mm:
        raise NothingToSetOut(
            f"{ask.where}: the eaves with both overhangs is {reached_mm:.0f} mm, narrower than one unit of "
            f"{ask.unit_width_mm:.0f} mm. There are no perps to set out: cut each unit to the width."
        )


def _upper_reaches(ask: AcrossAsk, layout: Layout) -> Iterator[UpperReach]:
    """The upper edges stand next after the two sides."""
    for edge, end_mm in zip(ask.upper, layout.ends_mm[2:], strict=False):
        past_mm = edge.at_mm - end_mm if edge.end is CourseEnd.LEFT else end_mm - edge.at_mm
        yield UpperReach(edge=edge, overhang_mm=past_mm)


def _pieces(ask: AcrossAsk, layout: Layout) -> tuple[EndPiece, ...]:
    """The end pieces of every kind of course, at both sides and beside the openings; hips and valleys have none."""
    return (*_pieces_by_perps(ask, layout), *_pieces_alone(ask, layout))


def _pieces_by_perps(ask: AcrossAsk, layout: Layout) -> Iterator[EndPiece]:
    for step, row_0_mm in zip(layout.placed, layout.pieces_mm(ask.unit_width_mm), strict=True):
        if step.edge.stop is not Stop.FREE:
            yield from end_pieces(
                step.edge,
                row_0_mm=row_0_mm,
                cover_mm=layout.cover_mm,
                unit_width_mm=ask.unit_width_mm,
                bond=ask.bond,
                half_unit=ask.half_unit,
                large=ask.unit_and_a_half and step.edge.roomy,
            )


def _pieces_alone(ask: AcrossAsk, layout: Layout) -> Iterator[EndPiece]:
    """The one unit in each course of a stretch that is narrower than a unit."""
    for stretch in one_unit_stretches(ask):
        if stretch.beside is ask.left:
            beside_mm = stretch.at_mm - layout.ends_mm[0]
        elif stretch.beside is ask.right:
            beside_mm = layout.ends_mm[1] - stretch.at_mm
        else:
            beside_mm = stretch.run_mm + sum(
                above.overhang_mm for above in _upper_reaches(ask, layout) if above.edge.side is stretch.beside
            )
        for bond_row in range(1 if ask.bond is Bond.STRAIGHT else 2):
            yield from piece_alone(
                at=f"{stretch.at} to {stretch.beside_name}",
                bond_row=bond_row,
                width_mm=beside_mm,
                unit_width_mm=ask.unit_width_mm,
            )


def _try(ask: AcrossAsk) -> Tried:
    """Another ask, set out along the eaves: for weighing alternatives."""
    return _tried(ask, _eaves_layout(ask))


def _tried(ask: AcrossAsk, layout: Layout) -> Tried:
    return Tried(pieces=_pieces(ask, layout), units_count=units_count(layout), cover_mm=layout.cover_mm)
