"""The files of what lies beneath the covering: a plan of each part for each slope, then the lists of the whole job."""

from collections.abc import Iterator
from functools import partial

from gaugerod.adapters.sheet_files.as_pdf import Pdf
from gaugerod.adapters.sheet_files.sheet_file import SheetFile
from gaugerod.job.result import Beneath, Result, SlopeResult
from gaugerod.sheets.beneath_sheet import beneath_sheet
from gaugerod.sheets.cutting_list_sheet import cutting_list_sheet
from gaugerod.sheets.fixing_sheet import fixing_sheet
from gaugerod.sheets.joint_sheet import joint_sheet
from gaugerod.sheets.roll_sheet import roll_sheet
from gaugerod.sheets.sheet import PaperSize
from gaugerod.sheets.underlay_sheet import underlay_sheet


def beneath_slope_files(
    result: Result, slope: SlopeResult, stem: str, *, size: PaperSize, pdf: Pdf
) -> Iterator[SheetFile]:
    """The plans of one slope, of every part that was worked out for it."""
    under, name = result.beneath, slope.slope.name
    if under.battens is not None:
        for battens in under.battens.slopes:
            if battens.where == name:
                yield SheetFile(
                    name=f"{stem}-battens.pdf",
                    says="batten joint plan",
                    make=pdf(partial(joint_sheet, result, slope, under.battens, battens, size=size)),
                )
    for underlay in under.underlay:
        if underlay.where == name:
            yield SheetFile(
                name=f"{stem}-underlay.pdf",
                says="underlay plan: runs, laps, strips, edges",
                make=pdf(partial(underlay_sheet, result, slope, underlay, size=size)),
            )
    for fixings in under.fixings:
        if fixings.where == name and slope.laid is not None:
            yield SheetFile(
                name=f"{stem}-fixings.pdf",
                says="fixing plan: perimeter, field, nails, clips",
                make=pdf(partial(fixing_sheet, result, slope, slope.laid, fixings, size=size)),
            )


def beneath_job_files(result: Result, *, size: PaperSize, pdf: Pdf) -> Iterator[SheetFile]:
    """The lists of the whole job."""
    under = result.beneath
    if under.battens is not None and under.battens.cutting.buy:
        yield SheetFile(
            name="battens-cutting-list.pdf",
            says="battens to buy and how to saw them",
            make=pdf(partial(cutting_list_sheet, result, under.battens, size=size)),
        )
    if under.rolls is not None:
        yield SheetFile(
            name="underlay-cutting-list.pdf",
            says="rolls of underlay to buy and how to cut them",
            make=pdf(partial(roll_sheet, result, under.rolls, size=size)),
        )
    if under != Beneath():
        yield SheetFile(
            name="beneath-the-covering.pdf",
            says="what to order beneath the covering, openings for air, masses",
            make=pdf(partial(beneath_sheet, result, size=size)),
        )
