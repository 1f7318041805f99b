"""Sheets written as tagged PDF (PDF/UA-1), the same bytes for the same sheet and time."""

import json
from datetime import datetime
from functools import cache
from importlib import resources
from typing import TYPE_CHECKING

from gaugerod.adapters.pdf.sheet_data import sheet_data
from gaugerod.sheets.sheet import Sheet

if TYPE_CHECKING:
    from typst import Fonts


@cache
def _template() -> bytes:
    return resources.files("gaugerod.adapters.pdf").joinpath("sheet.typ").read_bytes()


@cache
def _fonts() -> "Fonts":
    """The typesetter's own fonts and no others, read once: the same sheet looks the same on every machine."""
    import typst  # noqa: PLC0415 -- as in write_pdf

    return typst.Fonts(include_system_fonts=False)


def write_pdf(sheet: Sheet, *, made_at: datetime) -> bytes:
    """The sheet as PDF. ``made_at`` is when it says it was made; give it a time zone."""
    import typst  # noqa: PLC0415 -- a tenth of a second that only a printed sheet needs

    if made_at.tzinfo is None:
        raise ValueError("the time a sheet was made needs a time zone")
    pdf = typst.compile(
        _template(),
        format="pdf",
        sys_inputs={"sheet": json.dumps(sheet_data(sheet), ensure_ascii=False, allow_nan=False)},
        font_paths=_fonts(),
        pdf_standards="ua-1",
        timestamp=int(made_at.timestamp()),
    )
    if not isinstance(pdf, bytes):
        raise TypeError("a PDF is one run of bytes")
    return pdf
