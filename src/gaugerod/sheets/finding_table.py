"""Findings on paper: the verdict as a shape and a word, the figure against its limit, the source and its basis."""

from collections.abc import Sequence
from typing import assert_never

from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.lengths_shown import fine_length
from gaugerod.sheets.sheet import Alarm, Column, ColumnKind, Table

_ORDER = (Verdict.OUTSIDE, Verdict.NOT_COVERED, Verdict.WITHIN)


def verdict_said(verdict: Verdict) -> str:
    """The verdict as a shape and a word, so that it needs no colour.

    >>> verdict_said(Verdict.OUTSIDE)
    '▲ OUTSIDE'
    """
    match verdict:
        case Verdict.WITHIN:
            return "● within"
        case Verdict.OUTSIDE:
            return "▲ OUTSIDE"
        case Verdict.NOT_COVERED:
            return "◇ not covered"
        case _ as unreachable:
            assert_never(unreachable)


def finding_alarm(findings: Sequence[Finding]) -> Alarm | None:
    """Everything outside its rule, each with its figure and limit; None when nothing is."""
    outside = [finding for finding in findings if finding.verdict is Verdict.OUTSIDE]
    if not outside:
        return None
    count = len(outside)
    return Alarm(
        title=f"▲ {count} thing{'' if count == 1 else 's'} OUTSIDE a rule. Read before starting",
        lines=tuple(f"{finding.rule[:1].upper()}{finding.rule[1:]}. {finding.says}" for finding in outside),
    )


def finding_table(findings: Sequence[Finding], *, unit: LengthUnit) -> Table:
    """What is outside first, then what no rule covers, then what is within."""
    in_order = sorted(findings, key=lambda finding: _ORDER.index(finding.verdict))
    return Table(
        columns=(
            Column(heading="Verdict", share_ratio=1.0),
            Column(heading="Rule, what it means here, and its source (how sure)", share_ratio=5.0),
            Column(heading="Here", kind=ColumnKind.FIGURES, share_ratio=1.2),
            Column(heading="Limit", kind=ColumnKind.FIGURES, share_ratio=1.2),
        ),
        rows=tuple(
            (
                verdict_said(finding.verdict),
                f"{finding.rule[:1].upper()}{finding.rule[1:]}. {finding.says}\nSource: {finding.citation}",
                figure_said(finding.proposed, finding=finding, unit=unit, of_limit=False),
                figure_said(finding.limit, finding=finding, unit=unit, of_limit=True),
            )
            for finding in in_order
        ),
    )


def figure_said(value: float | None, *, finding: Finding, unit: LengthUnit, of_limit: bool) -> str:
    """A figure of a finding in its unit. The proposed one is never rounded towards its limit's good side."""
    if value is None:
        return "none" if of_limit else "not known"
    sense = {Sense.AT_LEAST: "≥ ", Sense.AT_MOST: "≤ "}[finding.sense] if of_limit else ""
    if finding.unit == "mm":
        towards = None if of_limit else finding.sense
        shown = fine_length(value, unit, towards=towards)
        if unit is LengthUnit.FT_IN:
            shown += f"\n({fine_length(value, LengthUnit.MM, towards=towards)})"
        return sense + shown
    word = {"deg": "°", "degrees": "°", "count": "", "ratio": ""}.get(finding.unit, f" {finding.unit}")
    return f"{sense}{value:.5g}{word}"
