"""How the perps were come by: one plain sentence, and the working behind it."""

from collections.abc import Collection, Sequence

from gaugerod.basis.working import Step
from gaugerod.setting_out.across import AcrossAsk, EndPiece, Fit
from gaugerod.setting_out.cover_search import Layout
from gaugerod.setting_out.perps import units_count
from gaugerod.setting_out.said import counted, said
from gaugerod.setting_out.top_line import TopLine


def across_why(ask: AcrossAsk, layout: Layout, pieces: Sequence[EndPiece], *, top: TopLine | None) -> str:
    """Why this cover and these ends, in one plain sentence, and a second where the top line differs."""
    off_mm = layout.cover_mm - (ask.cover_closed_mm + ask.cover_open_mm) / 2
    off = said(max(off_mm, -off_mm), ask.division)
    moved = f"{off} {'opened' if off_mm > 0 else 'closed'} from mid-shunt"
    shunt = "mid-shunt" if off == said(0.0, ask.division) else moved
    units = counted(units_count(layout), "unit")
    said_so = (
        f"{units} to the course at {said(layout.cover_mm, ask.division)} cover, {shunt}, {ends_said(ask, pieces)}."
    )
    return said_so if top is None else f"{said_so}{_at_the_top(ask, top)}"


def _at_the_top(ask: AcrossAsk, top: TopLine) -> str:
    if top.fanned:
        cover = said(top.layout.cover_mm, ask.division)
        return f" The same units are spread over the top line at {cover} cover, so the perps fan with the sides."
    if not top.raking:
        return " The perps stand square to the eaves."
    sides = " and ".join(
        f"on the {side.name} to the rake, from {said(side.narrowest_mm, ask.division)} to "
        f"{said(side.widest_mm, ask.division)} of cover"
        for side in top.raking
    )
    return f" The shunt cannot take up the difference at the top, so the perps stay square to the eaves: cut {sides}."


def ends_said(ask: AcrossAsk, pieces: Sequence[EndPiece], *, laid_wide: Collection[tuple[str, int]] = ()) -> str:
    """How the courses end at both sides and at upper edges; and the least piece where one is cut.

    ``laid_wide``: place and bond row of the pieces that are laid with their neighbour as one unit-and-a-half.
    """

    def fit_said(piece: EndPiece) -> str:
        return "a unit-and-a-half" if (piece.at, piece.bond_row) in laid_wide else _FIT_WORDS[piece.fit]

    sides = []
    for name, said_so in (
        ("left", "the left"),
        ("right", "the right"),
        *((edge.name, edge.name) for edge in ask.upper),
    ):
        fits = dict.fromkeys(fit_said(piece) for piece in pieces if piece.at == name)
        if fits:
            sides.append(f"{' and '.join(fits)} at {said_so}")
    said_so = ", ".join(sides) if sides else "cut to the hips or valleys"
    cuts = [
        piece
        for piece in pieces
        if piece.fit in {Fit.CUT, Fit.HIGH_POINT} and (piece.at, piece.bond_row) not in laid_wide
    ]
    if not cuts:
        return said_so
    least = min(cuts, key=lambda piece: piece.cover_mm)
    return f"{said_so}; the least piece covers {said(least.cover_mm, ask.division)}, at {least.at}"


_FIT_WORDS = {Fit.WHOLE: "whole", Fit.HALF: "half", Fit.HIGH_POINT: "cut on a crown", Fit.CUT: "cut"}


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
