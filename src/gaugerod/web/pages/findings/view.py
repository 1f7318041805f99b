"""What every rule says, with its source and how sure it is."""

from gaugerod.basis.finding import Finding, Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.figure_said import figure_said
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of, lacks
from gaugerod.web.keeping import opened
from gaugerod.web.pages.findings.context import FindingRow, FindingsContext
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services


def findings_view(services: Services, asked: Asked) -> Reply:
    """Every finding of the job."""
    newest, head = opened(services, asked)
    answer = answer_of(newest.document)
    result = answer.result
    findings = () if result is None else result.findings
    unit = LengthUnit.MM if result is None else result.job.show_lengths_in

    def rows(verdict: Verdict) -> tuple[FindingRow, ...]:
        return tuple(finding_row(finding, unit) for finding in findings if finding.verdict is verdict)

    context = FindingsContext(
        outside=rows(Verdict.OUTSIDE),
        not_covered=rows(Verdict.NOT_COVERED),
        within=rows(Verdict.WITHIN),
        lacks=() if result is not None else lacks(newest.document, answer, job=head.id),
    )
    return Shown(page="findings", title="Findings", context=context, job=head)


def finding_row(finding: Finding, unit: LengthUnit) -> FindingRow:
    """One finding in words and figures."""
    return FindingRow(
        verdict=finding.verdict.value,
        rule=f"{finding.rule[:1].upper()}{finding.rule[1:]}",
        where=finding.where,
        here=figure_said(finding.proposed, finding=finding, unit=unit, of_limit=False),
        limit=figure_said(finding.limit, finding=finding, unit=unit, of_limit=True),
        says=finding.says,
        source=finding.citation.source,
        basis=finding.citation.basis.value,
    )
