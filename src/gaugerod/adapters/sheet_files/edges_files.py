"""The file of the edges: one sheet for the whole job, where anything is said of how an edge is made."""

from collections.abc import Iterator
from functools import partial

from gaugerod.adapters.sheet_files.as_pdf import Pdf
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.result import Result
from gaugerod.sheets.edges_sheet import edges_sheet
from gaugerod.sheets.sheet import PaperSize


def edges_files(result: Result, *, size: PaperSize, pdf: Pdf) -> Iterator[SheetFile]:
    """The edges, where one of them at least is made."""
    if result.edges is not None and any(edge.made for edge in result.edges.edges):
        yield SheetFile(
            name="edges.pdf",
            says="edges: ridges, hips, verges, valleys, walls: units, lead, sections",
            make=pdf(partial(edges_sheet, result, size=size)),
        )
