"""Setting out: the whole answer for one slope, drawn again while a wish is moved."""

from typing import Any
from urllib.parse import urlencode

from gaugerod.basis.finding import Verdict
from gaugerod.job.result import NotSetOut, Result, SlopeResult
from gaugerod.web.asked import Asked
from gaugerod.web.form import Choice, placed, table_of, under_path
from gaugerod.web.job_answer import AFTER_THE_MARKS, Answer, answer_of, lacks, marks_alone
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.setting_out.context import Change, Outside, SettingOutContext, SlopeLink
from gaugerod.web.pages.setting_out.slope_shown import roof_around, slope_shown
from gaugerod.web.pages.setting_out.wishes import BONDS, sliders_of, typed_fields, with_wishes
from gaugerod.web.reply import JobHead, Reply, Shown
from gaugerod.web.services import Services


def setting_out_view(services: Services, asked: Asked) -> Reply:
    """Show the answer, show it for other wishes, or save the wishes."""
    newest, head = opened(services, asked)
    wished = asked.form if asked.posted else asked.query
    moved = "moved" in wished
    base = base_of(asked, newest, services) if asked.posted else newest
    document = with_wishes(base.document, wished) if moved else base.document
    answer = answer_of(marks_alone(document))
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    name = wished.get("slope", "")
    if asked.posted and not under_path(answer.faults, "set_out", "covering"):
        to = f"/jobs/{head.id}/set-out"
        return kept(services, asked, base, document, go_to=f"{to}?{urlencode({'slope': name})}" if name else to)
    return _shown(document, answer, head, name=name, moved=moved, every_unit=asked.query.get("units") == "yes")


def _shown(
    document: dict[str, Any], answer: Answer, head: JobHead, *, name: str, moved: bool, every_unit: bool
) -> Shown:
    result = answer.result
    faults = under_path(answer.faults, "set_out") if moved else ()
    missing = () if result is not None else lacks(document, answer, job=head.id)
    chosen = None if result is None else _chosen(result, name)
    done = chosen if isinstance(chosen, SlopeResult) else None
    short = chosen if isinstance(chosen, NotSetOut) else None
    wishes = table_of(document, "set_out")
    begun = document.get("covering") and (document.get("slope") or document.get("building"))
    asked_for = typed_fields(document, with_lap=done is None) if begun else ()
    stated, listed = placed(asked_for, faults, under="set_out")
    context = SettingOutContext(
        slopes=() if result is None else _links(result, chosen, head),
        slope=None if result is None or done is None else slope_shown(result, done, every_unit=every_unit),
        roof=None if result is None or chosen is None else roof_around(result, chosen.slope.name),
        not_set_out="" if short is None else short.why,
        sliders=() if result is None or done is None else sliders_of(result.job, done, document),
        stated=stated,
        bonds=(Choice(value="", label="as usual"), *(Choice(value=bond, label=bond) for bond in BONDS)),
        bond=str(wishes.get("bond", "")),
        outside=() if result is None else _outside(result),
        open_count=0 if result is None else sum(each.verdict is Verdict.NOT_COVERED for each in result.findings),
        changes=() if result is None or chosen is None else _changes(result, chosen.slope.name),
        lacks=missing,
        faults=listed,
        moved=moved,
        more_asked=any(key in document for key in AFTER_THE_MARKS),
        rev=head.rev,
    )
    return Shown(page="setting_out", title="Set out", context=context, job=head, status=422 if faults else 200)


def _chosen(result: Result, name: str) -> SlopeResult | NotSetOut | None:
    """The slope asked for; the first when none is named."""
    every: tuple[SlopeResult | NotSetOut, ...] = (*result.slopes, *result.not_set_out)
    return next((slope for slope in every if slope.slope.name == name), every[0] if every else None)


def _links(result: Result, chosen: SlopeResult | NotSetOut | None, head: JobHead) -> tuple[SlopeLink, ...]:
    names = [*(each.slope.name for each in result.slopes), *(each.slope.name for each in result.not_set_out)]
    here = "" if chosen is None else chosen.slope.name
    return tuple(SlopeLink(name=name, href=f"/jobs/{head.id}/set-out", here=name == here) for name in names)


def _outside(result: Result) -> tuple[Outside, ...]:
    return tuple(
        Outside(rule=f"{finding.where}: {finding.rule}", says=finding.says)
        for finding in result.findings
        if finding.verdict is Verdict.OUTSIDE
    )


def _changes(result: Result, name: str) -> tuple[Change, ...]:
    return tuple(
        Change(change=each.change, costs=each.costs, keeps_limits=each.keeps_limits)
        for where, each in result.alternatives
        if where in {name, f"{name}, across"}
    )
