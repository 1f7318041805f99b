"""The files of an order as they are sent out: to read by machine, to work on, to print; and the job in money."""

from collections.abc import Iterator
from datetime import datetime
from functools import partial
from importlib.util import find_spec

from gaugerod.adapters.order_files.order_csv import order_csv
from gaugerod.adapters.order_files.order_json import order_json
from gaugerod.adapters.order_files.order_xlsx import order_xlsx
from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.sheet_files.as_pdf import as_pdf
from gaugerod.adapters.sheet_files.order_files import order_file, quotation_file
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.quoted import tasks_of
from gaugerod.job.result import Result
from gaugerod.sheets.record_sheet import record_sheet
from gaugerod.sheets.sheet import PaperSize
from gaugerod.take_off.answer import TakeOff
from gaugerod.take_off.money import Quotation


def order_folder(
    result: Result, quotation: Quotation | None, *, paper: str, made_at: datetime
) -> tuple[SheetFile, ...]:
    """Every file of the order. The spreadsheet is there when the part that writes it is installed."""
    size, pdf = PaperSize(paper), as_pdf(made_at)
    files = [] if result.take_off is None else list(_data(result, result.take_off, quotation, made_at))
    files.append(order_file(result, size=size, pdf=pdf))
    if quotation is not None:
        files.append(quotation_file(result, quotation, size=size, pdf=pdf))
    return tuple(files)


def _data(result: Result, taken: TakeOff, quotation: Quotation | None, made_at: datetime) -> Iterator[SheetFile]:
    yield SheetFile(name="order.csv", says="order, one line to an item", make=partial(order_csv, taken, quotation))
    yield SheetFile(name="order.json", says="order for another program", make=partial(order_json, taken, quotation))
    if find_spec("xlsxwriter") is not None:
        yield SheetFile(
            name="order.xlsx",
            says="order as a spreadsheet: quantities and prices can be changed",
            make=partial(
                order_xlsx,
                taken,
                tasks_of(result),
                title=result.job.title,
                money=result.job.order.money,
                quotation=quotation,
                cautions=result.cautions,
                made_at=made_at,
            ),
        )


def record_pdf(result: Result, *, paper: str, made_at: datetime) -> bytes:
    """The hand-over record as PDF."""
    return write_pdf(record_sheet(result, size=PaperSize(paper)), made_at=made_at)
