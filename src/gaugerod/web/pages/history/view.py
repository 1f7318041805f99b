"""Every save of a job: compare two, or go back to one."""

from gaugerod.web.asked import UNNAMED, Asked
from gaugerod.web.keeping import opened
from gaugerod.web.pages.history.context import HistoryContext, SaveRow
from gaugerod.web.reply import Go, Reply, Shown
from gaugerod.web.services import Services


def history_view(services: Services, asked: Asked) -> Reply:
    """The saves."""
    newest, head = opened(services, asked)
    saves = tuple(
        SaveRow(
            rev=line.rev, at=line.at, by="" if line.by == UNNAMED else line.by, version=line.version, draft=line.draft
        )
        for line in reversed(services.store.revisions(newest.job))
    )
    return Shown(page="history", title="History", context=HistoryContext(saves=saves), job=head)


def go_back_view(services: Services, asked: Asked) -> Reply:
    """An earlier save made the last one; nothing between is lost."""
    newest, head = opened(services, asked)
    given = asked.form.get("to", "")
    rev = int(given) if given.isascii() and given.isdigit() and len(given) < 10 else newest.rev
    services.store.restore(newest.job, rev, by=asked.who)
    return Go(to=f"/jobs/{head.id}/history")
