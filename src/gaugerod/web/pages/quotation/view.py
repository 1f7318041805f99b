"""The job in money: a list of the user's own prices is brought, answered with the quotation, and kept nowhere."""

from dataclasses import replace

from gaugerod.basis.errors import InputRefused, NotKept
from gaugerod.job.quoted import quoted
from gaugerod.job.result import Result
from gaugerod.setting_out.said import counted
from gaugerod.sheets.quotation_sheet import quotation_sheet
from gaugerod.sheets.sheet import Figures, PaperSize
from gaugerod.take_off.money import Quotation
from gaugerod.web.asked import Asked
from gaugerod.web.blocks import PartShown, parts_shown
from gaugerod.web.form import FaultShown, fault_said
from gaugerod.web.job_answer import Answer, answer_of, lacks
from gaugerod.web.keeping import opened
from gaugerod.web.pages.order.order_shown import alarms_shown, lines_shown
from gaugerod.web.pages.order.view import BLANK_LIST, KINDS
from gaugerod.web.pages.quotation.context import FileAsked, Priced, QuotationContext
from gaugerod.web.reply import JobHead, Reply, Sent, Shown
from gaugerod.web.services import Services
from gaugerod.wiring import one_order_file, order_file_names, price_list_in_bytes

FILE_FIELD, LIST_ID = "file", "f-file"
MOST_FAULTS_COUNT = 20
_TOTAL = "Total"


def quotation_view(services: Services, asked: Asked) -> Reply:
    """Ask for the list, answer with the quotation, or send one of its files."""
    newest, head = opened(services, asked)
    answer = answer_of(newest.document)
    if answer.result is None or answer.result.take_off is None or not asked.posted:
        return _shown(answer, newest.document, head)
    content = asked.files.get(FILE_FIELD) or asked.form.get("prices", "").encode()
    try:
        quotation = quoted(answer.result, price_list_in_bytes(content))
    except InputRefused as refused:
        said = [
            FaultShown(
                says=f"{fault.field[:1].upper()}{fault.field[1:]}: {fault.given}. {fault_said(fault)}", field_id=LIST_ID
            )
            for fault in refused.faults
        ]
        return _shown(answer, newest.document, head, faults=tuple(said))
    if quotation is None:
        return _shown(answer, newest.document, head)
    name = asked.form.get("send", "")
    if name:
        return _sent(services, answer.result, quotation, name)
    return _shown(answer, newest.document, head, priced=_priced(answer.result, quotation, content))


def _sent(services: Services, result: Result, quotation: Quotation, name: str) -> Sent:
    made = one_order_file(result, quotation, name=name, paper=PaperSize.A4.value, made_at=services.now())
    if made is None:
        raise NotKept(f"file {name[:60]}")
    return Sent(content=made, kind=KINDS[name.rpartition(".")[2]], name=name)


def _priced(result: Result, quotation: Quotation, content: bytes) -> Priced:
    blocks = quotation_sheet(result, quotation, size=PaperSize.A4).blocks
    parts = parts_shown(blocks)
    return Priced(
        alarms=alarms_shown(blocks),
        figures=tuple(figure for block in blocks if isinstance(block, Figures) for figure in block.figures),
        lines=tuple(
            lines_shown(part) for part in parts if part.heading.startswith("Materials: ") or part.heading == "Labour"
        ),
        total=next((_total(part, quotation) for part in parts if part.heading == _TOTAL), None),
        not_used=quotation.not_used,
        files=tuple(
            FileAsked(name=name, kind=name.rpartition(".")[2].upper(), says=f"{says[:1].upper()}{says[1:]}")
            for name, says in order_file_names(result, quotation)
        ),
        prices=content.decode("utf-8-sig"),
    )


def _total(part: PartShown, quotation: Quotation) -> PartShown:
    """The total as a page shows it: every column has a heading, and there is no first page to look at."""
    left_out = len(quotation.not_priced)
    says = f"▲ The total leaves out {counted(left_out, 'thing')}, named above."
    tables = tuple(replace(table, headings=("What", *table.headings[1:])) for table in part.tables)
    return replace(part, says=(says,) if left_out else (), tables=tables)


def _shown(
    answer: Answer,
    document: dict[str, object],
    head: JobHead,
    *,
    faults: tuple[FaultShown, ...] = (),
    priced: Priced | None = None,
) -> Shown:
    result = answer.result
    context = QuotationContext(
        blank="" if result is None or result.take_off is None else f"/jobs/{head.id}/order/{BLANK_LIST}",
        faults=faults[:MOST_FAULTS_COUNT],
        more_faults_count=max(0, len(faults) - MOST_FAULTS_COUNT),
        priced=priced,
        lacks=() if result is not None else lacks(document, answer, job=head.id),
    )
    return Shown(page="quotation", title="Quotation", context=context, job=head, status=422 if faults else 200)
