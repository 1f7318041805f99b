"""What else could be done across the slope, where something is cut."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

from gaugerod.basis.finding import TOUCH
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import AcrossAsk, EndPiece, Fit, SideKind
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.end_pieces import least_cut_mm
from gaugerod.setting_out.said import said

FURTHEST_PAST_BAND_MM = 60.0
"""A verge moved further than this past its band is not offered (house)."""

FURTHEST_PAST_SHUNT_RATIO = 0.02
"""Another covering is offered when its cover is this much past the shunt at most (house)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What setting out came to: the end pieces, the units in a course, and their cover."""

    pieces: tuple[EndPiece, ...]
    units_count: int
    cover_mm: float

    @property
    def cuts_count(self) -> int:
        """Pieces to be cut at the sides of the slope, counting each kind of course."""
        return sum(1 for piece in self.pieces if piece.fit is Fit.CUT and piece.at in {"left", "right"})


def across_alternatives(
    ask: AcrossAsk, *, now: Tried, pieces: Sequence[EndPiece], again: Callable[[AcrossAsk], Tried]
) -> tuple[Alternative, ...]:
    """Ranked: those that keep all limits first, and among those the least change. ``again`` sets another ask out."""
    if not any(piece.fit is Fit.CUT for piece in pieces):
        return ()
    offers = [*(_whole_units(ask) if now.cuts_count else ()), *_other_units(ask, now, again)]
    ranked = sorted(offers, key=lambda offer: (not offer.keeps_limits, offer.by_mm))
    return tuple(replace(offer, rank=rank) for rank, offer in enumerate(ranked, 1))


def _whole_units(ask: AcrossAsk) -> Iterator[Alternative]:
    """Overhangs moved past their bands, or a cover past the shunt, until whole units fill the course.

    In broken bond with half units, whole units and a half fill it as well. Nothing is offered where bands and shunt
    already have room for whole units, and it is an opening that had them cut.
    """
    kinds = {ask.left.kind, ask.right.kind}
    if not kinds <= {SideKind.VERGE, SideKind.ABUTMENT} or SideKind.VERGE not in kinds:
        return
    least_mm = ask.eaves_width_mm + ask.left.reach.least_mm + ask.right.reach.least_mm
    most_mm = ask.eaves_width_mm + ask.left.reach.greatest_mm + ask.right.reach.greatest_mm
    in_unit = 2 if ask.bond is Bond.BROKEN and ask.half_unit else 1
    fewest = floor(((least_mm - ask.unit_width_mm) / ask.cover_open_mm + 1) * in_unit) / in_unit
    offers: list[Alternative] = []
    for units in (fewest, fewest + 1 / in_unit):
        widest_mm = (units - 1) * ask.cover_open_mm + ask.unit_width_mm
        closest_mm = (units - 1) * ask.cover_closed_mm + ask.unit_width_mm
        if units <= 1:
            continue
        if widest_mm < least_mm - TOUCH:
            offers += _verges_moved(ask, units, by_mm=widest_mm - least_mm)
            offers += _other_cover(ask, units, cover_mm=(least_mm - ask.unit_width_mm) / (units - 1))
        elif closest_mm > most_mm + TOUCH:
            offers += _verges_moved(ask, units, by_mm=closest_mm - most_mm)
            offers += _other_cover(ask, units, cover_mm=(most_mm - ask.unit_width_mm) / (units - 1))
        else:
            return
    yield from offers


def _verges_moved(ask: AcrossAsk, units_count: float, *, by_mm: float) -> Iterator[Alternative]:
    """The verges moved outwards by so much in all; inwards when negative."""
    verges = [(name, side) for name, side in (("left", ask.left), ("right", ask.right)) if side.kind is SideKind.VERGE]
    each_mm = by_mm / len(verges)
    out_by_mm = max(each_mm, -each_mm)
    new_mm = [(side.reach.greatest_mm if by_mm > 0 else side.reach.least_mm) + each_mm for _, side in verges]
    if out_by_mm > FURTHEST_PAST_BAND_MM or min(new_mm) < 0:
        return
    cover_mm = ask.cover_closed_mm if by_mm > 0 else ask.cover_open_mm
    words = " and ".join(
        f"{name} verge overhang to {said(reach_mm, ask.division)}"
        for (name, _), reach_mm in zip(verges, new_mm, strict=True)
    )
    effect = "the verge is at risk from wind" if by_mm > 0 else "water stains the wall"
    yield Alternative(
        rank=0,
        change=f"Change the {words}: {units_count:g} units at {said(cover_mm, ask.division)} cover, nothing cut at the sides.",
        by_mm=out_by_mm,
        costs=f"Outside the overhang's band by {said(out_by_mm, ask.division)} at each verge: {effect}.",
        keeps_limits=False,
        gauges=ceil(units_count),
        gauge_mm=cover_mm,
    )


def _other_cover(ask: AcrossAsk, units_count: float, *, cover_mm: float) -> Iterator[Alternative]:
    """A cover this unit does not reach, for choosing another covering by."""
    opened = cover_mm > ask.cover_open_mm
    past_mm = cover_mm - ask.cover_open_mm if opened else ask.cover_closed_mm - cover_mm
    if past_mm > FURTHEST_PAST_SHUNT_RATIO * cover_mm:
        return
    limit = said(ask.cover_open_mm if opened else ask.cover_closed_mm, ask.division)
    yield Alternative(
        rank=0,
        change=f"Another covering that covers {said(cover_mm, ask.division)}: {units_count:g} units, nothing cut at the sides.",
        by_mm=past_mm * (units_count - 1),
        costs=f"This unit covers {limit} fully {'open' if opened else 'closed'}: never force it past that.",
        keeps_limits=False,
        gauges=ceil(units_count),
        gauge_mm=cover_mm,
    )


def _other_units(ask: AcrossAsk, now: Tried, again: Callable[[AcrossAsk], Tried]) -> Iterator[Alternative]:
    """Another bond, or another companion unit: offered only where it leaves a wider least piece or fewer cuts."""
    tries: list[tuple[AcrossAsk, str, str]] = []
    if ask.bond is Bond.BROKEN:
        costs = "Only where the maker allows straight bond for this unit."
        tries.append((replace(ask, bond=Bond.STRAIGHT), "Straight bond", costs))
    if not ask.half_unit and _least_mm(now) >= ask.minimum_cut.value * now.cover_mm - TOUCH:
        costs = "One more kind of unit to order, if one is made."
        tries.append((replace(ask, half_unit=True), "Half units at the sides", costs))
    if not ask.unit_and_a_half:
        costs = "One more kind of unit to order, if one is made."
        tries.append((replace(ask, unit_and_a_half=True), "A unit-and-a-half cut down at the ends", costs))
    for other, change, costs in tries:
        then = again(other)
        then_mm, now_mm = _least_mm(then), _least_mm(now)
        wider = then_mm > now_mm + TOUCH
        fewer = then.cuts_count < now.cuts_count and then_mm >= now_mm - TOUCH
        if wider or fewer:
            yield Alternative(
                rank=0,
                change=f"{change}: {_left_over(ask, then)}.",
                by_mm=0.0,
                costs=costs,
                keeps_limits=then_mm >= ask.minimum_cut.value * then.cover_mm - TOUCH,
                gauges=then.units_count,
                gauge_mm=then.cover_mm,
            )


def _least_mm(tried: Tried) -> float:
    least_mm = least_cut_mm(tried.pieces)
    return tried.cover_mm if least_mm is None else least_mm


def _left_over(ask: AcrossAsk, tried: Tried) -> str:
    least_mm = least_cut_mm(tried.pieces)
    cover = said(tried.cover_mm, ask.division)
    if least_mm is None:
        return f"{tried.units_count} units at {cover} cover, nothing cut"
    return f"{tried.units_count} units at {cover} cover, the least piece covering {said(least_mm, ask.division)}"
