"""A job shown to whoever has its link: to read, never to change."""

from gaugerod.adapters.store.records import Revision
from gaugerod.basis.errors import NotKept
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result
from gaugerod.sheets.findings_by_part import parted
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of
from gaugerod.web.keeping import UNTITLED
from gaugerod.web.pages.findings.context import FindingRow
from gaugerod.web.pages.findings.rows import finding_rows
from gaugerod.web.pages.setting_out.slope_shown import slope_shown
from gaugerod.web.pages.shared.context import SharedContext
from gaugerod.web.pages.sheets.view import downloads_of, file_of
from gaugerod.web.reply import Reply, Shown
from gaugerod.web.services import Services


def shared_view(services: Services, asked: Asked) -> Reply:
    """The job of this link. Raises NotKept for a link unknown or taken back."""
    revision = revision_of_link(services, asked)
    result = answer_of(revision.document).result
    title = revision.title or UNTITLED
    context = SharedContext(
        title=title,
        rev=revision.rev,
        slopes=() if result is None else tuple(slope_shown(result, slope, every_unit=False) for slope in result.slopes),
        findings=() if result is None else _to_mind(result),
        downloads=() if result is None else downloads_of(result, under=f"{asked.path}/files", paper="a4"),
        says="This job is not finished: it cannot be set out yet." if result is None else "",
    )
    return Shown(page="shared", title=title, context=context)


def _to_mind(result: Result) -> tuple[FindingRow, ...]:
    """What is outside a rule, then what no rule covers, each told once with all its places."""
    parts, unit = parted(result), result.job.show_lengths_in
    return (
        *finding_rows(parts, Verdict.OUTSIDE, unit=unit),
        *finding_rows(parts, Verdict.NOT_COVERED, unit=unit),
    )


def shared_file_view(services: Services, asked: Asked) -> Reply:
    """One file of the job of this link."""
    result = answer_of(revision_of_link(services, asked).document).result
    if result is None:
        raise NotKept("sheet of a job that is not set out")
    return file_of(result, services, asked)


def revision_of_link(services: Services, asked: Asked) -> Revision:
    """The job of this link, as it is saved. Raises NotKept for a link unknown or taken back."""
    job = services.store.shared(asked.at["token"])
    if job is None:
        raise NotKept("job for this link")
    return services.store.load(job)
