"""What every rule says, with its source and how sure it is."""

from gaugerod.basis.finding import Verdict
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.findings_by_part import parted
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of, lacks
from gaugerod.web.keeping import opened
from gaugerod.web.pages.findings.context import FindingsContext
from gaugerod.web.pages.findings.rows import finding_rows
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services


def findings_view(services: Services, asked: Asked) -> Reply:
    """Every finding of the job."""
    newest, head = opened(services, asked)
    answer = answer_of(newest.document)
    result = answer.result
    parts = () if result is None else parted(result)
    unit = LengthUnit.MM if result is None else result.job.show_lengths_in
    context = FindingsContext(
        parts_of_job=tuple(name for name, _ in parts),
        outside=finding_rows(parts, Verdict.OUTSIDE, unit=unit),
        not_covered=finding_rows(parts, Verdict.NOT_COVERED, unit=unit),
        within=finding_rows(parts, Verdict.WITHIN, unit=unit),
        lacks=() if result is not None else lacks(newest.document, answer, job=head.id),
    )
    return Shown(page="findings", title="Findings", context=context, job=head)
