"""The cutting list of all the slopes together: what to buy, how each length is cut, and what is left."""

from collections import Counter, deque
from collections.abc import Sequence
from functools import reduce
from math import ceil, gcd

from gaugerod.substrate.battens.answer import (
    Bought,
    CutGroup,
    CuttingList,
    PlacedPiece,
    Proof,
    SawnLength,
    SlopeBattens,
)
from gaugerod.substrate.battens.ask import BattensAsk
from gaugerod.substrate.battens.exact_cutting import Cut, cost_of
from gaugerod.substrate.battens.planned import Planned, cuts_of, stock_of


def whole_cutting(ask: BattensAsk, plans: Sequence[Planned], slopes: Sequence[SlopeBattens]) -> CuttingList:
    """Every piece of every slope cut, the better of two ways: slope by slope where a pattern repeats, or all mixed."""
    stock_mm = stock_of(ask)
    mixed = cuts_of([length_mm for plan in plans for length_mm in plan.pieces_mm], ask, stock_mm=stock_mm)
    apart = (
        *(cut for plan in plans if plan.repeating for cut in plan.repeating.cuts),
        *cuts_of([mm for plan in plans if not plan.repeating for mm in plan.pieces_mm], ask, stock_mm=stock_mm),
    )
    best = min(apart, mixed, key=cost_of)
    cuts = sorted((Cut(cut.stock_mm, tuple(sorted(cut.pieces_mm, reverse=True))) for cut in best), key=_longest_first)
    net_mm = sum(sum(cut.pieces_mm) for cut in cuts)
    bought_mm = sum(cut.stock_mm for cut in cuts)
    proof, says = _proof(plans, stock_mm, net_mm=net_mm, bought_mm=bought_mm, mixed=best is mixed)
    lengths = Counter(cut.stock_mm for cut in cuts)
    return CuttingList(
        buy=tuple(Bought(stock_mm=length_mm, count=lengths[length_mm]) for length_mm in sorted(lengths)),
        groups=_groups(cuts, kerf_mm=ask.kerf.value),
        sawn=_sawn(cuts, slopes, kerf_mm=ask.kerf.value),
        net_mm=net_mm,
        bought_mm=bought_mm,
        lengths_count=len(cuts),
        offcuts_used_count=sum(len(cut.pieces_mm) - 1 for cut in cuts),
        proof=proof,
        proof_says=says,
    )


def _longest_first(cut: Cut) -> tuple[int, ...]:
    return (*(-length_mm for length_mm in cut.pieces_mm), cut.stock_mm)


def _groups(cuts: Sequence[Cut], *, kerf_mm: float) -> tuple[CutGroup, ...]:
    """Lengths cut alike."""
    return tuple(
        CutGroup(
            count=count, stock_mm=cut.stock_mm, pieces_mm=cut.pieces_mm, left_mm=left_over_mm(cut, kerf_mm=kerf_mm)
        )
        for cut, count in Counter(cuts).items()
    )


def _sawn(cuts: Sequence[Cut], slopes: Sequence[SlopeBattens], *, kerf_mm: float) -> tuple[SawnLength, ...]:
    """Each piece given to a place that wants its length, the lowest battens first."""
    wanted: dict[int, deque[PlacedPiece]] = {}
    for slope in slopes:
        for line in slope.lines:
            pieces_mm = (length_mm for stretch in line.stretches for length_mm in stretch.pieces_mm)
            for number, length_mm in enumerate(pieces_mm, start=1):
                place = PlacedPiece(length_mm=length_mm, where=slope.where, batten=line.name, piece=number)
                wanted.setdefault(length_mm, deque()).append(place)
    return tuple(
        SawnLength(
            stock_mm=cut.stock_mm,
            pieces=tuple(wanted[length_mm].popleft() for length_mm in cut.pieces_mm),
            left_mm=left_over_mm(cut, kerf_mm=kerf_mm),
        )
        for cut in cuts
    )


def left_over_mm(cut: Cut, *, kerf_mm: float) -> float:
    """What is left of a length: nothing where the last saw cut takes the rest. mm.

    >>> [left_over_mm(Cut(4800, pieces), kerf_mm=3.0) for pieces in ((4800,), (2400, 1800), (2400, 2396))]
    [0.0, 594.0, 0.0]
    """
    spare_mm = cut.stock_mm - sum(cut.pieces_mm) - kerf_mm * (len(cut.pieces_mm) - 1)
    return spare_mm - kerf_mm if spare_mm > kerf_mm else 0.0


def _proof(
    plans: Sequence[Planned], stock_mm: Sequence[int], *, net_mm: int, bought_mm: int, mixed: bool
) -> tuple[Proof, str]:
    """What is known of the plan."""
    step_mm = reduce(gcd, stock_mm)
    least_mm = ceil(net_mm / step_mm) * step_mm
    if bought_mm <= least_mm:
        return Proof.LEAST, f"No plan buys fewer metres: {net_mm / 1000:.1f} m are laid."
    alone = plans[0].repeating if len(plans) == 1 and not mixed else None
    if alone is not None and alone.proved:
        return (
            Proof.LEAST_REPEATING,
            f"No pattern that repeats, with at most {alone.most_pieces} pieces to a batten, buys less.",
        )
    spare_mm = bought_mm - least_mm
    return Proof.FOUND, f"The least that was found: not more than {spare_mm / 1000:.1f} m over what any plan must buy."
