"""A roof check in sentences: the verdict, what leaks first, what is uneven, and what nobody looked at."""

from collections.abc import Iterator

from gaugerod.as_built.leaks import Leak
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.finding import Finding, Sense
from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.said import counted
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading

NOT_LOOKED_AT = (
    "Openings in the slope, and the courses cut round them.",
    "Hips, valleys, verges and side abutments, and the courses cut to them.",
    "Bow: between one place measured and the next a course is taken as straight.",
    "Underlay, battens and their nails, fixings, sidelaps, and the state of the units themselves.",
)
"""What no check of marks or margins covers, said wherever its answer is shown."""
LAPS_AND_COVER = frozenset({"lap as built", "ridge cover"})
"""The findings on what lets water in."""
_LAP_RULES = frozenset({"lap as built", "headlap", "headlap default"})


def verdict_sentence(check: RoofCheck, *, unit: LengthUnit) -> str:
    """How the roof stands, in one sentence: laps before all else, rules before tolerances."""
    under_edition = {lap.course for rod in check.rods for lap in rod.laps if lap.short_of_edition_mm}
    besides = ", ".join(dict.fromkeys(finding.rule for finding in check.outside if finding.rule not in _LAP_RULES))
    outside = f"; outside a rule{' besides' if check.leaks else ''}: {besides}" if besides else ""
    if check.leaks:
        return f"{_short_said(check, unit=unit)}{outside}."
    if under_edition:
        return f"{_under_edition_said(check, len(under_edition), unit=unit)}{outside}."
    if besides:
        return f"No lap is short{outside}."
    uneven = f"; {counted(len(check.advice), 'thing')} uneven by house tolerances" if check.advice else ""
    return f"No lap is short and nothing is outside a rule{uneven}."


def _short_said(check: RoofCheck, *, unit: LengthUnit) -> str:
    first = check.leaks[0]
    return (
        f"{_of_all(check, len(check.leaks))} short; course {first.lap.course} over {first.lap.over} leaks first, "
        f"{out_by(first, unit=unit)}"
    )


def _under_edition_said(check: RoofCheck, count: int, *, unit: LengthUnit) -> str:
    """The record allows less than the edition: then the edition leaves it to the maker's written figure."""
    stated = fine_length(check.needed.least_lap.value, unit)
    asked = "figure" if check.needed.edition_lap is None else fine_length(check.needed.edition_lap.value, unit)
    return f"No lap is under the {stated} of this unit, but {_of_all(check, count)} under the edition's {asked}"


def _of_all(check: RoofCheck, count: int) -> str:
    return f"{count} of {counted(len(check.rods[0].laps), 'lap')} {'is' if count == 1 else 'are'}"


def out_by(leak: Leak, *, unit: LengthUnit) -> str:
    """How far a short lap is out, said no kinder than it is."""
    out_mm = -leak.lap.lap_mm if leak.is_open else leak.lap.short_by_mm
    return f"{'open' if leak.is_open else 'short'} by {fine_length(out_mm, unit, towards=Sense.AT_MOST)}"


def leak_sentences(check: RoofCheck, *, unit: LengthUnit) -> Iterator[str]:
    """Every short lap, what leaks first leading."""
    for leak in check.leaks:
        lap = leak.lap
        place = f"{bare_length(lap.at_mm, unit)} {unit_heading(unit)} from the left"
        missing = "" if leak.is_open else f"; {leak.missing_ratio:.0%} of its lap is missing"
        yield (
            f"Course {lap.course} over {lap.over}: {out_by(leak, unit=unit)}, {place}{missing}; "
            f"{leak.water_ratio:.0%} of the slope drains over it."
        )


def advice_sentence(finding: Finding, *, name: str) -> str:
    """One piece of advice, with its place below the slope."""
    place = finding.where.removeprefix(name).removeprefix(", ")
    rule = f"{finding.rule[:1].upper()}{finding.rule[1:]}"
    return f"{rule}{f' ({place})' if place else ''}. {finding.says}"
