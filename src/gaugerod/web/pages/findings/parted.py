"""Findings by the part of the job they are of; those that read the same of several places told once."""

from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.result import Beneath, Result
from gaugerod.sheets.figure_said import figure_said
from gaugerod.sheets.told_once import told_once
from gaugerod.web.pages.findings.context import FindingRow

SETTING_OUT = "Setting out"
Parted = tuple[tuple[str, tuple[Finding, ...]], ...]


def parted(result: Result) -> Parted:
    """Every finding of the job under the name of its part; parts without one are left out."""
    return (*parted_setting_out(result), *parted_beneath(result.beneath), *parted_edges(result), *parted_order(result))


def parted_setting_out(result: Result) -> Parted:
    """The findings of all that is neither beneath the covering nor of its edges or its order."""
    elsewhere = {*result.beneath.findings, *_of_edges(result), *_of_order(result)}
    return _with_some(((SETTING_OUT, tuple(finding for finding in result.findings if finding not in elsewhere)),))


def parted_edges(result: Result) -> Parted:
    """The findings of the edges."""
    return _with_some((("Edges", _of_edges(result)),))


def parted_order(result: Result) -> Parted:
    """The findings of the order."""
    return _with_some((("Order", _of_order(result)),))


def _of_edges(result: Result) -> tuple[Finding, ...]:
    return () if result.edges is None else result.edges.findings


def _of_order(result: Result) -> tuple[Finding, ...]:
    return () if result.take_off is None else result.take_off.findings


def parted_beneath(under: Beneath) -> Parted:
    """The findings of what lies beneath."""
    of_parts = (
        ("Battens", () if under.battens is None else under.battens.findings),
        ("Underlay", tuple(finding for plan in under.underlay for finding in plan.findings)),
        ("Openings for air", tuple(finding for air in under.air for finding in air.findings)),
        ("Nails and clips", tuple(finding for plan in under.fixings for finding in plan.findings)),
        ("Mass on the slope", tuple(finding for load in under.loads for finding in load.findings)),
    )
    placed = {finding for _, findings in of_parts for finding in findings}
    others = tuple(finding for finding in under.findings if finding not in placed)
    return _with_some((("Could not be planned", others), *of_parts))


def _with_some(parts: Sequence[tuple[str, tuple[Finding, ...]]]) -> Parted:
    return tuple((name, findings) for name, findings in parts if findings)


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
