"""What the order leaves out, and why: a sentence each.

Source: the parts that were worked out, slope by slope. Scope: a part that was not asked for is named once, for all slopes.
"""

from collections.abc import Iterator, Sequence

from gaugerod.coverings.double_lap import RandomSlates
from gaugerod.take_off.answer import OrderLine
from gaugerod.take_off.ask import TakeOffAsk


def left_out(ask: TakeOffAsk, lines: Sequence[OrderLine]) -> Iterator[str]:
    """A sentence for everything that is in no line."""
    for name in ask.not_set_out:
        yield f"{name}: nothing of this slope is counted, for it was not set out."
    for name in ask.not_laid:
        yield f"{name}: the covering of this slope, for it was not laid out unit by unit."
    yield from _beneath(ask)
    yield from _edges(ask)
    yield from _wishes_not_used(ask)
    known = {line.measured.item for line in lines}
    for pack in ask.wished.packs:
        if pack.item not in known:
            yield f"No item of this job is called {pack.item}, so the pack stated for it is not used."


def _beneath(ask: TakeOffAsk) -> Iterator[str]:
    if ask.battens is None:
        yield "Battens and their nails: they were not worked out. Put [battens] into the job, with the rafter spacing."
    else:
        battened = {slope.where for slope in ask.battens.slopes if slope.net_mm}
        yield from _missing(ask, battened, "the battens of this slope and their nails")
        if battened and not ask.battens.nails:
            yield "The nails of the battens: no rule read here reaches these battens on these rafters. Their findings say why."
    if ask.rolls is None:
        yield "Underlay: it was not worked out. Put [underlay] into the job."
    else:
        yield from _missing(ask, {plan.where for plan in ask.underlay if plan.runs}, "the underlay of this slope")
    if not ask.fixings:
        yield "Nails, clips and hooks of the covering: they were not worked out. Put [fixings] into the job."
    else:
        yield from _missing(ask, {plan.where for plan in ask.fixings}, "the fixings of this slope's covering")


def _missing(ask: TakeOffAsk, there: set[str], what: str) -> Iterator[str]:
    """Slopes that were set out, and that this part was not worked out for."""
    for name in (*(slope.name for slope in ask.slopes), *ask.not_laid):
        if name not in there:
            yield f"{name}: {what}. What was found of it says why."


def _edges(ask: TakeOffAsk) -> Iterator[str]:
    if ask.edges is None:
        return
    bare = [edge.name for edge in ask.edges.edges if edge.line is not None and not edge.made]
    if bare:
        yield f"Edges of which it was not said how they are made: {'; '.join(bare)}."
    open_ones = [edge.name for edge in ask.edges.edges if edge.opening is not None and not edge.made]
    if open_ones:
        yield f"Openings of which it was not said what stands in them, their lead and kits with them: {'; '.join(open_ones)}."
    alike: dict[str, list[str]] = {}
    for finding in ask.edges.findings:
        if finding.leaves_out:
            alike.setdefault(finding.says, []).append(finding.where)
    for says, places in alike.items():
        yield f"{'; '.join(places)}: {says}"


def _wishes_not_used(ask: TakeOffAsk) -> Iterator[str]:
    """What the job states of its order, and that this roof has no use for."""
    if isinstance(ask.covering, RandomSlates):
        if ask.wished.breakage is not None:
            yield "The breakage stated is not added: random slates are broken already in their own record."
        if ask.wished.flat_waste is not None:
            yield "No flat percentage is compared: random slates are counted by the run of every length."
    elif ask.wished.flat_waste is not None and (ask.not_laid or ask.not_set_out):
        yield "No flat percentage is compared, for not every slope was laid out unit by unit."
