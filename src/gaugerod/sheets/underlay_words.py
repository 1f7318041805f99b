"""Underlay in a few words: what an edge does, where a lap lies, what a strip is called."""

from typing import assert_never

from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.job.in_words import sentence_in_unit
from gaugerod.laying.ask import EdgeKind
from gaugerod.sheets.lengths_shown import bare_fine_length, bare_length
from gaugerod.substrate.underlay.answer import (
    EdgeReach,
    LapBetween,
    LapOnBatten,
    RunLap,
    Strip,
    StripKind,
    UnderlayPlan,
)
from gaugerod.substrate.underlay.ask import LapRemedy


def strip_names(plan: UnderlayPlan) -> tuple[tuple[Strip, str], ...]:
    """Every strip of the slope with the name it goes by: S1, S2 … in the order of laying."""
    return tuple((strip, f"S{number}") for number, strip in enumerate(plan.strips, start=1))


def strip_said(strip: Strip) -> str:
    """What a strip is."""
    match strip.kind:
        case StripKind.EAVES_CARRIER:
            return f"tray or strip along the {strip.edge.name}"
        case StripKind.VALLEY:
            counted = ", counted with the slope on its other side" if strip.elsewhere else ""
            return f"strip down the {strip.edge.name}, in one piece{counted}"
        case _ as unreachable:
            assert_never(unreachable)


def edge_past(reach: EdgeReach, unit: LengthUnit) -> str:
    """An edge with how far the underlay goes past it, in the fewest words."""
    name = reach.edge.name
    if reach.past_mm == 0:
        return name
    if reach.past_mm < 0:
        return f"{name}: {bare_length(-reach.past_mm, unit)} short"
    # It must reach so far at least, so a sixteenth is rounded up.
    far = bare_fine_length(reach.past_mm, unit, towards=Sense.AT_MOST)
    return f"{name}: {far} up" if reach.edge.kind is EdgeKind.ABUTMENT else f"{name}: {far} past"


def edge_does(reach: EdgeReach, unit: LengthUnit) -> str:
    """What the underlay does at an edge."""
    does = sentence_in_unit(reach.does, unit)
    return f"{does[:1].upper()}{does[1:]}."


def lap_place_short(lap: RunLap) -> str:
    """Where a lap lies, for a label."""
    match lap.place:
        case LapOnBatten():
            return f"batten {lap.place.batten}"
        case LapBetween():
            return _REMEDY_SHORT[lap.place.remedy]
        case None:
            return "see findings"
        case _ as unreachable:
            assert_never(unreachable)


_REMEDY_SHORT = {LapRemedy.WIDEN: "widened", LapRemedy.EXTRA_BATTEN: "extra batten", LapRemedy.TAPE: "taped"}


def lap_place_said(lap: RunLap, unit: LengthUnit) -> str:
    """Where a lap lies, and what is done about it where that is between battens."""
    place = lap.place
    match place:
        case LapOnBatten():
            return f"Under batten {place.batten}."
        case LapBetween():
            return _between(place, unit)
        case None:
            return "The battens are not set out, so where it lies is not known."
        case _ as unreachable:
            assert_never(unreachable)


def _between(place: LapBetween, unit: LengthUnit) -> str:
    match place.remedy:
        case LapRemedy.WIDEN:
            return "Between battens at the least lap: widened, down onto the next batten."
        case LapRemedy.EXTRA_BATTEN:
            at = "" if place.extra_batten_mm is None else f", top edge at {write_length(place.extra_batten_mm, unit)}"
            return f"Between battens: an extra batten on it{at}."
        case LapRemedy.TAPE:
            return f"Between battens: tape it with the maker's own tape, {write_length(place.length_mm, unit)} of it."
        case _ as unreachable:
            assert_never(unreachable)


REMEDIES_SAID = {
    LapRemedy.WIDEN: "widen each lap down to the next batten",
    LapRemedy.EXTRA_BATTEN: "an extra batten on each lap",
    LapRemedy.TAPE: "tape each lap",
}
