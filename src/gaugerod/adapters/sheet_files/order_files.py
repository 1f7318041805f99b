"""The files of the order and the record: what to buy, the whole job to hand over, and the job in money."""

from collections.abc import Iterator
from functools import partial

from gaugerod.adapters.sheet_files.as_pdf import Pdf
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.result import Result
from gaugerod.sheets.order_sheet import order_sheet
from gaugerod.sheets.quotation_sheet import quotation_sheet
from gaugerod.sheets.record_sheet import record_sheet
from gaugerod.sheets.sheet import PaperSize
from gaugerod.take_off.money import Quotation


def order_files(result: Result, *, size: PaperSize, pdf: Pdf) -> Iterator[SheetFile]:
    """The order, where something was taken off; the hand-over record, where a slope was set out."""
    if result.take_off is not None:
        yield order_file(result, size=size, pdf=pdf)
    if result.slopes:
        yield SheetFile(
            name="record.pdf",
            says="hand-over record: what was laid, measured, met and accepted",
            make=pdf(partial(record_sheet, result, size=size)),
        )


def order_file(result: Result, *, size: PaperSize, pdf: Pdf) -> SheetFile:
    """What to buy, on paper."""
    return SheetFile(
        name="order.pdf",
        says="order: what to buy, packs, masses, what it leaves out",
        make=pdf(partial(order_sheet, result, size=size)),
    )


def quotation_file(result: Result, quotation: Quotation, *, size: PaperSize, pdf: Pdf) -> SheetFile:
    """The job in money, to hand to a client."""
    return SheetFile(
        name="quotation.pdf",
        says="quotation: materials, labour, tax, and what the total leaves out",
        make=pdf(partial(quotation_sheet, result, quotation, size=size)),
    )
