"""Battens, nails, underlay and fixings, as their own plans count them.

Source: the plans themselves. Scope: what was worked out; a part that was not asked for has no line.
"""

from collections import Counter
from collections.abc import Iterator

from gaugerod.basis.citation import Citation
from gaugerod.coverings.double_lap import RandomSlates, SizedSlate
from gaugerod.fixing.nails import NailChosen
from gaugerod.fixing.plan import FixingPlan
from gaugerod.take_off.answer import Measured, Trade
from gaugerod.take_off.ask import TakeOffAsk

_KINDS = (
    ("tail_clips_count", "tail-clips", "tail clip"),
    ("eaves_clips_count", "eaves-clips", "eaves clip"),
    ("verge_clips_count", "verge-clips", "verge clip"),
    ("hooks_count", "slate-hooks", "slate hook"),
    ("bonds_count", "bonds", "bond of a small piece to its neighbour"),
    ("either_count", "nails-or-clips", "nail or clip, as the tile's maker says"),
)


def beneath_measured(ask: TakeOffAsk) -> Iterator[Measured]:
    """Underlay, battens and their nails, then the fixings of the covering."""
    yield from _underlay(ask)
    yield from _battens(ask)
    yield from _fixings(ask)


def _underlay(ask: TakeOffAsk) -> Iterator[Measured]:
    if ask.rolls is not None:
        length_m = ask.rolls.roll_length_mm / 1000
        yield Measured(
            item="underlay-roll",
            what=f"roll of underlay, {length_m:g} m",
            trade=Trade.UNDERLAY,
            unit="rolls",
            net=float(ask.rolls.rolls_count),
            by_slope=(("all slopes", float(ask.rolls.rolls_count)),),
            how=f"{ask.rolls.net_length_mm / 1000:.1f} m of runs and strips, laps counted, cut from the fewest rolls",
        )
    taped = [(plan.where, plan.remedies[0].tape_length_mm / 1000) for plan in ask.underlay if plan.remedies]
    if any(metres for _, metres in taped):
        yield _metres("lap-tape", "tape for laps between battens", Trade.UNDERLAY, taped, "every lap that is taped")


def _battens(ask: TakeOffAsk) -> Iterator[Measured]:
    battens = ask.battens
    if battens is None:
        return
    for each in battens.cutting.buy:
        yield Measured(
            item=f"batten-{each.stock_mm}",
            what=f"batten, {each.stock_mm / 1000:g} m lengths",
            trade=Trade.BATTENS,
            unit="pieces",
            net=float(each.count),
            by_slope=(("all slopes", float(each.count)),),
            how=f"the cutting list: {battens.cutting.net_mm / 1000:.1f} m laid, {battens.cutting.bought_mm / 1000:.1f} m bought",
        )
    counter = [
        (slope.where, slope.counter_battens.length_mm / 1000) for slope in battens.slopes if slope.counter_battens
    ]
    if counter:
        yield _metres("counter-batten", "counter-batten", Trade.BATTENS, counter, "one up every rafter")
    extra = [(plan.where, plan.remedies[0].extra_batten_length_mm / 1000) for plan in ask.underlay if plan.remedies]
    if any(metres for _, metres in extra):
        yield _metres(
            "lap-batten", "batten on laps of the underlay", Trade.BATTENS, extra, "every lap that has a batten"
        )
    for nails in battens.nails:
        yield Measured(
            item=f"batten-nails-{nails.length_mm:g}x{nails.shank_mm:g}",
            what=f"nails {nails.length_mm:g} × {nails.shank_mm:g} mm for {nails.what}",
            trade=Trade.BATTENS,
            unit="pieces",
            net=float(nails.count),
            by_slope=(("all slopes", float(nails.count)),),
            how="every crossing of a rafter, both ends at a joint",
            each_kg=nails.mass_kg / nails.count if nails.count else None,
            citation=nails.length_citation,
        )


def _fixings(ask: TakeOffAsk) -> Iterator[Measured]:
    slates = isinstance(ask.covering, SizedSlate | RandomSlates)
    nailed = [(plan.where, float(plan.total.nails_count)) for plan in ask.fixings]
    if any(count for _, count in nailed):
        nail = next((plan.nail for plan in ask.fixings if plan.nail is not None), None)
        yield _pieces(
            "slate-nails" if slates else "tile-nails",
            f"{'slate' if slates else 'tile'} nail: {nail}" if nail is not None else "nail, size not told",
            nailed,
            "the least by rule, unit by unit; wind may ask for more",
            mass_kg=_nail_kg(ask.fixings),
            citation=None if nail is None else nail.mass_citation,
        )
    for field, item, what in _KINDS:
        counted = [(plan.where, float(getattr(plan.total, field))) for plan in ask.fixings]
        if any(count for _, count in counted):
            yield _pieces(item, what, counted, "the least by rule, unit by unit; wind may ask for more")


def _nail_kg(plans: tuple[FixingPlan, ...]) -> float | None:
    """The mass of one nail where every slope has the same one."""
    nails: list[NailChosen] = [plan.nail for plan in plans if plan.nail is not None]
    each = Counter(nail.each_kg for nail in nails)
    return nails[0].each_kg if len(each) == 1 else None


def _pieces(
    item: str,
    what: str,
    by_slope: list[tuple[str, float]],
    how: str,
    *,
    mass_kg: float | None = None,
    citation: Citation | None = None,
) -> Measured:
    return Measured(
        item=item,
        what=what,
        trade=Trade.FIXINGS,
        unit="pieces",
        net=sum(count for _, count in by_slope),
        by_slope=tuple(by_slope),
        how=how,
        each_kg=mass_kg,
        citation=citation,
    )


def _metres(item: str, what: str, trade: Trade, by_slope: list[tuple[str, float]], how: str) -> Measured:
    return Measured(
        item=item,
        what=what,
        trade=trade,
        unit="m",
        net=sum(metres for _, metres in by_slope),
        by_slope=tuple(by_slope),
        how=how,
    )
