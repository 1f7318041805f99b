"""Writes the files of a roof check: the record to print, the drawing, the document."""

import json
from datetime import datetime
from pathlib import Path

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.result_document.roof_check import roof_check_document
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.as_built.roof_check import RoofCheck
from gaugerod.basis.lengths import LengthUnit
from gaugerod.sheets.roof_check_drawing import roof_check_drawing
from gaugerod.sheets.roof_check_sheet import roof_check_sheet
from gaugerod.sheets.sheet import PaperSize

_SCREEN_MM = (260.0, 190.0)


def write_roof_check_files(
    check: RoofCheck, *, title: str, unit: LengthUnit, folder: Path, paper: str, made_at: datetime
) -> list[tuple[Path, str]]:
    """Write them all; gives each path with what it is. Files of the same names are replaced."""
    folder.mkdir(parents=True, exist_ok=True)
    sheet = roof_check_sheet(check, title=title, unit=unit, size=PaperSize(paper))
    placed = roof_check_drawing(check, unit=unit, room_width_mm=_SCREEN_MM[0], room_height_mm=_SCREEN_MM[1])
    document = json.dumps(roof_check_document(check, title=title), indent=2, ensure_ascii=False, allow_nan=False)
    files = (
        ("roof-check.pdf", write_pdf(sheet, made_at=made_at), "the record of the check"),
        ("roof-check.svg", write_svg(placed.drawing, paper=placed.paper).encode(), "the slope as built, to scale"),
        ("roof-check.json", f"{document}\n".encode(), "the whole check"),
    )
    for name, content, _ in files:
        (folder / name).write_bytes(content)
    return [(folder / name, what) for name, _, what in files]
