"""What the marks, as rounded, keep or break: gauge at both ends of its range, and the top batten's place."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gaugerod.basis.finding import TOUCH, Finding, Sense, Verdict
from gaugerod.basis.rounding import count_above, count_below
from gaugerod.setting_out.courses import CoursesAsk, Rod, Strategy
from gaugerod.setting_out.said import out_by, said


def course_findings(*, ask: CoursesAsk, rods: Sequence[Rod], strategy: Strategy) -> Iterator[Finding]:
    """Findings on the gaps set out here (kept battens have their own) and on the top batten."""
    gaps_mm = [gap for rod in rods for gap in _set_out_gaps_mm(rod, strategy)]
    if gaps_mm:
        yield _greatest(ask, max(gaps_mm))
        if ask.gauge_min_mm is not None:
            yield _least(ask, min(gaps_mm), ask.gauge_min_mm)
    yield from _top(ask, rods)


def _set_out_gaps_mm(rod: Rod, strategy: Strategy) -> tuple[float, ...]:
    """The gaps above the kept battens.

    A top course cut at its head keeps its tail on the line of the courses below, so what it shows is their gauge
    and not the gap from its batten to the one below.
    """
    gaps_mm = rod.gaps_mm[max(rod.kept_count - 1, 0) :]
    return (*gaps_mm[:-1], rod.gauge_mm) if strategy is Strategy.PARALLEL else gaps_mm


def _greatest(ask: CoursesAsk, gap_mm: float) -> Finding:
    over_mm = gap_mm - ask.gauge_max_mm
    says = (
        f"The widest gap between marks is {said(gap_mm, ask.division)}, so no lap is short."
        if over_mm <= TOUCH
        else f"The widest gap between marks is {out_by(over_mm, ask.division)} too much: the lap there is short by that."
    )
    return Finding(
        rule="greatest gauge",
        where=ask.where,
        proposed=gap_mm,
        limit=ask.gauge_max_mm,
        unit="mm",
        sense=Sense.AT_MOST,
        citation=ask.gauge_citation,
        says=says,
    )


def _least(ask: CoursesAsk, gap_mm: float, gauge_min_mm: float) -> Finding:
    under_mm = gauge_min_mm - gap_mm
    says = (
        f"The closest gap between marks is {said(gap_mm, ask.division)}."
        if under_mm <= TOUCH
        else (
            f"The closest gap between marks is {said(gap_mm, ask.division)}, {out_by(under_mm, ask.division)} under what "
            f"this unit can close up to: heads foul or nail holes show. See what could change."
        )
    )
    return Finding(
        rule="least gauge",
        where=ask.where,
        proposed=gap_mm,
        limit=gauge_min_mm,
        unit="mm",
        sense=Sense.AT_LEAST,
        citation=ask.gauge_citation,
        says=says,
    )


def _top(ask: CoursesAsk, rods: Sequence[Rod]) -> Iterator[Finding]:
    below_mm = [_below_apex_mm(ask, rod) for rod in rods]
    for proposed_mm, limit_mm, sense, wrong in (
        (min(below_mm), ask.top.least_mm, Sense.AT_LEAST, "too near the apex: it fouls the ridge fixing"),
        (
            max(below_mm),
            ask.top.greatest_mm,
            Sense.AT_MOST,
            "too far below the apex: the ridge may not cover its heads",
        ),
    ):
        finding = Finding(
            rule="top batten",
            where=ask.where,
            proposed=proposed_mm,
            limit=limit_mm,
            unit="mm",
            sense=sense,
            citation=ask.top.citation,
            says=f"The top batten is {said(proposed_mm, ask.division)} below the apex",
        )
        out_mm = max(limit_mm - proposed_mm, proposed_mm - limit_mm)
        end = "." if finding.verdict is Verdict.WITHIN else f", {out_by(out_mm, ask.division)} {wrong}."
        yield replace(finding, says=finding.says + end)


def _below_apex_mm(ask: CoursesAsk, rod: Rod) -> float:
    """As marked; as exact where the band is so narrow that no mark at all falls inside it, and no lap is at stake."""
    if ask.ridge_lap_first:
        return rod.below_apex_mm
    lowest = count_above(rod.length_mm - ask.top.greatest_mm, ask.division)
    no_mark_fits = lowest > count_below(rod.length_mm - ask.top.least_mm, ask.division)
    return rod.length_mm - rod.exact_mm[-1] if no_mark_fits else rod.below_apex_mm
