"""Does the underlay's label reach the wind of its zone?

Source: zone pressures of BS 5534:2014+A2:2018 Annex A as quoted in print (published); the gates of the zones: altitude and
ridge height (published), pitch (memory), no significant topography and a well-sealed ceiling (published, a trade page).
Scope: underlay draped over rafters, on a site inside every gate, battens no further apart than the label was tested at.
Outside it the site's own pressure is needed; nothing is said here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gaugerod.basis.citation import Basis, Citation
from gaugerod.basis.finding import TOUCH, Finding, Sense, Verdict, not_covered
from gaugerod.basis.limit import Limit
from gaugerod.coverings.underlay import LabelRating
from gaugerod.rules.misfit import misfit
from gaugerod.rules.real_figures import refuse_unless_above_nothing
from gaugerod.standards.edition import Edition
from gaugerod.standards.table import OffTable
from gaugerod.standards.underlay import UnderlayFigure, underlay_figure, underlay_zone_pressure

GATE = "underlay zone gate"
UPLIFT = "underlay uplift"
_TOLD = Citation(
    source="trade pages and building-control articles on zones of underlay: no significant topography, a well-sealed ceiling",
    basis=Basis.PUBLISHED,
)
_SITE = "The zone figures do not answer here: have the pressure of this site calculated, and hold the label against it."


@dataclass(frozen=True, slots=True, kw_only=True)
class UpliftSite:
    """What the zone figures ask about the site. None: not known.

    ``zone``             1 to 5, read from the map of zones
    ``altitude_m``       of the site; ``ridge_height_m`` above the ground
    ``on_hill_or_cliff`` is the site on or near a hill, ridge or cliff that speeds the wind up?
    ``ceiling_sealed``   is the ceiling well sealed?
    """

    zone: int | None = None
    altitude_m: float | None = None
    ridge_height_m: float | None = None
    on_hill_or_cliff: bool | None = None
    ceiling_sealed: bool | None = None


def underlay_wind(
    *,
    where: str,
    site: UpliftSite,
    pitch_deg: float,
    fully_supported: bool,
    ratings: Sequence[LabelRating],
    gauge_mm: float | None,
    laps_restrained: bool,
    edition: Edition,
) -> tuple[Finding, ...]:
    """Every gate of the zones, then the label against the zone's pressure (Pa).

    ``gauge_mm`` is the greatest gap between battens; None: not set out. ``laps_restrained``: every lap is under a batten
    or taped. Raises NothingToSetOut for figures that are no measurements. Source and scope: see the head of this page.

    >>> site = UpliftSite(zone=1, altitude_m=100.0, ridge_height_m=9.0, on_hill_or_cliff=False, ceiling_sealed=True)
    >>> label = LabelRating(resistance_pa=820.0, gauge_mm=345.0, lap_restrained=True)
    >>> def verdict(gauge_mm: float, held: bool) -> str:
    ...     return underlay_wind(where="rear", site=site, pitch_deg=35.0, fully_supported=False, ratings=[label],
    ...                          gauge_mm=gauge_mm, laps_restrained=held, edition=Edition.GB)[-1].verdict.value
    >>> verdict(345.0, True), verdict(345.1, True), verdict(345.0, False)
    ('within', 'not-covered', 'not-covered')
    """
    refuse_unless_above_nothing(rule=UPLIFT, where=where, value=pitch_deg, unit="degrees")
    for rating in ratings:
        refuse_unless_above_nothing(rule=UPLIFT, where=where, value=rating.resistance_pa, unit="Pa")
        refuse_unless_above_nothing(rule=UPLIFT, where=where, value=rating.gauge_mm, unit="mm")
    pressure = _pressure(edition, site)
    if fully_supported:
        return (
            _not_covered(
                where, pressure.citation, "The zones are for underlay over open rafters; this one lies on a deck."
            ),
        )
    if isinstance(pressure, OffTable):
        says = "The zone (1 to 5) is not known. Read it from the map of zones, and give altitude, ridge height and site with it."
        return (_not_covered(where, pressure.citation, says),)
    gates = tuple(_gates(where, site, pitch_deg, edition))
    return (*gates, _against_label(where, gates, pressure, ratings, gauge_mm, laps_restrained=laps_restrained))


def _pressure(edition: Edition, site: UpliftSite) -> Limit | OffTable:
    return underlay_zone_pressure(edition, zone=0 if site.zone is None else site.zone)


def _gates(where: str, site: UpliftSite, pitch_deg: float, edition: Edition) -> Iterator[Finding]:
    measured = (
        ("the altitude", site.altitude_m, UnderlayFigure.ZONE_ALTITUDE_GREATEST, Sense.AT_MOST),
        ("the ridge above ground", site.ridge_height_m, UnderlayFigure.ZONE_RIDGE_GREATEST, Sense.AT_MOST),
        ("the pitch", pitch_deg, UnderlayFigure.ZONE_PITCH_LEAST, Sense.AT_LEAST),
        ("the pitch", pitch_deg, UnderlayFigure.ZONE_PITCH_GREATEST, Sense.AT_MOST),
    )
    for name, value, which, sense in measured:
        yield _measured_gate(where, name, value, underlay_figure(edition, which), sense)
    hill = None if site.on_hill_or_cliff is None else not site.on_hill_or_cliff
    yield _told_gate(where, "a site clear of hills, ridges and cliffs", hill)
    yield _told_gate(where, "a well-sealed ceiling", site.ceiling_sealed)


def _measured_gate(where: str, name: str, value: float | None, limit: Limit, sense: Sense) -> Finding:
    if value is not None:
        refuse_unless_above_nothing(rule=GATE, where=where, value=value, unit=limit.unit)
        finding = Finding(
            rule=GATE,
            where=where,
            proposed=value,
            limit=limit.value,
            unit=limit.unit,
            sense=sense,
            citation=limit.citation,
            says=f"The zone figures hold: {name} is {'at least' if sense is Sense.AT_LEAST else 'at most'} {limit.value:g}.",
        )
        if finding.verdict is Verdict.WITHIN:
            return finding
    how = "is not known" if value is None else f"is {value:g} {limit.unit}, past the {limit.value:g} they are made for"
    return not_covered(
        rule=GATE, where=where, proposed=value, unit=limit.unit, citation=limit.citation, says=f"{name.capitalize()} {how}. {_SITE}"
    )  # fmt: skip


def _told_gate(where: str, asked: str, so: bool | None) -> Finding:  # noqa: FBT001  a fact, not a switch
    if so:
        return Finding(
            rule=GATE, where=where, proposed=1.0, limit=1.0, unit="yes or no", sense=Sense.AT_LEAST,
            citation=_TOLD, says=f"The zone figures hold: {asked}.",
        )  # fmt: skip
    says = f"The zone figures ask for {asked}: {'not known' if so is None else 'not so here'}. {_SITE}"
    return not_covered(rule=GATE, where=where, proposed=None, unit="yes or no", citation=_TOLD, says=says)


def _against_label(
    where: str,
    gates: Sequence[Finding],
    pressure: Limit,
    ratings: Sequence[LabelRating],
    gauge_mm: float | None,
    *,
    laps_restrained: bool,
) -> Finding:
    if any(gate.verdict is not Verdict.WITHIN for gate in gates):
        return _not_covered(where, pressure.citation, f"A gate of the zones is not passed. {_SITE}")
    if gauge_mm is None:
        return _not_covered(
            where, pressure.citation, "The battens are not set out, so no line of the label can be read."
        )
    refuse_unless_above_nothing(rule=UPLIFT, where=where, value=gauge_mm, unit="mm")
    reached = [
        rating.resistance_pa
        for rating in ratings
        if gauge_mm <= rating.gauge_mm + TOUCH and (laps_restrained or not rating.lap_restrained)
    ]
    if not reached:
        held = "held" if laps_restrained else "loose"
        says = f"No line of the label reaches battens {gauge_mm:g} mm apart with laps {held}. Ask the underlay's maker."
        return _not_covered(where, pressure.citation, says)
    short_pa = pressure.value - max(reached)
    return Finding(
        rule=UPLIFT,
        where=where,
        proposed=max(reached),
        limit=pressure.value,
        unit="Pa",
        sense=Sense.AT_LEAST,
        citation=pressure.citation,
        says=(
            f"The label reaches the {pressure.value:g} Pa of the zone at this gauge."
            if short_pa <= TOUCH
            else f"The label is {misfit(short_pa, unit=' Pa')} short for the zone: the underlay may balloon against the "
            "covering and lift it. Choose a stronger one, or bring the battens closer."
        ),
    )


def _not_covered(where: str, citation: Citation, says: str) -> Finding:
    return not_covered(rule=UPLIFT, where=where, proposed=None, unit="Pa", citation=citation, says=says)
