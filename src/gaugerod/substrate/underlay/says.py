"""The underlay in steps, with this slope's own figures, and what its type changes later."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from gaugerod.coverings.underlay import Resistance, Support
from gaugerod.rules.underlay_type import counts_as, is_air_permeable
from gaugerod.setting_out.said import counted, said
from gaugerod.standards.underlay import UnderlayFigure
from gaugerod.substrate.underlay.answer import EdgeReach, LapBetween, RemedyCost, Run, RunLap, Strip, StripKind
from gaugerod.substrate.underlay.ask import LapRemedy, UnderlayAsk


def underlay_says(
    ask: UnderlayAsk,
    *,
    edges: Sequence[EdgeReach],
    runs: Sequence[Run],
    laps: Sequence[RunLap],
    strips: Sequence[Strip],
    remedies: Sequence[RemedyCost],
) -> tuple[str, ...]:
    """What to do, in order: strips first, then the runs from the eaves, each edge, the laps, and what the type changes."""
    return (
        *_strips(strips),
        *_runs(ask, runs, laps),
        *(f"At the {edge.edge.name}: {edge.does}." for edge in edges),
        *_remedies(ask, laps),
        *map(_cost, remedies),
        _lie(ask),
        *type_changes(ask),
    )


def type_changes(ask: UnderlayAsk) -> Iterator[str]:
    """What the type of the underlay changes in ventilation and fixing."""
    counted_as = counts_as(record=ask.record, support=ask.support)
    match counted_as:
        case Resistance.LOW:
            yield "Low resistance: vapour passes through it, and smaller ventilation openings may do; see the ventilation."
        case Resistance.HIGH:
            yield "High resistance: vapour does not pass, so the roof space is ventilated in full; see the ventilation."
        case _ as unreachable:
            assert_never(unreachable)
    if counted_as is not ask.record.resistance:
        yield "Its label says low resistance; laid on boards it counts as high."
    by_standard, by_warranty = (
        is_air_permeable(record=ask.record, edition=ask.edition, by=which)
        for which in (UnderlayFigure.AIR_PERMEABLE_FROM, UnderlayFigure.AIR_PERMEABLE_FROM_OTHER)
    )
    if by_standard or by_warranty:
        yield (
            "Air-permeable: it takes less of the wind's lift off the covering, so the fixings are reckoned without its help "
            "and a nail may become a clip."
        )
    if by_standard != by_warranty:
        yield "The two sources differ on whether it is air-permeable: fix as if it were, ventilate as if it were not."


def _strips(strips: Sequence[Strip]) -> Iterator[str]:
    for strip in strips:
        match strip.kind:
            case StripKind.EAVES_CARRIER:
                yield (
                    f"Along the {strip.edge.name} fix a rigid tray or fillet without a sag behind the fascia, "
                    f"{strip.length_mm:.0f} mm of it. Only the tray, or a strip that bears sunlight, goes into the gutter."
                )
            case StripKind.VALLEY:
                counted_where = ", counted with the slope on the other side" if strip.elsewhere else ""
                yield (
                    f"Down the {strip.edge.name} lay a strip {strip.width_mm:g} mm wide in one piece, "
                    f"{strip.length_mm:.0f} mm long, before any run{counted_where}. No bitumen underlay under lead: it sticks."
                )
            case _ as unreachable:
                assert_never(unreachable)


def _runs(ask: UnderlayAsk, runs: Sequence[Run], laps: Sequence[RunLap]) -> Iterator[str]:
    if not runs:
        return
    lines = ", ".join(said(run.low_mm, ask.division) for run in runs)
    yield f"Lay {counted(len(runs), 'run')} from the eaves up, lower edges at {lines} from the fascia face."
    if laps:
        smallest = min(lap.lap_mm for lap in laps)
        yield f"The smallest lap is {said(smallest, ask.division)}; at least {said(laps[0].least_mm, ask.division)} is needed."


def _remedies(ask: UnderlayAsk, laps: Sequence[RunLap]) -> Iterator[str]:
    for lap in laps:
        if not isinstance(lap.place, LapBetween):
            continue
        match lap.place.remedy:
            case LapRemedy.WIDEN:
                yield f"Run {lap.upper} laps by {said(lap.lap_mm, ask.division)}, so that a batten lies on the lap."
            case LapRemedy.EXTRA_BATTEN:
                at = said(lap.place.extra_batten_mm or 0.0, ask.division)
                yield (
                    f"Below run {lap.upper} add a batten on the lap, top edge at {at}; no thicker than the others, and clear "
                    "of the units above."
                )
            case LapRemedy.TAPE:
                yield f"Tape the lap below run {lap.upper} with the underlay maker's own tape, dry and clean."
            case _ as unreachable:
                assert_never(unreachable)


def _cost(cost: RemedyCost) -> str:
    """One remedy over the whole slope."""
    named = {
        LapRemedy.WIDEN: "widened to the next batten",
        LapRemedy.EXTRA_BATTEN: "given extra battens",
        LapRemedy.TAPE: "taped",
    }[cost.remedy]
    besides = [
        f"{length_mm / 1000:.1f} m of {thing}"
        for thing, length_mm in (("batten", cost.extra_batten_length_mm), ("tape", cost.tape_length_mm))
        if length_mm
    ]
    takes = ", ".join([f"{cost.laid_area_mm2 / 1e6:.1f} m² of underlay in {counted(cost.runs_count, 'run')}", *besides])
    return f"Laps between battens {named}: {takes}."


def _lie(ask: UnderlayAsk) -> str:
    if ask.counter_battens:
        return "Lay it taut: water drains beside the counter-battens, and no drape is needed."
    if ask.support is Support.RAFTERS:
        return "Let it hang a little between rafters, so that water passes under the battens."
    return "It lies on a deck: counter-battens over the rafters let water pass under the battens."
