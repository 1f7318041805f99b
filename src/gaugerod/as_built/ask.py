"""A roof to check: where its battens or tails were measured, and what it is covered with.

Axes: x along the eaves from the left end of the roof structure, y up the slope from the outer face of the fascia.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate
from typing import assert_never

from gaugerod.basis.band import Band
from gaugerod.basis.errors import NothingToSetOut
from gaugerod.basis.limit import Limit
from gaugerod.basis.rounding import Division
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.standards.edition import Edition, Exposure

Covering = SingleLapTile | PlainTile | SizedSlate
"""The coverings whose laps can be read off battens or tails: courses of one length."""


class RoofTop(StrEnum):
    """What covers the heads of the top course."""

    RIDGE = "ridge"
    ABUTMENT = "abutment"


@dataclass(frozen=True, slots=True, kw_only=True)
class BattensMeasured:
    """One place with the top edge of every batten, up the slope from the fascia face, first to last.

    ``length_mm`` is the rafter there, fascia face to apex.
    """

    at_mm: float
    length_mm: float
    marks_mm: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MarginsMeasured:
    """One place with the visible margins: the tail of each course to the tail of the next, from the first course up.

    ``overhang_mm`` is the tail of the first course past the fascia face, measured on the slope.
    """

    at_mm: float
    length_mm: float
    overhang_mm: float
    margins_mm: tuple[float, ...]


RodMeasured = BattensMeasured | MarginsMeasured


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofAsk:
    """One slope to check. Lengths in mm along the slope.

    ``rods``            the places measured, left to right, the same courses at each
    ``finished``        False: the courses go on; the top is not judged yet
    ``ridge_cover_mm``  apex down the slope to the lower edge of the ridge or flashing; None: not known
    ``headlap``         the least lap of plain tiles or slates where it is stated; None: the edition's table answers
    ``overhang``, ``top``  bands for the first tail and the top batten; None: the edition's
    """

    where: str
    covering: Covering
    pitch_deg: float
    exposure: Exposure
    edition: Edition
    division: Division
    rods: tuple[RodMeasured, ...]
    finished: bool = True
    top_is: RoofTop = RoofTop.RIDGE
    ridge_cover_mm: float | None = None
    headlap: Limit | None = None
    overhang: Band | None = None
    top: Band | None = None


def tail_to_mark_mm(covering: Covering) -> float:
    """From the tail of a unit up to the line its course is set out by: nib face, or the head a slate's lap counts from.

    Raises NothingToSetOut where the hanging length is not known.

    >>> from gaugerod.coverings.double_lap_catalogue import sized_slate
    >>> tail_to_mark_mm(sized_slate("slate-500x250"))
    500.0
    """
    match covering:
        case SizedSlate():
            return covering.length_mm - covering.lost_at_head_mm
        case SingleLapTile() | PlainTile():
            if covering.hanging_length_mm is None:
                raise NothingToSetOut(
                    f"{covering.title}: the hanging length is not known, so battens and tails cannot be told from each "
                    "other. Measure from the bearing face of the nibs to the tail and give it as hanging_length."
                )
            return covering.hanging_length_mm
        case _ as unreachable:
            assert_never(unreachable)


def marks_of_mm(rod: RodMeasured, *, tail_to_mark_mm: float) -> tuple[float, ...]:
    """The mark of every course at one place, up the slope from the fascia face.

    >>> rod = MarginsMeasured(at_mm=0.0, length_mm=2000.0, overhang_mm=50.0, margins_mm=(340.0, 345.0))
    >>> marks_of_mm(rod, tail_to_mark_mm=397.0)
    (347.0, 687.0, 1032.0)
    """
    match rod:
        case BattensMeasured():
            return rod.marks_mm
        case MarginsMeasured():
            return _summed_mm(tail_to_mark_mm - rod.overhang_mm, rod.margins_mm)
        case _ as unreachable:
            assert_never(unreachable)


def _summed_mm(first_mm: float, margins_mm: Sequence[float]) -> tuple[float, ...]:
    return tuple(accumulate(margins_mm, initial=first_mm))
