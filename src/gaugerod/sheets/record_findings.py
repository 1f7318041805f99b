"""The findings of the whole job in the hand-over record: outside, not covered, within; by the part of the job; each told once."""

import re
from collections.abc import Iterator, Sequence

from gaugerod.basis.finding import Finding, Sense, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.job.record_wished import Deviation
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.acceptance import Answered, accepted_said, answered, answers
from gaugerod.sheets.figure_said import figure_said
from gaugerod.sheets.finding_table import verdict_said
from gaugerod.sheets.findings_by_part import parted
from gaugerod.sheets.sheet import Alarm, Block, Column, ColumnKind, Heading, Prose, Table
from gaugerod.sheets.told_once import Told


def outside_alarm(result: Result, *, unit: LengthUnit) -> Alarm | None:
    """What is outside a rule, in a line each, and whether that was accepted. The record's first words; None: nothing is."""
    each_once = answered(_of(result, Verdict.OUTSIDE), result.job.record.deviations, unit=unit)
    if not each_once:
        return None
    open_count = sum(not each.accepted for each in each_once)
    still = f"; {open_count} of them not accepted" if open_count else "; all accepted"
    return Alarm(
        title=f"▲ {counted(len(each_once), 'thing')} OUTSIDE a rule{still}",
        lines=tuple(f"{each.told.rule}: {_against(each.told.finding, unit)}; {each.said}" for each in each_once),
    )


def _against(finding: Finding, unit: LengthUnit) -> str:
    here = figure_said(finding.proposed, finding=finding, unit=unit, of_limit=False)
    return f"{here}, limit {figure_said(finding.limit, finding=finding, unit=unit, of_limit=True)}"


def _of(result: Result, verdict: Verdict) -> list[Finding]:
    return [finding for finding in result.findings if finding.verdict is verdict]


def record_counts(result: Result) -> Prose:
    """How many of each verdict the record holds, place by place."""
    outside, beyond, within = (len(_of(result, verdict)) for verdict in _ORDER)
    return Prose(
        text=f"Rules held against this roof, place by place: {outside} outside, {beyond} not covered, {within} within. "
        "Each stands below with its source."
    )


_ORDER = (Verdict.OUTSIDE, Verdict.NOT_COVERED, Verdict.WITHIN)
_HEADINGS = {
    Verdict.OUTSIDE: "Outside a rule",
    Verdict.NOT_COVERED: "What no rule here covers",
    Verdict.WITHIN: "Rules met",
}
_MEANS = {
    Verdict.OUTSIDE: "Each is to be put right, or accepted by name by whoever answers for the roof.",
    Verdict.NOT_COVERED: "The rules built in do not reach these. The maker, the local code or a licensed designer answers them; "
    "what each would take stands beside it.",
    Verdict.WITHIN: "From memory means not checked against the document it names.",
}


def verdict_blocks(result: Result, verdict: Verdict, *, unit: LengthUnit) -> Iterator[Block]:
    """Every finding of one verdict, by the part of the job."""
    if not _of(result, verdict):
        return
    shape = verdict_said(verdict).partition(" ")[0]
    yield Heading(text=f"{shape} {_HEADINGS[verdict]}", level=1, kept_mm=60.0)
    yield Prose(text=_MEANS[verdict])
    for name, of_part in parted(result):
        found = [finding for finding in of_part if finding.verdict is verdict]
        if found:
            yield Heading(text=name, kept_mm=34.0)
            yield _table(answered(found, result.job.record.deviations, unit=unit), verdict, unit)


def _alike(findings: Sequence[Answered], verdict: Verdict) -> Iterator[tuple[Answered, ...]]:
    """Rules met place by place are gathered where their sentences differ in nothing but figures; all others stand alone."""
    gathered: dict[object, list[Answered]] = {}
    for at, each in enumerate(findings):
        finding = each.told.finding
        same = (finding.rule, finding.citation, finding.unit, finding.sense, _FIGURE.sub("#", finding.says))
        alone = verdict is not Verdict.WITHIN or each.deviations
        gathered.setdefault(at if alone else same, []).append(each)
    yield from (tuple(group) for group in gathered.values())


_FIGURE = re.compile(r"\d[\d.,/ '\"]*")


def _over(finding: Finding) -> float:
    """How far it is on the allowed side of its limit, in the finding's own unit."""
    proposed, limit = finding.proposed or 0.0, finding.limit or 0.0
    return proposed - limit if finding.sense is Sense.AT_LEAST else limit - proposed


def _table(findings: Sequence[Answered], verdict: Verdict, unit: LengthUnit) -> Table:
    figures = ColumnKind.FIGURES
    accepting = verdict is Verdict.OUTSIDE or any(each.deviations for each in findings)
    return Table(
        columns=(
            Column(heading="Rule, what it means here, and its source (how sure)", share_ratio=5.0),
            Column(heading="Here", kind=figures, share_ratio=1.1),
            Column(heading="Limit", kind=figures, share_ratio=1.1),
            *((Column(heading="Accepted", share_ratio=2.0),) if accepting else ()),
        ),
        rows=tuple(_row(group, verdict, unit, accepting=accepting) for group in _alike(findings, verdict)),
    )


def _row(group: Sequence[Answered], verdict: Verdict, unit: LengthUnit, *, accepting: bool) -> tuple[str, ...]:
    """One finding; of several alike the one nearest to its limit, with the span of all."""
    nearest = min(group, key=lambda each: _over(each.told.finding))
    finding = nearest.told.finding
    places = tuple(dict.fromkeys(place for each in group for place in each.told.places))
    rule = Told(finding=finding, places=places).rule
    of_many = f" The nearest to its limit of {len(places)}." if len(group) > 1 else ""
    row = (
        f"{rule}. {finding.says}{of_many}\nSource: {finding.citation}",
        _span([each.told.finding for each in group], unit, of_limit=False),
        _span([each.told.finding for each in group], unit, of_limit=True),
    )
    if not accepting:
        return row
    return (*row, nearest.said if nearest.deviations or verdict is Verdict.OUTSIDE else "")


def _span(findings: Sequence[Finding], unit: LengthUnit, *, of_limit: bool) -> str:
    """The figure, or from the least to the greatest of several, on two lines."""
    by_size = sorted(findings, key=lambda finding: (finding.limit if of_limit else finding.proposed) or 0.0)
    said = [
        figure_said(finding.limit if of_limit else finding.proposed, finding=finding, unit=unit, of_limit=of_limit)
        for finding in (by_size[0], by_size[-1])
    ]
    return said[0] if said[0] == said[1] else f"{said[0]}\nto {said[1]}"


def deviation_table(result: Result) -> Table | None:
    """Every deviation that was written down, with the finding it is of; None where there is none."""
    deviations, findings = result.job.record.deviations, result.findings
    if not deviations:
        return None
    return Table(
        columns=(Column(heading="What", share_ratio=3.0), Column(heading="Accepted", share_ratio=1.6)),
        rows=tuple((f"{each.what}\n{_of_what(each, findings)}", accepted_said(each)) for each in deviations),
    )


def _of_what(deviation: Deviation, findings: Sequence[Finding]) -> str:
    if not deviation.rule.strip():
        return "Of no one rule."
    where = deviation.where or "wherever it is looked at"
    of = f"Rule: {deviation.rule} ({where})"
    verdicts = dict.fromkeys(verdict_said(finding.verdict) for finding in findings if answers(deviation, finding))
    if not verdicts:
        return f"{of}. No finding of this job has that rule at that place."
    return f"{of}: {', '.join(verdicts)}."
