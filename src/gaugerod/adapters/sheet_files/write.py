"""Writes the files of a result: for each slope the sheet, a full-size rod for each station and the drawing; one result document."""

import json
import re
from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

from gaugerod.adapters.pdf.write import write_pdf
from gaugerod.adapters.result_document.document import result_document
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.job.result import Result
from gaugerod.sheets.laying_sheet import laying_sheet
from gaugerod.sheets.not_set_out_sheet import not_set_out_sheet
from gaugerod.sheets.rod_strip import rod_strip
from gaugerod.sheets.roof_sheet import roof_sheet
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.shared_rods import different_rods, rod_name
from gaugerod.sheets.sheet import PaperSize
from gaugerod.sheets.slope_drawing import slope_drawing

_SCREEN_MM = (260.0, 190.0)


def write_sheet_files(result: Result, *, folder: Path, paper: str, made_at: datetime) -> list[tuple[Path, str]]:
    """Write them all; gives each path with what it is. Files of the same names are replaced."""
    size = PaperSize(paper)
    folder.mkdir(parents=True, exist_ok=True)
    written: list[tuple[Path, str]] = []

    def write(name: str, content: bytes, what: str) -> None:
        path = folder / name
        path.write_bytes(content)
        written.append((path, what))

    slopes = [slope.slope.name for slope in result.slopes]
    short_slopes = [short.slope.name for short in result.not_set_out]
    stems = _file_stems([*slopes, *short_slopes, *(roof.name for roof in result.roofs)])
    for slope in result.slopes:
        stem = next(stems)
        sheet = setting_out_sheet(result, slope, size=size)
        write(f"{stem}-sheet.pdf", write_pdf(sheet, made_at=made_at), "setting-out sheet")
        for numbers in different_rods(slope):
            strip = rod_strip(result, slope, numbers=numbers, size=size)
            name = f"{stem}-rod-{'-'.join(str(number) for number in numbers)}-full-size.pdf"
            write(name, write_pdf(strip, made_at=made_at), f"{rod_name(numbers)} from the left, at full size")
        if slope.laid is not None:
            laying = laying_sheet(result, slope, slope.laid, size=size)
            write(f"{stem}-laying.pdf", write_pdf(laying, made_at=made_at), "laying sheet: every unit, cut list")
        placed = slope_drawing(
            slope, unit=result.job.show_lengths_in, room_width_mm=_SCREEN_MM[0], room_height_mm=_SCREEN_MM[1]
        )
        write(f"{stem}.svg", write_svg(placed.drawing, paper=placed.paper).encode(), "the slope drawn to scale")
    for short in result.not_set_out:
        sheet = not_set_out_sheet(result, short, size=size)
        write(
            f"{next(stems)}-not-set-out.pdf",
            write_pdf(sheet, made_at=made_at),
            "not set out: why, and what would mend it",
        )
    for roof in result.roofs:
        content = write_pdf(roof_sheet(result, roof, size=size), made_at=made_at)
        write(f"{next(stems)}-roof.pdf", content, f"roof sheet of {roof.name}: plan, lines, corners")
    text = json.dumps(result_document(result), indent=2, ensure_ascii=False, allow_nan=False) + "\n"
    write("result.json", text.encode(), "the whole result")
    return written


def _file_stems(names: Sequence[str]) -> Iterator[str]:
    """A safe file name for each: letters, digits and dashes of its name, numbered where two would be the same.

    >>> list(_file_stems(["South front", "south-front", "南"]))
    ['south-front', 'south-front-2', 'slope']
    """
    given: set[str] = set()
    for name in names:
        plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:40] or "slope"
        stem = _free(plain, given)
        given.add(stem)
        yield stem


def _free(plain: str, given: set[str]) -> str:
    number, stem = 2, plain
    while stem in given:
        stem, number = f"{plain}-{number}", number + 1
    return stem
