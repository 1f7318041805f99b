"""What the perps keep or break: cover inside the shunt, ends inside their bands, no piece too narrow, crowns at verges."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.citation import common_practice, house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import Bond
from gaugerod.rules.sides import abutment_set_back, verge_overhang
from gaugerod.setting_out.across import AcrossAsk, EndPiece, Fit, PerpLine, Side, SideKind
from gaugerod.setting_out.said import said

CROWN = common_practice(
    "a profiled tile finishes on a high point at a verge, so that water is thrown back onto the slope"
)
RAKING = house("pieces along a raking side run from nothing to a whole unit")


def across_findings(
    ask: AcrossAsk,
    lines: Sequence[PerpLine],
    pieces: Sequence[EndPiece],
    *,
    least_piece_mm: float | None,
    raked: bool,
) -> Iterator[Finding]:
    """Every finding on the perps."""
    for line in lines:
        yield from _cover(ask, line)
    for line in lines if not raked else lines[:1]:
        yield from _reach(f"{ask.where}, left, {line.line}", ask.left, line.left_reach_mm)
        yield from _reach(f"{ask.where}, right, {line.line}", ask.right, line.right_reach_mm)
    if least_piece_mm is not None:
        yield _least_piece(ask, pieces, lines[0].cover_mm, least_piece_mm)
    yield from _crowns(ask, pieces)
    if raked:
        yield _raking_side(ask)
    if len(lines) > 1 and not raked and ask.openings:
        yield _beside_openings(ask)


def _cover(ask: AcrossAsk, line: PerpLine) -> Iterator[Finding]:
    limits = ((ask.cover_closed_mm, Sense.AT_LEAST, "closed"), (ask.cover_open_mm, Sense.AT_MOST, "open"))
    for limit_mm, sense, word in limits:
        yield Finding(
            rule="cover width",
            where=f"{ask.where}, {line.line}",
            proposed=line.cover_mm,
            limit=limit_mm,
            unit="mm",
            sense=sense,
            citation=ask.cover_citation,
            says=f"Pushed up or pulled open, the unit covers {said(limit_mm, ask.division)} fully {word}.",
        )


def _reach(where: str, side: Side, reach_mm: float) -> tuple[Finding, ...]:
    match side.kind:
        case SideKind.VERGE:
            return verge_overhang(where=where, overhang_mm=reach_mm, band=side.reach)
        case SideKind.ABUTMENT:
            band = type(side.reach)(
                least_mm=-side.reach.greatest_mm, greatest_mm=-side.reach.least_mm, citation=side.reach.citation
            )
            return abutment_set_back(where=where, set_back_mm=-reach_mm, band=band)
        case SideKind.HIP | SideKind.VALLEY:
            return ()


def _least_piece(ask: AcrossAsk, pieces: Sequence[EndPiece], cover_mm: float, least_mm: float) -> Finding:
    limit_mm = ask.minimum_cut.value * cover_mm
    where = _where_cut(ask, pieces, least_mm)
    if least_mm >= limit_mm - TOUCH:
        says = f"The least cut piece covers {said(least_mm, ask.division)}, at {where}: half a unit or more."
    else:
        remedy = (
            "Cut it and its neighbour from one unit-and-a-half."
            if ask.unit_and_a_half
            else "Bond it to its neighbour and fix it mechanically, or use a wider unit if one is made."
        )
        says = (
            f"No arrangement avoids a piece under half a unit. The widest least piece covers "
            f"{said(least_mm, ask.division)}, at {where}. {remedy}"
        )
    return Finding(
        rule="least piece",
        where=ask.where,
        proposed=least_mm,
        limit=limit_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.minimum_cut.citation,
        says=says,
    )


def _where_cut(ask: AcrossAsk, pieces: Sequence[EndPiece], least_mm: float) -> str:
    found = [piece for piece in pieces if piece.fit is not Fit.WHOLE and piece.cover_mm <= least_mm + TOUCH]
    names = []
    for piece in found:
        rows = "" if ask.bond is Bond.STRAIGHT else (", odd courses" if piece.bond_row == 0 else ", even courses")
        names.append(f"{piece.at}{rows}")
    return "; ".join(dict.fromkeys(names))


def _crowns(ask: AcrossAsk, pieces: Sequence[EndPiece]) -> Iterator[Finding]:
    for name, side in (("left", ask.left), ("right", ask.right)):
        if not (side.high_point and side.kind is SideKind.VERGE and ask.high_points_mm):
            continue
        at_side = [piece for piece in pieces if piece.at == name]
        missed = sum(1 for piece in at_side if not _on_crown(ask, piece, name))
        yield Finding(
            rule="high point at the verge",
            where=f"{ask.where}, {name}",
            proposed=float(missed),
            limit=0.0,
            unit="courses in a pair" if len(at_side) > 1 else "of one course",
            sense=Sense.AT_MOST,
            citation=CROWN,
            says=(
                "The verge finishes on a crown of the profile."
                if not missed
                else "The verge falls in a channel of the profile: water runs over it. Change the verge overhang, or bed and "
                "point it up to the crown as the maker shows."
            ),
        )


def _on_crown(ask: AcrossAsk, piece: EndPiece, name: str) -> bool:
    """Does the edge of this piece lie on a crown? A whole unit's does when its own edge is one."""
    outer_mm = ask.unit_width_mm - piece.width_mm
    at_mm = outer_mm if name == "left" else piece.width_mm
    return any(at_mm - TOUCH <= crown_mm <= at_mm + TOUCH for crown_mm in ask.high_points_mm)


def _raking_side(ask: AcrossAsk) -> Finding:
    return not_covered(
        rule="least piece",
        where=f"{ask.where}, raking side",
        proposed=None,
        unit="mm",
        citation=RAKING,
        says=(
            "Along the side that rakes, pieces run from nothing to a whole unit wherever the side crosses a perp. Where one "
            "comes under half, cut it with its neighbour from a wider unit, or bond it to its neighbour and fix it."
        ),
    )


def _beside_openings(ask: AcrossAsk) -> Finding:
    return not_covered(
        rule="least piece",
        where=f"{ask.where}, beside openings",
        proposed=None,
        unit="mm",
        citation=house("pieces beside openings are reckoned with the perps of the eaves line"),
        says="The perps fan, so pieces beside an opening change up its height. Strike the perps and measure there.",
    )
