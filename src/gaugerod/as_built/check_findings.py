"""What the check finds: laps against record and edition, the ends, and how even the courses are."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from gaugerod.as_built.ask import RoofAsk
from gaugerod.as_built.evenness import CourseLine
from gaugerod.as_built.evenness_findings import evenness_findings
from gaugerod.as_built.laps import LapAsBuilt
from gaugerod.as_built.needed import Needed
from gaugerod.as_built.roof_check import RodAsBuilt
from gaugerod.basis.citation import common_practice
from gaugerod.basis.finding import TOUCH, Finding, Sense, not_covered
from gaugerod.coverings.double_lap import PlainTile, SizedSlate
from gaugerod.coverings.single_lap import SingleLapTile
from gaugerod.rules.band_findings import within_band
from gaugerod.rules.eaves_overhang import eaves_overhang
from gaugerod.rules.headlap import greatest_headlap, headlap
from gaugerod.rules.misfit import misfit
from gaugerod.rules.plain_tile import plain_tile_laps
from gaugerod.rules.ridge_cover import ridge_cover
from gaugerod.rules.slates import slate_laps
from gaugerod.setting_out.said import said
from gaugerod.setting_out.section_laid import LapOver

UNDER_EAVES = common_practice("a shorter course lies under the first, so that two thicknesses begin at the eaves")
UNDER_RIDGE = common_practice("a shorter course lies between the top full course and the ridge")


def check_findings(
    ask: RoofAsk, *, needed: Needed, rods: Sequence[RodAsBuilt], lines: Sequence[CourseLine]
) -> Iterator[Finding]:
    """Every finding of the check, those on laps first."""
    laps = [lap for rod in rods for lap in rod.laps]
    yield from _worst_lap(ask, laps)
    if needed.edition_lap is None:
        yield _no_edition_lap(ask, laps, needed)
    yield from _short_laps(ask, laps, needed)
    yield from _overhangs(ask, needed, rods)
    if ask.finished:
        yield from _top(ask, needed, rods)
    if needed.lapping is LapOver.SECOND_BELOW:
        yield from _courses_not_measured(ask)
    yield from evenness_findings(ask, needed=needed, rods=rods, lines=lines)


def _worst_lap(ask: RoofAsk, laps: Sequence[LapAsBuilt]) -> Iterator[Finding]:
    """The smallest and the greatest lap of the roof against the record and the edition, by the covering's own rules."""
    least_mm, greatest_mm = min(lap.lap_mm for lap in laps), max(lap.lap_mm for lap in laps)
    covering = ask.covering
    match covering:
        case SingleLapTile():
            yield from headlap(where=ask.where, headlap_mm=least_mm, tile=covering, edition=ask.edition)
            yield greatest_headlap(where=ask.where, headlap_mm=greatest_mm, tile=covering)
        case PlainTile():
            yield from plain_tile_laps(
                where=ask.where,
                least_lap_mm=least_mm,
                greatest_lap_mm=greatest_mm,
                tile=covering,
                exposure=ask.exposure,
                edition=ask.edition,
            )
        case SizedSlate():
            yield from slate_laps(
                where=ask.where,
                least_lap_mm=least_mm,
                greatest_lap_mm=greatest_mm,
                slate=covering,
                pitch_deg=ask.pitch_deg,
                exposure=ask.exposure,
                edition=ask.edition,
            )
        case _ as unreachable:
            assert_never(unreachable)


def _no_edition_lap(ask: RoofAsk, laps: Sequence[LapAsBuilt], needed: Needed) -> Finding:
    return not_covered(
        rule="headlap of the edition",
        where=ask.where,
        proposed=min(lap.lap_mm for lap in laps),
        unit="mm",
        citation=needed.least_lap.citation,
        says="No table of this edition answers for this unit at this pitch: the laps are held against the one stated only.",
    )


def _short_laps(ask: RoofAsk, laps: Sequence[LapAsBuilt], needed: Needed) -> Iterator[Finding]:
    """One finding for each course whose lap is short, at the place where it is worst; the edition's figure beside it."""
    for course in sorted({lap.course for lap in laps if lap.is_short}):
        worst = max((lap for lap in laps if lap.course == course), key=lambda lap: lap.short_by_mm)
        yield Finding(
            rule="lap as built",
            where=f"{ask.where}, course {worst.course} over course {worst.over}, {said(worst.at_mm, ask.division)} from the left",
            proposed=worst.lap_mm,
            limit=needed.least_lap.value,
            unit="mm",
            sense=Sense.AT_LEAST,
            citation=needed.least_lap.citation,
            says=_short_said(worst, needed),
        )


def _short_said(lap: LapAsBuilt, needed: Needed) -> str:
    edition_lap, short_of_edition_mm = needed.edition_lap, lap.short_of_edition_mm
    least_mm = needed.least_lap.value
    found = (
        f"Course {lap.course} lies open over course {lap.over} by {misfit(-lap.lap_mm)}: rain falls straight in."
        if lap.lap_mm < 0
        else f"Course {lap.course} laps course {lap.over} by {lap.lap_mm:.1f} mm, {misfit(lap.short_by_mm)} short of "
        f"{least_mm:g} mm."
    )
    if edition_lap is None or short_of_edition_mm is None:
        return found
    if short_of_edition_mm:
        return f"{found} It is {misfit(short_of_edition_mm)} short of the edition's {edition_lap.value:g} mm as well."
    return f"{found} The edition's own figure, {edition_lap.value:g} mm, is kept."


def _overhangs(ask: RoofAsk, needed: Needed, rods: Sequence[RodAsBuilt]) -> Iterator[Finding]:
    """The overhang where it is least, and where it is greatest if that is elsewhere."""
    least, greatest = (pick(rods, key=lambda rod: rod.overhang_mm) for pick in (min, max))
    for rod in (least,) if greatest.overhang_mm <= least.overhang_mm + TOUCH else (least, greatest):
        yield from eaves_overhang(
            where=_place(ask, rod), overhang_mm=rod.overhang_mm, band=needed.afresh.overhang, edition=ask.edition
        )


def _top(ask: RoofAsk, needed: Needed, rods: Sequence[RodAsBuilt]) -> Iterator[Finding]:
    lowest, highest = (pick(rods, key=lambda rod: rod.below_apex_mm) for pick in (max, min))
    yield ridge_cover(
        where=_place(ask, lowest),
        ridge_cover_mm=ask.ridge_cover_mm,
        top_batten_below_apex_mm=lowest.below_apex_mm,
        head_to_nib_mm=needed.head_to_mark_mm,
        least=needed.cover_least,
    )
    if needed.lapping is LapOver.NEXT_BELOW:
        for rod in (lowest,) if highest.below_apex_mm >= lowest.below_apex_mm - TOUCH else (lowest, highest):
            yield from within_band(
                rule="top batten",
                where=_place(ask, rod),
                length_mm=rod.below_apex_mm,
                band=needed.afresh.top,
                too_little="It is too near the apex: it fouls the ridge fixing.",
                too_much="It is too far below the apex: the ridge may not cover its heads.",
            )


def _courses_not_measured(ask: RoofAsk) -> Iterator[Finding]:
    """The short courses at eaves and ridge, whose lengths battens and tails do not show."""
    yield not_covered(
        rule="lap over the under-eaves course",
        where=ask.where,
        proposed=None,
        unit="mm",
        citation=UNDER_EAVES,
        says="The course under the first is not measured, so the lap of the second course over it is not checked. "
        "Lift one unit and measure it.",
    )
    if ask.finished:
        yield not_covered(
            rule="lap of the short course under the ridge",
            where=ask.where,
            proposed=None,
            unit="mm",
            citation=UNDER_RIDGE,
            says="The short course below the ridge is not measured, so its lap is not checked. Lift a ridge unit and look.",
        )


def _place(ask: RoofAsk, rod: RodAsBuilt) -> str:
    return ask.where if len(ask.rods) == 1 else f"{ask.where}, {said(rod.at_mm, ask.division)} from the left"
