"""What the rules say of the underlay of one slope."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from gaugerod.basis.citation import Basis, Citation, common_practice
from gaugerod.basis.finding import Finding, Sense, not_covered
from gaugerod.coverings.underlay import Support
from gaugerod.laying.ask import EdgeKind
from gaugerod.rules.misfit import misfit
from gaugerod.rules.underlay_lap import underlay_lap
from gaugerod.rules.underlay_type import underlay_type
from gaugerod.rules.underlay_wind import underlay_wind
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure
from gaugerod.substrate.underlay.answer import LapBetween, RunLap
from gaugerod.substrate.underlay.ask import LapRemedy, UnderlayAsk
from gaugerod.substrate.underlay.batten_lines import greatest_gap_mm
from gaugerod.substrate.underlay.reach import other_sources

ON_BATTEN = "underlay lap on a batten"
REMEDIES = Citation(
    source="NHBC Standards 7.2.14 and the roof tile trade association's library: a lap that is not on a batten takes an "
    "extra batten, is widened to the next batten, or is taped",
    basis=Basis.PUBLISHED,
)
_NO_WAY_DOWN = common_practice("water on a boarded slope runs down between counter-battens")


def underlay_findings(ask: UnderlayAsk, laps: Sequence[RunLap], *, wind_held: bool) -> tuple[Finding, ...]:
    """Laps, their place on the battens, eaves, ridge, drape, type and wind."""
    return (
        *underlay_lap(
            where=ask.where,
            lap_mm=min((lap.lap_mm for lap in laps), default=ask.lap_mm),
            pitch_deg=ask.pitch_deg,
            fully_supported=ask.support.full,
            edition=ask.edition,
        ),
        *_on_battens(ask, laps),
        *_side_laps(ask),
        *_eaves(ask),
        *_ridge(ask),
        *_drape(ask),
        *underlay_type(where=ask.where, record=ask.record, edition=ask.edition),
        *underlay_wind(
            where=ask.where,
            site=ask.site,
            pitch_deg=ask.pitch_deg,
            fully_supported=ask.support.full,
            ratings=ask.record.ratings,
            gauge_mm=greatest_gap_mm(ask.rods),
            laps_restrained=wind_held,
            edition=ask.edition,
        ),
    )


def _on_battens(ask: UnderlayAsk, laps: Sequence[RunLap]) -> Iterator[Finding]:
    if not ask.rods:
        says = (
            "The battens are not set out, so where the laps fall between them is not known. Set the courses out first."
        )
        yield not_covered(rule=ON_BATTEN, where=ask.where, proposed=None, unit="mm", citation=REMEDIES, says=says)
    for lap in laps:
        if isinstance(lap.place, LapBetween):
            widened = lap.place.remedy is LapRemedy.WIDEN and lap.place.widened_mm is not None
            yield Finding(
                rule=ON_BATTEN,
                where=f"{ask.where}, run {lap.upper}",
                proposed=lap.lap_mm,
                limit=lap.place.widened_mm if widened else lap.least_mm,
                unit="mm",
                sense=Sense.AT_LEAST,
                citation=REMEDIES,
                says=_between(lap, lap.place),
            )


def _between(lap: RunLap, place: LapBetween) -> str:
    """The three remedies with their figures, and the one taken."""
    first = f"A lap of {lap.least_mm:g} mm here falls between battens, and the wind can lift it."
    extra = "no room for an extra batten" if place.extra_batten_mm is None else (
        f"an extra batten, top edge at {place.extra_batten_mm:g} mm, {place.length_mm:.0f} mm long"
    )  # fmt: skip
    wider = "no batten near enough to widen it to" if place.widened_mm is None else f"a lap of {place.widened_mm:g} mm"
    match place.remedy:
        case LapRemedy.WIDEN:
            taken = f"Taken: {wider}, down to the next batten. Instead: {extra}, or tape along the lap."
        case LapRemedy.EXTRA_BATTEN:
            taken = f"Taken: {extra}. Instead: tape along the lap; or {wider}."
        case LapRemedy.TAPE:
            taken = f"Taken: tape, {place.length_mm:.0f} mm of it. Instead: {extra}; or {wider}."
        case _ as unreachable:
            assert_never(unreachable)
    return f"{first} {taken}"


def _side_laps(ask: UnderlayAsk) -> Iterator[Finding]:
    if ask.rafters_mm:
        return
    least = underlay_figure(ask.edition, UnderlayFigure.SIDE_LAP_LEAST)
    yield not_covered(
        rule="underlay side lap",
        where=ask.where,
        proposed=None,
        unit="mm",
        citation=least.citation,
        says=(
            f"The rafters' places were not given, so no run is joined along its length. A side lap is {least.value:g} mm, "
            "over a rafter, measured to the rafter's far edge."
        ),
    )


def _eaves(ask: UnderlayAsk) -> Iterator[Finding]:
    if all(edge.kind is not EdgeKind.EAVES for edge in ask.outline.edges):
        return
    least = underlay_figure(ask.edition, UnderlayFigure.EAVES_CARRIER_LAP_LEAST)
    reach_mm = ask.carrier_reach_mm
    if reach_mm is None:
        says = (
            f"The tray or strip at the eaves must reach {least.value:g} mm or more up the slope from the fascia face."
        )
        yield not_covered(
            rule="eaves carrier lap", where=ask.where, proposed=None, unit="mm", citation=least.citation, says=says
        )
        return
    short_mm = least.value - reach_mm
    yield Finding(
        rule="eaves carrier lap",
        where=ask.where,
        proposed=reach_mm,
        limit=least.value,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=least.citation,
        says=(
            "The underlay, from the fascia face up, laps the tray or strip at the eaves by enough."
            if short_mm <= 0
            else f"The tray or strip reaches {misfit(short_mm)} too little up the slope: water backs up behind the fascia. "
            "Take a wider one."
        ),
    )


def _ridge(ask: UnderlayAsk) -> Iterator[Finding]:
    for what, other in other_sources(ask):
        default = {
            "short of the apex": UnderlayFigure.RIDGE_DRY_STOP_SHORT,
            "over the top fascia": UnderlayFigure.MONO_RIDGE_OVER_LEAST,
        }[what]
        taken = underlay_figure(ask.edition, default)
        yield Finding(
            rule="underlay at the ridge",
            where=ask.where,
            proposed=taken.value,
            limit=other.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=other.citation,
            says=(
                f"Sources differ on how far to go {what}: this one says {other.value:g} mm. Taken: {taken.value:g} mm, from "
                f"{taken.citation.source}."
            ),
        )


def _drape(ask: UnderlayAsk) -> Iterator[Finding]:
    if ask.support is Support.RAFTERS and not ask.counter_battens:
        nominal = underlay_figure(ask.edition, UnderlayFigure.DRAPE_NOMINAL)
        greatest = underlay_figure(ask.edition, UnderlayFigure.DRAPE_GREATEST)
        yield Finding(
            rule="underlay drape",
            where=ask.where,
            proposed=nominal.value,
            limit=greatest.value,
            unit="mm",
            sense=Sense.AT_MOST,
            citation=greatest.citation,
            says=(
                f"Let it hang {nominal.value:g} mm between rafters, so that water passes under the "
                f"battens; over {greatest.value:g} mm it flaps and may touch the insulation."
            ),
        )
    elif not ask.counter_battens:
        says = "On a deck with no counter-battens water lies behind the battens. Lay counter-battens, fixed into the rafters."
        yield not_covered(
            rule="underlay drape", where=ask.where, proposed=None, unit="mm", citation=_NO_WAY_DOWN, says=says
        )
