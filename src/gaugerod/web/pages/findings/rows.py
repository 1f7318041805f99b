"""Findings as rows of a page, part by part; those that read the same of several places told once."""

from collections.abc import Iterator

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.figure_said import figure_said
from gaugerod.sheets.findings_by_part import Parted
from gaugerod.sheets.told_once import told_once
from gaugerod.web.pages.findings.context import FindingRow


def finding_rows(parts: Parted, verdict: Verdict, *, unit: LengthUnit) -> tuple[FindingRow, ...]:
    """The findings of one verdict, part by part, each told once with all its places."""
    return tuple(_rows(parts, verdict, unit))


def _rows(parts: Parted, verdict: Verdict, unit: LengthUnit) -> Iterator[FindingRow]:
    for name, findings in parts:
        of_verdict = [finding for finding in findings if finding.verdict is verdict]
        for told in told_once(of_verdict, name="", unit=unit):
            yield finding_row(told.finding, unit, part=name, places=told.places)


def finding_row(finding: Finding, unit: LengthUnit, *, part: str = "", places: tuple[str, ...] = ()) -> FindingRow:
    """One finding in words and figures, at its own place or at several."""
    return FindingRow(
        part=part,
        verdict=finding.verdict.value,
        rule=f"{finding.rule[:1].upper()}{finding.rule[1:]}",
        where="; ".join(places) or finding.where,
        here=figure_said(finding.proposed, finding=finding, unit=unit, of_limit=False),
        limit=figure_said(finding.limit, finding=finding, unit=unit, of_limit=True),
        says=finding.says,
        source=finding.citation.source,
        basis=finding.citation.basis.value,
    )
