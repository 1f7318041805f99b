"""How the perps were come by: one plain sentence, and the working behind it."""

from collections.abc import Sequence

from gaugerod.basis.finding import TOUCH
from gaugerod.basis.working import Step
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import AcrossAsk, EndPiece, Fit
from gaugerod.setting_out.cover_search import Layout
from gaugerod.setting_out.perps import units_count
from gaugerod.setting_out.said import counted, said


def across_why(ask: AcrossAsk, layout: Layout, pieces: Sequence[EndPiece], *, fanned: bool, raked: bool) -> str:
    """Why this cover and these ends, in one plain sentence, and a second where the top line differs."""
    wished_mm = (ask.cover_closed_mm + ask.cover_open_mm) / 2
    off_mm = layout.cover_mm - wished_mm
    if -TOUCH <= off_mm <= TOUCH:
        shunt = "mid-shunt"
    else:
        shunt = f"{said(max(off_mm, -off_mm), ask.division)} {'opened' if off_mm > 0 else 'closed'} from mid-shunt"
    units = counted(units_count(layout), "unit")
    said_so = f"{units} to the course at {said(layout.cover_mm, ask.division)} cover, {shunt}, {_ends(ask, pieces)}."
    if fanned:
        said_so += (
            " The same units are spread over the top line with a cover of their own, so the perps fan with the sides."
        )
    if raked:
        said_so += (
            " The top line differs by more than the shunt can take up, so the perps stay parallel and the sides are cut to "
            "the rake."
        )
    return said_so


def _ends(ask: AcrossAsk, pieces: Sequence[EndPiece]) -> str:
    cuts = [piece for piece in pieces if piece.fit is Fit.CUT]
    crowns = any(piece.fit is Fit.HIGH_POINT for piece in pieces)
    if not cuts:
        if crowns:
            return "cut on a crown at the verges"
        if not pieces:
            return "cut to the hips or valleys"
        return "nothing cut at the sides" if ask.bond is Bond.STRAIGHT else "whole and half units at the sides"
    least = min(cuts, key=lambda piece: piece.cover_mm)
    return f"the least piece covering {said(least.cover_mm, ask.division)} at {least.at}"


def across_working(ask: AcrossAsk, layout: Layout) -> Step:
    """Left piece, whole units, right piece and the last unit's lap make the laid width."""
    left_mm, right_mm = layout.pieces_mm(ask.unit_width_mm)[:2]
    between = layout.placed[1].perp_count
    lap_mm = ask.unit_width_mm - layout.cover_mm
    cover = Step(
        name="cover width",
        formula="inside the shunt, as near its middle as the ends allow",
        inputs={"closed (mm)": ask.cover_closed_mm, "open (mm)": ask.cover_open_mm},
        value=layout.cover_mm,
        unit="mm",
        citation=ask.cover_citation,
    )
    return Step(
        name="laid width along the eaves",
        formula="left piece + units between × cover + right piece + last unit's lap",
        inputs={
            "left piece (mm)": left_mm,
            "units between": float(between),
            "cover (mm)": layout.cover_mm,
            "right piece (mm)": right_mm,
            "lap (mm)": lap_mm,
        },
        value=left_mm + between * layout.cover_mm + right_mm + lap_mm,
        unit="mm",
        parts=(cover,),
    )
