"""What else could be done across the slope, where something is cut."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from math import ceil, floor

from gaugerod.basis.finding import TOUCH
from gaugerod.coverings.single_lap import Bond
from gaugerod.setting_out.across import AcrossAsk, EndPiece, Fit, SideKind
from gaugerod.setting_out.courses import Alternative
from gaugerod.setting_out.said import said

FURTHEST_PAST_BAND_MM = 60.0
"""A verge moved further than this past its band is not offered (house)."""


def across_alternatives(
    ask: AcrossAsk,
    *,
    least_piece_mm: float | None,
    pieces: Sequence[EndPiece],
    again: Callable[[AcrossAsk], float | None],
) -> tuple[Alternative, ...]:
    """Ranked: those that keep all limits first, and among those the least change. ``again`` sets another ask out."""
    if not any(piece.fit is Fit.CUT for piece in pieces):
        return ()
    offers = [*_whole_units(ask), *_other_bond(ask, least_piece_mm, again), *_wider_unit(ask, least_piece_mm, again)]
    ranked = sorted(offers, key=lambda offer: (not offer.keeps_limits, offer.by_mm))
    return tuple(replace(offer, rank=rank) for rank, offer in enumerate(ranked, 1))


def _whole_units(ask: AcrossAsk) -> Iterator[Alternative]:
    """Overhangs moved past their bands until whole units (or halves in broken bond) fill the course."""
    kinds = {ask.left.kind, ask.right.kind}
    if not kinds <= {SideKind.VERGE, SideKind.ABUTMENT} or SideKind.VERGE not in kinds:
        return
    least_mm = ask.eaves_width_mm + ask.left.reach.least_mm + ask.right.reach.least_mm
    most_mm = ask.eaves_width_mm + ask.left.reach.greatest_mm + ask.right.reach.greatest_mm
    lap_mm = ask.unit_width_mm - ask.cover_open_mm
    fewest = floor((least_mm - lap_mm) / ask.cover_open_mm * 2) / 2
    halves = ask.bond is Bond.BROKEN and ask.half_unit
    for units in (fewest, ceil(fewest * 2 + 1) / 2) if halves else (float(floor(fewest)), float(floor(fewest) + 1)):
        if units < 1:
            continue
        widest_mm = (units - 1) * ask.cover_open_mm + ask.unit_width_mm
        closest_mm = (units - 1) * ask.cover_closed_mm + ask.unit_width_mm
        yield from _verges_moved(ask, units, short_mm=least_mm - widest_mm, over_mm=closest_mm - most_mm)


def _verges_moved(ask: AcrossAsk, units: float, *, short_mm: float, over_mm: float) -> Iterator[Alternative]:
    verges = [(name, side) for name, side in (("left", ask.left), ("right", ask.right)) if side.kind is SideKind.VERGE]
    by_mm = max(short_mm, over_mm)
    if by_mm <= TOUCH or by_mm / len(verges) > FURTHEST_PAST_BAND_MM:
        return
    each_mm = by_mm / len(verges)
    cover_mm = ask.cover_open_mm if short_mm > 0 else ask.cover_closed_mm
    new_mm = [side.reach.least_mm - each_mm if short_mm > 0 else side.reach.greatest_mm + each_mm for _, side in verges]
    if min(new_mm) < 0:
        return
    words = " and ".join(
        f"{name} verge overhang to {said(reach_mm, ask.division)}"
        for (name, _), reach_mm in zip(verges, new_mm, strict=True)
    )
    effect = "water stains the wall" if short_mm > 0 else "the verge is at risk from wind"
    yield Alternative(
        rank=0,
        change=f"Change the {words}: {units:g} units at {said(cover_mm, ask.division)} cover, nothing cut.",
        by_mm=by_mm,
        costs=f"Outside the overhang's band by {said(each_mm, ask.division)} at each verge: {effect}.",
        keeps_limits=False,
        gauges=0,
        gauge_mm=0.0,
    )


def _other_bond(
    ask: AcrossAsk, least_mm: float | None, again: Callable[[AcrossAsk], float | None]
) -> Iterator[Alternative]:
    if ask.bond is not Bond.BROKEN:
        return
    yield from _if_wider(
        ask,
        least_mm,
        again(replace(ask, bond=Bond.STRAIGHT)),
        change="Straight bond",
        costs="Only where the maker allows straight bond for this unit.",
    )


def _wider_unit(
    ask: AcrossAsk, least_mm: float | None, again: Callable[[AcrossAsk], float | None]
) -> Iterator[Alternative]:
    if ask.unit_and_a_half:
        return
    yield from _if_wider(
        ask,
        least_mm,
        again(replace(ask, unit_and_a_half=True)),
        change="A unit-and-a-half at the ends, if one is made",
        costs="One more kind of unit to order.",
    )


def _if_wider(
    ask: AcrossAsk, least_mm: float | None, then_mm: float | None, *, change: str, costs: str
) -> Iterator[Alternative]:
    """An offer only where the least piece gets wider, or nothing is cut any more."""
    now_mm = ask.cover_open_mm if least_mm is None else least_mm
    if then_mm is not None and then_mm <= now_mm + TOUCH:
        return
    result = "nothing is cut" if then_mm is None else f"the least piece covers {said(then_mm, ask.division)}"
    yield Alternative(
        rank=0,
        change=f"{change}: {result}.",
        by_mm=0.0,
        costs=costs,
        keeps_limits=then_mm is None or then_mm >= ask.minimum_cut.value * ask.cover_open_mm - TOUCH,
        gauges=0,
        gauge_mm=0.0,
    )
