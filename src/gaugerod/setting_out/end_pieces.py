"""How a course may end: at a verge, at an abutment, beside an opening.

The piece at an end gives a cover p between nothing and one cover c. p = c is a whole unit, p = c/2 half a unit.
In broken bond the other course is half a unit over, so its piece is p − c/2 or p + c/2: one of the two is always
half a unit or less, and none is narrower than half only when they are exactly a whole and a half.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import product
from typing import NamedTuple

from gaugerod.basis.finding import TOUCH
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import CourseEnd, EndPiece, Fit


class Stop(StrEnum):
    """What stops it. ``free``: a hip or valley, whose raking cuts put no condition on the perps."""

    VERGE = "verge"
    ABUTMENT = "abutment"
    OPENING = "opening"
    FREE = "free"


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """A line where courses end: anywhere from ``least_mm`` to ``greatest_mm`` along x, best at ``aim_mm``.

    ``crowns_mm``  how far in from the outer edge of a whole unit its crowns are, when the edge must finish on one
    ``roomy``      is the stretch long enough that a narrow piece and its neighbour can be one unit-and-a-half?
    """

    name: str
    end: CourseEnd
    stop: Stop
    least_mm: float
    greatest_mm: float
    aim_mm: float
    crowns_mm: tuple[float, ...] = ()
    roomy: bool = False


class Width(NamedTuple):
    """A width that goes with the cover: ``cover_ratio`` × c + ``plus_mm``."""

    cover_ratio: float
    plus_mm: float = 0.0

    def at_mm(self, cover_mm: float) -> float:
        """The width at this cover."""
        return self.cover_ratio * cover_mm + self.plus_mm


NOTHING, HALF, WHOLE = Width(0.0), Width(0.5), Width(1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ending:
    """One way to end: the piece p of bond row 0 lies between all of ``at_least`` and all of ``at_most``.

    ``narrow_ratio``  when a piece under half a unit is left, it is p − narrow_ratio × c; None: no such piece
    ``missed_count``  pieces that should finish on a crown and do not
    ``cut_count``     pieces to be cut that no crown asked for
    ``large_count``   units-and-a-half needed in a pair of courses
    """

    at_least: tuple[Width, ...]
    at_most: tuple[Width, ...]
    narrow_ratio: float | None = None
    missed_count: int = 0
    cut_count: int = 0
    large_count: int = 0


def endings_of(edge: Edge, *, bond: Bond, half_unit: bool, unit_and_a_half: bool) -> tuple[Ending, ...]:
    """All the ways a course may end at this edge, those wanted most first."""
    if edge.stop is Stop.FREE:
        return (Ending(at_least=(NOTHING,), at_most=(WHOLE,)),)
    large = unit_and_a_half and edge.roomy
    found = _straight(edge, half_unit=half_unit) if bond is Bond.STRAIGHT else _broken(edge, half_unit=half_unit)
    plain = (_with_large(ending) if large else ending for ending in found)
    plain = (_no_sliver_for_a_crown(ending, bond=bond) if edge.crowns_mm else ending for ending in plain)
    if edge.stop is Stop.OPENING:
        plain = (_beside_opening(ending) for ending in plain)
    return tuple(sorted(dict.fromkeys(plain), key=_how_unwelcome))


def _how_unwelcome(ending: Ending) -> tuple[int, bool, int, int]:
    return (ending.missed_count, ending.narrow_ratio is not None, ending.cut_count, ending.large_count)


def _with_large(ending: Ending) -> Ending:
    """The narrow piece and its neighbour are made from one unit-and-a-half: nothing narrow is left."""
    if ending.narrow_ratio is None:
        return ending
    return Ending(
        at_least=ending.at_least,
        at_most=ending.at_most,
        missed_count=ending.missed_count,
        cut_count=ending.cut_count,
        large_count=1,
    )


def _no_sliver_for_a_crown(ending: Ending, *, bond: Bond) -> Ending:
    """A crown on a piece under half a unit is no finish: the piece blows off. It counts as if there were no crown."""
    if ending.narrow_ratio is None:
        return ending
    return replace(ending, missed_count=1 if bond is Bond.STRAIGHT else 2)


def _beside_opening(ending: Ending) -> Ending:
    """A cut beside an opening is under its flashing: it is not counted, only its width matters."""
    return Ending(
        at_least=ending.at_least,
        at_most=ending.at_most,
        narrow_ratio=ending.narrow_ratio,
        large_count=ending.large_count,
    )


def _straight(edge: Edge, *, half_unit: bool) -> Iterator[Ending]:
    wanted = 1 if edge.crowns_mm else 0
    edge_is_crown = any(crown_mm <= TOUCH for crown_mm in edge.crowns_mm)
    yield Ending(at_least=(WHOLE,), at_most=(WHOLE,), missed_count=0 if edge_is_crown else wanted)
    if half_unit:
        yield Ending(at_least=(HALF,), at_most=(HALF,), missed_count=wanted)
    for crown_mm in edge.crowns_mm:
        on_crown = Width(1.0, -crown_mm)
        yield Ending(at_least=(on_crown, HALF), at_most=(on_crown, WHOLE))
        yield Ending(at_least=(on_crown, NOTHING), at_most=(on_crown, HALF), narrow_ratio=0.0)
    yield Ending(at_least=(HALF,), at_most=(WHOLE,), missed_count=wanted, cut_count=1)
    yield Ending(at_least=(NOTHING,), at_most=(HALF,), narrow_ratio=0.0, missed_count=wanted, cut_count=1)


def _broken(edge: Edge, *, half_unit: bool) -> Iterator[Ending]:
    wanted = 2 if edge.crowns_mm else 0
    crowns: tuple[float | None, ...] = (None, *edge.crowns_mm)
    for (least, most, other_row), crown_0_mm, crown_1_mm in product(
        ((HALF, WHOLE, -0.5), (NOTHING, HALF, 0.5)), crowns, crowns
    ):
        on_crowns: list[Width] = []
        if crown_0_mm is not None:
            on_crowns.append(Width(1.0, -crown_0_mm))
        if crown_1_mm is not None:
            on_crowns.append(Width(1.0 - other_row, -crown_1_mm))
        missed = max(wanted - len(on_crowns), 0)
        half_is_on_crown = (crown_1_mm if other_row < 0 else crown_0_mm) is not None
        yield Ending(
            at_least=(most, *on_crowns),
            at_most=(most, *on_crowns),
            missed_count=missed,
            cut_count=0 if half_unit or half_is_on_crown else 1,
        )
        yield Ending(
            at_least=(least, *on_crowns),
            at_most=(most, *on_crowns),
            narrow_ratio=least.cover_ratio,
            missed_count=missed,
            cut_count=2 - len(on_crowns),
        )


def row_covers_mm(row_0_mm: float, *, cover_mm: float, bond: Bond) -> tuple[float, ...]:
    """The cover of the end piece in each kind of course, from that of bond row 0.

    >>> row_covers_mm(200.0, cover_mm=300.0, bond=Bond.BROKEN)
    (200.0, 50.0)
    """
    if row_0_mm <= TOUCH:
        row_0_mm += cover_mm
    if bond is Bond.STRAIGHT:
        return (row_0_mm,)
    half_mm = cover_mm / 2
    return (row_0_mm, row_0_mm - half_mm if row_0_mm > half_mm + TOUCH else row_0_mm + half_mm)


def end_pieces(
    edge: Edge, *, row_0_mm: float, cover_mm: float, unit_width_mm: float, bond: Bond, half_unit: bool, large: bool
) -> tuple[EndPiece, ...]:
    """The pieces at this edge, one for each kind of course. ``large``: units-and-a-half are to be had and fit here."""
    pieces: list[EndPiece] = []
    for bond_row, piece_mm in enumerate(row_covers_mm(row_0_mm, cover_mm=cover_mm, bond=bond)):
        whole_mm = piece_mm + cover_mm if large and piece_mm < cover_mm / 2 - TOUCH else piece_mm
        pieces.append(
            EndPiece(
                at=edge.name,
                bond_row=bond_row,
                fit=_fit(edge, piece_mm=piece_mm, cover_mm=cover_mm, half_unit=half_unit),
                cover_mm=whole_mm,
                width_mm=whole_mm + unit_width_mm - cover_mm,
            )
        )
    return tuple(pieces)


def _fit(edge: Edge, *, piece_mm: float, cover_mm: float, half_unit: bool) -> Fit:
    def same(width_mm: float) -> bool:
        return width_mm - TOUCH <= piece_mm <= width_mm + TOUCH

    if same(cover_mm):
        return Fit.WHOLE
    if any(same(cover_mm - crown_mm) for crown_mm in edge.crowns_mm):
        return Fit.HIGH_POINT
    return Fit.HALF if half_unit and same(cover_mm / 2) else Fit.CUT


def piece_alone(*, at: str, bond_row: int, width_mm: float, unit_width_mm: float) -> Iterator[EndPiece]:
    """The one unit between an opening and what is next to it: nothing laps it, so it covers its whole width."""
    if width_mm > TOUCH:
        fit = Fit.WHOLE if width_mm >= unit_width_mm - TOUCH else Fit.CUT
        yield EndPiece(at=at, bond_row=bond_row, fit=fit, cover_mm=width_mm, width_mm=width_mm)


def least_cut_mm(pieces: Sequence[EndPiece]) -> float | None:
    """The least cover width among the pieces to be cut; None when nothing is cut."""
    return min((piece.cover_mm for piece in pieces if piece.fit in {Fit.CUT, Fit.HIGH_POINT}), default=None)
