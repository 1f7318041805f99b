"""The marks one at a time: opened here, or kept as one file on the phone."""

from gaugerod.basis.errors import NotKept
from gaugerod.basis.finding import Verdict
from gaugerod.job.result import Result
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import answer_of, lacks, marks_alone
from gaugerod.web.keeping import opened
from gaugerod.web.pages.on_roof.context import OnRoofContext
from gaugerod.web.pages.shared.view import revision_of_link
from gaugerod.web.reply import Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import on_roof_page, on_roof_page_policy


def on_roof_view(services: Services, asked: Asked) -> Reply:
    """Open it, or keep it."""
    newest, head = opened(services, asked)
    answer = answer_of(marks_alone(newest.document))
    result = answer.result
    ready = result is not None and bool(result.slopes)
    context = OnRoofContext(
        open_href=f"{asked.path}/open" if ready else "",
        file_href=f"/jobs/{head.id}/sheets/on-the-roof.html" if ready else "",
        rev=newest.rev,
        outside_count=0 if result is None else sum(each.verdict is Verdict.OUTSIDE for each in result.findings),
        lacks=() if result is not None else lacks(newest.document, answer, job=head.id),
    )
    return Shown(page="on_roof", title="On the roof", context=context, job=head)


def on_roof_open_view(services: Services, asked: Asked) -> Reply:
    """The page itself, in the browser."""
    newest, _ = opened(services, asked)
    return _page(answer_of(marks_alone(newest.document)).result, services)


def shared_on_roof_view(services: Services, asked: Asked) -> Reply:
    """The page itself, for whoever has the link of the job."""
    return _page(answer_of(marks_alone(revision_of_link(services, asked).document)).result, services)


def _page(result: Result | None, services: Services) -> Sent:
    """With its own policy, narrower than that of the app but for the script and style that stand in it."""
    if result is None or not result.slopes:
        raise NotKept("marks of a job that is not set out")
    return Sent(
        content=on_roof_page(result, made_at=services.now()).encode(),
        kind="text/html; charset=utf-8",
        name="on-the-roof.html",
        inline=True,
        policy=f"{on_roof_page_policy()}; frame-ancestors 'none'",
    )
