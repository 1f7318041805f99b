"""The files of a roof check, each made only when it is wanted: the record to print, the drawing, the document."""

import json
from datetime import datetime

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.result_document.roof_check import roof_check_document
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.roof_check_sheet import roof_check_sheet
from gaugerod.sheets.sheet import PaperSize

_SCREEN_MM = (260.0, 190.0)


def roof_check_files(
    check: RoofCheck, *, title: str, unit: LengthUnit, paper: str, made_at: datetime
) -> tuple[SheetFile, ...]:
    """Every file of a roof check, in the order they are read."""
    size = PaperSize(paper)

    def record() -> bytes:
        return write_pdf(roof_check_sheet(check, title=title, unit=unit, size=size), made_at=made_at)

    def drawing() -> bytes:
        placed = roof_check_drawing(check, unit=unit, room_width_mm=_SCREEN_MM[0], room_height_mm=_SCREEN_MM[1])
        return write_svg(placed.drawing, paper=placed.paper).encode()

    def document() -> bytes:
        whole = roof_check_document(check, title=title)
        return (json.dumps(whole, indent=2, ensure_ascii=False, allow_nan=False) + "\n").encode()

    return (
        SheetFile(name="roof-check.pdf", says="the record of the check", make=record),
        SheetFile(name="roof-check.svg", says="the slope as built, to scale", make=drawing),
        SheetFile(name="roof-check.json", says="the whole check", make=document),
    )
