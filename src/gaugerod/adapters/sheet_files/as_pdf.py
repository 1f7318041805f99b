"""The making of a sheet turned into the making of its PDF, so that none is typeset before it is wanted."""

from collections.abc import Callable
from datetime import datetime

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.sheets.sheet import Sheet

Pdf = Callable[[Callable[[], Sheet]], Callable[[], bytes]]


def as_pdf(made_at: datetime) -> Pdf:
    """Every PDF of one lot says the same time of making."""

    def pdf(sheet: Callable[[], Sheet]) -> Callable[[], bytes]:
        return lambda: write_pdf(sheet(), made_at=made_at)

    return pdf
