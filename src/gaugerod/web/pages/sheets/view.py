"""Sheets and drawings to take along, and the link that shows the job to someone else."""

from urllib.parse import urlsplit

from gaugerod.basis.errors import NotKept
from gaugerod.job.result import Result
from gaugerod.sheets.sheet import PaperSize
from gaugerod.web.asked import Asked
from gaugerod.web.form import Choice
from gaugerod.web.gate.hosts import Hosts
from gaugerod.web.job_answer import answer_of, lacks
from gaugerod.web.keeping import opened
from gaugerod.web.pages.sheets.context import Download, SheetsContext
from gaugerod.web.reply import Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import one_sheet_file, sheet_file_names

_KINDS = {
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
    "json": "application/json",
    "html": "text/html; charset=utf-8",
}


def sheets_view(services: Services, asked: Asked) -> Reply:
    """The list of files."""
    return _shown(services, asked)


def share_view(services: Services, asked: Asked) -> Reply:
    """Make a link that shows this job and only shows it."""
    newest, _ = opened(services, asked)
    return _shown(services, asked, link=f"{asked.reached_at}/shared/{services.store.share(newest.job)}")


def revoke_view(services: Services, asked: Asked) -> Reply:
    """Take every link of this job back."""
    newest, _ = opened(services, asked)
    return _shown(services, asked, revoked_count=services.store.revoke(newest.job))


def file_view(services: Services, asked: Asked) -> Reply:
    """One file, made when it is asked for. Raises NotKept when there is none of that name."""
    newest, _ = opened(services, asked)
    result = answer_of(newest.document).result
    if result is None:
        raise NotKept("sheet of a job that is not set out")
    return file_of(result, services, asked)


def file_of(result: Result, services: Services, asked: Asked) -> Sent:
    """The file of this result that was asked for."""
    name = asked.at["file"]
    content = one_sheet_file(result, name=name, paper=_paper(asked), made_at=services.now())
    if content is None:
        raise NotKept(f"file {name[:60]}")
    return Sent(content=content, kind=_KINDS[name.rpartition(".")[2]], name=name)


def downloads_of(result: Result, *, under: str, paper: str) -> tuple[Download, ...]:
    """Every file of a result, as links under a path."""
    return tuple(
        Download(
            says=f"{says[:1].upper()}{says[1:]}",
            kind=name.rpartition(".")[2].upper(),
            href=f"{under}/{name}?paper={paper}",
            of=of,
        )
        for name, says, of in sheet_file_names(result)
    )


def _paper(asked: Asked) -> str:
    given = asked.query.get("paper", "")
    return given if given in set(PaperSize) else PaperSize.A4.value


def _shown(services: Services, asked: Asked, *, link: str = "", revoked_count: int | None = None) -> Shown:
    newest, head = opened(services, asked)
    answer = answer_of(newest.document)
    paper = _paper(asked)
    under = f"/jobs/{head.id}/sheets"
    context = SheetsContext(
        downloads=() if answer.result is None else downloads_of(answer.result, under=under, paper=paper),
        papers=tuple(
            Choice(value=size.value, label=size.value.upper() if size is not PaperSize.LETTER else "Letter")
            for size in PaperSize
        ),
        paper=paper,
        lacks=() if answer.result is not None else lacks(newest.document, answer, job=head.id),
        link=link,
        only_here=Hosts(reached=False).allow(urlsplit(link).netloc),
        revoked_count=revoked_count,
    )
    return Shown(page="sheets", title="Sheets", context=context, job=head)
