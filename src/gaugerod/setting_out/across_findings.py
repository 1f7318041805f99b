"""What the perps keep or break: cover inside the shunt, ends inside their bands, no piece too narrow, crowns at verges."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.band import Band
from gaugerod.basis.citation import common_practice, house
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.single_lap import Bond
from gaugerod.rules.sides import abutment_set_back, verge_overhang
from gaugerod.setting_out.across import AcrossAsk, CourseEnd, EndPiece, Fit, PerpLine, Side, SideKind, UpperReach
from gaugerod.setting_out.end_pieces import least_cut_mm
from gaugerod.setting_out.perps import run_limits_mm, runs_mm
from gaugerod.setting_out.said import counted, said
from gaugerod.setting_out.top_line import RakingSide, TopLine

CROWN = common_practice(
    "a profiled tile finishes on a high point at a verge, so that water is thrown back onto the slope"
)
HIP_CUTS = house("raking cuts at hips and valleys are set out with the hip or valley, not with the perps")
LEANING = house("how far a perp may lean over a course's side lock is for the maker to say")


def across_findings(
    ask: AcrossAsk,
    lines: Sequence[PerpLine],
    *,
    upper: Sequence[UpperReach],
    pieces: Sequence[EndPiece],
    pieces_at_top: Sequence[EndPiece],
    top: TopLine | None,
) -> Iterator[Finding]:
    """Every finding on the perps. ``pieces_at_top``: the end pieces along a top line the perps fan to."""
    for line in lines:
        yield from _cover(ask, line)
        yield from _marked_runs(ask, line)
        yield from reach_findings(f"{ask.where}, left, {line.line}", ask.left, line.left_reach_mm)
        yield from reach_findings(f"{ask.where}, right, {line.line}", ask.right, line.right_reach_mm)
    for above in upper:
        yield from reach_findings(f"{ask.where}, {above.edge.name}", above.edge.side, above.overhang_mm)
        yield from _crowns(ask, pieces, name=above.edge.name, side=above.edge.side, end=above.edge.end)
    yield from least_piece_findings(ask, pieces, line=lines[0])
    if pieces_at_top:
        yield from least_piece_findings(ask, pieces_at_top, line=lines[1])
    for end, side in ((CourseEnd.LEFT, ask.left), (CourseEnd.RIGHT, ask.right)):
        yield from _crowns(ask, pieces, name=end.value, side=side, end=end)
        if side.kind in {SideKind.HIP, SideKind.VALLEY}:
            yield _raking_cuts_elsewhere(ask, end.value, side)
    if top is not None:
        for raking in top.raking:
            yield _raking_side(ask, raking, cover_mm=lines[0].cover_mm)
        if top.fanned and top.lean_mm > TOUCH:
            yield _lean(ask, top)


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


def _marked_runs(ask: AcrossAsk, line: PerpLine) -> Iterator[Finding]:
    """Only where rounding the marks breaks the shunt: the exact run is inside it."""
    runs = runs_mm(line)
    if not runs:
        return
    least_mm, greatest_mm = run_limits_mm(ask)
    for run_mm, limit_mm, sense in (
        (min(runs), least_mm, Sense.AT_LEAST),
        (max(runs), greatest_mm, Sense.AT_MOST),
    ):
        out_mm = limit_mm - run_mm if sense is Sense.AT_LEAST else run_mm - limit_mm
        if out_mm > TOUCH:
            yield Finding(
                rule="perps as marked",
                where=f"{ask.where}, {line.line}",
                proposed=run_mm,
                limit=limit_mm,
                unit="mm",
                sense=sense,
                citation=ask.cover_citation,
                says=(
                    f"{counted(ask.perps_every_count, 'unit')} from perp to perp: no mark to the division keeps the "
                    f"shunt everywhere, and a run is {out_mm:.2f} mm out. The exact perps keep it: share the "
                    f"{out_mm:.2f} mm over the units of the run."
                ),
            )


def reach_findings(where: str, side: Side, reach_mm: float) -> tuple[Finding, ...]:
    """How far the covering reaches past one side, against its band: nothing to say of a hip or valley."""
    match side.kind:
        case SideKind.VERGE:
            return verge_overhang(where=where, overhang_mm=reach_mm, band=side.reach)
        case SideKind.ABUTMENT:
            band = Band(
                least_mm=-side.reach.greatest_mm, greatest_mm=-side.reach.least_mm, citation=side.reach.citation
            )
            return abutment_set_back(where=where, set_back_mm=-reach_mm, band=band)
        case SideKind.HIP | SideKind.VALLEY:
            return ()


def least_piece_findings(ask: AcrossAsk, pieces: Sequence[EndPiece], *, line: PerpLine) -> Iterator[Finding]:
    """The least of these pieces that is cut, against half a unit; nothing to say where none is."""
    least_mm = least_cut_mm(pieces)
    if least_mm is None:
        return
    limit_mm = ask.minimum_cut.value * line.cover_mm
    where = _where_cut(ask, pieces, least_mm)
    least = said(least_mm, ask.division)
    if least_mm >= limit_mm - TOUCH:
        says = f"The least cut piece covers {least}, at {where}: half a unit or more."
    else:
        crowns = (
            " that finishes on the crowns"
            if ask.high_points_mm and (ask.left.high_point or ask.right.high_point)
            else ""
        )
        says = (
            f"No arrangement{crowns} avoids a piece under half a unit. The widest least piece covers {least}, at {where}. "
            "Bond it to its neighbour and fix it mechanically, or use a wider unit if one is made."
        )
    yield Finding(
        rule="least piece",
        where=f"{ask.where}, {line.line}",
        proposed=least_mm,
        limit=limit_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.minimum_cut.citation,
        says=f"{says}{_from_larger(ask, pieces, line.cover_mm)}",
    )


def _from_larger(ask: AcrossAsk, pieces: Sequence[EndPiece], cover_mm: float) -> str:
    larger = dict.fromkeys(piece.at for piece in pieces if piece.cover_mm > cover_mm + TOUCH and piece.fit is Fit.CUT)
    return f" Cut from a unit-and-a-half at {', '.join(larger)}." if larger and ask.unit_and_a_half else ""


def _where_cut(ask: AcrossAsk, pieces: Sequence[EndPiece], least_mm: float) -> str:
    names = []
    for piece in pieces:
        if piece.fit in {Fit.CUT, Fit.HIGH_POINT} and piece.cover_mm <= least_mm + TOUCH:
            rows = "" if ask.bond is Bond.STRAIGHT else f", {'odd' if piece.bond_row == 0 else 'even'} courses"
            names.append(f"{piece.at}{rows}")
    return "; ".join(dict.fromkeys(names))


def _crowns(ask: AcrossAsk, pieces: Sequence[EndPiece], *, name: str, side: Side, end: CourseEnd) -> Iterator[Finding]:
    if not side.high_point or side.kind is not SideKind.VERGE:
        return
    rule, where = "high point at the verge", f"{ask.where}, {name}"
    if not ask.high_points_mm:
        says = "The record does not say where the crowns of this tile are: measure them from its left edge."
        yield not_covered(rule=rule, where=where, proposed=None, unit="courses", citation=CROWN, says=says)
        return
    at_side = [piece for piece in pieces if piece.at == name]
    missed = sum(1 for piece in at_side if not _on_crown(ask, piece, end))
    yield Finding(
        rule=rule,
        where=where,
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


def _on_crown(ask: AcrossAsk, piece: EndPiece, end: CourseEnd) -> bool:
    """Does the edge of this piece lie on a crown? A whole unit's does when its own edge is one."""
    own_edge_mm = 0.0 if end is CourseEnd.LEFT else ask.unit_width_mm
    at_own_edge = any(own_edge_mm - TOUCH <= crown_mm <= own_edge_mm + TOUCH for crown_mm in ask.high_points_mm)
    return piece.fit is Fit.HIGH_POINT or (piece.fit is Fit.WHOLE and at_own_edge)


def _raking_cuts_elsewhere(ask: AcrossAsk, name: str, side: Side) -> Finding:
    return not_covered(
        rule="least piece",
        where=f"{ask.where}, {name}",
        proposed=None,
        unit="mm",
        citation=HIP_CUTS,
        says=f"The {side.kind.value} on the {name} puts no condition on the perps: its cuts run from nothing to a whole unit.",
    )


def _raking_side(ask: AcrossAsk, raking: RakingSide, *, cover_mm: float) -> Finding:
    narrowest, widest = said(raking.narrowest_mm, ask.division), said(raking.widest_mm, ask.division)
    remedy = (
        "Cut such a piece and its neighbour from one unit-and-a-half."
        if ask.unit_and_a_half
        else "Bond such a piece to its neighbour and fix it mechanically."
    )
    narrow = raking.narrowest_mm < ask.minimum_cut.value * cover_mm - TOUCH
    return Finding(
        rule="least piece",
        where=f"{ask.where}, raking {raking.name}",
        proposed=raking.narrowest_mm,
        limit=ask.minimum_cut.value * cover_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.minimum_cut.citation,
        says=f"Along the {raking.name} the pieces go from {narrowest} to {widest} of cover."
        + (f" {remedy}" if narrow else ""),
    )


def _lean(ask: AcrossAsk, top: TopLine) -> Finding:
    return not_covered(
        rule="perps square to the eaves",
        where=f"{ask.where}, top",
        proposed=top.lean_mm,
        unit="mm",
        citation=LEANING,
        says=(
            f"The perps fan: the one that leans most is {said(top.lean_mm, ask.division)} from square at the top. Share it "
            "evenly over the courses, and see on a dry-laid course that the side locks still seat."
        ),
    )
