"""The pieces at the verges as they are laid: where the perps ask for a unit and a half, the cut list says so too."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod.basis.citation import common_practice
from gaugerod.laying.ask import EdgeKind
from gaugerod.laying.cells import LINE_PLAY_MM
from gaugerod.laying.cut_unit import CutUnit, Remedy
from gaugerod.setting_out.double_lap_across import MadeOf, VergePiece

WIDE_AT_VERGE = common_practice("tile-and-a-half or slate-and-a-half at the verge in every second course")


def as_the_verge_asks(
    pieces: Sequence[CutUnit], verges: Sequence[VergePiece], *, unit_width_mm: float
) -> Iterator[CutUnit]:
    """Every piece; a narrow one at a verge becomes part of the unit and a half laid there.

    Scope: pieces of half a unit or less, for a unit and a half spans no more beside its whole neighbour. mm.
    """
    wide = {(verge.at, verge.bond_row) for verge in verges if verge.made_of is MadeOf.UNIT_AND_A_HALF}
    ends = {verge.at for verge in verges}
    for piece in pieces:
        at_verge = [cut.edge.name for cut in piece.cuts if cut.edge.kind is EdgeKind.VERGE]
        side = "left" if piece.neighbour > piece.index else "right"
        end = next((name for name in at_verge if name in ends), side)
        alone = piece.neighbour == piece.index
        narrow = width_mm(piece) <= unit_width_mm / 2 + LINE_PLAY_MM
        if at_verge and narrow and not alone and (end, piece.course % 2) in wide:
            yield replace(
                piece,
                remedy=Remedy.UNIT_AND_A_HALF,
                remark="At the verge: laid with its neighbour as one unit-and-a-half.",
                citation=WIDE_AT_VERGE,
            )
        else:
            yield piece


def width_mm(piece: CutUnit) -> float:
    """How wide a piece is, from its leftmost to its rightmost corner."""
    across_mm = [x for ring in piece.own_rings_mm for x, _ in ring]
    return max(across_mm) - min(across_mm)
