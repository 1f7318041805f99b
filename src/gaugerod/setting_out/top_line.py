"""The perps along the top, where it is not as wide as the eaves or not square above them.

First the same units are spread over the top line, with a cover of their own inside the shunt: the perps fan. Every
end must then keep at the top what it keeps at the eaves; between the two lines it keeps it too, since perps and sides
are straight and the conditions are. Where that cannot be, or the perps would lean more than the shunt could give
over the course, they stay square to the eaves, and the side that rakes is cut.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import inf

from gaugerod.basis.finding import TOUCH
from gaugerod.setting_out.across import AcrossAsk, CourseEnd
from gaugerod.setting_out.across_edges import side_edges
from gaugerod.setting_out.cover_search import Layout, Placed, Shunt, room_with, settled
from gaugerod.setting_out.end_pieces import Ending, Stop, Width, row_covers_mm
from gaugerod.setting_out.perp_room import Room

ANYWHERE = Ending(at_least=(Width(0.0, -inf),), at_most=(Width(0.0, inf),))


@dataclass(frozen=True, slots=True, kw_only=True)
class RakingSide:
    """A side cut to the rake, and the narrowest and widest piece along it."""

    name: str
    narrowest_mm: float
    widest_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TopLine:
    """The perps along the top. ``lean_mm``: how far the perp that leans most is from square; 0 when not fanned."""

    layout: Layout
    fanned: bool
    lean_mm: float
    raking: tuple[RakingSide, ...]


def top_line(ask: AcrossAsk, eaves: Layout, *, shunt: Shunt) -> TopLine | None:
    """The perps along the top; None when one line serves both, or the slope comes to a point."""
    left_mm, right_mm = ask.top_left_mm, ask.top_right_mm
    true = -TOUCH <= left_mm <= TOUCH and -TOUCH <= right_mm - ask.eaves_width_mm <= TOUCH
    if true or right_mm - left_mm <= TOUCH:
        return None
    out_of_true = [
        (step, into_mm)
        for step, into_mm in zip(eaves.placed, (left_mm, ask.eaves_width_mm - right_mm), strict=False)
        if step.edge.stop is not Stop.FREE and not -TOUCH <= into_mm <= TOUCH
    ]
    fan = _fan(ask, eaves, shunt=shunt) if out_of_true else None
    if fan is not None:
        return fan
    edges = side_edges(ask, left_mm=left_mm, right_mm=right_mm)
    reaches_mm = _reaches_mm(eaves, left_mm=0.0, right_mm=ask.eaves_width_mm)
    square = replace(
        eaves,
        placed=tuple(Placed(edge=edge, ending=ANYWHERE, perp_count=0) for edge in edges),
        ends_mm=(left_mm - reaches_mm[0], right_mm + reaches_mm[1]),
    )
    raking = tuple(_raking(ask, eaves, step, into_mm) for step, into_mm in out_of_true)
    return TopLine(layout=square, fanned=False, lean_mm=0.0, raking=raking)


def _reaches_mm(layout: Layout, *, left_mm: float, right_mm: float) -> tuple[float, float]:
    return left_mm - layout.ends_mm[0], layout.ends_mm[1] - right_mm


def _fan(ask: AcrossAsk, eaves: Layout, *, shunt: Shunt) -> TopLine | None:
    """The same units over the top line, the reaches as at the eaves if they can be, else inside their bands."""
    units = eaves.placed[1].perp_count
    for kept in (True, False):
        placed = tuple(_at_top(ask, eaves, reaches_kept=kept))
        room: Room | None = Room(shunt.closed_mm, shunt.open_mm)
        for step in placed:
            if room is not None and step.edge.stop is not Stop.FREE:
                room = room_with(room, step, unit_width_mm=shunt.unit_width_mm)
        if room is None:
            continue
        layout = settled(
            placed,
            room=room,
            shunt=replace(shunt, wished_mm=eaves.cover_mm),
            narrow_mm=eaves.narrow_mm,
            first_perp_wished_mm=eaves.first_perp_mm,
        )
        first_mm = layout.first_perp_mm - eaves.first_perp_mm
        last_mm = first_mm + units * (layout.cover_mm - eaves.cover_mm)
        lean_mm = max(first_mm, -first_mm, last_mm, -last_mm)
        if lean_mm <= units * (shunt.open_mm - shunt.closed_mm) / 2 + TOUCH:
            return TopLine(layout=layout, fanned=True, lean_mm=lean_mm, raking=())
    return None


def _at_top(ask: AcrossAsk, eaves: Layout, *, reaches_kept: bool) -> Iterator[Placed]:
    """The edges along the top, each with the ending and the perp it has at the eaves."""
    left_mm, right_mm = _reaches_mm(eaves, left_mm=0.0, right_mm=ask.eaves_width_mm)
    ends_mm = (ask.top_left_mm - left_mm, ask.top_right_mm + right_mm)
    sides = side_edges(ask, left_mm=ask.top_left_mm, right_mm=ask.top_right_mm)
    for step, edge, end_mm in zip(eaves.placed[:2], sides, ends_mm, strict=True):
        aimed = replace(edge, aim_mm=end_mm)
        if step.edge.stop is Stop.FREE:
            yield Placed(edge=aimed, ending=ANYWHERE, perp_count=step.perp_count)
        elif reaches_kept:
            fixed = replace(aimed, least_mm=end_mm, greatest_mm=end_mm)
            yield Placed(edge=fixed, ending=step.ending, perp_count=step.perp_count)
        else:
            yield Placed(edge=aimed, ending=step.ending, perp_count=step.perp_count)
    yield from eaves.placed[2:]


def _raking(ask: AcrossAsk, eaves: Layout, step: Placed, into_mm: float) -> RakingSide:
    """The pieces along a side that comes ``into_mm`` inwards from eaves to top (outwards when negative)."""
    at = 0 if step.edge.end is CourseEnd.LEFT else 1
    narrowest_mm, widest_mm = inf, 0.0
    row_0_mm = eaves.pieces_mm(ask.unit_width_mm)[at]
    for at_eaves_mm in row_covers_mm(row_0_mm, cover_mm=eaves.cover_mm, bond=ask.bond):
        at_top_mm = at_eaves_mm - into_mm
        ends_mm = (at_eaves_mm, at_top_mm) if 0 < at_top_mm <= eaves.cover_mm + TOUCH else (0.0, eaves.cover_mm)
        narrowest_mm, widest_mm = min(narrowest_mm, *ends_mm), max(widest_mm, *ends_mm)
    return RakingSide(name=step.edge.name, narrowest_mm=narrowest_mm, widest_mm=widest_mm)
