"""What stands in an opening: a chimney dressed in lead, or a window with its own kit.

Source: each figure's own (``standards.lead``). Scope: a chimney that the slope runs past on all sides, square to it; one at the
ridge, and one that straddles a hip or valley, are not covered.
"""

from collections.abc import Iterator
from dataclasses import replace

from gaugerod.basis.citation import common_practice
from gaugerod.basis.finding import Finding, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.edges.answer import LeadPieces, LeadUse, MadeEdge
from gaugerod.edges.ask import EdgeOpening, EdgesAsk
from gaugerod.edges.lead_runs import lead_along, lead_of
from gaugerod.edges.made_lead import made_with_lead
from gaugerod.edges.parts import mm, pieces
from gaugerod.edges.walls import flashing_code, side_lead
from gaugerod.edges.wished import OpeningMade, WallWished
from gaugerod.standards.lead import LeadCode, LeadFigure, LeadPlace, lead_figure, longest_piece

KIT = common_practice("a window in the roof comes with the flashing kit of its maker, made for this covering")


def opening_edge(ask: EdgesAsk, opening: EdgeOpening) -> MadeEdge:
    """One opening, or how far it is all round where it was not said what stands in it."""
    round_mm = 2 * (opening.width_mm + opening.height_mm)
    match opening.made:
        case None:
            says = f"{mm(round_mm)} all round. What stands in it is not said: give made in its [[slope.opening]]."
            return made_with_lead(opening, made="", lead=(), says=(says,), findings=())
        case OpeningMade.KIT:
            return made_with_lead(
                opening,
                made="the kit of its maker",
                lead=(),
                says=(
                    f"{mm(round_mm)} all round, flashed with the kit, as its maker says. Treat the glass as fragile.",
                ),
                findings=(),
                parts=(
                    pieces(
                        item="opening-kit",
                        what=f"flashing kit for an opening {opening.width_mm:g} × {opening.height_mm:g} mm",
                        count=1,
                        how="one to an opening",
                        citation=KIT,
                    ),
                ),
            )
        case OpeningMade.CHIMNEY:
            return _chimney(ask, opening)


def _chimney(ask: EdgesAsk, opening: EdgeOpening) -> MadeEdge:
    wished, edition = ask.wished.wall or WallWished(), ask.edition
    where = f"{opening.slope}, {opening.name}"
    lead, findings = lead_of(
        where=where, place=LeadPlace.FLASHING, code=flashing_code(wished, edition), edition=edition
    )
    lap = lead_figure(edition, LeadFigure.LAP_LEVEL_LEAST)
    side, more = side_lead(
        ask,
        where,
        slope=opening.slope,
        run_mm=opening.height_mm + lap.value,
        courses_count=opening.courses_count,
        lead=lead,
    )
    back_code = lead_figure(edition, LeadFigure.BACK_GUTTER_CODE)
    back_lead, of_back = lead_of(where=where, place=LeadPlace.FLASHING, code=int(back_code.value), edition=edition)
    front = () if lead is None else tuple(_front(ask, opening, lead))
    back = () if lead is None or back_lead is None else tuple(_back(ask, opening, lead, back_lead))
    found: tuple[Finding, ...] = (*findings, *more, *of_back, *_too_wide(ask, opening, where))
    return made_with_lead(
        opening,
        made="chimney, dressed in lead",
        lead=(*front, *(_both_sides(each) for each in side), *back),
        says=(
            f"Apron first, then both sides from the apron up, {lap.value:g} mm over it.",
            "Then the back gutter over the sides, and its cover flashing, turned round both corners.",
            "One at the ridge, or that a hip or valley meets, is not covered: its lead is drawn up on the roof.",
            "Look at the flue before you work beside it: hot gases, and old flues may be lined with asbestos.",
        ),
        findings=found,
    )


def _too_wide(ask: EdgesAsk, opening: EdgeOpening, where: str) -> Iterator[Finding]:
    """A back gutter is in one piece: two lapped in a level gutter would let the water standing there through."""
    code = int(lead_figure(ask.edition, LeadFigure.BACK_GUTTER_CODE).value)
    longest = longest_piece(ask.edition, place=LeadPlace.FLASHING, code=code)
    long_mm = opening.width_mm + 2 * lead_figure(ask.edition, LeadFigure.PAST_CORNER).value
    if isinstance(longest, Limit) and long_mm > longest.value:
        yield not_covered(
            rule="back gutter",
            where=where,
            proposed=long_mm,
            unit="mm",
            citation=longest.citation,
            says=(
                f"The gutter behind this chimney would be {long_mm:.0f} mm long, and a piece is {longest.value:g} mm at most. Lead "
                "is not lapped in a gutter that lies level: it is welded, or has a drip. None is counted: ask a lead worker."
            ),
            leaves_out=True,
        )


def _both_sides(one: LeadPieces) -> LeadPieces:
    """The pieces of one side, for both."""
    return replace(one, count=2 * one.count, run_mm=2 * one.run_mm, how=f"both sides alike; each: {one.how}")


def _front(ask: EdgesAsk, opening: EdgeOpening, lead: LeadCode) -> Iterator[LeadPieces]:
    """The apron: into the joint, up the front, down over the covering, past both corners."""
    splash = ask.wished.wall is not None and ask.wished.wall.splash
    joint, up, down, past, lap = (
        lead_figure(ask.edition, which)
        for which in (
            LeadFigure.INTO_JOINT_LEAST,
            LeadFigure.UPSTAND_SPLASH if splash else LeadFigure.UPSTAND_LEAST,
            LeadFigure.CHIMNEY_APRON_DOWN,
            LeadFigure.PAST_CORNER,
            LeadFigure.LAP_LEVEL_LEAST,
        )
    )
    apron = lead_along(
        use=LeadUse.APRON,
        lead=lead,
        place=LeadPlace.FLASHING,
        run_mm=opening.width_mm + 2 * past.value,
        width_mm=joint.value + up.value + down.value,
        lap=lap,
        how=(
            f"{mm(opening.width_mm)} and {past.value:g} mm past each corner; width: {joint.value:g} mm into the joint + "
            f"{up.value:g} mm up + {down.value:g} mm down over the covering"
        ),
        citations=(joint.citation, up.citation, down.citation, past.citation),
        edition=ask.edition,
    )
    if apron is not None:
        yield apron


def _back(ask: EdgesAsk, opening: EdgeOpening, lead: LeadCode, back_lead: LeadCode) -> Iterator[LeadPieces]:
    """The back gutter, and the cover flashing over its upstand."""
    past, lap, up, sole, under = (
        lead_figure(ask.edition, which)
        for which in (
            LeadFigure.PAST_CORNER,
            LeadFigure.LAP_LEVEL_LEAST,
            LeadFigure.BACK_GUTTER_UP,
            LeadFigure.BACK_GUTTER_SOLE,
            LeadFigure.BACK_GUTTER_UNDER,
        )
    )
    joint, over = (
        lead_figure(ask.edition, which) for which in (LeadFigure.INTO_JOINT_LEAST, LeadFigure.COVER_FLASHING_DOWN)
    )
    run_mm = opening.width_mm + 2 * past.value
    too_wide = bool(tuple(_too_wide(ask, opening, "")))
    gutter = (
        None
        if too_wide
        else lead_along(
            use=LeadUse.BACK_GUTTER,
            lead=back_lead,
            place=LeadPlace.FLASHING,
            run_mm=run_mm,
            width_mm=up.value + sole.value + under.value,
            lap=lap,
            how=(
                f"{mm(opening.width_mm)} and {past.value:g} mm past each corner; width: {up.value:g} mm up the chimney + "
                f"{sole.value:g} mm of sole + {under.value:g} mm under the covering"
            ),
            citations=(up.citation, sole.citation, under.citation, past.citation),
            edition=ask.edition,
        )
    )
    flashing = lead_along(
        use=LeadUse.COVER_FLASHING,
        lead=lead,
        place=LeadPlace.FLASHING,
        run_mm=opening.width_mm + 2 * lap.value,
        width_mm=joint.value + over.value,
        lap=lap,
        how=(
            f"{mm(opening.width_mm)} and {lap.value:g} mm round each corner; width: {joint.value:g} mm into the joint + "
            f"{over.value:g} mm down over the gutter's upstand"
        ),
        citations=(joint.citation, over.citation, lap.citation),
        edition=ask.edition,
    )
    yield from (each for each in (gutter, flashing) if each is not None)
