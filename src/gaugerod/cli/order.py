"""``gaugerod order JOB``: what to buy, at the user's own prices where there are some, and as files to send."""

import argparse
from pathlib import Path

from gaugerod.cli.lines import finding_lines, wrapped
from gaugerod.cli.main import DONE, OUTSIDE
from gaugerod.cli.take_off_lines import order_lines, quotation_lines
from gaugerod.cli.write_text import write_text
from gaugerod.job.quoted import quoted
from gaugerod.job.set_out import set_out
from gaugerod.sheets.order_cautions import ORDER_CAUTIONS, ORDER_LAST_CAUTION
from gaugerod.wiring import blank_price_list_text, job_from_file, price_list_from_file, write_order

_NO_PRICES = (
    "No prices are given, so nothing is said in money. --blank-prices writes a list to fill in, --prices reads it."
)


def run(given: argparse.Namespace) -> int:
    """Set the job out and order it. Exit status 1 when anything is outside a rule: it is said."""
    prices = None if given.prices is None else price_list_from_file(Path(given.prices))
    result = set_out(job_from_file(Path(given.job)))
    status = OUTSIDE if result.anything_outside else DONE
    if given.blank_prices == "-":
        print(blank_price_list_text(result), end="")
        return status
    quotation = None if prices is None else quoted(result, prices)
    print("\n".join(order_lines(result)))
    print("\n".join(["", *wrapped(_NO_PRICES)] if quotation is None else quotation_lines(quotation)))
    if result.anything_outside:
        print("\n".join(finding_lines(result.findings)))
    print("\n".join(["", *(line for each in ORDER_CAUTIONS for line in wrapped(each)), *wrapped(ORDER_LAST_CAUTION)]))
    if given.blank_prices is not None:
        then = "Fill in the prices, and read it with --prices."
        write_text(blank_price_list_text(result), given.blank_prices, then=then, option="--blank-prices")
    if given.out is not None:
        written = write_order(result, quotation, folder=Path(given.out), paper=given.paper)
        print(f"\nWritten to {given.out}:")
        for path, what in written:
            print(f"  {path.name:32} {what}")
    return status
