"""Findings on paper: the verdict as a shape and a word, the figure against its limit, the source and its basis."""

from collections.abc import Sequence
from typing import assert_never

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.setting_out.said import counted
from gaugerod.sheets.figure_said import figure_said
from gaugerod.sheets.sheet import Alarm, Column, ColumnKind, Prose, Table
from gaugerod.sheets.told_once import told_once

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


def finding_alarm(findings: Sequence[Finding], *, name: str, unit: LengthUnit) -> Alarm | None:
    """Everything outside its rule, each with its figure and limit; None when nothing is. ``name`` is the slope's."""
    outside = [finding for finding in findings if finding.verdict is Verdict.OUTSIDE]
    told = told_once(outside, name=name, unit=unit)
    if not told:
        return None
    return Alarm(
        title=f"▲ {counted(len(told), 'thing')} OUTSIDE a rule. Read before starting",
        lines=tuple(f"{each.rule}. {each.finding.says}" for each in told),
    )


def verdicts_counted(findings: Sequence[Finding], *, name: str, unit: LengthUnit) -> Prose:
    """How many of each verdict the table under it holds."""
    verdicts = [each.finding.verdict for each in told_once(findings, name=name, unit=unit)]
    return Prose(
        text=f"{verdicts.count(Verdict.OUTSIDE)} outside, {verdicts.count(Verdict.NOT_COVERED)} not covered by any rule "
        f"here, {verdicts.count(Verdict.WITHIN)} within. From memory means not checked against the document it names."
    )


def finding_table(findings: Sequence[Finding], *, name: str, unit: LengthUnit) -> Table:
    """What is outside first, then what no rule covers, then what is within. ``name`` is the slope's."""
    in_order = sorted(told_once(findings, name=name, unit=unit), key=lambda told: _ORDER.index(told.finding.verdict))
    return Table(
        columns=(
            Column(heading="Verdict", share_ratio=1.0),
            Column(heading="Rule, what it means here, and its source (how sure)", share_ratio=5.0),
            Column(heading="Here", kind=ColumnKind.FIGURES, share_ratio=1.2),
            Column(heading="Limit", kind=ColumnKind.FIGURES, share_ratio=1.2),
        ),
        rows=tuple(
            (
                verdict_said(told.finding.verdict),
                f"{told.rule}. {told.finding.says}\nSource: {told.finding.citation}",
                figure_said(told.finding.proposed, finding=told.finding, unit=unit, of_limit=False),
                figure_said(told.finding.limit, finding=told.finding, unit=unit, of_limit=True),
            )
            for told in in_order
        ),
    )
