"""What to order: allowances, packs and money asked, the order answered while it is typed, and its files."""

from typing import Any

from gaugerod.basis.errors import NotKept
from gaugerod.job.result import Result
from gaugerod.web.asked import Asked
from gaugerod.web.form import under_path, with_keys
from gaugerod.web.job_answer import answer_of, faults_at_the_door, lacks
from gaugerod.web.keeping import base_of, kept, opened
from gaugerod.web.pages.order.context import OrderContext
from gaugerod.web.pages.order.order_shown import answered
from gaugerod.web.pages.order.questions import ORDER, PARTS
from gaugerod.web.pages.sheets.context import Download
from gaugerod.web.parts_asked import (
    Tables,
    as_asked,
    asked_with_faults,
    parts_asked,
    tables_of,
    tables_typed,
    with_tables,
)
from gaugerod.web.reply import JobHead, Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import blank_price_list_text, one_order_file, order_file_names

BLANK_LIST = "price-list-to-fill-in.csv"
KINDS = {
    "csv": "text/csv; charset=utf-8",
    "json": "application/json",
    "pdf": "application/pdf",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}


def order_view(services: Services, asked: Asked) -> Reply:
    """Show the order, answer what is typed, or save it."""
    newest, head = opened(services, asked)
    if not asked.posted:
        return _shown(newest.document, tables_of(newest.document, PARTS), head)
    base = base_of(asked, newest, services)
    head = JobHead(id=head.id, title=head.title, rev=base.rev)
    parts = (as_asked(ORDER, asked.form),)
    tables = tables_typed(asked.form, parts, base=base.document)
    on = frozenset(key for key, table in tables.items() if table or key in base.document)
    document = with_tables(base.document, tables, on, parts)
    saves = asked.form.get("do") == "save" and not asked.part
    if saves and not under_path(faults_at_the_door(document), ORDER.key):
        return kept(services, asked, base, document, go_to=f"/jobs/{head.id}/order")
    return _shown(document, tables, head, saves=saves)


def order_file_view(services: Services, asked: Asked) -> Reply:
    """One file of the order, without prices; or the price list to fill in. Raises NotKept when there is none of that name."""
    newest, _ = opened(services, asked)
    result, name = answer_of(newest.document).result, asked.at["file"]
    if result is None or result.take_off is None:
        raise NotKept("order of a job that is not set out")
    if name == BLANK_LIST:
        return Sent(content=blank_price_list_text(result).encode(), kind=KINDS["csv"], name=name)
    content = one_order_file(result, None, name=name, paper="a4", made_at=services.now())
    if content is None:
        raise NotKept(f"file {name[:60]}")
    return Sent(content=content, kind=KINDS[name.rpartition(".")[2]], name=name)


def _shown(document: dict[str, Any], tables: Tables, head: JobHead, *, saves: bool = False) -> Shown:
    faults = under_path(faults_at_the_door(document), ORDER.key)
    (asked,), listed = asked_with_faults(parts_asked(tables, frozenset(tables), PARTS), faults)
    # With a fault in it the order is answered as if nothing were said of it, and the fault stands beside.
    answer = answer_of(with_keys(document, {ORDER.key: None}) if faults else document)
    result = answer.result
    context = OrderContext(
        asked=asked,
        rev=head.rev,
        faults=listed if saves else (),
        to_say=listed,
        answered=None if result is None or result.take_off is None else answered(result, result.take_off),
        downloads=() if result is None else tuple(_downloads(result, job=head.id)),
        lacks=() if result is not None else lacks(document, answer, job=head.id),
    )
    return Shown(page="order", title="Order", context=context, job=head, status=422 if saves else 200)


def _downloads(result: Result, *, job: str) -> list[Download]:
    if result.take_off is None:
        return []
    return [
        Download(
            says=f"{says[:1].upper()}{says[1:]}",
            kind=name.rpartition(".")[2].upper(),
            href=f"/jobs/{job}/order/{name}",
        )
        for name, says in order_file_names(result, None)
    ]
