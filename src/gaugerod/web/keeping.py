"""Opening and saving jobs from a page: who saves, from which revision, and what happens when someone was faster."""

import json
from collections.abc import Mapping
from typing import Any

from gaugerod.adapters.store.merge import Absent, Conflict, Path, Side, merged
from gaugerod.adapters.store.records import Revision, Stale
from gaugerod.web.asked import Asked
from gaugerod.web.job_answer import faults_at_the_door
from gaugerod.web.pages.clash.context import ClashContext, ClashField
from gaugerod.web.place_said import place_said
from gaugerod.web.reply import Go, JobHead, Reply, Shown
from gaugerod.web.services import Services

UNTITLED = "Job without a title"


def opened(services: Services, asked: Asked) -> tuple[Revision, JobHead]:
    """The last revision of the job in the path. Raises NotKept."""
    revision = services.store.load(asked.at["job"])
    return revision, head_of(revision)


def head_of(revision: Revision) -> JobHead:
    """The job as the head of a page names it."""
    return JobHead(id=revision.job, title=revision.title or UNTITLED, rev=revision.rev)


def base_of(asked: Asked, newest: Revision, services: Services) -> Revision:
    """The revision the form was filled in from, as it says itself: what was typed changes that one."""
    given = asked.form.get("rev", "")
    if given.isascii() and given.isdigit() and 1 <= len(given) < 10 and 1 <= int(given) < newest.rev:
        return services.store.load(newest.job, int(given))
    return newest


def kept(services: Services, asked: Asked, base: Revision, document: dict[str, Any], *, go_to: str) -> Reply:
    """Save and go on. When someone saved meanwhile, both changes are put together; what both changed is asked."""
    return together(services, by=asked.who, base=base, mine=document, chosen={}, go_to=go_to)


def together(
    services: Services,
    *,
    by: str,
    base: Revision,
    mine: dict[str, Any],
    chosen: Mapping[Path, Side],
    go_to: str,
) -> Reply:
    """Save mine on top of whatever stands, as far as the choices reach."""
    document, on_rev = mine, base.rev
    while True:
        draft = bool(faults_at_the_door(document))
        outcome = services.store.save(base.job, document, by=by, base_rev=on_rev, draft=draft)
        if not isinstance(outcome, Stale):
            return Go(to=go_to)
        both = merged(base.document, mine, outcome.theirs.document, chosen=chosen)
        if both.document is None:
            return _clash(base, mine, outcome.theirs, both.conflicts, asked_before=bool(chosen), go_to=go_to)
        document, on_rev = both.document, outcome.theirs.rev


def _clash(
    base: Revision,
    mine: dict[str, Any],
    theirs: Revision,
    conflicts: tuple[Conflict, ...],
    *,
    asked_before: bool,
    go_to: str,
) -> Shown:
    context = ClashContext(
        theirs_by=theirs.by,
        fields=tuple(
            ClashField(
                name=json.dumps(conflict.path),
                where=place_said(".".join(conflict.path)),
                mine=_written(conflict.mine),
                theirs=_written(conflict.theirs),
            )
            for conflict in conflicts
        ),
        base_rev=base.rev,
        document=json.dumps(mine),
        go_to=go_to,
        missing=asked_before,
    )
    return Shown(page="clash", title="Someone saved while you typed", context=context, job=head_of(theirs), status=409)


def _written(value: object) -> str:
    """A value as a person may read it."""
    match value:
        case Absent():
            return "taken out"
        case str():
            return value
        case dict():
            return ", ".join(f"{key} {_written(part)}" for key, part in value.items())
        case list():
            return "; ".join(_written(part) for part in value) or "none"
        case _:
            return json.dumps(value)
