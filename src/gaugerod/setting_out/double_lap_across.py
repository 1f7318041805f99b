"""Plain tiles and sized slates across the slope: half bond, joints between them, a unit and a half at the verges."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from math import inf

from gaugerod.basis.band import Band
from gaugerod.basis.finding import TOUCH, Finding
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import Bond
from gaugerod.rules.slates import verge_slate
from gaugerod.setting_out.across import Across, AcrossAsk, CourseEnd, EndPiece, Side, SideKind, UpperEdge
from gaugerod.setting_out.stations import Opening
from gaugerod.standards.double_lap import DoubleLapFigure, double_lap_figure
from gaugerod.standards.edition import Edition


@dataclass(frozen=True, slots=True, kw_only=True)
class DoubleLapAcross:
    """What the perps of plain tiles or slates depend on, beside the unit. mm along the eaves.

    ``joint``        band of the gap between neighbours
    ``minimum_cut``  the least piece of a unit, as a ratio of its cover width
    """

    where: str
    eaves_width_mm: float
    top_left_mm: float
    top_right_mm: float
    left: Side
    right: Side
    joint: Band
    minimum_cut: Limit
    division: Division
    openings: tuple[Opening, ...] = ()
    perps_every_count: int = 2
    upper: tuple[UpperEdge, ...] = ()
    left_high_mm: float = inf
    right_high_mm: float = inf
    reaches_mm: tuple[float, float] | None = None


def across_ask(asked: DoubleLapAcross, *, unit: PlainTile | SizedSlate) -> AcrossAsk:
    """The perps as any covering's are asked. Each unit stands for itself and the joint at its right.

    So the right side may reach one joint further: the last joint there is not covered by anything.

    >>> from gaugerod.basis.citation import house
    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> from gaugerod.standards.defaults import minimum_cut
    >>> verge = Side(kind=SideKind.VERGE, reach=Band(38.0, 50.0, house("example")))
    >>> ask = across_ask(DoubleLapAcross(where="rear", eaves_width_mm=7000.0, top_left_mm=0.0, top_right_mm=7000.0,
    ...     left=verge, right=verge, joint=Band(1.0, 5.0, house("example")),
    ...     minimum_cut=minimum_cut(Edition.GB), division=Division.MILLIMETRE), unit=sized_slate("slate-500x250"))
    >>> ask.cover_closed_mm, ask.cover_open_mm, ask.unit_width_mm, ask.right.reach.greatest_mm
    (251.0, 255.0, 255.0, 55.0)
    """
    joint = asked.joint
    upper = tuple(
        edge if edge.end is CourseEnd.LEFT else replace(edge, side=_with_last_joint(edge.side, joint))
        for edge in asked.upper
    )
    return AcrossAsk(
        where=asked.where,
        eaves_width_mm=asked.eaves_width_mm,
        top_left_mm=asked.top_left_mm,
        top_right_mm=asked.top_right_mm,
        left=asked.left,
        right=_with_last_joint(asked.right, joint),
        unit_width_mm=unit.width_mm + joint.greatest_mm,
        cover_closed_mm=unit.width_mm + joint.least_mm,
        cover_open_mm=unit.width_mm + joint.greatest_mm,
        cover_citation=joint.citation,
        bond=Bond.BROKEN,
        minimum_cut=asked.minimum_cut,
        half_unit=isinstance(unit, PlainTile) and unit.half_unit,
        unit_and_a_half=unit.unit_and_a_half if isinstance(unit, PlainTile) else unit.slate_and_a_half,
        high_points_mm=(),
        openings=asked.openings,
        division=asked.division,
        perps_every_count=asked.perps_every_count,
        upper=upper,
        left_high_mm=asked.left_high_mm,
        right_high_mm=asked.right_high_mm,
        reaches_mm=asked.reaches_mm,
    )


def _with_last_joint(side: Side, joint: Band) -> Side:
    reach = side.reach
    further = Band(
        least_mm=reach.least_mm + joint.greatest_mm,
        greatest_mm=reach.greatest_mm + joint.greatest_mm,
        citation=reach.citation,
    )
    return replace(side, reach=further)


class MadeOf(StrEnum):
    """What the piece at a verge is: a whole unit or cut from one, a unit and a half, or a half unit as made."""

    WHOLE = "whole"
    UNIT_AND_A_HALF = "unit-and-a-half"
    HALF = "half"


@dataclass(frozen=True, slots=True, kw_only=True)
class VergePiece:
    """The unit at one verge in one kind of course (bond row 0 or 1), with its true width: no joint in it."""

    at: str
    bond_row: int
    made_of: MadeOf
    width_mm: float


def verge_pieces(
    *, asked: DoubleLapAcross, across: Across, unit: PlainTile | SizedSlate, edition: Edition
) -> tuple[VergePiece, ...]:
    """What is laid at the verges. A piece too narrow to hold is not laid: it and its neighbour become one unit and a half.

    Too narrow: under the least verge slate; for tiles, under a whole one. Where no unit and a half is made, a half unit
    if there is one, else the narrow piece, which the findings then show. Source: tile-and-a-half or slate-and-a-half in
    every second course (common practice).
    """
    least_mm = unit.width_mm
    if isinstance(unit, SizedSlate):
        least_mm = double_lap_figure(edition, DoubleLapFigure.VERGE_SLATE_LEAST_WIDTH).value
    sides = (("left", asked.left), ("right", asked.right), *((edge.name, edge.side) for edge in asked.upper))
    verges = [name for name, side in sides if side.kind is SideKind.VERGE]
    return tuple(
        _verge_piece(asked, across, unit, piece, least_mm=least_mm) for piece in across.pieces if piece.at in verges
    )


def _verge_piece(
    asked: DoubleLapAcross, across: Across, unit: PlainTile | SizedSlate, piece: EndPiece, *, least_mm: float
) -> VergePiece:
    width_mm = piece.width_mm - asked.joint.greatest_mm
    wide_mm = 1.5 * unit.width_mm
    with_neighbour_mm = width_mm + across.cover_mm
    has_wide = unit.unit_and_a_half if isinstance(unit, PlainTile) else unit.slate_and_a_half
    has_half = isinstance(unit, PlainTile) and unit.half_unit
    made_of = MadeOf.WHOLE
    # A unit and a half has no joint in its middle, so it may come out half a joint narrower than the two it replaces.
    if width_mm < least_mm - TOUCH and has_wide and with_neighbour_mm <= wide_mm + asked.joint.greatest_mm:
        made_of, width_mm = MadeOf.UNIT_AND_A_HALF, min(with_neighbour_mm, wide_mm)
    elif width_mm < least_mm - TOUCH and has_half:
        made_of = MadeOf.HALF
    return VergePiece(at=piece.at, bond_row=piece.bond_row, made_of=made_of, width_mm=width_mm)


def verge_slate_findings(*, where: str, pieces: Sequence[VergePiece], edition: Edition) -> Iterator[Finding]:
    """The slates at the verges, as laid, each against the least width."""
    for piece in pieces:
        yield verge_slate(
            where=f"{where}, {piece.at}, {'odd' if piece.bond_row == 0 else 'even'} courses",
            width_mm=piece.width_mm,
            edition=edition,
        )
