"""The main numbers of a roof check, for the terminal: what is wrong, what leaks first, what to strip, where to nail."""

from collections.abc import Iterator

from gaugerod.as_built.leaks import RANKING
from gaugerod.as_built.needed import TOP_EDGE
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.as_built.strip_back import StripBack
from gaugerod.basis.finding import Sense
from gaugerod.basis.lengths import LengthUnit, write_length
from gaugerod.cli.lines import finding_lines, wrapped
from gaugerod.job.cautions import CAUTIONS
from gaugerod.job.slope_called import slope_heading
from gaugerod.sheets.lengths_shown import bare_length, fine_length, unit_heading
from gaugerod.sheets.roof_check_words import NOT_LOOKED_AT, advice_sentence, leak_sentences, verdict_sentence


def roof_check_lines(check: RoofCheck, *, title: str, unit: LengthUnit) -> list[str]:
    """The check in plain lines."""
    least = check.least_lap
    return [
        f"{title}: {check.ask.covering.title}",
        f"rules: edition {check.ask.edition.value}",
        "",
        (
            f"{slope_heading(check.ask.where)}: {check.courses_count} courses measured, rods at "
            f"{', '.join(bare_length(rod.at_mm, unit) for rod in check.rods)} {unit_heading(unit)} from the left"
        ),
        f"  least lap      {fine_length(check.needed.least_lap.value, unit)} [{check.needed.least_lap.citation}]",
        (
            f"  smallest lap   {fine_length(least.lap_mm, unit, towards=Sense.AT_LEAST)}, course {least.course} over "
            f"{least.over}, {write_length(least.at_mm, unit)} from the left"
        ),
        *_leaks(check, unit=unit),
        *_cure(check, unit=unit),
        *finding_lines(check.by_rule),
        *_advice(check),
        "",
        *wrapped(f"Not covered by this check: {' '.join(NOT_LOOKED_AT)}"),
        "",
        *wrapped(CAUTIONS[-1]),
    ]


def _leaks(check: RoofCheck, *, unit: LengthUnit) -> Iterator[str]:
    yield ""
    yield from wrapped(verdict_sentence(check, unit=unit))
    if not check.leaks:
        return
    yield "What leaks first:"
    for rank, sentence in enumerate(leak_sentences(check, unit=unit), 1):
        yield from wrapped(sentence, first=f"  {rank}.   ")
    yield from wrapped(f"Ranked by: {RANKING}.", first="       ")


def _advice(check: RoofCheck) -> Iterator[str]:
    if check.advice:
        yield ""
        yield "Advice, by house tolerances: it shows, it does not leak, and it is outside no rule"
    for finding in check.advice:
        yield from wrapped(advice_sentence(finding, name=check.ask.where), first="  ")


def _cure(check: RoofCheck, *, unit: LengthUnit) -> Iterator[str]:
    cure = check.strip_back
    if cure is None:
        return
    yield ""
    yield "What cures it:"
    yield from wrapped(cure.says, first="  ")
    if cure.courses is None:
        return
    if cure.cures:
        yield from _new_marks(check, cure, unit=unit)
    for each in cure.courses.alternatives:
        limits = "keeps every limit" if each.keeps_limits else "does not keep every limit"
        yield from wrapped(f"{each.change} {each.costs} ({limits})", first=f"  {each.rank}.   ")


def _new_marks(check: RoofCheck, cure: StripBack, *, unit: LengthUnit) -> Iterator[str]:
    """The new marks of every rod: the mark, and for slates the tail, which is what can be struck."""
    tail_mm = 0.0 if check.needed.marks_are == TOP_EDGE else check.needed.afresh.hanging_length_mm
    what = "top edges of battens" if not tail_mm else "tails of slates"
    for rod in cure.courses.rods if cure.courses is not None else ():
        marks = ", ".join(bare_length(mark - tail_mm, unit) for mark in rod.marks_mm[cure.keep_count :])
        if marks:
            first = f"  rod at {bare_length(rod.at_mm, unit)}: "
            yield from wrapped(
                f"{what}, up from the fascia face, course {cure.keep_count + 1} on: {marks}", first=first
            )
