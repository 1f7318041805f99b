"""The list of jobs: open one, begin one, copy one, put one away, bring one in."""

import json
import re
from collections import Counter

from gaugerod.adapters.store.portable import is_portable
from gaugerod.basis.errors import InputRefused
from gaugerod.web.asked import THE_PROGRAM, UNNAMED, Asked
from gaugerod.web.form import FaultShown, fault_said
from gaugerod.web.job_answer import faults_at_the_door
from gaugerod.web.keeping import UNTITLED
from gaugerod.web.pages.jobs.context import JobRow, JobsContext
from gaugerod.web.place_said import place_said
from gaugerod.web.reply import Go, Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import document_of_file


def jobs_view(services: Services, asked: Asked) -> Reply:
    """The list."""
    return _list(services, archived=asked.query.get("put-away") == "yes")


def _list(services: Services, *, archived: bool, faults: tuple[FaultShown, ...] = ()) -> Shown:
    away = services.store.jobs(archived=True)
    lines = away if archived else services.store.jobs()
    titles = Counter(line.title for line in lines if line.title)
    context = JobsContext(
        jobs=tuple(
            JobRow(
                id=line.job,
                title=line.title or UNTITLED,
                rev=line.rev,
                at=line.at,
                by="" if line.by in {UNNAMED, THE_PROGRAM} else line.by,
                draft=line.draft,
                example=line.by == THE_PROGRAM,
                namesake=titles[line.title] > 1,
            )
            for line in lines
        ),
        archived=archived,
        put_away_count=len(away),
        faults=faults,
    )
    return Shown(
        page="jobs", title="Jobs put away" if archived else "Jobs", context=context, status=422 if faults else 200
    )


def begin_view(services: Services, asked: Asked) -> Reply:
    """A new job, with nothing in it yet."""
    saved = services.store.create({"job": {"edition": "GB"}}, by=asked.who, draft=True)
    return Go(to=f"/jobs/{saved.job}/site")


def copy_view(services: Services, asked: Asked) -> Reply:
    """The job once more, under another title."""
    saved = services.store.duplicate(asked.at["job"], by=asked.who)
    return Go(to=f"/jobs/{saved.job}/site")


def put_away_view(services: Services, asked: Asked) -> Reply:
    """Out of the list; nothing is lost."""
    services.store.archive(asked.at["job"])
    return Go(to="/")


def take_out_view(services: Services, asked: Asked) -> Reply:
    """Back into the list."""
    services.store.unarchive(asked.at["job"])
    return Go(to="/")


def bring_in_view(services: Services, asked: Asked) -> Reply:
    """A job file, or what another machine kept, taken in."""
    content = asked.files.get("file", b"")
    try:
        document = _document(content)
        if is_portable(document):
            services.store.import_document(document, by=asked.who)
            return Go(to="/")
        saved = services.store.create(document, by=asked.who, draft=bool(faults_at_the_door(document)))
    except InputRefused as refused:
        faults = tuple(
            FaultShown(says=f"{place_said(fault.field)}: {fault_said(fault)}") for fault in refused.faults[:20]
        )
        return _list(services, archived=False, faults=faults)
    return Go(to=f"/jobs/{saved.job}/set-out")


def _document(content: bytes) -> dict[str, object]:
    """What was kept is larger than a job file may be, so it is looked at first."""
    if content.lstrip().startswith(b"{"):
        try:
            document = json.loads(content)
        except (ValueError, RecursionError):
            document = None
        if isinstance(document, dict) and is_portable(document):
            return document
    return document_of_file(content)


def keep_all_view(services: Services, _: Asked) -> Reply:
    """Every job with every save, as one file."""
    content = json.dumps(services.store.export_all(), ensure_ascii=False, indent=1).encode()
    return Sent(content=content, kind="application/json", name=f"gaugerod-jobs-{services.now():%Y-%m-%d}.json")


def keep_one_view(services: Services, asked: Asked) -> Reply:
    """One job with every save, as one file."""
    job = asked.at["job"]
    plain = re.sub(r"[^a-z0-9]+", "-", services.store.load(job).title.lower()).strip("-")[:60]
    content = json.dumps(services.store.export_job(job), ensure_ascii=False, indent=1).encode()
    return Sent(content=content, kind="application/json", name=f"gaugerod-job-{plain or job}.json")
