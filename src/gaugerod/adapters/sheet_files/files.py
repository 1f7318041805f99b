"""The files of a result, each made only when it is wanted: for each slope the sheets and the drawing; one result document."""

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime

from gaugerod.adapters.on_roof.write import write_on_roof_html
from gaugerod.adapters.result_document.document import result_document
from gaugerod.adapters.sheet_files.as_pdf import Pdf, as_pdf
from gaugerod.adapters.sheet_files.beneath_files import beneath_job_files, beneath_slope_files
from gaugerod.adapters.sheet_files.edges_files import edges_files
from gaugerod.adapters.sheet_files.order_files import order_files
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.adapters.svg.writer import write_svg
from gaugerod.job.result import Result, SlopeResult
from gaugerod.sheets.laying_sheet import laying_sheet
from gaugerod.sheets.not_set_out_sheet import not_set_out_sheet
from gaugerod.sheets.rod_strip import rod_strip
from gaugerod.sheets.roof_sheet import roof_sheet
from gaugerod.sheets.setting_out_sheet import setting_out_sheet
from gaugerod.sheets.shared_rods import different_rods, rod_name
from gaugerod.sheets.sheet import PaperSize
from gaugerod.sheets.slope_drawing import slope_drawing

_SCREEN_MM = (260.0, 190.0)


def sheet_files(result: Result, *, paper: str, made_at: datetime) -> tuple[SheetFile, ...]:
    """Every file of a result, in the order they are read."""
    return tuple(_files(result, PaperSize(paper), made_at))


def _files(result: Result, size: PaperSize, made_at: datetime) -> Iterator[SheetFile]:
    pdf = as_pdf(made_at)
    slopes = [slope.slope.name for slope in result.slopes]
    short_slopes = [short.slope.name for short in result.not_set_out]
    stems = _file_stems([*slopes, *short_slopes, *(roof.name for roof in result.roofs)])
    for slope in result.slopes:
        for file in _of_slope(result, slope, next(stems), size, pdf):
            yield replace(file, of=slope.slope.name)
    for short in result.not_set_out:
        yield SheetFile(
            name=f"{next(stems)}-not-set-out.pdf",
            says="not set out: why, and what would mend it",
            make=pdf(lambda short=short: not_set_out_sheet(result, short, size=size)),  # type: ignore[misc]
            of=short.slope.name,
        )
    for roof in result.roofs:
        yield SheetFile(
            name=f"{next(stems)}-roof.pdf",
            says=f"roof sheet of {roof.name}: plan, lines, corners",
            make=pdf(lambda roof=roof: roof_sheet(result, roof, size=size)),  # type: ignore[misc]
        )
    yield from beneath_job_files(result, size=size, pdf=pdf)
    yield from edges_files(result, size=size, pdf=pdf)
    yield from order_files(result, size=size, pdf=pdf)
    if result.slopes:
        yield SheetFile(
            name="on-the-roof.html",
            says="the marks one at a time, for a phone on the roof",
            make=lambda: write_on_roof_html(result, made_at=made_at).encode(),
        )
    yield SheetFile(name="result.json", says="the whole result", make=lambda: _result_text(result))


def _of_slope(
    result: Result,
    slope: SlopeResult,
    stem: str,
    size: PaperSize,
    pdf: Pdf,
) -> Iterator[SheetFile]:
    yield SheetFile(
        name=f"{stem}-sheet.pdf",
        says="setting-out sheet",
        make=pdf(lambda: setting_out_sheet(result, slope, size=size)),
    )
    for numbers in different_rods(slope):
        yield SheetFile(
            name=f"{stem}-rod-{'-'.join(str(number) for number in numbers)}-full-size.pdf",
            says=f"{rod_name(numbers)}{' from the left' if len(slope.courses.rods) > 1 else ''}, at full size",
            make=pdf(lambda numbers=numbers: rod_strip(result, slope, numbers=numbers, size=size)),  # type: ignore[misc]
        )
    laid = slope.laid
    if laid is not None:
        yield SheetFile(
            name=f"{stem}-laying.pdf",
            says="laying sheet: every unit, cut list",
            make=pdf(lambda: laying_sheet(result, slope, laid, size=size)),
        )
    yield from beneath_slope_files(result, slope, stem, size=size, pdf=pdf)
    yield SheetFile(name=f"{stem}.svg", says="the slope drawn to scale", make=lambda: _drawing(result, slope))


def _drawing(result: Result, slope: SlopeResult) -> bytes:
    unit = result.job.show_lengths_in
    placed = slope_drawing(slope, unit=unit, room_width_mm=_SCREEN_MM[0], room_height_mm=_SCREEN_MM[1])
    return write_svg(placed.drawing, paper=placed.paper).encode()


def _result_text(result: Result) -> bytes:
    return (json.dumps(result_document(result), indent=2, ensure_ascii=False, allow_nan=False) + "\n").encode()


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
